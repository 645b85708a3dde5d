import type { Column, Words } from '../sheet/sheet.ts';

export interface ColumnWidths {
  /** Width of each column, together the whole width [pt]. */
  readonly points: readonly number[];
  /** Size of the letters [pt]. */
  readonly size: number;
}

const SIZES = [8.75, 8.25, 7.75, 7.25, 6.75, 6.25];
const HEAD_SIZE = 7.5;
/** Width of an ordinary letter and of a figure, as shares of the size of the type. */
const LETTER = 0.51;
const STRONG_LETTER = 0.54;
const INSET = 7.5;
const MARK = 17;
/** A column of words is not asked to hold a longer word, or more words, in one line. */
const LONGEST_WORD = 14;
const LONGEST_LINE = 60;
/** Lines that a head may take. */
const HEAD_LINES = 2.5;
/** Letters get smaller, down to this, rather than that words get less than half of the line they wish for. */
const COMFORT = 7.75;

/**
 * Widths for a table: numbers never break, words share what is left by how much there is of them; where it does not
 * fit, the letters get smaller.
 */
export function columnWidths(
  columns: readonly Column[],
  rows: readonly (readonly Words[])[],
  width: number,
): ColumnWidths {
  for (const size of SIZES) {
    const least = columns.map((column, index) => leastWidth(column, cellsOf(rows, index), size));
    const sum = total(least);
    const spare = width - sum;
    if (spare < 0) {
      if (size === SIZES.at(-1)) return { points: least.map((each) => (each * width) / sum), size };
      continue;
    }
    const wishes = columns.map((column, index) =>
      column.numeric === true ? 0 : Math.max(0, lineWidth(cellsOf(rows, index), size) - (least[index] as number)),
    );
    if (spare >= total(wishes) / 2 || size <= COMFORT) return { points: shared(least, wishes, spare), size };
  }
  throw new Error('a table has no size of type');
}

function shared(least: readonly number[], wishes: readonly number[], spare: number): readonly number[] {
  const wished = total(wishes);
  if (wished > spare) return least.map((each, index) => each + (spare * (wishes[index] as number)) / wished);
  const left = (spare - wished) / least.length;
  return least.map((each, index) => each + (wishes[index] as number) + left);
}

function cellsOf(rows: readonly (readonly Words[])[], index: number): readonly Words[] {
  return rows.flatMap((row) => row[index] ?? []);
}

function leastWidth({ head, unit = '', numeric }: Column, cells: readonly Words[], size: number): number {
  const words = [...head.split(/\s/), unit].map(lettersOf);
  const inHead = Math.max(...words, Math.ceil(lettersOf(head) / HEAD_LINES)) * HEAD_SIZE * LETTER;
  const inCells = cells.map((cell) => {
    const letters =
      numeric || cell.mark !== undefined
        ? lettersOf(cell.text)
        : Math.min(LONGEST_WORD, Math.max(...cell.text.split(/\s/).map(lettersOf)));
    return letters * size * letterWidth(cell) + markWidth(cell);
  });
  return Math.max(inHead, ...inCells) + INSET;
}

function lineWidth(cells: readonly Words[], size: number): number {
  const lines = cells.map(
    (cell) => Math.min(LONGEST_LINE, lettersOf(cell.text)) * size * letterWidth(cell) + markWidth(cell),
  );
  return Math.max(0, ...lines) + INSET;
}

function lettersOf(text: string): number {
  return Array.from(text).length;
}

function letterWidth({ strong }: Words): number {
  return strong ? STRONG_LETTER : LETTER;
}

function markWidth({ mark }: Words): number {
  return mark === undefined ? 0 : MARK;
}

function total(numbers: readonly number[]): number {
  return numbers.reduce((sum, each) => sum + each, 0);
}
