import { cite, defineFormula, evaluate, type Trace, variable } from '../foundation/index.ts';
import type { Terrain } from './ground.ts';

/** Roughness length and lowest height of each terrain [m], EN 1991-1-4 Table 4.1. @source en1991-1-4 */
export const TERRAIN_ROUGHNESS: Readonly<Record<Terrain, { readonly length: number; readonly lowest: number }>> = {
  '0': { length: 0.003, lowest: 1 },
  I: { length: 0.01, lowest: 1 },
  II: { length: 0.05, lowest: 2 },
  III: { length: 0.3, lowest: 5 },
  IV: { length: 1, lowest: 10 },
};

/** Density of air [kg/m³], EN 1991-1-4 4.5, recommended value. @source en1991-1-4 */
export const AIR_DENSITY_EN = 1.25;

/** Gust at 10 m in terrain II over the basic wind, √c_e(10 m) = 1.534. @source derived */
export const GUST_OVER_BASIC_WIND = 1.534;

/** Shape and exponent of the probability factor, recommended values. @source en1991-1-4 */
export const PROBABILITY_SHAPE = { K: 0.2, n: 0.5 } as const;

const z = variable('z', 'height above ground', 'length', 0, 200);
const z0 = variable('z_0', 'roughness length of the terrain', 'length', 0.003, 1);
const lowest = variable('z_min', 'no lower height counts', 'length', 1, 10);

export const terrainFactor = defineFormula({
  id: 'kr-en1991',
  title: 'Terrain factor, EN 1991-1-4',
  symbol: 'k_r',
  unit: 'one',
  expression: '0.19 * (z_0 / z_0II)^0.07',
  variables: [z0, variable('z_0II', 'roughness length of terrain II', 'length', 0.05, 0.05)],
  cite: cite('en1991-1-4', '4.3.2, Eq. (4.5)', 'published'),
  of: (roughness: number, second: number) => 0.19 * (roughness / second) ** 0.07,
});

export const roughnessFactor = defineFormula({
  id: 'cr-en1991',
  title: 'Roughness factor, EN 1991-1-4',
  symbol: 'c_r',
  unit: 'one',
  expression: 'k_r * log(max(z, z_min) / z_0)',
  variables: [variable('k_r', 'terrain factor', 'one', 0.15, 0.24), z, lowest, z0],
  cite: cite('en1991-1-4', '4.3.2, Eqs. (4.4), Table 4.1', 'published'),
  of: (kr: number, height: number, least: number, roughness: number) =>
    kr * Math.log(Math.max(height, least) / roughness),
});

export const turbulenceIntensityEn = defineFormula({
  id: 'iv-en1991',
  title: 'Turbulence intensity, EN 1991-1-4, turbulence factor 1',
  symbol: 'I_v',
  unit: 'one',
  expression: '1 / (c_o * log(max(z, z_min) / z_0))',
  variables: [variable('c_o', 'orography factor', 'one', 1, 2), z, lowest, z0],
  cite: cite('en1991-1-4', '4.4, Eq. (4.7)', 'published'),
  of: (co: number, height: number, least: number, roughness: number) =>
    1 / (co * Math.log(Math.max(height, least) / roughness)),
});

export const meanVelocity = defineFormula({
  id: 'vm-en1991',
  title: 'Mean wind at a height, EN 1991-1-4',
  symbol: 'v_m',
  unit: 'speed',
  expression: 'c_r * c_o * v_b',
  variables: [
    variable('c_r', 'roughness factor', 'one', 0.4, 1.8),
    variable('c_o', 'orography factor', 'one', 1, 2),
    variable('v_b', 'basic wind, 10-minute mean', 'speed', 0, 130),
  ],
  cite: cite('en1991-1-4', '4.3.1, Eq. (4.3)', 'published'),
  of: (cr: number, co: number, vb: number) => cr * co * vb,
});

export const peakVelocityPressure = defineFormula({
  id: 'qp-en1991',
  title: 'Peak velocity pressure, EN 1991-1-4',
  symbol: 'q_p',
  unit: 'pressure',
  expression: '(1 + 7 * I_v) * 0.5 * rho * v_m^2',
  variables: [
    variable('I_v', 'turbulence intensity', 'one', 0.08, 0.6),
    variable('rho', 'density of air', 'density', 1.25, 1.25),
    variable('v_m', 'mean wind at this height', 'speed', 0, 180),
  ],
  cite: cite('en1991-1-4', '4.5, Eq. (4.8)', 'published'),
  of: (Iv: number, rho: number, vm: number) => (1 + 7 * Iv) * 0.5 * rho * vm * vm,
});

export const exposureFactorEn = defineFormula({
  id: 'ce-en1991',
  title: 'Exposure factor on level ground: peak pressure over that of the basic wind, EN 1991-1-4',
  symbol: 'c_e',
  unit: 'one',
  expression: '(1 + 7 * I_v) * c_r^2',
  variables: [
    variable('I_v', 'turbulence intensity on level ground', 'one', 0.08, 0.6),
    variable('c_r', 'roughness factor', 'one', 0.4, 1.8),
  ],
  cite: cite('en1991-1-4', '4.5, Eqs. (4.8) to (4.10)', 'published'),
  of: (Iv: number, cr: number) => (1 + 7 * Iv) * cr * cr,
});

