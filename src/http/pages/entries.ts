import { type Markup, markup } from './markup.ts';

/** One thing of a page and what is said of it. */
export interface Entry {
  /** Where an address may lead to. */
  readonly id?: string;
  readonly name: Markup;
  readonly says: Markup;
}

/** Things and what is said of them, side by side. */
export function entryList(entries: readonly Entry[]): Markup | undefined {
  if (entries.length === 0) return undefined;
  const at = (id: string | undefined) => (id === undefined ? undefined : markup` id="${id}"`);
  return markup`<dl class="fields">
${entries.map(({ id, name, says }) => markup`<div${at(id)}><dt>${name}</dt><dd>${says}</dd></div>\n`)}</dl>`;
}

/** Where the parts of a page are. */
export function contents(parts: readonly (readonly [id: string, title: string])[]): Markup {
  return markup`<nav class="contents" aria-label="On this page"><div class="wide"><ul>${parts.map(
    ([id, title]) => markup`<li><a href="#${id}">${title}</a></li>`,
  )}</ul></div></nav>`;
}
