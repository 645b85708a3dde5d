import { cite, defineFormula, Refusal, variable } from '../foundation/index.ts';

/** Diameter of the circle round n equal circles, over theirs; best known packings, n = 1 … 19. @source packing-circles */
export const PACKING_RATIOS: readonly number[] = [
  1, 2, 2.1547, 2.4142, 2.7013, 3, 3, 3.3048, 3.6131, 3.813, 3.9238, 4.0296, 4.2361, 4.3284, 4.5214, 4.6154, 4.792,
  4.8637, 4.8637,
];

/** Coefficient of a round group on its out-to-out width. @source tia222-g */
export const ROUND_GROUP_COEFFICIENT = 1.2;
/** The same of a rectangular group, as of lines in rows on a cable ladder. @source tia222-g */
export const RECTANGULAR_GROUP_COEFFICIENT = 1.5;

export const bundleDiameter = defineFormula({
  id: 'bundle-diameter',
  title: 'Diameter of a round bundle of equal lines',
  symbol: 'D_b',
  unit: 'diameter',
  expression: 'r_n * d',
  variables: [
    variable('r_n', 'packing ratio for this many lines', 'one', 1, 4.8637),
    variable('d', 'diameter of one line', 'diameter', 0.002, 0.1),
  ],
  cite: cite('packing-circles', 'best known packings of equal circles in a circle', 'published'),
  of: (ratio: number, diameter: number) => ratio * diameter,
});

export const outToOutWidth = defineFormula({
  id: 'out-to-out-width-of-lines',
  title: 'Out-to-out width of lines side by side on a cable ladder',
  symbol: 'W',
  unit: 'diameter',
  expression: '(n_s - 1) * s + d',
  variables: [
    variable('n_s', 'lines side by side: in a row, or rows where there are more of them', 'one', 1, 200),
    variable('s', 'spacing, centre to centre', 'diameter', 0.002, 0.5),
    variable('d', 'diameter of one line', 'diameter', 0.002, 0.1),
  ],
  cite: cite('derived', 'geometry', 'derived'),
  of: (lines: number, spacing: number, diameter: number) => (lines - 1) * spacing + diameter,
});

export const groupOrSingly = defineFormula({
  id: 'c-group-of-lines',
  title: 'Coefficient of lines on their out-to-out width: as a group, or singly where that is less',
  symbol: 'C_g',
  unit: 'one',
  expression: 'min(C_o, n_w * C_1)',
  variables: [
    variable('C_o', 'group: 1.2 round, 1.5 rectangular', 'one', 1.2, 1.5),
    variable('n_w', 'widths of its lines together over that of the group', 'one', 0.1, 20),
    variable('C_1', 'one line', 'one', 0.5, 1.2),
  ],
  cite: cite('derived', 'the smaller of the two, as TIA-222 counts groups of lines', 'derived'),
  of: (group: number, singly: number, one: number) => Math.min(group, singly * one),
});

/**
 * How many lines each of several bundles holds: as few bundles as the packings cover, as even as can be.
 *
 * ⌈n/19⌉ bundles
 *
 * @param count how many lines, 1 or more [-]
 * @returns lines in each bundle [-]
 * @throws Refusal `line-count` when the count is not a whole number from 1 up
 * @example bundlesOf(20).length // 2
 */
export function bundlesOf(count: number): readonly number[] {
  if (!Number.isInteger(count) || count < 1)
    throw new Refusal('line-count', `${count} lines: give a whole number from 1 up.`);
  const bundles = Math.ceil(count / PACKING_RATIOS.length);
  const each = Math.floor(count / bundles);
  return Array.from({ length: bundles }, (_, index) => each + (index < count - each * bundles ? 1 : 0));
}

/**
 * Packing ratio of n lines.
 *
 * D/d of the smallest circle round n equal circles
 *
 * @param count how many lines, 1 to 19 [-]
 * @returns the ratio [-], 1 to 4.8637
 * @throws Refusal `line-count` outside 1 to 19
 * @example packingRatio(7) // 3
 * @source packing-circles
 */
export function packingRatio(count: number): number {
  const ratio = PACKING_RATIOS[count - 1];
  if (ratio === undefined)
    throw new Refusal('line-count', `${count} lines in one bundle: 1 to ${PACKING_RATIOS.length} are covered.`);
  return ratio;
}
