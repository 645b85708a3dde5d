/** What the form knows: the draft and its past, what the service last answered, what does not fit. */
import { batch, computed, signal } from '@preact/signals';
import { PLAN_FORMAT } from '../../words/index.mjs';
import {
  documentOf,
  draftInUnits,
  draftOf,
  isBlank,
  NONE,
  rowsOf,
  textAt,
  unshownIn,
  valueAt,
  withValue,
} from './draft.mjs';
import { asksGround, groundField, offeredMethod } from './methods.mjs';
import { listAt, PARTS, partOf, questionAt } from './questions.mjs';

/**
 * @typedef {{ draft: Record<string, unknown>, unknown: ReadonlySet<string>, remembered: ReadonlyMap<string, string>, says: string, field: string }} Moment
 * @typedef {{ pointer: string, code: string, says: string, soft: boolean, readings?: readonly string[] }} Trouble
 * @typedef {import('../../answer/index.ts').Answer} Answer
 * @typedef {import('../../answer/index.ts').CheckAnswer} Check
 */

/** An empty sheet, with a row where the first answer of each list goes. @param {'us' | 'si'} [units] @returns {Record<string, unknown>} */
export const emptyDraft = (units = 'us') => ({
  format: PLAN_FORMAT,
  units,
  ...(offeredMethod(units) === undefined ? {} : { method: offeredMethod(units) }),
  loads: [{}],
  cables: [{}],
  ratings: [{ of: 'tower' }],
});

/** @type {import('@preact/signals').Signal<Record<string, unknown>>} */
export const draft = signal(/** @type {Record<string, unknown>} */ (emptyDraft()));
/** Places answered with "I don't know". */
export const unknown = signal(/** @type {ReadonlySet<string>} */ (new Set()));
/** What was typed before units were switched. */
const remembered = signal(/** @type {ReadonlyMap<string, string>} */ (new Map()));
/** Answers that belong to a choice not made now, so that they come back with it. */
const setAside = new Map();

/** @type {import('@preact/signals').Signal<readonly Moment[]>} */
const past = signal(/** @type {readonly Moment[]} */ ([]));
/** @type {import('@preact/signals').Signal<readonly Moment[]>} */
const future = signal(/** @type {readonly Moment[]} */ ([]));

/** The step of the first visit that is shown; below 0 the whole form. */
export const guided = signal(-1);
/** Whether script runs; the first paint is without. */
export const scripted = signal(false);
/** The last change, in words, and the weakest use before it. */
export const lastChange = signal('');
/** Something to say once: a file opened, a link copied. */
export const notice = signal('');

/** @type {import('@preact/signals').Signal<Answer | null>} The last answer. */
export const answer = signal(null);
/** The document that the last answer is to. */
export const answeredPlan = signal(/** @type {Record<string, unknown> | null} */ (null));
/** Other ways beside the plan. */
export const candidates = signal(/** @type {import('./candidates.mjs').Candidates} */ ({ units: 'us', list: [] }));
/** The draft that the last answer is to. */
export const answeredDraft = signal(/** @type {Record<string, unknown> | null} */ (null));
/** The last answer is marked as one to an earlier plan. */
export const earlier = signal(false);
/** The weakest link of the answer before the last change. */
export const before = signal(/** @type {{ title: string, ratio: number } | null} */ (null));
export const state = signal(/** @type {'rest' | 'asked' | 'slow' | 'unreachable' | 'busy' | 'locked'} */ ('rest'));
export const answeredAt = signal('');
export const troubles = signal(/** @type {readonly Trouble[]} */ ([]));
/** @type {import('@preact/signals').Signal<(pointer: string) => string>} From places of the document to those of the draft. */
export const placeOf = signal((/** @type {string} */ pointer) => pointer);

export const openParts = signal(/** @type {ReadonlySet<string>} */ (new Set()));
export const openRows = signal(/** @type {ReadonlySet<string>} */ (new Set(['/loads/0', '/ratings/0'])));
export const openMore = signal(/** @type {ReadonlySet<string>} */ (new Set()));

/** Rare answers that stand among the plain ones, since they were there when their fold was painted. */
export const surfaced = signal(/** @type {ReadonlySet<string>} */ (new Set()));

