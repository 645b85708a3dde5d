import {
  flatCoefficientF,
  flowNumberF,
  latticeCoefficientF,
  poleCoefficientF,
  type Role,
  roundCoefficientF,
  type WindDirection,
} from '../areas/index.ts';
import { cite, evaluate, type Trace } from '../foundation/index.ts';
import {
  exposureCoefficientEiaF,
  gustEffectEiaF,
  mastGustEiaF,
  POLE_GUST_EIA_F,
  PRESSURE_CONSTANT,
  REFERENCE_HEIGHT,
  velocityPressureF,
} from '../wind/index.ts';
import { codeSpeeds } from './code-speeds.ts';
import { coefficientOf, type MethodRule } from './common-coefficients.ts';
import { BY_EXPOSURE } from './ground-by-exposure.ts';
import { HALF_IN_MAPPED_WIND } from './guy-rules.ts';
import { COLUMN_SHARE, type Method, type PartCoefficient, type Wind, type WindConditions } from './method.ts';
import { ratedByShape } from './rated-areas.ts';

/** Its allowable stresses were raised by one third for wind, today's are not. */
const LEVEL = 0.75;
const SLENDER = { round: 1.2, flat: 2, compactFlat: 1.4 } as const;

function wind(conditions: WindConditions): Wind {
  const { windStructure, speed, actual } = conditions;
  const c = PRESSURE_CONSTANT[conditions.units];
  const Kz = (z: number, trace?: Trace) =>
    trace
      ? evaluate(trace, exposureCoefficientEiaF, [z, REFERENCE_HEIGHT])
      : exposureCoefficientEiaF.of(z, REFERENCE_HEIGHT);
  const pressureAt = (z: number, V: number, trace?: Trace) =>
    trace ? evaluate(trace, velocityPressureF, [c, Kz(z, trace), V]) : velocityPressureF.of(c, Kz(z), V);
  return {
    method: 'eia222-f',
    conditions,
    toAllowableFactor: actual ? 1 : LEVEL,
    directionFactor: 1,
    forceDirectionFactor: 1,
    importance: 1,
    elevationFactor: 1,
    bendsAt: REFERENCE_HEIGHT,
    pressure: (z, trace) => pressureAt(z, speed, trace),
    pressurePerSpeedSquared: (z) => pressureAt(z, 1),
    exposureCoefficient: Kz,
    topographicFactor: () => 1,
    gustVaries: false,
    gustEffect: (_V, trace) =>
      windStructure.kind === 'pole'
        ? POLE_GUST_EIA_F
        : evaluate(trace, gustEffectEiaF, [windStructure.height, REFERENCE_HEIGHT]),
    flowPerSpeed: (z) => Math.sqrt(Kz(z)),
    flow: (z, diameter, trace) => evaluate(trace, flowNumberF, [Kz(z), speed, diameter]),
    forceCoefficient: (rule, role, direction) =>
      coefficientOf(rule, conditions.units, (own) => ownCoefficient(own, role, direction)),
    leastPressure: 0,
  };
}

function ownCoefficient(rule: MethodRule, role: Role, direction: WindDirection): PartCoefficient {
  switch (rule.of) {
    case 'round':
      return { byFlow: roundCoefficientF(rule.aspect) };
    case 'flat':
      return { byFlow: flatCoefficientF(rule.face) };
    case 'lattice':
      return { byFlow: latticeCoefficientF(rule.face, direction) };
    case 'pole':
      return { byFlow: poleCoefficientF(rule.sides, role) };
  }
}

/** TIA/EIA-222-F; revisions D and E are read alike. It knows neither hills nor ground elevation. */
export const eia222F: Method = {
  id: 'eia222-f',
  title: 'TIA/EIA-222-F',
  ...codeSpeeds('fastest-mile'),
  aside: undefined,
  place: 'us',
  forTowers: true,
  toAllowableFactor: LEVEL,
  toAllowableFactorCite: cite('eia222-f', '3.1.1.1, stresses raised by one third for wind', 'second-hand'),
  forceCite: cite('eia222-f', '2.3.2', 'memory'),
  toNominalFactor: 1,
  since: 1986,
  meantUnnamedIn: 'every-place',
  known: 'memory',
  cautions: [],
  ground: { ...BY_EXPOSURE, counts: false },
  classMatters: false,
  gustsInHeightLaw: false,
  hill: undefined,
  slender: SLENDER,
  ratedAreas: ratedByShape(SLENDER),
  // 2.3.16: radial ice as given at every height, with three quarters of the wind's force.
  ice: {
    mapFactor: 1,
    importance: undefined,
    grows: false,
    wind: { shareOfForce: 0.75 },
    windLevel: LEVEL,
    weightLevel: 1,
  },
  besideOnTowers: undefined,
  guyRules: [HALF_IN_MAPPED_WIND],
  flexibleBelow: undefined,
  stiffIf: undefined,
  columnShare: COLUMN_SHARE.byH,
  mastGust: ({ height }, trace) =>
    evaluate(trace, mastGustEiaF, [evaluate(trace, gustEffectEiaF, [height, REFERENCE_HEIGHT])]),
  wind,
};
