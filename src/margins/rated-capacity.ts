import { nth, remember, zeros } from '../foundation/index.ts';
import { METHOD_BY_ID } from '../methods/index.ts';
import { type Level, type MastHold, ONE_HEIGHT } from '../structure/index.ts';
import type { Comparison, Proof } from './comparisons.ts';
import { shearBesideMoment } from './formulas.ts';
import type { Answers, BareModel, Claim, ClaimCase, RatedCapacity, RatingAnswer } from './model.ts';
import { type RatedCase, ratedAreaFactor } from './rated-case.ts';
import { shareAllowed } from './rating.ts';
import { SAME_HEIGHT } from './stated-for.ts';

/**
 * What one reading of a claim proves for a check.
 *
 * V: λ(F_r + V_own), M: λ(F_r(h_r − z) + M_own); in the couple V with F_r(1 + a_r/s) where the plates are the maker's; in
 * tapering braces |ΣF_r·w + S_own|, w below 0 for what stands above the point where the legs would meet; in a stout round tube
 * V no less than 1.2·M/D
 *
 * @param number of the comparison [-]
 * @param scenario number of the scenario [-]
 * @param areaFactor from the stated to the effective area [-]
 * @returns the capacity [N or N·m]
 * @source derived
 */
export function provenBy(
  model: BareModel,
  number: number,
  claimCase: ClaimCase,
  scenario: number,
  areaFactor: number,
): number {
  const { tube } = nth(model.comparisons, number);
  const byItself = provenByItself(model, number, claimCase, scenario, areaFactor);
  if (!tube) return byItself;
  const bending = provenByItself(model, tube.moment, claimCase, scenario, areaFactor);
  return Math.max(byItself, shearBesideMoment.of(bending, tube.diameter));
}

function provenByItself(
  model: BareModel,
  number: number,
  claimCase: ClaimCase,
  scenario: number,
  areaFactor: number,
): number {
  const comparison = nth(model.comparisons, number);
  let most = 0;
  for (const place of proofOf(model, number, claimCase)) {
    const value = broughtTo(model, comparison, place, claimCase, scenario, areaFactor);
    most = Math.max(most, inTapering(comparison, place) ? Math.abs(value) : value * place.factor);
  }
  return most;
}

/** What a rated case brings to one place; in tapering braces either way. */
function broughtTo(
  model: BareModel,
  comparison: Comparison,
  place: Proof[number],
  claimCase: ClaimCase,
  scenario: number,
  areaFactor: number,
): number {
  const { level, apex = comparison.apex, of = comparison.of } = place;
  const own = nth(claimCase.own, scenario);
  const proving = provingTower(model, claimCase);
  const { z, zone } = nth(proving.levels, level);
  let value = nth(own[of], level);
  if (inTapering(comparison, place)) value -= nth(own.moment, level) / (apex - z);
  for (const { height, area, perArea } of nth(claimCase.rated, scenario).forces) {
    if (height < z - ONE_HEIGHT) continue;
    value += perArea * area * areaFactor * handedOn(proving, of, apex, height, z, zone);
  }
  return value;
}

function inTapering(comparison: Comparison, place: Proof[number]): boolean {
  return (place.of ?? comparison.of) === 'shear' && (place.apex ?? comparison.apex) !== Number.POSITIVE_INFINITY;
}

/** What a proof needs to know of the tower it was stated for. */
export interface ProvingTower {
  readonly levels: readonly Level[];
  readonly hold: MastHold;
  readonly top: number;
  /** The mast stands on the maker's own plates. */
  readonly shelf: boolean;
}

/** The tower that a case was stated for: the plan's own, or one of another height. */
export function provingTower(model: BareModel, claimCase: ClaimCase): ProvingTower {
  const { asRated } = claimCase;
  const { tower, mast } = model.input.station;
  const { levels, hold } = asRated ?? model;
  return { levels, hold, top: (asRated?.tower ?? tower).top, shelf: mast?.shelf ?? false };
}

