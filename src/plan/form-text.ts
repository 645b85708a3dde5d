import { z } from 'zod';
import { newFieldNames, placeInPlan } from '../words/index.ts';
import { type DecimalSign, readNumberText } from './quantities/number-text.ts';
import { planDocumentSchema } from './schema/plan-document.ts';
import { schemasAt } from './schema/schema-at.ts';

const YES: ReadonlySet<string> = new Set(['true', 'yes', 'on']);
const NO: ReadonlySet<string> = new Set(['false', 'no', 'off']);
/** No plan goes deeper; what does fits no field. */
const DEPTH_AT_MOST = 12;
const NUMBER = /^[+-]?\d{1,15}(\.\d{1,15})?$/;
const WITH_COMMA = /^\d{1,15},\d{1,15}$/;
/** Between the numbers of a list that was written into one field. */
const BETWEEN_NUMBERS = /[;\r\n]+/;
/** Between its texts, which may hold a semicolon. */
const BETWEEN_TEXTS = /[\r\n]+/;

export interface FormTextOptions {
  /** What the fields make up; a plan when not given. */
  readonly schema?: z.ZodType;
  /** How a comma in a number is read; what is a quantity stays text, for the reading to see. */
  readonly decimal?: DecimalSign;
}

/** A document made of a form's fields. */
export interface FormReading {
  readonly document: unknown;
  /**
   * The name of the field that stands at a place of the document, '#/loads/0/area' or '/loads/0/area': rows that were
   * blank have vanished from the document, but keep their numbers in the form.
   */
  readonly nameOf: (pointer: string) => string | undefined;
}

/**
 * A plan as a form sends it, in which everything is text, with its counts, choices of number and yes-or-no fields as
 * a plan has them. Blank means not given, and blank rows vanish. What fits no field stays as it is, for `readPlan` to
 * refuse with a message.
 *
 * @param document the form's fields, nested
 * @example fromFormText({ tower: { faces: '3', used: 'no', base: '' } }) // { tower: { faces: 3, used: false } }
 */
export function fromFormText(document: unknown): unknown {
  return readFormText(document).document;
}

/**
 * A document as a form sends it, and the way back from a place in it to the field that was sent.
 *
 * @param fields the form's fields, nested; lists may have holes
 * @param options what the fields make up, and how a comma is read
 * @returns the document, and the names of its fields
 * @example readFormText({ loads: [{ name: '' }, { name: 'beam' }] }).nameOf('#/loads/0/area') // 'loads[1][area]'
 */
export function readFormText(fields: unknown, options: FormTextOptions = {}): FormReading {
  const { schema = planDocumentSchema, decimal = 'point' } = options;
  const reader = new FormTextReader(schema, decimal);
  const document = reader.converted(fields, [], '') ?? {};
  return { document, nameOf: (pointer) => reader.nameOf(pointer) };
}

class FormTextReader {
  readonly #schema: z.ZodType;
  readonly #decimal: DecimalSign;
  /** By the pointer of a list in the document: the rows of the form that were kept; none where one field held the list. */
  readonly #rows = new Map<string, readonly number[]>();

  constructor(schema: z.ZodType, decimal: DecimalSign) {
    this.#schema = schema;
    this.#decimal = decimal;
  }

  converted(value: unknown, path: readonly PropertyKey[], pointer: string): unknown {
    if (typeof value === 'string') return value.trim() === '' ? undefined : this.#text(value, path, pointer);
    if (path.length > DEPTH_AT_MOST) return value;
    if (Array.isArray(value)) return this.#list(value, path, pointer);
    if (typeof value !== 'object' || value === null) return value;
    const members = Object.entries(value)
      .map(
        ([key, member]) =>
          [key, this.converted(member, [...path, newName(path, key)], `${pointer}/${escapedKey(key)}`)] as const,
      )
      .filter(([, member]) => member !== undefined);
    // fromEntries defines its members, so that a name of the prototype chain stays a plain, unknown name.
    return members.length === 0 ? undefined : Object.fromEntries(members);
  }

