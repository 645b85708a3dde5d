import type { Verdict } from '../../margins/index.ts';
import { html, type Markup } from './markup.ts';

const SHAPES: Readonly<Record<Verdict, Markup>> = {
  within: html`<path class="bar" d="M1.5 4h15"></path><circle class="dot" cx="9" cy="13.4" r="3"></circle>`,
  'low-margin': html`<path class="bar" d="M1.5 4h15"></path><circle class="dot" cx="9" cy="7.4" r="3"></circle>`,
  over: html`<path class="bar" d="M1.5 10.5h15"></path><path class="beyond" d="M9 .6l4.2 7.6H4.8z"></path>`,
  open: html`<path class="gap" d="M1.5 4h15"></path><circle class="gap" cx="9" cy="12" r="3.2"></circle>`,
};

/** The bar is what may be asked, the dot is what is asked; the word always stands beside it. */
export function verdictMark(verdict: Verdict): Markup {
  return html`<svg class="mark" viewBox="0 0 18 18" aria-hidden="true" focusable="false">${SHAPES[verdict]}</svg>`;
}
