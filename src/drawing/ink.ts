import { type Attributes, type Child, coordinate, element, type Svg } from './svg.ts';

/** Inks of the sheet; a page may set the custom property of the same name. */
const INKS = {
  paper: '#f8f3e7',
  'paper-deep': '#efe7d3',
  ink: '#211c15',
  'ink-soft': '#5a5041',
  'rule-firm': '#857960',
  rule: '#cbbfa5',
  wind: '#17557c',
  over: '#a52a17',
} as const;

export type Ink = keyof typeof INKS;

/** Width of every drawing; at 390 px on a screen its lettering is still 11 px high. */
export const WIDTH = 440;
export const LETTER = 12.5;
export const LINE = 15;

const SERIF = "'Sheet Serif', Charter, 'Iowan Old Style', Cambria, 'DejaVu Serif', serif";

/** Always the same text, so that a content policy can name it by its hash; colours stand as attributes as well. */
export const DRAWING_STYLE = Object.entries(INKS)
  .map(
    ([name, colour]) =>
      `.survey .s-${name}{stroke:var(--${name},${colour})}.survey .f-${name}{fill:var(--${name},${colour})}`,
  )
  .join('');

interface Pen {
  readonly line?: Ink;
  readonly width?: number;
  readonly dash?: string;
  readonly fill?: Ink;
  readonly opacity?: number;
}

/** The attributes of a stroke, a fill or both. */
export function pen({ line, width, dash, fill, opacity }: Pen): Attributes {
  const classes = [...(line ? [`s-${line}`] : []), ...(fill ? [`f-${fill}`] : [])];
  return {
    class: classes.join(' '),
    fill: fill ? INKS[fill] : 'none',
    ...(opacity === undefined ? {} : { 'fill-opacity': opacity }),
    ...(line ? { stroke: INKS[line], 'stroke-width': width ?? 1 } : {}),
    ...(dash === undefined ? {} : { 'stroke-dasharray': dash }),
  };
}

export interface Lettering {
  readonly ink?: Ink;
  readonly anchor?: 'start' | 'middle' | 'end';
  readonly italic?: boolean;
  readonly bold?: boolean;
  readonly halo?: boolean;
  readonly size?: number;
  readonly transform?: string;
}

/** One line of text; `halo` keeps it clear of lines beneath. */
export function lettering(x: number, y: number, text: Child, look: Lettering = {}): Svg {
  const { ink = 'ink', anchor = 'start', italic, bold, halo, size = LETTER, transform } = look;
  return element(
    'text',
    {
      x,
      y,
      'font-size': size,
      class: `f-${ink}${halo ? ' s-paper' : ''}`,
      fill: INKS[ink],
      ...(anchor === 'start' ? {} : { 'text-anchor': anchor }),
      ...(italic ? { 'font-style': 'italic' } : {}),
      ...(bold ? { 'font-weight': '600' } : {}),
      ...(halo ? { stroke: INKS.paper, 'stroke-width': 4, 'stroke-linejoin': 'round', 'paint-order': 'stroke' } : {}),
      transform,
    },
    text,
  );
}

/** A run within a line of text, in another ink or weight. */
export function run(text: string, look: Pick<Lettering, 'ink' | 'italic' | 'bold'>): Svg {
  const { ink = 'ink', italic, bold } = look;
  return element(
    'tspan',
    {
      class: `f-${ink}`,
      fill: INKS[ink],
      ...(italic ? { 'font-style': 'italic' } : {}),
      ...(bold ? { 'font-weight': '600' } : {}),
    },
    text,
  );
}

/** A whole drawing on its paper: named, described, of one width. */
export function sheet(title: string, description: string, height: number, ...children: readonly Child[]): string {
  const drawn = element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `0 0 ${WIDTH} ${coordinate(height)}`,
      width: WIDTH,
      height,
      role: 'img',
      class: 'survey',
      'font-family': SERIF,
      'font-variant-numeric': 'lining-nums tabular-nums',
      'stroke-linecap': 'round',
      'stroke-linejoin': 'round',
    },
    element('title', {}, title),
    element('desc', {}, description),
    { markup: `<style>${DRAWING_STYLE}</style>` },
    element('rect', { width: WIDTH, height, ...pen({ fill: 'paper' }) }),
    ...children,
  );
  return drawn.markup;
}

/** Short strokes on the side of a line where one cannot go. */
export function hachures(
  from: readonly [number, number],
  to: readonly [number, number],
  lean: readonly [number, number],
  ink: Ink = 'ink',
  spacing = 7,
): Svg {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const count = Math.floor(length / spacing);
  const strokes = Array.from({ length: count }, (_, index) => {
    const share = (index + 0.5) / count;
    const x = from[0] + (to[0] - from[0]) * share;
    const y = from[1] + (to[1] - from[1]) * share;
    return `M${coordinate(x)} ${coordinate(y)}L${coordinate(x + lean[0])} ${coordinate(y + lean[1])}`;
  });
  return element('path', { d: strokes.join('') || 'M0 0', ...pen({ line: ink, width: 0.8 }) });
}
