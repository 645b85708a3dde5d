import { DISPLAY_UNITS, FOOT } from '../foundation/index.ts';
import { type Assessment, guyedForcesOf, type WindLoadRow, windAt } from '../margins/index.ts';
import { counterpoiseLoad } from '../structure/index.ts';
import { figures, inWords, ratioFigures } from '../words/index.ts';
import { roundStep, scaleOf, uprightAxis } from './axes.ts';
import { hachures, LINE, lettering, pen, run, sheet, WIDTH } from './ink.ts';
import { placed } from './lane.ts';
import { halfWidthAt, type Outline, outlinesOf, sectionOutline } from './outlines.ts';
import { element, group, type Point, type Svg, through } from './svg.ts';
import { windBarb } from './wind-barb.ts';
import { heightSpeedWords, unitOf, widthOf, wrapped } from './words.ts';

const AXIS = 34;
const TOWER = 228;
const LANE = 322;
const LANE_WIDTH = WIDTH - LANE - 6;
/** Room on either side of the tower for what reaches out. */
const SIDE = 82;
const TALLEST = 440;
const LONGEST_ARROW = 44;

/** A label of the lane: words about a thing, the wind's part of it apart. */
interface Label {
  readonly at: Point;
  readonly words: string;
  readonly wind?: string;
  readonly bold?: boolean;
}

/**
 * The tower from its side, to scale, the worst wind from the left: sections, mast, loads, lines, footing; wind barbs by
 * height, forces, the place where the ratio is largest; beneath, the same tower lowered, where it can be.
 */
export function elevation(asked: Assessment): string {
  // What the plan does not give is drawn as it is taken at worst: its wind is among the forces.
  const assessment = { ...asked, input: asked.model.input };
  const { input, windLoads, heights } = assessment;
  const { station } = input;
  const { units } = station;
  const outlines = outlinesOf(assessment);
  const reach = Math.max(0.5, ...outlines.map(({ left, right }) => Math.max(left, right)));
  const top = 62;
  const scale = Math.min(TALLEST / heights.overall, SIDE / reach);
  const ground = top + heights.overall * scale;
  const y = (z: number) => ground - z * scale;

  const tallest = windLoads.rows.filter((row) => row.kind === 'load' || row.kind === 'mast');
  const comb = combOf(assessment);
  const largest = Math.max(1e-9, ...tallest.map((row) => row.force), ...comb.map((tooth) => tooth.force));
  const perForce = LONGEST_ARROW / largest;

  const labels = labelsOf(assessment, outlines, y, scale);
  const lane = laneOf(labels, top - 20, ground - 3);
  const below = belowGround(assessment, scale, ground);
  const notes = notesOf(assessment, outlines, labels, scale);
  const legend = legendOf(assessment, scale, perForce, below.foot + 22);
  let foot = below.foot + 62;
  const lowered = loweredOf(assessment, outlines, foot + 14);
  if (lowered) foot = lowered.foot + 8;
  const listed = lane.list.map((words, index) => lettering(14, foot + 14 + index * LINE, words));
  foot += listed.length * LINE + (listed.length > 0 ? 8 : 0);
  const lines = notes.flatMap((note) => wrapped(note, WIDTH - 28));
  const told = lines.map((line, index) => lettering(14, foot + 14 + index * LINE, line, { ink: 'ink-soft' }));
  foot += lines.length * LINE + 18;

  const axis = scaleOf([0, heights.overall / inSi(assessment)], [ground, y(heights.overall)], 34);
  const barbs = axis.ticks
    .filter((tick) => tick > 0)
    .map((tick) => {
      const { speed } = windAt(assessment.wind, tick * inSi(assessment));
      return group(
        {},
        windBarb(AXIS + 10, axis.at(tick), 34, speed),
        lettering(AXIS + 12, axis.at(tick) + 13.5, figures(speed / DISPLAY_UNITS[units].speed.inSi), {
          ink: 'wind',
          italic: true,
        }),
      );
    });

  return sheet(
    `Elevation of ${input.title}`,
    describe(assessment),
    foot,
    lettering(14, 18, 'Elevation', { bold: true }),
    lettering(14, 34, `wind by height: ${heightSpeedWords(assessment)}, ${unitOf('speed', units)}; barbs in knots`, {
      ink: 'wind',
      italic: true,
    }),
    uprightAxis(AXIS, axis, y(heights.overall), ground, unitOf('length', units)),
    barbs,
    below.svg,
    group({ transform: `translate(${TOWER} ${ground.toFixed(2)})` }, standingOf(assessment, outlines, scale, 0)),
    heldBy(assessment, scale, ground),
    arrowsOf(tallest, outlines, comb, perForce, scale, y, assessment),
    counterpoiseMark(assessment, scale, y),
    hingeMark(assessment, scale, y),
    worstMark(assessment, y),
    lane.svg,
    legend,
    lowered?.svg,
    listed,
    told,
  );
}

