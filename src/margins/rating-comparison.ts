import { evaluate, Refusal, Trace, under } from '../foundation/index.ts';
import type { WindStructure } from '../methods/index.ts';
import { drawnOut, type Station, windStructureOf } from '../structure/index.ts';
import { areaOfEqualForce, ratedForce } from './formulas.ts';
import { type RatedCase, type RatedReading, ratedAreaFactor, ratedCases } from './rated-case.ts';
import type { Rating } from './rating.ts';

/** What one row of a rating comes to under one reading. */
export interface RatingForce {
  readonly reading: RatedReading;
  /** Force at the allowable level at the low and the high end of what its area means [N]. */
  readonly low: number;
  readonly high: number;
}

/** What one row of a rating comes to. */
export interface ComparedRating {
  readonly at: string;
  /** Number of the row within its rating. */
  readonly row: number;
  readonly readings: readonly RatingForce[];
  /** Least and most over all readings, allowable level [N]. */
  readonly force: readonly [number, number];
  /** Effective area of equal force in the wind asked for [m²]. */
  readonly equal?: readonly [number, number];
}

export interface RatingComparison {
  readonly ratings: readonly ComparedRating[];
  /** The one that is more whichever way both are read, or undefined where their ranges overlap. */
  readonly more?: { readonly number: number; readonly by: readonly [number, number] };
  readonly trace: Trace;
}

/**
 * Ratings of towers set side by side as forces at the allowable level, each at its own stated conditions by its own
 * standard, and turned into an effective area in another wind.
 *
 * F = λ·q·G·A; A = F/(λ·q·G) in the other wind
 *
 * @param ratings of kind area or force, each with a wind
 * @param target a rating of one square metre effective in the wind asked for; it must leave nothing open
 * @throws Refusal `rating-not-a-force` for a rating that states no force, `target-open` for a target with open readings
 * @source derived
 */
export function compareRatings(station: Station, ratings: readonly Rating[], target?: Rating): RatingComparison {
  const trace = new Trace();
  const windStructure = windStructureOf(station, 'lattice');
  const { top } = drawnOut(station.tower);
  const perArea = target
    ? under(trace, 'the wind asked for', () => targetForce(target, windStructure, station, trace))
    : undefined;
  const compared = ratings.flatMap((rating, number) =>
    under(trace, `rating ${number + 1}`, () => compareOne(rating, windStructure, station, top, perArea, trace)),
  );
  const more = moreOf(compared);
  return { ratings: compared, ...(more ? { more } : {}), trace };
}

function targetForce(target: Rating, windStructure: WindStructure, station: Station, trace: Trace): number {
  const cases = ratedCases(target, windStructure, station.units, station.tower.top, trace);
  const [only] = cases;
  const force = only?.forces[0];
  if (cases.length !== 1 || !force) {
    throw new Refusal(
      'target-open',
      'The other wind must leave nothing open. Give method, speed, exposure and, for TIA-222-G, the class.',
      target.at,
    );
  }
  const { claim } = only.rating;
  if (claim.kind !== 'area') return force.perArea;
  return evaluate(trace, ratedForce, [force.perArea, ratedAreaFactor(claim, only.reading.method).low, 1]);
}

function compareOne(
  rating: Rating,
  windStructure: WindStructure,
  station: Station,
  top: number,
  perArea: number | undefined,
  trace: Trace,
): readonly ComparedRating[] {
  const cases = ratedCases(rating, windStructure, station.units, top, trace);
  if (cases.length === 0 || (rating.claim.kind !== 'area' && rating.claim.kind !== 'force')) {
    throw new Refusal(
      'rating-not-a-force',
      'This rating gives no force. Give an area with its wind, or a force.',
      rating.at,
    );
  }
  const rows = rating.claim.kind === 'area' ? rating.claim.rows.length : 1;
  const each = cases.length / rows;
  return Array.from({ length: rows }, (_, row) => {
    const readings = cases.slice(row * each, (row + 1) * each).map((rated) => forceOf(rated, trace));
    const force = [
      Math.min(...readings.map((reading) => reading.low)),
      Math.max(...readings.map((reading) => reading.high)),
    ] as const;
    const equal = perArea === undefined ? undefined : equalAreas(force, perArea, trace);
    return { at: rating.at, row, readings, force, ...(equal ? { equal } : {}) };
  });
}

function forceOf(rated: RatedCase, trace: Trace): RatingForce {
  const { claim } = rated.rating;
  const [first] = rated.forces;
  if (!first) return { reading: rated.reading, low: 0, high: 0 };
  if (claim.kind !== 'area') return { reading: rated.reading, low: first.perArea, high: first.perArea };
  const factor = ratedAreaFactor(claim, rated.reading.method);
  const low = evaluate(trace, ratedForce, [first.perArea, factor.low, first.area]);
  const high = factor.high === factor.low ? low : evaluate(trace, ratedForce, [first.perArea, factor.high, first.area]);
  return { reading: rated.reading, low, high };
}

function equalAreas(force: readonly [number, number], perArea: number, trace: Trace): readonly [number, number] {
  const low = evaluate(trace, areaOfEqualForce, [force[0], perArea]);
  return [low, force[1] === force[0] ? low : evaluate(trace, areaOfEqualForce, [force[1], perArea])];
}

function moreOf(ratings: readonly ComparedRating[]): RatingComparison['more'] {
  const [first, ...rest] = ratings
    .map((rating, number) => ({ number, force: rating.force }))
    .sort((a, b) => b.force[0] - a.force[0]);
  if (!first || rest.length === 0) return undefined;
  const others = rest.map((each) => each.force);
  const most = Math.max(...others.map((force) => force[1]));
  if (first.force[0] <= most) return undefined;
  const least = Math.max(...others.map((force) => force[0]));
  return { number: first.number, by: [first.force[0] / most, first.force[1] / least] };
}
