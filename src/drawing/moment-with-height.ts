import { DISPLAY_UNITS, type Dimension, displayValue } from '../foundation/index.ts';
import { type Assessment, type ComparisonRatio, checkRatio, deadDemandOf } from '../margins/index.ts';
import { type Section, shearOfTorsion } from '../structure/index.ts';
import { figures, inWords, ratioFigures } from '../words/index.ts';
import { levelAxis, type Scale, scaleOf, uprightAxis } from './axes.ts';
import { hachures, LINE, lettering, pen, sheet, WIDTH } from './ink.ts';
import { placed } from './lane.ts';
import { element, group, type Point, type Svg, through } from './svg.ts';
import { unitOf, widthOf, wrapped } from './words.ts';

const TOP = 76;
const FOOT = 476;
const PANELS = {
  moment: { left: 42, right: 190 },
  shear: { left: 246, right: 394 },
} as const;

type Of = keyof typeof PANELS;

/** What is asked at a height. */
export interface Asked {
  readonly z: number;
  readonly moment: number;
  readonly shear: number;
}

/** Moment and shear with height: what the wind asks against what the rating proves, and the ratio at every joint. */
export function momentWithHeight(assessment: Assessment): string {
  const { input, model, checks } = assessment;
  const { tower, units } = input.station;
  const length = DISPLAY_UNITS[units].length.inSi;
  const up = scaleOf([model.comparedFromHeight / length, tower.top / length], [FOOT, TOP], 36);
  const asked = demandByHeight(assessment);
  const belowSupport =
    tower.held.length > 0
      ? `Below the highest support, at ${inWords(model.comparedFromHeight, 'length', units)}, nothing is ${checks.some(({ kind }) => kind === 'tower-below') ? '' : 'compared or '}drawn.`
      : 'Supports of the tower not given; nothing is compared or drawn.';
  const unrated = assessment.ratios.every(({ capacity }) => !(capacity > 0));
  const notes = [
    'Filled: demand from wind and weight, allowable level. Heavy line with hachures: rated capacity. Figures at the joints: ratio.',
    ...(unrated ? ['No capacity drawn: no rating entered covers this tower.'] : []),
    ...coupleWords(assessment),
    ...(model.comparedFromHeight > tower.foot ? [belowSupport] : []),
    ...(assessment.ratios.some(({ byWindRatio }) => byWindRatio)
      ? [
          'Wind on the tower itself is unknown. The ratio also compares site wind with rated wind, and can exceed that of the lines.',
        ]
      : []),
    ...(tapers(assessment) ? ['Shear: force in the braces; sloping legs take part of the shear.'] : []),
  ].flatMap((note) => wrapped(note, WIDTH - 28));
  return sheet(
    `Moment and shear with height at ${input.title}`,
    describe(assessment),
    FOOT + 46 + notes.length * LINE,
    lettering(14, 18, 'Moment and shear with height', { bold: true }),
    uprightAxis(PANELS.moment.left, up, TOP, FOOT, unitOf('length', units)),
    panel(assessment, 'moment', asked, up, length),
    panel(assessment, 'shear', asked, up, length),
    notes.map((line, index) => lettering(14, FOOT + 48 + index * LINE, line, { ink: 'ink-soft' })),
  );
}

/** What the broken line is, where the mast hands over its load as a couple. */
function coupleWords({ checks, ratios }: Assessment): readonly string[] {
  const drawn = ratios.filter(({ comparison, capacity }) => comparison.check === 'tower-top' && capacity > 0);
  if (drawn.length < 2) return [];
  const ratio = checks.find((check) => check.kind === 'tower-top')?.result?.ratio;
  const tail = ratio === undefined ? '' : `; ratio there: ${ratioFigures(ratio)}`;
  return [`Dashed line: rated capacity between the bearing and the lower end of the mast${tail}.`];
}

function tapers({ model }: Assessment): boolean {
  return model.comparisons.some(
    (comparison) => comparison.of === 'shear' && comparison.apex < Number.POSITIVE_INFINITY,
  );
}

/**
 * Moment and shear at every level the answer looks at, of the reading of the tower that decides it; two rows at the
 * mast's foot, where its couple ends.
 */
