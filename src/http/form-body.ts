import type { FastifyInstance } from 'fastify';
import qs from 'qs';
import { jsonReader } from './json-body.ts';
import { Problem, type ProblemFault } from './problems/problem.ts';

export const FORM_MEDIA_TYPE = 'application/x-www-form-urlencoded';

/** A plan of 300 loads with everything said of each has fewer fields. */
const FIELDS_AT_MOST = 6000;
/** No document goes deeper than proposals[0][swap][0][with][tubes][0][taper][0][0]. */
const DEPTH_AT_MOST = 12;
const ROW_AT_MOST = 999;
/** More faults than this help nobody. */
const FAULTS_AT_MOST = 100;
/** Fields that hold a document of their own as JSON, so that a page can post what it keeps without taking it apart. */
const JSON_FIELDS = ['plan', 'proposals', 'wished', 'quotes', 'candidates'] as const;

type Field = readonly [name: string, value: string];
type ReadJson = (text: string) => unknown;

/** The fields of a form, as it was sent. */
export class FormBody {
  /** What was filled in, in the order it came. */
  readonly filled: readonly Field[];
  /** The same nested by the brackets of the names, all text; lists may have holes. */
  readonly nested: Readonly<Record<string, unknown>>;
  /** Which fields hold a document as JSON. */
  readonly jsonFields: readonly string[];
  readonly #readJson: ReadJson;

  constructor(filled: readonly Field[], readJson: ReadJson) {
    this.filled = filled;
    this.jsonFields = JSON_FIELDS.filter((name) => filled.some((field) => field[0] === name));
    this.nested = nestedOf(filled.filter(([name]) => !this.jsonFields.includes(name)));
    this.#readJson = readJson;
  }

  textOf(field: string): string {
    return this.filled.find(([name]) => name === field)?.[1] ?? '';
  }

  /** The document that one field holds; `at` is where it stands in the whole. */
  documentIn(field: string, at: string): unknown {
    try {
      return this.#readJson(this.textOf(field));
    } catch (error) {
      if (error instanceof Problem && error.faults.length > 0) {
        const faults = error.faults.map((fault) => ({ ...fault, pointer: `#${at}${fault.pointer?.slice(1)}`, field }));
        throw new Problem(error.code, error.message, { faults });
      }
      const says = `${field}: give one document as JSON, or leave it out.`;
      throw new Problem('not-json', `The field ${field} holds a document as JSON, but its content is not JSON.`, {
        faults: [{ field, code: 'unreadable', allowed: 'JSON', says }],
      });
    }
  }
}

/** Reads the forms that pages post: names with brackets, loads[0][above]=2, blank where nothing is given. */
export function readFormBodies(app: FastifyInstance): void {
  const read = jsonReader(app);
  app.addContentTypeParser(FORM_MEDIA_TYPE, { parseAs: 'buffer' }, (request, body: Buffer, done) => {
    inUtf8(/;\s*charset\s*=\s*"?([^";\s]+)/i.exec(request.headers['content-type'] ?? '')?.[1]);
    const fields = fieldsOf(body);
    // A browser fills in a field of this name with the charset it used.
    inUtf8(fields.find(([name]) => name === '_charset_')?.[1]);
    const filled = fields.filter(([name, value]) => name !== '_charset_' && value.trim() !== '');
    const faults = nameFaults(filled.map(([name]) => name));
    if (faults.length > 0) {
      const detail = faults.length === 1 ? 'The name of one field is wrong.' : 'The names of some fields are wrong.';
      throw new Problem('plan-faults', detail, { faults: faults.slice(0, FAULTS_AT_MOST) });
    }
    done(null, new FormBody(filled, (text) => read(text, request)));
  });
}

function inUtf8(charset: string | undefined): void {
  if (charset === undefined || charset === '' || /^(utf-?8|us-ascii)$/i.test(charset)) return;
  const named = /^[\w.:-]{1,40}$/.test(charset) ? charset : 'another charset';
  throw new Problem(
    'unsupported-media-type',
    `Forms are read in UTF-8; this one says ${named}. Put accept-charset="utf-8" into the form.`,
  );
}

/** The pairs of a form (WHATWG URL standard §5.1), save that what is not UTF-8 is refused and not replaced. */
function fieldsOf(body: Buffer): Field[] {
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(body);
  } catch {
    throw new Problem('not-a-form', 'The fields are not in UTF-8. Put accept-charset="utf-8" into the form.');
  }
  const pairs = text.split('&', FIELDS_AT_MOST + 1).filter((pair) => pair !== '');
  if (pairs.length > FIELDS_AT_MOST) {
    throw new Problem('not-a-form', `The form has more than ${FIELDS_AT_MOST} fields: leave blank rows out.`);
  }
  return pairs.map((pair) => {
    const sign = pair.indexOf('=');
    return sign < 0 ? [decoded(pair), ''] : [decoded(pair.slice(0, sign)), decoded(pair.slice(sign + 1))];
  });
}

