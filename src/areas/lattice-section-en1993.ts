import { atMost, cite, defineFormula, evaluate, type Trace, variable } from '../foundation/index.ts';
import { constantCoefficient, type ForceCoefficient, type Role, type WindDirection } from './force-coefficient.ts';
import { AIR_VISCOSITY_EN } from './force-coefficients-en1991.ts';
import type { LatticeFace } from './lattice-section.ts';

const ANNEX = 'Annex B, B.2.2';
const C1 = variable('C_1', 'constant of the plan form', 'one', 1.9, 2.25);
const C2 = variable('C_2', 'constant of the plan form', 'one', 1.4, 1.5);
const phi = variable('phi', 'solid share of one face', 'one', 0.02, 0.9);
const flatShare = variable('a_f', 'share of flat members', 'one', 0, 1);
const roundShare = variable('a_c', 'share of round members', 'one', 0, 1);

/** Constants of a lattice by number of faces, EN 1993-3-1 Annex B. @source en1993-3-1 */
export const LATTICE_EN: Readonly<Record<3 | 4, { readonly c1: number; readonly c2: number }>> = {
  3: { c1: 1.9, c2: 1.4 },
  4: { c1: 2.25, c2: 1.5 },
};

/** Reynolds number from which round members may count as in fast wind. @source en1993-3-1 */
export const FAST_REYNOLDS = 4e5;

export const latticeFlatEn = defineFormula({
  id: 'cf-flat-en1993',
  title: 'Force coefficient of a lattice of flat members, EN 1993-3-1',
  symbol: 'c_ff',
  unit: 'one',
  expression: '1.76 * C_1 * (1 - C_2 * phi + phi^2)',
  variables: [C1, C2, phi],
  cite: cite('en1993-3-1', `${ANNEX}.2`, 'memory'),
  of: (c1: number, c2: number, solid: number) => 1.76 * c1 * (1 - c2 * solid + solid * solid),
});

export const latticeRoundSlowEn = defineFormula({
  id: 'cf-round-slow-en1993',
  title: 'Force coefficient of a lattice of round members in slow wind, EN 1993-3-1',
  symbol: 'c_fc',
  unit: 'one',
  expression: 'C_1 * (1 - C_2 * phi) + (C_1 + 0.875) * phi^2',
  variables: [C1, C2, phi],
  cite: cite('en1993-3-1', `${ANNEX}.2`, 'second-hand'),
  of: (c1: number, c2: number, solid: number) => c1 * (1 - c2 * solid) + (c1 + 0.875) * solid * solid,
});

export const latticeRoundFastEn = defineFormula({
  id: 'cf-round-fast-en1993',
  title: 'Force coefficient of a lattice of round members in fast wind, EN 1993-3-1',
  symbol: 'c_fc',
  unit: 'one',
  expression: '1.9 - sqrt((1 - phi) * (2.8 - 1.14 * C_1 + phi))',
  variables: [phi, C1],
  cite: cite('en1993-3-1', `${ANNEX}.2`, 'second-hand'),
  of: (solid: number, c1: number) => 1.9 - Math.sqrt((1 - solid) * (2.8 - 1.14 * c1 + solid)),
});

export const incidenceSquareEn = defineFormula({
  id: 'ktheta-square-en1993',
  title: 'Wind incidence factor of a square lattice on the diagonal, EN 1993-3-1',
  symbol: 'K_theta',
  unit: 'one',
  expression: '1 + (0.55 * a_f + 0.8 * a_c) * max(0.2, min(phi, 1 - phi))',
  variables: [flatShare, roundShare, phi],
  cite: cite('en1993-3-1', `${ANNEX}.1`, 'memory'),
  of: (flat: number, round: number, solid: number) =>
    1 + (0.55 * flat + 0.8 * round) * Math.max(0.2, Math.min(solid, 1 - solid)),
});

