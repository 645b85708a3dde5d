/** The whole sheet: masthead, title, what is given, what follows, the standing cautions. */
import { Answer, VerdictStrip } from './answer.mjs';
import { textAt } from './draft.mjs';
import { Given, Readings } from './given.mjs';
import { Glance, Guide, openInquiry, ToGuide } from './guide.mjs';
import { html } from './html.mjs';
import { copyLink, keptBefore, openFile, openPrinted, saveToFile } from './kept-plan.mjs';
import * as store from './store.mjs';

/**
 * What the service tells the page at the start.
 *
 * @typedef {object} Start
 * @property {readonly any[]} codes Adopted codes and what goes with them.
 * @property {readonly import('./methods.mjs').ListedMethod[]} methods Standards a plan may go by.
 * @property {readonly { id: string, title: string, says: string }[]} plans Demo plans.
 * @property {readonly string[]} worksheets Forms in which the service prints the worksheet.
 * @property {string} version
 * @property {{ words: string, href?: string }} [runBy] Who runs the service.
 * @property {Record<string, unknown>} draft What stands in the form at first.
 * @property {store.Answer | null} answer What follows from it, or null.
 */

const NEVER = [
  'earthquake',
  'joints and welds',
  'guy and anchor forces',
  'examination of the soil',
  'grounding',
  'aviation and zoning notices',
];

function chooseFile() {
  const input = document.createElement('input');
  input.type = 'file';
  input.accept = '.json,application/json';
  input.addEventListener('change', () => {
    const [file] = input.files ?? [];
    if (file) openFile(file);
  });
  input.click();
}

function startAnew() {
  store.replaceDraft(store.emptyDraft(store.units.value), 'sheet cleared');
  store.candidates.value = { units: store.units.value, list: [] };
  store.notice.value = 'The sheet is empty. Undo brings back what was there.';
}

/** @param {{ start: Start }} props */
function Acts({ start }) {
  const act = (/** @type {string} */ words, /** @type {() => void} */ does, can = true, passesOn = false) =>
    html`<li class=${passesOn ? 'passes-on' : undefined}><button type="button" class="act" aria-disabled=${can ? undefined : 'true'} onClick=${() => can && does()}>${words}</button></li>`;
  const passOn = (/** @type {string} */ words, /** @type {() => void} */ does) => act(words, does, true, true);
  if (!store.scripted.value) return html`<nav aria-label="More"><a class="act" href="openapi.json">Contract</a></nav>`;
  return html`<menu aria-label="The plan">
    ${act('Undo', store.undo, store.canUndo.value)}
    ${act('Redo', store.redo, store.canRedo.value)}
    ${act('Open', chooseFile)}
    ${act('Save', saveToFile)}
    ${passOn('Copy link', copyLink)}
    ${passOn('Print', () => print())}
    ${start.worksheets.includes('html') && passOn('Worksheet', () => openPrinted('v1/checks?as=html'))}
    ${start.worksheets.includes('pdf') && passOn('PDF', () => openPrinted('v1/checks?as=pdf'))}
    ${start.worksheets.includes('html') && passOn('Storm card', () => openPrinted('v1/storm-cards?as=html'))}
    ${start.worksheets.includes('html') && passOn('Tower inquiry', openInquiry)}
    ${act('New', startAnew)}
  </menu>`;
}

function Units() {
  const units = store.units.value;
  const set = (/** @type {any} */ event) => store.switchUnits(event.currentTarget.value);
  const choice = (/** @type {string} */ value, /** @type {string} */ words) =>
    html`<label><input type="radio" name="units" value=${value} checked=${units === value} onChange=${set} /><span>${words}</span></label>`;
  return html`<div class="units" role="radiogroup" aria-label="Units">
    ${store.scripted.value || units === 'us' ? choice('us', 'feet, mph') : html`<a class="act" href="?units=us">feet, mph</a>`}
    ${store.scripted.value || units === 'si' ? choice('si', 'metres, m/s') : html`<a class="act" href="?units=si">metres, m/s</a>`}
  </div>`;
}

/** Everything to correct, at the head of the sheet, each with the way to its entry. */
function ToMend() {
  const hard = store.toCorrect.value;
  if (hard.length === 0) return html`<div class="mends" aria-live="polite" />`;
  return html`<div class="mends" aria-live="polite"><div class="mend"><p><b>${hard.length === 1 ? 'One entry' : `${hard.length} entries`} to correct.</b> ${store.answer.value ? 'The answer shown belongs to an earlier plan.' : `The answer waits for ${hard.length === 1 ? 'it' : 'them'}.`}</p>
    <ul>${hard.map(
      ({ pointer, says, readings }) =>
        html`<li><a href=${`#${store.idOf(store.fieldFor(pointer))}`} onClick=${(/** @type {Event} */ event) => {
          event.preventDefault();
          store.goTo(pointer);
        }}>${store.nameOf(store.fieldFor(pointer)) || 'the plan'}</a>: ${says} <${Readings} pointer=${pointer} readings=${readings} /></li>`,
    )}</ul></div></div>`;
}

