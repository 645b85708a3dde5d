import { z } from 'zod';
import type { PlanDimension } from '../quantities/plan-dimension.ts';
import { PLAN_UNITS } from '../quantities/plan-dimension.ts';

/** Number in the plan's units, or text with its unit. */
export type Quantity = number | string;
/** One quantity, or lower and upper end; as text "48 to 58". */
export type QuantityPair = Quantity | [Quantity, Quantity];

/** Longest text anywhere in a plan. */
export const TEXT_LENGTH = 200;

/** A field that may be left out but not be given as nothing. */
export const optional = z.exactOptional;

const bare = z.union([z.number(), z.string()]);

/** What the catalogue of fields says of a quantity. */
export interface QuantityWords {
  readonly of: PlanDimension;
  readonly description: string;
}

/** What the catalogue of fields says of any field. */
export interface FieldWords {
  readonly description: string;
}

/**
 * The schema of one quantity: a number in the plan's units or text with its unit.
 *
 * @param field the field in the catalogue [-]
 * @returns the schema, its units in the description [-]
 * @example quantity({ of: 'length', description: 'Height' }).safeParse('48 ft').success // true
 */
export function quantity({ of, description }: QuantityWords) {
  return z.union([z.number(), z.string()]).meta({ description: `${description}${inUnits(of)}` });
}

/**
 * The schema of one quantity or of a lower and an upper end.
 *
 * @param field the field in the catalogue [-]
 * @returns the schema, its units in the description [-]
 * @example quantityPair({ of: 'length', description: 'Height' }).safeParse([48, 58]).success // true
 */
export function quantityPair({ of, description }: QuantityWords) {
  return z
    .union([z.number(), z.string(), z.tuple([bare, bare])])
    .meta({ description: `${description}${inUnits(of)}; one value, or [low, high]` });
}

/**
 * The schema of one choice out of a few; the catalogue must have words for each.
 *
 * @param field the field in the catalogue [-]
 * @returns the schema [-]
 * @example choice(['B', 'C'], { description: 'Exposure', choices: { B: 'town', C: 'open' } }).safeParse('B').success // true
 */
export function choice<const T extends readonly string[]>(
  choices: T,
  { description }: FieldWords & { readonly choices: Readonly<Record<T[number], string>> },
) {
  return z.enum(choices).meta({ description });
}

/**
 * The schema of the id of a standard; its title is the standard's own.
 *
 * @param field the field in the catalogue
 * @returns the schema
 * @example standard(['asce7-16'], { description: 'Standard' }).safeParse('asce7-22').success // false
 */
export function standard<const T extends readonly string[]>(ids: T, { description }: FieldWords) {
  return z.enum(ids).meta({ description });
}

/**
 * The schema of a short text.
 *
 * @param field the field in the catalogue [-]
 * @returns the schema [-]
 * @example text({ description: 'Name' }).safeParse('beam').success // true
 */
export function text({ description }: FieldWords) {
  return z.string().max(TEXT_LENGTH).meta({ description });
}

/**
 * The schema of a name, which is a text of at least a letter.
 *
 * @returns the schema [-]
 * @example name({ description: 'Name' }).safeParse('').success // false
 */
export function name(field: FieldWords) {
  return text(field).min(1);
}

/**
 * The schema of a whole number.
 *
 * @param low lowest [-]
 * @param high highest [-]
 * @param field the field in the catalogue [-]
 * @returns the schema [-]
 * @example whole(1, 9, { description: 'Count' }).safeParse(3).success // true
 */
export function whole(low: number, high: number, { description }: FieldWords) {
  return z.int().min(low).max(high).meta({ description });
}

/**
 * The schema of yes or no.
 *
 * @param field the field in the catalogue [-]
 * @returns the schema [-]
 * @example yesOrNo({ description: 'Turns' }).safeParse(true).success // true
 */
export function yesOrNo({ description }: FieldWords) {
  return z.boolean().meta({ description });
}

/**
 * The schema of a list of things.
 *
 * @param most how many at most [-]
 * @param field the list in the catalogue [-]
 * @returns the schema; a list with a least number adds it [-]
 * @example listOf(z.string(), 2, { description: 'Names' }).safeParse(['a']).success // true
 */
export function listOf<T extends z.ZodType>(of: T, most: number, { description }: FieldWords, least = 1) {
  return z.array(of).min(least).max(most).meta({ description });
}

/** Fields any object may carry. */
export function remarks(words: { readonly source: FieldWords; readonly note: FieldWords }) {
  return { source: optional(text(words.source)), note: optional(text(words.note)) };
}

/** The units of a quantity as its description names them. */
export function inUnits(dimension: PlanDimension): string {
  if (dimension === 'share') return '';
  const { us, si } = PLAN_UNITS[dimension];
  return us.label === si.label ? ` [${us.label}]` : ` [us ${us.label}, si ${si.label}]`;
}