export function demandByHeight({ model, unfavourable, ratios }: Assessment): readonly Asked[] {
  const scenario = checkRatio(ratios, 'tower')?.governing.scenario ?? 0;
  const { appurtenances, bareTower: own } = unfavourable.scenarios[scenario] ?? {};
  const { sections } = model.input.station.tower;
  return model.levels.map(({ z }, level) => {
    const comparison = {
      check: 'tower',
      level,
      provenAt: [],
      beyond: 'open',
      place: 'section',
      apex: Infinity,
    } as const;
    // Where sections overlap the answer compares each: the one that asks for more is drawn.
    const compared = model.comparisons.flatMap((each) =>
      each.check === 'tower' && each.level === level ? [each.section] : [],
    );
    const there = compared.length > 0 ? compared : [sections.findLastIndex(({ low }) => low <= z + 1e-9)];
    const most = (asked: (section: number) => number) =>
      Math.max(0, ...there.map((section) => (section < 0 ? 0 : asked(section))));
    const dead = (of: Of) => most((section) => deadDemandOf(model, { ...comparison, of, section }));
    const torsion = most((section) =>
      shearOfTorsion(sections[section] as Section, appurtenances?.torsion[level] ?? 0, z),
    );
    return {
      z,
      moment: (appurtenances?.moment[level] ?? 0) + (own?.moment[level] ?? 0) + dead('moment'),
      shear: (appurtenances?.shear[level] ?? 0) + (own?.shear[level] ?? 0) + torsion + dead('shear'),
    };
  });
}

const DIMENSION: Readonly<Record<Of, Dimension>> = { moment: 'moment', shear: 'force' };

function panel(assessment: Assessment, of: Of, asked: readonly Asked[], up: Scale, length: number): Svg {
  const { input, ratios, model, checks } = assessment;
  const { units, tower } = input.station;
  const { left, right } = PANELS[of];
  const own = ratios.filter(({ comparison }) => comparison.of === of);
  const braced = of === 'shear' && tapers(assessment);
  const heightOf = ({ comparison }: ComparisonRatio) => model.levels[comparison.level]?.z ?? tower.foot;
  // Legs that lean share the shear: there only the compared force in the braces is worth drawing.
  const demand = braced
    ? own
        .filter(({ comparison }) => comparison.check === 'tower')
        .map((ratio) => ({ z: heightOf(ratio), value: ratio.demand }))
        .sort((a, b) => b.z - a.z)
    : asked.filter(({ z }) => z >= model.comparedFromHeight).map((each) => ({ z: each.z, value: each[of] }));
  const shown = (value: number) => displayValue(value, DIMENSION[of], units);
  const most = Math.max(1e-9, ...demand.map(({ value }) => value), ...own.map(({ demand: each }) => each));
  const proofs = own.map(({ capacity }) => capacity).filter((each) => Number.isFinite(each));
  // An envelope far beyond the demand would press it flat against the axis.
  const end = Math.min(Math.max(most, ...proofs), 5 * most) * 1.04;
  const scaled = thousands(shown(end));
  const across = scaleOf([0, shown(end) / scaled], [left, right], 46);
  const x = (value: number) => across.at(shown(Math.min(value, end)) / scaled);
  const y = (z: number) => up.at(z / length);

  const points: Point[] = demand.map(({ z, value }) => [x(Math.max(0, value)), y(z)]);
  const first = points[0];
  const last = points.at(-1);
  const filled =
    first && last
      ? [
          element('path', {
            d: through([[left, first[1]], ...points, [left, last[1]]], true),
            ...pen({ fill: 'wind', opacity: 0.14 }),
          }),
          element('path', { d: through(points), ...pen({ line: 'wind', width: 1.4 }) }),
        ]
      : [];
  const governing = checks[0]?.result;
  const joints = own.filter(({ comparison }) => comparison.place === 'base' || comparison.place === 'joint');
  const worst = own.find(
    (ratio) => governing?.of === of && ratio.demand === governing.demand && ratio.capacity === governing.capacity,
  );
  const named = [...new Set([...joints, ...(worst ? [worst] : [])])].sort((a, b) => heightOf(b) - heightOf(a));
  const fitting =
    named.length <= 24 ? named : named.filter((ratio) => ratio === worst || ratio.comparison.place === 'base');
  const middles = placed(
    fitting.map((ratio) => ({ anchor: y(heightOf(ratio)) - 8, height: LINE })),
    TOP - 8,
    FOOT,
  );
  return group(
    {},
    lettering(left, 40, of, { bold: true }),
    lettering(left, 55, `${scaled > 1 ? `${figures(scaled)} ` : ''}${unitOf(DIMENSION[of], units)}`, {
      ink: 'ink-soft',
    }),
    levelAxis(FOOT, across, left, right),
    element('path', {
      d: through([
        [left, TOP],
        [left, FOOT],
      ]),
      ...pen({ line: 'ink-soft', width: 0.9 }),
    }),
    model.comparedFromHeight > tower.foot
      ? [
          element('path', {
            d: through([
              [left, y(model.comparedFromHeight)],
              [right, y(model.comparedFromHeight)],
            ]),
            ...pen({ line: 'rule-firm', width: 0.8, dash: '9 3 2 3' }),
          }),
          hachures([left, y(model.comparedFromHeight)], [right, y(model.comparedFromHeight)], [-4, 5], 'ink-soft', 9),
        ]
      : [],
    filled,
    envelopeOf(assessment, own, x, y, end),
    fitting.map((ratio, index) => {
      const capacity = Number.isFinite(ratio.capacity) && ratio.capacity > 0 ? ratio.capacity : ratio.demand;
      const edge = x(Math.max(ratio.demand, capacity));
      const over = ratio.unfavourable > 1 && checks[0]?.verdict === 'over';
      return group(
        {},
        element('circle', { cx: x(ratio.demand), cy: y(heightOf(ratio)), r: 2.8, ...pen({ fill: 'ink' }) }),
        ...(ratio === worst
          ? [
              element('circle', {
                cx: x(ratio.demand),
                cy: y(heightOf(ratio)),
                r: 8,
                ...pen({ line: 'ink', width: 1.8 }),
              }),
              element('circle', {
                cx: x(ratio.demand),
                cy: y(heightOf(ratio)),
                r: 11,
                ...pen({ line: 'ink', width: 0.9 }),
              }),
            ]
          : []),
        lettering(
          Math.min(edge + 10, right + 46 - widthOf(ratioFigures(ratio.unfavourable))),
          (middles[index] as number) + 4.3,
          ratioFigures(ratio.unfavourable),
          {
            halo: true,
            bold: ratio === worst,
            ink: over ? 'over' : 'ink',
          },
        ),
      );
    }),
  );
}

