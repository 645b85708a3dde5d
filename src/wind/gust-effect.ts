import { cite, defineFormula, evaluate, FOOT, type Trace, variable } from '../foundation/index.ts';
import type { Exposure } from './ground.ts';

/** Constants of the turbulence formulas of one exposure; the brand keeps one edition's constants out of another's method. */
export interface GustConstants<Edition extends string = string> {
  readonly edition: Edition;
  readonly meanFactor: number;
  readonly meanExponent: number;
  readonly intensity: number;
  /** [m] */
  readonly lengthScale: number;
  readonly lengthExponent: number;
  /** [m] */
  readonly lowestHeight: number;
}

const gustConstants = <const Edition extends string>(
  edition: Edition,
  b: number,
  a: number,
  c: number,
  lFeet: number,
  epsilon: number,
  zMinFeet: number,
): GustConstants<Edition> => ({
  edition,
  meanFactor: b,
  meanExponent: a,
  intensity: c,
  lengthScale: lFeet * FOOT,
  lengthExponent: epsilon,
  lowestHeight: zMinFeet * FOOT,
});

/** ASCE 7-98 to 7-16, Table 26.11-1. @source bnbc-2020 */
export const GUST_CONSTANTS_TO_7_16: Readonly<Record<Exposure, GustConstants<'to-7-16'>>> = {
  B: gustConstants('to-7-16', 0.45, 1 / 4, 0.3, 320, 1 / 3, 30),
  C: gustConstants('to-7-16', 0.65, 1 / 6.5, 0.2, 500, 1 / 5, 15),
  D: gustConstants('to-7-16', 0.8, 1 / 9, 0.15, 650, 1 / 8, 7),
};

/** ASCE 7-22, Table 26.11-1: mean factor and exponent second hand, the rest as before. @source asce7-22 */
export const GUST_CONSTANTS_7_22: Readonly<Record<Exposure, GustConstants<'7-22'>>> = {
  B: { ...GUST_CONSTANTS_TO_7_16.B, edition: '7-22', meanFactor: 0.47, meanExponent: 1 / 4.5 },
  C: { ...GUST_CONSTANTS_TO_7_16.C, edition: '7-22', meanFactor: 0.66, meanExponent: 1 / 6.4 },
  D: { ...GUST_CONSTANTS_TO_7_16.D, edition: '7-22', meanFactor: 0.78, meanExponent: 1 / 8 },
};

/** Permitted for a rigid structure. @source asce7-16 */
export const RIGID_GUST_EFFECT = 0.85;

const TURBULENCE = '26.11; constants read in BNBC 2020 Part 6 Ch. 2, Table 6.2.10';
const thirtyThreeFeet = variable('z_33', 'reference height, 33 ft', 'length', 10.0584, 10.0584);
const equivalent = variable('z_bar', 'equivalent height, 0.6 of the structure', 'length', 2.1, 360);

export const equivalentHeight = defineFormula({
  id: 'z-equivalent',
  title: 'Equivalent height of the structure',
  symbol: 'z_bar',
  unit: 'length',
  expression: 'max(0.6 * h, z_min)',
  variables: [
    variable('h', 'height of the structure', 'length', 1, 600),
    variable('z_min', 'no lower height counts', 'length', 2.1, 9.2),
  ],
  cite: cite('asce7-16', TURBULENCE, 'published'),
  of: (height: number, lowest: number) => Math.max(0.6 * height, lowest),
});

export const turbulenceIntensity = defineFormula({
  id: 'turbulence-intensity',
  title: 'Intensity of turbulence',
  symbol: 'I_z',
  unit: 'one',
  expression: 'c * (z_33 / z_bar)^(1/6)',
  variables: [variable('c', 'constant of the exposure', 'one', 0.15, 0.3), thirtyThreeFeet, equivalent],
  cite: cite('asce7-16', `Eq. 26.11-7; ${TURBULENCE}`, 'published'),
  of: (c: number, reference: number, z: number) => c * (reference / z) ** (1 / 6),
});

