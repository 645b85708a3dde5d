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

/** One quantity: a number in the plan's units or text with its unit, which its description names. */
export function quantity({ of, description }: QuantityWords) {
  return z.union([z.number(), z.string()]).meta({ description: `${description}${inUnits(of)}` });
}

/** One quantity, or a lower and an upper end. */
export function quantityPair({ of, description }: QuantityWords) {
  return z
    .union([z.number(), z.string(), z.tuple([bare, bare])])
    .meta({ description: `${description}${inUnits(of)}; one value, or [low, high]` });
}

/** One choice out of a few; the catalogue must have words for each. */
export function choice<const T extends readonly string[]>(
  choices: T,
  { description }: FieldWords & { readonly choices: Readonly<Record<T[number], string>> },
) {
  return z.enum(choices).meta({ description });
}

/** The id of a standard; its title is the standard's own. */
export function standard<const T extends readonly string[]>(ids: T, { description }: FieldWords) {
  return z.enum(ids).meta({ description });
}

/** A short text. */
export function text({ description }: FieldWords) {
  return z.string().max(TEXT_LENGTH).meta({ description });
}

/** A name, which is a text of at least a letter. */
export function name(field: FieldWords) {
  return text(field).min(1);
}

/** A whole number. */
export function whole(low: number, high: number, { description }: FieldWords) {
  return z.int().min(low).max(high).meta({ description });
}

/** Yes or no. */
export function yesOrNo({ description }: FieldWords) {
  return z.boolean().meta({ description });
}

/** A list of things, of one at least where no other number is given. */
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
