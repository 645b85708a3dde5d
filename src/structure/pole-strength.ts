import { cite, defineFormula, evaluate, type Trace, variable } from '../foundation/index.ts';
import { allowedBending, type Tube, tubeSection } from './tube-section.ts';

/** Yield of a steel pole of which nobody tells the grade [Pa]. @source common-practice */
export const PLAUSIBLE_YIELD = { least: 207e6, most: 345e6 } as const;

/** What acts on a pole at a height. */
export interface PoleForces {
  /** [N·m] */
  readonly torsion: number;
  /** [N] */
  readonly shear: number;
}

/** D/t up to which the shear strength of a wall is that of its yield. @source aisc-360 */
const STOUT_IN_SHEAR = 70;

const yieldStrength = variable('F_y', 'yield strength', 'stress', 1e8, 5e8);
const area = variable('A', 'area of the metal', 'section-area', 1e-5, 0.1);
const young = variable('E', "Young's modulus", 'stress', 6e10, 2.2e11);
const radius = variable('r', 'radius of gyration', 'diameter', 0.005, 0.5);
const height = variable('L', 'height of the pole', 'length', 1, 40);
const share = variable('phi', 'share of an allowable strength that the standard takes', 'one', 0.5, 1);

export const columnStressFormula = defineFormula({
  id: 'column-stress',
  title: 'Stress at which a pole that stands by itself buckles',
  symbol: 'F_cr',
  unit: 'stress',
  expression: 'min(0.877 * pi^2 * E / (2 * L / r)^2, 0.39 * F_y)',
  variables: [yieldStrength, young, height, radius],
  cite: cite('aisc-360', 'E3, effective length twice the height; the stocky end of its curve left out', 'memory'),
  of: (F: number, E: number, L: number, r: number) =>
    Math.min((0.877 * Math.PI ** 2 * E) / ((2 * L) / r) ** 2, 0.39 * F),
});

export const allowedCompression = defineFormula({
  id: 'allowed-compression',
  title: 'Weight that a section of a pole is allowed by itself',
  symbol: 'P_c',
  unit: 'force',
  expression: 'phi * F_cr * A / 1.67',
  variables: [share, variable('F_cr', 'stress at which it buckles', 'stress', 1e5, 5e8), area],
  cite: cite('aisc-360', 'E1, safety 1.67', 'memory'),
  of: (phi: number, stress: number, A: number) => (phi * stress * A) / 1.67,
});

export const allowedShear = defineFormula({
  id: 'allowed-shear-of-tube',
  title: 'Shear that a round tube is allowed by itself',
  symbol: 'V_c',
  unit: 'force',
  expression: 'phi * 0.6 * F_y * A / 2 / 1.67',
  variables: [share, yieldStrength, area],
  cite: cite('aisc-360', 'G5, up to D/t of 70', 'memory'),
  of: (phi: number, F: number, A: number) => (phi * 0.6 * F * A) / 2 / 1.67,
});

export const allowedTorsion = defineFormula({
  id: 'allowed-torsion-of-tube',
  title: 'Torsion that a round tube is allowed by itself',
  symbol: 'T_c',
  unit: 'moment',
  expression: 'phi * 0.6 * F_y * pi * (D - t)^2 * t / 2 / 1.67',
  variables: [
    share,
    yieldStrength,
    variable('D', 'outside diameter', 'diameter', 0.02, 2),
    variable('t', 'wall', 'diameter', 0.001, 0.02),
  ],
  cite: cite('aisc-360', 'H3.1, up to D/t of 70', 'memory'),
  of: (phi: number, F: number, D: number, t: number) => (phi * 0.6 * F * Math.PI * (D - t) ** 2 * t) / 2 / 1.67,
});

export const momentAmplified = defineFormula({
  id: 'moment-amplified',
  title: 'How much the weight adds to the moment of a pole that leans',
  symbol: 'B',
  unit: 'one',
  expression: '1 / (1 - 1.6 * P * (2 * L)^2 / (pi^2 * E * I))',
  variables: [
    variable('P', 'weight as at the top', 'force', 0, 1e5),
    height,
    young,
    variable('I', 'least second moment of area of the pole', 'second-moment', 1e-9, 1e-2),
  ],
  cite: cite('aisc-360', 'Appendix 8, 1.6 at the allowable level', 'memory'),
  of: (P: number, L: number, E: number, I: number) => 1 / (1 - (1.6 * P * (2 * L) ** 2) / (Math.PI ** 2 * E * I)),
});

