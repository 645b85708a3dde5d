/** Candidates beside the plan: what is typed of them, and each part of the station before and after. */
import { batch, effect, signal } from '@preact/signals';
import { FIELDS, figures, partsSideBySide, ratioFigures, VERDICT_WORDS } from '../../words/index.mjs';
import { post } from './ask-service.mjs';
import { Scale, sentence } from './board.mjs';
import { fresh, Ways } from './candidates.mjs';
import { documentOf, draftInUnits, draftOf, isBlank, textAt, valueAt, withValue } from './draft.mjs';
import { html } from './html.mjs';
import { copyLink, openPrinted } from './kept-plan.mjs';
import { Mark } from './mark.mjs';
import { pauseBefore } from './pace.mjs';
import { UNITS } from './quantity.mjs';
import { offered, stock } from './stock.mjs';
import * as store from './store.mjs';

/**
 * @typedef {import('./candidates.mjs').Candidate} Candidate
 * @typedef {import('../../answer/index.ts').AdditionsAnswer} Additions
 * @typedef {Additions['after'][number]} After
 * @typedef {import('../../answer/index.ts').PartAnswer} Part
 * @typedef {{ index: number, proposal: { name: string } }} Ready
 * @typedef {{ currentTarget: { value: string } }} Changed
 */

const style = document.createElement('link');
style.rel = 'stylesheet';
style.href = new URL('compare.css', import.meta.url).href;
document.head.append(style);

/** The answer, and to which candidate each part of it belongs. */
const compared = signal(/** @type {{ answer: Additions, of: readonly number[] } | null} */ (null));
/** What does not fit, by candidate. */
const faults = signal(/** @type {ReadonlyMap<number, string>} */ (new Map()));
const says = signal('');

const list = () => store.candidates.value.list;

/** @param {readonly Candidate[]} next */
function keep(next) {
  store.candidates.value = { ...store.candidates.value, list: next };
}

/** @param {number} index @param {Partial<Candidate>} part */
const alter = (index, part) => keep(list().map((each, at) => (at === index ? { ...each, ...part } : each)));

const letter = (/** @type {number} */ index) => 'ABCD'.charAt(index);

/** Where the row of a candidate would stand in a draft. @param {Candidate} candidate */
const placeOf = ({ kind }) => (kind === 'mast' ? '/mast' : '/loads/0');

/** What is typed of it, as a plan has it. @param {Candidate} candidate @returns {Record<string, unknown>} */
function fieldsOf(candidate) {
  const { document } = documentOf(withValue({}, placeOf(candidate), candidate.row));
  return /** @type {Record<string, unknown>} */ (valueAt(document, placeOf(candidate)) ?? {});
}

/** What a candidate changes. @param {Candidate} candidate */
function wordsOf({ kind, load, row }) {
  const height = textAt(row, '/above') === '' ? textAt(row, '/height') : `${textAt(row, '/above')} above the top`;
  return {
    swap: `instead of ${load}`,
    move: `${load} at ${height}`,
    remove: `without ${load}`,
    add: 'one more',
    mast: `mast ${textAt(row, '/outside')}`,
  }[kind];
}

/** @param {Candidate} candidate @param {number} index */
const nameOf = (candidate, index) => candidate.name.trim() || `${letter(index)}: ${wordsOf(candidate)}`;

/** What has to be given before it can be compared; '' where nothing has. @param {Candidate} candidate @param {number} index */
function lackingOf(candidate, index) {
  const { kind, load, row } = candidate;
  const isGiven = (/** @type {string[]} */ ...places) => places.some((place) => !isBlank(valueAt(row, place)));
  const name = candidate.name.trim();
  const same = list().findIndex((each) => name !== '' && each.name.trim() === name);
  if (same < index && same >= 0) return `${letter(same)} and ${letter(index)} have the same name. Give each its own.`;
  if ((kind === 'swap' || kind === 'move' || kind === 'remove') && !store.loadNames.value.includes(load))
    return 'Load of the plan not given. Choose one.';
  if (
    (kind === 'swap' || kind === 'add') &&
    !isGiven('/area', '/front', '/force', '/tubes', '/diameter', '/wide', '/width', '/to')
  )
    return 'Area not given; its data sheet states it.';
  if ((kind === 'move' || kind === 'add') && !isGiven('/above', '/height')) return 'Height not given.';
  return kind === 'mast' && !isGiven('/outside', '/wall', '/yield', '/length') ? 'Nothing of the mast given.' : '';
}

