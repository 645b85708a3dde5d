import type { Role } from '../areas/index.ts';
import { nth, remember, zeros } from '../foundation/index.ts';
import type { Wind, WindStructure } from '../methods/index.ts';
import {
  type Cut,
  cutIntoSlices,
  type Level,
  type MastHold,
  profileOf,
  ratedLines,
  sliceForces,
  slicesInWind,
} from '../structure/index.ts';
import type { CheckInput } from './check-input.ts';
import { apexOf } from './comparisons.ts';
import type { BareTowerCapacity, Claim, ClaimCase, Scenario, TowerModel } from './model.ts';
import { ratingsInQuestion } from './plausible-rated-heights.ts';
import { type RatedCase, ratedCases } from './rated-case.ts';
import type { Rating } from './rating.ts';
import { itemsOf, keyOf, type SeenTower, type SomeOf } from './scenarios.ts';
import { misfitsOf } from './stated-for.ts';
import { asStatedFor, type TowerAsRated } from './tower-as-rated.ts';
import { largestWindRatio } from './unknown-own-drag.ts';

/**
 * Whether a least pressure decides somewhere and the rated case may have it too: then it is one unknown, tried on both sides
 * and on neither.
 *
 * @param speed of the site, in the basis of its method [m/s]
 */
export function leastOnBothSides(scenarios: SomeOf<Scenario>, claims: readonly Claim[], speed: number): boolean {
  if (scenarios[0].appurtenances.wind.leastPressure === 0) return false;
  const cases = claims.flatMap((claim) => claim.cases);
  if (!cases.some(({ rated }) => rated.some(({ wind }) => (wind?.leastPressure ?? 0) > 0))) return false;
  return (
    cases.some(({ rated, own }) => [...rated, ...own].some(({ leastDecides }) => leastDecides)) ||
    scenarios.some(({ appurtenances, bareTower }) =>
      [appurtenances, ...(bareTower ? [bareTower] : [])].some(
        (cut) => sliceForces(cut, speed, 'unfavourable', true).leastDecides,
      ),
    )
  );
}

/**
 * How what a rated case's standard leaves open of the tower's own drag is read: as in the plan where that is by the same
 * standard, else as gives the lowest capacity.
 */
export function ownReading(scenario: Scenario, rated: Wind): Role {
  return rated.method === scenario.appurtenances.wind.method ? scenario.own : 'capacity';
}

/** Whether the least pressure of a rated case counts: where that of the site's standard does. */
export function bothHaveLeast(scenario: Scenario): boolean {
  return scenario.least && scenario.appurtenances.wind.leastPressure > 0;
}

/**
 * The ratings of the tower that say something of it: those for its height and its supports. What may be for another height counts
 * only where no rating stands that surely is for this one.
 */
export function ratingsSpeaking(input: CheckInput): readonly { readonly rating: Rating; readonly number: number }[] {
  const { tower } = input.station;
  const inQuestion = ratingsInQuestion(input);
  const fitting = input.ratings
    .map((rating, number) => ({ rating, number }))
    .filter(({ rating }) => rating.of === 'tower' && misfitsOf(rating, tower).length === 0);
  const sure = fitting.filter(({ rating }) => !inQuestion.includes(rating.at));
  return sure.some(({ rating }) => rating.claim.kind !== 'weight') ? sure : fitting;
}

export interface ClaimContext {
  readonly input: CheckInput;
  readonly scenarios: TowerModel['scenarios'];
  readonly levels: readonly Level[];
  readonly hold: MastHold;
  readonly bareTowerKnown: boolean;
  readonly windOf: (windStructure: WindStructure) => Wind;
}

/**
 * A claim holds on every way in which the tower may have stood as it was rated: they are readings of it.
 *
 * @param number of the rating among those of the plan, from 0 [-]
 * @param asRated the towers it may be for; undefined for the plan's own
 */
export function claimsOf(
  rating: Rating,
  number: number,
  asRated: readonly (TowerAsRated | undefined)[],
  context: ClaimContext,
): readonly Claim[] {
  const rows = rating.claim.kind === 'area' ? rating.claim.rows.length : 1;
  const linesRead = linesReadOf(rating, context);
  const casesOfEach = asRated.flatMap((each) =>
    linesRead.map((withCables) => claimCasesOf({ ...rating, ...(withCables ? { withCables } : {}) }, each, context)),
  );
  return Array.from({ length: rows }, (_, row) => ({
    rating,
    number,
    cases: casesOfEach.flatMap((cases) => {
      const each = cases.length / rows;
      return cases.slice(row * each, (row + 1) * each);
    }),
  })).filter((claim) => claim.cases.length > 0);
}

