import { METHOD_BY_ID } from '../methods/index.ts';
import type { Hill, HillCondition } from '../wind/index.ts';
import type { CheckInput } from './check-input.ts';

/** A hill as its method counts it. */
export interface HillHelp {
  readonly counts: boolean;
  /** Under which it counts, those that fail among them. */
  readonly conditions: readonly HillCondition[];
  /** Height at which the factors are given: the top of the tower [m]. */
  readonly height: number;
  /** Factor on the pressure that is used there. */
  readonly factor: number;
  /** Factor it would have there if it counted. */
  readonly wouldBe: number;
  /** The factor used at the top of a tower along the slope. */
  readonly profile: readonly HillPoint[];
}

export interface HillPoint {
  /** From the crest, upwind negative [m]. */
  readonly distance: number;
  readonly factor: number;
  /** Where the tower of the plan stands. */
  readonly here: boolean;
}

/** Places of the profile, in half-lengths from the crest; behind an escarpment the wind settles more slowly. @source derived */
const PLACES = {
  upwind: [-2, -1.5, -1, -0.5, 0],
  hill: [0.5, 1, 1.5, 2],
  escarpment: [0.5, 1, 2, 3, 4, 8],
} as const;

/**
 * What a method makes of the plan's hill: which conditions hold, the factor used and the one it would have, and how the
 * factor runs along the slope.
 *
 * K_zt(x) at the top of the tower
 *
 * @returns the help; undefined where the plan has no hill, or its method knows none
 */
export function hillHelpOf(input: CheckInput): HillHelp | undefined {
  const { site, station } = input;
  const rule = METHOD_BY_ID[input.method].hill;
  const { hill, exposure } = site;
  if (!rule || !hill || site.topographicFactor !== undefined) return undefined;
  const height = station.tower.top;
  const counted = (conditions: readonly HillCondition[]) => conditions.every((condition) => condition.holds !== false);
  const factorOf = (of: Hill) => (counted(rule.conditions(of, exposure)) ? rule.byHeight(of, exposure)(height) : 1);
  const conditions = rule.conditions(hill, exposure);
  const own = hill.side === 'upwind' ? 0 - hill.distance : hill.distance;
  const factor = factorOf(hill);
  const places = [...PLACES.upwind, ...PLACES[hill.shape === 'escarpment' ? 'escarpment' : 'hill']].map(
    (place) => place * hill.halfLength,
  );
  const profile = [
    ...places
      .filter((distance) => distance !== own)
      .map((distance) => ({ distance, factor: factorOf(placed(hill, distance)), here: false })),
    { distance: own, factor, here: true },
  ].sort((a, b) => a.distance - b.distance);
  return {
    counts: counted(conditions),
    conditions,
    height,
    factor,
    wouldBe: rule.byHeight(hill, exposure)(height),
    profile,
  };
}

function placed(hill: Hill, distance: number): Hill {
  return { ...hill, distance: Math.abs(distance), side: distance <= 0 ? 'upwind' : 'downwind' };
}