/** Lifts every answered place out of its fold. @param {unknown} node */
function surface(node) {
  /** @type {Set<string>} */
  const places = new Set();
  /** @param {unknown} value @param {string} at */
  const walk = (value, at) => {
    if (isBlank(value)) return;
    places.add(at);
    if (typeof value === 'object')
      for (const [key, member] of Object.entries(/** @type {object} */ (value))) walk(member, `${at}/${key}`);
  };
  walk(node, '');
  surfaced.value = places;
}

/** Opens or shuts a fold; what was answered inside then stands outside. @param {string} id @param {boolean} open */
export function fold(id, open) {
  if (openMore.value.has(id) === open) return;
  openMore.value = open ? new Set([...openMore.value, id]) : without(openMore.value, id);
  if (!open) surface(draft.value);
}

export const units = computed(() => /** @type {'us' | 'si'} */ (textAt(draft.value, '/units') === 'si' ? 'si' : 'us'));
export const plan = computed(() => documentOf(draft.value));
/** What the loads of the plan are called; one without a name by its place. */
export const loadNames = computed(() =>
  /** @type {unknown[]} */ (plan.value.document['loads'] ?? []).map(
    (row, index) => textAt(row, '/name') || `load ${index + 1}`,
  ),
);
/** The places of the plan that the form has no entry for. */
export const unshown = computed(() => unshownIn(draft.value));
export const canUndo = computed(() => past.value.length > 0);
export const canRedo = computed(() => future.value.length > 0);

/** @type {import('@preact/signals').ReadonlySignal<ReadonlyMap<string, readonly Trouble[]>>} Troubles by the place in the draft they belong to. */
export const troublesByPlace = computed(() => {
  /** @type {Map<string, Trouble[]>} */
  const by = new Map();
  for (const trouble of troubles.value) {
    const place = fieldFor(trouble.pointer);
    by.set(place, [...(by.get(place) ?? []), trouble]);
  }
  return by;
});

/** The entry a place is answered in: itself, the first beneath it, or the nearest above. @param {string} pointer @returns {string} */
export function fieldFor(pointer) {
  if (questionAt(pointer) || listAt(pointer) || isRow(pointer)) return pointer;
  const known = {
    '/mast': '/mast/outside',
    '/tower/foundation': '/tower/foundation/kind',
    '/tower': '/tower/top',
    '/site': '/site/wind/speed',
  };
  if (pointer in known) return known[/** @type {keyof typeof known} */ (pointer)];
  for (const first of [
    '/speed',
    '/shape',
    '/kind',
    '/height',
    '/thickness',
    '/distance',
    '/count',
    '/powerLine',
    '/basis',
    '/0',
  ]) {
    if (questionAt(pointer + first)) return pointer + first;
  }
  const above = pointer.slice(0, pointer.lastIndexOf('/'));
  return above === '' ? pointer : fieldFor(above);
}

/** @param {string} pointer */
export const isRow = (pointer) =>
  /\/\d+$/.test(pointer) && listAt(pointer.slice(0, pointer.lastIndexOf('/'))) !== undefined;

/** @returns {Moment} */
const now = () => ({ draft: draft.value, unknown: unknown.value, remembered: remembered.value, says: '', field: '' });

/**
 * Takes a change in: it can be undone, and changes of one entry in a row are undone together.
 *
 * @param {Record<string, unknown>} next
 * @param {string} says
 * @param {string} [field]
 */
function take(next, says, field = '') {
  const last = past.value.at(-1);
  batch(() => {
    if (field === '' || last?.field !== field || future.value.length > 0) {
      past.value = [...past.value.slice(-199), { ...now(), says, field }];
      const weakest = weakestOf(answer.value);
      before.value = weakest ? { title: weakest.title, ratio: weakest.ratio } : null;
    }
    future.value = [];
    draft.value = next;
    lastChange.value = says;
  });
}

/** The check that holds to the lowest gust, with its ratio. @param {Answer | null} given */
export function weakestOf(given) {
  const weakest = given?.checks.find(({ id }) => id === given.weakest);
  return weakest?.ratio === undefined ? null : { ...weakest, ratio: weakest.ratio };
}

