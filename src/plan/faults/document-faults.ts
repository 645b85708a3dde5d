import type { z } from 'zod';
import { newChoice, newFieldNames, PLAN_FORMAT, placeInPlan, placeOf } from '../../words/index.ts';
import { type PlanDocument, planDocumentSchema } from '../schema/plan-document.ts';
import { fieldsAt, formsAllowed } from '../schema/schema-at.ts';
import { type Fault, type FaultCode, isObject, pointerTo, valueAt } from './fault.ts';
import { givenWords } from './given-words.ts';
import { nearestName } from './nearest-name.ts';
import { placeWords } from './place-words.ts';

type Issue = z.core.$ZodIssue;
type Path = readonly PropertyKey[];

/** How often a document is looked at again once what was wrong is set aside; lists that are too long hide what is in them. */
const LOOKS = 4;

/** More faults than this help nobody. */
const FAULTS_AT_MOST = 500;

/**
 * Everything wrong with the form of a document, and what is left of it when that is set aside, so that the rest can
 * still be read and all faults be told at once; in that rest required fields may be absent.
 */
export function documentFaults<Document = PlanDocument>(
  document: unknown,
  firstIssues: readonly Issue[],
  schema: z.ZodType = planDocumentSchema,
): { readonly faults: readonly Fault[]; readonly rest: Document | undefined } {
  const faults = new Map<string, Fault>();
  if (!isObject(document)) {
    const given = givenWords(document);
    const says = `A plan is an object with its fields; ${given} was given.`;
    return { faults: [{ pointer: '#', code: 'wrong-type', given, allowed: 'an object', says }], rest: undefined };
  }
  const rest = copied(document);
  let issues = firstIssues;
  for (let look = 0; look < LOOKS && issues.length > 0; look += 1) {
    const found = issues.flatMap((issue) => plainIssues(issue, [], look === 0 ? document : rest));
    for (const { issue, path } of found) {
      for (const fault of faults.size < FAULTS_AT_MOST ? faultsOf(issue, path, document, schema) : []) {
        if (!faults.has(fault.pointer) && !followsFrom(fault, faults)) faults.set(fault.pointer, fault);
      }
    }
    for (const { issue, path } of found) setAside(rest, issue, path, schema);
    issues = schema.safeParse(rest).error?.issues ?? [];
  }
  const readable = issues.every((issue) => valueAt(rest, issue.path) === undefined);
  return { faults: [...faults.values()], rest: readable ? (rest as Document) : undefined };
}

/** What is missing only because a form around it or in it was already found wrong. */
function followsFrom(fault: Fault, faults: ReadonlyMap<string, Fault>): boolean {
  if (fault.code !== 'missing') return false;
  for (const [pointer, { code }] of faults) {
    if (pointer.startsWith(`${fault.pointer}/`)) return true;
    if (code === 'wrong-type' && fault.pointer.startsWith(`${pointer}/`)) return true;
  }
  return false;
}

/** A choice between several forms hides its reasons; the form that was meant is the one whose outermost type fits. */
function plainIssues(issue: Issue, parent: Path, document: unknown): { issue: Issue; path: Path }[] {
  const path = [...parent, ...issue.path];
  if (issue.code !== 'invalid_union') return [{ issue, path }];
  const value = valueAt(document, path);
  if (value === undefined) return [{ issue, path }];
  const meant = issue.errors.filter((errors) => errors.some((error) => !isRootMismatch(error)));
  const fewest = meant.toSorted((one, other) => one.length - other.length)[0];
  return fewest === undefined ? [{ issue, path }] : fewest.flatMap((inner) => plainIssues(inner, path, document));
}

function isRootMismatch(issue: Issue): boolean {
  if (issue.path.length > 0) return false;
  if (issue.code === 'invalid_union') return issue.errors.every((errors) => errors.every(isRootMismatch));
  return issue.code === 'invalid_type' || issue.code === 'invalid_value';
}

function faultsOf(issue: Issue, path: Path, document: unknown, schema: z.ZodType): Fault[] {
  if (issue.code === 'unrecognized_keys') {
    return issue.keys.slice(0, FAULTS_AT_MOST).map((key) => unknownField(key, path, document, schema));
  }
  const value = valueAt(document, path);
  const words = placeWords(document, path);
  const given = givenWords(value);
  const allowed = formsAllowed(schema, path);
  const fault = (code: FaultCode, says: string, allow = allowed): Fault[] => [
    { pointer: pointerOf(path), code, given, allowed: allow, says },
  ];
  if (value === undefined) return fault('missing', `${words} is missing: give ${allowed}.`);
  if (issue.code === 'too_big' || issue.code === 'too_small') return outOfSize(issue, value, words, fault);
  if (issue.code === 'invalid_value' && typeof value === 'string') {
    const now = newChoice(placeInPlan(placeOf(pointerOf(path).slice(1))), value);
    const nearest = now ?? nearestName(value, issue.values.map(String));
    const meant = nearest === undefined ? '' : ` Did you mean ${nearest}?`;
    return fault('not-a-choice', `${words}: ${given} given, ${allowed} allowed.${meant}`);
  }
  return fault('wrong-type', `${words}: ${given} given, ${allowed} allowed.`);
}

