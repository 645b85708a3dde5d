import { DISPLAY_UNITS, type Dimension, type UnitSystem } from '../foundation/index.ts';
import { type Assessment, designBasis, enteredBasis } from '../margins/index.ts';
import { SPEED_WORDS } from '../words/index.ts';
import { LETTER } from './ink.ts';

export function unitOf(dimension: Dimension, system: UnitSystem): string {
  return DISPLAY_UNITS[system][dimension].label;
}

/** The type of the speed that the plan gives for its site. */
export function planSpeedWords({ input }: Pick<Assessment, 'input'>): string {
  return SPEED_WORDS[enteredBasis(input)];
}

/** The type of the speeds at heights: by EN 1991-1-4 the mean already has its gusts there. */
export function heightSpeedWords({ input, site }: Pick<Assessment, 'input' | 'site'>): string {
  const basis = designBasis(input, site);
  return basis === 'mean-10min' ? 'peak gust' : SPEED_WORDS[basis];
}

/** A heading as people say it, 0 to 359°. */
export function degrees(heading: number): string {
  const whole = Math.round((heading * 180) / Math.PI);
  return `${((whole % 360) + 360) % 360}°`;
}

/** How wide text will stand, by the widest face of the font stack. */
export function widthOf(text: string, size = LETTER): number {
  let width = 0;
  for (const mark of text) width += widthOfMark(mark);
  return width * size;
}

function widthOfMark(mark: string): number {
  if ((mark.codePointAt(0) ?? 0) > 0x2e7f) return 1.05;
  if (/[ .,:;'|!ijl·()]/.test(mark)) return 0.36;
  if (/[ftr-]/.test(mark)) return 0.45;
  if (/[WM@%]/.test(mark)) return 1.08;
  if (/[mwG]/.test(mark)) return 0.95;
  return /[A-Z]/.test(mark) ? 0.75 : 0.63;
}

/** Text in lines no wider than given; a word too long is cut, the last line ends in … where more was said. */
export function wrapped(text: string, width: number, lines = Number.POSITIVE_INFINITY, size = LETTER): string[] {
  const found: string[] = [];
  let line = '';
  for (const whole of text.split(/\s+/)) {
    for (const word of pieces(whole, width, size)) {
      const longer = line === '' ? word : `${line} ${word}`;
      if (line !== '' && widthOf(longer, size) > width) {
        found.push(line);
        line = word;
      } else line = longer;
    }
  }
  found.push(line);
  if (found.length <= lines) return found;
  const last = found[lines - 1] as string;
  return [...found.slice(0, lines - 1), cut(`${last}…`, width, size)];
}

function pieces(word: string, width: number, size: number): string[] {
  if (widthOf(word, size) <= width) return [word];
  const found: string[] = [];
  let piece = '';
  for (const mark of word) {
    if (piece !== '' && widthOf(piece + mark, size) > width) {
      found.push(piece);
      piece = '';
    }
    piece += mark;
  }
  return [...found, piece];
}

function cut(text: string, width: number, size: number): string {
  const marks = [...text];
  while (marks.length > 2 && widthOf(marks.join(''), size) > width) marks.splice(marks.length - 2, 1);
  return marks.join('');
}
