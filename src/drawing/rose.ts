import { addToHeadingSum, emptyHeadingSum, type HeadingSum, valueAtHeading, worstHeading } from '../areas/index.ts';
import { displayValue } from '../foundation/index.ts';
import type { Assessment, WindLoadRow } from '../margins/index.ts';
import type { Load, WindItem } from '../structure/index.ts';
import { figures, inWords } from '../words/index.ts';
import { roundStep } from './axes.ts';
import { LINE, lettering, pen, sheet, WIDTH } from './ink.ts';
import { element, group, type Point, type Svg, through } from './svg.ts';
import { degrees, unitOf, wrapped } from './words.ts';

const X = WIDTH / 2;
const Y = 232;
const R = 150;

/** What hangs on a tower, as its groups meet the wind. */
export interface Groups {
  readonly turning: HeadingSum;
  readonly fixed: HeadingSum;
  /** Alike from all sides, or at its own worst [m²]. */
  readonly still: number;
  readonly names: {
    readonly turning: readonly string[];
    readonly fixed: readonly string[];
    readonly still: readonly string[];
  };
}

/** Effective areas of the groups as sums over the wind's heading. */
export function groupsOf({ model, windLoads }: Assessment): Groups {
  const turning = emptyHeadingSum();
  const fixed = emptyHeadingSum();
  let still = 0;
  const names = { turning: [] as string[], fixed: [] as string[], still: [] as string[] };
  model.appurtenances.forEach((item, number) => {
    const row = windLoads.rows[number] as WindLoadRow;
    const { turn, heading } = item as WindItem;
    if (turn === 'turning' || turn === 'fixed') {
      addToHeadingSum(turn === 'turning' ? turning : fixed, row.front, row.side, heading);
      names[turn].push(item.name);
    } else {
      still += Math.max(row.front, row.side);
      names.still.push(item.name);
    }
  });
  return { turning, fixed, still, names };
}

/** The tower's loads from above: effective area by the heading the wind comes from, what turns and what is fixed. */
export function rose(assessment: Assessment): string {
  const { input } = assessment;
  const { units } = input.station;
  const groups = groupsOf(assessment);
  const largest = (sum: HeadingSum) => sum.mean + Math.hypot(sum.cosine, sum.sine);
  const most = Math.max(largest(groups.turning), largest(groups.fixed), groups.still);
  const shown = (area: number) => displayValue(area, 'area', units);
  const ring = most > 0 ? roundStep(shown(most) / 3) : 1;
  const rings = most > 0 ? Math.ceil(shown(most) / ring - 1e-9) : 2;
  const radius = (area: number) => (shown(area) / (ring * rings)) * R;
  const area = (value: number) => inWords(value, 'area', units);
  const legend: { words: string; sign: (y: number) => Svg }[] = [];
  const add = (words: string, sign: (y: number) => Svg) => legend.push({ words, sign });
  const { names } = groups;
  if (names.turning.length > 0) {
    add(`${worstWords(groups.turning, area, 'rotating')} ${listed(names.turning)}`, (y) =>
      element('rect', {
        x: 16,
        y: y - 9,
        width: 24,
        height: 10,
        ...pen({ line: 'wind', width: 1.6, fill: 'wind', opacity: 0.14 }),
      }),
    );
  }
  if (names.fixed.length > 0) {
    add(`${worstWords(groups.fixed, area, 'fixed')} ${listed(names.fixed)}`, (y) =>
      element('path', {
        d: through([
          [16, y - 4],
          [40, y - 4],
        ]),
        ...pen({ line: 'ink', width: 1.6, dash: '5 3' }),
      }),
    );
  }
  if (names.still.length > 0) {
    add(`same from all sides, or at its own worst, ${area(groups.still)}: ${listed(names.still)}`, (y) =>
      element('path', {
        d: through([
          [16, y - 4],
          [40, y - 4],
        ]),
        ...pen({ line: 'ink-soft', width: 1.2, dash: '1 3.5' }),
      }),
    );
  }
  let y = Y + R + 44;
  const told = legend.map(({ words, sign }) => {
    const lines = wrapped(words, WIDTH - 62, 5);
    const at = y;
    y += lines.length * LINE + 5;
    return group(
      {},
      sign(at),
      lines.map((line, index) => lettering(48, at + index * LINE, line)),
    );
  });
  const notes = wrapped(
    'Distance from the middle: effective area by wind heading. Rotating loads are drawn with the rotator at north. They turn freely, so their largest area adds to the largest of fixed loads.',
    WIDTH - 28,
  );
  const foot = y + notes.length * LINE + 4;
  return sheet(
    `Areas from above at ${input.title}`,
    legend.length > 0 ? `${legend.map(({ words }) => words).join('. ')}.` : 'No loads on this tower.',
    foot,
    lettering(14, 18, 'From above', { bold: true }),
    lettering(14, 34, `effective area, ${unitOf('area', units)}`, { ink: 'ink-soft' }),
    compass(rings, ring),
    ...(groups.still > 0
      ? [
          element('circle', {
            cx: X,
            cy: Y,
            r: radius(groups.still),
            ...pen({ line: 'ink-soft', width: 1.2, dash: '1 3.5' }),
          }),
        ]
      : []),
    planOfBeams(input.station.loads),
    ...(names.turning.length > 0
      ? [
          element('path', {
            d: outlineOf(groups.turning, radius),
            ...pen({ line: 'wind', width: 1.8, fill: 'wind', opacity: 0.14 }),
          }),
        ]
      : []),
    ...(names.fixed.length > 0
      ? [element('path', { d: outlineOf(groups.fixed, radius), ...pen({ line: 'ink', width: 1.6, dash: '5 3' }) })]
      : []),
    names.turning.length > 0 ? worstMarks(groups.turning, radius, 'wind') : undefined,
    names.fixed.length > 0 ? worstMarks(groups.fixed, radius, 'ink') : undefined,
    ...(legend.length === 0 ? [lettering(X, Y + 4, 'no loads', { anchor: 'middle', halo: true })] : []),
    told,
    notes.map((line, index) => lettering(14, y + 6 + index * LINE, line, { ink: 'ink-soft' })),
  );
}