/** What a place is called in a sentence. @param {string} pointer */
export function nameOf(pointer) {
  const question = questionAt(pointer);
  const row = /^(.*\/\d+)\//.exec(pointer)?.[1];
  const label = question ? question.label.toLowerCase().replace(/^(or|of it|and) /, '') : '';
  const part = partOf(pointer)?.title.toLowerCase() ?? '';
  if (row && isRow(row)) return `${rowName(row)}: ${label}`;
  return label || part;
}

/** What a row is called. @param {string} pointer */
export function rowName(pointer) {
  const at = pointer.slice(0, pointer.lastIndexOf('/'));
  const given = textAt(draft.value, `${pointer}/name`);
  if (given !== '') return given;
  const list = listAt(at);
  return `${list?.one ?? 'row'} ${Number(pointer.slice(at.length + 1)) + 1}`;
}

/** @param {string} pointer @param {string} text */
export function answerTo(pointer, text) {
  const question = questionAt(pointer);
  let next = /** @type {Record<string, unknown>} */ (withValue(draft.value, pointer, text));
  if (question?.owns) next = withOwned(next, pointer, question, text);
  if (text !== '' && unknown.value.has(pointer)) unknown.value = without(unknown.value, pointer);
  take(next, nameOf(pointer), question?.kind === 'choice' || question?.kind === 'choices' ? '' : pointer);
}

/** The height a rating is for; the tower's own follows it until another is given. @param {string} pointer @param {string} text */
export function answerRatedTop(pointer, text) {
  const before = textAt(draft.value, pointer);
  const own = textAt(draft.value, '/tower/top');
  if (own !== '' && own !== before) return answerTo(pointer, text);
  let next = withValue(draft.value, pointer, text);
  next = withValue(next, '/tower/top', text);
  if (unknown.value.has(pointer)) unknown.value = without(unknown.value, pointer);
  take(/** @type {Record<string, unknown>} */ (next), nameOf(pointer), pointer);
}

/**
 * Puts aside what belongs to other choices, and brings back what belongs to this one.
 *
 * @param {Record<string, unknown>} from
 * @param {string} pointer
 * @param {import('./questions.mjs').Question} question
 * @param {string} chosen
 */
function withOwned(from, pointer, question, chosen) {
  const base = pointer.slice(0, pointer.length - question.at.length);
  const owns = /** @type {Record<string, readonly string[]>} */ (question.owns);
  const mine = new Set(owns[chosen || question.blankMeans || ''] ?? []);
  let next = from;
  for (const at of new Set(Object.values(owns).flat())) {
    const value = valueAt(next, base + at);
    if (!mine.has(at) && value !== undefined) {
      setAside.set(base + at, value);
      next = /** @type {Record<string, unknown>} */ (withValue(next, base + at, undefined));
    } else if (mine.has(at) && isBlank(value) && setAside.has(base + at)) {
      next = /** @type {Record<string, unknown>} */ (withValue(next, base + at, setAside.get(base + at)));
    }
  }
  return next;
}

/** @param {ReadonlySet<string>} set @param {string} member */
const without = (set, member) => new Set([...set].filter((each) => each !== member));

/** @param {string} pointer @param {boolean} isUnknown */
export function setUnknown(pointer, isUnknown) {
  const typed = textAt(draft.value, pointer);
  if (isUnknown && typed !== '') setAside.set(pointer, typed);
  const next = isUnknown
    ? withValue(draft.value, pointer, undefined)
    : setAside.has(pointer)
      ? withValue(draft.value, pointer, setAside.get(pointer))
      : draft.value;
  take(/** @type {Record<string, unknown>} */ (next), `${nameOf(pointer)}${isUnknown ? ' not known' : ''}`);
  unknown.value = isUnknown ? new Set([...unknown.value, pointer]) : without(unknown.value, pointer);
}

