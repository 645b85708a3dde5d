import type { Trace } from '../foundation/index.ts';
import {
  type Exposure,
  type Hill,
  type HillExclusion,
  hillByHeightAsce,
  hillByHeightTia,
  hillExclusionAsce,
  hillExclusionTia,
} from '../wind/index.ts';

/** How a method counts a hill. */
export interface HillRule {
  readonly exclusion: (hill: Hill, exposure: Exposure) => HillExclusion | undefined;
  readonly byHeight: (hill: Hill, exposure: Exposure, trace?: Trace) => (z: number) => number;
}

export const ASCE_HILL_RULE: HillRule = { exclusion: hillExclusionAsce, byHeight: hillByHeightAsce };
export const TIA_HILL_RULE: HillRule = { exclusion: (hill) => hillExclusionTia(hill), byHeight: hillByHeightTia };

interface Ground {
  readonly exposure: Exposure;
  readonly hill?: Hill;
  readonly topographicFactor?: number;
}

export interface CountedHill {
  readonly factor: (z: number, trace?: Trace) => number;
  readonly excluded?: { readonly why: HillExclusion; readonly wouldBe: number };
}

const level: CountedHill = { factor: () => 1 };

/**
 * The topographic factor of a site by a method's rule: a factor the county gives, else the hill, else level ground.
 *
 * @param rule how the method counts a hill [-]
 * @param ground exposure and hill of the site [-]
 * @returns the factor by height, and why a hill does not count [-]
 * @example countedHill(ASCE_HILL_RULE, { exposure: 'C' }).factor(10) // 1
 * @source asce7-16
 */
export function countedHill(rule: HillRule, ground: Ground): CountedHill {
  const given = ground.topographicFactor;
  if (given !== undefined) return { factor: () => given };
  const { hill, exposure } = ground;
  if (!hill) return level;
  const why = rule.exclusion(hill, exposure);
  const byHeight = rule.byHeight(hill, exposure);
  if (why) return { factor: level.factor, excluded: { why, wouldBe: byHeight(10) } };
  return { factor: (z, trace) => (trace ? rule.byHeight(hill, exposure, trace)(z) : byHeight(z)) };
}
