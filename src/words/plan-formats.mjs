/**
 * The formats of the plan document: what format 1 called things, and how a plan of it becomes one of format 2. One
 * module for the service and the browser.
 *
 * @typedef {Readonly<Record<string, unknown>>} Fields
 * @typedef {object} Renamed
 * @property {string} at Where it stands, '*' for a place in a list: an object, or for a value the field itself.
 * @property {string} from What format 1 calls it.
 * @property {string} to
 */

export const PLAN_FORMAT = 2;

/** Fields, by the object they stand in. @type {readonly Renamed[]} */
export const RENAMED_FIELDS = [
  { at: '/tower', from: 'foot', to: 'base' },
  { at: '/tower', from: 'held', to: 'supportedAt' },
  { at: '/tower/hinge/raisedBy', from: 'over', to: 'raisingPoleTip' },
  { at: '/tower/hinge/raisedBy', from: 'rating', to: 'workingLoad' },
  { at: '/tower/foundation', from: 'bearing', to: 'soilBearing' },
  { at: '/tower/foundation', from: 'lateral', to: 'soilLateral' },
  { at: '/mast', from: 'shelf', to: 'manufacturerPlates' },
  { at: '/ratings/*', from: 'rows', to: 'areasBySpeed' },
  { at: '/ratings/*', from: 'also', to: 'furtherAreas' },
  { at: '/ratings/*', from: 'breaking', to: 'breakingStrength' },
  { at: '/ratings/*', from: 'working', to: 'workingLoad' },
  { at: '/ratings/*', from: 'held', to: 'supportedAt' },
  { at: '/ratings/*/withCables', from: 'laid', to: 'arrangement' },
  { at: '/cables/*', from: 'laid', to: 'arrangement' },
  { at: '/site/climate', from: 'returns', to: 'returnPeriods' },
  { at: '/wanted', from: 'forecast', to: 'forecastError' },
  { at: '', from: 'sheet', to: 'titleBlock' },
];

/** Choices, by the field they are made in. @type {readonly Renamed[]} */
export const RENAMED_CHOICES = [
  { at: '/tower/foundation/kind', from: 'maker', to: 'manufacturer' },
  { at: '/cables/*/arrangement', from: 'ribbon', to: 'flat' },
  { at: '/ratings/*/withCables/arrangement', from: 'ribbon', to: 'flat' },
];

/** The margin that a plan of format 1 means where it names none. */
export const MARGIN_OF_FORMAT_1 = 0.2;

/** @param {unknown} value @returns {value is Fields} */
const isFields = (value) => typeof value === 'object' && value !== null && !Array.isArray(value);

/** @param {readonly Renamed[]} list @param {string} at @returns {ReadonlyMap<string, string>} */
const newNamesAt = (list, at) => new Map(list.filter((each) => each.at === at).map(({ from, to }) => [from, to]));
const PLACES = [...new Set([...RENAMED_FIELDS, ...RENAMED_CHOICES].map(({ at }) => at))];
const NEW_FIELDS = new Map(PLACES.map((at) => [at, newNamesAt(RENAMED_FIELDS, at)]));
const NEW_CHOICES = new Map(PLACES.map((at) => [at, newNamesAt(RENAMED_CHOICES, at)]));

/** Whether anything is renamed at a place or below it. @param {string} at */
const leadsToRenamed = (at) => PLACES.some((place) => place === at || place.startsWith(`${at}/`));

/**
 * What format 2 calls the fields of an object, by their names in format 1.
 *
 * @param {string} at Where the object stands: '/ratings/*'.
 * @returns {ReadonlyMap<string, string>}
 */
export const newFieldNames = (at) => NEW_FIELDS.get(at) ?? new Map();

/** What format 2 calls a choice of format 1. @param {string} at @param {unknown} choice @returns {string | undefined} */
export const newChoice = (at, choice) => (typeof choice === 'string' ? NEW_CHOICES.get(at)?.get(choice) : undefined);

/**
 * A pointer with '*' for each place in a list.
 *
 * @param {string} pointer
 */
export const placeOf = (pointer) => pointer.replaceAll(/\/\d+(?=\/|$)/g, '/*');

/**
 * A document, or a part of one, with the names of format 2. A field that stands there by both names keeps both, for the
 * reader to refuse.
 *
 * @param {unknown} node
 * @param {string} [at] Where in a plan it stands.
 * @returns {any}
 */
export function renamed(node, at = '') {
  if (typeof node === 'string') return newChoice(at, node) ?? node;
  if (typeof node !== 'object' || node === null || !leadsToRenamed(at)) return node;
  if (Array.isArray(node)) return Array.from(node, (each) => renamed(each, `${at}/*`));
  const names = newFieldNames(at);
  return Object.fromEntries(
    Object.entries(node).map(([key, value]) => {
      const name = names.get(key);
      const kept = name === undefined || Object.hasOwn(node, name) ? key : name;
      return [kept, renamed(value, `${at}/${kept}`)];
    }),
  );
}

