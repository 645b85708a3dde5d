import { evaluate } from '../foundation/index.ts';
import {
  EXPOSURE_TO_7_16,
  exposureCoefficientOfTo716,
  GUST_CONSTANTS_TO_7_16,
  ICE_IMPORTANCE_7_16,
  velocityPressure716,
} from '../wind/index.ts';
import { asceMethod } from './asce7.ts';
import { ASCE_HILL_RULE_TO_7_16 } from './hill.ts';

/** ASCE/SEI 7-16. */
export const asce716 = asceMethod({
  id: 'asce7-16',
  title: 'ASCE/SEI 7-16',
  since: 2016,
  meantUnnamedIn: 'every-place',
  known: 'memory',
  elevationCounts: true,
  directionInForce: false,
  // Table 26.6-1: round and octagonal 1.0.
  polesDirectionFactor: () => 1,
  exposureConstants: EXPOSURE_TO_7_16,
  exposureCoefficient: exposureCoefficientOfTo716,
  pressure: ({ c, Kz, Kzt, Kd, Ke, V }, trace) =>
    trace
      ? evaluate(trace, velocityPressure716, [c, Kz, Kzt, Kd, Ke, V])
      : velocityPressure716.of(c, Kz, Kzt, Kd, Ke, V),
  gustConstants: GUST_CONSTANTS_TO_7_16,
  forceClause: '29.4, Eq. 29.4-1; least pressure 29.7',
  iceMapFactor: 1,
  iceImportance: ICE_IMPORTANCE_7_16,
  hill: ASCE_HILL_RULE_TO_7_16,
  besideOnTowers: 'tia222-h',
});