/**
 * Where a case proves a comparison, on the tower it was stated for.
 *
 * @param number of the comparison [-]
 */
export function proofOf(model: BareModel, number: number, claimCase: ClaimCase): Proof {
  const { asRated } = claimCase;
  return asRated ? nth(asRated.provenAt, number) : nth(model.comparisons, number).provenAt;
}

/**
 * Arm or share with which a rated force reaches a level.
 *
 * moment: h − z, in the couple z_b − z of what stands above the bearing; shear: 1, in the couple 1 + a_r/s; in tapering
 * braces × 1 − (h − z)/(z_a − z), in the couple with the bearing for h
 *
 * @param apex where the legs would meet [m]
 * @param height of the rated force [m]
 * @param z the level [m]
 * @returns arm [m] or share [-]
 */
export function handedOn(
  proving: ProvingTower,
  of: Comparison['of'],
  apex: number,
  height: number,
  z: number,
  zone: Level['zone'],
): number {
  const { hold, top, shelf } = proving;
  if (zone === 'couple' && hold.bearing !== undefined) {
    // What stands below the bearing has the arm of its own height.
    const arm = armOver(Math.min(height, hold.bearing), z);
    if (of === 'moment') return arm;
    const above = Math.max(0, height - top);
    const atBearing = shelf ? 1 + above / (hold.bearing - hold.foot) : 1;
    return atBearing * (apex === Number.POSITIVE_INFINITY ? 1 : 1 - arm / (apex - z));
  }
  if (of === 'moment') return armOver(height, z);
  return apex === Number.POSITIVE_INFINITY ? 1 : 1 - (height - z) / (apex - z);
}

/** At what is one height nothing is proven of a moment, however the figures were rounded. */
const armOver = (height: number, z: number) => (Math.abs(height - z) < ONE_HEIGHT ? 0 : height - z);

/**
 * What every claim proves, at the low and the high end of what its maker did not state.
 *
 * @param proven what they prove with nothing answered, where that is known: answers change nothing of other ratings
 * @returns by claim, scenario and check
 */
export function ratedCapacitiesOf(
  model: BareModel,
  answers: Answers = {},
  proven?: readonly RatedCapacity[],
): readonly RatedCapacity[] {
  return model.claims.map((claim, index) => {
    const answer = answers.ratings?.get(claim.number);
    return (answer ? undefined : proven?.[index]) ?? provenByClaim(model, claim, answer ?? {});
  });
}

function provenByClaim(model: BareModel, claim: Claim, answer: RatingAnswer): RatedCapacity {
  const { scenarios, comparisons, bareTowerKnown } = model;
  const matching = claim.cases.filter(
    (each) => fits(nth(each.rated, 0).reading, answer) && isFor(provingTower(model, each).top, answer),
  );
  // An answer that fits no reading proves nothing.
  const unread = matching.length === 0 ? 0 : Number.POSITIVE_INFINITY;
  const low = scenarios.map(() => zeros(comparisons.length).fill(unread));
  const high = scenarios.map(() => zeros(comparisons.length));
  const windRatioLow = scenarios.map(() => 0);
  const windRatioHigh = scenarios.map(() => (bareTowerKnown ? 0 : Number.POSITIVE_INFINITY));
  // Differing by how the rated lines lay, or by the height that it is for, alone.
  const alike = new Map<string, ClaimCase[]>();
  for (const each of matching) remember(alike, readingKey(each), () => []).push(each);
  const pushed = new Map<string, readonly boolean[]>();
  for (const each of matching) {
    const key = readingKey(each);
    const ofOneReading = alike.get(key) ?? [];
    for (let scenario = 0; scenario < scenarios.length; scenario += 1) {
      const rated = nth(each.rated, scenario);
      const factor = areaFactorOf(rated, answer);
      const least = provenByCase(model, each, scenario, factor.low);
      const most = provenByCase(model, each, scenario, factor.high);
      const bothWays = remember(pushed, `${key} ${scenario} ${factor.low} ${factor.high}`, () =>
        comparisons.map((_, number) => pushedBothWays(model, number, ofOneReading, scenario, factor)),
      );
      const lowest = nth(low, scenario);
      const highest = nth(high, scenario);
      for (let comparison = 0; comparison < comparisons.length; comparison += 1) {
        const surely = nth(bothWays, comparison) ? 0 : nth(least, comparison);
        lowest[comparison] = Math.min(nth(lowest, comparison), surely);
        highest[comparison] = Math.max(nth(highest, comparison), nth(most, comparison));
      }
      if (bareTowerKnown) continue;
      const ratio = nth(each.own, scenario).windRatio;
      windRatioLow[scenario] = Math.max(nth(windRatioLow, scenario), rated.wind ? ratio : Number.POSITIVE_INFINITY);
      windRatioHigh[scenario] = Math.min(nth(windRatioHigh, scenario), ratio);
    }
  }
  const windRatio = { unfavourable: windRatioLow, favourable: windRatioHigh };
  return { claim, unfavourable: low, favourable: high, windRatio };
}

