import { z } from 'zod';
import { planDocumentSchema } from './schema/plan-document.ts';
import { schemasAt } from './schema/schema-at.ts';

const YES: ReadonlySet<string> = new Set(['true', 'yes', 'on']);
const NO: ReadonlySet<string> = new Set(['false', 'no', 'off']);
/** No plan goes deeper; what does fits no field. */
const DEPTH_AT_MOST = 12;
const NUMBER = /^[+-]?\d{1,15}(\.\d{1,15})?$/;

/**
 * A plan as a form sends it, in which everything is text, with its counts, choices of number and yes-or-no fields as
 * a plan has them. Blank means not given, and blank rows vanish. What fits no field stays as it is, for `readPlan` to
 * refuse with a message.
 *
 * @param document the form's fields, nested [-]
 * @returns a new document [-]
 * @example fromFormText({ tower: { faces: '3', used: 'no', foot: '' } }) // { tower: { faces: 3, used: false } }
 * @source derived
 */
export function fromFormText(document: unknown): unknown {
  return converted(document, []) ?? {};
}

function converted(value: unknown, path: readonly PropertyKey[]): unknown {
  if (typeof value === 'string') return value.trim() === '' ? undefined : convertedText(value, path);
  if (path.length > DEPTH_AT_MOST) return value;
  if (Array.isArray(value)) {
    const rows = value.map((row, index) => converted(row, [...path, index])).filter((row) => row !== undefined);
    return rows.length === 0 ? undefined : rows;
  }
  if (typeof value !== 'object' || value === null) return value;
  const members = Object.entries(value)
    .map(([key, member]) => [key, converted(member, [...path, key])] as const)
    .filter(([, member]) => member !== undefined);
  // fromEntries defines its members, so that a name of the prototype chain stays a plain, unknown name.
  return members.length === 0 ? undefined : Object.fromEntries(members);
}

function convertedText(text: string, path: readonly PropertyKey[]): unknown {
  const word = text.trim().toLowerCase();
  const schemas = schemasAt(planDocumentSchema, path);
  const isText = schemas.some((schema) => schema instanceof z.ZodString);
  for (const schema of schemas) {
    if (schema instanceof z.ZodBoolean) return YES.has(word) ? true : NO.has(word) ? false : text;
    if (schema instanceof z.ZodLiteral) {
      if (schema.values.has(false) && NO.has(word)) return false;
      if (NUMBER.test(word) && schema.values.has(Number(word))) return Number(word);
    }
    if (schema instanceof z.ZodNumber && !isText && NUMBER.test(word)) return Number(word);
  }
  return text;
}
