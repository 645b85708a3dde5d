import type { Material, PoleShape } from '../areas/index.ts';
import { cite, defineFormula, evaluate, type Trace, variable } from '../foundation/index.ts';

import { MATERIALS, secondMomentOfPolygon } from './first-mode.ts';
import { allowedCompression, columnStress } from './member-strength.ts';
import { allowedBending, radiusOfGyrationFormula, type Tube, tubeSection, YIELD_SAFETY } from './tube-section.ts';

/**
 * Yield of a metal of which nobody tells the grade [Pa]: fence tube to 50 ksi steel; the weakest aluminium at a weld to the best
 * away from one.
 *
 * @source common-practice
 */
export const PLAUSIBLE_YIELD: Readonly<Record<Material, { readonly least: number; readonly most: number }>> = {
  steel: { least: 207e6, most: 345e6 },
  aluminium: { least: 55e6, most: 240e6 },
};

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
export const AMPLIFIED_AT_MOST = 1.4;

/** A pole at one height: a round tube, or one of flat sides, its outside from flat to flat. */
export interface PoleTube extends Tube {
  /** 0 is round. */
  readonly sides: PoleShape['sides'];
  readonly yieldStrength: number;
}

/**
 * (w/t)·√F_y [√ksi] up to which a flat side yields before it buckles, the slope of the line beyond, where that meets the yield and
 * where it ends, by the number of sides; of 18 as of 16.
 *
 * @source asce-48
 */
const FLATS = {
  8: { upTo: 260, at0: 1.42, slope: 0.00114, ends: 351 },
  12: { upTo: 240, at0: 1.45, slope: 0.00129, ends: 374 },
  16: { upTo: 215, at0: 1.42, slope: 0.00137, ends: 412 },
  18: { upTo: 215, at0: 1.42, slope: 0.00137, ends: 412 },
} as const;
/** 1 ksi [Pa]. */
const KSI = 6.894757e6;
/** (w/t)·√(F_y/E) up to which a flat side yields in shear. @source aisc-360 */
const STOUT_FLAT = 2.45;
/** D/t of aluminium over which its wall may buckle first. @source aluminum-design-manual */
const STOUT_ALUMINIUM = 55;

export const sideOfPole = defineFormula({
  id: 'side-of-pole',
  title: 'Width of a side of a pole, at the middle of its wall',
  symbol: 's',
  unit: 'diameter',
  expression: '(D - t) * sin(pi / n) / cos(pi / n)',
  variables: [
    variable('D', 'outside, from flat to flat', 'diameter', 0.05, 2),
    variable('t', 'wall', 'diameter', 0.001, 0.02),
    variable('n', 'number of sides', 'one', 8, 18),
  ],
  cite: cite('derived', 'regular polygon', 'derived'),
  of: (D: number, t: number, n: number) => (D - t) * Math.tan(Math.PI / n),
});

export const stressOfFlat = defineFormula({
  id: 'stress-of-flat',
  title: 'Stress at which a flat side of a pole buckles or yields',
  symbol: 'F_a',
  unit: 'stress',
  expression: 'min(F_y, F_y * c_0 * (1 - c_1 * s / t * sqrt(F_y / u)))',
  variables: [
    yieldStrength,
    variable('c_0', 'of the line, 1.42 to 1.45 by the number of sides', 'one', 1.42, 1.45),
    variable('c_1', 'slope of the line, by the number of sides', 'one', 0.00114, 0.00137),
    variable('s', 'width of a side', 'diameter', 0.01, 0.3),
    variable('t', 'wall', 'diameter', 0.002, 0.02),
    variable('u', '1 ksi', 'stress', KSI, KSI),
  ],
  cite: cite('asce-48', 'local buckling of poles of 8, 12, 16 sides', 'memory'),
  of: (F: number, c0: number, c1: number, s: number, t: number, unit: number) =>
    Math.min(F, F * c0 * (1 - ((c1 * s) / t) * Math.sqrt(F / unit))),
});

export const bendingOfFlats = defineFormula({
  id: 'bending-of-flats',
  title: 'Allowable moment of a pole of flat sides',
  symbol: 'M_c',
  unit: 'moment',
  expression: 'F_a * I * 2 * cos(pi / n) / D / 1.67',
  variables: [
    variable('F_a', 'stress of a flat side', 'stress', 1e7, 5e8),
    variable('I', 'second moment of area', 'second-moment', 1e-8, 1e-2),
    variable('n', 'number of sides', 'one', 8, 18),
    variable('D', 'outside, from flat to flat', 'diameter', 0.05, 2),
  ],
  cite: cite('aisc-360', 'F1, safety 1.67, elastic, at the corner of the section', 'memory'),
  of: (F: number, I: number, n: number, D: number) => (F * I * 2 * Math.cos(Math.PI / n)) / D / YIELD_SAFETY,
});

export const allowedTorsionOfFlats = defineFormula({
  id: 'allowed-torsion-of-flats',
  title: 'Torsion that a pole of flat sides is allowed by itself',
  symbol: 'T_c',
  unit: 'moment',
  expression: 'phi * 0.6 * F_y * n * s * t * (D - t) / 2 / 1.67',
  variables: [
    share,
    yieldStrength,
    variable('n', 'number of sides', 'one', 8, 18),
    variable('s', 'width of a side', 'diameter', 0.01, 0.3),
    variable('t', 'wall', 'diameter', 0.001, 0.02),
    variable('D', 'outside, from flat to flat', 'diameter', 0.05, 2),
  ],
  cite: cite('aisc-360', 'H3.1; flats up to 2.45·√(E/F_y)', 'memory'),
  of: (phi: number, F: number, n: number, s: number, t: number, D: number) =>
    (phi * 0.6 * F * n * s * t * (D - t)) / 2 / YIELD_SAFETY,
});

