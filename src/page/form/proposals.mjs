/** Up to four other ways beside the plan, which stays as it is until one is taken. */
import { effect, signal } from '@preact/signals';
import { post } from './ask-service.mjs';
import { documentOf, textAt, valueAt } from './draft.mjs';
import { html } from './html.mjs';
import { Mark } from './mark.mjs';
import { pauseBefore } from './pace.mjs';
import { figures, ratioFigures, UNITS } from './quantity.mjs';
import * as store from './store.mjs';

/**
 * @typedef {'swap' | 'move' | 'remove' | 'add' | 'mast'} Kind
 * @typedef {{ kind: Kind, load: string, area: string, areaKind: string, height: string, from: 'above' | 'height', outside: string, wall: string, yield: string, length: string }} Proposal
 */

const MOST = 4;
const KINDS = /** @type {const} */ ([
  ['swap', 'Try another antenna'],
  ['move', 'Move a load'],
  ['remove', 'Leave one out'],
  ['add', 'Hang one more'],
  ['mast', 'Another mast'],
]);
const AREAS = /** @type {const} */ ([
  ['', 'I don’t know'],
  ['effective', 'drag already counted'],
  ['projected-round', 'shadow of round tubes'],
  ['projected-flat', 'shadow of flat faces'],
  ['flat-plate', 'counted as a flat plate'],
]);

const proposals = signal(/** @type {readonly Proposal[]} */ ([]));
const compared = signal(/** @type {any} */ (null));
const says = signal('');

/** Loads that can be spoken of: those with a name. */
const names = () =>
  /** @type {any[]} */ (valueAt(store.draft.value, '/loads') ?? [])
    .map((row) => textAt(row, '/name'))
    .filter((name) => name !== '');

/** @param {Kind} kind */
function propose(kind) {
  const load = names()[0] ?? '';
  proposals.value = [
    ...proposals.value,
    { kind, load, area: '', areaKind: '', height: '', from: 'above', outside: '', wall: '', yield: '', length: '' },
  ];
  requestAnimationFrame(() => {
    const entry = document.querySelector('.proposal:last-of-type select, .proposal:last-of-type input');
    if (entry instanceof HTMLElement) entry.focus();
  });
}

/** @param {number} index @param {Partial<Proposal>} part */
function alter(index, part) {
  proposals.value = proposals.value.map((each, at) => (at === index ? { ...each, ...part } : each));
}

/** What a proposal is called. @param {Proposal} proposal @param {number} index */
function nameOf(proposal, index) {
  const unit = UNITS.area[store.units.value].label;
  const area = proposal.area ? `, ${proposal.area}${/[a-z²]$/i.test(proposal.area) ? '' : ` ${unit}`}` : '';
  const words = /** @type {Record<Kind, string>} */ ({
    swap: `another ${proposal.load}${area}`,
    move: `${proposal.load} at ${proposal.height}${proposal.from === 'above' ? ' above the top' : ''}`,
    remove: `without ${proposal.load}`,
    add: `one more${area}`,
    mast: `mast ${proposal.outside}${proposal.wall ? `, wall ${proposal.wall}` : ''}`,
  });
  return `${index + 1}. ${words[proposal.kind]}`;
}

/** The proposal as the service reads it, or undefined while it says too little. @param {Proposal} proposal @param {string} name */
function asked(proposal, name) {
  const number = (/** @type {string} */ text) => (/^-?\d+(\.\d+)?$/.test(text.trim()) ? Number(text) : text);
  const area = {
    shape: 'stated',
    area: number(proposal.area),
    ...(proposal.areaKind ? { areaKind: proposal.areaKind } : {}),
  };
  switch (proposal.kind) {
    case 'swap':
      return proposal.load && proposal.area ? { name, swap: [{ load: proposal.load, with: area }] } : undefined;
    case 'move':
      return proposal.load && proposal.height
        ? { name, move: [{ load: proposal.load, [proposal.from]: number(proposal.height) }] }
        : undefined;
    case 'remove':
      return proposal.load ? { name, remove: [proposal.load] } : undefined;
    case 'add':
      return proposal.area && proposal.height
        ? { name, add: [{ name: `one more (${name})`, [proposal.from]: number(proposal.height), ...area }] }
        : undefined;
    case 'mast': {
      const mast = Object.fromEntries(
        /** @type {const} */ (['outside', 'wall', 'yield', 'length'])
          .filter((key) => proposal[key] !== '')
          .map((key) => [key, number(proposal[key])]),
      );
      return Object.keys(mast).length > 0 ? { name, set: { mast } } : undefined;
    }
  }
}

