/** Up to four other ways beside the plan, which stays as it is until one is taken. */
import { effect, signal } from '@preact/signals';
import { FIELDS, figures, ratioFigures, VERDICT_WORDS } from '../../words/index.mjs';
import { post } from './ask-service.mjs';
import { documentOf, textAt, valueAt } from './draft.mjs';
import { html } from './html.mjs';
import { Mark } from './mark.mjs';
import { pauseBefore } from './pace.mjs';
import { UNITS } from './quantity.mjs';
import * as store from './store.mjs';

/**
 * @typedef {'swap' | 'move' | 'remove' | 'add' | 'mast'} Kind
 * @typedef {{ kind: Kind, load: string, area: string, areaKind: string, height: string, from: 'above' | 'height', outside: string, wall: string, yield: string, length: string }} Proposal
 * @typedef {import('../../answer/index.ts').AdditionsAnswer} Additions
 * @typedef {{ currentTarget: { value: string } }} Changed
 */

const MOST = 4;
const KINDS = /** @type {const} */ ([
  ['swap', 'Try another antenna'],
  ['move', 'Move a load'],
  ['remove', 'Leave one out'],
  ['add', 'Add one more'],
  ['mast', 'Another mast'],
]);
const AREAS = /** @type {readonly (readonly [string, string])[]} */ ([
  ['', 'I don’t know'],
  ...Object.entries(FIELDS.load.areaKind.choices).filter(([kind]) => kind !== 'unknown'),
]);

const proposals = signal(/** @type {readonly Proposal[]} */ ([]));
const compared = signal(/** @type {Additions | null} */ (null));
const says = signal('');

/** Loads that can be spoken of: those with a name. */
const names = () =>
  /** @type {unknown[]} */ (valueAt(store.draft.value, '/loads') ?? [])
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

/** What a proposal changes. @param {Proposal} proposal */
function wordsOf(proposal) {
  const unit = UNITS.area[store.units.value].label;
  const area = proposal.area ? `, ${proposal.area}${/[a-z²]$/i.test(proposal.area) ? '' : ` ${unit}`}` : '';
  const words = {
    swap: `another ${proposal.load}${area}`,
    move: `${proposal.load} at ${proposal.height}${proposal.from === 'above' ? ' above the top' : ''}`,
    remove: `without ${proposal.load}`,
    add: `one more${area}`,
    mast: `mast ${proposal.outside}${proposal.wall ? `, wall ${proposal.wall}` : ''}`,
  };
  return words[proposal.kind];
}

/** What a proposal is called. @param {Proposal} proposal @param {number} index */
const nameOf = (proposal, index) => `${index + 1}. ${wordsOf(proposal)}`;

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
    /** @type {Awaited<ReturnType<typeof post<Additions>>>} */
    const reply = await post('v1/additions?as=json', { plan, proposals: ready }, own.signal);
    if (own.signal.aborted) return;
    if (reply.answer) {
      compared.value = reply.answer;
      says.value = reply.answer.says;
    } else {
      const { faults = [], detail, title } = reply.problem;
      says.value = faults.map((fault) => fault.says).join(' ') || detail || title;
    }
  } catch {
    if (!own.signal.aborted) says.value = 'The service does not answer; the comparison is the one before.';
  }
}