function inSi(assessment: Assessment): number {
  return DISPLAY_UNITS[assessment.input.station.units].length.inSi;
}

/** Everything built, in the tower's own axes, above a height. */
function standingOf(
  { input }: Assessment,
  outlines: readonly Outline[],
  scale: number,
  from: number,
  to = Number.POSITIVE_INFINITY,
): Svg {
  const { tower, mast, cables } = input.station;
  const sections = tower.sections.map((section) => sectionOutline(section, scale, from, Math.min(to, section.high)));
  if (to < Number.POSITIVE_INFINITY) return group({}, sections);
  const lines = cables
    .filter((each) => each.high > from)
    .map((each) => {
      const low = Math.max(each.low, from);
      const x = (halfWidthAt(input.station, (each.low + each.high) / 2) + 0.06) * scale;
      const pair = [x + 1.5, x + 3.5]
        .map((at) =>
          through([
            [at, -low * scale],
            [at, -each.high * scale],
          ]),
        )
        .join('');
      return element('path', { d: pair, ...pen({ line: 'ink', width: 0.8 }) });
    });
  return group(
    {},
    sections,
    lines,
    mastOutline(mast, tower.top, scale),
    outlines.map((each) => each.draw(scale)),
  );
}

function mastOutline(mast: Assessment['input']['station']['mast'], top: number, scale: number): Svg | undefined {
  if (!mast) return undefined;
  const foot = mast.foot ?? top;
  const marks: Svg[] = [
    element('path', {
      d: through([
        [0, -foot * scale],
        [0, -mast.tip * scale],
      ]),
      ...pen({ line: 'ink', width: 2.4 }),
    }),
  ];
  if (mast.bearing !== undefined) {
    const at = -mast.bearing * scale;
    marks.push(
      element('path', {
        d: through(
          [
            [-6, at],
            [0, at - 7],
            [6, at],
          ],
          true,
        ),
        ...pen({ fill: 'ink' }),
      }),
    );
  }
  if (mast.foot !== undefined) {
    marks.push(element('rect', { x: -4, y: -foot * scale - 4, width: 8, height: 8, ...pen({ fill: 'ink' }) }));
  }
  return group({}, marks);
}

/** Wind on the tower itself and on its lines, gathered for every five feet or metre and a half. */
function combOf({ input, windLoads }: Assessment): readonly { readonly z: number; readonly force: number }[] {
  const { tower, units } = input.station;
  const rows = windLoads.rows.filter((row) => row.kind === 'tower' || row.kind === 'lines');
  if (rows.length === 0) return [];
  const wanted = units === 'us' ? 5 * FOOT : 1.5;
  const count = Math.min(24, Math.max(1, Math.round((tower.top - tower.foot) / wanted)));
  const step = (tower.top - tower.foot) / count;
  return Array.from({ length: count }, (_, index) => {
    const low = tower.foot + index * step;
    const force = rows.reduce((sum, row) => {
      const shared = Math.min(row.high, low + step) - Math.max(row.low, low);
      return shared > 0 && row.high > row.low ? sum + (row.force * shared) / (row.high - row.low) : sum;
    }, 0);
    return { z: low + step / 2, force };
  });
}

function arrow(tip: Point, length: number): Svg {
  const [x, y] = tip;
  const head = Math.min(7, length);
  return group(
    {},
    element('path', {
      d: through([
        [x - length, y],
        [x - head / 2, y],
      ]),
      ...pen({ line: 'wind', width: 1.3 }),
    }),
    element('path', {
      d: through(
        [
          [x, y],
          [x - head, y - 3],
          [x - head, y + 3],
        ],
        true,
      ),
      ...pen({ fill: 'wind' }),
    }),
  );
}

