import type { Quantity } from '../../answer/index.ts';
import { figures } from '../../words/index.ts';
import type { Block, Voice, Words } from './sheet.ts';

/** Figures in a sheet where they are only read; and where a checker's pencil goes on with them. */
export const READ = 3;
export const RECKONED = 4;

/** A number with its unit as the sheet prints it. */
export function printed({ value, unit }: Quantity, significant = READ): string {
  const number = figures(value, significant);
  if (unit === '') return number;
  return unit === '°' ? `${number}°` : `${number} ${unit}`;
}

/** A bare number as the sheet prints it. */
export function printedNumber(value: number, significant = READ): string {
  return figures(value, significant);
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
