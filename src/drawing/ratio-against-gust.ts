import { displayValue, Refusal } from '../foundation/index.ts';
import { type Assessment, assess, type Check } from '../margins/index.ts';
import { drawnName, inWords, ratioFigures } from '../words/index.ts';
import { levelAxis, scaleOf, uprightAxis } from './axes.ts';
import { hachures, LINE, lettering, pen, sheet, WIDTH } from './ink.ts';
import { placed } from './lane.ts';
import { element, group, type Point, type Svg, through } from './svg.ts';
import { planSpeedWords, unitOf, wrapped } from './words.ts';

const LEFT = 42;
const RIGHT = 300;
const TOP = 66;
const FOOT = 386;
const LANE = RIGHT + 22;
const PIECES = 22;
/** More curves than can be told apart by weight and dash are only listed. */
const MOST_CURVES = 6;

/** One check's ratio in winds of several speeds. */
export interface UseCurve {
  readonly check: Check;
  readonly points: readonly { readonly speed: number; readonly ratio: number }[];
}

/**
 * The ratio of every check that feels the wind, the plan checked anew at each speed: no curve is guessed between its points.
 * Speeds are in the basis of the plan, as is the site's own.
 */
export function ratioCurves({ input, checks }: Assessment): readonly UseCurve[] {
  const felt = checks.filter((check) => check.result?.holdsTo && Number.isFinite(check.result.ratio));
  const { site } = input;
  const far = Math.max(1, ...felt.map((check) => (check.result?.holdsTo?.design ?? 0) / site.speed));
  const most = site.speed * Math.min(1.08 * far, 2);
  const { climate: _, ice: __, ...plain } = site;
  const found = felt.map((check) => ({ check, points: [] as { speed: number; ratio: number }[] }));
  const speeds = Array.from({ length: PIECES + 1 }, (_step, index) => {
    const from = 0.35 * site.speed;
    return from + ((most - from) * index) / PIECES;
  });
  for (const speed of [...speeds, site.speed].sort((a, b) => a - b)) {
    const there = checksAt({ ...input, site: { ...plain, speed } });
    for (const { check, points } of found) {
      const ratio = there.find((each) => each.id === check.id)?.result?.ratio;
      if (ratio !== undefined && Number.isFinite(ratio)) points.push({ speed, ratio });
    }
  }
  return found;
}

function checksAt(input: Assessment['input']): readonly Check[] {
  try {
    return assess(input).checks;
  } catch (error) {
    // So little wind has no fastest mile; the curve begins above it.
    if (error instanceof Refusal) return [];
    throw error;
  }
}

function ratioHere(check: Check): number {
  return check.result?.ratio ?? 0;
}

/** The tower is always among the curves that are drawn; then the fullest. */
function rank(check: Check): number {
  return check.kind === 'tower' ? Number.POSITIVE_INFINITY : ratioHere(check);
}

const STROKES = [
  { width: 2.4, dash: undefined },
  { width: 1.3, dash: undefined },
  { width: 1.6, dash: '7 3' },
  { width: 1.6, dash: '2 3' },
  { width: 1.6, dash: '9 3 2 3' },
  { width: 0.9, dash: '4 4' },
] as const;