export const turbulenceLength = defineFormula({
  id: 'turbulence-length',
  title: 'Length scale of turbulence',
  symbol: 'L_z',
  unit: 'length',
  expression: 'l * (z_bar / z_33)^epsilon',
  variables: [
    variable('l', 'constant of the exposure', 'length', 97, 199),
    equivalent,
    thirtyThreeFeet,
    variable('epsilon', 'constant of the exposure', 'one', 0.125, 0.3334),
  ],
  cite: cite('asce7-16', `Eq. 26.11-9; ${TURBULENCE}`, 'published'),
  of: (l: number, z: number, reference: number, epsilon: number) => l * (z / reference) ** epsilon,
});

export const backgroundResponse = defineFormula({
  id: 'background-response',
  title: 'Background response',
  symbol: 'Q',
  unit: 'one',
  expression: '1 / sqrt(1 + 0.63 * ((B + h) / L_z)^0.63)',
  variables: [
    variable('B', 'width of the structure', 'length', 0, 20),
    variable('h', 'height of the structure', 'length', 1, 600),
    variable('L_z', 'length scale of turbulence', 'length', 30, 400),
  ],
  cite: cite('asce7-16', `Eq. 26.11-8; ${TURBULENCE}`, 'published'),
  of: (width: number, height: number, length: number) => 1 / Math.sqrt(1 + 0.63 * ((width + height) / length) ** 0.63),
});

export const gustEffectRigid = defineFormula({
  id: 'gust-effect-rigid',
  title: 'Gust effect factor of a rigid structure, computed',
  symbol: 'G',
  unit: 'one',
  expression: '0.925 * (1 + 1.7 * g * I_z * Q) / (1 + 1.7 * g * I_z)',
  variables: [
    variable('g', 'peak factor', 'one', 3.4, 3.4),
    variable('I_z', 'intensity of turbulence', 'one', 0.05, 0.4),
    variable('Q', 'background response', 'one', 0.5, 1),
  ],
  cite: cite('asce7-16', `Eq. 26.11-6; ${TURBULENCE}`, 'published'),
  of: (g: number, intensity: number, Q: number) => (0.925 * (1 + 1.7 * g * intensity * Q)) / (1 + 1.7 * g * intensity),
});

export const meanWindSpeed = defineFormula({
  id: 'mean-wind-speed',
  title: 'Mean hourly wind speed at the equivalent height',
  symbol: 'V_z',
  unit: 'speed',
  expression: 'b * (z_bar / z_33)^a * V',
  variables: [
    variable('b', 'constant of the exposure', 'one', 0.45, 0.8),
    equivalent,
    thirtyThreeFeet,
    variable('a', 'constant of the exposure', 'one', 0.111, 0.25),
    variable('V', '3-second gust of the map', 'speed', 5, 180),
  ],
  cite: cite('asce7-16', `Eq. 26.11-16; ${TURBULENCE}`, 'published'),
  of: (b: number, z: number, reference: number, a: number, V: number) => b * (z / reference) ** a * V,
});

export const resonantPeakFactor = defineFormula({
  id: 'resonant-peak-factor',
  title: 'Peak factor of the resonant response',
  symbol: 'g_R',
  unit: 'one',
  expression: 'sqrt(2 * log(t * n_1)) + 0.577 / sqrt(2 * log(t * n_1))',
  variables: [
    variable('t', 'seconds in an hour', 'period', 3600, 3600),
    variable('n_1', 'natural frequency', 'frequency', 0.05, 5),
  ],
  cite: cite('asce7-16', `Eq. 26.11-11; ${TURBULENCE}`, 'published'),
  of: (seconds: number, frequency: number) => {
    const y = Math.sqrt(2 * Math.log(seconds * frequency));
    return y + 0.577 / y;
  },
});

export const resonantSpectrum = defineFormula({
  id: 'resonant-spectrum',
  title: 'Share of the gusts at the natural frequency',
  symbol: 'R_n',
  unit: 'one',
  expression: '7.47 * (n_1 * L_z / V_z) / (1 + 10.3 * n_1 * L_z / V_z)^(5/3)',
  variables: [
    variable('n_1', 'natural frequency', 'frequency', 0.05, 5),
    variable('L_z', 'length scale of turbulence', 'length', 30, 400),
    variable('V_z', 'mean hourly wind speed', 'speed', 2, 150),
  ],
  cite: cite('asce7-16', `Eqs. 26.11-13, -14; ${TURBULENCE}`, 'published'),
  of: (frequency: number, length: number, speed: number) => {
    const N = (frequency * length) / speed;
    return (7.47 * N) / (1 + 10.3 * N) ** (5 / 3);
  },
});

