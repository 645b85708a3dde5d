/** The club's own towers and antennas, put into the plan by name, with the source of every figure. */
import { signal } from '@preact/signals';
import { draftOf, isBlank, NONE, rowsOf, textAt, valueAt } from './draft.mjs';
import { html } from './html.mjs';
import * as store from './store.mjs';

/** @typedef {{ id: string, kind: 'tower' | 'mast' | 'rotator' | 'load' | 'cable', title: string, source: string, fragment: Record<string, unknown> }} Entry */

export const offered = signal(/** @type {readonly Entry[]} */ ([]));
/** Whether the service tells its stock to those with a key alone. */
const wantsKey = signal(false);

/** What each part of the sheet is offered. */
const KIND_OF_PART = /** @type {Record<string, Entry['kind']>} */ ({
  tower: 'tower',
  mast: 'mast',
  rotator: 'rotator',
  loads: 'load',
  cables: 'cable',
});

/** The stock in the units of the sheet. @param {RequestCredentials} credentials @returns {Promise<readonly Entry[]>} */
export async function stock(credentials) {
  const response = await fetch(`v1/stock?units=${store.units.value}`, { credentials });
  wantsKey.value = response.status === 401;
  if (!response.ok) throw new Error(`the stock is not to be had: ${response.status}`);
  return (await response.json()).entries;
}

/**
 * Looks for what the club has; where that is not told, nothing is offered. Without credentials the browser does not ask
 * for a key, which somebody who only opens the page has no use for.
 *
 * @param {RequestCredentials} [credentials]
 */
export async function lookForStock(credentials = 'omit') {
  offered.value = await stock(credentials).catch(() => []);
}

/** A name that no load has yet. @param {string} name @param {readonly unknown[]} loads */
function ownName(name, loads) {
  const taken = new Set(loads.map((load) => textAt(load, '/name')));
  let own = name;
  for (let count = 2; taken.has(own); count += 1) own = `${name} ${count}`;
  return own;
}

/** Parts whose ratings come and go with them. */
const RATED_WITH = /** @type {Record<string, readonly string[]>} */ ({
  tower: ['', 'tower', 'foundation', 'bearing', 'gear'],
  mast: ['mast'],
  rotator: ['rotator'],
});

/**
 * The places that change when an entry is put into a draft: loads and cables are added, a tower, mast or rotator takes
 * the place of what was there, with its ratings.
 *
 * @param {unknown} draft
 * @param {Record<string, unknown>} fragment In the units of the draft.
 * @returns {[string, unknown][]}
 */
export function putInto(draft, fragment) {
  const given = draftOf(fragment);
  /** @type {[string, unknown][]} */
  const changes = [];
  const rowsAt = (/** @type {string} */ at) => rowsOf(draft, at).filter((row) => !isBlank(row));
  for (const list of ['loads', 'cables']) {
    const rows = rowsAt(`/${list}`);
    const added = rowsOf(given, `/${list}`);
    if (given[list] === NONE && rows.length === 0) changes.push([`/${list}`, NONE]);
    if (added.length === 0) continue;
    for (const row of added) {
      const name = textAt(row, '/name');
      rows.push(name === '' ? row : { .../** @type {object} */ (row), name: ownName(name, rows) });
    }
    changes.push([`/${list}`, rows]);
  }
  const parts = ['tower', 'mast', 'rotator'].filter((part) => given[part] !== undefined);
  for (const part of parts) changes.push([`/${part}`, given[part]]);
  const rated = new Set(parts.flatMap((part) => RATED_WITH[part] ?? []));
  const brought = /** @type {unknown[]} */ (given['ratings'] ?? []);
  if (parts.length > 0 || brought.length > 0) {
    const left = rowsAt('/ratings').filter((row) => !rated.has(textAt(row, '/of')));
    changes.push(['/ratings', [...left, ...brought]]);
  }
  return changes;
}

/** @param {string} id */
async function putIn(id) {
  try {
    const entry = (await stock('same-origin')).find((each) => each.id === id);
    if (!entry) {
      store.notice.value = 'The club has taken this out of its stock since the page was opened.';
      await lookForStock('same-origin');
      return;
    }
    store.bring(putInto(store.draft.value, entry.fragment), `${entry.title} put in`);
    const last = rowsOf(store.draft.value, '/loads').length - 1;
    const place = `/loads/${last}`;
    const lacksHeight =
      entry.kind === 'load' && ['/above', '/height'].every((at) => isBlank(valueAt(store.draft.value, place + at)));
    store.notice.value = `${entry.title} put in from the club’s stock; source: ${entry.source}.${lacksHeight ? ' Say where it sits.' : ''}`;
    if (lacksHeight) store.goTo(`${place}/above`);
  } catch {
    store.notice.value = 'The service does not tell its stock just now; nothing was put in.';
  }
}

/** What the club has for a part of the sheet; nothing where it has nothing. @param {{ part: string }} props */
export function FromStock({ part }) {
  const entries = offered.value.filter(({ kind }) => kind === KIND_OF_PART[part]);
  if (entries.length === 0) {
    if (!wantsKey.value || part !== 'loads') return null;
    return html`<p class="acts"><button type="button" class="act" onClick=${() => lookForStock('same-origin')}>Show the club’s stock</button> <span class="note">with a key</span></p>`;
  }
  const id = `stock-${part}`;
  const put = () => {
    const chosen = /** @type {HTMLSelectElement} */ (document.getElementById(id)).value;
    if (chosen !== '') putIn(chosen);
  };
  return html`<div class="q stock">
    <label for=${id}>From the club’s stock</label>
    <div class="a"><select id=${id} class="field"><option value="">choose</option>${entries.map(({ id: entry, title }) => html`<option value=${entry}>${title}</option>`)}</select>
      <button type="button" class="act" onClick=${put}aria-label=${`Put in: ${part}`}>Put in</button></div>
    <div class="said"><p class="note">${part === 'tower' ? 'replaces tower and ratings below, with what belongs to them' : part === 'mast' || part === 'rotator' ? 'replaces the entries below' : 'figures and their sources come with it'}</p></div>
  </div>`;
}
