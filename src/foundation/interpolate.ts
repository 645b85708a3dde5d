import { cite } from './citation.ts';
import { defineFormula, variable } from './formula.ts';
import { evaluate, type Trace } from './trace.ts';

export const interpolation = defineFormula({
  id: 'linear-interpolation',
  title: 'Between two rows of a table; beyond the ends the end row holds',
  symbol: 'y',
  unit: 'one',
  expression: 'y_1 + (y_2 - y_1) * (min(max(x, x_1), x_2) - x_1) / (x_2 - x_1)',
  variables: [
    variable('x', 'where the table is entered', 'one', 0, 300),
    variable('x_1', 'row below', 'one', 0, 10),
    variable('x_2', 'row above', 'one', 11, 300),
    variable('y_1', 'value of the row below', 'one', 0, 3),
    variable('y_2', 'value of the row above', 'one', 0, 3),
  ],
  cite: cite('derived', 'linear interpolation', 'derived'),
  of: (x: number, x1: number, x2: number, y1: number, y2: number) =>
    y1 + ((y2 - y1) * (Math.min(Math.max(x, x1), x2) - x1)) / (x2 - x1),
});

/** Rows (x, y) with x rising. */
export type Table = readonly (readonly [number, number])[];

/**
 * The value of a table at x, linear between rows; beyond the ends the end row holds.
 *
 * y = y₁ + (y₂ − y₁)(x − x₁)/(x₂ − x₁)
 *
 * @param table rows (x, y), x rising, at least two
 * @param x where to enter [-]
 * @returns the value [-]
 * @example fromTable([[1, 10], [3, 20]], 2) // 15
 * @source derived
 */
export function fromTable(table: Table, x: number, trace?: Trace): number {
  let upper = 1;
  while (upper < table.length - 1 && x > (table[upper] as readonly [number, number])[0]) upper += 1;
  const [x1, y1] = table[upper - 1] as readonly [number, number];
  const [x2, y2] = table[upper] as readonly [number, number];
  return evaluate(trace, interpolation, [x, x1, x2, y1, y2]);
}
