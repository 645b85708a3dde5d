import { z } from 'zod';
import type { UnitSystem } from '../../foundation/index.ts';
import { planDocumentSchema } from '../schema/plan-document.ts';

/** How the description of a field names the unit that a plain number has. */
const UNITS = /\[us ([^,\]]+), si ([^\]]+)\]/;

type Labels = Readonly<Record<UnitSystem, string>> | undefined;

/**
 * A part of a plan with the unit written behind every plain number, so that it fits into a plan of other units.
 *
 * @param part any members of a plan document, readable in the given units
 * @returns a new part, in which "5.5" has become "5.5 ft²"
 * @example withUnits({ tower: { top: 48, faces: 3 } }, 'us') // { tower: { top: '48 ft', faces: 3 } }
 */
export function withUnits(
  part: Readonly<Record<string, unknown>>,
  units: UnitSystem,
): Readonly<Record<string, unknown>> {
  return spelled(part, planDocumentSchema, units, undefined) as Readonly<Record<string, unknown>>;
}

function spelled(value: unknown, schema: z.core.$ZodType, units: UnitSystem, outer: Labels): unknown {
  const labels = labelsOf(schema) ?? outer;
  if (schema instanceof z.ZodExactOptional || schema instanceof z.ZodOptional) {
    return spelled(value, schema.unwrap(), units, labels);
  }
  if (schema instanceof z.ZodUnion) {
    const option = schema.options.find((candidate) => holds(candidate, value));
    return option === undefined ? value : spelled(value, option, units, labels);
  }
  if (schema instanceof z.ZodObject && typeof value === 'object' && value !== null) {
    const shape: Readonly<Record<string, z.core.$ZodType>> = schema.shape;
    return Object.fromEntries(
      Object.entries(value).map(([key, member]) => {
        const field = Object.hasOwn(shape, key) ? shape[key] : undefined;
        return [key, field === undefined ? member : spelled(member, field, units, undefined)];
      }),
    );
  }
  if (schema instanceof z.ZodArray && Array.isArray(value)) {
    return value.map((item) => spelled(item, schema.element, units, labels));
  }
  if (schema instanceof z.ZodTuple && Array.isArray(value)) {
    return value.map((item, index) => spelled(item, schema.def.items[index] ?? schema, units, labels));
  }
  return labels !== undefined && isPlain(value) ? `${String(value).trim()} ${labels[units]}` : value;
}

function labelsOf(schema: z.core.$ZodType): Labels {
  const [, us, si] = UNITS.exec(schema instanceof z.ZodType ? (schema.meta()?.description ?? '') : '') ?? [];
  return us === undefined || si === undefined ? undefined : { us, si };
}

/** Whether a form of a field is the one that a value has; a tuple goes by its length. */
function holds(schema: z.core.$ZodType, value: unknown): boolean {
  if (schema instanceof z.ZodUnion) return schema.options.some((option) => holds(option, value));
  if (schema instanceof z.ZodTuple) return Array.isArray(value) && value.length === schema.def.items.length;
  if (schema instanceof z.ZodArray) return Array.isArray(value);
  if (schema instanceof z.ZodObject) return typeof value === 'object' && value !== null && !Array.isArray(value);
  if (schema instanceof z.ZodNumber) return typeof value === 'number';
  if (schema instanceof z.ZodString) return typeof value === 'string';
  return schema instanceof z.ZodType && schema.safeParse(value).success;
}

/** A number, or text that names no unit: "1 1/4", "48 to 58". */
function isPlain(value: unknown): boolean {
  if (typeof value === 'number') return true;
  return typeof value === 'string' && /^[\d\s.,/+-]+$/.test(value.replace(/\bto\b/, ''));
}