/**
 * A document with the names of format 1 again.
 *
 * @param {unknown} node
 * @param {string} [at]
 * @returns {any}
 */
function renamedBack(node, at = '') {
  if (typeof node === 'string') return RENAMED_CHOICES.find((each) => each.at === at && each.to === node)?.from ?? node;
  if (typeof node !== 'object' || node === null || !leadsToRenamed(at)) return node;
  if (Array.isArray(node)) return node.map((each) => renamedBack(each, `${at}/*`));
  return Object.fromEntries(
    Object.entries(node).map(([key, value]) => {
      const old = RENAMED_FIELDS.find((each) => each.at === at && each.to === key);
      return [old?.from ?? key, renamedBack(value, `${at}/${key}`)];
    }),
  );
}

/** Whether a name of format 1 stands in its place. @param {unknown} node @param {string} [at] @returns {boolean} */
export function hasOldName(node, at = '') {
  if (typeof node === 'string') return newChoice(at, node) !== undefined;
  if (typeof node !== 'object' || node === null || !leadsToRenamed(at)) return false;
  if (Array.isArray(node)) return node.some((each) => hasOldName(each, `${at}/*`));
  const names = newFieldNames(at);
  return Object.entries(node).some(([key, value]) => names.has(key) || hasOldName(value, `${at}/${key}`));
}

/**
 * The format that a plan is of: what it says, else 1 where an old name stands in its old place, else the newest. What is
 * no format is left for the reader to refuse.
 *
 * @param {unknown} document
 * @returns {unknown}
 */
export function formatOf(document) {
  if (!isFields(document)) return undefined;
  if (document['format'] !== undefined) return document['format'];
  return hasOldName(document) ? 1 : PLAN_FORMAT;
}

/**
 * A plan of format 1 as one of format 2, with the margin that it meant; any other document as it is.
 *
 * @param {unknown} document
 * @param {unknown} [format] What it is of, where that was looked at before.
 * @returns {any}
 */
export function inNewestFormat(document, format = formatOf(document)) {
  if (format !== 1 || !isFields(document)) return document;
  const { format: _, ...plan } = renamed(document);
  const wanted = plan.wanted ?? {};
  if (!isFields(wanted) || wanted['margin'] !== undefined) return { format: PLAN_FORMAT, ...plan };
  return { format: PLAN_FORMAT, ...plan, wanted: { margin: MARGIN_OF_FORMAT_1, ...wanted } };
}

/**
 * A plan that was read from one of format 1, as that was: by its names, and without a margin it did not have.
 *
 * @param {Fields} plan
 * @param {unknown} sent
 * @returns {Fields}
 */
export function asItWas(plan, sent) {
  const told = isFields(sent) && isFields(sent['wanted']) ? sent['wanted'] : undefined;
  return Object.fromEntries(
    Object.entries(renamedBack(plan)).flatMap(([key, value]) => {
      if (key === 'format') return [[key, 1]];
      if (key !== 'wanted' || told?.['margin'] !== undefined) return [[key, value]];
      const { margin: _, ...others } = value;
      return told === undefined ? [] : [[key, others]];
    }),
  );
}

/** A place in a request as one in the plan it is about: a plan with proposals has it one step further in. @param {string} place */
export const placeInPlan = (place) => place.replace(/^\/(plan|proposals\/\*\/set)(?=\/|$)/, '');

/**
 * Where something stood in a document as it was sent, by its place in what was made of it.
 *
 * @param {string} pointer Without '#'.
 * @param {unknown} sent
 * @returns {string}
 */
export function placeAsSent(pointer, sent) {
  let node = sent;
  let now = '';
  let then = '';
  for (const key of pointer.split('/').slice(1)) {
    const at = placeInPlan(placeOf(now));
    const old = RENAMED_FIELDS.find((each) => each.at === at && each.to === key)?.from;
    const name =
      old !== undefined && isFields(node) && Object.hasOwn(node, old) && !Object.hasOwn(node, key) ? old : key;
    now += `/${key}`;
    then += `/${name}`;
    const inside = /** @type {Record<string, unknown>} */ (typeof node === 'object' ? (node ?? {}) : {});
    node = Object.hasOwn(inside, name) ? inside[name] : undefined;
  }
  return then;
}

/** A pointer into a plan of format 1 as one into that plan in format 2. @param {string} pointer */
export function placeInNewest(pointer) {
  let place = '';
  let found = '';
  for (const key of pointer.split('/').slice(1)) {
    const name = newFieldNames(place).get(key) ?? key;
    found += `/${name}`;
    place = placeOf(found);
  }
  return found;
}