function arrowsOf(
  rows: readonly WindLoadRow[],
  outlines: readonly Outline[],
  comb: readonly { readonly z: number; readonly force: number }[],
  perForce: number,
  scale: number,
  y: (z: number) => number,
  { input }: Assessment,
): Svg {
  const onThings = rows.flatMap((row) => {
    const length = row.force * perForce;
    if (length < 1) return [];
    const outline = row.kind === 'load' ? outlines.find((each) => each.load.at === row.at) : undefined;
    const middle = (row.low + row.high) / 2;
    const inside = row.kind === 'mast' && row.high <= input.station.tower.top ? halfWidthAt(input.station, middle) : 0;
    const left = outline ? Math.max(0, outline.left) : inside;
    const clear = outline?.sizeless ? 9 : 4;
    return [arrow([TOWER - left * scale - clear, y(middle)], length)];
  });
  const tips = comb.map(({ z, force }) => ({
    tip: [TOWER - halfWidthAt(input.station, z) * scale - 4, y(z)] as const,
    length: force * perForce,
  }));
  const tails = tips.map(({ tip, length }): Point => [tip[0] - length, tip[1]]);
  return group(
    {},
    tips.filter(({ length }) => length >= 1).map(({ tip, length }) => arrow(tip, length)),
    ...(tails.length > 1 ? [element('path', { d: through(tails), ...pen({ line: 'wind', width: 0.8 }) })] : []),
    onThings,
  );
}

/** A square as large as it is counted in the wind. */
function counterpoiseMark({ input }: Assessment, scale: number, y: (z: number) => number): Svg | undefined {
  const load = counterpoiseLoad(input.station.tower);
  if (load?.shape.kind !== 'plate') return undefined;
  const side = load.shape.wide * scale;
  const [left, top] = [TOWER - side / 2, y(load.low) - side / 2];
  return element('rect', {
    x: left,
    y: top,
    width: side,
    height: side,
    ...pen({ line: 'ink', width: 1, fill: 'paper' }),
  });
}

function hingeMark({ input }: Assessment, scale: number, y: (z: number) => number): Svg | undefined {
  const { hingeHeight } = input.station.tower;
  if (hingeHeight === undefined) return undefined;
  const cx = TOWER + halfWidthAt(input.station, hingeHeight) * scale;
  return element('circle', { cx, cy: y(hingeHeight), r: 3.2, ...pen({ line: 'ink', width: 1.5, fill: 'paper' }) });
}

/** The comparison that the verdict of the tower comes from. */
const worstOfTower = ({ parts }: Assessment) => parts.find(({ kind }) => kind === 'tower')?.governs.result;

/** Where the ratio is largest: a double ring. */
function worstMark(assessment: Assessment, y: (z: number) => number): Svg | undefined {
  const { input } = assessment;
  const height = worstOfTower(assessment)?.height;
  if (height === undefined) return undefined;
  const r = 11;
  return group(
    {},
    element('circle', {
      cx: TOWER,
      cy: y(Math.max(height, input.station.tower.foot)),
      r,
      ...pen({ line: 'ink', width: 1.8 }),
    }),
    element('circle', { cx: TOWER, cy: y(height), r: r + 3.5, ...pen({ line: 'ink', width: 0.9 }) }),
  );
}

