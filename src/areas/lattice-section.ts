import { cite, defineFormula, evaluate, type Trace, variable } from '../foundation/index.ts';
import { constantCoefficient, type ForceCoefficient, type Role, type WindDirection } from './force-coefficient.ts';
import { ROUND_SHARE_C, TIA_ROUND } from './round-member.ts';
import type { LatticeShape } from './shape.ts';

const solidity = variable('epsilon', 'solid share of one face', 'one', 0.02, 0.9);

export const latticeCoefficientSquare = defineFormula({
  id: 'cf-lattice-square',
  title: 'Force coefficient of a square lattice, on the solid area of one face',
  symbol: 'C_f',
  unit: 'one',
  expression: '4.0 * epsilon^2 - 5.9 * epsilon + 4.0',
  variables: [solidity],
  cite: cite(
    'asce7-10',
    'Fig. 29.5-3 (7-16: 29.4-3); TIA-222-D to -H have the same; read in BNBC 2020 Fig. 6.2.23',
    'published',
  ),
  of: (epsilon: number) => 4 * epsilon * epsilon - 5.9 * epsilon + 4,
});

export const latticeCoefficientTriangle = defineFormula({
  id: 'cf-lattice-triangle',
  title: 'Force coefficient of a triangular lattice, on the solid area of one face',
  symbol: 'C_f',
  unit: 'one',
  expression: '3.4 * epsilon^2 - 4.7 * epsilon + 3.4',
  variables: [solidity],
  cite: cite(
    'asce7-10',
    'Fig. 29.5-3 (7-16: 29.4-3); TIA-222-D to -H have the same; read in BNBC 2020 Fig. 6.2.23',
    'published',
  ),
  of: (epsilon: number) => 3.4 * epsilon * epsilon - 4.7 * epsilon + 3.4,
});

export const roundFactorAsce = defineFormula({
  id: 'round-factor-asce',
  title: 'Reduction for round members, ASCE 7 and TIA/EIA-222-F',
  symbol: 'R_r',
  unit: 'one',
  expression: 'min(1, 0.51 * epsilon^2 + 0.57)',
  variables: [solidity],
  cite: cite('asce7-10', 'Fig. 29.5-3 note 3 (7-16: 29.4-3); read in BNBC 2020 Fig. 6.2.23', 'published'),
  of: (epsilon: number) => Math.min(1, 0.51 * epsilon * epsilon + 0.57),
});

export const roundFactorTiaSlow = defineFormula({
  id: 'round-factor-tia222-slow',
  title: 'Reduction for round members in slow flow, TIA-222-G and -H',
  symbol: 'R_r',
  unit: 'one',
  expression: 'min(1, 0.57 - 0.14 * epsilon + 0.86 * epsilon^2 - 0.24 * epsilon^3)',
  variables: [solidity],
  cite: cite('tia222-g', '2.6.9.1.1', 'memory'),
  of: (epsilon: number) => Math.min(1, 0.57 - 0.14 * epsilon + 0.86 * epsilon ** 2 - 0.24 * epsilon ** 3),
});

export const roundFactorTiaFast = defineFormula({
  id: 'round-factor-tia222-fast',
  title: 'Reduction for round members in fast flow, TIA-222-G and -H',
  symbol: 'R_r',
  unit: 'one',
  expression: 'min(1, 0.36 + 0.26 * epsilon + 0.97 * epsilon^2 - 0.63 * epsilon^3)',
  variables: [solidity],
  cite: cite('tia222-g', '2.6.9.1.1', 'memory'),
  of: (epsilon: number) => Math.min(1, 0.36 + 0.26 * epsilon + 0.97 * epsilon ** 2 - 0.63 * epsilon ** 3),
});

export const roundFactorTiaBetween = defineFormula({
  id: 'round-factor-tia222-between',
  title: 'Reduction for round members between slow and fast flow, linear in the flow number',
  symbol: 'R_r',
  unit: 'one',
  expression: 'R_slow + (R_fast - R_slow) * (C - C_slow) / (C_fast - C_slow)',
  variables: [
    variable('R_slow', 'in slow flow', 'one', 0.5, 1),
    variable('R_fast', 'in fast flow', 'one', 0.3, 1),
    variable('C', 'flow number', 'flow-number', 4.4, 10.6),
    variable('C_slow', 'flow number where slow flow ends', 'flow-number', 4.3, 5.4),
    variable('C_fast', 'flow number where fast flow begins', 'flow-number', 8.7, 10.7),
  ],
  cite: cite('tia222-g', '2.6.9.1.1', 'memory'),
  of: (slow: number, fast: number, flow: number, from: number, to: number) =>
    slow + ((fast - slow) * (flow - from)) / (to - from),
});

