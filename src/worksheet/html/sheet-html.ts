import type { Sheet, SheetPart } from '../sheet/sheet.ts';
import { blocksHtml } from './block-html.ts';
import { type Child, element, type Markup } from './element.ts';
import { verdictMark } from './verdict-mark.ts';

/** Where a page finds what belongs to it. */
export interface PageAddresses {
  readonly styles: readonly string[];
  readonly icon: string;
  /** The root of the service. */
  readonly home: string;
}

/** A worksheet as a whole page: read without script, by ear, on a phone, in the dark and on paper. */
export function sheetHtml(sheet: Sheet, { styles, icon, home }: PageAddresses): string {
  const page = element(
    'html',
    { lang: 'en' },
    element(
      'head',
      {},
      element('meta', { charset: 'utf-8' }),
      element('meta', { name: 'viewport', content: 'width=device-width, initial-scale=1' }),
      element('meta', { name: 'robots', content: 'noindex' }),
      element('title', {}, `${sheet.title}: ${sheet.subject}`),
      element('link', { rel: 'icon', href: icon, type: 'image/svg+xml' }),
      ...styles.map((href) => element('link', { rel: 'stylesheet', href })),
    ),
    element(
      'body',
      {},
      element(
        'div',
        { class: 'sheet worksheet' },
        element(
          'header',
          { class: 'masthead' },
          element('a', { class: 'name', href: home }, 'Gustworthy'),
          element('p', {}, sheet.subject),
          element('p', { class: 'version' }, sheet.version),
        ),
        element(
          'main',
          {},
          element(
            'div',
            { class: 'title' },
            element('h1', {}, sheet.title),
            element('p', { class: 'says' }, ...saysHtml(sheet)),
          ),
          contents(sheet.parts),
          ...sheet.parts.map(partHtml),
        ),
        element('footer', { class: 'foot' }, element('p', {}, sheet.foot)),
      ),
    ),
  );
  return `<!doctype html>\n${page.markup}\n`;
}

function contents(parts: readonly SheetPart[]): Markup {
  return element(
    'nav',
    { class: 'contents', 'aria-label': 'Parts of this sheet' },
    element('ol', {}, ...parts.map(({ id, heading }) => element('li', {}, element('a', { href: `#${id}` }, heading)))),
  );
}

function partHtml({ id, heading, blocks }: SheetPart): Markup {
  return element(
    'section',
    { id, class: `part part-${id}`, 'aria-labelledby': `${id}-heading` },
    element('h2', { class: 'head', id: `${id}-heading` }, heading),
    ...blocksHtml(blocks, id),
  );
}

/** The mark, the verdict in weight, the wind in its own voice. */
function saysHtml({ verdict, says }: Sheet): readonly Child[] {
  const kind = verdict === 'over' ? 'verdict over' : 'verdict';
  const pieces = says.map(({ text, as }): Child => {
    if (as === undefined) return text;
    return as === 'wind'
      ? element('span', { class: 'wind' }, text)
      : element('span', { class: kind }, verdictMark(verdict), text);
  });
  return says.some(({ as }) => as === 'verdict')
    ? pieces
    : [element('span', { class: kind }, verdictMark(verdict)), ...pieces];
}
