import {
  cite,
  defineFormula,
  MILE_PER_HOUR,
  POUND_PER_SQUARE_FOOT,
  type UnitSystem,
  variable,
} from '../foundation/index.ts';

/**
 * Half the density of standard air as the standards print it: 0.00256 psf/mph² with US units, 0.613 Pa/(m/s)² with SI
 * [Pa/(m/s)²]. The two differ by 0.06 %; a checker must meet the constant of his copy. @source asce7-16
 */
export const PRESSURE_CONSTANT: Readonly<Record<UnitSystem, number>> = {
  us: (0.00256 * POUND_PER_SQUARE_FOOT) / MILE_PER_HOUR ** 2,
  si: 0.613,
};

/** The flat-plate constant of RS-222-C [Pa/(m/s)²]: 0.004 psf/mph². @source rs222-c */
export const FLAT_PLATE_CONSTANT = (0.004 * POUND_PER_SQUARE_FOOT) / MILE_PER_HOUR ** 2;

const constant = variable('c', 'half the density of air', 'pressure-constant', 0.6, 0.62);
const kz = variable('K_z', 'height and ground', 'one', 0.5, 2.58);
const kzt = variable('K_zt', 'hill', 'one', 1, 3);
const kd = variable('K_d', 'direction', 'one', 0.85, 1);
const ke = variable('K_e', 'ground elevation', 'one', 0.6, 1);
const speed = variable('V', 'wind speed', 'speed', 0, 180);

export const velocityPressure710 = defineFormula({
  id: 'q-asce7-10',
  title: 'Velocity pressure, ASCE 7-10',
  symbol: 'q_z',
  unit: 'pressure',
  expression: 'c * K_z * K_zt * K_d * V^2',
  variables: [constant, kz, kzt, kd, speed],
  cite: cite('asce7-10', '29.3.2, Eq. 29.3-1', 'memory'),
  of: (c: number, Kz: number, Kzt: number, Kd: number, V: number) => c * Kz * Kzt * Kd * V * V,
});

export const velocityPressure716 = defineFormula({
  id: 'q-asce7-16',
  title: 'Velocity pressure, ASCE 7-16',
  symbol: 'q_z',
  unit: 'pressure',
  expression: 'c * K_z * K_zt * K_d * K_e * V^2',
  variables: [constant, kz, kzt, kd, ke, speed],
  cite: cite('asce7-16', '26.10.2, Eq. 26.10-1', 'second-hand'),
  of: (c: number, Kz: number, Kzt: number, Kd: number, Ke: number, V: number) => c * Kz * Kzt * Kd * Ke * V * V,
});

export const velocityPressure722 = defineFormula({
  id: 'q-asce7-22',
  title: 'Velocity pressure, ASCE 7-22; the direction factor is in the force',
  symbol: 'q_z',
  unit: 'pressure',
  expression: 'c * K_z * K_zt * K_e * V^2',
  variables: [constant, kz, kzt, ke, speed],
  cite: cite('asce7-22', '26.10.2, Eq. 26.10-1', 'second-hand'),
  of: (c: number, Kz: number, Kzt: number, Ke: number, V: number) => c * Kz * Kzt * Ke * V * V,
});

export const velocityPressureG = defineFormula({
  id: 'q-tia222-g',
  title: 'Velocity pressure, TIA-222-G',
  symbol: 'q_z',
  unit: 'pressure',
  expression: 'c * K_z * K_zt * K_d * V^2 * I',
  variables: [constant, kz, kzt, kd, speed, variable('I', 'importance', 'one', 0.87, 1.15)],
  cite: cite('tia222-g', '2.6.9.6', 'second-hand'),
  of: (c: number, Kz: number, Kzt: number, Kd: number, V: number, I: number) => c * Kz * Kzt * Kd * V * V * I,
});

export const velocityPressureH = defineFormula({
  id: 'q-tia222-h',
  title: 'Velocity pressure, TIA-222-H',
  symbol: 'q_z',
  unit: 'pressure',
  expression: 'c * K_z * K_zt * K_s * K_e * K_d * V^2',
  variables: [constant, kz, kzt, variable('K_s', 'rooftop speed-up, 1 on the ground', 'one', 1, 1), ke, kd, speed],
  cite: cite('tia222-h', '2.6.11.6', 'memory'),
  of: (c: number, Kz: number, Kzt: number, Ks: number, Ke: number, Kd: number, V: number) =>
    c * Kz * Kzt * Ks * Ke * Kd * V * V,
});

export const velocityPressureF = defineFormula({
  id: 'q-eia222-f',
  title: 'Velocity pressure, TIA/EIA-222-F',
  symbol: 'q_z',
  unit: 'pressure',
  expression: 'c * K_z * V^2',
  variables: [constant, variable('K_z', 'height', 'one', 1, 2.58), speed],
  cite: cite('eia222-f', '2.3.3', 'published'),
  of: (c: number, Kz: number, V: number) => c * Kz * V * V,
});

export const flatPlatePressureC = defineFormula({
  id: 'p-rs222-c',
  title: 'Pressure on a flat plate, EIA RS-222-C; two thirds of it on a round member',
  symbol: 'P',
  unit: 'pressure',
  expression: 'c_C * V^2',
  variables: [variable('c_C', '0.004 psf/mph²', 'pressure-constant', 0.95, 0.96), speed],
  cite: cite('rs222-c', 'section 2, wind loading', 'memory'),
  of: (c: number, V: number) => c * V * V,
});
