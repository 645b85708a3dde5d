/** Brings the sheet to life: takes over what the service painted, keeps it, and asks after every change. */
import { effect } from '@preact/signals';
import { hydrate } from 'preact';
import { App } from './app.mjs';
import { followChanges } from './ask-service.mjs';
import { followCandidates } from './candidates-view.mjs';
import { textAt, withValue } from './draft.mjs';
import { html } from './html.mjs';
import { keepInBrowser, keptInBrowser, openFragment, putKeptAside } from './kept-plan.mjs';
import { listMethods } from './methods.mjs';
import { lookForStock } from './stock.mjs';
import * as store from './store.mjs';

const root = /** @type {HTMLElement} */ (document.getElementById('form'));
const start = JSON.parse(/** @type {HTMLElement} */ (document.getElementById('start')).textContent ?? '');

/** What was typed before the script came. */
function typedBefore() {
  /** @type {[string, string | undefined][]} */
  const typed = [];
  for (const entry of root.querySelectorAll('input[name], select[name]')) {
    const field = /** @type {HTMLInputElement | HTMLSelectElement} */ (entry);
    const pointer = `/${field.name.replaceAll('[', '/').replaceAll(']', '')}`;
    if (field instanceof HTMLSelectElement) {
      if (field.selectedIndex >= 0 && !field.options[field.selectedIndex]?.defaultSelected)
        typed.push([pointer, field.value]);
    } else if (field.type === 'radio') {
      if (field.checked && !field.defaultChecked) typed.push([pointer, field.value]);
    } else if (field.type === 'checkbox') {
      if (field.checked !== field.defaultChecked) typed.push([pointer, field.checked ? field.value : undefined]);
    } else if (field.value !== field.defaultValue) typed.push([pointer, field.value]);
  }
  return typed;
}

const typed = typedBefore();
listMethods(start.methods);
store.startWith(start.draft);
store.answer.value = start.answer;
store.answeredDraft.value = store.draft.value;
hydrate(html`<${App} start=${start} />`, root);
root.addEventListener('submit', (event) => event.preventDefault());

const kept = keptInBrowser();
const painted = new URLSearchParams(location.search).has('plan');
if (kept && !painted) {
  store.startWith(kept.draft, kept.unknown);
  store.candidates.value = kept.candidates;
}
if (kept && (painted || /^#plan=/.test(location.hash)) && store.holdsAnswers(kept.draft)) {
  putKeptAside();
  if (painted) store.comeAfter(kept.draft, kept.unknown);
}
// From here on it is this browser's own plan; a reload must not bring the first one back over it.
if (location.search !== '') history.replaceState(null, '', location.pathname + location.hash);
let first = /** @type {unknown} */ (store.draft.value);
for (const [pointer, text] of typed) first = withValue(first, pointer, text);
store.draft.value = /** @type {Record<string, unknown>} */ (first);
store.scripted.value = true;

await openFragment(location.hash);
if (store.isEmpty()) store.guided.value = 0;
followChanges();
followCandidates();
lookForStock();

effect(() => {
  const title = textAt(store.draft.value, '/title').trim();
  document.title = title === '' ? 'Gustworthy: is this tower rated for these antennas?' : `${title} – Gustworthy`;
});

let keeps = true;
/** @type {ReturnType<typeof setTimeout> | undefined} */
let keeping;
effect(() => {
  void store.draft.value;
  void store.unknown.value;
  void store.candidates.value;
  clearTimeout(keeping);
  keeping = setTimeout(() => {
    const kept = keepInBrowser();
    if (!kept && keeps) store.notice.value = 'This browser keeps nothing: save the plan to a file before you leave.';
    keeps = kept;
  }, 150);
});
addEventListener('pagehide', () => keepInBrowser());
addEventListener('hashchange', () => openFragment(location.hash));

addEventListener('keydown', (event) => {
  if (!(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== 'z') return;
  if (event.target instanceof HTMLInputElement && event.target.type === 'text') return;
  event.preventDefault();
  if (event.shiftKey) store.redo();
  else store.undo();
});

/** The sentence is read out, at most once a second. */
const spoken = /** @type {HTMLElement} */ (document.getElementById('spoken'));
let last = '';
setInterval(() => {
  // After one to an earlier plan the answer is read out again, though it be in the same words.
  if (store.earlier.value) last = '';
  const says = store.state.value === 'rest' && !store.earlier.value ? (store.answer.value?.says ?? '') : last;
  if (says === last) return;
  last = says;
  spoken.textContent = says;
}, 1000);

document.documentElement.dataset['ready'] = 'yes';

/** Fonts come once the form can be used: they weigh more than all of it. */
const fonts = document.createElement('link');
fonts.rel = 'stylesheet';
fonts.href = new URL('fonts.css', import.meta.url).href;
document.head.append(fonts);