/** Use against the site's wind for every check: where each reaches 1, and how much room is before that. */
export function ratioAgainstGust(assessment: Assessment): string {
  const { input } = assessment;
  const { units } = input.station;
  const all = ratioCurves(assessment).filter(({ points }) => points.length > 1);
  const byRatio = [...all].sort((one, other) => rank(other.check) - rank(one.check));
  const curves = byRatio.slice(0, MOST_CURVES);
  const others = byRatio.slice(MOST_CURVES);
  const speed = (value: number) => displayValue(value, 'speed', units);
  const points = curves.flatMap((curve) => curve.points);
  const fastest = Math.max(input.site.speed * 1.15, ...points.map((each) => each.speed));
  const slowest = 0.35 * input.site.speed;
  const here = curves.map(({ check }) => check.result?.ratio ?? 0);
  const ceiling = Math.min(3, Math.max(1.4, ...here.map((ratio) => 1.15 * ratio)));
  const across = scaleOf([speed(slowest), speed(fastest)], [LEFT, RIGHT], 44);
  const up = scaleOf([0, ceiling], [FOOT, TOP], 40);
  const place = (each: { speed: number; ratio: number }): Point => [across.at(speed(each.speed)), up.at(each.ratio)];
  const kept = 1 - input.wanted.margin;
  const drawn = curves.map((curve, index) => ({
    ...curve,
    line: belowCeiling(
      curve.points.map((each) => [each.speed, each.ratio]),
      ceiling,
    ),
    stroke: STROKES[index % STROKES.length] as (typeof STROKES)[number],
  }));
  const labels = drawn
    .map((curve) => {
      const [atSpeed, atRatio] = curve.line.at(-1) as readonly [number, number];
      return {
        ...curve,
        end: place({ speed: atSpeed, ratio: atRatio }),
        words: wrapped(
          `${drawnName(curve.check)} ${ratioFigures(curve.check.result?.ratio ?? 0)}`,
          WIDTH - LANE - 6,
          3,
        ),
      };
    })
    .sort((one, other) => one.end[1] - other.end[1] || other.end[0] - one.end[0]);
  const wishes = labels.map(({ end, words }) => ({ anchor: end[1], height: words.length * LINE + 3 }));
  const lane = Math.max(FOOT + 40, TOP - 16 + wishes.reduce((sum, wish) => sum + wish.height, 0));
  const middles = placed(wishes, TOP - 16, lane);
  const siteX = across.at(speed(input.site.speed));
  const lowest = Math.max(FOOT + 54, lane + 16);
  const missing = [
    ...new Set(
      assessment.checks
        .filter((check) => !all.some((curve) => curve.check.id === check.id))
        .map((check) => drawnName(check)),
    ),
  ];
  const notes = [
    'Each point is the whole check repeated at that speed. Figures: ratio in the site wind. Above 1 is beyond the ratings, not necessarily failure.',
    ...(curves.some(
      ({ points: [first, second] }) => first && second && second.ratio - first.ratio < 1e-6 * second.ratio,
    )
      ? ['Level at its left end: there the standard’s minimum pressure governs.']
      : []),
    ...(others.length > 0
      ? [
          `Not plotted, for want of room: ${others.map(({ check }) => `${drawnName(check)} ${ratioFigures(ratioHere(check))}`).join(', ')}.`,
        ]
      : []),
    ...(missing.length > 0
      ? [
          `Not plotted (open, not a wind check, or over without wind): ${missing.slice(0, 12).join(', ')}${missing.length > 12 ? ` and ${missing.length - 12} more` : ''}.`,
        ]
      : []),
  ].flatMap((note) => wrapped(note, WIDTH - 28));
  return sheet(
    `Ratio against gust at ${input.title}`,
    describe(assessment, all),
    lowest + notes.length * LINE + 8,
    lettering(14, 18, 'Ratio against gust', { bold: true }),
    lettering(LEFT - 28, TOP - 22, 'ratio', {}),
    uprightAxis(LEFT, up, TOP, FOOT, ''),
    levelAxis(FOOT, across, LEFT, RIGHT),
    wrapped(`${unitOf('speed', units)}, ${planSpeedWords(assessment)}`, RIGHT - LEFT, 1).map((line) =>
      lettering(RIGHT, FOOT + 33, line, { ink: 'wind', italic: true, anchor: 'end' }),
    ),
    hachures([LEFT, up.at(1)], [RIGHT, up.at(1)], [4, -6]),
    element('path', {
      d: through([
        [LEFT, up.at(1)],
        [RIGHT, up.at(1)],
      ]),
      ...pen({ line: 'ink', width: 2 }),
    }),
    input.wanted.margin > 0
      ? [
          element('path', {
            d: through([
              [LEFT, up.at(kept)],
              [RIGHT, up.at(kept)],
            ]),
            ...pen({ line: 'ink-soft', width: 0.9, dash: '9 3 2 3' }),
          }),
          lettering(LEFT + 5, up.at(kept) + 14, `target ${ratioFigures(kept)}`, {
            ink: 'ink-soft',
            halo: true,
          }),
        ]
      : [],
    element('path', {
      d: through([
        [siteX, TOP - 6],
        [siteX, FOOT],
      ]),
      ...pen({ line: 'wind', width: 2.6 }),
    }),
    lettering(siteX, TOP - 26, 'site wind', { ink: 'wind', italic: true, anchor: 'middle', halo: true }),
    lettering(siteX, TOP - 12, inWords(input.site.speed, 'speed', units), {
      ink: 'wind',
      italic: true,
      anchor: 'middle',
      halo: true,
    }),
    drawn.map(({ line, stroke, check }) =>
      group(
        {},
        element('path', {
          d: through(line.map(([at, ratio]) => place({ speed: at, ratio }))),
          ...pen({ line: 'ink', width: stroke.width, ...(stroke.dash === undefined ? {} : { dash: stroke.dash }) }),
        }),
        ...((check.result?.ratio ?? 0) <= ceiling
          ? [
              element('circle', {
                cx: siteX,
                cy: up.at(check.result?.ratio ?? 0),
                r: 3.2,
                ...pen({ line: 'paper', width: 1, fill: 'ink' }),
              }),
            ]
          : []),
      ),
    ),
    labels.map((label, index) => labelOf(label, middles[index] as number)),
    ...(curves.length === 0
      ? [
          lettering((LEFT + RIGHT) / 2, up.at(0.5), 'no check to plot against wind', {
            anchor: 'middle',
            halo: true,
          }),
        ]
      : []),
    notes.map((line, index) => lettering(14, lowest + index * LINE, line, { ink: 'ink-soft' })),
  );
}