  nameOf(pointer: string): string | undefined {
    const keys = pointer.replace(/^#/, '').split('/').slice(1);
    let at = '';
    let name = '';
    for (const key of keys) {
      const rows = this.#rows.get(at);
      if (rows !== undefined && rows.length === 0) return name;
      const shown = rows?.[Number(key)] ?? key.replaceAll('~1', '/').replaceAll('~0', '~');
      name = name === '' ? String(shown) : `${name}[${shown}]`;
      at = `${at}/${key}`;
    }
    return name === '' ? undefined : name;
  }

  #list(value: readonly unknown[], path: readonly PropertyKey[], pointer: string): unknown {
    const schemas = schemasAt(this.#schema, path);
    if (schemas.some((schema) => schema instanceof z.ZodTuple)) return this.#tuple(value, path, pointer);
    const kept: unknown[] = [];
    const rows: number[] = [];
    for (let index = 0; index < value.length; index += 1) {
      // What vanishes leaves its place, and all pointers into it, to the next.
      const row = this.converted(value[index], [...path, index], `${pointer}/${kept.length}`);
      if (row === undefined) continue;
      kept.push(row);
      rows.push(index);
    }
    if (kept.length === 0) return undefined;
    this.#rows.set(pointer, rows);
    return kept;
  }

  /** Places with a meaning each, such as [diameter, length, wall]: a blank among them must not let the next move up. */
  #tuple(value: readonly unknown[], path: readonly PropertyKey[], pointer: string): unknown {
    const entries = Array.from(value, (entry, index) => this.converted(entry, [...path, index], `${pointer}/${index}`));
    const last = entries.findLastIndex((entry) => entry !== undefined);
    return last < 0 ? undefined : entries.slice(0, last + 1).map((entry) => entry ?? '');
  }

  #text(text: string, path: readonly PropertyKey[], pointer: string): unknown {
    const word = text.trim().toLowerCase();
    const schemas = schemasAt(this.#schema, path);
    const between = schemas.length === 1 ? separatorOf(schemas[0]) : undefined;
    if (between !== undefined) {
      const entries = text.split(between).filter((entry) => entry.trim() !== '');
      this.#rows.set(pointer, []);
      return entries.map((entry, index) => this.#text(entry.trim(), [...path, index], `${pointer}/${index}`));
    }
    // Of a list of rows: that there are none, which blank rows do not say.
    if (NO.has(word) && schemas.some((schema) => schema instanceof z.ZodArray)) return [];
    const isText = schemas.some((schema) => schema instanceof z.ZodString);
    for (const schema of schemas) {
      if (schema instanceof z.ZodBoolean) return YES.has(word) ? true : NO.has(word) ? false : text;
      if (schema instanceof z.ZodLiteral) {
        if (schema.values.has(false) && NO.has(word)) return false;
        if (NUMBER.test(word) && [...schema.values].some((value) => typeof value === 'number')) return Number(word);
      }
      if (schema instanceof z.ZodNumber && !isText) return this.#number(word) ?? text;
    }
    return text;
  }

  #number(word: string): number | undefined {
    // No unit tells here what a comma means: without a decimal sign that is said it stays, to be asked about.
    if (this.#decimal === 'point') return NUMBER.test(word) ? Number(word) : undefined;
    if (!NUMBER.test(word) && !WITH_COMMA.test(word)) return undefined;
    const read = readNumberText(word, this.#decimal, 'si');
    return typeof read === 'number' ? read : undefined;
  }
}

/** What the schema calls a field that may have its name of format 1. */
function newName(path: readonly PropertyKey[], key: string): string {
  const place = path.map((each) => `/${typeof each === 'number' ? '*' : String(each)}`).join('');
  return newFieldNames(placeInPlan(place)).get(key) ?? key;
}

/** What stands between the entries where a list of single values is written into one field. */
function separatorOf(list: z.core.$ZodType | undefined): RegExp | undefined {
  if (!(list instanceof z.ZodArray)) return undefined;
  const entries = schemasAt(list, [0]);
  if (entries.some((schema) => schema instanceof z.ZodNumber)) return BETWEEN_NUMBERS;
  return entries.some((schema) => schema instanceof z.ZodString) ? BETWEEN_TEXTS : undefined;
}

function escapedKey(key: string): string {
  return key.replaceAll('~', '~0').replaceAll('/', '~1');
}
