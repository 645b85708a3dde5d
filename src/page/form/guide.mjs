/** The first visit: the questions that decide the tower, a few at a time, each answered in the plan itself. */
import { signal } from '@preact/signals';
import { Drawing, Figures, Ghost, Says, Standing } from './answer.mjs';
import { Progress } from './board.mjs';
import { openView, view } from './candidates-view.mjs';
import { textAt, valueAt } from './draft.mjs';
import { AdoptedCode, Ask, NoRows, Rows } from './given.mjs';
import { html } from './html.mjs';
import { openPrinted } from './kept-plan.mjs';
import { asksGround, groundField, RATING_METHODS } from './methods.mjs';
import { listAt, questionAt } from './questions.mjs';
import * as store from './store.mjs';

const LINE = '/ratings/0';
const PRINTED = `${LINE}/wind/method`;
const YEAR = `${LINE}/wind/year`;
const HINGE = '/tower/hinge';

/** @param {string} pointer */
const text = (pointer) => textAt(store.draft.value, pointer);

/** Entries of the plan, as the whole form has them. @param {...string} pointers */
const ask = (...pointers) =>
  pointers.map((pointer) => {
    const question = questionAt(pointer);
    const base = question && pointer.slice(0, pointer.length - question.at.length);
    return question && html`<${Ask} key=${pointer} base=${base} question=${question} />`;
  });

/** The data sheet's standard, most printed first. */
const EDITIONS = /^(tia|eia)222-/;

/** Those whose data sheets name an exposure beside the speed. */
const NAMES_EXPOSURE = /^tia222-/;

/** What stands beside the speed on the data sheet, as the plan has it. */
function printed() {
  if (text(PRINTED) !== '') return text(PRINTED);
  if (valueAt(store.draft.value, YEAR) !== undefined) return 'year';
  return store.unknown.value.has(PRINTED) ? 'nothing' : '';
}

/** @param {string} chosen */
function setPrinted(chosen) {
  if (chosen === 'nothing') {
    store.change([[YEAR, undefined]], 'standard of the data sheet');
    store.setUnknown(PRINTED, true);
    return;
  }
  if (store.unknown.value.has(PRINTED)) store.setUnknown(PRINTED, false);
  store.change(
    chosen === 'year'
      ? [
          [PRINTED, undefined],
          [YEAR, ''],
        ]
      : [
          [PRINTED, chosen],
          [YEAR, undefined],
        ],
    'standard of the data sheet',
  );
}

/** @param {{ name: string, label: string, list: readonly (readonly [string, any])[], value: string, set: (key: string) => void, pictures?: boolean }} props */
function Picks({ name, label, list, value, set, pictures = false }) {
  return html`<div class=${`choices picks${pictures ? ' pictures' : ''}`} role="radiogroup" aria-label=${label}>
    ${list.map(([key, words]) => html`<label key=${key}><input type="radio" name=${name} value=${key} checked=${value === key} onChange=${() => set(key)} /><span>${words}</span></label>`)}</div>`;
}

function Line() {
  const editions = RATING_METHODS.filter(([id]) => EDITIONS.test(id));
  const chosen = printed();
  const list = /** @type {[string, string][]} */ ([
    ...editions,
    ['year', 'only a year'],
    ['nothing', 'nothing is printed'],
  ]);
  return html`${ask(`${LINE}/area`, `${LINE}/wind/speed`)}
    <h3>What is printed beside the speed?</h3>
    <${Picks} name="guide-printed" label="Printed beside the speed" list=${list} value=${chosen} set=${setPrinted} />
    ${chosen === 'year' && ask(YEAR)}
    ${NAMES_EXPOSURE.test(chosen) && ask(`${LINE}/wind/exposure`)}
    <details class="more"><summary>Another standard, or a type of speed or area</summary>${ask(PRINTED, `${LINE}/wind/basis`, `${LINE}/areaKind`)}</details>`;
}

/** The height on the line is taken for that of the tower until another is given. */
function Height() {
  const top = `${LINE}/top`;
  const question = questionAt(top);
  const same = text('/tower/top') !== '' && text('/tower/top') === text(top);
  return html`${question && html`<${Ask} base=${LINE} question=${{ ...question, label: 'Top of your tower, and of the tower the line is for', same: undefined }} answer=${store.answerRatedTop} />`}
    ${ask('/tower/top')}
    ${same && html`<p class="reading">Written for your tower too. Is your tower of another height? Change its top; the line keeps its own.</p>`}`;
}

