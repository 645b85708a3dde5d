import type { Trace } from '../foundation/index.ts';
import {
  type AsceHillList,
  exposureOf,
  type Ground,
  type Hill,
  type HillCondition,
  type HillExclusion,
  hillByHeightAsce,
  hillByHeightTia,
  hillConditionsAsce,
  hillConditionsTia,
  hillExclusion,
  isTerrain,
} from '../wind/index.ts';

/** How a method counts a hill. */
export interface HillRule {
  /** What a factor given by the place's authority multiplies: the pressure, or the speed inside the height law. */
  readonly factorOn: 'pressure' | 'speed';
  /** Whether it must be isolated and higher than its surroundings to count. */
  readonly asksSurroundings: boolean;
  /** Under which it counts. */
  readonly conditions: (hill: Hill, ground: Ground) => readonly HillCondition[];
  /** Its factor on the pressure as a function of the height, whether it counts or not. */
  readonly byHeight: (hill: Hill, ground: Ground, trace?: Trace) => (z: number) => number;
}

const asceHillRule = (list: AsceHillList): HillRule => ({
  factorOn: 'pressure',
  asksSurroundings: list === 'to-7-16',
  conditions: (hill, ground) => hillConditionsAsce(hill, exposureOf(ground), list),
  byHeight: (hill, ground, trace) => hillByHeightAsce(hill, exposureOf(ground), trace),
});
export const ASCE_HILL_RULE_TO_7_16: HillRule = asceHillRule('to-7-16');
export const ASCE_HILL_RULE_7_22: HillRule = asceHillRule('7-22');
export const TIA_HILL_RULE: HillRule = {
  factorOn: 'pressure',
  asksSurroundings: false,
  conditions: hillConditionsTia,
  byHeight: (hill, ground, trace) => hillByHeightTia(hill, exposureOf(ground), trace),
};

interface Landscape {
  readonly exposure: Ground;
  readonly hill?: Hill;
  readonly topographicFactor?: number;
}

/** A hill that fails a condition of its standard. */
export interface ExcludedHill {
  readonly why: HillExclusion;
  /** The factor on the pressure that it would have at 10 m. */
  readonly wouldBe: number;
}

export interface CountedHill {
  readonly factor: (z: number, trace?: Trace) => number;
  readonly excluded?: ExcludedHill;
}

const level: CountedHill = { factor: () => 1 };

/**
 * The topographic factor of a site by a method's rule: a factor the county gives, else the hill, else level ground.
 *
 * @example countedHill(ASCE_HILL_RULE_7_22, { exposure: 'C' }).factor(10) // 1
 * @source asce7-16
 */
export function countedHill(rule: HillRule, landscape: Landscape): CountedHill {
  const { hill, topographicFactor, exposure } = landscape;
  if (topographicFactor !== undefined) {
    // Beside a terrain of EN 1991-1-4 stands its factor on the speed.
    const given = isTerrain(exposure) ? topographicFactor ** 2 : topographicFactor;
    return { factor: () => given };
  }
  if (!hill) return level;
  const excluded = excludedBy(rule, hill, exposure);
  if (excluded) return { factor: level.factor, excluded };
  const byHeight = rule.byHeight(hill, exposure);
  return { factor: (z, trace) => (trace ? rule.byHeight(hill, exposure, trace)(z) : byHeight(z)) };
}

/**
 * Why a hill does not count by a method's rule, and the factor it would have.
 *
 * @example excludedBy(ASCE_HILL_RULE_7_22, { shape: 'ridge', height: 30, halfLength: 400, distance: 0, side: 'upwind' }, 'C')?.why // 'too-gentle'
 */
export function excludedBy(rule: HillRule, hill: Hill, ground: Ground): ExcludedHill | undefined {
  const why = hillExclusion(rule.conditions(hill, ground));
  return why && { why, wouldBe: rule.byHeight(hill, ground)(10) };
}