function labelsOf(
  assessment: Assessment,
  outlines: readonly Outline[],
  y: (z: number) => number,
  scale: number,
): readonly Label[] {
  const { input, windLoads, heights } = assessment;
  const { station } = input;
  const { units, tower, mast, cables } = station;
  const long = (value: number) => inWords(value, 'length', units);
  const edge = (z: number) => TOWER + halfWidthAt(station, z) * scale + 2;
  const force = (row: WindLoadRow | undefined) => (row ? inWords(row.force, 'force', units) : undefined);
  const sum = (kind: WindLoadRow['kind']) =>
    windLoads.rows.filter((row) => row.kind === kind).reduce((all, row) => all + row.force, 0);
  const labels: Label[] = outlines.map(({ load, right, sizeless }) => {
    const row = windLoads.rows.find((each) => each.at === load.at && each.kind === 'load');
    const middle = (load.low + load.high) / 2;
    const where =
      load.high > load.low ? `${figures(load.low / unitLength(units))} to ${long(load.high)}` : long(load.low);
    const wind = force(row);
    return {
      at: [TOWER + Math.max(0, right) * scale + (sizeless ? 9 : 4), y(middle)],
      words: `${load.name}, ${where}`,
      ...(wind === undefined ? {} : { wind }),
    };
  });
  if (mast) {
    const above = Math.max(mast.foot ?? tower.top, tower.top);
    labels.push({
      at: [TOWER + 3, y((above + mast.tip) / 2)],
      words: `mast, to ${long(mast.tip)}`,
      wind: inWords(sum('mast'), 'force', units),
    });
    if (mast.foot !== undefined)
      labels.push({ at: [edge(mast.foot), y(mast.foot)], words: `mast lower end, ${long(mast.foot)}` });
  }
  if (mast?.bearing !== undefined && Math.abs(mast.bearing - tower.top) > 0.05) {
    labels.push({ at: [edge(mast.bearing), y(mast.bearing)], words: `bearing, ${long(mast.bearing)}` });
  }
  labels.push({ at: [edge(tower.top), y(tower.top)], words: `tower top, ${long(tower.top)}` });
  if (tower.hingeHeight !== undefined)
    labels.push({ at: [edge(tower.hingeHeight), y(tower.hingeHeight)], words: `hinge, ${long(tower.hingeHeight)}` });
  const counterpoise = counterpoiseLoad(tower);
  if (counterpoise?.weight !== undefined)
    labels.push({
      at: [edge(counterpoise.low), y(counterpoise.low)],
      words: `counterpoise, ${inWords(counterpoise.weight, 'weight', units)}`,
      wind: inWords(sum('counterpoise'), 'force', units),
    });
  if (tower.foot > 0) labels.push({ at: [edge(tower.foot), y(tower.foot)], words: `base, ${long(tower.foot)}` });
  const guys = guyedForcesOf(assessment);
  for (const held of tower.held) {
    const drawn = guys?.levels.find(({ height }) => height === held.height)?.tension;
    labels.push({
      at: [edge(held.height), y(held.height)],
      words: `${held.by}, ${long(held.height)}`,
      ...(drawn ? { wind: `${inWords(drawn, 'force', units, 3)} nominal` } : {}),
    });
  }
  const middle = (tower.foot + tower.top) / 2;
  const own = sum('tower');
  labels.push({
    at: [edge(middle), y(middle)],
    words: own > 0 ? 'tower itself' : 'tower itself: wind unknown',
    ...(own > 0 ? { wind: inWords(own, 'force', units) } : {}),
  });
  if (cables.length > 0) {
    const z = cables[0] as (typeof cables)[number];
    const at = z.low + 0.35 * (z.high - z.low);
    labels.push({
      at: [edge(at) + 4, y(at)],
      words: cables.length === 1 ? z.name : `${cables.length} lines`,
      ...(sum('lines') > 0 ? { wind: inWords(sum('lines'), 'force', units) } : {}),
    });
  }
  const worst = worstOfTower(assessment);
  if (worst?.height !== undefined) {
    labels.push({
      at: [TOWER + 15, y(worst.height)],
      words: `tower ratio largest: ${ratioFigures(worst.ratio)}`,
      bold: true,
    });
  }
  return labels.filter(({ at }) => at[1] >= y(heights.overall) - 1).sort((one, other) => one.at[1] - other.at[1]);
}

function unitLength(units: Assessment['input']['station']['units']): number {
  return DISPLAY_UNITS[units].length.inSi;
}

interface Lane {
  readonly svg: Svg;
  /** Where there were too many for the lane: numbers stand there, and the words here. */
  readonly list: readonly string[];
}

