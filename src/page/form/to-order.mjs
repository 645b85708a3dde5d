/** What is asked of a tower to order, beside the plan: a wind wished for, winds that manufacturers state, towers they offer. */
import { effect, signal } from '@preact/signals';
import { documentOf, draftInUnits, textAt, withValue } from './draft.mjs';
import { html } from './html.mjs';
import { groundField } from './methods.mjs';
import { UNITS } from './quantity.mjs';
import { questionAt } from './questions.mjs';
import * as store from './store.mjs';

/**
 * @typedef {'wished' | 'quote' | 'candidate'} Kind
 * @typedef {{ kind: Kind, key: number, name: string, draft: Record<string, unknown> }} Row With what is typed of it at the places of a plan.
 * @typedef {{ currentTarget: { value: string } }} Changed
 */

const RATED = '/ratings/0/wind';

/** The places that each kind asks for. @type {Record<Kind, (draft: unknown) => readonly string[]>} */
const PLACES = {
  wished: () => [`${RATED}/speed`, `${RATED}/basis`],
  quote: (draft) => windPlaces(draft),
  candidate: (draft) => [
    '/tower/top',
    '/ratings/0/area',
    '/ratings/0/above',
    ...windPlaces(draft),
    '/tower/shape',
    ...(textAt(draft, '/tower/shape') === '' ? [] : ['/tower/width']),
    ...(textAt(draft, '/tower/shape') === 'lattice' ? ['/tower/faces', '/tower/members'] : []),
  ],
};

/** @param {unknown} draft */
const windPlaces = (draft) =>
  ['speed', 'method', groundField(textAt(draft, `${RATED}/method`)), 'riskCategory'].map((key) => `${RATED}/${key}`);

/** Each with how many there may be. */
const WAYS = /** @type {const} */ ([
  ['candidate', 'Add a tower you were offered', 10],
  ['quote', 'Add a wind that a manufacturer states', 12],
  ['wished', 'Add a stronger wind that you wish for', 1],
]);
const CALLED = { wished: 'Wished wind', quote: 'Wind', candidate: 'Tower' };

const rows = signal(/** @type {readonly Row[]} */ ([]));
let keys = 0;
/** The one just added, which gets the keyboard. */
let fresh = -1;
let typedIn = store.units.value;

/** Numbers follow the units of the plan. */
effect(() => {
  const to = store.units.value;
  if (to === typedIn) return;
  const units = typedIn;
  typedIn = to;
  rows.value = rows.peek().map((row) => {
    const { units: _, ...draft } = draftInUnits({ ...row.draft, units }, to, new Map()).draft;
    return { ...row, draft };
  });
});

/** They belong to the plan that they were typed beside. */
effect(() => {
  if (store.isEmpty()) rows.value = [];
});

/** @param {Row} row @param {Partial<Row>} part */
const alter = (row, part) => {
  rows.value = rows.value.map((each) => (each.key === row.key ? { ...each, ...part } : each));
};

/** @param {Kind} kind */
const ofKind = (kind) => rows.value.filter((row) => row.kind === kind);

/** @param {Row} row */
const nameOf = (row) => row.name.trim() || `tower ${ofKind('candidate').indexOf(row) + 1}`;

/** What is typed of a row, as a plan has it; nothing where only its name is. @param {Row} row @returns {any} */
const documentIn = ({ draft }) => documentOf(draft).document;

/** A tower as the service reads it: what is not typed is as in the plan, and its line is for its own height. @param {Row} row */
function candidateOf(row) {
  const { support, top } = /** @type {any} */ (documentOf(store.draft.value).document.tower ?? {});
  const { tower, ratings } = documentIn(row);
  const own = { support, top, ...tower };
  const line = ratings && { ratings: [{ of: 'tower', ...ratings[0], top: own.top }] };
  return { name: nameOf(row), tower: own, ...line };
}

/** All of it, as POST /v1/requirements takes it beside the plan. */
export function asked() {
  const given = (/** @type {Kind} */ kind) => ofKind(kind).filter((row) => Object.keys(documentIn(row)).length > 0);
  const winds = (/** @type {Kind} */ kind) => given(kind).map((row) => documentIn(row).ratings[0].wind);
  const [wished] = winds('wished');
  const quotes = winds('quote');
  const candidates = given('candidate').map(candidateOf);
  return {
    ...(wished && { wished }),
    ...(quotes.length > 0 && { quotes }),
    ...(candidates.length > 0 && { candidates }),
  };
}

/** @param {{ row: Row, place: string }} props */
function Entry({ row, place }) {
  const question = questionAt(place);
  if (!question) return null;
  const id = `order-${row.key}${place.replaceAll('/', '-')}`;
  const value = textAt(row.draft, place);
  const take = (/** @type {Changed} */ event) =>
    alter(row, {
      draft: /** @type {Record<string, unknown>} */ (withValue(row.draft, place, event.currentTarget.value)),
    });
  const entry = question.choices
    ? html`<select class="field" id=${id} value=${value} onChange=${take}>${[['', ''], ...question.choices].map(([key, words]) => html`<option value=${key} selected=${key === value}>${words}</option>`)}</select>`
    : html`<span class="entry"><input class="field short" id=${id} type="text" inputmode="decimal" autocomplete="off" value=${value} onInput=${take} /><span class="unit">${question.of && UNITS[question.of][store.units.value].label}</span></span>`;
  return html`<span class=${question.choices ? 'cell grows' : 'cell'}><label for=${id}>${question.label}</label>${entry}</span>`;
}

/** @param {{ row: Row }} props */
function Typed({ row }) {
  const { kind, key, draft } = row;
  const called = `${CALLED[kind]} ${ofKind(kind).indexOf(row) + 1}`;
  const name = `order-${key}-name`;
  const drop = () => {
    rows.value = rows.value.filter((each) => each.key !== key);
  };
  return html`<fieldset class="proposal" ref=${(/** @type {HTMLElement | null} */ place) => {
    if (!place || fresh !== key) return;
    fresh = -1;
    place.querySelector('input')?.focus();
  }}><legend>${called}</legend><div class="line">
    ${kind === 'candidate' && html`<span class="cell"><label for=${name}>Its name</label><input class="field wide" id=${name} type="text" dir="auto" autocomplete="off" value=${row.name} onInput=${(/** @type {Changed} */ event) => alter(row, { name: event.currentTarget.value })} /></span>`}
    ${PLACES[kind](draft).map((place) => html`<${Entry} key=${place} row=${row} place=${place} />`)}
    <button type="button" class="out" aria-label=${`Drop ${called}`} onClick=${drop}>×</button></div></fieldset>`;
}

export function ToOrder() {
  const add = (/** @type {Kind} */ kind) => {
    keys += 1;
    fresh = keys;
    rows.value = [...rows.value, { kind, key: keys, name: '', draft: {} }];
  };
  return html`${WAYS.map(
    ([
      kind,
      words,
      most,
    ]) => html`<div class="typed">${ofKind(kind).map((row) => html`<${Typed} key=${row.key} row=${row} />`)}</div>
    ${ofKind(kind).length < most && html`<p class="acts"><button type="button" class="act" onClick=${() => add(kind)}>${words}</button></p>`}`,
  )}`;
}