export const sizeReduction = defineFormula({
  id: 'resonant-size-reduction',
  title: 'Reduction because a gust does not cover the whole size at once',
  symbol: 'R_l',
  unit: 'one',
  expression: '1 / (k * n_1 * l / V_z) - (1 - exp(-2 * k * n_1 * l / V_z)) / (2 * (k * n_1 * l / V_z)^2)',
  variables: [
    variable('k', '4.6 for height and width, 15.4 for depth', 'one', 4.6, 15.4),
    variable('n_1', 'natural frequency', 'frequency', 0.05, 5),
    variable('l', 'height, width or depth', 'length', 0.2, 200),
    variable('V_z', 'mean hourly wind speed', 'speed', 2, 150),
  ],
  cite: cite('asce7-16', `Eq. 26.11-15; ${TURBULENCE}`, 'published'),
  of: (k: number, frequency: number, size: number, speed: number) => {
    const eta = (k * frequency * size) / speed;
    return 1 / eta - (1 - Math.exp(-2 * eta)) / (2 * eta * eta);
  },
});

export const resonantResponse = defineFormula({
  id: 'resonant-response',
  title: 'Resonant response',
  symbol: 'R',
  unit: 'one',
  expression: 'sqrt(R_n * R_h * R_B * (0.53 + 0.47 * R_L) / beta)',
  variables: [
    variable('R_n', 'share of the gusts at the natural frequency', 'one', 0, 0.3),
    variable('R_h', 'reduction by height', 'one', 0, 1),
    variable('R_B', 'reduction by width', 'one', 0, 1),
    variable('R_L', 'reduction by depth', 'one', 0, 1),
    variable('beta', 'damping, share of critical', 'one', 0.002, 0.1),
  ],
  cite: cite('asce7-16', `Eq. 26.11-12; ${TURBULENCE}`, 'published'),
  of: (Rn: number, Rh: number, RB: number, RL: number, damping: number) =>
    Math.sqrt((Rn * Rh * RB * (0.53 + 0.47 * RL)) / damping),
});

export const gustEffectFlexible = defineFormula({
  id: 'gust-effect-flexible',
  title: 'Gust effect factor of a flexible structure',
  symbol: 'G_f',
  unit: 'one',
  expression: '0.925 * (1 + 1.7 * I_z * sqrt(g^2 * Q^2 + g_R^2 * R^2)) / (1 + 1.7 * g * I_z)',
  variables: [
    variable('I_z', 'intensity of turbulence', 'one', 0.05, 0.4),
    variable('g', 'peak factor', 'one', 3.4, 3.4),
    variable('Q', 'background response', 'one', 0.5, 1),
    variable('g_R', 'peak factor of the resonant response', 'one', 2, 5),
    variable('R', 'resonant response', 'one', 0, 3),
  ],
  cite: cite('asce7-16', `Eq. 26.11-10; ${TURBULENCE}`, 'published'),
  of: (intensity: number, g: number, Q: number, gR: number, R: number) =>
    (0.925 * (1 + 1.7 * intensity * Math.sqrt(g * g * Q * Q + gR * gR * R * R))) / (1 + 1.7 * g * intensity),
});

/** Peak factor for background response. @source asce7-16 */
export const PEAK_FACTOR = 3.4;
const REFERENCE = 33 * FOOT;

/** Size of a structure as the gust formulas see it [m]. */
export interface GustedSize {
  readonly height: number;
  readonly width: number;
}

function background(size: GustedSize, constants: GustConstants, trace: Trace | undefined) {
  const zBar = evaluate(trace, equivalentHeight, [size.height, constants.lowestHeight]);
  const intensity = evaluate(trace, turbulenceIntensity, [constants.intensity, REFERENCE, zBar]);
  const length = evaluate(trace, turbulenceLength, [constants.lengthScale, zBar, REFERENCE, constants.lengthExponent]);
  const Q = evaluate(trace, backgroundResponse, [size.width, size.height, length]);
  return { zBar, intensity, length, Q };
}