export const diagonalFactorSquare = defineFormula({
  id: 'direction-square-diagonal',
  title: 'Direction factor of a square lattice, wind on the diagonal',
  symbol: 'D_d',
  unit: 'one',
  expression: 'min(1.2, 1 + 0.75 * epsilon)',
  variables: [solidity],
  cite: cite(
    'asce7-10',
    'Fig. 29.5-3 note 4 (7-16: 29.4-3); TIA-222 the same; read in BNBC 2020 Fig. 6.2.23',
    'published',
  ),
  of: (epsilon: number) => Math.min(1.2, 1 + 0.75 * epsilon),
});

export const latticeCoefficient = defineFormula({
  id: 'c-lattice-with-members',
  title: 'Coefficient of the lattice on the solid area of one face, its members and the direction counted',
  symbol: 'C_A',
  unit: 'one',
  expression: 'C_f * (phi_f * D_f + phi_r * R_r * D_r)',
  variables: [
    variable('C_f', 'force coefficient', 'one', 1.4, 4),
    variable('phi_f', 'share of flat members', 'one', 0, 1),
    variable('D_f', 'direction factor, flat members', 'one', 0.8, 1.2),
    variable('phi_r', 'share of round members', 'one', 0, 1),
    variable('R_r', 'reduction for round members', 'one', 0.3, 1),
    variable('D_r', 'direction factor, round members', 'one', 1, 1.2),
  ],
  cite: cite('tia222-g', '2.6.9.1.1; ASCE 7 Fig. 29.5-3 in the same form', 'memory'),
  of: (Cf: number, flat: number, Df: number, round: number, Rr: number, Dr: number) =>
    Cf * (flat * Df + round * Rr * Dr),
});

/** Wind at 60° on a triangular lattice: flat members, TIA-222-D to -H (0.85 at 90° lies between). @source tia222-g */
export const TRIANGLE_FLAT_CORNER_TIA = 0.8;

export const latticeFormulaC = defineFormula({
  id: 'c-lattice-rs222-c',
  title: 'Faces counted by RS-222-C, on the solid area of one face and the flat-plate pressure',
  symbol: 'C_A',
  unit: 'one',
  expression: 'n_f * (phi_f + 2/3 * phi_r)',
  variables: [
    variable('n_f', '1.75 for a square, 1.5 for a triangle', 'one', 1.5, 1.75),
    variable('phi_f', 'share of flat members', 'one', 0, 1),
    variable('phi_r', 'share of round members', 'one', 0, 1),
  ],
  cite: cite('rs222-c', 'section 2, wind on towers', 'memory'),
  of: (faces: number, flat: number, round: number) => faces * (flat + ROUND_SHARE_C * round),
});

/** One face of a lattice as the coefficient rules see it. */
export interface LatticeFace {
  readonly faces: 3 | 4;
  /** Solid share of one face. */
  readonly solidity: number;
  /** Round share of the solid area. */
  readonly roundShare: number;
  /** Diameter of the thinnest round member, or 0 where it is not known [m]. */
  readonly thinnest: number;
  /** The thickest a round member can be [m]. */
  readonly thickest: number;
}

function frontCoefficient(face: LatticeFace, trace: Trace | undefined): number {
  return evaluate(trace, face.faces === 4 ? latticeCoefficientSquare : latticeCoefficientTriangle, [face.solidity]);
}

function combined(
  face: LatticeFace,
  direction: WindDirection,
  triangleFlatCorner: number,
  round: number,
  trace: Trace | undefined,
): number {
  const front = frontCoefficient(face, trace);
  let flatDirection = 1;
  let roundDirection = 1;
  if (direction === 'corner') {
    if (face.faces === 4) flatDirection = roundDirection = evaluate(trace, diagonalFactorSquare, [face.solidity]);
    else flatDirection = triangleFlatCorner;
  }
  return evaluate(trace, latticeCoefficient, [
    front,
    1 - face.roundShare,
    flatDirection,
    face.roundShare,
    round,
    roundDirection,
  ]);
}

/**
 * Coefficient of a lattice by ASCE 7: no change with the flow; triangles are not reduced for direction.
 *
 * C_A = C_f·(φ_f·D + φ_r·(0.51ε² + 0.57)·D), on the solid area of one face
 *
 * @example latticeCoefficientAsce({ faces: 3, solidity: 0.2, roundShare: 1, thinnest: 0, thickest: 0 }, 'face').slow // 1.5327
 * @source asce7-10
 */
