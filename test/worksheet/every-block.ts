import { formulas as allFormulas } from '../../src/foundation/index.ts';
import type { Sheet } from '../../src/worksheet/index.ts';
// The rooms define their formulas when they are loaded.
import '../../src/margins/index.ts';

/** Texts that a typesetter might take for something else than letters. */
export const HOSTILE = [
  '#panic("no")',
  '$x^2$ and $ x $',
  '*strong* _emph_ `raw` ```block```',
  '@reference <label>',
  '= heading',
  '- list + list / term: list',
  '// comment /* comment */',
  '\\u{1F5FC} \\ \\#',
  '#import "@preview/nothing:1.0.0"',
  '"quoted" \'quoted\' ~ -- --- ...',
  '</svg><script>',
  '{"json": true}',
];

const formulas = allFormulas();

/** A sheet that holds a block of every kind, formulas, and a text at every place where one can stand. */
export function sheetWithEverything(text: string, steps = formulas.length): Sheet {
  return {
    title: text,
    subject: 'Worksheet of a test',
    verdict: 'low-margin',
    says: [{ text }],
    units: 'us',
    version: 'version of a test',
    foot: 'foot of a test',
    parts: [
      {
        id: 'one',
        heading: text,
        blocks: [
          { kind: 'subheading', text },
          { kind: 'paragraph', words: [{ text }, { text, voice: 'given' }, { text, voice: 'wind', strong: true }] },
          { kind: 'paragraph', small: true, words: [{ text }] },
          { kind: 'list', items: [text, text] },
          { kind: 'caution', severity: 'verdict', says: text, action: text },
          { kind: 'caution', severity: 'standing', says: text },
          { kind: 'caution', severity: 'line', says: text },
          { kind: 'facts', rows: [{ label: text, words: { text, voice: 'given' }, note: text }] },
          {
            kind: 'table',
            caption: text,
            columns: [
              { head: text },
              { head: 'number', unit: 'lbf', numeric: true, voice: 'wind' },
              { head: 'verdict' },
            ],
            rows: (['within', 'low-margin', 'over', 'open'] as const).map((mark) => [
              { text },
              { text: '1,234.5' },
              { text: mark, mark },
            ]),
            totals: [[{ text }, { text: '4,938' }, { text: '' }]],
          },
          {
            kind: 'drawing',
            name: 'one',
            title: text,
            svg: '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 440 40" font-family="serif"><text x="1" y="20" fill="#211c15">drawn</text></svg>',
            alternative: text,
          },
          { kind: 'blanks', rows: [{ label: text, filled: text }, { label: 'b', wide: true }, { label: 'c' }] },
          { kind: 'ticks', items: [text, text, text] },
          { kind: 'remarks', label: text, lines: 3 },
          { kind: 'seal', label: text },
          { kind: 'plan', json: JSON.stringify({ text, list: Array.from({ length: 400 }, () => 1) }, null, 2) },
        ],
      },
      {
        id: 'working',
        heading: 'Working',
        blocks: formulas.slice(0, steps).map((formula) => ({
          kind: 'step',
          symbol: formula.symbol,
          title: text,
          expression: formula.expression,
          inputs: formula.variables.map(({ symbol, meaning }) => ({ symbol, words: `1 (${meaning})` })),
          value: '1.234',
          source: text,
          fromMemory: formula.cite.known === 'memory',
          note: text,
        })),
      },
    ],
  };
}
