import { nth } from '../foundation/index.ts';
import type { Bound } from '../methods/index.ts';
import { shearBesideMoment } from './formulas.ts';
import type { Claim, MomentClaim, RatedCapacity, TowerModel } from './model.ts';

/** What the maker's claims leave of a comparison in a scenario, at one end of what he did not state. */
export interface Governed {
  ratio: number;
  /** Of the claim that leaves most; 0 where nothing is proven. */
  capacity: number;
  by?: Claim | MomentClaim;
  /** The wind on a tower whose own drag is not known decides, not this comparison. */
  byWindRatio: boolean;
}

/**
 * What every claim proves of a comparison: the one place that knows which claims speak of it.
 *
 * rated cases by comparison; stated moments of the moment at their level, and of the shear of a stout round tube there
 *
 * @param number of the comparison [-]
 * @param scenario its number [-]
 * @param bound which end of what the maker did not state
 * @param tell told of each: capacity, ratio by the wind on the tower itself, and the claim
 */
export function eachCapacity(
  model: TowerModel,
  proven: readonly RatedCapacity[],
  number: number,
  scenario: number,
  bound: Bound,
  tell: (capacity: number, windRatio: number, by: Claim | MomentClaim) => void,
): void {
  for (const each of proven) {
    tell(nth(nth(each[bound], scenario), number), nth(each.windRatio[bound], scenario), each.claim);
  }
  const { tube } = nth(model.comparisons, number);
  for (const claim of model.momentClaims) {
    const share = claim.shares.get(tube?.moment ?? number)?.[bound] ?? 0;
    const moment = claim.moment[bound] * share;
    if (share > 0) tell(tube ? shearBesideMoment.of(moment, tube.diameter) : moment, 0, claim);
  }
}

/** What is left of differences of heights in double precision; next to any rating it is nothing [N or N·m]. */
const NOTHING = 1e-6;

/**
 * The best of the maker's claims for a comparison that is asked for so much.
 *
 * u = min over claims of max(demand/capacity, r)
 *
 * @param number of the comparison [-]
 * @param scenario its number [-]
 * @param bound which end of what the maker did not state
 * @param demand what is asked [N or N·m]
 * @param windScale pressure of this wind over that of the site, for a tower whose own drag is not known [-]
 * @returns the ratio, Infinity where nothing is proven, and what decides it
 * @source derived
 */
export function governed(
  model: TowerModel,
  proven: readonly RatedCapacity[],
  number: number,
  scenario: number,
  bound: Bound,
  demand: number,
  windScale = 1,
): Governed {
  const best: Governed = { ratio: Number.POSITIVE_INFINITY, capacity: 0, byWindRatio: false };
  eachCapacity(model, proven, number, scenario, bound, (capacity, windRatio, by) => {
    const byLoads = demand < NOTHING ? 0 : demand / capacity;
    // At best the tower has next to no wind on itself, and its loads alone decide.
    const byWind = windRatio === 0 || bound === 'favourable' ? 0 : windRatio * windScale;
    const ratio = Math.max(byLoads, byWind);
    if (best.by !== undefined && !(ratio < best.ratio)) return;
    best.ratio = ratio;
    best.capacity = capacity;
    best.by = by;
    best.byWindRatio = byWind > byLoads;
  });
  return best;
}

/**
 * The most that is proven of a comparison in a scenario, every open question at its unfavourable end.
 *
 * @param number of the comparison [-]
 * @param scenario its number [-]
 * @returns the capacity [N or N·m]
 */
export function mostShown(model: TowerModel, number: number, scenario: number): number {
  let most = 0;
  eachCapacity(model, model.proven, number, scenario, 'unfavourable', (capacity) => {
    most = Math.max(most, capacity);
  });
  return most;
}

/**
 * The most that one and the same claim proves of a comparison, whichever scenario is true.
 *
 * @param number of the comparison [-]
 * @returns the capacity [N or N·m]
 */
export function surelyShown(model: TowerModel, number: number): number {
  const least = new Map<Claim | MomentClaim, number>();
  for (const scenario of model.scenarios.keys()) {
    eachCapacity(model, model.proven, number, scenario, 'unfavourable', (capacity, _, by) => {
      least.set(by, Math.min(capacity, least.get(by) ?? Number.POSITIVE_INFINITY));
    });
  }
  return Math.max(0, ...least.values());
}