export function latticeCoefficientAsce(face: LatticeFace, direction: WindDirection): ForceCoefficient {
  const compute = (trace?: Trace) =>
    combined(face, direction, 1, evaluate(trace, roundFactorAsce, [face.solidity]), trace);
  return constantCoefficient(compute(), compute);
}

/**
 * Coefficient of a lattice by TIA/EIA-222-F: as ASCE 7, and flat members of a triangle at a corner count 0.80.
 *
 * C_A = C_f·(φ_f·D_f + φ_r·(0.51ε² + 0.57)·D_r), on the solid area of one face
 *
 * @example latticeCoefficientF({ faces: 3, solidity: 0.2, roundShare: 1, thinnest: 0, thickest: 0 }, 'face').slow // 1.5327
 * @source eia222-f
 */
export function latticeCoefficientF(face: LatticeFace, direction: WindDirection): ForceCoefficient {
  const compute = (trace?: Trace) =>
    combined(face, direction, TRIANGLE_FLAT_CORNER_TIA, evaluate(trace, roundFactorAsce, [face.solidity]), trace);
  return constantCoefficient(compute(), compute);
}

/**
 * Coefficient of a lattice by TIA-222-G or -H, by the flow number per metre of diameter.
 *
 * C_A = C_f·(φ_f·D_f + φ_r·R_r·D_r), R_r from its slow to its fast curve as the flow number rises
 *
 * @returns the coefficient; its flow measure is that of the member it is entered with
 * @example latticeCoefficientTia('G', { faces: 3, solidity: 0.2, roundShare: 1, thinnest: 0, thickest: 0 }, 'face').slow // 1.4914
 * @source tia222-g
 */
export function latticeCoefficientTia(
  revision: 'G' | 'H',
  face: LatticeFace,
  direction: WindDirection,
): ForceCoefficient {
  const { slowUpTo, fastFrom } = TIA_ROUND[revision];
  const at = (flow: number, trace?: Trace) => {
    let round = 1;
    if (face.roundShare > 0) {
      const slow = () => evaluate(trace, roundFactorTiaSlow, [face.solidity]);
      const fast = () => evaluate(trace, roundFactorTiaFast, [face.solidity]);
      if (flow < slowUpTo) round = slow();
      else if (flow > fastFrom) round = fast();
      else round = evaluate(trace, roundFactorTiaBetween, [slow(), fast(), flow, slowUpTo, fastFrom]);
    }
    return combined(face, direction, TRIANGLE_FLAT_CORNER_TIA, round, trace);
  };
  if (face.roundShare === 0) return { slow: at(0), limit: Number.POSITIVE_INFINITY, at };
  return { slow: at(0), limit: slowUpTo, fastFrom, at };
}

/**
 * Coefficient of a lattice by RS-222-C, on the flat-plate pressure.
 *
 * 1.75 (square) or 1.5 (triangle) faces, round members at two thirds
 *
 * @example latticeCoefficientC({ faces: 3, solidity: 0.2, roundShare: 1, thinnest: 0, thickest: 0 }).slow // 1
 * @source rs222-c
 */
export function latticeCoefficientC(face: LatticeFace): ForceCoefficient {
  const inputs: [number, number, number] = [face.faces === 4 ? 1.75 : 1.5, 1 - face.roundShare, face.roundShare];
  return constantCoefficient(latticeFormulaC.of(...inputs), (trace) => evaluate(trace, latticeFormulaC, inputs));
}

/**
 * The diameter whose flow decides a lattice's coefficient: the thinnest member in a demand, the thickest in a capacity.
 *
 * @returns the diameter [m]
 * @example decidingDiameter({ faces: 3, solidity: 0.2, roundShare: 1, thinnest: 0.01, thickest: 0.03 }, 'capacity') // 0.03
 */
export function decidingDiameter(face: LatticeFace, role: Role): number {
  return role === 'demand' ? face.thinnest : face.thickest;
}

export const braceSolidArea = defineFormula({
  id: 'brace-solid-area',
  title: 'Area of one diagonal that shows between the legs',
  symbol: 'A_b',
  unit: 'area',
  expression: 'd_b * sqrt((w - d_l)^2 + p^2) * (w - 2 * d_l) / (w - d_l)',
  variables: [
    variable('d_b', 'thickness of the brace', 'diameter', 0.001, 0.1),
    variable('w', 'width of the face, outside', 'diameter', 0.2, 2),
    variable('d_l', 'thickness of a leg', 'diameter', 0.001, 0.09),
    variable('p', 'height of a panel', 'diameter', 0.05, 2),
  ],
  cite: cite('derived', 'geometry of one panel; crossings of diagonals are not taken off', 'derived'),
  of: (brace: number, width: number, leg: number, panel: number) =>
    (brace * Math.sqrt((width - leg) ** 2 + panel ** 2) * (width - 2 * leg)) / (width - leg),
});