function laneOf(labels: readonly Label[], top: number, foot: number): Lane {
  const lines = labels.map((label) => {
    const words = wrapped(label.words, LANE_WIDTH, 3);
    const last = words.at(-1) as string;
    const joins = label.wind !== undefined && widthOf(`${last}, ${label.wind}`) <= LANE_WIDTH;
    return { words, joins, count: words.length + (label.wind !== undefined && !joins ? 1 : 0) };
  });
  const wishes = lines.map(({ count }, index) => ({
    anchor: (labels[index] as Label).at[1],
    height: count * LINE + 3,
  }));
  const total = wishes.reduce((sum, wish) => sum + wish.height, 0);
  if (total > foot - top) return numberedLane(labels, top, foot);
  const middles = placed(wishes, top, foot);
  const drawn = labels.map((label, index) => {
    const { words, joins, count } = lines[index] as (typeof lines)[number];
    const middle = middles[index] as number;
    const first = middle - ((count - 1) * LINE) / 2 + 4.3;
    const look = { halo: true, ...(label.bold ? { bold: true } : {}) };
    const wind = label.wind === undefined ? undefined : run(label.wind, { ink: 'wind', italic: true });
    return group(
      {},
      leader(label.at, [LANE - 4, middle - ((count - 1) * LINE) / 2]),
      words.map((line, number) => {
        const tail = wind && joins && number === words.length - 1 ? [`${line}, `, wind] : line;
        return lettering(LANE, first + number * LINE, tail, look);
      }),
      ...(wind && !joins ? [lettering(LANE, first + words.length * LINE, wind, { halo: true })] : []),
    );
  });
  return { svg: group({}, drawn), list: [] };
}

/** Numbers by height, those of one height together; the words stand beneath the drawing. */
function numberedLane(labels: readonly Label[], top: number, foot: number): Lane {
  const clusters: { first: number; last: number; at: Point }[] = [];
  labels.forEach(({ at }, index) => {
    const open = clusters.at(-1);
    if (open && at[1] - open.at[1] < LINE) open.last = index + 1;
    else clusters.push({ first: index + 1, last: index + 1, at });
  });
  const middles = placed(
    clusters.map(({ at }) => ({ anchor: at[1], height: LINE })),
    top,
    foot,
  );
  const drawn = clusters.map(({ first, last, at }, index) => {
    const middle = middles[index] as number;
    const numbers = first === last ? `${first}` : `${first} to ${last}`;
    return group({}, leader(at, [LANE - 4, middle]), lettering(LANE, middle + 4.3, numbers, { halo: true }));
  });
  const list = labels.flatMap(({ words, wind }, index) =>
    wrapped(`${index + 1}: ${words}${wind === undefined ? '' : `, ${wind}`}`, WIDTH - 28),
  );
  return { svg: group({}, drawn), list };
}

function leader(from: Point, to: Point): Svg {
  const bend = to[0] - 12;
  return element('path', {
    d: from[0] >= bend ? through([from, to]) : through([from, [bend, from[1]], [to[0] - 3, to[1]], to]),
    ...pen({ line: 'rule-firm', width: 0.7 }),
  });
}

/** Ground, footing and a hint of the hill. */
function belowGround(
  { input }: Assessment,
  scale: number,
  ground: number,
): { readonly svg: Svg; readonly foot: number } {
  const { site, station } = input;
  const { units, tower } = station;
  const { foundation } = tower;
  const long = (value: number) => inWords(value, 'length', units);
  const parts: Svg[] = [];
  let depth = 0;
  let words = 'footing not given';
  if (foundation?.kind === 'block' || foundation?.kind === 'pier') {
    const wide = foundation.kind === 'block' ? foundation.length : foundation.diameter;
    depth = foundation.depth * scale;
    words = `footing ${long(wide)} wide, ${long(foundation.depth)} deep`;
    parts.push(
      element('rect', {
        x: TOWER - (wide * scale) / 2,
        y: ground,
        width: wide * scale,
        height: depth,
        ...pen({ line: 'ink', width: 1.1, dash: '4 3', fill: 'paper-deep' }),
      }),
    );
  } else if (foundation?.kind === 'manufacturer') words = 'footing: to the manufacturer’s drawing';
  const left = AXIS;
  const right = WIDTH - 20;
  parts.push(
    element('path', {
      d: through([
        [left, ground],
        [right, ground],
      ]),
      ...pen({ line: 'ink', width: 1.7 }),
    }),
    hachures([left, ground + 1], [right, ground + 1], [-5, 5], 'ink', 12),
  );
  if (tower.foot > 0) {
    parts.push(
      element('path', {
        d: through([
          [TOWER - 40, ground - tower.foot * scale],
          [TOWER + 40, ground - tower.foot * scale],
        ]),
        ...pen({ line: 'ink', width: 1.4, dash: '7 3' }),
      }),
    );
  }
  const footWords = wrapped(words, LANE_WIDTH + 30, 3);
  footWords.forEach((line, index) => {
    parts.push(lettering(LANE - 30, ground + 24 + index * LINE, line, { ink: 'ink-soft', halo: true }));
  });
  let foot = ground + Math.max(depth + 8, 18 + footWords.length * LINE);
  const { hill } = site;
  if (hill && site.topographicFactor === undefined) {
    const sketch = hillSketch(hill.shape, hill.side, ground + 14);
    const side =
      hill.distance === 0 ? 'at the tower' : `${long(hill.distance)} ${hill.side === 'upwind' ? 'downwind' : 'upwind'}`;
    const text = wrapped(
      `${hill.shape.replace('-', ' ')} ${long(hill.height)} high, crest ${side}; not to scale`,
      176,
      3,
    );
    parts.push(
      sketch,
      ...text.map((line, index) => lettering(14, ground + 64 + index * LINE, line, { ink: 'ink-soft', halo: true })),
    );
    foot = Math.max(foot, ground + 58 + text.length * LINE);
  }
  return { svg: group({}, parts), foot };
}

