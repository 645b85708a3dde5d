import {
  flatCoefficientAsce,
  flowMeasureAsce,
  latticeCoefficientAsce,
  poleCoefficientAsce,
  type Role,
  roundCoefficientAsce,
  type WindDirection,
} from '../areas/index.ts';
import { cite, evaluate, POUND_PER_SQUARE_FOOT, type Trace, type UnitSystem } from '../foundation/index.ts';
import {
  ASCE_LOWEST_HEIGHT,
  type ByExposure,
  ELEVATION_DECAY_HEIGHT,
  type Exposure,
  type ExposureConstants,
  exposureOf,
  flexibleGustEffect,
  type GustConstants,
  groundElevationFactor,
  type IceRule,
  PRESSURE_CONSTANT,
  RIGID_GUST_EFFECT,
} from '../wind/index.ts';
import { codeSpeeds } from './code-speeds.ts';
import { coefficientOf, type MethodRule } from './common-coefficients.ts';
import { BY_EXPOSURE } from './ground-by-exposure.ts';
import { HALF_IN_MAPPED_WIND, SIX_TENTHS_AT_STRENGTH } from './guy-rules.ts';
import { countedHill, type HillRule } from './hill.ts';
import { COLUMN_SHARE, type Method, type PartCoefficient, type Wind, type WindConditions } from './method.ts';
import type { MethodId } from './method-id.ts';
import { ratedByShape } from './rated-areas.ts';

/** What one edition of ASCE 7 does in its own way; all its constants must be of one brand. */
export interface AsceEdition<Constants extends string> {
  readonly id: MethodId;
  readonly title: string;
  readonly since: number;
  readonly meantUnnamedIn: Method['meantUnnamedIn'];
  readonly known: Method['known'];
  readonly elevationCounts: boolean;
  /** The direction factor stands in the force, not in the pressure. */
  readonly directionInForce: boolean;
  readonly polesDirectionFactor: (sides: number) => number;
  readonly exposureConstants: ByExposure<Constants>;
  readonly exposureCoefficient: (z: number, constants: ExposureConstants<Constants>, trace?: Trace) => number;
  readonly pressure: (factors: PressureFactors, trace?: Trace) => number;
  readonly gustConstants: Readonly<Record<Exposure, GustConstants<Constants>>>;
  /** Its equation of the force on other structures. */
  readonly forceClause: string;
  /** 2 where its ice maps are of 50 years. */
  readonly iceMapFactor: 1 | 2;
  /** Where its ice maps want an importance factor; else they come by risk category. */
  readonly iceImportance: IceRule['importance'];
  readonly hill: HillRule;
  readonly besideOnTowers: Method['besideOnTowers'];
}

export interface PressureFactors {
  readonly c: number;
  readonly Kz: number;
  readonly Kzt: number;
  readonly Kd: number;
  readonly Ke: number;
  readonly V: number;
}

/** Direction factor of triangular, square and rectangular lattice towers. @source asce7-10 */
export const LATTICE_DIRECTION_FACTOR = 0.85;
/** Least wind pressure on other structures, strength level [Pa]: 16 psf. @source asce7-10 */
export const ASCE_LEAST_PRESSURE = 16 * POUND_PER_SQUARE_FOOT;
const SLENDER = { round: 1.2, flat: 2, compactFlat: 1.2 } as const;
/** Lowest natural frequency below which a structure is flexible [Hz]: 26.2. @source asce7-16 */
export const FLEXIBLE_BELOW = 1;
/** Damping where the plan gives a frequency and no damping, share of critical. @source asce7-16 */
export const STANDARD_DAMPING = 0.01;

/**
 * The wind of one ASCE 7 edition over a structure.
 *
 * q = c·Kz·Kzt·Kd·Ke·V²; F = q·G·EPA
 *
 * @source asce7-16
 */
