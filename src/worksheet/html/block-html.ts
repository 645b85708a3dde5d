import { formulaMathml, loneSymbolMathml, reckonedMathml } from '../maths/mathml.ts';
import type { Block, Column, Words } from '../sheet/sheet.ts';
import { type Child, html, Markup } from './markup.ts';
import { verdictMark } from './verdict-mark.ts';

type Of<Kind extends Block['kind']> = Extract<Block, { kind: Kind }>;

/** Words with their voice: what was entered, what is built and computed, or the wind. */
function wordsHtml({ text, voice, strong, mark }: Words): Child {
  const voiced = voice === 'wind' || voice === 'given' ? html`<span class="${voice}">${text}</span>` : text;
  const weighed = strong ? html`<strong>${voiced}</strong>` : voiced;
  if (mark === undefined) return weighed;
  return html`<span class="${mark === 'over' ? 'verdict over' : 'verdict'}">${verdictMark(mark)}${weighed}</span>`;
}

/** The blocks of a part; cautions of one kind that follow each other make one list. */
export function blocksHtml(blocks: readonly Block[], id: string): readonly Markup[] {
  const written: Markup[] = [];
  let cautions: Of<'caution'>[] = [];
  const put = () => {
    const [first] = cautions;
    if (first) written.push(cautionsHtml(first.severity, cautions));
    cautions = [];
  };
  blocks.forEach((block, index) => {
    if (block.kind === 'caution') {
      if (cautions[0] && cautions[0].severity !== block.severity) put();
      cautions.push(block);
      return;
    }
    put();
    written.push(blockHtml(block, `${id}-${index + 1}`, `${id}-heading`));
  });
  put();
  return written;
}

function cautionsHtml(severity: Of<'caution'>['severity'], cautions: readonly Of<'caution'>[]): Markup {
  const items = cautions.map(
    ({ says, action }) => html`<li><b>${says}</b>${action === undefined ? '' : ` ${action}`}</li>`,
  );
  return html`<ul class="cautions cautions-${severity}">${items}</ul>`;
}

function blockHtml(block: Exclude<Block, { kind: 'caution' }>, id: string, headingId: string): Markup {
  switch (block.kind) {
    case 'subheading':
      return html`<h3>${block.text}</h3>`;
    case 'paragraph':
      return html`<p${block.small ? html` class="note"` : ''}>${block.words.map(wordsHtml)}</p>`;
    case 'list':
      return html`<ul class="points">${block.items.map((item) => html`<li>${item}</li>`)}</ul>`;
    case 'facts':
      return html`<dl class="facts">${block.rows.map(factHtml)}</dl>`;
    case 'table':
      return tableHtml(block, id, headingId);
    case 'drawing':
      // Made by our own drawing room, which escapes every word in it and says what it shows.
      return html`<figure class="drawing ${block.name}">${new Markup(block.svg)}<figcaption>${block.title}</figcaption></figure>`;
    case 'step':
      return stepHtml(block);
    case 'blanks':
      return html`<div class="blanks">${block.rows.map((row, index) => blankHtml(row, `${id}-${index + 1}`))}</div>`;
    case 'ticks':
      return html`<ul class="ticks">${block.items.map((item, index) => tickHtml(item, `${id}-${index + 1}`))}</ul>`;
    case 'remarks':
      return html`<p class="remarks"><label for="${id}">${block.label}</label><textarea id="${id}" rows="${block.lines}" autocomplete="off"></textarea></p>`;
    case 'seal':
      return html`<p class="seal"><span>${block.label}</span></p>`;
    case 'plan':
      return html`<pre class="plan" tabindex="0" role="region" aria-label="The plan as JSON"><code>${block.json}</code></pre>`;
  }
}

function factHtml({ label, words, note }: Of<'facts'>['rows'][number]): Markup {
  const noted = note === undefined ? undefined : html` <span class="note">${note}</span>`;
  return html`<div><dt>${label}</dt><dd>${wordsHtml(words)}${noted}</dd></div>`;
}

/** A dash where a row has nothing to say; a phone leaves it out. */
const NOTHING = '–';

const heading = ({ head, unit }: Column) => (unit === undefined || unit === '' ? head : `${head}, ${unit}`);

function tableHtml({ caption, columns, rows, totals }: Of<'table'>, id: string, headingId: string): Markup {
  const kind = (column: Column | undefined, text = '') => {
    const kinds = [...(column?.numeric ? [] : ['word']), ...(text === NOTHING ? ['none'] : [])];
    return kinds.length === 0 ? undefined : html` class="${kinds.join(' ')}"`;
  };
  const head = (column: Column) => {
    const words = column.voice === 'wind' ? html`<span class="wind">${column.head}</span>` : column.head;
    const unit = column.unit ? html` <small>${column.unit}</small>` : undefined;
    return html`<th scope="col"${kind(column)}>${words}${unit}</th>`;
  };
  const cell = (words: Words, index: number) => {
    if (index === 0) return html`<th scope="row">${wordsHtml(words)}</th>`;
    const column = columns[index];
    const under = column && html` data-h="${heading(column)}"`;
    const shown = words.text === '' ? '' : html`<span class="cell">${wordsHtml(words)}</span>`;
    return html`<td${kind(column, words.text)}${under}>${shown}</td>`;
  };
  const lines = (each: readonly (readonly Words[])[]) => each.map((cells) => html`<tr>${cells.map(cell)}</tr>`);
  return html`<div class="scroll" role="region" aria-labelledby="${headingId} ${id}-caption" tabindex="0">
<table class="ledger fold${columns.length > 7 ? ' wide' : ''}"><caption id="${id}-caption">${caption}</caption>
<thead><tr>${columns.map(head)}</tr></thead>
<tbody>${lines(rows)}</tbody>${totals === undefined ? undefined : html`<tfoot>${lines(totals)}</tfoot>`}</table></div>`;
}

function stepHtml({ symbol, title, expression, inputs, value, source, fromMemory, note }: Of<'step'>): Markup {
  const numbers = inputs.flatMap((input) => (input.value === undefined ? [] : [[input.symbol, input.value] as const]));
  // A list does not fit into a line of numbers.
  const allPlain = numbers.length === inputs.length && inputs.length > 0;
  const reckoned = allPlain
    ? new Markup(reckonedMathml(expression, new Map(numbers), value))
    : [new Markup(loneSymbolMathml(symbol)), ` = ${value}`];
  const given = inputs.map((input, index) => [
    index === 0 ? '' : ', ',
    new Markup(loneSymbolMathml(input.symbol)),
    ` = ${input.words}`,
  ]);
  return html`<div class="step"><h4>${title}</h4>
<p class="eq">${new Markup(formulaMathml(symbol, expression))}</p><p class="eq">${reckoned}</p>
<p class="note">${given}${inputs.length === 0 ? '' : '. '}${fromMemory ? html`<strong>${source}</strong>` : source}${note === undefined ? '.' : `; ${note}.`}</p></div>`;
}

function blankHtml({ label, filled, wide }: Of<'blanks'>['rows'][number], id: string): Markup {
  const field =
    filled === undefined
      ? html`<label for="${id}">${label}</label><input id="${id}" type="text" autocomplete="off">`
      : html`<span class="label">${label}</span><span class="given">${filled}</span>`;
  return html`<p${wide ? html` class="wide"` : ''}>${field}</p>`;
}

function tickHtml(item: string, id: string): Markup {
  return html`<li><input type="checkbox" id="${id}" autocomplete="off"><label for="${id}">${item}</label></li>`;
}
