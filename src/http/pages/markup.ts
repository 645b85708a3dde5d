import { escapedMarks } from '../../words/index.ts';
import { type Child, type Markup, templatesBy } from '../../worksheet/index.ts';

export type { Markup };

/** Markup of a page from a template. What came is shown as it came: a form sends it again unchanged. */
export const markup: (parts: TemplateStringsArray, ...children: readonly Child[]) => Markup = templatesBy(escapedMarks);
