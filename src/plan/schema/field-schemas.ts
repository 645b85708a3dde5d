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

/** A number in the plan's units or text with its unit. */
export const bare = z.union([z.number(), z.string()]);
/** One of them, or a lower and an upper end. */
export const bareOrEnds = z.union([z.number(), z.string(), z.tuple([bare, bare])]);

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
  return bare.meta({ description: `${description}${inUnits(of)}` });
}

/** One quantity, or a lower and an upper end. */
export function quantityPair({ of, description }: QuantityWords) {
  return bareOrEnds.meta({ description: `${description}${inUnits(of)}; one value, or [low, high]` });
}

/** Fields of one object that may be left out, each a quantity. */
export function quantities<Name extends string>(
  words: Readonly<Record<NoInfer<Name>, QuantityWords>>,
  ...names: readonly Name[]
) {
  return each(names, (name) => optional(quantity(words[name])));
}

/** The same of short texts. */
export function texts<Name extends string>(
  words: Readonly<Record<NoInfer<Name>, FieldWords>>,
  ...names: readonly Name[]
) {
  return each(names, (name) => optional(text(words[name])));
}

function each<Name extends string, Schema>(names: readonly Name[], of: (name: Name) => Schema) {
  return Object.fromEntries(names.map((name) => [name, of(name)])) as Record<Name, Schema>;
}

type Choices = Readonly<Record<string, string>>;

/** One choice out of those the catalogue has words for. */
export function choice<C extends Choices>({ description, choices }: FieldWords & { readonly choices: C }) {
  return z.enum(Object.keys(choices) as (keyof C & string)[]).meta({ description });
}

/** The same where they stand in another order than the form shows them in. */
export function choiceOf<const T extends readonly string[]>(
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