/** The candidate as the service reads it. @param {Candidate} candidate @param {number} index */
function proposalOf(candidate, index) {
  const { kind, load } = candidate;
  const name = nameOf(candidate, index);
  const fields = fieldsOf(candidate);
  const named = candidate.name.trim() === '' ? fields : { name: candidate.name.trim(), ...fields };
  const change = {
    swap: { swap: [{ load, with: named }] },
    move: { move: [{ load, ...fields }] },
    remove: { remove: [load] },
    add: { add: [named] },
    mast: { set: { mast: fields } },
  }[kind];
  return { name, ...change };
}

/** Numbers follow the units of the plan. */
effect(() => {
  const to = store.units.value;
  const { units, list: typed } = store.candidates.value;
  if (units === to) return;
  store.candidates.value = {
    units: to,
    list: typed.map((each) => {
      const { draft } = draftInUnits(
        { .../** @type {object} */ (withValue({}, placeOf(each), each.row)), units },
        to,
        new Map(),
      );
      return { ...each, row: /** @type {Record<string, unknown>} */ (valueAt(draft, placeOf(each)) ?? {}) };
    }),
  };
});

/** @type {AbortController | undefined} */
let running;
/** @type {ReturnType<typeof setTimeout> | undefined} */
let timer;

/** Compares anew whenever the plan or a candidate changes. */
effect(() => {
  const ready = list().flatMap((candidate, index) =>
    lackingOf(candidate, index) === '' ? [{ index, proposal: proposalOf(candidate, index) }] : [],
  );
  const { answer } = store;
  const plan = store.answeredPlan.value ?? documentOf(store.draft.peek()).document;
  clearTimeout(timer);
  running?.abort();
  faults.value = new Map();
  if (ready.length === 0 || !answer.value) {
    compared.value = null;
    says.value = '';
    return;
  }
  timer = setTimeout(() => compare(plan, ready), 2 * pauseBefore(performance.now()));
});

