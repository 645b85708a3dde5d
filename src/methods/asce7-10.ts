import { evaluate } from '../foundation/index.ts';
import {
  EXPOSURE_TO_7_16,
  exposureCoefficientOfTo716,
  GUST_CONSTANTS_TO_7_16,
  ICE_IMPORTANCE_7_10,
  velocityPressure710,
} from '../wind/index.ts';
import { asceMethod } from './asce7.ts';
import { ASCE_HILL_RULE_TO_7_16 } from './hill.ts';

/** ASCE/SEI 7-10. */
export const asce710 = asceMethod({
  id: 'asce7-10',
  title: 'ASCE/SEI 7-10',
  since: 2010,
  meantUnnamedIn: 'every-place',
  known: 'memory',
  elevationCounts: false,
  directionInForce: false,
  // Table 26.6-1, chimneys, tanks and similar structures: round and hexagonal 0.95.
  polesDirectionFactor: () => 0.95,
  exposureConstants: EXPOSURE_TO_7_16,
  exposureCoefficient: exposureCoefficientOfTo716,
  pressure: ({ c, Kz, Kzt, Kd, V }, trace) =>
    trace ? evaluate(trace, velocityPressure710, [c, Kz, Kzt, Kd, V]) : velocityPressure710.of(c, Kz, Kzt, Kd, V),
  gustConstants: GUST_CONSTANTS_TO_7_16,
  forceClause: '29.5, Eq. 29.5-1',
  iceMapFactor: 2,
  iceImportance: ICE_IMPORTANCE_7_10,
  hill: ASCE_HILL_RULE_TO_7_16,
  besideOnTowers: 'tia222-g',
});
