import { type AsceEdition, asceMethod } from '../../src/methods/asce7.ts';
import {
  EXPOSURE_7_22,
  EXPOSURE_TO_7_16,
  exposureCoefficientOf722,
  exposureCoefficientOfTia,
  exposureCoefficientOfTo716,
  GUST_CONSTANTS_7_22,
  GUST_CONSTANTS_TO_7_16,
} from '../../src/wind/index.ts';

/**
 * What each must not compile: constants of ASCE 7-22 in a formula or method of 7-16, and the other way round. The type
 * check fails when one of the lines marked does compile, and beside each stands its like with the right constants.
 */
export const MIXED_EXPOSURES = {
  of716: (z: number) => exposureCoefficientOfTo716(z, EXPOSURE_TO_7_16.C),
  // @ts-expect-error the formula of 7-16 with constants of 7-22
  of716With722: (z: number) => exposureCoefficientOfTo716(z, EXPOSURE_7_22.C),
  of722: (z: number) => exposureCoefficientOf722(z, EXPOSURE_7_22.C),
  // @ts-expect-error the formula of 7-22 with constants of 7-16
  of722With716: (z: number) => exposureCoefficientOf722(z, EXPOSURE_TO_7_16.C),
  ofTia: (z: number) => exposureCoefficientOfTia(z, 0.85, EXPOSURE_TO_7_16.C),
  // @ts-expect-error the formula of TIA-222 with constants of 7-22
  ofTiaWith722: (z: number) => exposureCoefficientOfTia(z, 0.85, EXPOSURE_7_22.C),
} as const;

export const mixedMethods = [
  (edition: AsceEdition<'to-7-16'>) => asceMethod({ ...edition, gustConstants: GUST_CONSTANTS_TO_7_16 }),
  // @ts-expect-error a method of 7-16 with turbulence of 7-22
  (edition: AsceEdition<'to-7-16'>) => asceMethod({ ...edition, gustConstants: GUST_CONSTANTS_7_22 }),
  // @ts-expect-error a method of 7-16 with exposures of 7-22
  (edition: AsceEdition<'to-7-16'>) => asceMethod({ ...edition, exposureConstants: EXPOSURE_7_22 }),
  // @ts-expect-error a method of 7-16 with the formula of 7-22
  (edition: AsceEdition<'to-7-16'>) => asceMethod({ ...edition, exposureCoefficient: exposureCoefficientOf722 }),
  (edition: AsceEdition<'7-22'>) => asceMethod({ ...edition, gustConstants: GUST_CONSTANTS_7_22 }),
  // @ts-expect-error a method of 7-22 with turbulence of 7-16
  (edition: AsceEdition<'7-22'>) => asceMethod({ ...edition, gustConstants: GUST_CONSTANTS_TO_7_16 }),
  // @ts-expect-error a method of 7-22 with exposures of 7-16
  (edition: AsceEdition<'7-22'>) => asceMethod({ ...edition, exposureConstants: EXPOSURE_TO_7_16 }),
];
