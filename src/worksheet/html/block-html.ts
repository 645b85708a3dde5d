import { formulaMathml, loneSymbolMathml, reckonedMathml } from '../maths/mathml.ts';
import type { Block, Column, Words } from '../sheet/sheet.ts';
import { type Child, element, type Markup } from './element.ts';
import { verdictMark } from './verdict-mark.ts';

type Of<Kind extends Block['kind']> = Extract<Block, { kind: Kind }>;

/** Words with their voice: what was entered, what is built and computed, or the wind. */
function wordsHtml({ text, voice, strong, mark }: Words): Child {
  const voiced: Child = voice === 'wind' || voice === 'given' ? element('span', { class: voice }, text) : text;
  const weighed: Child = strong ? element('strong', {}, voiced) : voiced;
  return mark === undefined
    ? weighed
    : element('span', { class: mark === 'over' ? 'verdict over' : 'verdict' }, verdictMark(mark), weighed);
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
  return element(
    'ul',
    { class: `cautions cautions-${severity}` },
    ...cautions.map(({ says, action }) =>
      element('li', {}, element('b', {}, says), action === undefined ? '' : ` ${action}`),
    ),
  );
}

function blockHtml(block: Exclude<Block, { kind: 'caution' }>, id: string, headingId: string): Markup {
  switch (block.kind) {
    case 'subheading':
      return element('h3', {}, block.text);
    case 'paragraph':
      return element('p', { class: block.small ? 'note' : undefined }, ...block.words.map(wordsHtml));
    case 'list':
      return element('ul', { class: 'points' }, ...block.items.map((item) => element('li', {}, item)));
    case 'facts':
      return factsHtml(block);
    case 'table':
      return tableHtml(block, id, headingId);
    case 'drawing':
      return drawingHtml(block);
    case 'step':
      return stepHtml(block);
    case 'blanks':
      return blanksHtml(block, id);
    case 'ticks':
      return ticksHtml(block, id);
    case 'remarks':
      return element(
        'p',
        { class: 'remarks' },
        element('label', { for: id }, block.label),
        element('textarea', { id, rows: block.lines, autocomplete: 'off' }),
      );
    case 'seal':
      return element('p', { class: 'seal' }, element('span', {}, block.label));
    case 'plan':
      return element(
        'pre',
        { class: 'plan', tabindex: 0, role: 'region', 'aria-label': 'The plan as JSON' },
        element('code', {}, block.json),
      );
  }
}

function factsHtml({ rows }: Of<'facts'>): Markup {
  return element(
    'dl',
    { class: 'facts' },
    ...rows.map(({ label, words, note }) =>
      element(
        'div',
        {},
        element('dt', {}, label),
        element(
          'dd',
          {},
          wordsHtml(words),
          note === undefined ? undefined : [' ', element('span', { class: 'note' }, note)],
        ),
      ),
    ),
  );
}

/** A dash where a row has nothing to say; a phone leaves it out. */
const NOTHING = '–';

const heading = ({ head, unit }: Column) => (unit === undefined || unit === '' ? head : `${head}, ${unit}`);

function tableHtml({ caption, columns, rows, totals }: Of<'table'>, id: string, headingId: string): Markup {
  const captionId = `${id}-caption`;
  const kind = (column: Column | undefined, text = '') =>
    [...(column?.numeric ? [] : ['word']), ...(text === NOTHING ? ['none'] : [])].join(' ') || undefined;
  const line = (cells: readonly Words[]) =>
    element(
      'tr',
      {},
      ...cells.map((cell, index) =>
        index === 0
          ? element('th', { scope: 'row' }, wordsHtml(cell))
          : element(
              'td',
              { class: kind(columns[index], cell.text), 'data-h': columns[index] && heading(columns[index]) },
              cell.text === '' ? '' : element('span', { class: 'cell' }, wordsHtml(cell)),
            ),
      ),
    );
  return element(
    'div',
    { class: 'scroll', role: 'region', 'aria-labelledby': `${headingId} ${captionId}`, tabindex: 0 },
    element(
      'table',
      { class: columns.length > 7 ? 'ledger fold wide' : 'ledger fold' },
      element('caption', { id: captionId }, caption),
      element(
        'thead',
        {},
        element(
          'tr',
          {},
          ...columns.map((column) =>
            element(
              'th',
              { scope: 'col', class: kind(column) },
              column.voice === 'wind' ? element('span', { class: 'wind' }, column.head) : column.head,
              column.unit ? [' ', element('small', {}, column.unit)] : undefined,
            ),
          ),
        ),
      ),
      element('tbody', {}, ...rows.map(line)),
      totals === undefined ? undefined : element('tfoot', {}, ...totals.map(line)),
    ),
  );
}

function drawingHtml({ name, title, svg }: Of<'drawing'>): Markup {
  return element(
    'figure',
    { class: `drawing ${name}` },
    // Made by our own drawing room, which escapes every word in it and says what it shows.
    { markup: svg },
    element('figcaption', {}, title),
  );
}

function stepHtml({ symbol, title, expression, inputs, value, source, fromMemory, note }: Of<'step'>): Markup {
  const numbers = inputs.flatMap((input) => (input.value === undefined ? [] : [[input.symbol, input.value] as const]));
  // A list does not fit into a line of numbers.
  const allPlain = numbers.length === inputs.length && inputs.length > 0;
  return element(
    'div',
    { class: 'step' },
    element('h4', {}, title),
    element('p', { class: 'eq' }, { markup: formulaMathml(symbol, expression) }),
    allPlain
      ? element('p', { class: 'eq' }, { markup: reckonedMathml(expression, new Map(numbers), value) })
      : element('p', { class: 'eq' }, { markup: loneSymbolMathml(symbol) }, ` = ${value}`),
    element(
      'p',
      { class: 'note' },
      ...inputs.flatMap((input, index) => [
        index === 0 ? '' : ', ',
        { markup: loneSymbolMathml(input.symbol) },
        ` = ${input.words}`,
      ]),
      inputs.length === 0 ? undefined : '. ',
      fromMemory ? element('strong', {}, source) : source,
      note === undefined ? '.' : `; ${note}.`,
    ),
  );
}

function blanksHtml({ rows }: Of<'blanks'>, id: string): Markup {
  return element(
    'div',
    { class: 'blanks' },
    ...rows.map(({ label, filled, wide }, index) => {
      const field = `${id}-${index + 1}`;
      return element(
        'p',
        { class: wide ? 'wide' : undefined },
        filled === undefined ? element('label', { for: field }, label) : element('span', { class: 'label' }, label),
        filled === undefined
          ? element('input', { id: field, type: 'text', autocomplete: 'off' })
          : element('span', { class: 'given' }, filled),
      );
    }),
  );
}

function ticksHtml({ items }: Of<'ticks'>, id: string): Markup {
  return element(
    'ul',
    { class: 'ticks' },
    ...items.map((item, index) =>
      element(
        'li',
        {},
        element('input', { type: 'checkbox', id: `${id}-${index + 1}`, autocomplete: 'off' }),
        element('label', { for: `${id}-${index + 1}` }, item),
      ),
    ),
  );
}