/** @param {Record<string, unknown>} plan @param {readonly Ready[]} ready */
async function compare(plan, ready) {
  const own = new AbortController();
  running = own;
  try {
    for (let left = ready; ; ) {
      const proposals = left.map(({ proposal }) => proposal);
      /** @type {Awaited<ReturnType<typeof post<Additions>>>} */
      const reply = await post('v1/additions?as=json', { plan, proposals }, own.signal);
      if (own.signal.aborted) return;
      if (reply.answer) {
        compared.value = { answer: reply.answer, of: left.map(({ index }) => index) };
        says.value = reply.answer.says;
        return;
      }
      const { problem, status, wait } = reply;
      const wrong = new Map(faults.value);
      let general = '';
      for (const fault of problem.faults ?? []) {
        const at = left[Number(/^#\/proposals\/(\d+)/.exec(fault.pointer ?? '')?.[1] ?? Number.NaN)]?.index;
        if (at === undefined) general = `${general} ${fault.says}`.trim();
        else wrong.set(at, `${wrong.get(at) ?? ''} ${fault.says}`.trim());
      }
      // What is wrong with one leaves the others to be compared.
      faults.value = wrong;
      const rest = left.filter(({ index }) => !wrong.has(index));
      if (rest.length === 0 || rest.length === left.length) {
        if (rest.length === 0) compared.value = null;
        says.value = general || (rest.length === 0 ? '' : (problem.detail ?? problem.title));
        if (status === 429 || status === 503)
          timer = setTimeout(() => compare(plan, ready), Math.min(Math.max(wait || 1, 1), 60) * 1000);
        return;
      }
      left = rest;
    }
  } catch {
    if (!own.signal.aborted) says.value = 'The service does not answer; the comparison is the one before.';
  }
}

/** @param {number} index */
function drop(index) {
  // The columns are those of the candidates that were; they come anew.
  compared.value = null;
  keep(list().filter((_, at) => at !== index));
}

/** Makes a candidate the plan; what the others replace is then that. @param {After} after @param {number} index */
function takeIt({ plan }, index) {
  const taken = /** @type {Candidate} */ (list()[index]);
  const name = taken.name.trim();
  batch(() => {
    drop(index);
    if (taken.kind === 'swap' && name !== '')
      keep(list().map((each) => (each.load === taken.load ? { ...each, load: name } : each)));
    store.openPlan(plan, `${nameOf(taken, index)} put in the plan`);
  });
}

/** @param {number} index @param {string} id */
async function fromStock(index, id) {
  const entry = await stock('same-origin').then(
    (entries) => entries.find((each) => each.id === id),
    () => undefined,
  );
  if (!entry) {
    says.value = 'The club’s stock does not have it now; nothing was put in.';
    return;
  }
  const { name, ...row } = /** @type {Record<string, unknown>} */ (valueAt(draftOf(entry.fragment), '/loads/0'));
  alter(index, { name: typeof name === 'string' ? name : entry.title, row });
}

/** Entries of the stock that are one load. */
const ofStock = () =>
  offered.value.filter(
    ({ kind, fragment }) => kind === 'load' && /** @type {unknown[] | undefined} */ (fragment['loads'])?.length === 1,
  );

const { load: LOAD, loadRatedWind: RATED } = FIELDS;
/** @param {Readonly<Record<string, string>>} choices @param {string} blank @returns {readonly (readonly [string, string])[]} */
const choicesOf = (choices, blank) => [['', blank], ...Object.entries(choices).filter(([key]) => key !== 'unknown')];

/** @param {{ candidate: Candidate, index: number }} props */
function Entries({ candidate, index }) {
  const { kind, row } = candidate;
  const id = `candidate-${index}`;
  const units = store.units.value;
  const labelled = (
    /** @type {string} */ key,
    /** @type {string} */ label,
    /** @type {unknown} */ inside,
    grows = false,
  ) => html`<span class=${grows ? 'cell grows' : 'cell'}><label for=${`${id}${key}`}>${label}</label>${inside}</span>`;
  const typed = (
    /** @type {string} */ at,
    /** @type {string} */ label,
    /** @type {import('./quantity.mjs').Dimension} */ of,
  ) =>
    labelled(
      at,
      label,
      html`<span class="entry"><input class="field short" id=${id + at} type="text" inputmode=${of === 'length' || of === 'diameter' ? undefined : 'decimal'} autocomplete="off" autocapitalize="off" spellcheck="false" value=${textAt(row, at)} onInput=${(/** @type {Changed} */ event) => alter(index, { row: /** @type {Record<string, unknown>} */ (withValue(row, at, event.currentTarget.value)) })} /><span class="unit">${UNITS[of][units].label}</span></span>`,
    );
  const chosen = (
    /** @type {string} */ key,
    /** @type {string} */ label,
    /** @type {string} */ value,
    /** @type {readonly (readonly [string, string])[]} */ choices,
    /** @type {(value: string) => void} */ take,
  ) =>
    labelled(
      key,
      label,
      html`<select class="field" id=${id + key} value=${value} onChange=${(/** @type {Changed} */ event) => take(event.currentTarget.value)}>${choices.map(([each, words]) => html`<option value=${each} selected=${each === value}>${words}</option>`)}</select>`,
      true,
    );
  const choice = (
    /** @type {string} */ at,
    /** @type {string} */ label,
    /** @type {readonly (readonly [string, string])[]} */ choices,
  ) =>
    chosen(at, label, textAt(row, at), choices, (value) =>
      alter(index, { row: /** @type {Record<string, unknown>} */ (withValue(row, at, value)) }),
    );
  const names = store.loadNames.value;
  const loads = (/** @type {string} */ label) =>
    chosen(
      '-load',
      label,
      candidate.load,
      [
        .../** @type {[string, string][]} */ (names.includes(candidate.load) ? [] : [[candidate.load, 'choose']]),
        ...names.map((name) => /** @type {[string, string]} */ ([name, name])),
      ],
      (load) => alter(index, { load }),
    );
  const height = html`${typed('/above', LOAD.above.label, 'length')}${typed('/height', LOAD.height.label, 'length')}`;
  const isLoad = kind === 'swap' || kind === 'add';
  const shelf = isLoad ? ofStock() : [];
  const wrong = faults.value.get(index);
  return html`<fieldset class="proposal" ref=${(/** @type {HTMLElement | null} */ place) => {
    if (!place || fresh.peek() !== index) return;
    fresh.value = -1;
    place.querySelector('input')?.focus();
  }}><legend class="unseen">Candidate ${letter(index)}</legend>
    <div class="line"><span class="number" aria-hidden="true">${letter(index)}</span>
    ${labelled('-name', kind === 'mast' ? 'Its name' : LOAD.name.label, html`<input class="field wide" id=${`${id}-name`} type="text" dir="auto" autocomplete="off" placeholder=${wordsOf(candidate)} value=${candidate.name} onInput=${(/** @type {Changed} */ event) => alter(index, { name: event.currentTarget.value })} />`)}
    ${kind === 'swap' && loads('Instead of')}${(kind === 'move' || kind === 'remove') && loads('Load')}
    ${
      shelf.length > 0 &&
      chosen(
        '-stock',
        'From the club’s stock',
        '',
        [['', 'choose'], ...shelf.map(({ id: entry, title }) => /** @type {[string, string]} */ ([entry, title]))],
        (entry) => entry !== '' && fromStock(index, entry),
      )
    }
    <button type="button" class="out" aria-label=${`Drop candidate ${letter(index)}`} onClick=${() => drop(index)}>×</button></div>
    ${
      isLoad &&
      html`<div class="line">${isBlank(valueAt(row, '/shape')) || textAt(row, '/shape') === 'stated' ? html`${typed('/area', LOAD.area.label, 'area')}${choice('/areaKind', LOAD.areaKind.label, choicesOf(LOAD.areaKind.choices, 'I don’t know'))}` : html`<span class="note">${LOAD.shape.choices[/** @type {'tubes'} */ (textAt(row, '/shape'))]}</span>`}${typed('/weight', LOAD.weight.label, 'weight')}${typed('/ratedWind/speed', RATED.speed.label, 'speed')}${choice('/ratedWind/basis', RATED.basis.label, choicesOf(RATED.basis.choices, 'I don’t know'))}</div>`
    }
    ${(kind === 'add' || kind === 'move') && html`<div class="line">${height}</div>`}
    ${kind === 'mast' && html`<div class="line">${typed('/outside', FIELDS.mast.outside.label, 'diameter')}${typed('/wall', FIELDS.mast.wall.label, 'diameter')}${typed('/yield', FIELDS.mast.yield.label, 'stress')}${typed('/length', FIELDS.mast.length.label, 'length')}</div>`}
    <p class="note" role="status">${wrong === undefined ? lackingOf(candidate, index) : html`<span class="over">${wrong}</span>`}${textAt(row, '/source') && ` Source: ${textAt(row, '/source')}.`}</p>
  </fieldset>`;
}

/** The first sentence. @param {string | undefined} text */
const firstOf = (text) => text?.replace(/(?<=\.) .*/s, '');

/** A part of the station in one plan, beside what it was. @param {{ part: Part, target: number, before?: Part | undefined, named: boolean }} props */
function InPlan({ part, target, before, named }) {
  const { title, verdict, ratio, says: why } = part;
  const word =
    verdict === undefined ? 'nothing to compare' : html`<${Mark} verdict=${verdict} />${VERDICT_WORDS[verdict]}`;
  const tone = verdict === 'over' ? ' over' : '';
  return html`<span class="in-plan">${named && html`<bdi class="of">${title}</bdi>`}
    <span class="on-scale"><${Scale} part=${part} target=${target} was=${before?.ratio} /></span><b class=${`ratio${tone}`}>${ratio === undefined ? '–' : ratioFigures(ratio)}</b>
    <span class=${`word${tone}`}>${word}</span>${verdict === 'open' && firstOf(before?.says) !== firstOf(why) && html`<small class="note">${firstOf(why)}</small>`}</span>`;
}

/** The candidates by verdict, the best first. @param {{ columns: readonly { after: After, index: number }[] }} props */
function Verdicts({ columns }) {
  const told = /** @type {const} */ (['within', 'low-margin', 'open', 'over']).map((verdict) => {
    const of = columns.filter(({ after: { decided } }) => (decided.verdict ?? 'open') === verdict);
    const names = of.map(
      ({
        after: {
          decided: { parts, of: all },
        },
        index,
      }) => `${letter(index)}${parts < all ? `, ${all - parts} ${all - parts === 1 ? 'part' : 'parts'} open` : ''}`,
    );
    return (
      of.length > 0 &&
      html`<span class=${`verdict${verdict === 'over' ? ' over' : ''}`}><${Mark} verdict=${verdict} />${sentence(VERDICT_WORDS[verdict])}: ${names.join('; ')}. </span>`
    );
  });
  return html`<p class="says">${told}</p>`;
}

/** A figure as it was typed, with its unit. @param {unknown} value @param {import('./quantity.mjs').Dimension} of */
function asTyped(value, of) {
  if (value === undefined) return 'not given';
  return typeof value === 'number' ? `${value} ${UNITS[of][store.units.value].label}` : String(value);
}

/** Its area as it was typed, or what it is known by. @param {any} load */
function areaOf({ area, front, side, shape }) {
  const known = LOAD.shape.choices[/** @type {keyof typeof LOAD.shape.choices} */ (shape)];
  if (shape !== undefined && shape !== 'stated' && known) return known.replace(/:.*/, '');
  return front === undefined ? asTyped(area, 'area') : `${asTyped(front, 'area')}, side ${asTyped(side, 'area')}`;
}

/** @param {any} load */
function windOf({ ratedWind }) {
  if (ratedWind === undefined) return 'not given';
  const { speed = ratedWind, basis } = Object(ratedWind);
  const kind = RATED.basis.choices[/** @type {keyof typeof RATED.basis.choices} */ (basis)];
  return html`<span class="wind">${asTyped(speed, 'speed')}${kind ? ` ${kind.replace(/ \(.*\)/, '')}` : ''}</span>`;
}

function Table() {
  const read = compared.value;
  const target = store.answer.value?.target;
  if (!read || target === undefined) return null;
  const { before, after } = read.answer;
  const columns = after.map((each, at) => ({ after: each, index: /** @type {number} */ (read.of[at]) }));
  const candidates = list();
  const rows = partsSideBySide([before, ...after].map(({ parts }) => parts));
  const loadsOf = (/** @type {any} */ plan) => /** @type {any[]} */ (plan?.loads ?? []);
  /** The load that is compared in each column. */
  const loads = [
    loadsOf(store.answeredPlan.value ?? store.plan.value.document).find(({ name }) =>
      candidates.some(({ kind, load }) => kind === 'swap' && load === name),
    ),
    ...columns.map(({ after: { plan }, index }) => {
      const { kind, name, load } = candidates[index] ?? { kind: 'move', name: '', load: '' };
      if (kind === 'add') return loadsOf(plan).at(-1);
      return kind === 'swap' ? loadsOf(plan).find((each) => each.name === (name.trim() || load)) : undefined;
    }),
  ];
  const heads = ['as planned', ...columns.map(({ index }) => letter(index))];
  const inside = (/** @type {unknown} */ said) => said !== '' && html`<div>${said}</div>`;
  const row = (/** @type {unknown} */ title, /** @type {(at: number) => unknown} */ cell, name = '') =>
    html`<tr class=${name}><th scope="row">${title}</th>${heads.map((head, at) => html`<td data-h=${head} class=${columns[at - 1]?.after.rank === 1 && columns.length > 1 ? 'first' : undefined}>${inside(cell(at))}</td>`)}</tr>`;
  const stationAt = (/** @type {number} */ at) => (at === 0 ? before : /** @type {After} */ (after[at - 1]));
  const ofLoad = (/** @type {(load: any) => unknown} */ told) => (/** @type {number} */ at) =>
    loads[at] ? told(loads[at]) : '–';
  return html`<${Verdicts} columns=${columns} />
  <div class="scroll" tabindex="0" role="region" aria-label="Candidates side by side"><table class="ledger fold side">
    <thead><tr><th scope="col">part</th>${heads.map((head, at) => {
      const of = columns[at - 1];
      return html`<th scope="col"><b>${head}</b>${of && html` <bdi>${nameOf(/** @type {Candidate} */ (candidates[of.index] ?? { kind: 'add', name: of.after.name, load: '', row: {} }), of.index).replace(/^[A-D]: /, '')}</bdi>`}</th>`;
    })}</tr></thead>
    <tbody>
    ${row('decided so far', (at) => {
      const { decided } = stationAt(at);
      const { parts, of, verdict = 'open' } = decided;
      return html`<b class=${verdict === 'over' ? 'nowrap over' : 'nowrap'}><${Mark} verdict=${verdict} />${VERDICT_WORDS[verdict]}</b>${parts < of && html`<small class="note">${parts} of ${of} parts decided</small>`}`;
    })}
    ${columns.length > 1 && row('rank', (at) => (at === 0 ? '' : columns[at - 1]?.after.rank))}
    ${row(html`holds to<small>actual gust, weakest check</small>`, (at) => {
      const { checks, weakest } = stationAt(at);
      const check = checks.find(({ id }) => id === weakest);
      const state = check && ('after' in check || 'before' in check ? /** @type {any} */ (check).after : check);
      return state?.holdsTo
        ? html`<span class="wind">${figures(state.holdsTo.value)} ${state.holdsTo.unit}</span><small class="note">${check?.title}</small>`
        : '–';
    })}
    ${row(
      `room left${before.roomLeft[0] ? ` at ${figures(before.roomLeft[0].height.value)} ${before.roomLeft[0].height.unit}` : ''}`,
      (at) => {
        const room = stationAt(at).roomLeft[0]?.area;
        return room === undefined ? '–' : room.value > 0 ? `${figures(room.value)} ${room.unit}` : 'none';
      },
    )}
    ${rows.map(({ title, of }) =>
      row(
        sentence(title),
        (at) => {
          const parts = of[at] ?? [];
          return parts.length === 0
            ? '–'
            : parts.map(
                (part) =>
                  html`<${InPlan} part=${part} target=${target} before=${at > 0 ? of[0]?.find(({ id }) => id === part.id) : undefined} named=${title === 'loads that differ'} />`,
              );
        },
        'of-part',
      ),
    )}
    ${
      loads.some((load) => load !== undefined) &&
      html`${row('area', ofLoad(areaOf))}${row(
        'weight',
        ofLoad((load) => asTyped(load.weight, 'weight')),
      )}${row('own rated wind', ofLoad(windOf))}`
    }
    <tr class="takes"><th scope="row"><span class="unseen">take it</span></th><td></td>${columns.map(({ after: each, index }) => html`<td><button type="button" class="act" onClick=${() => takeIt(each, index)}>Put ${letter(index)} in the plan</button></td>`)}</tr>
    </tbody></table></div>
  <p class="note">Dot: with the candidate. Open dot: as planned. Broken line: target ${ratioFigures(target)}. Heavy line: 1. Rank: fewest parts over or open, then least not given, then the smallest ratio.</p>`;
}

export function Comparison() {
  const ready = (compared.value?.of ?? []).flatMap((index) => {
    const candidate = list()[index];
    return candidate ? [proposalOf(candidate, index)] : [];
  });
  return html`<${Table} />
    <p class="note" role="status">${says.value}</p>
    <div class="typed">${list().map((candidate, index) => html`<${Entries} key=${index} candidate=${candidate} index=${index} />`)}</div>
    <p class="acts"><${Ways} /></p>
    <p class="acts">${ready.length > 0 && html`<button type="button" class="act" onClick=${() => openPrinted('v1/additions?as=html', { proposals: ready })}>Comparison on a sheet</button>`} <button type="button" class="act" onClick=${copyLink}>Copy link with candidates</button></p>`;
}