/** Makes a proposal the plan. @param {Additions['after'][number]} after */
function takeIt({ name, plan }) {
  const index = proposals.value.findIndex((proposal, at) => nameOf(proposal, at) === name);
  const proposal = proposals.value[index];
  store.openPlan(plan, `${proposal ? wordsOf(proposal) : name} taken`);
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
    <span class="entry"><input class="field short" id=${`${id}-${key}`} type="text" autocomplete="off" value=${proposal[key]} onInput=${(/** @type {Changed} */ event) => alter(index, { [key]: event.currentTarget.value })} />${unit && html`<span class="unit">${unit}</span>`}</span></span>`;
  const select = (
    /** @type {keyof Proposal} */ key,
    /** @type {string} */ label,
    /** @type {readonly (readonly [string, string])[]} */ list,
  ) => html`<span class="cell grows"><label for=${`${id}-${key}`}>${label}</label>
    <select class="field" id=${`${id}-${key}`} value=${proposal[key]} onChange=${(/** @type {Changed} */ event) => alter(index, { [key]: event.currentTarget.value })}>${list.map(([value, words]) => html`<option value=${value} selected=${value === proposal[key]}>${words}</option>`)}</select></span>`;
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
    ${proposal.kind === 'swap' && html`${loads}${entry('area', 'area of the other', UNITS.area[units].label)}${select('areaKind', 'type of area', AREAS)}`}
    ${proposal.kind === 'move' && html`${loads}${height}`}
    ${proposal.kind === 'remove' && loads}
    ${proposal.kind === 'add' && html`${entry('area', 'its area', UNITS.area[units].label)}${select('areaKind', 'type of area', AREAS)}${height}`}
    ${proposal.kind === 'mast' && html`${entry('outside', 'outside', UNITS.diameter[units].label)}${entry('wall', 'wall', UNITS.diameter[units].label)}${entry('yield', 'yield strength', UNITS.stress[units].label)}${entry('length', 'length', UNITS.length[units].label)}`}
    <button type="button" class="out" aria-label=${`Drop proposal ${index + 1}`} onClick=${() => {
      proposals.value = proposals.value.filter((_, at) => at !== index);
    }}>×</button></div>
  </fieldset>`;
}

/** @typedef {import('../../answer/index.ts').CheckState} State */

/** @param {{ state: State | undefined, title: string }} props */
function Ratio({ state, title }) {
  const ratio = state?.ratio;
  return html`<td data-h=${title}>${ratio === undefined ? '–' : html`<span class=${ratio > 1 ? 'over' : ''}>${ratioFigures(ratio)}</span>`}</td>`;
}

function Table() {
  const read = compared.value;
  if (!read) return null;
  const { before, after } = read;
  const stateAfter = (/** @type {Additions['after'][number]} */ { checks }, /** @type {string} */ id) =>
    checks.find((check) => check.id === id)?.after;
  const checks = before.checks.filter(
    ({ id, ratio }) => ratio !== undefined || after.some((each) => stateAfter(each, id)?.ratio !== undefined),
  );
  const row = (
    /** @type {Pick<Additions['before'], 'decided' | 'weakest'>} */ station,
    /** @type {string} */ name,
    /** @type {(id: string) => State | undefined} */ stateOf,
    /** @type {import('preact').ComponentChildren} */ act,
  ) => {
    const holdsTo = stateOf(station.weakest ?? '')?.holdsTo;
    const { parts, of, verdict = 'open' } = station.decided;
    return html`<tr><th scope="row">${name}</th>${checks.map(({ id, title }) => html`<${Ratio} state=${stateOf(id)} title=${title} />`)}
      <td class="wind" data-h="holds to">${holdsTo ? `${figures(holdsTo.value)} ${holdsTo.unit}` : '–'}</td>
      <td class="word" data-h="verdict"><span class=${verdict === 'over' ? 'nowrap over' : 'nowrap'}><${Mark} verdict=${verdict} />${VERDICT_WORDS[verdict]}</span>${parts < of && html`<small class="note"> ${parts} of ${of} parts decided</small>`}</td><td>${act}</td></tr>`;
  };
  return html`<div class="scroll" tabindex="0" role="region" aria-label="Proposals side by side"><table class="ledger fold">
    <thead><tr><th scope="col">ratio of each check</th>${checks.map(({ title }) => html`<th scope="col">${title}</th>`)}<th scope="col">holds to<small>actual gust</small></th><th scope="col" class="word">verdict</th><th scope="col"><span class="unseen">take it</span></th></tr></thead>
    <tbody>${row(before, 'as planned', (id) => before.checks.find((check) => check.id === id), null)}
      ${after.map((each) =>
        row(
          each,
          each.name,
          (id) => stateAfter(each, id),
          html`<button type="button" class="act" onClick=${() => takeIt(each)}>Take it<span class="unseen">: ${each.name}</span></button>`,
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