export const orographyPressureRatio = defineFormula({
  id: 'hill-pressure-ratio-en1991',
  title: 'Peak pressure on the hill over that on level ground, EN 1991-1-4',
  symbol: 'K_o',
  unit: 'one',
  expression: 'c_o^2 * (1 + 7 * I_v / c_oh) / (1 + 7 * I_v)',
  variables: [
    variable('c_o', 'orography factor', 'one', 1, 2),
    variable('c_oh', 'the same at the lowest height that counts, if that is higher', 'one', 1, 2),
    variable('I_v', 'turbulence intensity on level ground', 'one', 0.08, 0.6),
  ],
  cite: cite('derived', 'EN 1991-1-4 Eqs. (4.3), (4.7), (4.8), with and without the hill', 'derived'),
  of: (co: number, held: number, Iv: number) => (co * co * (1 + (7 * Iv) / held)) / (1 + 7 * Iv),
});

export const probabilityFactor = defineFormula({
  id: 'cprob-en1991',
  title: 'Probability factor on the basic wind for another return period, EN 1991-1-4',
  symbol: 'c_prob',
  unit: 'one',
  expression: '((1 - K * log(-log(1 - p))) / (1 - K * log(-log(0.98))))^n',
  variables: [
    variable('K', 'shape, recommended 0.2', 'one', 0.2, 0.2),
    variable('p', 'chance in a year', 'one', 0.0005, 0.5),
    variable('n', 'exponent, recommended 0.5', 'one', 0.5, 0.5),
  ],
  cite: cite('en1991-1-4', '4.2(2)P Note 4, Eq. (4.2)', 'published'),
  of: (K: number, p: number, n: number) =>
    ((1 - K * Math.log(-Math.log(1 - p))) / (1 - K * Math.log(-Math.log(0.98)))) ** n,
});

export const yearlyChanceOfYears = defineFormula({
  id: 'yearly-chance-of-years',
  title: 'Chance in a year of a wind of a given return period',
  symbol: 'p',
  unit: 'one',
  expression: '1 / T',
  variables: [variable('T', 'years', 'one', 2, 2000)],
  cite: cite('derived', 'meaning of a return period', 'derived'),
  of: (years: number) => 1 / years,
});

export const basicWindOfYears = defineFormula({
  id: 'vb-of-years',
  title: 'Basic wind for another return period; direction and season factors 1',
  symbol: 'v_bT',
  unit: 'speed',
  expression: 'c_prob * v_b',
  variables: [
    variable('c_prob', 'probability factor', 'one', 0.7, 1.3),
    variable('v_b', 'basic wind of 50 years', 'speed', 0, 130),
  ],
  cite: cite('en1991-1-4', '4.2(2)P Note 4', 'published'),
  of: (factor: number, vb: number) => factor * vb,
});

export const gustOfBasicWind = defineFormula({
  id: 'gust-of-basic-wind',
  title: 'Gust at 10 m over open country of a basic wind of EN 1991-1-4',
  symbol: 'V_3s',
  unit: 'speed',
  expression: '1.534 * v_b',
  variables: [variable('v_b', 'basic wind, 10-minute mean', 'speed', 0, 130)],
  cite: cite('derived', 'EN 1991-1-4, √c_e at 10 m in terrain II', 'derived'),
  of: (vb: number) => GUST_OVER_BASIC_WIND * vb,
});

export const basicWindOfGust = defineFormula({
  id: 'basic-wind-of-gust',
  title: 'Basic wind of EN 1991-1-4 of a gust at 10 m over open country',
  symbol: 'v_b',
  unit: 'speed',
  expression: 'V_3s / 1.534',
  variables: [variable('V_3s', '3-second gust', 'speed', 0, 200)],
  cite: cite('derived', 'EN 1991-1-4, √c_e at 10 m in terrain II', 'derived'),
  of: (gust: number) => gust / GUST_OVER_BASIC_WIND,
});

/**
 * Basic wind for another return period than 50 years.
 *
 * v_b·((1 − K·ln(−ln(1 − 1/T)))/(1 − K·ln(−ln 0.98)))^n
 *
 * @param vb basic wind of 50 years [m/s]
 * @param years the return period, more than 1 [-]
 * @returns the basic wind of that return period [m/s]
 * @example basicWindFor(26, 100) // 27.0004
 * @source en1991-1-4
 */
export function basicWindFor(vb: number, years: number, trace?: Trace): number {
  const { K, n } = PROBABILITY_SHAPE;
  const chance = evaluate(trace, yearlyChanceOfYears, [years]);
  return evaluate(trace, basicWindOfYears, [evaluate(trace, probabilityFactor, [K, chance, n]), vb]);
}