export const incidenceTriangleEn = defineFormula({
  id: 'ktheta-triangle-en1993',
  title: 'Wind incidence factor of a triangular lattice on a corner, EN 1993-3-1',
  symbol: 'K_theta',
  unit: 'one',
  expression: 'a_c + 0.9 * a_f',
  variables: [roundShare, flatShare],
  cite: cite('en1993-3-1', `${ANNEX}.1`, 'memory'),
  of: (round: number, flat: number) => round + 0.9 * flat,
});

export const latticeFormulaEn = defineFormula({
  id: 'c-lattice-en1993',
  title: 'Coefficient of the lattice on the solid area of one face, its members and the direction counted, EN 1993-3-1',
  symbol: 'C_A',
  unit: 'one',
  expression: 'K_theta * (a_f * c_ff + a_c * c_fc)',
  variables: [
    variable('K_theta', 'wind incidence factor', 'one', 0.9, 1.4),
    flatShare,
    variable('c_ff', 'flat members', 'one', 1.7, 4),
    roundShare,
    variable('c_fc', 'round members', 'one', 0.9, 2.3),
  ],
  cite: cite('en1993-3-1', `${ANNEX}.1, ${ANNEX}.2`, 'memory'),
  of: (K: number, flat: number, flats: number, round: number, rounds: number) => K * (flat * flats + round * rounds),
});

/**
 * Wind incidence factor of a lattice.
 *
 * square 45°: 1 + (0.55·A_f + 0.8·A_c)/A_s·K₂; triangle 60°: A_c/A_s + 0.9·A_f/A_s; face: 1
 *
 * @returns K_θ [-]
 * @example incidenceFactorEn({ faces: 4, solidity: 0.3, roundShare: 0, thinnest: 0, thickest: 0 }, 'corner') // 1.165
 * @source en1993-3-1
 */
export function incidenceFactorEn(face: LatticeFace, direction: WindDirection, trace?: Trace): number {
  if (direction === 'face') return 1;
  const round = face.roundShare;
  if (face.faces === 4) return evaluate(trace, incidenceSquareEn, [1 - round, round, face.solidity]);
  return evaluate(trace, incidenceTriangleEn, [round, 1 - round]);
}

/**
 * Coefficient of a lattice by EN 1993-3-1 Annex B. In a demand its round members stay in slow wind; a capacity takes those of
 * fast wind from a Reynolds number of 4·10⁵.
 *
 * C_A = K_θ·(A_f/A_s·c_f,flat + A_c/A_s·c_f,round)
 *
 * @returns the coefficient, by peak wind times the diameter of the member it is entered with
 * @example latticeCoefficientEn({ faces: 4, solidity: 0.2, roundShare: 1, thinnest: 0, thickest: 0 }, 'face', 'demand').slow // 1.7
 * @source en1993-3-1
 */
export function latticeCoefficientEn(face: LatticeFace, direction: WindDirection, role: Role): ForceCoefficient {
  const { c1, c2 } = LATTICE_EN[face.faces];
  const limit = FAST_REYNOLDS * AIR_VISCOSITY_EN;
  const compute = (flow: number, trace?: Trace) => {
    const round = face.roundShare;
    const K = incidenceFactorEn(face, direction, trace);
    const flats = round < 1 ? evaluate(trace, latticeFlatEn, [c1, c2, face.solidity]) : 0;
    let rounds = 0;
    if (round > 0) {
      rounds =
        atMost(flow, limit) || role === 'demand'
          ? evaluate(trace, latticeRoundSlowEn, [c1, c2, face.solidity])
          : evaluate(trace, latticeRoundFastEn, [face.solidity, c1]);
    }
    return evaluate(trace, latticeFormulaEn, [K, 1 - round, flats, round, rounds]);
  };
  if (role === 'demand' || face.roundShare === 0) return constantCoefficient(compute(0), (trace) => compute(0, trace));
  return { slow: compute(0), limit, at: compute };
}