/**
 * The lines that a rating allows for, each way they may have been arranged. Bundled they catch least, which proves least; but
 * between legs that draw together the braces carry differences, which more wind on the lines may lessen.
 */
function linesReadOf(rating: Rating, { input }: ClaimContext): readonly Rating['withCables'][] {
  const { withCables } = rating;
  const draws = input.station.tower.sections.some((section) => Number.isFinite(apexOf(section)));
  if (!withCables || !linesLieOpen(rating) || !draws) return [withCables];
  return [withCables, { ...withCables, laid: 'single' }];
}

/** Whether nobody says how several rated lines were arranged. */
function linesLieOpen({ withCables }: Pick<Rating, 'withCables'>): boolean {
  return withCables !== undefined && withCables.laid === undefined && withCables.count > 1;
}

function claimCasesOf(rating: Rating, asRated: TowerAsRated | undefined, context: ClaimContext): readonly ClaimCase[] {
  const { input, scenarios, bareTowerKnown } = context;
  const { station } = input;
  const { withCables } = rating;
  const tower = asRated?.tower ?? station.tower;
  const heights = (asRated?.levels ?? context.levels).map(({ z }) => z);
  const cuts = new Map<string, Cut>();
  // The rated wind blew on the tower itself, where it is known, and on the lines the maker allowed for. Each reading is cut where
  // its own pressure bends, so that it proves the same beside others and alone.
  const ratedCut = (seen: SeenTower, cutAt: readonly number[]) =>
    remember(cuts, `${keyOf(seen)} ${cutAt.at(-1)}`, () => {
      const own = bareTowerKnown ? itemsOf(tower, seen) : [];
      return cutIntoSlices(withCables ? [...own, ratedLines(withCables, tower)] : own, cutAt);
    });
  const stated = asRated ? asStatedFor(rating, station.tower, asRated) : rating;
  const byWindStructure = {
    with: new Map<WindStructure, readonly RatedCase[]>(),
    without: new Map<WindStructure, readonly RatedCase[]>(),
  };
  const ratedIn = (scenario: Scenario) => {
    const { windStructure, appurtenances } = scenario;
    const shared = { sways: appurtenances.wind.gustVaries, least: bothHaveLeast(scenario) };
    const structure = asRated ? { ...windStructure, height: tower.top } : windStructure;
    return remember(byWindStructure[shared.least ? 'with' : 'without'], windStructure, () =>
      ratedCases(stated, structure, station.units, tower.top, undefined, shared),
    );
  };
  return ratedIn(scenarios[0]).map((_, caseNumber) => {
    const rated = scenarios.map((scenario) => nth(ratedIn(scenario), caseNumber));
    const cutAt = [...heights, nth(rated, 0).wind?.bendsAt ?? 0];
    const own = scenarios.map((scenario, index) =>
      bareTowerCapacity(nth(rated, index), scenario, ratedCut(scenario, cutAt), asRated, context),
    );
    return { ...(asRated ? { asRated } : {}), cutAt, rated, own, found: [] };
  });
}

function bareTowerCapacity(
  rated: RatedCase,
  scenario: Scenario,
  cut: Cut,
  asRated: TowerAsRated | undefined,
  context: ClaimContext,
): BareTowerCapacity {
  const { bareTowerKnown, windOf } = context;
  const { levels, hold } = asRated ?? context;
  const { wind } = rated;
  const nothing = { shear: zeros(levels.length), moment: zeros(levels.length), leastDecides: false };
  if (!wind) return { ...nothing, windRatio: bareTowerKnown ? 0 : Number.POSITIVE_INFINITY };
  const windRatio = bareTowerKnown
    ? 0
    : largestWindRatio(windOf(scenario.windStructure), wind, context.levels, scenario.windStructure, asRated);
  if (cut.items.length === 0) return { ...nothing, windRatio };
  const inWind = slicesInWind(wind, cut, ownReading(scenario, wind), scenario.direction);
  const forces = sliceForces(inWind, wind.conditions.speed, 'favourable', bothHaveLeast(scenario));
  const { shear, moment } = profileOf(inWind, forces, levels, hold);
  return { shear, moment, windRatio, leastDecides: forces.leastDecides, inWind };
}