/** The shape of the hill with the tower's place on it, wind from the left; a sign, not to scale. */
function hillSketch(shape: 'ridge' | 'escarpment' | 'round-hill', side: 'upwind' | 'downwind', top: number): Svg {
  const low = top + 30;
  const profile =
    shape === 'escarpment'
      ? `M24 ${low}C60 ${low} 62 ${top + 4} 96 ${top + 4}H178`
      : shape === 'ridge'
        ? `M24 ${low}C64 ${low} 74 ${top + 4} 100 ${top + 4}S138 ${low} 178 ${low}`
        : `M24 ${low}C44 ${low} 62 ${top + 4} 100 ${top + 4}S158 ${low} 178 ${low}`;
  const x = side === 'upwind' ? 68 : 132;
  const y = shape === 'escarpment' ? (side === 'upwind' ? top + 16 : top + 4) : top + 16;
  return group(
    {},
    element('path', {
      d: profile.replaceAll(/\d+\.\d+/g, (each) => Number(each).toFixed(2)),
      ...pen({ line: 'ink', width: 1.4 }),
    }),
    element('path', {
      d: through([
        [x, y],
        [x, y - 12],
      ]),
      ...pen({ line: 'ink', width: 2.2 }),
    }),
    element('path', { d: `M24 ${(top + 6).toFixed(2)}h16m-5 -3l5 3l-5 3`, ...pen({ line: 'wind', width: 1.2 }) }),
  );
}

/** Guys and brackets; a guy that runs out of the sheet is cut with a wave. */
function heldBy({ input }: Assessment, scale: number, ground: number): Svg {
  const { tower } = input.station;
  const half = (z: number) => halfWidthAt(input.station, z) * scale;
  return group(
    {},
    tower.held.map(({ height, by, guys }) => {
      const y = ground - height * scale;
      if (by === 'bracket') {
        const x = TOWER + half(height);
        return group(
          {},
          element('path', {
            d: through([
              [x, y],
              [x + 26, y],
            ]),
            ...pen({ line: 'ink', width: 2.2 }),
          }),
          element('path', {
            d: through([
              [x + 26, y - 16],
              [x + 26, ground],
            ]),
            ...pen({ line: 'ink', width: 1.2 }),
          }),
          hachures([x + 26, ground], [x + 26, y - 16], [5, -4]),
        );
      }
      const radius = guys ? guys.radius * scale : Number.POSITIVE_INFINITY;
      const out = Math.min(radius, SIDE + 6);
      const drop = Number.isFinite(radius) ? (height * scale * out) / radius : 0.75 * out;
      return [-1, 1].map((way) => {
        const end: Point = [TOWER + way * (half(height) + out), y + Math.min(drop, height * scale)];
        const wave = out < radius ? `M${(end[0] - 3).toFixed(2)} ${(end[1] - 5).toFixed(2)}l6 3l-6 4l6 3` : '';
        return element('path', {
          d: through([[TOWER + way * half(height), y], end]) + wave,
          ...pen({ line: 'ink', width: 0.7, dash: guys ? undefined : '5 3' } as Parameters<typeof pen>[0]),
        });
      });
    }),
  );
}

