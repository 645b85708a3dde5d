import { evaluate, type Trace, under } from '../foundation/index.ts';
import {
  METHOD_BY_ID,
  METHODS,
  type Method,
  type MethodId,
  mayBeMeant,
  type SpeedLevel,
  STAND_IN_METHOD,
  type Wind,
  type WindStructure,
} from '../methods/index.ts';
import type { Ground, RiskCategory } from '../wind/index.ts';
import { allowableForce, pressureForce } from './formulas.ts';
import { type RatedWind, type Rating, type RatingClaim, shareAllowed } from './rating.ts';

/** What a maker may have did not state, and the readings of it. */
export interface RatedReading {
  readonly method: MethodId;
  readonly exposure: Ground;
  readonly riskCategory: RiskCategory;
}

/** One row of a rating under one reading of what it leaves not stated. */
export interface RatedCase {
  readonly rating: Rating;
  readonly reading: RatedReading;
  /** The wind it was stated in; absent for a plain force or moment. */
  readonly wind?: Wind;
  /** λ of its method. */
  readonly toAllowableFactor: number;
  /** Force on one square metre of effective area at the rated height, at the allowable level [N/m²]. */
  readonly forces: readonly { readonly height: number; readonly area: number; readonly perArea: number }[];
  /** The least pressure of its method decides the force on its area. */
  readonly leastDecides: boolean;
}

/** What a rated case has in common with the site's wind where both go by the same rules. */
export interface SharedRules {
  /** The gust effect factor of the site counts how the tower sways. */
  readonly sways: boolean;
  /** The site's wind has a least pressure, and it counts. */
  readonly least: boolean;
}

const NOTHING_SHARED: SharedRules = { sways: false, least: false };

const CATEGORIES: readonly RiskCategory[] = ['I', 'II', 'III'];

/**
 * Methods a rating can be by: the one it names, else every one that may be meant.
 *
 * @returns the methods; empty when none fits
 * @example possibleMethods({ speed: 40, basis: 'fastest-mile', year: 1980 }) // ['rs222-c']
 */
export function possibleMethods(wind: RatedWind): readonly MethodId[] {
  return wind.method ? [wind.method] : METHODS.filter((id) => mayBeMeant(METHOD_BY_ID[id], wind));
}

/** Whether no standard known here can have been a maker's, by the kind of his speed, his year and his ground. */
export function fitsNoStandard(rating: Pick<Rating, 'wind'>): boolean {
  return rating.wind !== undefined && possibleMethods(rating.wind).length === 0;
}

/**
 * Every reading of a rating's wind: its methods, and for each the exposures and classes it leaves open.
 *
 * @example ratedReadings({ speed: 40, method: 'eia222-f' }).length // 1
 */
export function ratedReadings(wind: RatedWind): readonly RatedReading[] {
  return possibleMethods(wind).flatMap((id) => {
    const { ground, classMatters } = METHOD_BY_ID[id];
    const exposures = wind.exposure || !ground.counts ? [wind.exposure ?? ground.usual] : ground.kinds;
    const categories = wind.riskCategory || !classMatters ? [wind.riskCategory ?? 'II'] : CATEGORIES;
    return exposures.flatMap((exposure) => categories.map((riskCategory) => ({ method: id, exposure, riskCategory })));
  });
}

/**
 * What a rating's stated area is multiplied by to become effective, at the low and the high end of its reading.
 *
 * @example ratedAreaFactor({ kind: 'area', areaKind: 'unknown', rows: [], also: [] }, 'tia222-g').high // 1.8
 */
export function ratedAreaFactor(
  claim: Extract<RatingClaim, { kind: 'area' }>,
  method: MethodId,
): { readonly low: number; readonly high: number } {
  return METHOD_BY_ID[method].ratedAreas.factor(claim.areaKind, claim.coefficient);
}

/**
 * The speed of a rating in the basis of a method.
 *
 * @param speed as stated [m/s]
 * @param wind what the maker says of his wind
 * @returns the speed [m/s] and whether a strength-level speed entered a nominal method as it is [-]
 * @example ratedSpeed(40, { method: 'asce7-16' }, METHOD_BY_ID['asce7-16']).speed // 40
 */