/** One, or the thousand that keeps an axis's figures short. */
function thousands(value: number): number {
  return value >= 5000 ? 1000 : 1;
}

/** What is proven: a step where a section's lower end speaks for all of it, points elsewhere; the mast's couple dashed. */
function envelopeOf(
  { input, model }: Assessment,
  own: readonly ComparisonRatio[],
  x: (value: number) => number,
  y: (z: number) => number,
  end: number,
): Svg {
  const { tower } = input.station;
  const proven = (ratio: ComparisonRatio) => Number.isFinite(ratio.capacity) && ratio.capacity > 0;
  const lines: Point[][] = [];
  tower.sections.forEach((section, number) => {
    const here = own.filter(
      (ratio) => ratio.comparison.section === number && ratio.comparison.check === 'tower' && proven(ratio),
    );
    const low = Math.max(section.low, model.comparedFromHeight);
    const [lowEnd] = here;
    if (!lowEnd) return;
    const line: Point[] = section.uniform
      ? [
          [x(lowEnd.capacity), y(low)],
          [x(lowEnd.capacity), y(section.high)],
        ]
      : here
          .map((ratio): Point => [x(ratio.capacity), y(model.levels[ratio.comparison.level]?.z ?? low)])
          .sort((one, other) => other[1] - one[1]);
    const before = lines.at(-1);
    const end = before?.at(-1);
    // One section on another is one step; telescoped ones overlap and stand side by side.
    if (before && end && Math.abs(end[1] - y(low)) < 0.01) before.push(...line);
    else lines.push(line);
  });
  const couple = own
    .filter((ratio) => ratio.comparison.check === 'tower-top' && proven(ratio))
    .map((ratio): Point => [x(ratio.capacity), y(model.levels[ratio.comparison.level]?.z ?? tower.top)]);
  const sides = lines.flatMap((line) =>
    line.slice(1).map((to, index) => {
      const from = line[index] as Point;
      return Math.abs(to[1] - from[1]) > 4 ? hachures(from, to, [6, -4]) : group({});
    }),
  );
  const beyond = own.some((ratio) => proven(ratio) && ratio.capacity > end);
  return group(
    {},
    lines.map((line) => element('path', { d: through(line), ...pen({ line: 'ink', width: 2 }) })),
    sides,
    ...(couple.length > 1
      ? [element('path', { d: through(couple), ...pen({ line: 'ink', width: 1.4, dash: '5 3' }) })]
      : []),
    ...(beyond ? [lettering(x(end), TOP - 6, 'beyond →', { anchor: 'end', ink: 'ink-soft' })] : []),
  );
}

function describe({ input, ratios, model, checks }: Assessment): string {
  const { units } = input.station;
  const rows = ratios
    .filter(
      ({ comparison }) => (comparison.place === 'base' || comparison.place === 'joint') && comparison.check === 'tower',
    )
    .slice(0, 60)
    .map(({ comparison, demand, capacity, unfavourable }) => {
      const dimension = DIMENSION[comparison.of];
      const shown = Number.isFinite(unfavourable)
        ? `${inWords(capacity, dimension, units)}, ratio ${ratioFigures(unfavourable)}`
        : 'no rated capacity';
      return `${comparison.of} at ${inWords(model.levels[comparison.level]?.z ?? 0, 'length', units)} ${inWords(demand, dimension, units)} of ${shown}`;
    });
  const worst = checks[0]?.result;
  const first =
    worst?.height === undefined
      ? 'Ratio of the tower: open.'
      : `Largest ratio ${ratioFigures(worst.ratio)}, at ${inWords(worst.height, 'length', units)}.`;
  return [first, ...(rows.length > 0 ? [`${rows.join('; ')}.`] : [])].join(' ');
}