/** Scale bar and the force an arrow stands for. */
function legendOf({ input, windLoads }: Assessment, scale: number, perForce: number, y: number): Svg {
  const { units } = input.station;
  const length = DISPLAY_UNITS[units].length;
  const bar = roundStep(44 / (scale * length.inSi));
  const wide = bar * length.inSi * scale;
  const force = DISPLAY_UNITS[units].force;
  const stands = roundStep(22 / (perForce * force.inSi));
  const long = stands * force.inSi * perForce;
  const x = 200;
  return group(
    {},
    element('rect', { x, y, width: wide / 2, height: 5, ...pen({ line: 'ink', width: 1, fill: 'ink' }) }),
    element('rect', { x: x + wide / 2, y, width: wide / 2, height: 5, ...pen({ line: 'ink', width: 1 }) }),
    lettering(x, y + 20, '0', { anchor: 'middle' }),
    lettering(x + wide, y + 20, `${figures(bar)} ${length.label}`, { anchor: 'middle' }),
    windLoads.rows.length > 0
      ? [
          arrow([LANE + long, y + 3], long),
          lettering(LANE + long + 6, y + 7, `${figures(stands)} ${force.label}`, { ink: 'wind', italic: true }),
        ]
      : [],
  );
}

/** What the lying tower's antennas leave to the ground, turned one way and the other. */
function groundWords(
  laid: NonNullable<Assessment['raising']>['handling'],
  long: (value: number) => string,
): readonly string[] {
  if (!laid || laid.orientations.every(({ antennas }) => antennas.length === 0)) return [];
  if (laid.orientations.every(({ clearance }) => clearance < 0)) {
    return ['Lowered flat, an antenna touches the ground either way round.'];
  }
  const ways = laid.orientations.map(({ orientation, clearance }) => {
    const way = orientation.replace('-', ' ');
    return clearance >= 0
      ? `${way} it clears the ground by ${long(clearance)}`
      : `${way} an antenna touches the ground`;
  });
  return [`With ${ways.join('; with ')}.`];
}

/** The tower lowered: lying over its hinge, or slid together. */
function loweredOf(
  assessment: Assessment,
  outlines: readonly Outline[],
  top: number,
): { readonly svg: Svg; readonly foot: number } | undefined {
  const { input, heights } = assessment;
  const { tower, units } = input.station;
  const long = (value: number) => inWords(value, 'length', units);
  const hinge = tower.hingeHeight;
  if (hinge !== undefined) {
    const laid = assessment.raising?.handling;
    const lying = laid ? outlinesOf(assessment, laid.best === 'booms-upright' ? 'boom' : 'elements') : outlines;
    const out = heights.overall - hinge;
    const half = Math.max(0.5, ...lying.map(({ left, right }) => Math.max(left, right)));
    const scale = Math.min((WIDTH - 110) / out, 150 / (2 * Math.max(half, hinge)));
    const told = groundWords(laid, long).flatMap((line) => wrapped(line, WIDTH - 28));
    const y = top + 18 + told.length * LINE + Math.max(half, 1) * scale;
    const ground = y + hinge * scale;
    const x = 60;
    const bar = roundStep(50 / (scale * inSi(assessment)));
    const wide = bar * inSi(assessment) * scale;
    const foot = Math.max(ground, y + Math.max(half, 1) * scale) + 14;
    return {
      foot: foot + 22,
      svg: group(
        {},
        lettering(14, top, `Lowered flat over its hinge, ${long(hinge)} up; it reaches ${long(out)} out`, {
          bold: true,
        }),
        element('path', {
          d: through([
            [20, ground],
            [WIDTH - 20, ground],
          ]),
          ...pen({ line: 'ink', width: 1.7 }),
        }),
        hachures([20, ground + 1], [WIDTH - 20, ground + 1], [-5, 5], 'ink', 12),
        group({ transform: `translate(${x} ${ground.toFixed(2)})` }, standingOf(assessment, outlines, scale, 0, hinge)),
        group(
          { transform: `translate(${x} ${y.toFixed(2)}) rotate(90) translate(0 ${(hinge * scale).toFixed(2)})` },
          standingOf(assessment, lying, scale, hinge),
        ),
        element('circle', { cx: x, cy: y, r: 3.5, ...pen({ line: 'ink', width: 1.6, fill: 'paper' }) }),
        element('rect', { x, y: foot, width: wide / 2, height: 4, ...pen({ line: 'ink', width: 1, fill: 'ink' }) }),
        element('rect', { x: x + wide / 2, y: foot, width: wide / 2, height: 4, ...pen({ line: 'ink', width: 1 }) }),
        lettering(x + wide + 6, foot + 6, `${figures(bar)} ${unitOf('length', units)}`),
        told.map((line, index) => lettering(14, top + (index + 1) * LINE, line, { ink: 'ink-soft' })),
      ),
    };
  }
  if (tower.nestedTop !== undefined && tower.telescopes) {
    const words = `Lowered: retracted, its top is at ${long(tower.nestedTop)}, ${long(tower.top - tower.nestedTop)} lower.`;
    const drop = tower.top - tower.nestedTop;
    const scale = Math.min(
      150 / (heights.overall - drop),
      130 / Math.max(0.5, ...outlines.map(({ left, right }) => Math.max(left, right))),
    );
    const ground = top + 26 + (heights.overall - drop) * scale;
    const nested = tower.sections.map((section) => {
      const length = section.high - section.low;
      const low = Math.max(tower.foot, Math.min(section.low, (tower.nestedTop as number) - length));
      return sectionOutline(
        { ...section, low, high: Math.min(low + length, tower.nestedTop as number) },
        scale,
        0,
        heights.overall,
      );
    });
    const { mast } = input.station;
    return {
      foot: ground + 16,
      svg: group(
        {},
        lettering(14, top, words, { bold: true }),
        element('path', {
          d: through([
            [60, ground],
            [WIDTH - 60, ground],
          ]),
          ...pen({ line: 'ink', width: 1.7 }),
        }),
        hachures([60, ground + 1], [WIDTH - 60, ground + 1], [-5, 5], 'ink', 12),
        group(
          { transform: `translate(${WIDTH / 2} ${ground.toFixed(2)})` },
          nested,
          group(
            { transform: `translate(0 ${(drop * scale).toFixed(2)})` },
            mastOutline(mast, tower.top, scale),
            outlines.filter(({ load }) => load.on === 'mast' || load.low >= tower.top).map((each) => each.draw(scale)),
          ),
        ),
      ),
    };
  }
  return undefined;
}