/** A section of a pole, as far as what it is allowed goes. */
export interface PoleSection {
  readonly area: number;
  readonly secondMoment: number;
  /** Bending alone, the wall counted [N·m]. */
  readonly bending: number;
  /** Of the metal, the wall counted [Pa]. */
  readonly stress: number;
  /** [N·m] */
  readonly torsion: number;
}

/**
 * A section of a pole and what each effect alone is allowed.
 *
 * @param phi share of the allowable strength that the standard takes [-]
 * @returns area [m²], second moment [m⁴], moments [N·m] and stress [Pa]; undefined where its wall may buckle and no rule here says when
 * @source aisc-360, asce-48, aluminum-design-manual
 */
export function poleSection(tube: PoleTube, phi: number, trace?: Trace): PoleSection | undefined {
  const { outside, wall, yieldStrength, sides, material } = tube;
  if (sides === 0) {
    if (outside / wall > (material === 'steel' ? STOUT_IN_SHEAR : STOUT_ALUMINIUM)) return undefined;
    const { area, secondMoment } = tubeSection(tube, trace);
    const alone = allowedBending(tube, trace);
    if (alone === undefined) return undefined;
    const torsion = evaluate(trace, allowedTorsion, [phi, yieldStrength, outside, wall]);
    return { area, secondMoment, bending: alone.surely, stress: yieldStrength, torsion };
  }
  if (material !== 'steel') return undefined;
  const { at0, slope, ends } = FLATS[sides];
  const side = evaluate(trace, sideOfPole, [outside, wall, sides]);
  const slender = (side / wall) * Math.sqrt(yieldStrength / KSI);
  const { youngsModulus } = MATERIALS[material];
  if (slender > ends || (side / wall) * Math.sqrt(yieldStrength / youngsModulus) > STOUT_FLAT) return undefined;
  const area = sides * side * wall;
  const secondMoment = evaluate(trace, secondMomentOfPolygon, [sides, side, (outside - wall) / 2, wall]);
  const stress = evaluate(trace, stressOfFlat, [yieldStrength, at0, slope, side, wall, KSI]);
  return {
    area,
    secondMoment,
    bending: evaluate(trace, bendingOfFlats, [stress, secondMoment, sides, outside]),
    stress,
    torsion: evaluate(trace, allowedTorsionOfFlats, [phi, yieldStrength, sides, side, wall, outside]),
  };
}

/** What a section of a pole is allowed of each effect alone, its weight counted. */
export interface PoleLimits {
  readonly bending: number;
  readonly weight: number;
  readonly compression: number;
  readonly shear: number;
  readonly torsion: number;
  /** What the weight adds to the moment. */
  readonly amplified: number;
}

/**
 * What a section of a pole that stands by itself is allowed of each effect alone.
 *
 * @param tube of the section, its yield with it [m, Pa]
 * @param pole all of it [m, N, m⁴]
 * @param phi share of the allowable strength that the standard takes [-]
 * @returns moments [N·m] and forces [N]; undefined where its wall may buckle first, it presses too hard or leans too much
 * @source aisc-360
 */
export function poleLimits(tube: PoleTube, pole: PoleAsColumn, phi: number, trace?: Trace): PoleLimits | undefined {
  const { yieldStrength, material } = tube;
  const { weight } = pole;
  const section = poleSection(tube, phi, trace);
  if (section === undefined) return undefined;
  const { youngsModulus } = MATERIALS[material];
  const amplified = evaluate(trace, momentAmplified, [weight, pole.height, youngsModulus, pole.leastSecondMoment]);
  if (!(amplified >= 1 && amplified <= AMPLIFIED_AT_MOST)) return undefined;
  const gyration = evaluate(trace, radiusOfGyrationFormula, [section.secondMoment, section.area]);
  const stress =
    material === 'steel'
      ? evaluate(trace, columnStressFormula, [section.stress, youngsModulus, pole.height, gyration])
      : columnStress(material, yieldStrength, (2 * pole.height) / gyration, trace);
  const compression = evaluate(trace, allowedCompression, [phi, stress, section.area]);
  if (weight > PRESSED_AT_MOST * compression) return undefined;
  const shear = evaluate(trace, allowedShear, [phi, yieldStrength, section.area]);
  return { bending: section.bending, weight, compression, shear, torsion: section.torsion, amplified };
}

/**
 * Moment that a section of a pole is allowed beside the weight, shear and twist it has.
 *
 * φ·M_c·(1 − P/(2P_c) − (V/V_c + T/T_c)²)/B
 *
 * @param forces shear and torsion there [N, N·m]
 * @param phi share of the allowable strength that the standard takes [-]
 * @returns the moment [N·m]
 * @source aisc-360
 */
export function momentAllowedBeside(limits: PoleLimits, forces: PoleForces, phi: number, trace?: Trace): number {
  const { bending, weight, compression, shear, torsion, amplified } = limits;
  const beside = [weight, compression, forces.shear, shear, forces.torsion, torsion] as const;
  return evaluate(trace, momentLeft, [phi, bending, ...beside, amplified]);
}