function readingKey({ rated }: ClaimCase): string {
  const { method, exposure, riskCategory } = nth(rated, 0).reading;
  return `${method} ${exposure} ${riskCategory}`;
}

/** Between two readings that push braces either way, one in between may be left with nothing. */
function pushedBothWays(
  model: BareModel,
  number: number,
  cases: readonly ClaimCase[],
  scenario: number,
  factor: { readonly low: number; readonly high: number },
): boolean {
  const comparison = nth(model.comparisons, number);
  if (comparison.of !== 'shear' || comparison.apex === Number.POSITIVE_INFINITY) return false;
  const ways = cases.flatMap((each) =>
    proofOf(model, number, each)
      .filter((place) => inTapering(comparison, place))
      .flatMap((place) =>
        [factor.low, factor.high].map((by) => Math.sign(broughtTo(model, comparison, place, each, scenario, by))),
      ),
  );
  return ways.includes(1) && ways.includes(-1);
}

/**
 * What the stated area or force of a rated case is multiplied by, at the low and the high end of what is open about it.
 *
 * @param rated the case
 * @param answer what is known of it by now
 * @returns both ends [-]
 */
export function areaFactorOf(rated: RatedCase, answer: RatingAnswer): { low: number; high: number } {
  const { rating, reading } = rated;
  const { claim } = rating;
  // A force of no told level is at strength level at the low end and allowable at the high one.
  if (claim.kind === 'force') return { low: 1, high: shareAllowed(claim).high / shareAllowed(claim).low };
  if (claim.kind !== 'area') return { low: 1, high: 1 };
  return ratedAreaFactor(answer.areaKind ? { ...claim, areaKind: answer.areaKind } : claim, reading.method);
}

/** By check. */
function provenByCase(model: BareModel, claimCase: ClaimCase, scenario: number, areaFactor: number): readonly number[] {
  for (const each of claimCase.found) {
    if (each.scenario === scenario && each.areaFactor === areaFactor) return each.proof;
  }
  const proof = model.comparisons.map((_, number) => provenBy(model, number, claimCase, scenario, areaFactor));
  claimCase.found.push({ scenario, areaFactor, proof });
  return proof;
}

/** One height, as far as it may be written apart. */
function isFor(top: number, answer: RatingAnswer): boolean {
  return answer.top === undefined || Math.abs(answer.top - top) <= SAME_HEIGHT;
}

function fits(reading: RatedCase['reading'], answer: RatingAnswer): boolean {
  const method = METHOD_BY_ID[reading.method];
  return (
    (answer.method === undefined || reading.method === answer.method) &&
    (answer.exposure === undefined || reading.exposure === answer.exposure || !method.ground.counts) &&
    (answer.riskCategory === undefined || reading.riskCategory === answer.riskCategory || !method.classMatters)
  );
}
