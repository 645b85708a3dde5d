import { cite, defineFormula, evaluate, FOOT, type Trace, variable } from '../foundation/index.ts';
import type { Exposure } from './ground.ts';

/** Constants of one edition's power law; the brand keeps one edition's constants out of another's formula. */
export interface ExposureConstants<Edition extends string> {
  readonly edition: Edition;
  readonly alpha: number;
  /** Gradient height [m]. */
  readonly gradientHeight: number;
}

export type ByExposure<Edition extends string> = Readonly<Record<Exposure, ExposureConstants<Edition>>>;

const constants = <const Edition extends string>(edition: Edition, alpha: number, gradientFeet: number) => ({
  edition,
  alpha,
  gradientHeight: gradientFeet * FOOT,
});

/** ASCE 7-98 to 7-16 and TIA-222-G and -H. @source bnbc-2020 */
export const EXPOSURE_TO_7_16: ByExposure<'to-7-16'> = {
  B: constants('to-7-16', 7, 1200),
  C: constants('to-7-16', 9.5, 900),
  D: constants('to-7-16', 11.5, 700),
};

/** ASCE 7-22, Table 26.11-1. @source seau-2024 */
export const EXPOSURE_7_22: ByExposure<'7-22'> = {
  B: constants('7-22', 7.5, 3280),
  C: constants('7-22', 9.8, 2460),
  D: constants('7-22', 11.5, 1935),
};

/** Height below which the ASCE coefficient stays as it is [m]: 15 ft. @source bnbc-2020 */
export const ASCE_LOWEST_HEIGHT = 15 * FOOT;

/** TIA-222-G and -H: no coefficient below this. @source tia222-g */
export const TIA_LOWEST_COEFFICIENT: Readonly<Record<Exposure, number>> = { B: 0.7, C: 0.85, D: 1.03 };

const height = variable('z', 'height above ground', 'length', 0, 600);
const lowest = variable('z_min', 'no lower height counts, 15 ft', 'length', 4.572, 4.572);
const alpha = variable('alpha', 'exponent of the exposure', 'one', 7, 11.5);

export const exposureCoefficientTo716 = defineFormula({
  id: 'kz-asce7-to-7-16',
  title: 'Velocity pressure exposure coefficient, ASCE 7-98 to 7-16',
  symbol: 'K_z',
  unit: 'one',
  expression: '2.01 * (min(max(z, z_min), z_g) / z_g)^(2 / alpha)',
  variables: [height, lowest, variable('z_g', 'gradient height', 'length', 213.36, 365.76), alpha],
  cite: cite(
    'asce7-16',
    'Table 26.10-1 note 1, Table 26.11-1; read in BNBC 2020 Part 6 Ch. 2, Table 6.2.11',
    'published',
  ),
  of: (z: number, lowestHeight: number, gradient: number, exponent: number) =>
    2.01 * (Math.min(Math.max(z, lowestHeight), gradient) / gradient) ** (2 / exponent),
});

export const exposureCoefficient722 = defineFormula({
  id: 'kz-asce7-22',
  title: 'Velocity pressure exposure coefficient, ASCE 7-22',
  symbol: 'K_z',
  unit: 'one',
  expression: '2.41 * (min(max(z, z_min), z_g) / z_g)^(2 / alpha)',
  variables: [height, lowest, variable('z_g', 'gradient height', 'length', 589.788, 999.744), alpha],
  cite: cite('asce7-22', 'Table 26.10-1 note 1, Table 26.11-1', 'second-hand'),
  of: (z: number, lowestHeight: number, gradient: number, exponent: number) =>
    2.41 * (Math.min(Math.max(z, lowestHeight), gradient) / gradient) ** (2 / exponent),
});

export const exposureCoefficientTia = defineFormula({
  id: 'kz-tia222',
  title: 'Velocity pressure coefficient, TIA-222-G and -H',
  symbol: 'K_z',
  unit: 'one',
  expression: 'min(2.01, max(K_zmin, 2.01 * (z / z_g)^(2 / alpha)))',
  variables: [
    height,
    variable('K_zmin', 'no lower coefficient counts', 'one', 0.7, 1.03),
    variable('z_g', 'gradient height', 'length', 213.36, 365.76),
    alpha,
  ],
  cite: cite('tia222-g', '2.6.5.2, Table 2-4; floor from memory', 'memory'),
  of: (z: number, floor: number, gradient: number, exponent: number) =>
    Math.min(2.01, Math.max(floor, 2.01 * (z / gradient) ** (2 / exponent))),
});