/** The six kinds: what each is called, its picture. @type {readonly (readonly [string, string, string])[]} */
const KINDS = [
  ['free', 'free-standing', 'M16 44L21 6M32 44L27 6M16 44l14-11-12-8 10-8-7-6'],
  ['tilting', 'tilting', 'M8 44V28M8 40L40 12M12 43L42 17M8 40l8 1 2-10 8 1 2-10 8 1 1-11'],
  ['crank-up', 'crank-up', 'M15 44V24h18v20M19 24V12h10v12M22 12V4h4v8M40 20V6M36 10l4-5 4 5'],
  ['guyed', 'guyed', 'M22 44V6M26 44V6M22 8L5 44M26 8l17 36M22 24L11 44M26 24l11 20'],
  ['bracketed', 'bracketed to a house', 'M28 44V6M33 44V6M4 44V24l10-9 10 9v20M22 28h6M22 34h6'],
  ['roof', 'on a roof', 'M2 44V32l22-12 22 12v12M18 24l6-12 6 12M24 12V4'],
];

/** The kind of tower that the plan tells of. */
function kindOfTower() {
  const support = text('/tower/support');
  if (support !== 'free') return support;
  if (text('/tower/telescopes') === 'true') return 'crank-up';
  return valueAt(store.draft.value, HINGE) === undefined ? 'free' : 'tilting';
}

/** @param {string} kind */
function setKind(kind) {
  const hinge = valueAt(store.draft.value, HINGE);
  const isFree = ['free', 'tilting', 'crank-up'].includes(kind);
  store.answerTo('/tower/support', isFree ? 'free' : kind);
  store.change(
    [
      ['/tower/telescopes', kind === 'crank-up' ? 'true' : undefined],
      [HINGE, kind === 'tilting' ? (hinge ?? { height: '' }) : kind === 'crank-up' ? hinge : undefined],
    ],
    'kind of tower',
  );
}

function Kind() {
  const kind = kindOfTower();
  const pictures = KINDS.map(
    ([key, words, path]) =>
      /** @type {const} */ ([
        key,
        html`<svg viewBox="0 0 48 48" aria-hidden="true" focusable="false"><path d=${path} /><path class="ground" d="M2 44.500h44" /></svg>${words}`,
      ]),
  );
  const supports = listAt('/tower/supportedAt');
  return html`<${Picks} name="guide-kind" label="Kind of tower" list=${pictures} value=${kind} set=${setKind} pictures=${true} />
    ${kind === 'crank-up' && ask('/tower/nested')}
    ${
      (kind === 'tilting' || kind === 'crank-up') &&
      html`<h3>How it is lowered</h3>
      <p class="note">From these follow what the raising gear does, and the forecast at which to lower the tower.</p>
      ${ask(`${HINGE}/height`, `${HINGE}/raisedBy/kind`, '/wanted/forecastError')}`
    }
    ${(kind === 'guyed' || kind === 'bracketed') && supports && html`<${Rows} base="/tower" list=${supports} />`}`;
}

function Shape() {
  const shape = text('/tower/shape');
  return html`${ask('/tower/shape')}
    ${shape === 'lattice' && ask('/tower/width', '/tower/faces', '/tower/members')}
    ${shape === 'pole' && ask('/tower/width', '/tower/sides')}
    ${shape === '' && html`<p class="note">Not known? Leave it out: the wind on the tower itself is then unknown.</p>`}`;
}

/** @typedef {{ title: string, hint: string, body: (props: { codes: readonly any[] }) => any }} Step */

/** @type {readonly Step[]} */
const STEPS = [
  {
    title: 'What does the data sheet of your tower say?',
    hint: 'Look for an area and a speed in one line. It may be called wind load, wind area or antenna area.',
    body: Line,
  },
  {
    title: 'For which height is that line?',
    hint: 'Data sheets list an area for each height of a model.',
    body: Height,
  },
  { title: 'What kind of tower is it?', hint: '', body: Kind },
  {
    title: 'Which wind must it be designed for?',
    hint: 'The building department states the speed, with its type.',
    body: ({ codes }) => html`${ask('/site/wind/speed', '/site/wind/basis')}
      ${asksGround(text('/method')) && ask(`/site/${groundField(text('/method'))}`)}
      <${AdoptedCode} codes=${codes} />${ask('/method')}`,
  },
  {
    title: 'What goes up?',
    hint: 'The largest antenna first. Its manual states the area.',
    body: () => html`${ask('/loads/0/area', '/loads/0/above', '/loads/0/areaKind', '/loads/0/name')}`,
  },
  {
    title: 'Which lines run up the tower?',
    hint: 'Coaxial and control lines catch wind too.',
    body: () => html`${store.isNone('/cables') ? '' : ask('/cables/0/count', '/cables/0/diameter')}
      <${NoRows} at="/cables" none=${listAt('/cables')?.none ?? ''} />`,
  },
  {
    title: 'How wide is the tower?',
    hint: 'With its width, the wind on the tower itself is computed.',
    body: Shape,
  },
];

