import { DISPLAY_UNITS, type Dimension, displayValue, type UnitSystem } from '../foundation/index.ts';
import type { Assessment, Check } from '../margins/index.ts';
import { METHOD_BY_ID } from '../methods/index.ts';
import type { SpeedBasis } from '../wind/index.ts';
import { LETTER } from './ink.ts';

/** A number to so many significant figures, whole numbers whole, with commas for thousands: as the worksheet has it. */
export function figures(value: number, significant = 3): string {
  if (!Number.isFinite(value)) return 'beyond measure';
  if (value === 0) return '0';
  const size = Math.abs(value);
  const decimals = Math.max(0, significant - 1 - Math.floor(Math.log10(size)));
  const [whole = '', fraction = ''] = size.toFixed(Math.min(decimals, 12)).split('.');
  const told = fraction.replace(/0+$/, '');
  return `${value < 0 ? '−' : ''}${whole.replace(/\B(?=(\d{3})+$)/g, ',')}${told === '' ? '' : `.${told}`}`;
}

/** A use: three figures, from 1 up two decimals of them; more where they would hide that it is not 1. */
export function ratioFigures(ratio: number): string {
  if (!Number.isFinite(ratio)) return 'not shown';
  if (ratio >= 10) return figures(ratio);
  if (ratio >= 1) return ratio > 1 && ratio.toFixed(2) === '1.00' ? ratio.toFixed(3) : ratio.toFixed(2);
  const text = ratio.toPrecision(3);
  return Number(text) >= 1 ? ratio.toFixed(4) : Number(text).toString();
}

/** An SI value with the reader's unit. */
export function said(value: number, dimension: Dimension, system: UnitSystem, significant = 3): string {
  return `${figures(displayValue(value, dimension, system), significant)} ${DISPLAY_UNITS[system][dimension].label}`;
}

export function unitOf(dimension: Dimension, system: UnitSystem): string {
  return DISPLAY_UNITS[system][dimension].label;
}

const BASIS_WORDS: Readonly<Record<SpeedBasis, string>> = {
  'gust3-strength': 'strength-level 3-second gust',
  'gust3-nominal': 'nominal 3-second gust',
  'fastest-mile': 'fastest mile',
  'mean-1min': '1-minute mean',
  'mean-10min': '10-minute mean',
  'mean-hour': 'hourly mean',
};

/** The kind of the speed that the plan gives for its site. */
export function planSpeedWords({ input }: Pick<Assessment, 'input'>): string {
  return BASIS_WORDS[input.site.basis ?? METHOD_BY_ID[input.method].basis];
}

/** The kind of the speeds at heights: by EN 1991-1-4 the mean already has its gusts there. */
export function heightSpeedWords({ input, site }: Pick<Assessment, 'input' | 'site'>): string {
  const { basis } = METHOD_BY_ID[input.method];
  if (site.speedLevel === 'strength') return BASIS_WORDS['gust3-strength'];
  return basis === 'mean-10min' ? 'peak gust' : BASIS_WORDS[basis];
}

/** What a check is called beside its mark: as the worksheet has it. */
export function checkWords(check: Pick<Check, 'id' | 'kind' | 'name' | 'withIce'>): string {
  const iced = check.withIce ? ' with ice' : '';
  switch (check.kind) {
    case 'antenna':
      return check.name ?? 'antenna';
    case 'elements':
      return `tubes of the ${check.name ?? 'antenna'}${iced}`;
    case 'tower-top':
      return 'top of the tower';
    case 'ice':
      return 'tower with ice';
    case 'weight':
      return 'weight aloft';
    case 'foundation':
      return 'footing';
    case 'raising':
      return 'raising gear';
    case 'lying':
      return 'tower lying down';
    case 'fall':
      return `distance to the ${check.id.replace(/^fall:/, '').replace('-', ' ')}`;
    default:
      return `${check.kind}${iced}`;
  }
}

export const VERDICT_WORDS = { within: 'within', 'low-margin': 'low margin', over: 'over', open: 'not shown' } as const;

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
