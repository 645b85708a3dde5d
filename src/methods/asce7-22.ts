import { evaluate } from '../foundation/index.ts';
import {
  ASCE_LOWEST_HEIGHT,
  EXPOSURE_7_22,
  exposureCoefficient722,
  GUST_CONSTANTS_7_22,
  velocityPressure722,
} from '../wind/index.ts';
import { asceMethod } from './asce7.ts';

/** ASCE/SEI 7-22. */
export const asce722 = asceMethod({
  id: 'asce7-22',
  title: 'ASCE/SEI 7-22',
  since: 2021,
  known: 'memory',
  elevationCounts: true,
  directionInForce: true,
  // Table 26.6-1: round and octagonal 1.0.
  polesDirectionFactor: () => 1,
  exposureCoefficient: (z, exposure, trace) => {
    const { gradientHeight, alpha } = EXPOSURE_7_22[exposure];
    return trace
      ? evaluate(trace, exposureCoefficient722, [z, ASCE_LOWEST_HEIGHT, gradientHeight, alpha])
      : exposureCoefficient722.of(z, ASCE_LOWEST_HEIGHT, gradientHeight, alpha);
  },
  pressure: ({ c, Kz, Kzt, Ke, V }, trace) =>
    trace ? evaluate(trace, velocityPressure722, [c, Kz, Kzt, Ke, V]) : velocityPressure722.of(c, Kz, Kzt, Ke, V),
  gustConstants: GUST_CONSTANTS_7_22,
  iceMapFactor: 1,
  iceImportance: false,
});
