import type { Quantity } from '../../answer/index.ts';
import { figures } from '../../words/index.ts';
import type { Block, Column, Voice, Words } from './sheet.ts';

/** Figures in a sheet where they are only read; and where a checker's pencil goes on with them. */
export const READ = 3;
export const RECKONED = 4;

/** What a row says of a value, or the dash of one that has none. */
export function orNone<T>(value: T | undefined, says: (value: T) => Words | string): Words | string {
  return value === undefined ? '–' : says(value);
}

/** A number with its unit as the sheet prints it. */
export function printed({ value, unit }: Quantity, significant = READ): string {
  const number = figures(value, significant);
  if (unit === '') return number;
  return unit === '°' ? `${number}°` : `${number} ${unit}`;
}

/** The number that a reader takes from printed figures. */
export function readBack(text: string): number {
  return Number(text.replaceAll(',', '').replace('−', '-'));
}

export function plain(text: string, voice?: Voice): Words {
  return voice === undefined ? { text } : { text, voice };
}

export function strong(text: string): Words {
  return { text, strong: true };
}

export function paragraph(...words: readonly (Words | string)[]): Block {
  return { kind: 'paragraph', words: words.map((each) => (typeof each === 'string' ? { text: each } : each)) };
}

export function small(text: string): Block {
  return { kind: 'paragraph', small: true, words: [{ text }] };
}

/** A list under its heading, if it has one; nothing where nothing is in it. */
export function list(items: readonly string[], heading?: string): readonly Block[] {
  if (items.length === 0) return [];
  return [...(heading === undefined ? [] : [{ kind: 'subheading', text: heading } as const]), { kind: 'list', items }];
}

/** A column with what stands in it of a row; bare text has the voice of the column. */
export interface ColumnOf<Row> extends Column {
  readonly of: (row: Row, index: number) => Words | string;
}

export function table<Row>(
  caption: string,
  columns: readonly ColumnOf<Row>[],
  rows: readonly Row[],
): Extract<Block, { kind: 'table' }> {
  const cell = (words: Words | string, voice?: Voice) => (typeof words === 'string' ? plain(words, voice) : words);
  return {
    kind: 'table',
    caption,
    columns: columns.map(({ of: _, ...column }) => column),
    rows: rows.map((row, index) => columns.map(({ of, voice }) => cell(of(row, index), voice))),
  };
}
