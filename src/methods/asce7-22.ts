import { evaluate } from '../foundation/index.ts';
import { EXPOSURE_7_22, exposureCoefficientOf722, GUST_CONSTANTS_7_22, velocityPressure722 } from '../wind/index.ts';
import { asceMethod } from './asce7.ts';
import { ASCE_HILL_RULE_7_22 } from './hill.ts';

/** ASCE/SEI 7-22. */
export const asce722 = asceMethod({
  id: 'asce7-22',
  title: 'ASCE/SEI 7-22',
  since: 2021,
  meantUnnamedIn: 'every-place',
  known: 'memory',
  elevationCounts: true,
  directionInForce: true,
  // Table 26.6-1: round and octagonal 1.0.
  polesDirectionFactor: () => 1,
  exposureConstants: EXPOSURE_7_22,
  exposureCoefficient: exposureCoefficientOf722,
  pressure: ({ c, Kz, Kzt, Ke, V }, trace) =>
    trace ? evaluate(trace, velocityPressure722, [c, Kz, Kzt, Ke, V]) : velocityPressure722.of(c, Kz, Kzt, Ke, V),
  gustConstants: GUST_CONSTANTS_7_22,
  forceClause: '29.4, Eq. 29.4-1, with the direction factor; least pressure 29.7',
  iceMapFactor: 1,
  iceImportance: undefined,
  hill: ASCE_HILL_RULE_7_22,
  besideOnTowers: 'tia222-h',
});