export const exposureCoefficientEiaF = defineFormula({
  id: 'kz-eia222-f',
  title: 'Exposure coefficient, TIA/EIA-222-F',
  symbol: 'K_z',
  unit: 'one',
  expression: 'min(2.58, max(1, (z / z_33)^(2 / 7)))',
  variables: [height, variable('z_33', 'reference height, 33 ft', 'length', 10.0584, 10.0584)],
  cite: cite('eia222-f', '2.3.3', 'published'),
  of: (z: number, reference: number) => Math.min(2.58, Math.max(1, (z / reference) ** (2 / 7))),
});

/** Reference height of the EIA-222-F power law [m]: 33 ft. @source eia222-f */
export const REFERENCE_HEIGHT = 33 * FOOT;

/**
 * Velocity pressure exposure coefficient of ASCE 7-98 to 7-16, with their constants only.
 *
 * K_z = 2.01·(max(z, 15 ft)/z_g)^(2/α)
 *
 * @param z height above ground [m]
 * @param constants of the exposure, from these editions
 * @returns the coefficient [-]
 * @example exposureCoefficientOfTo716(10.0584, EXPOSURE_TO_7_16.C) // 1.0022
 * @source bnbc-2020
 */
export function exposureCoefficientOfTo716(z: number, constants: ExposureConstants<'to-7-16'>, trace?: Trace): number {
  const { gradientHeight, alpha } = constants;
  return trace
    ? evaluate(trace, exposureCoefficientTo716, [z, ASCE_LOWEST_HEIGHT, gradientHeight, alpha])
    : exposureCoefficientTo716.of(z, ASCE_LOWEST_HEIGHT, gradientHeight, alpha);
}

/**
 * Velocity pressure exposure coefficient of ASCE 7-22, with its constants only.
 *
 * K_z = 2.41·(max(z, 15 ft)/z_g)^(2/α)
 *
 * @param z height above ground [m]
 * @param constants of the exposure, from this edition
 * @returns the coefficient [-]
 * @example exposureCoefficientOf722(10.0584, EXPOSURE_7_22.C) // 0.9997
 * @source seau-2024
 */
export function exposureCoefficientOf722(z: number, constants: ExposureConstants<'7-22'>, trace?: Trace): number {
  const { gradientHeight, alpha } = constants;
  return trace
    ? evaluate(trace, exposureCoefficient722, [z, ASCE_LOWEST_HEIGHT, gradientHeight, alpha])
    : exposureCoefficient722.of(z, ASCE_LOWEST_HEIGHT, gradientHeight, alpha);
}

/**
 * Velocity pressure coefficient of TIA-222-G and -H, which take the constants of ASCE 7-98 to 7-16.
 *
 * K_z = 2.01·(z/z_g)^(2/α), not below its floor, not above 2.01
 *
 * @param z height above ground [m]
 * @param floor no lower coefficient counts [-]
 * @returns the coefficient [-]
 * @example exposureCoefficientOfTia(1, 0.85, EXPOSURE_TO_7_16.C) // 0.85
 * @source tia222-g
 */
export function exposureCoefficientOfTia(
  z: number,
  floor: number,
  constants: ExposureConstants<'to-7-16'>,
  trace?: Trace,
): number {
  const { gradientHeight, alpha } = constants;
  return trace
    ? evaluate(trace, exposureCoefficientTia, [z, floor, gradientHeight, alpha])
    : exposureCoefficientTia.of(z, floor, gradientHeight, alpha);
}

/**
 * Height up to which the floor of TIA-222-G and -H holds.
 *
 * z = z_g·(K_zmin/2.01)^(α/2)
 *
 * @param floor no lower coefficient counts [-]
 * @returns the height [m]
 * @example lowestHeightOfTia(0.85, EXPOSURE_TO_7_16.C) // 4.6006
 * @source tia222-g
 */
export function lowestHeightOfTia(floor: number, constants: ExposureConstants<'to-7-16'>): number {
  const { gradientHeight, alpha } = constants;
  return gradientHeight * (floor / 2.01) ** (alpha / 2);
}