function decoded(text: string): string {
  try {
    return decodeURIComponent(text.replaceAll('+', ' '));
  } catch {
    const detail = 'A field has a per cent sign that encodes no character, or text that is not in UTF-8.';
    throw new Problem('not-a-form', detail);
  }
}

const NAME = /^([^[\]]+)((?:\[[^[\]]*\])*)$/;

/** The parts of a name, loads[0][area] gives loads, 0, area; undefined where brackets do not match. */
function partsOf(name: string): string[] | undefined {
  const [, first, rest = ''] = NAME.exec(name) ?? [];
  return first === undefined
    ? undefined
    : [first, ...rest.slice(1, -1).split('][')].slice(0, rest === '' ? 1 : undefined);
}

/** What is wrong with the names themselves, before anybody asks what they mean. */
function nameFaults(names: readonly string[]): ProblemFault[] {
  const given = new Set(names);
  const seen = new Set<string>();
  const faults = new Map<string, ProblemFault>();
  for (const name of names) {
    const shown = shortened(name);
    const parts = partsOf(name);
    const fault = (code: string, allowed: string, says: string) =>
      faults.set(`${code} ${name}`, {
        ...(parts === undefined ? {} : { pointer: pointerOf(parts) }),
        field: shown,
        code,
        given: shown,
        allowed,
        says,
      });
    if (parts === undefined) {
      fault('unreadable', 'a name such as loads[0][area]', `The name ${shown} is not written as loads[0][area] is.`);
      continue;
    }
    if (parts.length > DEPTH_AT_MOST) {
      fault('unreadable', `at most ${DEPTH_AT_MOST} parts`, `The name ${shown} has more parts than any plan.`);
      continue;
    }
    const rows = parts.slice(1);
    const row = rows.find(
      (part) => /^\d+$/.test(part) && !(String(Number(part)) === part && Number(part) <= ROW_AT_MOST),
    );
    if (row !== undefined) {
      fault('too-many', `0 to ${ROW_AT_MOST}`, `${shown}: rows are numbered 0, 1, 2 and so on, up to ${ROW_AT_MOST}.`);
    }
    if (parts.includes('__proto__')) {
      fault('unknown-field', 'another name', `${shown}: the name __proto__ is never read.`);
    }
    const open = rows.indexOf('');
    if (open >= 0 && open < rows.length - 1) {
      fault(
        'unreadable',
        'a number',
        `${shown}: number the rows, loads[0], loads[1]; [] is allowed only at the end of a name.`,
      );
    }
    if (seen.has(name) && open < 0) {
      fault('repeated-field', 'each field once', `The field ${shown} is given more than once: leave one.`);
    }
    seen.add(name);
    const around = parts.slice(1).map((_, index) => nameOf(parts.slice(0, index + 1)));
    const both = around.find((outer) => given.has(outer));
    if (both !== undefined) {
      const says = `Both ${shortened(both)} and ${shown} are given: the first holds what the second is a part of. Leave one.`;
      fault('one-of', `${shortened(both)} or its parts`, says);
    }
  }
  return [...faults.values()];
}

function nameOf([first = '', ...rest]: readonly string[]): string {
  return first + rest.map((part) => `[${part}]`).join('');
}

function pointerOf(parts: readonly string[]): string {
  const path = parts.map((part) => encodeURI(part.replaceAll('~', '~0').replaceAll('/', '~1')));
  return `#/${path.join('/')}`;
}

function shortened(name: string): string {
  return name.length > 60 ? `${name.slice(0, 57)}…` : name;
}

function nestedOf(fields: readonly Field[]): Readonly<Record<string, unknown>> {
  const byName = new Map<string, string | string[]>();
  for (const [name, value] of fields) {
    const before = byName.get(name);
    byName.set(name, before === undefined ? value : [before, value].flat());
  }
  // The names are read and held to their limits; what is left to do is to nest what they hold.
  return qs.parse(Object.fromEntries(byName) as Record<string, string>, {
    depth: DEPTH_AT_MOST,
    strictDepth: true,
    arrayLimit: ROW_AT_MOST + 1,
    throwOnLimitExceeded: true,
    parameterLimit: FIELDS_AT_MOST,
    allowSparse: true,
    plainObjects: true,
  });
}
