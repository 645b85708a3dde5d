import { DISPLAY_UNITS, displayValue } from '../foundation/index.ts';
import type { Assessment } from '../margins/index.ts';
import { METHOD_BY_ID } from '../methods/index.ts';
import { figures, inWords } from '../words/index.ts';
import { levelAxis, scaleOf, uprightAxis } from './axes.ts';
import { LINE, lettering, pen, sheet, WIDTH } from './ink.ts';
import { element, group, type Point, type Svg, through } from './svg.ts';
import { windBarb } from './wind-barb.ts';
import { heightSpeedWords, unitOf, wrapped } from './words.ts';

const LEFT = 42;
const RIGHT = 300;
const TOP = 74;
const FOOT = 474;
const PIECES = 80;

/** The site's velocity pressure by height, its wind beside it; without the hill where a hill counts. */
export function pressureWithHeight(assessment: Assessment): string {
  const { input, wind, heights, windRows } = assessment;
  const { units } = input.station;
  const foot = input.station.tower.foot;
  const inUnits = (pascal: number) => displayValue(pascal, 'pressure', units);
  const length = DISPLAY_UNITS[units].length.inSi;
  const ladder = Array.from({ length: PIECES + 1 }, (_, index) => (heights.overall * index) / PIECES);
  const curve = ladder.map((z) => [inUnits(wind.pressure(z)), z] as const);
  const onHill = ladder.some((z) => wind.topographicFactor(z) > 1 + 1e-9);
  // A factor on the speed inside the height law cannot be divided out for the level ground.
  const squared = METHOD_BY_ID[input.method].hill?.factorOn !== 'speed';
  const level = onHill && squared ? curve.map(([q, z]) => [q / wind.topographicFactor(z), z] as const) : [];
  const most = Math.max(...curve.map(([q]) => q));
  const across = scaleOf([0, most * 1.06], [LEFT, RIGHT], 50);
  const up = scaleOf([0, heights.overall / length], [FOOT, TOP], 36);
  const place = ([q, z]: readonly [number, number]): Point => [across.at(q), up.at(z / length)];
  const rows = windRows.filter(
    ({ height }, index) =>
      index === 0 || Math.abs(up.at(height / length) - up.at((windRows[index - 1]?.height ?? 0) / length)) > 2,
  );
  const kept: Svg[] = [];
  let last = Number.NEGATIVE_INFINITY;
  for (const row of rows) {
    const y = up.at(row.height / length);
    if (y - last < 26) continue;
    last = y;
    const q = inUnits(row.pressure);
    kept.push(
      group(
        {},
        element('circle', { cx: across.at(q), cy: y, r: 2.6, ...pen({ fill: 'wind' }) }),
        lettering(RIGHT + 10, y + 4.3, figures(q), { ink: 'wind', italic: true, halo: true }),
        windBarb(RIGHT + 52, y, 32, row.speed),
        lettering(RIGHT + 94, y + 4.3, figures(displayValue(row.speed, 'speed', units)), { ink: 'wind', italic: true }),
      ),
    );
  }
  const top = up.at(input.station.tower.top / length);
  const notes = [
    `Velocity pressure of the site's ${inWords(input.site.speed, 'speed', units)} wind, before gust effect and shape; speeds at height: ${heightSpeedWords(assessment)}.`,
    ...(level.length > 0 ? ['Dashed line: the same wind on level ground.'] : []),
    ...(onHill && !squared ? ['The hill is included in the pressure.'] : []),
  ].flatMap((note) => wrapped(note, WIDTH - 28));
  const range = `${inWords(wind.pressure(Math.max(foot, 0)), 'pressure', units)} at the base to ${inWords(wind.pressure(heights.overall), 'pressure', units)} at ${inWords(heights.overall, 'length', units)}`;
  return sheet(
    `Wind pressure with height at ${input.title}`,
    `Velocity pressure from ${range}${onHill ? '; a hill raises it' : ''}.`,
    FOOT + 52 + notes.length * LINE,
    lettering(14, 18, 'Pressure with height', { bold: true }),
    lettering(RIGHT + 10, 44, unitOf('pressure', units), { ink: 'wind', italic: true }),
    lettering(RIGHT + 52, 44, unitOf('speed', units), { ink: 'wind', italic: true }),
    uprightAxis(LEFT, up, TOP, FOOT, unitOf('length', units)),
    levelAxis(FOOT, across, LEFT, RIGHT),
    lettering(RIGHT, FOOT + 32, `pressure, ${unitOf('pressure', units)}`, { ink: 'wind', italic: true, anchor: 'end' }),
    element('path', {
      d: through([[LEFT, FOOT], ...curve.map(place), [LEFT, TOP]], true),
      ...pen({ fill: 'wind', opacity: 0.14 }),
    }),
    element('path', {
      d: through([
        [LEFT, top],
        [RIGHT, top],
      ]),
      ...pen({ line: 'rule-firm', width: 0.6, dash: '1 3' }),
    }),
    lettering(LEFT + 5, top - 4, 'tower top', { ink: 'ink-soft', halo: true }),
    ...(level.length > 0
      ? [element('path', { d: through(level.map(place)), ...pen({ line: 'ink-soft', width: 1.1, dash: '5 3' }) })]
      : []),
    element('path', { d: through(curve.map(place)), ...pen({ line: 'wind', width: 1.6 }) }),
    kept,
    notes.map((line, index) => lettering(14, FOOT + 52 + index * LINE, line, { ink: 'ink-soft' })),
  );
}
