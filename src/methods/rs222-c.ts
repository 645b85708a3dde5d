import { constantCoefficient, latticeCoefficientC, poleCoefficientC, ROUND_SHARE_C } from '../areas/index.ts';
import { cite, defineFormula, evaluate, type UnitSystem, variable } from '../foundation/index.ts';
import { FLAT_PLATE_CONSTANT, flatPlatePressureC, PRESSURE_CONSTANT } from '../wind/index.ts';
import { codeSpeeds } from './code-speeds.ts';
import { coefficientOf, type MethodRule } from './common-coefficients.ts';
import { BY_EXPOSURE } from './ground-by-exposure.ts';
import { HALF_IN_MAPPED_WIND } from './guy-rules.ts';
import {
  COLUMN_SHARE,
  type Method,
  type PartCoefficient,
  type RatedAreas,
  type Wind,
  type WindConditions,
} from './method.ts';
import { only, RATED_AREA_KINDS } from './rated-areas.ts';

const LEVEL = 0.75;

export const dragAreaShareC = defineFormula({
  id: 'drag-area-rs222-c',
  title: 'Least pressure of RS-222-C on a stated drag area, over its flat-plate pressure',
  symbol: 'C_A',
  unit: 'one',
  expression: '0.8 * c / c_C',
  variables: [
    variable('c', 'half the density of air', 'pressure-constant', 0.6, 0.62),
    variable('c_C', '0.004 psf/mph²', 'pressure-constant', 0.95, 0.96),
  ],
  cite: cite(
    'derived',
    'a drag area holds its coefficients already; the least its faces and two thirds give',
    'derived',
  ),
  of: (air: number, flatPlate: number) => (0.8 * air) / flatPlate,
});

function wind(conditions: WindConditions): Wind {
  return {
    method: 'rs222-c',
    conditions,
    toAllowableFactor: conditions.actual ? 1 : LEVEL,
    directionFactor: 1,
    forceDirectionFactor: 1,
    importance: 1,
    elevationFactor: 1,
    bendsAt: 0,
    pressure: (_z, trace) => evaluate(trace, flatPlatePressureC, [FLAT_PLATE_CONSTANT, conditions.speed]),
    pressurePerSpeedSquared: () => FLAT_PLATE_CONSTANT,
    exposureCoefficient: () => 1,
    topographicFactor: () => 1,
    gustVaries: false,
    gustEffect: () => 1,
    flowPerSpeed: () => 0,
    flow: () => 0,
    forceCoefficient: (rule) =>
      rule.of === 'drag-area'
        ? dragAreaCoefficient(conditions.units)
        : coefficientOf(rule, conditions.units, ownCoefficient),
    leastPressure: 0,
  };
}

function ownCoefficient(rule: MethodRule): PartCoefficient {
  switch (rule.of) {
    case 'round':
      return { byFlow: constantCoefficient(ROUND_SHARE_C) };
    case 'flat':
      return { byFlow: constantCoefficient(1) };
    case 'lattice':
      return { byFlow: latticeCoefficientC(rule.face) };
    case 'pole':
      return { byFlow: poleCoefficientC() };
  }
}

function dragAreaCoefficient(units: UnitSystem): PartCoefficient {
  const inputs: [number, number] = [PRESSURE_CONSTANT[units], FLAT_PLATE_CONSTANT];
  return {
    byFlow: constantCoefficient(dragAreaShareC.of(...inputs), (trace) => evaluate(trace, dragAreaShareC, inputs)),
  };
}

/** What an effective area takes of its flat-plate pressure: 0.00256 of its 0.004. */
const EFFECTIVE_SHARE = 0.00256 / 0.004;

const RATED_AREAS: RatedAreas = {
  factor: (kind, coefficient) => {
    switch (kind) {
      case 'flat-plate':
        return only(1);
      case 'projected-flat':
        return only(coefficient ?? 1);
      case 'projected-round':
        return only(ROUND_SHARE_C);
      case 'effective':
        return only(EFFECTIVE_SHARE);
      case 'unknown':
        return { low: EFFECTIVE_SHARE, high: 1 };
    }
  },
  asked: RATED_AREA_KINDS,
};

/** EIA RS-222-C, for ratings only: one pressure at every height, no gust factor. */
export const rs222C: Method = {
  id: 'rs222-c',
  title: 'EIA RS-222-C',
  ...codeSpeeds('fastest-mile'),
  aside: 'before 1986',
  place: 'us',
  forTowers: true,
  toAllowableFactor: LEVEL,
  toAllowableFactorCite: cite('rs222-c', 'stresses raised by one third for wind', 'memory'),
  forceCite: cite('rs222-c', 'wind pressure on the projected area', 'memory'),
  toNominalFactor: 1,
  since: 1976,
  meantUnnamedIn: 'every-place',
  known: 'memory',
  cautions: [],
  ground: { ...BY_EXPOSURE, counts: false },
  classMatters: false,
  gustsInHeightLaw: false,
  hill: undefined,
  ice: undefined,
  slender: { round: ROUND_SHARE_C, flat: 1, compactFlat: 1 },
  ratedAreas: RATED_AREAS,
  besideOnTowers: undefined,
  guyRules: [HALF_IN_MAPPED_WIND],
  mastGust: undefined,
  flexibleBelow: undefined,
  stiffIf: undefined,
  columnShare: COLUMN_SHARE.byH,
  wind,
};
