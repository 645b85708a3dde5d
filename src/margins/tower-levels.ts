import type { Level, Profile, Section } from '../structure/index.ts';
import type { Check } from './check-list.ts';
import { type Demand, isBraced, type TowerModel } from './tower-model.ts';
import type { CheckUse } from './tower-use.ts';

/** What is asked of a tower at one level, what is shown there, and the use. */
export interface AskedAndShown {
  readonly asked: number;
  /** Absent: nothing proves anything here. */
  readonly shown?: number;
  readonly use?: number;
  readonly useAtBest?: number;
}

/** One level of a tower at which it is compared. */
export interface TowerLevel {
  readonly height: number;
  readonly section: string;
  readonly place: Check['place'];
  /** Horizontal force above it, in the couple of the mast that of its bearing [N]. */
  readonly shear: number;
  /** Of what hangs off the axis [N·m]. */
  readonly torsion: number;
  /** Shear where nothing else loads the braces; else that less what sloping legs carry, with the twist [N]. */
  readonly sideways: AskedAndShown & { readonly of: 'shear' | 'braces' };
  /** [N·m] */
  readonly bending: AskedAndShown;
  /** The wind on a tower whose own drag is not known decides, not shear or bending. */
  readonly byWindRatio: boolean;
}

/**
 * Every level at which a tower is compared, from the top down: each at the reading and the heading that decide it.
 *
 * u = demand/capacity
 *
 * @param model the tower [-]
 * @param uses of all checks, bending and shear of a level one after the other [-]
 * @param bad demands at the bad end [-]
 * @returns the levels [-]
 * @source derived
 */
export function towerLevels(model: TowerModel, uses: readonly CheckUse[], bad: Demand): readonly TowerLevel[] {
  const levels: TowerLevel[] = [];
  for (let index = 0; index + 1 < uses.length; index += 2) {
    const [bending, sideways] = [uses[index] as CheckUse, uses[index + 1] as CheckUse];
    const { level, section, place } = sideways.check;
    const hung = bad.hung[sideways.scenario] as Profile;
    const own = bad.own[sideways.scenario];
    const { pullShear, leaningShear } = model.dead;
    const still = (pullShear[level] as number) + (leaningShear[level] as number);
    const torsion = hung.torsion[level] as number;
    levels.push({
      height: (model.levels[level] as Level).z,
      section: (model.inquiry.station.tower.sections[section] as Section).name,
      place,
      shear: (hung.shear[level] as number) + (own?.shear[level] ?? 0) + still,
      torsion,
      sideways: { of: isBraced(model, sideways.check, torsion) ? 'braces' : 'shear', ...askedAndShown(sideways) },
      bending: askedAndShown(bending),
      byWindRatio: bending.byWindRatio || sideways.byWindRatio,
    });
  }
  // Checks come from the lowest section up; of two sections that meet the upper one stands first.
  return levels.reverse().sort((a, b) => b.height - a.height);
}

function askedAndShown({ demand, capacity, bad, good }: CheckUse): AskedAndShown {
  if (!(capacity > 0)) return { asked: demand };
  const uses = Number.isFinite(bad) ? { use: bad, useAtBest: Math.min(good, bad) } : {};
  return { asked: demand, shown: capacity, ...uses };
}
