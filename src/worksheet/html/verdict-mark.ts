import type { Verdict } from '../../margins/index.ts';
import { element, type Markup } from './element.ts';

const SHAPES: Readonly<Record<Verdict, readonly Markup[]>> = {
  within: [
    element('path', { class: 'bar', d: 'M1.5 4h15' }),
    element('circle', { class: 'dot', cx: 9, cy: 13.4, r: 3 }),
  ],
  'low-margin': [
    element('path', { class: 'bar', d: 'M1.5 4h15' }),
    element('circle', { class: 'dot', cx: 9, cy: 7.4, r: 3 }),
  ],
  over: [
    element('path', { class: 'bar', d: 'M1.5 10.5h15' }),
    element('path', { class: 'beyond', d: 'M9 .6l4.2 7.6H4.8z' }),
  ],
  open: [element('path', { class: 'gap', d: 'M1.5 4h15' }), element('circle', { class: 'gap', cx: 9, cy: 12, r: 3.2 })],
};

/** The bar is what may be asked, the dot is what is asked; the word always stands beside it. */
export function verdictMark(verdict: Verdict): Markup {
  return element(
    'svg',
    { class: 'mark', viewBox: '0 0 18 18', 'aria-hidden': 'true', focusable: 'false' },
    ...SHAPES[verdict],
  );
}