/** What the plan holds that the form has no entry for. */
function Unshown() {
  const places = store.unshown.value;
  if (places.length === 0) return null;
  return html`<p class="gap unshown">The form has no entry for ${places.length === 1 ? 'one thing' : `${places.length} things`} of this plan: ${places.slice(0, 12).join(', ')}${places.length > 12 ? ' and more' : ''}. It is kept, sent along and saved again.</p>`;
}

/** @param {{ start: Start }} props */
function StartFrom({ start }) {
  const open = async (/** @type {Event} */ event, /** @type {string} */ id, /** @type {string} */ title) => {
    if (!store.scripted.value) return;
    event.preventDefault();
    try {
      const response = await fetch(`v1/demo-plans/${id}`);
      store.openPlan(await response.json(), `${title} opened, an invented plan`);
      scrollTo({ top: 0 });
    } catch {
      store.notice.value = 'The service does not answer; the plan was not opened.';
    }
  };
  const earlier = store.scripted.value ? keptBefore() : undefined;
  const bringBack = () => {
    if (!earlier) return;
    store.replaceDraft(earlier.draft, 'earlier plan brought back', earlier.unknown);
    store.candidates.value = earlier.candidates;
    store.notice.value = 'The plan that was kept here before is back.';
  };
  return html`<details class="more demos"><summary>Start from an invented plan</summary><ul>
    ${earlier && html`<li><button type="button" class="act" onClick=${bringBack}>${textAt(earlier.draft, '/title') || 'Your own plan'}</button> <span class="note">what was kept in this browser before another plan came in a link.</span></li>`}
    ${start.plans.map(({ id, title, says }) => html`<li><a class="act" href=${`?plan=${id}`} onClick=${(/** @type {Event} */ event) => open(event, id, title)}>${title}</a> <span class="note">${says}</span></li>`)}
  </ul></details>`;
}

/** @param {{ start: Start }} props */
export function App({ start }) {
  const scripted = store.scripted.value;
  const guided = store.guided.value >= 0;
  const title = textAt(store.draft.value, '/title');
  return html`<div class="sheet">
    <header>
      <div class="masthead"><span class="name">Gustworthy</span><${Acts} start=${start} /><${Units} /></div>
      <div class="title">
        <div><h1 class="unseen">${title || 'Untitled plan'}: is this tower rated for these antennas?</h1>
          <input class=${`field titled${title.length > 34 ? ' longest' : title.length > 18 ? ' longer' : ''}`} name="title" aria-label="Name of the plan" placeholder="Untitled plan" autocomplete="off" value=${title} onInput=${(/** @type {any} */ event) => store.answerTo('/title', event.currentTarget.value)} />
          <p>Is this tower rated for these antennas? ${scripted ? 'Kept in this browser alone.' : 'Leave blank what you do not know.'}</p></div>
        <p class="standing">This compares the numbers entered with the ratings entered. The local building code and a licensed engineer decide. Ratings assume sound, correctly built, undamaged steel on the manufacturer’s footing. Climbing, raising and power lines kill.</p>
      </div>
    </header>
    <main class="columns">
      <div class="left">
        <p class="notice" role="status">${store.notice.value}</p>
        <${ToMend} />
        <${Unshown} />
        ${guided ? html`<${Guide} codes=${start.codes} /><${StartFrom} start=${start} />` : html`${scripted && html`<${ToGuide} />`}<${StartFrom} start=${start} /><${Given} codes=${start.codes} />`}
        ${!scripted && html`<p class="post"><button class="act" type="submit">Answer on a worksheet</button></p>`}
      </div>
      ${guided ? html`<${Glance} />` : html`<${Answer} />`}
    </main>
    <footer class="foot">
      <div><h2>Not covered by this service</h2><ul>${(store.answer.value?.notCovered ?? NEVER).map((what) => html`<li>${what}</li>`)}</ul></div>
      <div><h2>Who decides</h2>
        <p>The local building code and a licensed engineer. No one has looked at your tower: not its rust, not its bolts, not the ground under it. Lower it in calm air, with a second person, and with every power line farther off than the tower is long.</p>
        ${store.answer.value && html`<ul class="decides">${store.answer.value.cautions.filter(({ severity, code }) => severity === 'standing' && code !== 'engineer-and-local-code').map(({ says, action }) => html`<li>${says} <span class="note">${action}</span></li>`)}</ul>`}
        <p class="note">${start.runBy && html`Run by ${start.runBy.href ? html`<a href=${start.runBy.href}>${start.runBy.words}</a>` : start.runBy.words}. `}Gustworthy ${start.version}. Formulas and where each is from: <a href="v1/formulas">formulas</a>, <a href="v1/sources">sources</a>, <a href="openapi.json">contract</a>. Values from memory of a standard are marked so in the working.</p></div>
    </footer>
    <${VerdictStrip} />
  </div>`;
}
