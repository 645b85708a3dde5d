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

/**
 * The schema of one quantity: a number in the plan's units or text with its unit.
 *
 * @param dimension what kind of quantity [-]
 * @param description what the field is [-]
 * @returns the schema, its units in the description [-]
 * @example quantity('length', 'Height').safeParse('48 ft').success // true
 * @source derived
 */
export function quantity(dimension: PlanDimension, description: string) {
  return z.union([z.number(), z.string()]).meta({ description: `${description}${inUnits(dimension)}` });
}

/**
 * The schema of one quantity or of a lower and an upper end.
 *
 * @param dimension what kind of quantity [-]
 * @param description what the field is [-]
 * @returns the schema, its units in the description [-]
 * @example quantityPair('length', 'Height').safeParse([48, 58]).success // true
 * @source derived
 */
export function quantityPair(dimension: PlanDimension, description: string) {
  return z
    .union([z.number(), z.string(), z.tuple([bare, bare])])
    .meta({ description: `${description}${inUnits(dimension)}; one value, or [low, high]` });
}

/**
 * The schema of one choice out of a few.
 *
 * @param choices the identifiers [-]
 * @param description what the field is [-]
 * @returns the schema [-]
 * @example choice(['B', 'C'], 'Exposure').safeParse('B').success // true
 * @source derived
 */
export function choice<const T extends readonly string[]>(choices: T, description: string) {
  return z.enum(choices).meta({ description });
}

/**
 * The schema of a short text.
 *
 * @param description what the field is [-]
 * @returns the schema [-]
 * @example text('Name').safeParse('beam').success // true
 * @source derived
 */
export function text(description: string) {
  return z.string().max(TEXT_LENGTH).meta({ description });
}

/**
 * The schema of a whole number.
 *
 * @param low lowest [-]
 * @param high highest [-]
 * @param description what the field is [-]
 * @returns the schema [-]
 * @example whole(1, 9, 'Count').safeParse(3).success // true
 * @source derived
 */
export function whole(low: number, high: number, description: string) {
  return z.int().min(low).max(high).meta({ description });
}

/**
 * The schema of yes or no.
 *
 * @param description what the field is [-]
 * @returns the schema [-]
 * @example yesOrNo('Turns').safeParse(true).success // true
 * @source derived
 */
export function yesOrNo(description: string) {
  return z.boolean().meta({ description });
}

/** Fields any object may carry. */
export const remarks = {
  source: optional(text('Where this is from: "maker\'s sheet 12, 2009"')),
  note: optional(text('A remark of your own')),
};

function inUnits(dimension: PlanDimension): string {
  if (dimension === 'share') return '';
  const { us, si } = PLAN_UNITS[dimension];
  return us.label === si.label ? ` [${us.label}]` : ` [us ${us.label}, si ${si.label}]`;
}
