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
const LIKE_A_COMMA_GROUP = /^[1-9]\d{0,2},\d{3}$/;
const LIKE_A_POINT_GROUP = /^[1-9]\d{0,2}\.\d{3}$/;

/**
 * A number as people write it: 48, 0.405, 1/4, 1 1/4, 1-1/4, 0,405, 1,250.5.
 *
 * @param text the digits, without a sign in front and without a unit
 * @param decimal whether a comma is the decimal sign; 'point' still takes a comma that can be nothing else
 * @returns the number, or why it cannot be read
 * @example readNumberText('1 1/4', 'point') // 1.25
 * @source common-practice
 */
export function readNumberText(text: string, decimal: DecimalSign): NumberReading {
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
  return withComma(text) ?? withPoint(text);
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
