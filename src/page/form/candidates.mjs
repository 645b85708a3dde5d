/** Other ways beside the plan, which stays as it is until one is taken: what is kept of them, and how one more comes. */
import { signal } from '@preact/signals';
import { html } from './html.mjs';
import * as store from './store.mjs';

/**
 * @typedef {'swap' | 'move' | 'remove' | 'add' | 'mast'} Kind
 * @typedef {{ kind: Kind, name: string, load: string, row: Record<string, unknown> }} Candidate With the load it is about, and what is typed of it as a row of a draft.
 * @typedef {{ units: 'us' | 'si', list: readonly Candidate[] }} Candidates Bare numbers are in these units.
 */

export const MOST = 4;
export const KINDS = /** @type {const} */ ([
  ['swap', 'Try another antenna'],
  ['move', 'Move a load'],
  ['remove', 'Leave one out'],
  ['add', 'Add one more'],
  ['mast', 'Another mast'],
]);

/** The one just added, which gets the keyboard. */
export const fresh = signal(-1);

/** @param {unknown} value */
const isObject = (value) => typeof value === 'object' && value !== null && !Array.isArray(value);
/** @param {unknown} value */
const textOf = (value) => (typeof value === 'string' ? value : '');

/** Candidates that come from where anything may come from. @param {any} read @returns {Candidates} */
export function candidatesOf(read) {
  const list = isObject(read) && Array.isArray(read.list) ? read.list : [];
  return {
    units: read?.units === 'si' ? 'si' : 'us',
    list: list
      .filter((/** @type {any} */ each) => isObject(each) && KINDS.some(([kind]) => kind === each.kind))
      .slice(0, MOST)
      .map((/** @type {any} */ { kind, name, load, row }) => ({
        kind,
        name: textOf(name),
        load: textOf(load),
        row: isObject(row) ? row : {},
      })),
  };
}

/** @param {Kind} kind */
function propose(kind) {
  const { list } = store.candidates.value;
  fresh.value = list.length;
  store.candidates.value = {
    units: store.units.value,
    list: [...list, { kind, name: '', load: store.loadNames.value[0] ?? '', row: {} }],
  };
}

/** The ways to one more. */
export function Ways() {
  if (store.candidates.value.list.length >= MOST)
    return html`<span class="note">Four at once: drop one to try another.</span>`;
  return KINDS.filter(([kind]) => kind === 'add' || kind === 'mast' || store.loadNames.value.length > 0).map(
    ([kind, words]) => html`<button type="button" class="act" onClick=${() => propose(kind)}>${words}</button> `,
  );
}