/** @type {AbortController | undefined} */
let running;

/** Compares anew whenever the plan or a proposal changes. */
export function followProposals() {
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  let timer;
  effect(() => {
    const list = proposals.value.map((proposal, index) => asked(proposal, nameOf(proposal, index)));
    const ready = list.filter((each) => each !== undefined);
    const check = store.answer.value;
    clearTimeout(timer);
    running?.abort();
    if (ready.length === 0 || !check) {
      compared.value = null;
      says.value = '';
      return;
    }
    const { document } = documentOf(store.draft.value);
    timer = setTimeout(() => compare(document, ready), 2 * pauseBefore(performance.now()));
  });
}

/** @param {Record<string, unknown>} plan @param {readonly unknown[]} ready */
async function compare(plan, ready) {
  const own = new AbortController();
  running = own;
  try {
    const { status, read } = await post('v1/additions?as=json', { plan, proposals: ready }, own.signal);
    if (own.signal.aborted) return;
    if (status === 200) {
      compared.value = read;
      says.value = read.says;
    } else {
      says.value =
        (read.faults ?? []).map((/** @type {any} */ fault) => fault.says).join(' ') || read.detail || read.title;
    }
  } catch {
    if (!own.signal.aborted) says.value = 'The service does not answer; the comparison is the one before.';
  }
}

/** Makes a proposal the plan. @param {any} after @param {number} index */
function takeIt(after, index) {
  store.openPlan(after.plan, `${after.name.replace(/^\d+\. /, '')} taken`);
  proposals.value = proposals.value.filter((_, at) => at !== index);
}

/** @param {{ proposal: Proposal, index: number }} props */
function Variant({ proposal, index }) {
  const id = `proposal-${index}`;
  const entry = (
    /** @type {keyof Proposal} */ key,
    /** @type {string} */ label,
    /** @type {string} */ unit = '',
  ) => html`<span class="cell"><label for=${`${id}-${key}`}>${label}</label>
    <span class="entry"><input class="field short" id=${`${id}-${key}`} type="text" autocomplete="off" value=${proposal[key]} onInput=${(/** @type {any} */ event) => alter(index, { [key]: event.currentTarget.value })} />${unit && html`<span class="unit">${unit}</span>`}</span></span>`;
  const select = (
    /** @type {keyof Proposal} */ key,
    /** @type {string} */ label,
    /** @type {readonly (readonly [string, string])[]} */ list,
  ) => html`<span class="cell grows"><label for=${`${id}-${key}`}>${label}</label>
    <select class="field" id=${`${id}-${key}`} value=${proposal[key]} onChange=${(/** @type {any} */ event) => alter(index, { [key]: event.currentTarget.value })}>${list.map(([value, words]) => html`<option value=${value} selected=${value === proposal[key]}>${words}</option>`)}</select></span>`;
  const units = store.units.value;
  const loads = select(
    'load',
    'load',
    names().map((name) => [name, name]),
  );
  const height = html`${entry('height', 'height', UNITS.length[units].label)}${select('from', 'counted', [
    ['above', 'above the tower’s top'],
    ['height', 'above the ground'],
  ])}`;
  return html`<fieldset class="proposal"><legend class="unseen">Proposal ${index + 1}: ${KINDS.find(([kind]) => kind === proposal.kind)?.[1]}</legend>
    <div class="line"><span class="number" aria-hidden="true">${index + 1}</span>
    ${proposal.kind === 'swap' && html`${loads}${entry('area', 'area of the other', UNITS.area[units].label)}${select('areaKind', 'which area', AREAS)}`}
    ${proposal.kind === 'move' && html`${loads}${height}`}
    ${proposal.kind === 'remove' && loads}
    ${proposal.kind === 'add' && html`${entry('area', 'its area', UNITS.area[units].label)}${select('areaKind', 'which area', AREAS)}${height}`}
    ${proposal.kind === 'mast' && html`${entry('outside', 'outside', UNITS.diameter[units].label)}${entry('wall', 'wall', UNITS.diameter[units].label)}${entry('yield', 'strength', UNITS.stress[units].label)}${entry('length', 'length', UNITS.length[units].label)}`}
    <button type="button" class="out" aria-label=${`Drop proposal ${index + 1}`} onClick=${() => {
      proposals.value = proposals.value.filter((_, at) => at !== index);
    }}>×</button></div>
  </fieldset>`;
}

