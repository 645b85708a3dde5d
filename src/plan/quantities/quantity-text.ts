import type { UnitSystem } from '../../foundation/index.ts';
import { FOOT, INCH } from '../../foundation/index.ts';
import { type DecimalSign, readNumberText } from './number-text.ts';
import { PLAN_UNITS, type PlanDimension } from './plan-dimension.ts';
import { systemOfUnit, unitInSi } from './unit-names.ts';

/** A number in SI, or why the text cannot be read. */
export type QuantityReading = number | 'unreadable' | 'ambiguous-comma' | 'unknown-unit' | 'too-long';

/** Longer text is no quantity. */
export const QUANTITY_LENGTH = 40;

const NUMBER = String.raw`(?:\d+(?:\s+|-)\d+\/\d+|\d+\/\d+|[\d.,]*\d[.,]?(?:e[+-]?\d+)?)`;
const WITH_UNIT = new RegExp(String.raw`^([+-]?)\s*(${NUMBER})(?:\s*([^\d\s+].*))?$`, 'i');
const FEET_AND_INCHES = new RegExp(
  String.raw`^([+-]?)\s*(\d+)\s*(?:ft|feet|foot|')\.?[\s,-]*(${NUMBER})\s*(?:in|inch|inches|")\.?$`,
  'i',
);
const FRACTION_SIGNS: Readonly<Record<string, string>> = {
  '¼': '1/4',
  '½': '1/2',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

/**
 * A quantity as people write it: "160 km/h", "48 ft 6 in", "1 1/4 in", "20 %", "0,405 in", or a bare number in the
 * plan's unit. The text never reaches an expression evaluator: it is cut into a number, which is read here, and a
 * unit's name, which must be on a list.
 *
 * @param units the plan's units, for a bare number
 * @returns the quantity in SI, or why it cannot be read
 * @example readQuantityText('48 ft 6 in', 'length', 'us', 'point') // 14.7828
 * @source nist-sp811
 */
export function readQuantityText(
  text: string,
  dimension: PlanDimension,
  units: UnitSystem,
  decimal: DecimalSign = 'point',
): QuantityReading {
  if (text.length > QUANTITY_LENGTH) return 'too-long';
  const plain = asPlainSigns(text);
  if (dimension === 'length' || dimension === 'diameter') {
    const parts = FEET_AND_INCHES.exec(plain);
    if (parts) {
      const inches = readNumberText(parts[3] as string, decimal, 'us');
      if (typeof inches !== 'number') return inches;
      if (inches >= 12) return 'unreadable';
      const size = Number(parts[2]) * FOOT + inches * INCH;
      return parts[1] === '-' ? -size : size;
    }
  }
  const parts = WITH_UNIT.exec(plain);
  if (!parts) return 'unreadable';
  const ofUnit = parts[3] === undefined ? undefined : systemOfUnit(parts[3], dimension);
  const number = readNumberText((parts[2] as string).toLowerCase(), decimal, ofUnit ?? units);
  if (typeof number !== 'number') return number;
  const unit = parts[3] === undefined ? PLAN_UNITS[dimension][units].inSi : unitInSi(parts[3], dimension);
  if (unit === undefined) return 'unknown-unit';
  const value = number * unit;
  if (!Number.isFinite(value)) return 'unreadable';
  return parts[1] === '-' ? -value : value;
}

/** The two ends of a text such as "48 to 58 ft", or undefined when it is no pair; a unit at the end serves both. */
export function splitPair(text: string): readonly [string, string] | undefined {
  if (text.length > 2 * QUANTITY_LENGTH) return undefined;
  const ends = /^(.*\S)\s+to\s+(\S.*)$/i.exec(text.trim());
  if (!ends) return undefined;
  const [, low = '', high = ''] = ends;
  const ownUnit = /[^\d\s.,/+e-]/i.test(low);
  const unit = ownUnit ? undefined : WITH_UNIT.exec(asPlainSigns(high))?.[3];
  return [unit === undefined || /\d/.test(unit.replaceAll(/\^\d|[a-z][23]$/gi, '')) ? low : `${low} ${unit}`, high];
}

const BEYOND_PLAIN = /[^ -~]/;

function asPlainSigns(text: string): string {
  if (!BEYOND_PLAIN.test(text)) return text.trim();
  return text
    .replaceAll(/[¼½¾⅛⅜⅝⅞]/g, (sign) => ` ${FRACTION_SIGNS[sign]}`)
    .replaceAll(/[\u00a0\u2007\u2009\u202f]/g, ' ')
    .replaceAll(/[’′]/g, "'")
    .replaceAll(/[”″]/g, '"')
    .replaceAll('−', '-')
    .trim();
}
