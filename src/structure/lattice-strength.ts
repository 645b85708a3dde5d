import { cite, defineFormula, evaluate, type Trace, variable } from '../foundation/index.ts';
import { legPushFormula } from './leg-uplift.ts';

/** Bracing that carries shear along its members. */
export const TRUSS_PATTERNS = ['zigzag', 'cross'] as const;
export type TrussPattern = (typeof TRUSS_PATTERNS)[number];

/** A panel of a lattice, from axis to axis of its members. */
export interface Panel {
  readonly faces: 3 | 4;
  readonly pattern: TrussPattern;
  /** From leg to leg [m]. */
  readonly width: number;
  /** [m] */
  readonly height: number;
}

/** What acts on a lattice at the lower end of a panel, at the allowable level. */
export interface PanelForces {
  /** With what the weight adds to it as the tower leans [N·m]. */
  readonly moment: number;
  /** Of all above [N]. */
  readonly weight: number;
  /** In the braces: shear less what sloping legs take, with that of the twist [N]. */
  readonly braced: number;
  /** [N·m] */
  readonly torsion: number;
}

/** From one leg to the others in the worst wind, over the width. @source derived */
const ARM = { 3: Math.sqrt(3) / 2, 4: Math.SQRT2 } as const;
/** Share of the shear in one face in the worst wind. @source derived */
const IN_A_FACE = { 3: 2 / 3, 4: 1 / 2 } as const;
/** Of torsion by height over width squared, in each leg. @source derived */
const BY_TWIST = { 3: 2 / Math.sqrt(3), 4: 1 / 2 } as const;
/** Mean of the legs of a face over the worst leg, in the wind that presses both most. @source derived */
const FACE_MEAN = { 3: 1 / 2, 4: Math.SQRT1_2 } as const;

const width = variable('b', 'from axis to axis of two legs', 'length', 0.1, 5);
const panel = variable('h', 'height of a panel', 'length', 0.1, 3);

export const legByTwist = defineFormula({
  id: 'leg-by-twist',
  title: 'Force in a leg by twist, single diagonals in the faces',
  symbol: 'C_t',
  unit: 'force',
  expression: 'k_t * T * h / b^2',
  variables: [
    variable('k_t', '2/√3 for three faces, 1/2 for four', 'one', 0.5, 1.1548),
    variable('T', 'torsion', 'moment', 0, 1e4),
    panel,
    width,
  ],
  cite: cite('derived', 'a pin-jointed space truss has the same', 'derived'),
  of: (k: number, T: number, h: number, b: number) => (k * T * h) / b ** 2,
});

export const braceForce = defineFormula({
  id: 'brace-force',
  title: 'Force in a brace of a lattice',
  symbol: 'D_b',
  unit: 'force',
  expression: 'k_x * k_f * S * sqrt(b^2 + h^2) / b',
  variables: [
    variable('k_x', '1 alone, 1/2 of a crossed pair', 'one', 0.5, 1),
    variable('k_f', 'share of the worst face: 2/3 of three, 1/2 of four', 'one', 0.5, 0.6667),
    variable('S', 'force in the braces', 'force', 0, 1e6),
    width,
    panel,
  ],
  cite: cite('derived', 'a pin-jointed space truss has the same', 'derived'),
  of: (x: number, f: number, S: number, b: number, h: number) => (x * f * S * Math.hypot(b, h)) / b,
});

export const momentOfLeaning = defineFormula({
  id: 'moment-of-leaning',
  title: 'Moment with what the weight adds to it as the tower leans',
  symbol: 'M',
  unit: 'moment',
  expression: 'B * M_0',
  variables: [
    variable('B', 'what the weight adds to the moment', 'one', 1, 1.4),
    variable('M_0', 'moment of the tower that stands straight', 'moment', 0, 1e6),
  ],
  cite: cite('aisc-360', 'Appendix 8, 1.6 at the allowable level', 'memory'),
  of: (B: number, M: number) => B * M,
});

export const forceInOverlap = defineFormula({
  id: 'force-in-overlap',
  title: 'Force across a section of a telescoping tower where one slides in the other',
  symbol: 'R',
  unit: 'force',
  expression: 'M / s + V',
  variables: [
    variable('M', 'moment at the rim', 'moment', 0, 1e6),
    variable('s', 'overlap', 'length', 0.3, 5),
    variable('V', 'of the outer section its shear, of the inner one that of its twist', 'force', 0, 1e4),
  ],
  cite: cite('derived', 'two forces at the ends of the overlap hand the moment over', 'derived'),
  of: (M: number, s: number, V: number) => M / s + V,
});

export const momentAtTail = defineFormula({
  id: 'moment-at-tail',
  title: 'Moment of the outer section at the lower end of what slides in it',
  symbol: 'M_t',
  unit: 'moment',
  expression: 'M + V * s',
  variables: [
    variable('M', 'moment at the rim', 'moment', 0, 1e6),
    variable('V', 'shear at the rim', 'force', 0, 1e4),
    variable('s', 'overlap', 'length', 0.3, 5),
  ],
  cite: cite('derived', 'two forces at the ends of the overlap hand the moment over', 'derived'),
  of: (M: number, V: number, s: number) => M + V * s,
});