function Table() {
  const read = compared.value;
  if (!read) return null;
  const checks = read.before.checks.filter(
    (/** @type {any} */ check) =>
      check.ratio !== undefined ||
      read.after.some(
        (/** @type {any} */ after) =>
          after.checks.find((/** @type {any} */ each) => each.id === check.id)?.after?.ratio !== undefined,
      ),
  );
  const cell = (/** @type {any} */ check, /** @type {string} */ title) =>
    html`<td data-h=${title}>${check?.ratio === undefined ? '–' : html`<span class=${check.ratio > 1 ? 'over' : ''}>${ratioFigures(check.ratio)}</span>`}</td>`;
  const row = (
    /** @type {any} */ station,
    /** @type {string} */ name,
    /** @type {(id: string) => any} */ checkOf,
    /** @type {any} */ act,
  ) => {
    const weakest = checkOf(station.weakest ?? '');
    const verdict = station.soFar ?? station.verdict;
    return html`<tr><th scope="row">${name}</th>${checks.map((/** @type {any} */ check) => cell(checkOf(check.id), check.title))}
      <td class="wind" data-h="holds to">${weakest?.holdsTo ? `${figures(weakest.holdsTo.value)} ${weakest.holdsTo.unit}` : '–'}</td>
      <td class="word" data-h="so far"><span class=${verdict === 'over' ? 'nowrap over' : 'nowrap'}><${Mark} verdict=${verdict} />${verdict.replace('-', ' ')}</span></td><td>${act}</td></tr>`;
  };
  return html`<div class="scroll" tabindex="0" role="region" aria-label="Proposals side by side"><table class="ledger fold">
    <thead><tr><th scope="col">use of each link</th>${checks.map((/** @type {any} */ check) => html`<th scope="col">${check.title}</th>`)}<th scope="col">holds to<small>actual gust</small></th><th scope="col" class="word">so far</th><th scope="col"><span class="unseen">take it</span></th></tr></thead>
    <tbody>${row(read.before, 'as planned', (id) => read.before.checks.find((/** @type {any} */ check) => check.id === id), null)}
      ${read.after.map((/** @type {any} */ after) =>
        row(
          after,
          after.name,
          (id) => after.checks.find((/** @type {any} */ check) => check.id === id)?.after,
          html`<button type="button" class="act" onClick=${() => takeIt(after, Number(after.name.split('.')[0]) - 1)}>Take it<span class="unseen">: ${after.name}</span></button>`,
        ),
      )}</tbody>
  </table></div>`;
}

export function Proposals() {
  const list = proposals.value;
  return html`<section class="plate proposals" aria-labelledby="try-another"><h3 class="head" id="try-another">Try another<small>beside the plan, which stays as it is</small></h3>
    ${list.map((proposal, index) => html`<${Variant} key=${index} proposal=${proposal} index=${index} />`)}
    <${Table} />
    <p class="note" role="status">${says.value}</p>
    <p class="acts">${
      list.length < MOST
        ? KINDS.filter(([kind]) => kind === 'add' || kind === 'mast' || names().length > 0).map(
            ([kind, words]) => html`<button type="button" class="act" onClick=${() => propose(kind)}>${words}</button>`,
          )
        : html`<span class="note">Four at once: drop one to try another.</span>`
    }</p>
  </section>`;
}