function notesOf(
  { input, windLoads }: Assessment,
  outlines: readonly Outline[],
  labels: readonly Label[],
  scale: number,
): readonly string[] {
  const { tower, units } = input.station;
  const notes = [
    'Seen across the worst wind, which comes from the left. Lengths and heights to one scale; mast, lines and element ends drawn thicker. Forces at allowable level.',
  ];
  if (outlines.some(({ sizeless }) => sizeless)) notes.push('Dashed ring: load of unknown size.');
  if (tower.sections.some((section) => !section.shape)) {
    notes.push(`Dashed edges: width of the tower not given; drawn ${inWords(0.3, 'length', units, 2)} wide.`);
  }
  if (tower.held.some(({ by, guys }) => by === 'guys' && !guys)) notes.push('Dashed guys: anchor distance not given.');
  if (labels.length === 0 || windLoads.rows.length === 0) notes.push('No forces: no item with an area is given.');
  if (scale * 0.1 > 20) notes.push('Widths look large because they are to the same scale.');
  return notes;
}

function describe(assessment: Assessment): string {
  const { input, windLoads, heights } = assessment;
  const { units, tower } = input.station;
  const long = (value: number) => inWords(value, 'length', units);
  const force = (value: number) => inWords(value, 'force', units);
  const things = windLoads.rows
    .filter((row) => row.kind !== 'tower')
    .map(
      (row) =>
        `${row.name} ${row.high > row.low ? `${long(row.low)} to ${long(row.high)}` : `at ${long(row.low)}`}, ${force(row.force)}`,
    );
  const worst = worstOfTower(assessment);
  return [
    `Tower top at ${long(tower.top)}, overall ${long(heights.overall)}, wind from the left.`,
    things.length > 0 ? `Wind loads: ${things.join('; ')}.` : '',
    `Total wind ${force(windLoads.total.force)} at allowable level.`,
    worst?.height === undefined
      ? 'Ratio of the tower: open.'
      : `Largest ratio at ${long(worst.height)}: ${ratioFigures(worst.ratio)}.`,
  ]
    .filter((each) => each !== '')
    .join(' ');
}
