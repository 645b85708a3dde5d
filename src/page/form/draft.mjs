/**
 * The draft is the plan document as the form holds it: the same places, every answer as the text that was typed.
 *
 * @typedef {{ [key: string]: unknown } | unknown[]} Node
 */
import { inNewestFormat } from '../../words/index.mjs';
import { inOtherUnits } from './quantity.mjs';
import { listAt, questionAt } from './questions.mjs';

/** @param {unknown} value @returns {value is Record<string, unknown>} */
const isBranch = (value) => typeof value === 'object' && value !== null;

/** @param {string} pointer */
export const keysOf = (pointer) =>
  pointer === ''
    ? []
    : pointer
        .slice(1)
        .split('/')
        .map((key) => key.replaceAll('~1', '/').replaceAll('~0', '~'));

/** @param {string} key */
export const asKey = (key) => key.replaceAll('~', '~0').replaceAll('/', '~1');

/** @param {unknown} draft @param {string} pointer @returns {unknown} */
export function valueAt(draft, pointer) {
  let value = draft;
  for (const key of keysOf(pointer)) {
    if (!isBranch(value) || !Object.hasOwn(value, key)) return undefined;
    value = value[key];
  }
  return value;
}

/** The answer at a place as text; '' where there is none. @param {unknown} draft @param {string} pointer */
export function textAt(draft, pointer) {
  const value = valueAt(draft, pointer);
  return typeof value === 'string' ? value : '';
}

/**
 * A draft in which one place holds another value; what is undefined goes, and with it what then is empty.
 *
 * @param {unknown} draft
 * @param {string} pointer
 * @param {unknown} value
 * @returns {unknown}
 */
export function withValue(draft, pointer, value) {
  return put(draft, keysOf(pointer), value, '');
}

/** @param {unknown} node @param {readonly string[]} keys @param {unknown} value @param {string} at @returns {unknown} */
function put(node, keys, value, at) {
  const [key, ...rest] = keys;
  if (key === undefined) return value;
  const isList = Array.isArray(node) || (node === undefined && (listAt(at) !== undefined || /^\d+$/.test(key)));
  const child = put(
    isBranch(node) && Object.hasOwn(node, key) ? node[key] : undefined,
    rest,
    value,
    `${at}/${asKey(key)}`,
  );
  if (isList) {
    const list = Array.isArray(node) ? [...node] : [];
    while (list.length < Number(key)) list.push(undefined);
    list[Number(key)] = child;
    return list.every((row) => row === undefined) && listAt(at) === undefined ? undefined : list;
  }
  const members = Object.entries(isBranch(node) ? node : {}).filter(([name]) => name !== key);
  if (child === undefined)
    return members.length === 0 && at !== '' && !/\/\d+$/.test(at) ? undefined : Object.fromEntries(members);
  const order = Object.keys(isBranch(node) ? node : {});
  if (!order.includes(key)) return Object.fromEntries([...members, [key, child]]);
  return Object.fromEntries(
    order.map((name) => [name, name === key ? child : /** @type {Record<string, unknown>} */ (node)[name]]),
  );
}

/** What stands in a draft in place of the rows of a list, where it is said that there are none. */
export const NONE = 'no';

/** The rows of a list; none where nothing is told, or where it is said that there are none. @param {unknown} draft @param {string} pointer @returns {readonly unknown[]} */
export function rowsOf(draft, pointer) {
  const rows = valueAt(draft, pointer);
  return Array.isArray(rows) ? rows : [];
}

/** Whether nothing was answered here. @param {unknown} value @returns {boolean} */
export function isBlank(value) {
  if (value === undefined || value === null) return true;
  if (typeof value === 'string') return value.trim() === '';
  return isBranch(value) && Object.values(value).every(isBlank);
}

const PLAIN_NUMBER = /^-?(0|[1-9]\d{0,14})(\.\d{1,15})?$/;

/** @param {string} text @returns {number | string} */
const asNumber = (text) => (PLAIN_NUMBER.test(text) && String(Number(text)) === text ? Number(text) : text);

/** @param {string} text @param {import('./questions.mjs').Question | undefined} question @returns {unknown} */
function asValue(text, question) {
  const tidy = text.trim();
  switch (question?.kind) {
    case 'whole':
    case 'number':
      return /^[+-]?\d+(\.\d+)?$/.test(tidy) ? Number(tidy) : tidy;
    case 'yes':
      return tidy === 'true' ? true : tidy === 'false' ? false : tidy;
    case 'choice':
    case 'choices':
      if (/\/(faces|sides)$/.test(question.at)) return asNumber(tidy);
      return /\/telescopes$/.test(question.at) && (tidy === 'true' || tidy === 'false') ? tidy === 'true' : tidy;
    case 'height-or-no':
      return /^(no|none|false)$/i.test(tidy) ? false : asNumber(tidy);
    case 'quantity':
      return asNumber(tidy);
    case 'pair': {
      const ends = /^(.*\S)\s+to\s+(\S.*)$/i.exec(tidy);
      const low = ends ? asNumber(/** @type {string} */ (ends[1])) : tidy;
      const high = ends ? asNumber(/** @type {string} */ (ends[2])) : tidy;
      return typeof low === 'number' && typeof high === 'number' ? [low, high] : asNumber(tidy);
    }
    default:
      return text;
  }
}

/**
 * The plan document a draft stands for, and how its places follow from those of the draft: blank answers and blank
 * rows are not given.
 *
 * @param {unknown} draft
 * @param {readonly string[]} [leaveOut] Places that are not to be part of it.
 * @returns {{ document: Record<string, unknown>, draftPlace: (pointer: string) => string }}
 */
