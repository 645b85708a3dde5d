import { escapedMarks } from '../../words/index.ts';

/** Markup that is whole and safe to stand in a page; a class, so that nothing that came from outside can look like it. */
export class Markup {
  readonly markup: string;

  constructor(markup: string) {
    this.markup = markup;
  }
}

/** A bare string is text, and gets escaped. */
export type Child = Markup | string | number | undefined | readonly Child[];

/** What a page cannot show, and marks that turn the direction of everything after them; line feeds may stay. */
const UNFIT =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for
  /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069\ufffe\uffff]/gu;

/** Text from anywhere as it may stand in a page; what has no letter becomes a mark that something stood there. */
export function escaped(text: string): string {
  return escapedMarks(text.toWellFormed().replace(UNFIT, '\ufffd'));
}

/** A tag for templates: what is put into one comes out as letters, save what is markup already; lists are joined. */
export function templatesBy(asLetters: (text: string) => string) {
  const written = (child: Child): string => {
    if (child === undefined) return '';
    if (typeof child !== 'object') return asLetters(String(child));
    return child instanceof Markup ? child.markup : child.map(written).join('');
  };
  return (parts: TemplateStringsArray, ...children: readonly Child[]): Markup =>
    new Markup(parts.map((part, index) => (index === 0 ? part : written(children[index - 1]) + part)).join(''));
}

/** Markup of a page from a template. */
export const html = templatesBy(escaped);