/** For who has no tower yet, and wants to know what to ask for. @type {readonly Step[]} */
const TO_ORDER = [
  {
    title: 'How high is the tower to be?',
    hint: 'From these follows what to ask its manufacturer for.',
    body: () => html`${ask('/tower/top')}<${Kind} />`,
  },
  ...STEPS.slice(3, 6),
  {
    title: 'Towers and winds to compare',
    hint: 'All of it may stay empty: then the usual winds are listed. It is not kept with the plan.',
    body: () => view.value && html`<${view.value.ToOrder} />`,
  },
];
const ordering = signal(false);

/** Shows a step, or below 0 the whole form, from a place in it. @param {number} to @param {string} [place] */
function go(to, place = 'guide-step') {
  store.guided.value = to;
  requestAnimationFrame(() => {
    const head = document.getElementById(place);
    head?.setAttribute('tabindex', '-1');
    head?.focus({ preventScroll: true });
    head?.scrollIntoView({ block: 'start' });
  });
}

/** What to ask manufacturers for, with all that is to be compared. */
export const openInquiry = () => openPrinted('v1/requirements?as=html', view.value?.asked());

/** The way from the whole form back to the steps. */
export function ToGuide() {
  return html`<p class="acts"><button type="button" class="act" onClick=${() => go(0)}>A few questions at a time</button></p>`;
}

/** @param {{ codes: readonly any[] }} props */
export function Guide({ codes }) {
  const at = store.guided.value;
  const steps = ordering.value ? TO_ORDER : STEPS;
  const step = /** @type {Step} */ (steps[at]);
  const isLast = at === steps.length - 1;
  const last = ordering.value
    ? { says: 'What to ask for', does: openInquiry }
    : { says: 'The whole answer', does: () => go(-1, 'the-answer') };
  const turn = () => {
    ordering.value = !ordering.value;
    openView();
    go(0);
  };
  return html`<section class="guide" aria-labelledby="guide-step">
    <p class="acts"><span class="note">Step ${at + 1} of ${steps.length}</span>
      <button type="button" class="act" onClick=${() => go(-1, 'part-wind')}>The whole form</button></p>
    <h2 class="head" id="guide-step">${step.title}</h2>
    ${step.hint && html`<p class="note">${step.hint}</p>`}
    <div key=${step.title}><${step.body} codes=${codes} /></div>
    ${at === 0 && html`<p class="acts"><button type="button" class="act" onClick=${turn}>${ordering.value ? 'I have a data sheet' : 'I have no tower yet'}</button></p>`}
    <p class="acts onward">
      ${at > 0 && html`<button type="button" class="act" onClick=${() => go(at - 1)}>Back</button>`}
      <button type="button" class="act next" onClick=${isLast ? last.does : () => go(at + 1)}>${isLast ? last.says : 'Next'}</button></p>
  </section>`;
}

/** What is decided so far, and the tower as drawn. */
export function Glance() {
  const answer = store.answer.value;
  const lowered = valueAt(store.draft.value, HINGE) !== undefined || text('/tower/telescopes') === 'true';
  return html`<section class="answer" id="answer" data-state=${store.state.value} data-earlier=${store.earlier.value ? 'yes' : undefined} aria-labelledby="the-answer">
    <h2 class="head" id="the-answer">${store.earlier.value ? 'Answer to an earlier plan' : 'The answer so far'}</h2>
    <${Standing} />
    ${
      answer
        ? html`<${Says} headline=${answer.headline} /><${Progress} answer=${answer} />
      ${lowered && html`<${Figures} answer=${answer} />`}
      <${Drawing} name="elevation" title="Elevation" />`
        : html`<p class="says empty">${store.entriesLeft.value}</p><${Ghost} />`
    }
  </section>`;
}
