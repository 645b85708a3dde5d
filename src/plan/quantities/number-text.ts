import type { UnitSystem } from '../../foundation/index.ts';

/** How a comma is read: as a decimal sign only where nothing else is possible, or always. */
export type DecimalSign = 'point' | 'comma';

export type NumberReading = number | 'unreadable' | 'ambiguous-comma';

const DIGITS = /^\d+$/;
const POINT = /^(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/;
const MIXED = /^(?:(\d+)(?:\s+|-))?(\d+)\/(\d+)$/;
const GROUPS_THEN_POINT = /^\d{1,3}(,\d{3})+\.\d+$/;
const GROUPS_THEN_COMMA = /^\d{1,3}(\.\d{3})+,\d+$/;
const SEVERAL_COMMA_GROUPS = /^[1-9]\d{0,2}(,\d{3}){2,}$/;
const SEVERAL_POINT_GROUPS = /^[1-9]\d{0,2}(\.\d{3}){2,}$/;
const ONE_COMMA = /^(\d*),(\d+)$/;
const COMMA_OF_A_SHARE = /^0*,\d+$/;
const LIKE_A_COMMA_GROUP = /^[1-9]\d{0,2},\d{3}$/;
const LIKE_A_POINT_GROUP = /^[1-9]\d{0,2}\.\d{3}$/;
/** One sign between digits of a longer text, with none of the same number beside it. */
const LONE_COMMA = /(?<![\d.,])\d*,\d+(?![\d.,])/g;
const LONE_POINT = /(?<![\d.,])\d*\.\d+(?![\d.,])/g;

/**
 * A number as people write it: 48, 0.405, 1/4, 1 1/4, 1-1/4, 0,405, 1,250.5.
 *
 * A comma before three digits is asked about. Before more or fewer it is the decimal sign where metric units are written;
 * where US units are, it may as well be a slip among thousands and is asked about, but after 0 or nothing.
 *
 * @param text the digits, without a sign in front and without a unit
 * @param decimal whether a comma is the decimal sign; 'point' still takes a comma that can be nothing else
 * @param units of the number
 * @returns the number, or why it cannot be read
 * @example readNumberText('1 1/4', 'point', 'us') // 1.25
 * @example readNumberText('1,05', 'point', 'us') // 'ambiguous-comma'
 * @example readNumberText('1,05', 'point', 'si') // 1.05
 * @source common-practice
 */
export function readNumberText(text: string, decimal: DecimalSign, units: UnitSystem): NumberReading {
  if (DIGITS.test(text)) return Number(text);
  const mixed = MIXED.exec(text);
  if (mixed) {
    const parts = Number(mixed[3]);
    return parts === 0 ? 'unreadable' : Number(mixed[1] ?? 0) + Number(mixed[2]) / parts;
  }
  if (decimal === 'comma') {
    if (GROUPS_THEN_COMMA.test(text)) return Number(text.replaceAll('.', '').replace(',', '.'));
    if (SEVERAL_POINT_GROUPS.test(text)) return Number(text.replaceAll('.', ''));
    if (LIKE_A_POINT_GROUP.test(text)) return 'ambiguous-comma';
    return withComma(text) ?? withPoint(text);
  }
  if (GROUPS_THEN_POINT.test(text) || SEVERAL_COMMA_GROUPS.test(text)) return Number(text.replaceAll(',', ''));
  if (LIKE_A_COMMA_GROUP.test(text)) return 'ambiguous-comma';
  if (units === 'us' && ONE_COMMA.test(text) && !COMMA_OF_A_SHARE.test(text)) return 'ambiguous-comma';
  return withComma(text) ?? withPoint(text);
}

/**
 * What a text with an ambiguous sign may mean: that sign as the decimal one, and as one between thousands.
 *
 * @returns the text as it can be written for either
 * @example readingsOf('1,05 mph', 'point') // ['1.05 mph', '105 mph']
 */
export function readingsOf(text: string, decimal: DecimalSign): readonly [string, string] {
  const [lone, sign, instead] = decimal === 'point' ? [LONE_COMMA, ',', '.'] : [LONE_POINT, '.', ','];
  return [
    text.replace(lone, (number) => number.replace(sign, instead)),
    text.replace(lone, (number) => number.replace(sign, '')),
  ];
}

/** Whether a text that could be read has a comma as its decimal sign. @example hasDecimalComma('12,5 mm') // true */
export function hasDecimalComma(text: string): boolean {
  return text.search(LONE_COMMA) >= 0;
}

function withComma(text: string): number | undefined {
  const parts = ONE_COMMA.exec(text);
  return parts ? Number(`${parts[1] === '' ? '0' : parts[1]}.${parts[2]}`) : undefined;
}

function withPoint(text: string): NumberReading {
  if (!POINT.test(text)) return 'unreadable';
  const value = Number(text);
  return Number.isFinite(value) ? value : 'unreadable';
}
