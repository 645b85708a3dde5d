/** What is given: the questions of the sheet, read from the top, each with its entry, its note and what is wrong with it. */
import { computed, signal } from '@preact/signals';
import { FIELDS, figures } from '../../words/index.mjs';
import { isBlank, rowsOf, textAt, valueAt } from './draft.mjs';
import { html } from './html.mjs';
import { pastedLoads } from './pasted-rows.mjs';
import { inSi, numberOf, UNITS } from './quantity.mjs';
import { LOADS, listAt, PART_OF_CHECK, PARTS, questionAt, RATINGS } from './questions.mjs';
import { Sketch } from './sketch.mjs';
import { FromStock } from './stock.mjs';
import * as store from './store.mjs';
import { Strip } from './strip.mjs';

/**
 * @typedef {import('./questions.mjs').Question} Question
 * @typedef {import('./questions.mjs').List} List
 */

/** @typedef {{ readings: string[], gaps: string[], entryWarnings: string[], counted: string[] }} Notes */

/** What the answer says of each entry. */
const notesByPlace = computed(() => {
  /** @type {Map<string, Notes>} */
  const notes = new Map();
  const at = (/** @type {string} */ pointer) => {
    const place = store.fieldFor(store.placeOf.value(pointer));
    const found = notes.get(place) ?? { readings: [], gaps: [], entryWarnings: [], counted: [] };
    notes.set(place, found);
    return found;
  };
  const check = store.answer.value;
  if (!check) return notes;
  for (const caution of check.cautions) {
    if (!caution.at) continue;
    const field = store.fieldFor(caution.at);
    const isSaid = caution.severity === 'verdict' || caution.code === 'assumed';
    if (isSaid && (questionAt(field) || listAt(field))) at(caution.at).readings.push(caution.says);
  }
  for (const row of check.windLoads.rows) {
    const load = store.placeOf.value(row.at);
    const area = ['/area', '/front'].find((each) => textAt(store.draft.value, load + each) !== '');
    // A load of a described shape has its area from that.
    if (row.kind !== 'load' || area === undefined || textAt(store.draft.value, `${load}/shape`) !== '') continue;
    if (Math.abs(row.coefficient - 1) < 0.005) continue;
    const stated = !['', 'unknown'].includes(textAt(store.draft.value, `${load}/areaKind`));
    const taken = `aken at ${figures(row.coefficient)} times this`;
    const why = stated ? `T${taken} by its type of area` : `Type of area not stated. T${taken}`;
    at(row.at + area).counted.push(`${why}: ${figures(row.front)} ${check.windLoads.units.area} in all.`);
  }
  for (const question of check.toFindOut) at(question.at).readings.push(question.says);
  for (const query of check.entryWarnings) at(query.pointer.replace(/^#/, '')).entryWarnings.push(query.says);
  for (const { needs, title, says, ratio } of check.checks) {
    for (const need of needs) {
      at(need).gaps.push(
        needs.length === 1 && ratio === undefined ? says : `Required for the ${title}, which is open without it.`,
      );
    }
  }
  return notes;
});

/** @param {string} base */
const asking = (base) => ({
  here: (/** @type {string} */ at) => textAt(store.draft.value, base + at),
  root: (/** @type {string} */ at) => textAt(store.draft.value, at),
  has: (/** @type {string} */ at) => !isBlank(valueAt(store.draft.value, base + at)),
});

/** @param {string} base @param {{ when?: Question['when'], at: string }} item */
const isAsked = (base, { when, at }) =>
  when === undefined || !isBlank(valueAt(store.draft.value, base + at)) || when(asking(base));

/** @param {string} base @param {readonly { at: string }[]} items */
const anyTrouble = (base, items) =>
  items.some(({ at }) =>
    [...store.troublesByPlace.value.keys()].some((place) => place === base + at || place.startsWith(`${base + at}/`)),
  );

/**
 * The keys a phone shows. Lengths and diameters keep all of them, for a fraction, feet with inches, a pair of heights or a minus.
 *
 * @param {Question} question
 */
function inputMode({ kind, of }) {
  if (kind === 'whole') return 'numeric';
  const plain = kind === 'number' || (kind === 'quantity' && of !== 'length' && of !== 'diameter');
  return plain ? 'decimal' : undefined;
}

/** @param {{ pointer: string, question: Question, answer?: ((pointer: string, text: string) => void) | undefined }} props */
function Entry({ pointer, question, answer = store.answerTo }) {
  const id = store.idOf(pointer);
  const name = store.postedName(pointer);
  const value = textAt(store.draft.value, pointer);
  const isUnknown = store.unknown.value.has(pointer);
  const wrong = (store.troublesByPlace.value.get(pointer) ?? []).some(({ soft }) => !soft);
  const described = `${id}-note`;
  const set = (/** @type {Event} */ event) =>
    answer(pointer, /** @type {HTMLInputElement} */ (event.currentTarget).value);
  const common = { name, 'aria-describedby': described, ...(wrong ? { 'aria-invalid': 'true' } : {}) };
  if (question.kind === 'choice' || question.kind === 'yes') {
    const list =
      question.kind === 'yes'
        ? [
            ['true', 'yes'],
            ['false', 'no'],
          ]
        : (question.choices ?? []);
    const shown = list
      .filter(([key]) => key !== question.blankMeans || key === value)
      .filter(([key]) => key !== 'unknown' || key === value);
    return html`<select id=${id} class="field" ...${common} value=${value} onChange=${set}>
      <option value="" selected=${value === ''}>${question.blank ?? 'choose'}</option>
      ${shown.map(([key, words]) => html`<option value=${key} selected=${value === key}>${words}</option>`)}
      ${value !== '' && !shown.some(([key]) => key === value) && html`<option value=${value} selected>${value}</option>`}
    </select>`;
  }
  if (question.kind === 'choices') {
    const list = [...(question.choices ?? []), ...(question.blank === undefined ? [] : [['', question.blank]])];
    return html`<span class="choices" id=${id} role="radiogroup" aria-labelledby=${`${id}-label`} aria-describedby=${described}
      aria-invalid=${wrong ? 'true' : undefined}>
      ${list.map(([key, words]) => html`<label><input type="radio" name=${name} value=${key} checked=${value === key} onChange=${set} /><span>${words}</span></label>`)}
    </span>`;
  }
  const unit = question.of ? UNITS[question.of][store.units.value].label : '';
  const size = question.size ?? (question.kind === 'whole' || question.kind === 'number' ? 'short' : '');
  return html`<span class="entry">
    <input id=${id} class=${`field ${size}`} type="text" inputmode=${inputMode(question)} autocomplete="off" autocapitalize="off" spellcheck=${question.kind === 'text' ? undefined : 'false'}
      ...${common} value=${value} placeholder=${isUnknown ? 'not known' : undefined} onInput=${set} />
    ${unit && html`<span class="unit">${unit}</span>`}</span>`;
}

/** What a text may mean that can be read in two ways: one press takes it. @param {{ pointer: string, readings: readonly string[] | undefined }} props */
export function Readings({ pointer, readings }) {
  if (readings === undefined) return null;
  const place = store.fieldFor(pointer);
  const take = (/** @type {string} */ reading) => {
    store.answerTo(place, reading);
    store.goTo(place);
  };
  return html`<span class="readings" role="group" aria-label="Which number is meant">${readings.map(
    (reading) => html`<button type="button" class="act" onClick=${() => take(reading)}>${reading}</button>`,
  )}</span>`;
}

/** What a text with its own unit or fraction was read as. @param {{ pointer: string, question: Question }} props */
function readAs({ pointer, question }) {
  const text = textAt(store.draft.value, pointer);
  if (
    !question.of ||
    !['length', 'diameter', 'area'].includes(question.of) ||
    text === '' ||
    /^[\d.]+$/.test(text.trim()) ||
    question.kind !== 'quantity'
  )
    return '';
  const value = inSi(text, question.of, store.units.value) / UNITS[question.of][store.units.value].inSi;
  const label = UNITS[question.of][store.units.value].label;
  if (!Number.isFinite(value) || (!Number.isNaN(numberOf(text, store.units.value)) && text.trim() === String(value)))
    return '';
  return `taken as ${figures(value, 5)} ${label}`;
}

/** @param {{ base: string, question: Question, answer?: (pointer: string, text: string) => void }} props */
export function Ask({ base, question, answer }) {
  const pointer = base + question.at;
  const id = store.idOf(pointer);
  const isUnknown = store.unknown.value.has(pointer);
  const troubles = store.troublesByPlace.value.get(pointer) ?? [];
  const hard = troubles.filter(({ soft }) => !soft);
  const notes = notesByPlace.value.get(pointer);
  const blank = textAt(store.draft.value, pointer) === '';
  const note = readAs({ pointer, question }) || question.hint || '';
  return html`<div class=${`q${isUnknown ? ' unknown' : ''}${hard.length > 0 ? ' wrong' : ''}${question.size === 'wide' ? ' long' : ''}`}>
    ${
      question.kind === 'choices'
        ? html`<span class="label" id=${`${id}-label`}>${question.label}</span>`
        : html`<label for=${id}>${question.label}</label>`
    }
    <div class="a"><${Entry} pointer=${pointer} question=${question} answer=${answer} />
      ${
        question.unknown &&
        store.scripted.value &&
        html`<label class="dk"><input type="checkbox" checked=${isUnknown}
        aria-label=${`I don’t know: ${question.label}`}
        onChange=${(/** @type {any} */ event) => store.setUnknown(pointer, event.currentTarget.checked)} />I don’t know</label>`
      }
      ${question.same && html`<${Same} pointer=${pointer} same=${question.same} />`}
    </div>
    <div class="said" id=${`${id}-note`}>
      ${hard.map(({ says, readings }) => html`<p class="why">${says}</p><${Readings} pointer=${pointer} readings=${readings} />`)}
      ${troubles.filter(({ soft }) => soft).map(({ says }) => html`<p class="gap">Not counted yet. ${says}</p>`)}
      ${note && html`<p class="note">${note}</p>`}
      ${notes?.counted.map((says) => html`<p class="reading">${says}</p>`)}
      ${notes?.entryWarnings.map((says) => html`<p class="query">${says}</p>`)}
      ${blank && unique(notes?.gaps).map((says) => html`<p class="gap">${says}</p>`)}
      ${(blank || question.kind === 'choice') && notes && notes.readings.length > 0 && html`<p class="reading">${unique(notes.readings).join(' ')}</p>`}
    </div>
  </div>`;
}

/** @param {readonly string[] | undefined} list */
const unique = (list) => [...new Set(list ?? [])];

/** Takes here what stands elsewhere in the plan. @param {{ pointer: string, same: { at: string, says: string } }} props */
function Same({ pointer, same }) {
  const there = textAt(store.draft.value, same.at);
  if (!store.scripted.value || there === '' || there === textAt(store.draft.value, pointer)) return null;
  return html`<button type="button" class="act" onClick=${() => store.answerTo(pointer, there)}>${same.says}</button>`;
}

/** Questions, with the rare ones folded. @param {{ id: string, about: string, base: string, questions: readonly Question[], lists?: readonly List[] }} props */
function Questions({ id, about, base, questions, lists = [] }) {
  const scripted = store.scripted.value;
  const asked = questions.filter((question) => !scripted || isAsked(base, question));
  const hidden = (/** @type {Pick<Question, 'at' | 'more' | 'plain' | 'when'>} */ item) =>
    (item.more === true && !item.plain?.(asking(base)) && !store.surfaced.value.has(base + item.at)) ||
    (!scripted && item.when !== undefined && !isAsked(base, item));
  const plain = asked.filter((question) => !hidden(question));
  const rare = asked.filter(hidden);
  const askedLists = lists.filter((list) => !scripted || isAsked(base, list));
  const rareLists = askedLists.filter(hidden);
  const open = store.openMore.value.has(id) || anyTrouble(base, [...rare, ...rareLists]);
  return html`
    ${plain.map((question) => html`<${Ask} key=${question.at} base=${base} question=${question} />`)}
    ${askedLists.filter((list) => !hidden(list)).map((list) => html`<${Rows} key=${list.at} base=${base} list=${list} />`)}
    ${
      (rare.length > 0 || rareLists.length > 0) &&
      html`<details class="more" open=${open} onToggle=${(/** @type {any} */ event) => store.fold(id, event.currentTarget.open)}>
      <summary>More about ${about}</summary>
      ${
        (open || !scripted) &&
        html`
        ${rare.map((question) => html`<${Ask} key=${question.at} base=${base} question=${question} />`)}
        ${rareLists.map((list) => html`<${Rows} key=${list.at} base=${base} list=${list} />`)}`
      }
    </details>`
    }`;
}

/** @param {import('@preact/signals').Signal<ReadonlySet<string>>} set @param {string} id @param {boolean} open */
function toggled(set, id, open) {
  if (set.value.has(id) === open) return;
  set.value = open ? new Set([...set.value, id]) : new Set([...set.value].filter((each) => each !== id));
}

/** A further blank row asks only what most rows answer, where no script can unfold the rest. @param {string} pointer @param {List} list */
function asksOf(pointer, list) {
  const further =
    Number(pointer.slice(pointer.lastIndexOf('/') + 1)) > 0 && isBlank(valueAt(store.draft.value, pointer));
  if (store.scripted.value || !further) return { questions: list.row, lists: list.lists ?? [] };
  return { questions: list.row.filter((question) => !question.more && isAsked(pointer, question)), lists: [] };
}

/** Blank rows where no script can add any. */
const BLANK_ROWS = /** @type {Record<string, number>} */ ({
  '/loads': 4,
  '/cables': 2,
  '/ratings': 2,
  '/sections': 0,
  '/tubes': 4,
  '/taper': 4,
});

/** That there are none: said, since a list without rows does not say so. @param {{ at: string, none: string }} props */
export function NoRows({ at, none }) {
  const isNone = store.isNone(at);
  const notes = notesByPlace.value.get(at);
  return html`<label class="dk none"><input type="checkbox" name=${store.postedName(at)} value="no" checked=${isNone}
      onChange=${(/** @type {any} */ event) => store.sayNone(at, event.currentTarget.checked)} />${none}</label>
    ${
      isBlank(valueAt(store.draft.value, at)) &&
      html`<div class="said">
      ${unique(notes?.gaps).map((says) => html`<p class="gap">${says}</p>`)}
      ${unique(notes?.readings).map((says) => html`<p class="reading">${says}</p>`)}
    </div>`
    }`;
}

/** @param {{ base: string, list: List }} props */
export function Rows({ base, list }) {
  const at = base + list.at;
  const scripted = store.scripted.value;
  const given = rowsOf(store.draft.value, at);
  const count = scripted ? given.length : Math.max(given.length, BLANK_ROWS[list.at] ?? 2);
  const rows = Array.from({ length: count }, (_, index) => `${at}/${index}`);
  const troubles = store.troublesByPlace.value.get(at) ?? [];
  const headed = list !== LOADS && list !== RATINGS && list.at !== '/cables';
  return html`<div class=${list.narrow ? 'narrow' : 'rows'} id=${store.idOf(at)}>
    ${headed && html`<h3>${list.title}</h3>`}
    ${list.hint && rows.length > 0 && html`<p class="note">${list.hint}</p>`}
    ${troubles.map(({ says, soft }) => html`<p class=${soft ? 'gap' : 'why'}>${says}</p>`)}
    ${list.at === '/taper' && rows.length > 0 && html`<${Strip} rows=${given} units=${store.units.value} />`}
    ${rows.map((pointer) =>
      list.narrow
        ? html`<${NarrowRow} key=${pointer} pointer=${pointer} list=${list} />`
        : list.folds
          ? html`<${FoldedRow} key=${pointer} pointer=${pointer} list=${list} />`
          : html`<${PlainRow} key=${pointer} pointer=${pointer} list=${list} />`,
    )}
    ${list.none !== undefined && html`<${NoRows} at=${at} none=${list.none} />`}
    ${scripted && html`<p class="acts"><button type="button" class="act" onClick=${() => addTo(at)}>${list.add}</button></p>`}
    ${scripted && list === LOADS && html`<${PasteRows} />`}
  </div>`;
}

/** What was pasted, and why it cannot be read. */
const pastedText = signal('');
const pastedSays = signal('');

/** Rows of a sheet, a load each. */
function PasteRows() {
  const add = () => {
    const { rows, says } = pastedLoads(pastedText.value);
    pastedSays.value = says ?? '';
    if (!rows) return;
    const there = rowsOf(store.draft.value, '/loads').filter((row) => !isBlank(row));
    store.change(
      [['/loads', [...there, ...rows]]],
      rows.length === 1 ? 'one load pasted' : `${rows.length} loads pasted`,
    );
    store.openRows.value = new Set([...store.openRows.value].filter((place) => !place.startsWith('/loads/')));
    pastedText.value = '';
  };
  return html`<details class="more"><summary>Paste rows from a sheet</summary>
    <label for="pasted-rows">One load a row; the first row says what each column is: name, above or height, area, weight, shape, …</label>
    <textarea id="pasted-rows" class="field" rows="5" spellcheck="false" value=${pastedText.value} aria-describedby="pasted-rows-note"
      onInput=${(/** @type {any} */ event) => {
        pastedText.value = event.currentTarget.value;
      }}></textarea>
    <p id="pasted-rows-note" class="why" role="alert" hidden=${pastedSays.value === ''}>${pastedSays.value}</p>
    <p class="acts"><button type="button" class="act" onClick=${add}>Add these rows</button></p>
  </details>`;
}

/** @param {string} at */
function addTo(at) {
  const place = store.addRow(at);
  requestAnimationFrame(() => {
    const row = document.getElementById(store.idOf(place));
    const entry = row?.querySelector('.opened input, .opened select, input.field, select.field');
    if (entry instanceof HTMLElement) entry.focus();
  });
}

/** @param {{ pointer: string, list: List, what: string }} props */
function LeaveOut({ pointer, list, what }) {
  if (!store.scripted.value) return null;
  const out = () => {
    const at = pointer.slice(0, pointer.lastIndexOf('/'));
    store.removeRow(pointer);
    requestAnimationFrame(() => {
      const button = document.getElementById(store.idOf(at))?.querySelector(':scope > .acts > .act');
      if (button instanceof HTMLElement) button.focus();
    });
  };
  return html`<button type="button" class=${list.narrow ? 'out' : 'act'} aria-label=${`Leave out ${what}`} onClick=${out}>${list.narrow ? '×' : 'Leave out'}</button>`;
}

/** Troubles of a row as a whole. @param {{ pointer: string }} props */
function RowTroubles({ pointer }) {
  const troubles = store.troublesByPlace.value.get(pointer) ?? [];
  const entryWarnings = notesByPlace.value.get(pointer)?.entryWarnings ?? [];
  return html`${troubles.map(({ says, soft }) => html`<p class=${soft ? 'gap' : 'why'}>${soft && 'Not counted yet. '}${says}</p>`)}
    ${entryWarnings.map((says) => html`<p class="query">${says}</p>`)}`;
}

/** @param {{ pointer: string, list: List }} props */
function PlainRow({ pointer, list }) {
  const what = `${list.one} ${Number(pointer.slice(pointer.lastIndexOf('/') + 1)) + 1}`;
  return html`<fieldset class="row" id=${store.idOf(pointer)}>
    <legend>${what}</legend>
    <${RowTroubles} pointer=${pointer} />
    <${Questions} id=${pointer} about=${`this ${list.one}`} base=${pointer} ...${asksOf(pointer, list)} />
    <p class="acts"><${LeaveOut} pointer=${pointer} list=${list} what=${what} /></p>
  </fieldset>`;
}

/** @param {{ pointer: string, list: List }} props */
function NarrowRow({ pointer, list }) {
  const index = Number(pointer.slice(pointer.lastIndexOf('/') + 1));
  const what = `${list.one} ${index + 1}`;
  return html`<div class="line" id=${`${store.idOf(pointer)}-line`} role="group" aria-label=${what} onPaste=${(/** @type {ClipboardEvent} */ event) => pasted(event, pointer, list)}>
    <span class="number" aria-hidden="true">${index + 1}</span>
    ${list.row.map((question) => {
      const place = pointer + question.at;
      const troubles = store.troublesByPlace.value.get(place) ?? [];
      const id = store.idOf(place);
      return html`<span class=${`cell${troubles.length > 0 ? ' wrong' : ''}`}><label for=${id}>${question.label}</label><${Entry} pointer=${place} question=${question} />
        <span id=${`${id}-note`} class="said">${troubles.map(({ says, readings }) => html`<span class="why">${says}</span><${Readings} pointer=${place} readings=${readings} />`)}</span></span>`;
    })}
    <${LeaveOut} pointer=${pointer} list=${list} what=${what} />
    ${list.row.every(({ at }) => at !== '') && html`<${RowTroubles} pointer=${pointer} />`}
  </div>`;
}

/** Rows pasted from a sheet go on from the one they are pasted into. @param {ClipboardEvent} event @param {string} pointer @param {List} list */
function pasted(event, pointer, list) {
  const text = event.clipboardData?.getData('text/plain') ?? '';
  const lines = text.split(/\r?\n/).filter((line) => line.trim() !== '');
  if (lines.length < 2 && !text.includes('\t')) return;
  event.preventDefault();
  const at = pointer.slice(0, pointer.lastIndexOf('/'));
  const from = Number(pointer.slice(at.length + 1));
  /** @type {[string, string][]} */
  const changes = [];
  lines.forEach((line, index) => {
    const cells = line.split('\t');
    list.row.forEach((question, column) => {
      if (cells[column] !== undefined) changes.push([`${at}/${from + index}${question.at}`, cells[column].trim()]);
    });
  });
  store.change(changes, `${lines.length} rows pasted`);
}

const AREA_WORDS = /** @type {Record<string, string>} */ ({
  '': 'by its area',
  stated: 'by its area',
  tubes: 'by its tubes',
  tube: 'one tube',
  plate: 'a panel',
  dish: 'a dish',
  wire: 'a wire',
  lattice: 'a lattice piece',
  pole: 'a pole',
});

/** An entry with the unit of the plan, unless it has its own. @param {string} text @param {import('./quantity.mjs').Dimension} of */
const withUnit = (text, of) => (/[a-z²"'%]\.?$/i.test(text) ? text : `${text} ${UNITS[of][store.units.value].label}`);

/** @param {any} row */
function loadSummary(row) {
  const where = row?.height
    ? withUnit(row.height, 'length')
    : row?.above
      ? `${withUnit(row.above, 'length')} above the top`
      : 'no height yet';
  const parts = [where, ...(row?.turns === 'true' ? ['turns'] : []), AREA_WORDS[row?.shape ?? ''] ?? 'by its area'];
  return parts.join(', ');
}

/** What a rating is summed up by: the first of these that is given. */
const RATED = /** @type {const} */ ({
  area: 'area',
  force: 'force',
  moment: 'moment',
  torque: 'moment',
  weight: 'weight',
  breakingStrength: 'force',
  workingLoad: 'force',
});

/** @param {any} row */
function ratingSummary(row) {
  const rated = Object.entries(RATED).find(([field]) => row?.[field]);
  const what = rated === undefined ? '' : withUnit(row[rated[0]], rated[1]);
  const speed = row?.wind?.speed ? ` at ${withUnit(row.wind.speed, 'speed')}` : '';
  return `${what}${speed}` || 'nothing given yet';
}

/** @param {any} row */
function sectionSummary(row) {
  const length = row?.length ? withUnit(row.length, 'length') : 'no length yet';
  const count = Number(row?.count) > 1 ? `${row.count} of ${length}` : length;
  const shape = row?.shape === 'lattice' ? ', lattice' : row?.shape === 'pole' ? ', pole' : '';
  return `${count}${shape}${row?.width ? ` ${withUnit(row.width, 'diameter')} wide` : ''}`;
}

/** What a rating is of. @param {string} of */
const ratedPart = (of) =>
  Object.hasOwn(FIELDS.rating.of.choices, of)
    ? `The ${FIELDS.rating.of.choices[/** @type {keyof typeof FIELDS.rating.of.choices} */ (of)]}`
    : 'A part';

/** @param {{ pointer: string, list: List }} props */
function FoldedRow({ pointer, list }) {
  const scripted = store.scripted.value;
  const row = /** @type {any} */ (valueAt(store.draft.value, pointer)) ?? {};
  const number = Number(pointer.slice(pointer.lastIndexOf('/') + 1)) + 1;
  const isLoad = list === LOADS;
  const name = list === RATINGS ? ratedPart(textAt(row, '/of')) : textAt(row, '/name') || `${list.one} ${number}`;
  const summary = isLoad ? loadSummary(row) : list === RATINGS ? ratingSummary(row) : sectionSummary(row);
  const about = `this ${list.one}`;
  const open =
    !scripted ||
    store.openRows.value.has(pointer) ||
    [...store.troublesByPlace.value.keys()].some((place) => place === pointer || place.startsWith(`${pointer}/`));
  const id = store.idOf(pointer);
  const windLoads = isLoad ? windLoadRow(pointer) : undefined;
  return html`<fieldset class="folded" id=${id}>
    <legend class="unseen">${list.one} ${number}</legend>
    <div class=${`load${isLoad ? '' : ' plain'}`}>
      ${isLoad && html`<${Sketch} row=${row} units=${store.units.value} name=${name} />`}
      <div class="what">${name}<span>${summary}</span></div>
      ${windLoads && html`<div class="epa">${figures(windLoads.front)} ${windLoads.unit}<small>${Math.abs(windLoads.front - windLoads.side) < 0.005 * windLoads.front ? 'all round' : `endwise ${figures(windLoads.side)}`}</small></div>`}
      ${
        scripted &&
        html`<div class="rowacts">
        <button type="button" class="act" aria-expanded=${open ? 'true' : 'false'} aria-controls=${`${id}-fields`}
          onClick=${() => toggled(store.openRows, pointer, !store.openRows.value.has(pointer))}><span class="unseen">${name}: </span>${open ? 'Close' : 'Change'}</button>
        <${LeaveOut} pointer=${pointer} list=${list} what=${name} /></div>`
      }
    </div>
    <div class="opened" id=${`${id}-fields`} hidden=${!open}>
      ${
        open &&
        html`<${RowTroubles} pointer=${pointer} />
      <${Questions} id=${pointer} about=${about} base=${pointer} ...${asksOf(pointer, list)} />`
      }
    </div>
  </fieldset>`;
}

/** The wind on a load, with the unit of its areas. @param {string} pointer */
function windLoadRow(pointer) {
  const windLoads = store.answer.value?.windLoads;
  const row = windLoads?.rows.find(({ kind, at }) => kind === 'load' && store.placeOf.value(at) === pointer);
  return row && windLoads && { ...row, unit: windLoads.units.area };
}

/** @param {{ codes: readonly any[] }} props */
export function AdoptedCode({ codes }) {
  const value = textAt(store.draft.value, '/titleBlock/code');
  const titled = codes.map((code) => ({ ...code, name: `${code.title} ${code.edition}` })).reverse();
  const chosen = titled.find(({ name }) => name === value);
  const choose = (/** @type {any} */ event) => {
    const name = event.currentTarget.value;
    const code = titled.find((each) => each.name === name);
    store.change(
      code
        ? [
            ['/titleBlock/code', name],
            ['/method', code.suggests.method],
            ['/site/wind/basis', code.suggests.basis],
          ]
        : [['/titleBlock/code', name || undefined]],
      'adopted code',
    );
  };
  return html`<div class="q">
    <label for="at-adopted-code">Building code your town has adopted</label>
    <div class="a"><select id="at-adopted-code" class="field" name="titleBlock[code]" value=${value} onChange=${choose} aria-describedby="at-adopted-code-note">
      <option value="" selected=${value === ''}>I don’t know, or another</option>
      ${titled.map(({ name }) => html`<option value=${name} selected=${name === value}>${name}</option>`)}
      ${value !== '' && !chosen && html`<option value=${value} selected>${value}</option>`}
    </select></div>
    <div class="said" id="at-adopted-code-note">${
      chosen
        ? html`<p class="reading">${chosen.says} ${/^from memory/.test(chosen.known) ? 'This is from memory of that code: check it against your copy.' : ''}</p>`
        : html`<p class="note">the building department says which; it chooses standard and kind of speed below</p>`
    }</div>
  </div>`;
}

/** Questions that stand elsewhere on the sheet. */
const ELSEWHERE = new Set(['/title']);

/** @param {{ codes: readonly any[] }} props */
export function Given({ codes }) {
  const scripted = store.scripted.value;
  return html`<div class="given">
    ${PARTS.map((part) => {
      const base = part.base ?? '';
      const questions = part.questions.filter(
        ({ at }) => !ELSEWHERE.has(base + at) && (scripted || base + at !== '/titleBlock/code'),
      );
      const id = `part-${part.id}`;
      const inside = html`${part.id === 'wind' && html`<${AdoptedCode} codes=${codes} />`}<${FromStock} part=${part.id} />
        <${Questions} id=${part.id} about=${inSentence(part.title)} base=${base} questions=${questions} lists=${part.lists ?? []} />`;
      const lead = part.id === 'loads' ? turning() : part.lead;
      if (!part.folded) {
        return html`<fieldset class="part" id=${id} key=${part.id}><legend class="head"><h2>${part.title}</h2>${lead && html`<small>${lead}</small>`}</legend>${inside}</fieldset>`;
      }
      const open = store.partIsOpen(part.id);
      return html`<details class="part" id=${id} key=${part.id} open=${open} onToggle=${(/** @type {any} */ event) => toggled(store.openParts, part.id, event.currentTarget.open)}>
        <summary class="head"><h2>${part.title}</h2><small>${open ? part.lead : folded(part)}</small></summary>
        ${(open || !scripted) && html`<fieldset><legend class="unseen">${part.title}</legend>${inside}</fieldset>`}
      </details>`;
    })}
  </div>`;
}

/** How many loads turn. */
function turning() {
  const rows = rowsOf(store.draft.value, '/loads').filter((row) => !isBlank(row));
  const turn = rows.filter((row) => textAt(row, '/turns') === 'true').length;
  return rows.length > 1 || turn > 0
    ? `${turn === 0 ? 'none' : turn} of ${rows.length} ${turn === 1 ? 'turns' : 'turn'}`
    : undefined;
}

/** A title as it goes on in a sentence. @param {string} text */
const inSentence = (text) => text.charAt(0).toLowerCase() + text.slice(1);

/** What a folded part says of itself. @param {{ id: string }} part */
function folded({ id }) {
  const isOpen = store.answer.value?.checks.some(
    ({ kind, verdict }) => PART_OF_CHECK[kind] === id && verdict === 'open',
  );
  return isOpen ? 'not given, so open' : 'not given';
}