/** @param {string} at @param {Record<string, unknown> | unknown} [row] */
export function addRow(at, row) {
  const rows = rowsOf(draft.value, at);
  const list = listAt(at);
  const fresh = row ?? freshRow(at);
  const place = `${at}/${rows.length}`;
  take(/** @type {Record<string, unknown>} */ (withValue(draft.value, at, [...rows, fresh])), `${list?.one} added`);
  if (at === '/loads' || at === '/ratings' || at === '/tower/sections') {
    openRows.value = new Set([...[...openRows.value].filter((each) => !each.startsWith(`${at}/`)), place]);
  }
  return place;
}

/** Whether it is said that a list has no rows, which an empty one does not say. @param {string} at */
export const isNone = (at) => textAt(draft.value, at) === NONE;

/** Says of a list that there are none, or takes that back with the rows that were there. @param {string} at @param {boolean} none */
export function sayNone(at, none) {
  const rows = rowsOf(draft.value, at);
  if (none) setAside.set(at, rows.every(isBlank) ? undefined : rows);
  const next = withValue(draft.value, at, none ? NONE : (setAside.get(at) ?? [freshRow(at)]));
  const says = listAt(at)?.none ?? '';
  take(
    /** @type {Record<string, unknown>} */ (next),
    none ? says.toLowerCase() : (listAt(at)?.title ?? '').toLowerCase(),
  );
}

/** @param {string} at */
function freshRow(at) {
  if (/\/(taper|areasBySpeed|returnPeriods)$/.test(at)) return [];
  if (/^\/ratings\/\d+\/supportedAt$/.test(at)) return '';
  if (/\/(yearlyMax|drawings|attachments)$/.test(at)) return '';
  if (at.endsWith('/tubes')) return { along: 'element' };
  return {};
}

/** @param {string} pointer */
export function removeRow(pointer) {
  const at = pointer.slice(0, pointer.lastIndexOf('/'));
  const index = Number(pointer.slice(at.length + 1));
  const rows = rowsOf(draft.value, at);
  const says = `${rowName(pointer)} left out`;
  const left = rows.filter((_, each) => each !== index);
  const shifted = (/** @type {string} */ place) => {
    if (!place.startsWith(`${at}/`)) return place;
    const [, number, rest] = /** @type {RegExpExecArray} */ (/^(\d+)(.*)$/.exec(place.slice(at.length + 1)));
    return Number(number) < index ? place : Number(number) === index ? undefined : `${at}/${Number(number) - 1}${rest}`;
  };
  const moved = (/** @type {ReadonlySet<string>} */ set) =>
    new Set([...set].map(shifted).filter((each) => each !== undefined));
  batch(() => {
    take(
      /** @type {Record<string, unknown>} */ (withValue(draft.value, at, left.length === 0 ? undefined : left)),
      says,
    );
    unknown.value = moved(unknown.value);
    openRows.value = moved(openRows.value);
    openMore.value = moved(openMore.value);
  });
}

/** Several answers at once. @param {readonly (readonly [string, unknown])[]} changes @param {string} says */
export function change(changes, says) {
  let next = /** @type {unknown} */ (draft.value);
  for (const [pointer, value] of changes) next = withValue(next, pointer, value);
  take(/** @type {Record<string, unknown>} */ (next), says);
}

/**
 * Parts from elsewhere in place of what stood there; it can be undone.
 *
 * @param {readonly (readonly [string, unknown])[]} changes
 * @param {string} says
 */
export function bring(changes, says) {
  const isUnder = (/** @type {string} */ place) => changes.some(([at]) => place === at || place.startsWith(`${at}/`));
  batch(() => {
    change(changes, says);
    unknown.value = new Set([...unknown.value].filter((place) => !isUnder(place)));
    surface(draft.value);
  });
}

/** A whole other draft, which can be undone. @param {Record<string, unknown>} next @param {string} says @param {readonly string[]} [isUnknown] */
export function replaceDraft(next, says, isUnknown = []) {
  batch(() => {
    take(next, says);
    startWith(next, isUnknown);
    openMore.value = new Set();
    before.value = null;
    lastChange.value = '';
  });
}

/** What stood here before the page was opened with another plan, so that it can be undone to. @param {Record<string, unknown>} kept @param {readonly string[]} isUnknown */
export function comeAfter(kept, isUnknown) {
  past.value = [
    { draft: kept, unknown: new Set(isUnknown), remembered: new Map(), says: 'another plan opened', field: '' },
  ];
}