export function documentOf(draft, leaveOut = []) {
  const out = new Set(leaveOut);
  /** @type {Map<string, readonly number[]>} */
  const kept = new Map();
  /** @param {unknown} node @param {string} at @returns {unknown} */
  const built = (node, at) => {
    if (out.has(at) || isBlank(node)) return undefined;
    if (node === NONE && listAt(at)?.none !== undefined) return [];
    if (typeof node === 'string') return asValue(node, questionAt(at));
    if (!isBranch(node)) return node;
    if (Array.isArray(node)) {
      const fixed = listAt(at) === undefined;
      const rows = node
        .map((row, index) => /** @type {const} */ ([index, built(row, `${at}/${index}`)]))
        .filter(([index, row]) => fixed || (row !== undefined && !isIdle(node[index], at)));
      kept.set(
        at,
        rows.map(([index]) => index),
      );
      const values = rows.map(([, row]) => (row === undefined ? null : row));
      while (fixed && values.length > 0 && values.at(-1) === null) values.pop();
      return values.length === 0 ? undefined : values;
    }
    const members = Object.entries(node)
      .map(([key, value]) => /** @type {const} */ ([key, built(value, `${at}/${asKey(key)}`)]))
      .filter(([, value]) => value !== undefined);
    return members.length === 0 ? undefined : Object.fromEntries(members);
  };
  const document = /** @type {Record<string, unknown>} */ (built(draft, '') ?? {});
  const draftPlace = (/** @type {string} */ pointer) => {
    let at = '';
    for (const key of keysOf(pointer)) {
      const rows = kept.get(at);
      const index = rows && /^\d+$/.test(key) ? rows[Number(key)] : undefined;
      at += `/${index === undefined ? asKey(key) : index}`;
    }
    return at;
  };
  return { document, draftPlace };
}

/** What the form itself set in a row, before anything was said of it. */
const SET_BY_FORM = /^(of|kind|along|by|arrangement|turns|name)$/;

/** A row that holds no more than the form put there. @param {unknown} row @param {string} at */
function isIdle(row, at) {
  if (!isBranch(row) || Array.isArray(row) || at !== '/ratings') return false;
  return Object.entries(row).every(([key, value]) => isBlank(value) || SET_BY_FORM.test(key));
}

/**
 * The draft of a plan document, or of a part of one, in the newest format; what the form has no entry for stays in it as
 * it is.
 *
 * @param {unknown} document
 * @returns {Record<string, unknown>}
 */
export function draftOf(document) {
  /** @param {unknown} node @param {string} at @returns {unknown} */
  const read = (node, at) => {
    const question = questionAt(at);
    if (question) {
      if (typeof node === 'number') return String(node);
      if (typeof node === 'boolean') return node ? 'true' : question.kind === 'height-or-no' ? 'no' : 'false';
      if (question.kind === 'pair' && Array.isArray(node) && node.length === 2 && node.every((end) => !isBranch(end))) {
        return `${node[0]} to ${node[1]}`;
      }
      return node;
    }
    if (Array.isArray(node) && node.length === 0 && listAt(at)?.none !== undefined) return NONE;
    if (Array.isArray(node)) return node.map((row, index) => read(row, `${at}/${index}`));
    if (isBranch(node)) {
      return Object.fromEntries(Object.entries(node).map(([key, value]) => [key, read(value, `${at}/${asKey(key)}`)]));
    }
    if (/(^|\/)(wind|ratedWind)$/.test(at) && (typeof node === 'number' || typeof node === 'string')) {
      return { speed: String(node) };
    }
    return node;
  };
  return /** @type {Record<string, unknown>} */ (
    isBranch(document) && !Array.isArray(document) ? read(inNewestFormat(document), '') : {}
  );
}

/** The places of a draft that the form has no entry for. @param {unknown} draft @returns {readonly string[]} */
export function unshownIn(draft) {
  /** @param {unknown} node @param {string} at @returns {string[]} */
  const within = (node, at) => {
    if (isBlank(node) || at === '/units' || at === '/format') return [];
    if (questionAt(at)) return typeof node === 'string' ? [] : [at];
    if (node === NONE && listAt(at)?.none !== undefined) return [];
    if (!isBranch(node)) return [at];
    return Object.entries(node).flatMap(([key, value]) => within(value, `${at}/${asKey(key)}`));
  };
  return within(draft, '');
}

/**
 * A draft in other units: every bare number converted, text with its own unit left, and what was typed put back where
 * it is known.
 *
 * @param {unknown} draft
 * @param {import('./quantity.mjs').Units} to
 * @param {ReadonlyMap<string, string>} remembered What stood at a place, by place, converted text and units.
 * @returns {{ draft: Record<string, unknown>, remembered: Map<string, string> }}
 */
export function draftInUnits(draft, to, remembered) {
  const from = textAt(draft, '/units') === 'si' ? 'si' : 'us';
  /** @type {Map<string, string>} */
  const memory = new Map(remembered);
  /** @param {unknown} node @param {string} at @returns {unknown} */
  const turned = (node, at) => {
    if (at === '/units') return to;
    if (typeof node === 'string') {
      const question = questionAt(at);
      if (!question?.of) return node;
      const typed = memory.get(`${to} ${at} ${node}`);
      const converted = typed ?? inOtherUnits(node, question.of, from, to);
      if (converted !== node) memory.set(`${from} ${at} ${converted}`, node);
      return converted;
    }
    if (Array.isArray(node)) return node.map((row, index) => turned(row, `${at}/${index}`));
    if (isBranch(node)) {
      return Object.fromEntries(
        Object.entries(node).map(([key, value]) => [key, turned(value, `${at}/${asKey(key)}`)]),
      );
    }
    return node;
  };
  return { draft: /** @type {Record<string, unknown>} */ (turned(draft, '')), remembered: memory };
}
