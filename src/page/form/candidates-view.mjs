/** The way to the candidates: what compares them comes once there is one. */
import { effect, signal } from '@preact/signals';
import { Ways } from './candidates.mjs';
import { html } from './html.mjs';
import * as store from './store.mjs';

/** What goes beside the plan, once it is here. */
export const view = signal(/** @type {typeof import('./besides.mjs') | null} */ (null));

export async function openView() {
  try {
    view.value ??= await import('./besides.mjs');
  } catch {
    store.notice.value = 'The service does not answer. Entries are kept: reload the page once it does.';
  }
}

/** Brings the view as soon as there is something in it. */
export function followCandidates() {
  effect(() => {
    if (store.candidates.value.list.length > 0) openView();
  });
}

export function Candidates() {
  const any = store.candidates.value.list.length > 0;
  const inside =
    any && view.value
      ? html`<${view.value.Comparison} />`
      : store.scripted.value
        ? html`<p class="acts"><${Ways} /></p>`
        : html`<p class="note">To compare candidates here, the browser has to run script. Without it, ask <a href="openapi.json">POST /v1/additions</a>.</p>`;
  return html`<section class=${any ? 'plate candidates' : 'plate proposals'} aria-labelledby="try-another"><h3 class="head" id="try-another">Candidates side by side<small>beside the plan, which stays as it is</small></h3>${inside}</section>`;
}