interface Labelled {
  readonly end: Point;
  readonly words: readonly string[];
  readonly check: Check;
  readonly stroke: (typeof STROKES)[number];
}

function labelOf({ end, words, check, stroke }: Labelled, middle: number): Svg {
  const over = check.verdict === 'over';
  const first = middle - ((words.length - 1) * LINE) / 2 + 4.3;
  return group(
    {},
    element('path', { d: through([end, [RIGHT + 6, middle]]), ...pen({ line: 'rule-firm', width: 0.6 }) }),
    element('path', {
      d: through([
        [RIGHT + 6, middle],
        [LANE - 3, middle],
      ]),
      ...pen({ line: 'ink', width: stroke.width, ...(stroke.dash === undefined ? {} : { dash: stroke.dash }) }),
    }),
    words.map((line, number) =>
      lettering(LANE, first + number * LINE, line, { halo: true, ink: over ? 'over' : 'ink', bold: over }),
    ),
  );
}

/** The curve up to where it leaves the drawing at its upper edge. */
function belowCeiling(points: readonly Point[], ceiling: number): readonly Point[] {
  const kept: Point[] = [];
  for (const point of points) {
    const before = kept.at(-1);
    if (point[1] > ceiling) {
      if (before) {
        const share = (ceiling - before[1]) / (point[1] - before[1]);
        kept.push([before[0] + share * (point[0] - before[0]), ceiling]);
      }
      break;
    }
    kept.push(point);
  }
  return kept.length > 0 ? kept : [[points[0]?.[0] ?? 0, ceiling]];
}

function describe({ input }: Assessment, curves: readonly UseCurve[]): string {
  const { units } = input.station;
  const told = curves.map(({ check }) => {
    const holds = check.result?.holdsTo;
    return `${drawnName(check)} ${ratioFigures(check.result?.ratio ?? 0)}${holds ? `, reaching 1 at ${inWords(holds.design, 'speed', units)}` : ''}`;
  });
  return told.length > 0
    ? `Ratio in the ${inWords(input.site.speed, 'speed', units)} site wind: ${told.join('; ')}.`
    : 'No check to plot against wind.';
}
