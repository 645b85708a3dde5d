import {
  decidingDiameter,
  flatCoefficientTia,
  flowNumberTia,
  latticeCoefficientTia,
  poleCoefficientTia,
  type Role,
  roundCoefficientTia,
  type WindDirection,
} from '../areas/index.ts';
import { evaluate, type Trace } from '../foundation/index.ts';
import {
  EXPOSURE_TO_7_16,
  exposureCoefficientOfTia,
  exposureOf,
  GUST_TIA,
  gustEffectTiaLattice,
  lowestHeightOfTia,
  PRESSURE_CONSTANT,
  TIA_LOWEST_COEFFICIENT,
} from '../wind/index.ts';
import { LATTICE_DIRECTION_FACTOR, type PressureFactors } from './asce7.ts';
import { coefficientOf, type MethodRule } from './common-coefficients.ts';
import { countedHill, TIA_HILL_RULE } from './hill.ts';
import type { PartCoefficient, Wind, WindConditions, WindStructure } from './method.ts';
import type { MethodId } from './method-id.ts';

/** Direction factor of poles, TIA-222-G and -H Table 2-2. @source tia222-g */
export const TIA_POLE_DIRECTION_FACTOR = 0.95;

/** What one revision of TIA-222 (G or later) does in its own way. */
export interface TiaRevision {
  readonly id: MethodId;
  readonly revision: 'G' | 'H';
  readonly toAllowableFactor: (conditions: WindConditions) => number;
  readonly importance: (conditions: WindConditions) => number;
  readonly elevationFactor: (conditions: WindConditions, trace?: Trace) => number;
  /** Speed that the coefficients are entered with, over the speed that makes the pressure. */
  readonly coefficientSpeedRatio: (conditions: WindConditions) => number;
  readonly pressure: (factors: TiaPressureFactors, trace?: Trace) => number;
}

export interface TiaPressureFactors extends PressureFactors {
  readonly I: number;
}

/**
 * The wind of TIA-222-G or -H over a structure.
 *
 * q = c·Kz·Kzt·Kd·V²·I (G), c·Kz·Kzt·Ks·Ke·Kd·V² (H); F = q·Gh·EPA
 *
 * @source tia222-g
 */
export function tiaWind(revision: TiaRevision, conditions: WindConditions): Wind {
  const { windStructure, speed, actual } = conditions;
  const exposure = exposureOf(conditions.exposure);
  const c = PRESSURE_CONSTANT[conditions.units];
  const Kd = actual ? 1 : windStructure.kind === 'lattice' ? LATTICE_DIRECTION_FACTOR : TIA_POLE_DIRECTION_FACTOR;
  const I = revision.importance(conditions);
  const Ke = revision.elevationFactor(conditions);
  const hill = countedHill(TIA_HILL_RULE, conditions);
  const ratio = revision.coefficientSpeedRatio(conditions);
  const constants = EXPOSURE_TO_7_16[exposure];
  const floor = TIA_LOWEST_COEFFICIENT[exposure];
  const Kz = (z: number, trace?: Trace) => exposureCoefficientOfTia(z, floor, constants, trace);
  const factors = (z: number, V: number, trace?: Trace): TiaPressureFactors => ({
    c,
    Kz: Kz(z, trace),
    Kzt: hill.factor(z, trace),
    Kd,
    Ke,
    I,
    V,
  });
  const wind: Wind = {
    method: revision.id,
    conditions,
    toAllowableFactor: actual ? 1 : revision.toAllowableFactor(conditions),
    directionFactor: Kd,
    forceDirectionFactor: 1,
    importance: I,
    elevationFactor: Ke,
    bendsAt: lowestHeightOfTia(floor, constants),
    pressure: (z, trace) => {
      if (trace && Ke !== 1) revision.elevationFactor(conditions, trace);
      return revision.pressure(factors(z, speed, trace), trace);
    },
    pressurePerSpeedSquared: (z) => revision.pressure(factors(z, 1)),
    exposureCoefficient: Kz,
    topographicFactor: hill.factor,
    gustVaries: false,
    gustEffect: (_V, trace) => tiaGustEffect(windStructure, trace),
    flowPerSpeed: (z) => Math.sqrt(I * hill.factor(z) * Kz(z)) * ratio,
    flow: (z, diameter, trace) => evaluate(trace, flowNumberTia, [I, hill.factor(z), Kz(z), speed * ratio, diameter]),
    forceCoefficient: (rule, role, direction) =>
      coefficientOf(rule, conditions.units, (own) => tiaCoefficient(revision.revision, own, role, direction)),
    leastPressure: 0,
  };
  return hill.excluded ? { ...wind, hillExcluded: hill.excluded } : wind;
}

function tiaGustEffect(windStructure: WindStructure, trace: Trace | undefined): number {
  if (windStructure.kind === 'pole') return GUST_TIA.pole;
  if (windStructure.guyed) return GUST_TIA.guyed;
  return evaluate(trace, gustEffectTiaLattice, [windStructure.height, GUST_TIA.step]);
}

function tiaCoefficient(revision: 'G' | 'H', rule: MethodRule, role: Role, direction: WindDirection): PartCoefficient {
  switch (rule.of) {
    case 'round':
      return { byFlow: roundCoefficientTia(revision, rule.aspect) };
    case 'flat':
      return { byFlow: flatCoefficientTia(rule.face) };
    case 'lattice':
      return {
        byFlow: latticeCoefficientTia(revision, rule.face, direction),
        diameter: decidingDiameter(rule.face, role),
      };
    case 'pole':
      return { byFlow: poleCoefficientTia(revision, rule.sides) };
  }
}

/** Coefficients of slender members, TIA-222-G and -H Table 2-8 or 2-9; compact flats its first entry. @source tia222-g */
export const TIA_SLENDER = { round: 1.2, flat: 2, compactFlat: 1.2 } as const;