export const ownWeightOfLattice = defineFormula({
  id: 'own-weight-of-lattice',
  title: 'Weight of the legs and braces of a lattice for each length of it',
  symbol: 'w',
  unit: 'weight-per-length',
  expression: 'rho * n * (A_leg + m * A_brace * sqrt(b^2 + h^2) / h)',
  variables: [
    variable('rho', 'density', 'density', 2000, 8000),
    variable('n', 'number of legs and of faces', 'one', 3, 4),
    variable('A_leg', 'area of a leg', 'section-area', 1e-5, 1e-2),
    variable('m', 'braces of a panel in a face', 'one', 1, 2),
    variable('A_brace', 'area of a brace', 'section-area', 1e-5, 1e-2),
    width,
    panel,
  ],
  cite: cite('derived', 'density times the metal of a panel', 'derived'),
  of: (rho: number, n: number, leg: number, m: number, brace: number, b: number, h: number) =>
    rho * n * (leg + (m * brace * Math.hypot(b, h)) / h),
});

export const useOfMember = defineFormula({
  id: 'use-of-member',
  title: 'Ratio of a pressed member',
  symbol: 'u',
  unit: 'one',
  expression: 'C / P_c',
  variables: [variable('C', 'push', 'force', 0, 1e6), variable('P_c', 'push it is allowed', 'force', 1, 1e6)],
  cite: cite('derived', 'demand over what is allowed', 'derived'),
  of: (push: number, allowed: number) => push / allowed,
});

/**
 * Push in a leg of a lattice, in the wind that is worst for it.
 *
 * N/n + M/(k_b·b); single diagonals add k_t·T·h/b² by twist
 *
 * Between that of a truss at the upper and the lower end of the panel.
 *
 * @param forces there, moment [N·m] and weight [N] among them
 * @returns the force [N]
 * @example legPush({ faces: 3, pattern: 'cross', width: 0.45, height: 0.4 }, { moment: 4800, weight: 0, braced: 0, torsion: 0 }) // 12317
 * @source derived
 */
export function legPush(of: Panel, forces: PanelForces, trace?: Trace): number {
  const { moment, weight, torsion } = forces;
  const { faces, pattern } = of;
  const bent = evaluate(trace, legPushFormula, [moment, ARM[faces], of.width, weight, faces]);
  if (pattern === 'cross' || torsion === 0) return bent;
  const twisted = evaluate(trace, legByTwist, [BY_TWIST[faces], torsion, of.height, of.width]);
  return evaluate(trace, sumOfPushes, [bent, twisted]);
}

export const braceByStrain = defineFormula({
  id: 'brace-by-strain-of-legs',
  title: 'Force in crossed braces by the shortening of the legs, level members between them',
  symbol: 'D_s',
  unit: 'force',
  expression: 'k_m * C * A_brace / A_leg * h^2 * sqrt(b^2 + h^2) / ((b^2 + h^2)^1.5 + 2 * b^3)',
  variables: [
    variable('k_m', 'mean of both legs of a face over the worst leg', 'one', 0.5, 0.7072),
    variable('C', 'push in the worst leg', 'force', 0, 1e6),
    variable('A_brace', 'area of a brace', 'section-area', 1e-5, 1e-3),
    variable('A_leg', 'area of a leg', 'section-area', 1e-4, 1e-2),
    panel,
    width,
  ],
  cite: cite('derived', 'legs, braces and level members of one size with them, shortening alike', 'derived'),
  of: (k: number, C: number, brace: number, leg: number, h: number, b: number) =>
    (((k * C * brace) / leg) * h ** 2 * Math.hypot(b, h)) / (Math.hypot(b, h) ** 3 + 2 * b ** 3),
});

export const sumOfPushes = defineFormula({
  id: 'sum-of-pushes',
  title: 'Push in a member by two causes',
  symbol: 'C',
  unit: 'force',
  expression: 'C_1 + C_2',
  variables: [variable('C_1', 'by the first', 'force', 0, 1e6), variable('C_2', 'by the second', 'force', 0, 1e6)],
  cite: cite('derived', 'sum of both', 'derived'),
  of: (one: number, other: number) => one + other,
});

/** Of crossed braces with level members between them, what shortens them beside the shear [N, m²]. */
export interface Strained {
  readonly legPush: number;
  readonly legArea: number;
  readonly braceArea: number;
}

/**
 * Push in a brace of a lattice, in the wind that is worst for it.
 *
 * V_f·d/b, V_f = ⅔S of three faces, S/2 of four; each of a crossed pair half of it, and its share of the shortening of the legs where
 * level members hold it
 *
 * @param forces there, that in the braces among them [N]
 * @param strained of a crossed pair with level members
 * @returns the force [N]
 * @example bracePush({ faces: 3, pattern: 'zigzag', width: 0.45, height: 0.4 }, { moment: 0, weight: 0, braced: 1000, torsion: 0 }) // 892
 * @source derived
 */
export function bracePush(of: Panel, forces: PanelForces, strained?: Strained, trace?: Trace): number {
  const { faces, pattern, width: b, height: h } = of;
  const isCrossed = pattern === 'cross';
  const sheared = evaluate(trace, braceForce, [isCrossed ? 0.5 : 1, IN_A_FACE[faces], Math.abs(forces.braced), b, h]);
  if (!isCrossed || strained === undefined) return sheared;
  const { legPush: push, legArea, braceArea } = strained;
  const shortened = evaluate(trace, braceByStrain, [FACE_MEAN[faces], Math.max(0, push), braceArea, legArea, h, b]);
  return evaluate(trace, sumOfPushes, [sheared, shortened]);
}
