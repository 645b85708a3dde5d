/** Every part of the station on one axis, and how many of them are decided. */
import { ratioFigures, VERDICT_WORDS } from '../../words/index.mjs';
import { html } from './html.mjs';
import { Mark } from './mark.mjs';

/**
 * @typedef {import('../../answer/index.ts').Answer} Plan
 * @typedef {import('../../answer/index.ts').PartAnswer} Part
 */

/** The axis ends at this ratio; what is larger stays at the edge, and the number tells it. */
const END = 1.2;
const EDGE = 1.17;

/** @param {number} ratio */
const along = (ratio) => `${((100 * Math.min(ratio, EDGE)) / END).toFixed(2)}%`;

/** With what it was before, if that is shown. @param {{ part: Part, target: number, was?: number | undefined }} props */
export function Scale({ part: { ratio, verdict }, target, was }) {
  const isOpen = verdict === undefined || verdict === 'open';
  const dot =
    isOpen || ratio === undefined
      ? html`<line class="open" x1="0" x2=${along(1)} y1="50%" y2="50%" /><circle class="ring" cx=${along(ratio ?? 0.5)} cy="50%" r="5.5" />`
      : html`<line class="base" x1="0" x2=${along(1)} y1="50%" y2="50%" /><circle class=${ratio > 1 ? 'at over' : 'at'} cx=${along(ratio)} cy="50%" r="6" />`;
  const before =
    was !== undefined &&
    html`<line class="run" x1=${along(was)} x2=${along(ratio ?? was)} y1="50%" y2="50%" /><circle class="was" cx=${along(was)} cy="50%" r="4.2" />`;
  return html`<svg class="scale" aria-hidden="true" focusable="false"><line class="target" x1=${along(target)} x2=${along(target)} y1="0" y2="100%" /><line class="rated" x1=${along(1)} x2=${along(1)} y1="0" y2="100%" />${before}${verdict !== undefined && dot}</svg>`;
}

/** @param {{ part: Part, target: number, governs: boolean }} props */
function Row({ part, target, governs }) {
  const { title, says, ratio, verdict } = part;
  const word =
    verdict === undefined ? 'nothing to compare' : html`<${Mark} verdict=${verdict} />${VERDICT_WORDS[verdict]}`;
  return html`<li class=${governs ? 'governs' : undefined}>
    <span class="part">${sentence(title)}<small>${says}</small></span>
    <span class="on-scale"><${Scale} part=${part} target=${target} /></span>
    <span class=${`ratio${ratio !== undefined && verdict === 'over' ? ' over' : ''}`}>${ratio === undefined ? '–' : ratioFigures(ratio)}</span>
    <span class=${`word${verdict === 'over' ? ' over' : ''}`}>${word}</span></li>`;
}

/** @param {{ answer: Plan, target: number }} props */
export function Board({ answer, target }) {
  const { parts, governs } = answer;
  const loads = parts.filter(({ kind }) => kind === 'load');
  const structure = parts.filter(({ kind }) => kind !== 'load');
  const rows = (/** @type {readonly Part[]} */ of) =>
    of.map((part) => html`<${Row} part=${part} target=${target} governs=${part.checks.includes(governs)} />`);
  return html`<section class="plate" aria-labelledby="every-part"><h3 class="head" id="every-part">Every part<small>ratio: demand over capacity; broken line: target ${ratioFigures(target)}; heavy line: 1</small></h3>
    ${loads.length > 0 && html`<h4 class="group">Loads</h4><ul class="board">${rows(loads)}</ul>`}
    <h4 class="group">Structure, from the top down</h4><ul class="board">${rows(structure)}</ul></section>`;
}

/** One dot a part: full where decided, broken where open. @param {{ answer: Plan }} props */
export function Progress({ answer }) {
  const { headline, parts, toFindOut } = answer;
  const dots = parts.filter(({ verdict }) => verdict !== undefined);
  const left = toFindOut.length;
  const questions = left === 0 ? '' : ` ${left} ${left === 1 ? 'question' : 'questions'} left that can move a ratio.`;
  const scope = headline.filter(({ as }) => as === 'scope').map(({ text }) => text);
  return html`<p class="progress"><span class="dots" aria-hidden="true">${dots.map(({ verdict }) => html`<i class=${verdict === 'open' ? 'open' : undefined} />`)}</span><span class="scope">${scope}</span>${questions}</p>`;
}

/** @param {string} text */
export const sentence = (text) => text.charAt(0).toUpperCase() + text.slice(1);
