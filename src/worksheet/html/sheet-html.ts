import type { Sheet, SheetPart } from '../sheet/sheet.ts';
import { blocksHtml } from './block-html.ts';
import { type Child, html, type Markup } from './markup.ts';
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
  const page = html`<!doctype html>
<html lang="en"><head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="robots" content="noindex">
<title>${sheet.title}: ${sheet.subject}</title>
<link rel="icon" href="${icon}" type="image/svg+xml">
${styles.map((href) => html`<link rel="stylesheet" href="${href}">`)}
</head>
<body><div class="sheet worksheet">
<header class="masthead"><a class="name" href="${home}">Gustworthy</a><p>${sheet.subject}</p><p class="version">${sheet.version}</p></header>
<main>
<div class="title"><h1>${sheet.title}</h1><p class="says">${saysHtml(sheet)}</p></div>
${contents(sheet.parts)}
${sheet.parts.map(partHtml)}
</main>
<footer class="foot"><p>${sheet.foot}</p></footer>
</div></body></html>
`;
  return page.markup;
}

function contents(parts: readonly SheetPart[]): Markup {
  const entries = parts.map(({ id, heading }) => html`<li><a href="#${id}">${heading}</a></li>`);
  return html`<nav class="contents" aria-label="Parts of this sheet"><ol>${entries}</ol></nav>`;
}

function partHtml({ id, heading, blocks }: SheetPart): Markup {
  return html`<section id="${id}" class="part part-${id}" aria-labelledby="${id}-heading">
<h2 class="head" id="${id}-heading">${heading}</h2>
${blocksHtml(blocks, id)}
</section>
`;
}

/** The mark, the verdict in weight, the wind in its own voice. */
function saysHtml({ verdict, says }: Sheet): readonly Child[] {
  if (verdict === undefined) return says.map(({ text }) => text);
  const weighed = (text: string) =>
    html`<span class="${verdict === 'over' ? 'verdict over' : 'verdict'}">${verdictMark(verdict)}${text}</span>`;
  const pieces = says.map(({ text, as }): Child => {
    if (as === undefined) return text;
    return as === 'wind' ? html`<span class="wind">${text}</span>` : weighed(text);
  });
  return says.some(({ as }) => as === 'verdict') ? pieces : [weighed(''), ...pieces];
}