function listed(names: readonly string[]): string {
  const first = names.slice(0, 8).join(', ');
  return names.length > 8 ? `${first} and ${names.length - 8} more` : first;
}

function moves(sum: HeadingSum): boolean {
  return Math.hypot(sum.cosine, sum.sine) > 1e-9 * sum.mean;
}

function worstWords(sum: HeadingSum, area: (value: number) => string, kind: 'rotating' | 'fixed'): string {
  const worst = area(sum.mean + Math.hypot(sum.cosine, sum.sine));
  if (!moves(sum)) return `${kind}, ${worst} from any heading:`;
  const heading = worstHeading(sum);
  return `${kind}, worst ${worst} from ${degrees(heading)} or ${degrees(heading + Math.PI)}:`;
}

function towards(heading: number, distance: number): Point {
  return [X + distance * Math.sin(heading), Y - distance * Math.cos(heading)];
}

function outlineOf(sum: HeadingSum, radius: (area: number) => number): string {
  const points = Array.from({ length: 180 }, (_, index) => {
    const heading = (index * Math.PI) / 90;
    return towards(heading, radius(Math.max(0, valueAtHeading(sum, heading))));
  });
  return through(points, true);
}

function worstMarks(sum: HeadingSum, radius: (area: number) => number, ink: 'wind' | 'ink'): Svg {
  if (!moves(sum)) return group({});
  const heading = worstHeading(sum);
  return group(
    {},
    [heading, heading + Math.PI].map((each) => {
      const [x, y] = towards(each, radius(valueAtHeading(sum, each)));
      return group(
        {},
        element('circle', { cx: x, cy: y, r: 5, ...pen({ line: ink, width: 1.6, fill: 'paper' }) }),
        element('circle', { cx: x, cy: y, r: 1.8, ...pen({ fill: ink }) }),
      );
    }),
  );
}

function compass(rings: number, ring: number): Svg {
  const every = Array.from({ length: 36 }, (_, index) => {
    const heading = (index * Math.PI) / 18;
    return through([towards(heading, R), towards(heading, R + (index % 9 === 0 ? 9 : index % 3 === 0 ? 6 : 3))]);
  });
  return group(
    {},
    Array.from({ length: rings }, (_, index) => {
      const r = (R * (index + 1)) / rings;
      const last = index === rings - 1;
      return element('circle', { cx: X, cy: Y, r, ...pen({ line: last ? 'rule-firm' : 'rule', width: 0.8 }) });
    }),
    element('path', { d: every.join(''), ...pen({ line: 'ink-soft', width: 0.8 }) }),
    (['N', 'E', 'S', 'W'] as const).map((letter, index) => {
      const [x, y] = towards((index * Math.PI) / 2, R + 19);
      return lettering(x, y + 4.5, letter, { anchor: 'middle', bold: letter === 'N' });
    }),
    // Figures on the rings stand on a bearing of 20 degrees, clear of the letters.
    Array.from({ length: rings }, (_, index) => {
      const [x, y] = towards(Math.PI / 9, (R * (index + 1)) / rings);
      return lettering(x + 3, y + 4, figures(ring * (index + 1)), { ink: 'ink-soft', halo: true });
    }),
  );
}

/** Plans of the beams whose tubes are given, to one scale of their own, facing north. */
function planOfBeams(loads: readonly Load[]): Svg {
  const beams = loads.flatMap((load) => {
    const { shape } = load;
    if (shape.kind !== 'tubes') return [];
    const half = (along: 'boom' | 'element') =>
      shape.rows
        .filter((row) => row.along === along)
        .map((row) => row.pieces.reduce((sum, each) => sum + each.length, 0) / 2);
    const elements = shape.rows.flatMap((row) =>
      row.along === 'element'
        ? Array.from(
            { length: Math.min(row.count, 60) },
            () => row.pieces.reduce((sum, each) => sum + each.length, 0) / 2,
          )
        : [],
    );
    return [{ boom: Math.max(0, ...half('boom'), (load.boom ?? 0) / 2), elements, heading: load.heading ?? 0 }];
  });
  const reach = Math.max(0, ...beams.map(({ boom, elements }) => Math.hypot(boom, Math.max(0, ...elements))));
  if (reach === 0) return group({});
  const scale = (0.34 * R) / reach;
  return group(
    {},
    beams.map(({ boom, elements, heading }) => {
      const lines = elements.map((half, index) => {
        const at = elements.length === 1 ? 0 : -boom + (2 * boom * index) / (elements.length - 1);
        return through([
          [-half * scale, -at * scale],
          [half * scale, -at * scale],
        ]);
      });
      return group(
        { transform: `translate(${X} ${Y}) rotate(${((heading * 180) / Math.PI).toFixed(2)})` },
        element('path', {
          d: through([
            [0, boom * scale],
            [0, -boom * scale],
          ]),
          ...pen({ line: 'ink', width: 2.2 }),
        }),
        ...(lines.length > 0 ? [element('path', { d: lines.join(''), ...pen({ line: 'ink', width: 1.1 }) })] : []),
      );
    }),
  );
}