export const momentLeft = defineFormula({
  id: 'moment-left',
  title: 'Moment that a section of a pole is allowed beside its weight and twist',
  symbol: 'M_all',
  unit: 'moment',
  expression: 'phi * M_c * max(0, 1 - P / (2 * P_c) - (V / V_c + T / T_c)^2) / B',
  variables: [
    share,
    variable('M_c', 'moment it is allowed alone', 'moment', 10, 1e6),
    variable('P', 'weight as at the top', 'force', 0, 1e5),
    variable('P_c', 'weight it is allowed alone', 'force', 1e3, 1e6),
    variable('V', 'shear', 'force', 0, 1e4),
    variable('V_c', 'shear it is allowed alone', 'force', 1e3, 1e6),
    variable('T', 'torsion', 'moment', 0, 1e4),
    variable('T_c', 'torsion it is allowed alone', 'moment', 100, 1e6),
    variable('B', 'what the weight adds to the moment', 'one', 1, 1.4),
  ],
  cite: cite(
    'aisc-360',
    'H1.1 up to a fifth of the weight it is allowed, and H3.2, solved for the moment',
    'second-hand',
  ),
  of: (phi: number, M: number, P: number, Pc: number, V: number, Vc: number, T: number, Tc: number, B: number) =>
    (phi * M * Math.max(0, 1 - P / (2 * Pc) - (V / Vc + T / Tc) ** 2)) / B,
});

/** A round pole that stands by itself, as far as every section of it needs to know. */
export interface PoleAsColumn {
  /** Of all of it [m]. */
  readonly height: number;
  /** That makes it buckle as all its weights do: those of its loads, and a share of its own [N]. */
  readonly weight: number;
  /** Least along it [m⁴]. */
  readonly leastSecondMoment: number;
}

export const weightAsAtTop = defineFormula({
  id: 'weight-as-at-top',
  title: 'Weight at the top that makes a pole buckle as its loads and its own weight do',
  symbol: 'P',
  unit: 'force',
  expression: 'g * (m_loads + 0.32 * m_pole)',
  variables: [
    variable('g', 'acceleration of gravity', 'force-per-weight', 9.80665, 9.80665),
    variable('m_loads', 'of all that is on it', 'weight', 0, 1e4),
    variable('m_pole', 'of the pole', 'weight', 0, 1e4),
  ],
  cite: cite(
    'derived',
    'a cantilever buckles by 7.84·EI/L² of weight spread over it, by 2.47·EI/L² at its tip',
    'derived',
  ),
  of: (gravity: number, loads: number, pole: number) => gravity * (loads + 0.32 * pole),
});

/** Of what it is allowed, the weight up to which the moment counts in full. @source aisc-360 */
const PRESSED_AT_MOST = 0.2;

/** Over this amplification a first-order moment says too little. @source common-practice */
const AMPLIFIED_AT_MOST = 1.4;

/**
 * Moment that a section of a round pole is allowed beside the weight, shear and twist it has.
 *
 * φ·M_c·(1 − P/(2P_c) − (V/V_c + T/T_c)²)/B
 *
 * @param tube of the section, its yield with it [m, Pa]
 * @param pole all of it [m, N, m⁴]
 * @param forces shear and torsion there [N, N·m]
 * @param phi share of the allowable strength that the standard takes [-]
 * @returns the moment [N·m]; undefined where its wall may buckle first, it presses too hard or leans too much
 * @source aisc-360
 */
export function allowedMomentOfPole(
  tube: Tube & { readonly yieldStrength: number },
  pole: PoleAsColumn,
  forces: PoleForces,
  phi: number,
  trace?: Trace,
): number | undefined {
  const { outside, wall, yieldStrength } = tube;
  const { torsion, shear } = forces;
  if (outside / wall > STOUT_IN_SHEAR) return undefined;
  const section = tubeSection(tube, trace);
  const { area, radiusOfGyration, youngsModulus } = section;
  const alone = allowedBending(tube, trace);
  if (alone === undefined) return undefined;
  const amplified = evaluate(trace, momentAmplified, [pole.weight, pole.height, youngsModulus, pole.leastSecondMoment]);
  if (!(amplified >= 1 && amplified <= AMPLIFIED_AT_MOST)) return undefined;
  const stress = evaluate(trace, columnStressFormula, [yieldStrength, youngsModulus, pole.height, radiusOfGyration]);
  const compression = evaluate(trace, allowedCompression, [phi, stress, area]);
  if (pole.weight > PRESSED_AT_MOST * compression) return undefined;
  return evaluate(trace, momentLeft, [
    phi,
    alone.surely,
    pole.weight,
    compression,
    shear,
    evaluate(trace, allowedShear, [phi, yieldStrength, area]),
    torsion,
    evaluate(trace, allowedTorsion, [phi, yieldStrength, outside, wall]),
    amplified,
  ]);
}