export function asceWind<C extends string>(edition: AsceEdition<C>, conditions: WindConditions): Wind {
  const { windStructure, speed, actual } = conditions;
  const exposure = exposureOf(conditions.exposure);
  const c = PRESSURE_CONSTANT[conditions.units];
  const tableKd =
    windStructure.kind === 'lattice' ? LATTICE_DIRECTION_FACTOR : edition.polesDirectionFactor(windStructure.sides);
  const Kd = actual ? 1 : tableKd;
  const Ke =
    edition.elevationCounts && conditions.groundElevation > 0
      ? groundElevationFactor.of(conditions.groundElevation, ELEVATION_DECAY_HEIGHT)
      : 1;
  const hill = countedHill(edition.hill, conditions);
  const flexible = windStructure.frequency !== undefined && windStructure.frequency < FLEXIBLE_BELOW;
  const constants = edition.exposureConstants[exposure];
  const factors = (z: number, V: number, trace?: Trace): PressureFactors => ({
    c,
    Kz: edition.exposureCoefficient(z, constants, trace),
    Kzt: hill.factor(z, trace),
    Kd,
    Ke,
    V,
  });
  const pressure = (z: number, trace?: Trace) => {
    if (trace && Ke !== 1) evaluate(trace, groundElevationFactor, [conditions.groundElevation, ELEVATION_DECAY_HEIGHT]);
    return edition.pressure(factors(z, speed, trace), trace);
  };
  // Pressure and flow are asked for the same height one after the other.
  let lastHeight = Number.NaN;
  let lastPressure = Number.NaN;
  const pressurePerSpeedSquared = (z: number) => {
    if (z !== lastHeight) {
      lastPressure = edition.pressure(factors(z, 1));
      lastHeight = z;
    }
    return lastPressure;
  };
  const wind: Wind = {
    method: edition.id,
    conditions,
    toAllowableFactor: actual ? 1 : 0.6,
    directionFactor: Kd,
    forceDirectionFactor: edition.directionInForce ? Kd : 1,
    importance: 1,
    elevationFactor: Ke,
    bendsAt: ASCE_LOWEST_HEIGHT,
    pressure,
    pressurePerSpeedSquared,
    exposureCoefficient: (z, trace) => edition.exposureCoefficient(z, constants, trace),
    topographicFactor: hill.factor,
    gustVaries: flexible,
    // Without wind nothing resonates.
    gustEffect: (V = speed, trace) =>
      flexible && V > 0
        ? Math.max(
            RIGID_GUST_EFFECT,
            flexibleGustEffect(
              { height: windStructure.height, width: windStructure.width },
              edition.gustConstants[exposure],
              windStructure.frequency as number,
              windStructure.damping ?? STANDARD_DAMPING,
              V,
              trace,
            ),
          )
        : RIGID_GUST_EFFECT,
    flowPerSpeed: (z) => Math.sqrt(pressurePerSpeedSquared(z)),
    flow: (z, diameter, trace) => evaluate(trace, flowMeasureAsce, [diameter, pressure(z)]),
    forceCoefficient: (rule, role, direction) =>
      coefficientOf(rule, conditions.units, (own) => asceCoefficient(own, role, direction, conditions.units)),
    leastPressure: actual ? 0 : ASCE_LEAST_PRESSURE,
  };
  return hill.excluded ? { ...wind, hillExcluded: hill.excluded } : wind;
}

function asceCoefficient(rule: MethodRule, role: Role, direction: WindDirection, units: UnitSystem): PartCoefficient {
  switch (rule.of) {
    case 'round':
      return { byFlow: roundCoefficientAsce(rule.aspect, role, units) };
    case 'flat':
      return { byFlow: flatCoefficientAsce(rule.face) };
    case 'lattice':
      return { byFlow: latticeCoefficientAsce(rule.face, direction) };
    case 'pole':
      return { byFlow: poleCoefficientAsce(rule.sides, rule.aspect, role, units) };
  }
}

/**
 * The method record of one ASCE 7 edition.
 *
 * @source asce7-16
 */
export function asceMethod<C extends string>(edition: AsceEdition<C>): Method {
  return {
    id: edition.id,
    title: edition.title,
    ...codeSpeeds('gust3-strength'),
    aside: undefined,
    place: 'us',
    forTowers: false,
    toAllowableFactor: 0.6,
    toAllowableFactorCite: cite(edition.id, '2.4.1, 0.6W', 'published'),
    forceCite: cite(edition.id, edition.forceClause, 'memory'),
    toNominalFactor: 0.6,
    toStrengthFactor: 1,
    since: edition.since,
    meantUnnamedIn: edition.meantUnnamedIn,
    known: edition.known,
    cautions: [],
    ground: BY_EXPOSURE,
    classMatters: false,
    gustsInHeightLaw: false,
    hill: edition.hill,
    slender: SLENDER,
    ratedAreas: ratedByShape(SLENDER),
    ice: {
      mapFactor: edition.iceMapFactor,
      importance: edition.iceImportance,
      grows: true,
      wind: { speedOfGust: (gust) => gust },
      windLevel: 0.7,
      weightLevel: 0.7,
    },
    besideOnTowers: edition.besideOnTowers,
    guyRules: [SIX_TENTHS_AT_STRENGTH, HALF_IN_MAPPED_WIND],
    mastGust: undefined,
    flexibleBelow: FLEXIBLE_BELOW,
    stiffIf: undefined,
    columnShare: COLUMN_SHARE.byH,
    wind: (conditions) => asceWind(edition, conditions),
  };
}
