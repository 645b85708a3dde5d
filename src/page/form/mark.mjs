import { html } from './html.mjs';

/** @typedef {import('../../answer/index.ts').Answer['verdict']} Verdict */

/** Bar and dot: the bar is what may be asked, the dot is what is asked. The word always stands beside it. @param {{ verdict: Verdict }} props */
export function Mark({ verdict }) {
  const inside = {
    within: html`<path class="bar" d="M2 5h20" /><circle class="dot" cx="12" cy="16" r="3.5" />`,
    'low-margin': html`<path class="bar" d="M2 5h20" /><circle class="dot" cx="12" cy="9.5" r="3.5" />`,
    over: html`<path class="bar" d="M2 17h20" /><path class="beyond" d="M12 4l5 9H7z" />`,
    open: html`<path class="gap" d="M2 5h20" /><circle class="gap" cx="12" cy="15" r="4" />`,
  }[verdict];
  return html`<svg class="mark" viewBox="0 0 24 24" aria-hidden="true" focusable="false">${inside}</svg>`;
}