/**
 * Gust effect factor of a structure whose lowest frequency is under 1 Hz; depth taken as width.
 *
 * G_f = 0.925(1 + 1.7·I_z·√(g²Q² + g_R²R²))/(1 + 1.7·g·I_z)
 *
 * @param size height and width of the structure [m]
 * @param frequency lowest natural frequency [Hz]
 * @param damping share of critical [-]
 * @param V 3-second gust of the map [m/s]
 * @returns the factor [-], rising with the speed
 * @example flexibleGustEffect({ height: 21.9456, width: 0.3 }, GUST_CONSTANTS_TO_7_16.C, 0.8, 0.01, 50.06848) // 1.3686
 * @source asce7-16
 */
export function flexibleGustEffect(
  size: GustedSize,
  constants: GustConstants,
  frequency: number,
  damping: number,
  V: number,
  trace?: Trace,
): number {
  const { zBar, intensity, length, Q } = background(size, constants, trace);
  const meanSpeed = evaluate(trace, meanWindSpeed, [constants.meanFactor, zBar, REFERENCE, constants.meanExponent, V]);
  const Rn = evaluate(trace, resonantSpectrum, [frequency, length, meanSpeed]);
  const Rh = evaluate(trace, sizeReduction, [4.6, frequency, size.height, meanSpeed]);
  const RB = evaluate(trace, sizeReduction, [4.6, frequency, size.width, meanSpeed]);
  const RL = evaluate(trace, sizeReduction, [15.4, frequency, size.width, meanSpeed]);
  const R = evaluate(trace, resonantResponse, [Rn, Rh, RB, RL, damping]);
  const gR = evaluate(trace, resonantPeakFactor, [3600, frequency]);
  return evaluate(trace, gustEffectFlexible, [intensity, PEAK_FACTOR, Q, gR, R]);
}

export const gustEffectEiaF = defineFormula({
  id: 'gust-eia222-f',
  title: 'Gust response factor, TIA/EIA-222-F',
  symbol: 'G_H',
  unit: 'one',
  expression: 'min(1.25, max(1, 0.65 + 0.60 / (h / z_33)^(1/7)))',
  variables: [variable('h', 'height of the structure', 'length', 1, 600), thirtyThreeFeet],
  cite: cite('eia222-f', '2.3.4', 'published'),
  of: (height: number, reference: number) => Math.min(1.25, Math.max(1, 0.65 + 0.6 / (height / reference) ** (1 / 7))),
});

export const mastGustEiaF = defineFormula({
  id: 'gust-mast-eia222-f',
  title: 'Gust response factor of a mast on a tower, for the mast itself, TIA/EIA-222-F',
  symbol: 'G_m',
  unit: 'one',
  expression: '1.25 * G_H',
  variables: [variable('G_H', 'gust response factor of the structure', 'one', 1, 1.25)],
  cite: cite('eia222-f', '2.3.4.4, structure mounted on another', 'memory'),
  of: (structure: number) => 1.25 * structure,
});

/** Tubular poles by TIA/EIA-222-F 2.3.4, from memory. @source eia222-f */
export const POLE_GUST_EIA_F = 1.69;

export const gustEffectTiaLattice = defineFormula({
  id: 'gust-tia222-lattice',
  title: 'Gust effect factor of a self-supporting lattice, TIA-222-G and -H',
  symbol: 'G_h',
  unit: 'one',
  expression: 'min(1, max(0.85, 0.85 + 0.15 * (h / h_150 - 3)))',
  variables: [
    variable('h', 'height of the structure', 'length', 1, 600),
    variable('h_150', '150 ft', 'length', 45.72, 45.72),
  ],
  cite: cite('tia222-g', '2.6.7.1', 'memory'),
  of: (height: number, step: number) => Math.min(1, Math.max(0.85, 0.85 + 0.15 * (height / step - 3))),
});

/** TIA-222-G and -H 2.6.7, from memory. @source tia222-g */
export const GUST_TIA = { guyed: 0.85, pole: 1.1, mastOnTower: 1.35, step: 150 * FOOT } as const;
