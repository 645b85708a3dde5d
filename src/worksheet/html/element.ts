/** Markup that is whole and safe to stand in a page. */
export interface Markup {
  readonly markup: string;
}

/** A bare string is text, and gets escaped. */
export type Child = Markup | string | undefined | readonly Child[];

export type Attributes = Readonly<Record<string, string | number | boolean | undefined>>;

const ESCAPED: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** What a page cannot show, and marks that turn the direction of everything after them; line feeds may stay. */
const UNFIT =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for
  /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069\ufffe\uffff]/gu;

/** Text from anywhere as it may stand in a page; what has no letter becomes a mark that something stood there. */
export function escaped(text: string): string {
  return text
    .toWellFormed()
    .replace(UNFIT, '\ufffd')
    .replace(/[&<>"']/g, (mark) => ESCAPED[mark] as string);
}

const VOID = new Set(['meta', 'link', 'input', 'br']);

/** One element with escaped attributes and children; an attribute that is true stands alone, one that is false not. */
export function element(name: string, attributes: Attributes, ...children: readonly Child[]): Markup {
  const given = Object.entries(attributes).flatMap(([key, value]) => {
    if (value === undefined || value === false) return [];
    return [value === true ? ` ${key}` : ` ${key}="${escaped(String(value))}"`];
  });
  const open = `<${name}${given.join('')}>`;
  return { markup: VOID.has(name) ? open : `${open}${markupOf(children)}</${name}>` };
}

/** Several pieces as they stand side by side. */
export function markupOf(child: Child): string {
  if (child === undefined) return '';
  if (typeof child === 'string') return escaped(child);
  if ('markup' in child) return child.markup;
  return child.map(markupOf).join('');
}