export function ratedSpeed(
  speed: number,
  wind: RatedWind,
  method: Method,
  trace?: Trace,
): { readonly speed: number; readonly speedLevel: SpeedLevel } {
  const basis = wind.basis ?? method.basis;
  return { speed: method.toOwnBasis(speed, basis, 'rating', trace), speedLevel: method.speedLevel(basis) };
}

/**
 * All cases of a rating of the tower: rows times readings.
 *
 * F = λ·q·G·A at the maker's own stated conditions
 *
 * @param rating the rating; kinds area, force and wind give cases
 * @param top of the tower [m]
 * @source derived
 */
export function ratedCases(
  rating: Rating,
  windStructure: WindStructure,
  units: 'us' | 'si',
  top: number,
  trace?: Trace,
  shared: SharedRules = NOTHING_SHARED,
): readonly RatedCase[] {
  const { claim, wind } = rating;
  const blowingAt = (speed: number, reading: RatedReading, stated: RatedWind) =>
    ratedWind(speed, stated, reading, shared.sways ? windStructure : rigid(windStructure), units, trace);
  const height = rating.height ?? top;
  if (claim.kind === 'force') {
    const toAllowableFactor = shareAllowed(claim).low;
    const perArea = under(trace, 'rating', () => evaluate(trace, allowableForce, [toAllowableFactor, claim.force]));
    const plain = { rating, toAllowableFactor, forces: [{ height, area: 1, perArea }], leastDecides: false };
    const readings = wind?.speed === undefined ? [] : ratedReadings(wind);
    if (!wind || readings.length === 0) {
      const reading: RatedReading = { method: wind?.method ?? STAND_IN_METHOD, exposure: 'C', riskCategory: 'II' };
      return [{ ...plain, reading }];
    }
    // The force stands as stated; the wind beside it blew on the tower itself as well.
    return readings.map((each) => ({
      ...plain,
      reading: each,
      wind: blowingAt(wind.speed as number, each, wind),
    }));
  }
  if ((claim.kind !== 'area' && claim.kind !== 'wind') || !wind) return [];
  const rows = claim.kind === 'area' ? claim.rows : [{ area: 0 }];
  return rows.flatMap((row) => {
    const speed = ('speed' in row ? row.speed : undefined) ?? wind.speed;
    if (speed === undefined) return [];
    return ratedReadings(wind).map((reading) => {
      const blowing = blowingAt(speed, reading, wind);
      const areas =
        claim.kind === 'area' ? [{ height, area: row.area }, ...claim.also.map((also) => ({ ...also }))] : [];
      return {
        rating,
        reading,
        wind: blowing,
        toAllowableFactor: blowing.toAllowableFactor,
        forces: areas.map((each) => ({ ...each, perArea: forcePerArea(blowing, each.height, shared.least, trace) })),
        leastDecides:
          shared.least &&
          areas.some((each) => forcePerArea(blowing, each.height, true) > forcePerArea(blowing, each.height, false)),
      };
    });
  });
}

/**
 * By the ordinary gust factor: nothing says that the maker counted on how this tower sways, and that would credit it. Where
 * the site's own standard counts it, it counts on both sides.
 */
function rigid({ frequency: _, damping: __, ...rest }: WindStructure): WindStructure {
  return rest;
}

function ratedWind(
  stated: number,
  wind: RatedWind,
  reading: RatedReading,
  windStructure: WindStructure,
  units: 'us' | 'si',
  trace: Trace | undefined,
): Wind {
  const method = METHOD_BY_ID[reading.method];
  const { speed, speedLevel } = ratedSpeed(stated, wind, method, trace);
  return method.wind({
    units,
    speed,
    speedLevel,
    actual: false,
    exposure: reading.exposure,
    riskCategory: reading.riskCategory,
    groundElevation: 0,
    windStructure,
  });
}

function forcePerArea(wind: Wind, height: number, least: boolean, trace?: Trace): number {
  return evaluate(trace, pressureForce, [
    wind.toAllowableFactor,
    wind.forceDirectionFactor,
    wind.pressure(height, trace),
    wind.gustEffect(undefined, trace),
    least ? wind.leastPressure : 0,
  ]);
}
