import { nth } from '../foundation/index.ts';
import type { ComparedOf } from './checks/check.ts';
import type { Comparison } from './comparisons.ts';
import type { Demand, TowerModel } from './model.ts';
import { isBraced } from './tower-model.ts';
import type { ComparisonRatio } from './tower-ratio.ts';

/** What is asked of a tower at one level, what is shown there, and the ratio. */
export interface DemandAndCapacity {
  readonly demand: number;
  /** Absent: nothing proves anything here. */
  readonly capacity?: number;
  readonly ratio?: number;
  readonly ratioAtBest?: number;
}

/** What is compared sideways. */
export const SIDEWAYS = ['shear', 'braces'] as const satisfies readonly ComparedOf[];

/** One level of a tower at which it is compared. */
export interface TowerLevel {
  readonly height: number;
  readonly section: string;
  readonly place: Comparison['place'];
  /** Horizontal force above it, in the couple of the mast that of its bearing [N]. */
  readonly shear: number;
  /** Of what hangs off the axis [N·m]. */
  readonly torsion: number;
  /** Shear where nothing else loads the braces; else that less what sloping legs carry, with the twist [N]. */
  readonly sideways: DemandAndCapacity & { readonly of: 'shear' | 'braces' };
  /** [N·m] */
  readonly bending: DemandAndCapacity;
  /** The wind on a tower whose own drag is not known decides, not shear or bending. */
  readonly byWindRatio: boolean;
}

/**
 * Every level at which a tower is compared, from the top down: each at the reading and the heading that decide it.
 *
 * u = demand/capacity
 *
 * @param ratios of all checks, bending and shear of a level one after the other
 * @source derived
 */
export function towerLevels(
  model: TowerModel,
  ratios: readonly ComparisonRatio[],
  unfavourable: Demand,
): readonly TowerLevel[] {
  const levels: TowerLevel[] = [];
  for (let index = 0; index + 1 < ratios.length; index += 2) {
    const [bending, sideways] = [nth(ratios, index), nth(ratios, index + 1)];
    const { level, section, place } = sideways.comparison;
    const { appurtenances, bareTower } = nth(unfavourable.scenarios, sideways.scenario);
    const { pullShear, eccentricWeightShear } = model.dead;
    const still = nth(pullShear, level) + nth(eccentricWeightShear, level);
    const torsion = nth(appurtenances.torsion, level);
    levels.push({
      height: nth(model.levels, level).z,
      section: nth(model.input.station.tower.sections, section).name,
      place,
      shear: nth(appurtenances.shear, level) + (bareTower?.shear[level] ?? 0) + still,
      torsion,
      sideways: {
        of: isBraced(model, sideways.comparison, torsion) ? 'braces' : 'shear',
        ...demandAndCapacity(sideways),
      },
      bending: demandAndCapacity(bending),
      byWindRatio: bending.byWindRatio || sideways.byWindRatio,
    });
  }
  // Checks come from the lowest section up; of two sections that meet the upper one stands first.
  return levels.reverse().sort((a, b) => b.height - a.height);
}

function demandAndCapacity({ demand, capacity, unfavourable, favourable }: ComparisonRatio): DemandAndCapacity {
  if (!(capacity > 0)) return { demand };
  const ratios = Number.isFinite(unfavourable)
    ? { ratio: unfavourable, ratioAtBest: Math.min(favourable, unfavourable) }
    : {};
  return { demand, capacity, ...ratios };
}
