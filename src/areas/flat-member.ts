import { cite, defineFormula, evaluate, fromTable, type Table, variable } from '../foundation/index.ts';
import { constantCoefficient, type ForceCoefficient } from './force-coefficient.ts';

/** TIA-222-G Table 2-8, TIA-222-H Table 2-9: flat appurtenances. @source tia222-g */
export const FLAT_TIA: Table = [
  [2.5, 1.2],
  [7, 1.4],
  [25, 2],
];

/** TIA/EIA-222-F Table 3: flat appurtenances. @source eia222-f */
export const FLAT_F: Table = [
  [7, 1.4],
  [25, 2],
];

/** ASCE 7 solid freestanding signs, row s/h ≤ 0.16, by breadth over height. @source asce7-10 */
export const SIGN_ROW_ASCE: Table = [
  [0.05, 1.95],
  [0.1, 1.9],
  [0.2, 1.85],
  [0.5, 1.85],
  [1, 1.8],
  [2, 1.8],
  [4, 1.85],
  [5, 1.85],
  [10, 1.85],
  [20, 1.9],
  [30, 1.9],
  [45, 1.95],
];

/** Rise of a flat from the sign row to the 2.0 of slender open-frame members, over the aspects where others rise. @source derived */
export const SLENDER_RISE_ASCE: Table = [
  [7, 1.8],
  [25, 2],
];

export const largerOfTwo = defineFormula({
  id: 'larger-of-two-coefficients',
  title: 'The larger of the sign row and the slender member',
  symbol: 'C_f',
  unit: 'one',
  expression: 'max(C_sign, C_slender)',
  variables: [
    variable('C_sign', 'solid sign, row s/h ≤ 0.16', 'one', 1.8, 1.95),
    variable('C_slender', 'towards 2.0 for slender members', 'one', 1.8, 2),
  ],
  cite: cite('asce7-10', 'Figs. 29.4-1 and 29.5-2 (7-16: 29.3-1 and 29.4-2), joined here', 'memory'),
  of: (sign: number, slender: number) => Math.max(sign, slender),
});

/** A flat member's two sizes square to the wind [m], both above 0. */
export interface FlatFace {
  readonly wide: number;
  readonly tall: number;
}

/**
 * Length over width of a flat face, whichever way it lies.
 *
 * max(wide, tall)/min(wide, tall)
 *
 * @param face its two sizes [m]
 * @returns the aspect ratio [-], 1 or more
 * @example aspectOf({ wide: 0.2, tall: 1 }) // 5
 */
export function aspectOf(face: FlatFace): number {
  return face.wide > face.tall ? face.wide / face.tall : face.tall / face.wide;
}

/**
 * Coefficient of a flat member by TIA-222-G and -H.
 *
 * 1.2, 1.4, 2.0 at aspect 2.5, 7, 25, linear between
 *
 * @param face its two sizes [m]
 * @example flatCoefficientTia({ wide: 1, tall: 4 }).slow // 1.2667
 * @source tia222-g
 */
export function flatCoefficientTia(face: FlatFace): ForceCoefficient {
  const aspect = aspectOf(face);
  return constantCoefficient(fromTable(FLAT_TIA, aspect), (trace) => fromTable(FLAT_TIA, aspect, trace));
}

/**
 * Coefficient of a flat member by TIA/EIA-222-F.
 *
 * 1.4 up to aspect 7, 2.0 from 25, linear between
 *
 * @param face its two sizes [m]
 * @example flatCoefficientF({ wide: 1, tall: 10 }).slow // 1.5
 * @source eia222-f
 */
export function flatCoefficientF(face: FlatFace): ForceCoefficient {
  const aspect = aspectOf(face);
  return constantCoefficient(fromTable(FLAT_F, aspect), (trace) => fromTable(FLAT_F, aspect, trace));
}

/**
 * Coefficient of a flat member by ASCE 7: the row of solid signs far above the ground, rising to 2.0 for slender ones.
 *
 * max(sign row by B/s, 1.80 to 2.00 over aspects 7 to 25)
 *
 * @param face its two sizes [m]
 * @example flatCoefficientAsce({ wide: 1, tall: 1 }).slow // 1.8
 * @source asce7-10
 */
export function flatCoefficientAsce(face: FlatFace): ForceCoefficient {
  const aspect = aspectOf(face);
  const breadth = face.wide / face.tall;
  const value = Math.max(fromTable(SIGN_ROW_ASCE, breadth), fromTable(SLENDER_RISE_ASCE, aspect));
  return constantCoefficient(value, (trace) =>
    evaluate(trace, largerOfTwo, [
      fromTable(SIGN_ROW_ASCE, breadth, trace),
      fromTable(SLENDER_RISE_ASCE, aspect, trace),
    ]),
  );
}

/**
 * A full dish without radome at its worst angle, 50° to 60° off its axis: more than the 1.55 square on by the same table
 * and the 1.42 of a hollow hemisphere. @source tia222-g
 */
export const DISH_COEFFICIENT = 1.67;
/** An open mesh of flat strip: the most an open frame gets on its solid area. @source asce7-10 */
export const OPEN_MESH_COEFFICIENT = 2;

export const dishCoefficient = defineFormula({
  id: 'cd-dish',
  title:
    'Coefficient of a dish at its worst angle, on the area of its rim; a mesh takes 2.0 on its solid share, never more than the full dish',
  symbol: 'C_d',
  unit: 'one',
  expression: 'min(1.67, 2 * phi)',
  variables: [variable('phi', 'solid share of its face', 'one', 0, 1)],
  cite: cite('tia222-g', 'Annex C, paraboloid without radome, resultant at 50° to 60°; mesh derived', 'memory'),
  of: (solidity: number) => Math.min(DISH_COEFFICIENT, OPEN_MESH_COEFFICIENT * solidity),
});
