import { escapedMarks } from '../words/index.ts';

/** A piece of markup that is already safe to stand in a drawing. */
export interface Svg {
  readonly markup: string;
}

/** A child of an element; a bare string is text and gets escaped. */
export type Child = Svg | string | undefined | readonly Child[];

export type Attributes = Readonly<Record<string, string | number | undefined>>;

/** What XML cannot hold, and marks that turn the reading direction of the text after them. */
const UNFIT =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for
  /[\u0000-\u001f\u007f-\u009f\u200e\u200f\u202a-\u202e\u2066-\u2069\ufffe\uffff]/gu;

/** Text from anywhere as it may stand in markup; control characters become spaces. */
export function escaped(text: string): string {
  return escapedMarks(text.toWellFormed().replace(UNFIT, ' '));
}

/** A coordinate to a hundredth; a drawing with a place that is no number must not leave the room. */
export function coordinate(value: number): string {
  if (!Number.isFinite(value)) throw new Error(`a drawing was given the coordinate ${value}`);
  return String(Math.round(value * 100) / 100 + 0);
}

/** One element with escaped attributes and children. */
export function element(name: string, attributes: Attributes, ...children: readonly Child[]): Svg {
  const given = Object.entries(attributes).flatMap(([key, value]) => {
    if (value === undefined) return [];
    return [` ${key}="${typeof value === 'number' ? coordinate(value) : escaped(value)}"`];
  });
  const inner = markupOf(children);
  return { markup: `<${name}${given.join('')}${inner === '' ? '/>' : `>${inner}</${name}>`}` };
}

function markupOf(child: Child): string {
  if (child === undefined) return '';
  if (typeof child === 'string') return escaped(child);
  if ('markup' in child) return child.markup;
  return child.map(markupOf).join('');
}

/** Several things drawn together. */
export function group(attributes: Attributes, ...children: readonly Child[]): Svg {
  return element('g', attributes, ...children);
}

export type Point = readonly [number, number];

/** The `d` of a line through points. */
export function through(points: readonly Point[], closed = false): string {
  const steps = points.map(([x, y], index) => `${index === 0 ? 'M' : 'L'}${coordinate(x)} ${coordinate(y)}`);
  return steps.join('') + (closed ? 'Z' : '');
}