function outOfSize(
  issue: Extract<Issue, { code: 'too_big' | 'too_small' }>,
  value: unknown,
  words: string,
  fault: (code: FaultCode, says: string, allow: string) => Fault[],
): Fault[] {
  const big = issue.code === 'too_big';
  const limit = Number(big ? issue.maximum : issue.minimum);
  const most = big ? 'at most' : 'at least';
  if (Array.isArray(value)) {
    const says = `${words}: ${value.length} given, ${most} ${limit} allowed.`;
    return fault(big ? 'too-many' : 'too-few', says, `${most} ${limit}`);
  }
  if (typeof value === 'string') {
    const says = big
      ? `${words} has ${value.length} characters, at most ${limit} are allowed: shorten it.`
      : `${words} is empty: write something or leave the field out.`;
    return fault(big ? 'too-long' : 'missing', says, `${most} ${limit} characters`);
  }
  const beyond = issue.inclusive === false ? (big ? 'less than' : 'more than') : most;
  return fault(
    'out-of-bounds',
    `${words}: ${givenWords(value)} given, ${beyond} ${limit} allowed.`,
    `${beyond} ${limit}`,
  );
}

function unknownField(key: string, path: Path, document: unknown, schema: z.ZodType): Fault {
  const pointer = `#${pointerTo(pointerOf(path).slice(1), key)}`;
  const known = fieldsAt(schema, path);
  const allowed = known.join(', ');
  const given = key.length > 60 ? `${key.slice(0, 57)}…` : key;
  const says = `${placeWords(document, path)} ${unknownWords(key, given, path, document, known)}`;
  return { pointer, code: 'unknown-field', given, allowed, says };
}

function unknownWords(key: string, given: string, path: Path, document: unknown, known: readonly string[]): string {
  const names = newFieldNames(placeInPlan(placeOf(pointerOf(path).slice(1))));
  const now = names.get(key);
  if (now !== undefined && valueAt(document, [...path, now]) !== undefined) {
    return `has "${given}" and "${now}", its name since format ${PLAN_FORMAT}. Leave "${given}" out.`;
  }
  if (now !== undefined) return `has no field "${given}": since format ${PLAN_FORMAT} it is called "${now}".`;
  const nearest = nearestName(key, [...known, ...names.keys()]);
  const advice =
    nearest === undefined ? `It may have: ${known.join(', ')}.` : `Did you mean "${names.get(nearest) ?? nearest}"?`;
  return `has no field "${given}". ${advice}`;
}

function setAside(rest: object, issue: Issue, path: Path, schema: z.ZodType): void {
  const here = valueAt(rest, path);
  if (issue.code === 'unrecognized_keys') {
    for (const key of issue.keys) if (typeof here === 'object' && here !== null) Reflect.deleteProperty(here, key);
    return;
  }
  if (issue.code === 'too_big' && Array.isArray(here)) {
    here.length = Number(issue.maximum);
    return;
  }
  const owner = valueAt(rest, path.slice(0, -1));
  const key = path.at(-1);
  if (typeof owner !== 'object' || owner === null || key === undefined) return;
  if (!Array.isArray(owner)) Reflect.deleteProperty(owner, key);
  else if (fieldsAt(schema, path).length > 0) owner[Number(key)] = {};
  else setAside(rest, issue, path.slice(0, -1), schema);
}

/** No plan goes deeper; what does is refused as a whole and need not be copied. */
const DEPTH_AT_MOST = 12;

/** A copy of plain lists and objects whose members can be taken out; names of the prototype chain stay plain names. */
function copied(value: object, depth = 0): object {
  const copy: object = Array.isArray(value) ? [] : {};
  for (const [key, member] of Object.entries(value)) {
    const inner =
      typeof member === 'object' && member !== null && depth < DEPTH_AT_MOST ? copied(member, depth + 1) : member;
    Object.defineProperty(copy, key, { value: inner, enumerable: true, configurable: true, writable: true });
  }
  return copy;
}

function pointerOf(path: Path): string {
  return `#${path.reduce<string>((at, key) => pointerTo(at, key), '')}`;
}