/** Whether a draft holds any answer. @param {unknown} kept */
export function holdsAnswers(kept) {
  return ['/title', '/method', '/site', '/tower', '/mast', '/loads', '/cables', '/titleBlock'].some(
    (place) => !isBlank(valueAt(kept, place)),
  );
}

/** Whether nothing stands in the plan but what every new one starts with. */
export const isEmpty = () =>
  JSON.stringify(plan.value.document) === JSON.stringify(documentOf(emptyDraft(units.value)).document);

/** @param {'us' | 'si'} to */
export function switchUnits(to) {
  if (to === units.value) return;
  const turned = draftInUnits(draft.value, to, remembered.value);
  batch(() => {
    take(turned.draft, 'units');
    remembered.value = turned.remembered;
  });
}

/** Goes back one change. */
export function undo() {
  const last = past.value.at(-1);
  if (!last) return;
  batch(() => {
    future.value = [...future.value, { ...now(), says: last.says, field: last.field }];
    past.value = past.value.slice(0, -1);
    draft.value = last.draft;
    unknown.value = last.unknown;
    remembered.value = last.remembered;
    before.value = null;
    lastChange.value = '';
    notice.value = `Undone: ${last.says}.`;
  });
}

/** Goes forward again. */
export function redo() {
  const next = future.value.at(-1);
  if (!next) return;
  batch(() => {
    past.value = [...past.value, { ...now(), says: next.says, field: '' }];
    future.value = future.value.slice(0, -1);
    draft.value = next.draft;
    unknown.value = next.unknown;
    remembered.value = next.remembered;
    notice.value = `Done again: ${next.says}.`;
  });
}

/** Opens a plan document in place of what is there; it can be undone. @param {unknown} document @param {string} says */
export function openPlan(document, says) {
  const next = draftOf(document);
  if (textAt(next, '/units') === '') next['units'] = 'us';
  batch(() => {
    take(next, says);
    unknown.value = new Set();
    openRows.value = new Set();
    openMore.value = new Set();
    surface(next);
    before.value = null;
    lastChange.value = '';
    notice.value = says;
  });
}

/** Sets the state of a fresh page, with no past. @param {Record<string, unknown>} first @param {readonly string[]} isUnknown */
export function startWith(first, isUnknown = []) {
  draft.value = first;
  unknown.value = new Set(isUnknown);
  surface(first);
  const filled = textAt(first, '/loads/0/name') !== '';
  openRows.value = new Set(filled ? [] : ['/loads/0', '/ratings/0']);
}

/** What is still wanted for a first answer. */
export const wanted = computed(() => {
  const at = (/** @type {string} */ pointer) => textAt(draft.value, pointer).trim();
  const lacking = ['/method', '/site/wind/speed'].filter((pointer) => at(pointer) === '');
  const ground = `/site/${groundField(at('/method'))}`;
  if (asksGround(at('/method')) && at(ground) === '') lacking.push(ground);
  return [...lacking, ...['/tower/support', '/tower/top'].filter((pointer) => at(pointer) === '')];
});

/** How far the first answer is, in words. */
export const entriesLeft = computed(() => {
  const left = wanted.value.length;
  if (left > 0) return `${left} ${left === 1 ? 'entry' : 'entries'} to the first answer.`;
  const hard = toCorrect.value.length;
  return hard === 0
    ? 'The first answer is on its way.'
    : `The answer stands here once ${hard === 1 ? 'one entry is' : `${hard} entries are`} corrected.`;
});

/** The entries to correct. */
export const toCorrect = computed(() => troubles.value.filter(({ soft }) => !soft));