export const rungSolidArea = defineFormula({
  id: 'rung-solid-area',
  title: 'Area of one rung that shows between the legs',
  symbol: 'A_b',
  unit: 'area',
  expression: 'd_b * (w - 2 * d_l)',
  variables: [
    variable('d_b', 'thickness of the rung', 'diameter', 0.001, 0.1),
    variable('w', 'width of the face, outside', 'diameter', 0.2, 2),
    variable('d_l', 'thickness of a leg', 'diameter', 0.001, 0.09),
  ],
  cite: cite('derived', 'geometry of one panel', 'derived'),
  of: (brace: number, width: number, leg: number) => brace * (width - 2 * leg),
});

export const panelSolidity = defineFormula({
  id: 'panel-solidity',
  title: 'Solid share of one face: two legs and the braces of a panel over its outside area',
  symbol: 'epsilon',
  unit: 'one',
  expression: '(2 * d_l * p + n_b * A_b) / (w * p)',
  variables: [
    variable('d_l', 'thickness of a leg', 'diameter', 0.001, 0.09),
    variable('p', 'height of a panel', 'diameter', 0.05, 2),
    variable('n_b', 'braces in a panel', 'one', 1, 2),
    variable('A_b', 'area of one brace', 'area', 0, 0.01),
    variable('w', 'width of the face, outside', 'diameter', 0.2, 2),
  ],
  cite: cite('derived', 'geometry of one panel', 'derived'),
  of: (leg: number, panel: number, count: number, brace: number, width: number) =>
    (2 * leg * panel + count * brace) / (width * panel),
});

/** What a lattice may be when nothing is said of its members: ordinary legs and braces give 0.14 to 0.30. @source common-practice */
export const UNKNOWN_SOLIDITY = { least: 0.1, most: 0.35 } as const;

/**
 * Solid share of one face of a lattice at a width.
 *
 * by members: (2·d_l·p + n·A_b)/(w·p); by areas: (A_round + A_flat)/(w·L)
 *
 * @param width of the face at this height [m]
 * @param length of the section, for areas given of one face [m]
 * @param unknown what to take where nothing is said of the members [-]
 * @returns the share [-], 0 to 1
 * @example solidityOf({ kind: 'lattice', faces: 3, width: [1, 1], members: 'round', solid: { by: 'areas', round: 0.6, flat: 0 } }, 1, 3, 0.1) // 0.2
 * @source derived
 */
export function solidityOf(shape: LatticeShape, width: number, length: number, unknown: number, trace?: Trace): number {
  const solid = shape.solid;
  switch (solid.by) {
    case 'members': {
      const brace =
        solid.pattern === 'rungs'
          ? evaluate(trace, rungSolidArea, [solid.brace, width, solid.leg])
          : evaluate(trace, braceSolidArea, [solid.brace, width, solid.leg, solid.panel]);
      return evaluate(trace, panelSolidity, [solid.leg, solid.panel, solid.pattern === 'cross' ? 2 : 1, brace, width]);
    }
    case 'solidity':
      return solid.solidity;
    case 'areas':
      return (solid.round + solid.flat) / (((shape.width[0] + shape.width[1]) / 2) * length);
    case 'drag':
    case 'unknown':
      return unknown;
  }
}

/**
 * One face of a lattice as the coefficient rules see it.
 *
 * @param width of the face at this height [m]
 * @param solidity its solid share [-]
 * @example faceOf({ kind: 'lattice', faces: 3, width: [1, 1], members: 'round', solid: { by: 'unknown' } }, 0.5, 0.2).thickest // 0.05
 */
export function faceOf(shape: LatticeShape, width: number, solidity: number): LatticeFace {
  const solid = shape.solid;
  let roundShare = shape.members === 'round' ? 1 : 0;
  if (solid.by === 'areas') roundShare = solid.round / (solid.round + solid.flat);
  if (solid.by === 'members') {
    return {
      faces: shape.faces,
      solidity,
      roundShare,
      thinnest: Math.min(solid.leg, solid.brace),
      thickest: Math.max(solid.leg, solid.brace),
    };
  }
  // Two legs stand in a face, so neither can be thicker than half of what is solid.
  return { faces: shape.faces, solidity, roundShare, thinnest: 0, thickest: (solidity * width) / 2 };
}