/** The numbers of the first answer, in the order of the sheet, and whether each is given and can be read. */
export const firstNumbers = computed(() => {
  const wrong = new Set(toCorrect.value.map(({ pointer }) => fieldFor(pointer)));
  const isGiven = (/** @type {string} */ pointer) => textAt(draft.value, pointer).trim() !== '' && !wrong.has(pointer);
  const given = (/** @type {string[]} */ ...pointers) => pointers.every(isGiven);
  const some = (/** @type {string[]} */ ...pointers) => pointers.some(isGiven);
  const method = textAt(draft.value, '/method');
  return /** @type {const} */ ([
    ['/method', 'standard', given('/method')],
    ['/site/wind/speed', 'wind speed', given('/site/wind/speed')],
    [`/site/${groundField(method)}`, 'ground upwind', !asksGround(method) || some('/site/exposure', '/site/terrain')],
    ['/tower/support', 'how the tower is held', given('/tower/support')],
    ['/tower/top', 'its height', given('/tower/top')],
    ['/tower/width', 'its width', some('/tower/width', '/tower/sections/0/width', '/tower/sections/0/length')],
    ['/loads/0/area', 'an antenna’s area', given('/loads/0/name') || given('/loads/0/area')],
    ['/loads/0/above', 'where it sits', some('/loads/0/above', '/loads/0/height')],
    ['/cables/0/count', 'how many lines', isNone('/cables') || given('/cables/0/count', '/cables/0/diameter')],
    [
      '/ratings/0/area',
      'what the tower is rated for',
      some('/ratings/0/area', '/ratings/0/force', '/ratings/0/moment'),
    ],
  ]);
});

/** How many answers are given, and how many are not known. */
export const counts = computed(() => {
  let given = 0;
  /** @param {unknown} node @param {string} at */
  const walk = (node, at) => {
    if (typeof node === 'string')
      given += node.trim() !== '' && (questionAt(at) || listAt(at)) && !/\/(of|along)$/.test(at) ? 1 : 0;
    else if (typeof node === 'object' && node !== null)
      for (const [key, value] of Object.entries(node)) walk(value, `${at}/${key}`);
  };
  walk(draft.value, '');
  return { given, unknown: unknown.value.size };
});

/** Whether a part of the sheet is unfolded. @param {string} id */
export function partIsOpen(id) {
  const part = PARTS.find((each) => each.id === id);
  if (!part?.folded) return true;
  return openParts.value.has(id) || partHasAnswers(id);
}

/** @param {string} id */
export function partHasAnswers(id) {
  const part = PARTS.find((each) => each.id === id);
  if (!part) return false;
  const places = [...part.questions, ...(part.lists ?? [])]
    .map(({ at }) => (part.base ?? '') + at)
    .filter((at) => at !== '/title');
  return places.some(
    (place) => !isBlank(valueAt(draft.value, place)) || unknown.value.has(place) || troublesByPlace.value.has(place),
  );
}

/** Unfolds whatever hides a place, and gives it the keyboard. @param {string} pointer */
export function goTo(pointer) {
  const field = fieldFor(pointer);
  const part = partOf(field);
  if (!document.getElementById(idOf(field))) guided.value = -1;
  batch(() => {
    if (part) openParts.value = new Set([...openParts.value, part.id]);
    const rows = new Set(openRows.value);
    const more = new Set(openMore.value);
    for (let at = field; at !== ''; at = at.slice(0, at.lastIndexOf('/'))) {
      rows.add(at);
      more.add(at);
    }
    if (part) more.add(part.id);
    openRows.value = rows;
    openMore.value = more;
  });
  requestAnimationFrame(() => {
    let found = document.getElementById(idOf(field));
    for (let at = field; found === null && at !== ''; at = at.slice(0, at.lastIndexOf('/')))
      found = document.getElementById(idOf(at));
    const entry = found?.matches('input, select, textarea, button, summary')
      ? found
      : found?.querySelector('input, select, textarea, button, summary');
    if (!(entry instanceof HTMLElement)) return;
    entry.scrollIntoView({
      block: 'center',
      behavior: matchMedia('(prefers-reduced-motion: reduce)').matches ? 'auto' : 'smooth',
    });
    entry.focus({ preventScroll: true });
  });
}

/** The id of an entry. @param {string} pointer */
export const idOf = (pointer) => `at${pointer.replaceAll('/', '-').replaceAll(/[^\w-]/g, '_')}`;

/** The name of an entry in a posted form: loads[0][above]. @param {string} pointer */
export const postedName = (pointer) => {
  const [first, ...rest] = pointer.slice(1).split('/');
  return `${first}${rest.map((key) => `[${key}]`).join('')}`;
};
