import { DISPLAY_UNITS, type Dimension, displayValue } from '../foundation/index.ts';
import { type Assessment, type CheckUse, deadDemandOf, linkUse } from '../margins/index.ts';
import { type Section, shearOfTorsion } from '../structure/index.ts';
import { levelAxis, type Scale, scaleOf, uprightAxis } from './axes.ts';
import { hachures, LINE, lettering, pen, sheet, WIDTH } from './ink.ts';
import { placed } from './lane.ts';
import { element, group, type Point, type Svg, through } from './svg.ts';
import { figures, said, unitOf, useFigures, widthOf, wrapped } from './words.ts';

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

/** Moment and shear with height: what the wind asks against what the rating proves, and the use at every joint. */
export function momentWithHeight(assessment: Assessment): string {
  const { inquiry, model } = assessment;
  const { tower, units } = inquiry.station;
  const length = DISPLAY_UNITS[units].length.inSi;
  const up = scaleOf([model.lowest / length, tower.top / length], [FOOT, TOP], 36);
  const asked = demandByHeight(assessment);
  const belowSupport =
    tower.held.length > 0
      ? `Below the highest support, at ${said(model.lowest, 'length', units)}, nothing is compared or drawn.`
      : 'Where the tower is held is not told: nothing is compared or drawn.';
  const unproven = assessment.uses.every(({ capacity }) => !(capacity > 0));
  const notes = [
    'Filled: what your wind and the weights ask, at allowable level. Heavy line with hachures: the proof envelope, what the ratings show. Beside each joint its use.',
    ...(unproven ? ['No envelope: no rating of this tower says what it proves.'] : []),
    ...coupleWords(assessment),
    ...(model.lowest > tower.foot ? [belowSupport] : []),
    ...(assessment.uses.some(({ byWindRatio }) => byWindRatio)
      ? [
          "The tower's own wind is not known: the use compares the winds on it too, so it may be more than the lines show.",
        ]
      : []),
    ...(tapers(assessment) ? ['Shear: the force in the braces, since legs that lean take part of it.'] : []),
  ].flatMap((note) => wrapped(note, WIDTH - 28));
  return sheet(
    `Moment and shear with height at ${inquiry.title}`,
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
function coupleWords({ links, uses }: Assessment): readonly string[] {
  const drawn = uses.filter(({ check, capacity }) => check.link === 'tower-top' && capacity > 0);
  if (drawn.length < 2) return [];
  const use = links.find((link) => link.kind === 'tower-top')?.result?.use;
  const tail = use === undefined ? '' : `; use there: ${useFigures(use)}`;
  return [`Broken line: what is proven between the mast's bearing and its foot${tail}.`];
}

function tapers({ model }: Assessment): boolean {
  return model.checks.some((check) => check.of === 'shear' && check.apex < Number.POSITIVE_INFINITY);
}

/**
 * Moment and shear at every level the answer looks at, of the reading of the tower that decides it; two rows at the
 * mast's foot, where its couple ends.
 */
export function demandByHeight({ model, bad, uses }: Assessment): readonly Asked[] {
  const scenario = linkUse(uses, 'tower')?.governing.scenario ?? 0;
  const hung = bad.hung[scenario];
  const own = bad.own[scenario];
  const { sections } = model.inquiry.station.tower;
  return model.levels.map(({ z }, level) => {
    const check = {
      link: 'tower',
      level,
      provenAt: [],
      beyond: 'not-shown',
      place: 'section',
      apex: Infinity,
    } as const;
    // Where sections overlap the answer compares each: the one that asks for more is drawn.
    const compared = model.checks.flatMap((each) =>
      each.link === 'tower' && each.level === level ? [each.section] : [],
    );
    const there = compared.length > 0 ? compared : [sections.findLastIndex(({ low }) => low <= z + 1e-9)];
    const most = (asked: (section: number) => number) =>
      Math.max(0, ...there.map((section) => (section < 0 ? 0 : asked(section))));
    const dead = (of: Of) => most((section) => deadDemandOf(model, { ...check, of, section }));
    const torsion = most((section) => shearOfTorsion(sections[section] as Section, hung?.torsion[level] ?? 0, z));
    return {
      z,
      moment: (hung?.moment[level] ?? 0) + (own?.moment[level] ?? 0) + dead('moment'),
      shear: (hung?.shear[level] ?? 0) + (own?.shear[level] ?? 0) + torsion + dead('shear'),
    };
  });
}

const DIMENSION: Readonly<Record<Of, Dimension>> = { moment: 'moment', shear: 'force' };

function panel(assessment: Assessment, of: Of, asked: readonly Asked[], up: Scale, length: number): Svg {
  const { inquiry, uses, model, links } = assessment;
  const { units, tower } = inquiry.station;
  const { left, right } = PANELS[of];
  const own = uses.filter(({ check }) => check.of === of);
  const braced = of === 'shear' && tapers(assessment);
  const heightOf = ({ check }: CheckUse) => model.levels[check.level]?.z ?? tower.foot;
  // Legs that lean share the shear: there only the compared force in the braces is worth drawing.
  const demand = braced
    ? own
        .filter(({ check }) => check.link === 'tower')
        .map((use) => ({ z: heightOf(use), value: use.demand }))
        .sort((a, b) => b.z - a.z)
    : asked.filter(({ z }) => z >= model.lowest).map((each) => ({ z: each.z, value: each[of] }));
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
  const governing = links[0]?.result;
  const joints = own.filter(({ check }) => check.place === 'foot' || check.place === 'joint');
  const worst = own.find(
    (use) => governing?.of === of && use.demand === governing.demand && use.capacity === governing.capacity,
  );
  const named = [...new Set([...joints, ...(worst ? [worst] : [])])].sort((a, b) => heightOf(b) - heightOf(a));
  const fitting = named.length <= 24 ? named : named.filter((use) => use === worst || use.check.place === 'foot');
  const middles = placed(
    fitting.map((use) => ({ anchor: y(heightOf(use)) - 8, height: LINE })),
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
    model.lowest > tower.foot
      ? [
          element('path', {
            d: through([
              [left, y(model.lowest)],
              [right, y(model.lowest)],
            ]),
            ...pen({ line: 'rule-firm', width: 0.8, dash: '9 3 2 3' }),
          }),
          hachures([left, y(model.lowest)], [right, y(model.lowest)], [-4, 5], 'ink-soft', 9),
        ]
      : [],
    filled,
    envelopeOf(assessment, own, x, y, end),
    fitting.map((use, index) => {
      const capacity = Number.isFinite(use.capacity) && use.capacity > 0 ? use.capacity : use.demand;
      const edge = x(Math.max(use.demand, capacity));
      const over = use.bad > 1 && links[0]?.verdict === 'over';
      return group(
        {},
        element('circle', { cx: x(use.demand), cy: y(heightOf(use)), r: 2.8, ...pen({ fill: 'ink' }) }),
        ...(use === worst
          ? [
              element('circle', { cx: x(use.demand), cy: y(heightOf(use)), r: 8, ...pen({ line: 'ink', width: 1.8 }) }),
              element('circle', {
                cx: x(use.demand),
                cy: y(heightOf(use)),
                r: 11,
                ...pen({ line: 'ink', width: 0.9 }),
              }),
            ]
          : []),
        lettering(
          Math.min(edge + 10, right + 46 - widthOf(useFigures(use.bad))),
          (middles[index] as number) + 4.3,
          useFigures(use.bad),
          {
            halo: true,
            bold: use === worst,
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
  { inquiry, model }: Assessment,
  own: readonly CheckUse[],
  x: (value: number) => number,
  y: (z: number) => number,
  end: number,
): Svg {
  const { tower } = inquiry.station;
  const proven = (use: CheckUse) => Number.isFinite(use.capacity) && use.capacity > 0;
  const lines: Point[][] = [];
  tower.sections.forEach((section, number) => {
    const here = own.filter((use) => use.check.section === number && use.check.link === 'tower' && proven(use));
    const low = Math.max(section.low, model.lowest);
    const [lowEnd] = here;
    if (!lowEnd) return;
    const line: Point[] = section.uniform
      ? [
          [x(lowEnd.capacity), y(low)],
          [x(lowEnd.capacity), y(section.high)],
        ]
      : here
          .map((use): Point => [x(use.capacity), y(model.levels[use.check.level]?.z ?? low)])
          .sort((one, other) => other[1] - one[1]);
    const before = lines.at(-1);
    const end = before?.at(-1);
    // One section on another is one step; telescoped ones overlap and stand side by side.
    if (before && end && Math.abs(end[1] - y(low)) < 0.01) before.push(...line);
    else lines.push(line);
  });
  const couple = own
    .filter((use) => use.check.link === 'tower-top' && proven(use))
    .map((use): Point => [x(use.capacity), y(model.levels[use.check.level]?.z ?? tower.top)]);
  const sides = lines.flatMap((line) =>
    line.slice(1).map((to, index) => {
      const from = line[index] as Point;
      return Math.abs(to[1] - from[1]) > 4 ? hachures(from, to, [6, -4]) : group({});
    }),
  );
  const beyond = own.some((use) => proven(use) && use.capacity > end);
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

function describe({ inquiry, uses, model, links }: Assessment): string {
  const { units } = inquiry.station;
  const rows = uses
    .filter(({ check }) => (check.place === 'foot' || check.place === 'joint') && check.link === 'tower')
    .slice(0, 60)
    .map(({ check, demand, capacity, bad }) => {
      const dimension = DIMENSION[check.of];
      const shown = Number.isFinite(bad)
        ? `${said(capacity, dimension, units)}, use ${useFigures(bad)}`
        : 'nothing proven';
      return `${check.of} at ${said(model.levels[check.level]?.z ?? 0, 'length', units)} ${said(demand, dimension, units)} of ${shown}`;
    });
  const worst = links[0]?.result;
  const first =
    worst?.height === undefined
      ? 'The use of the tower is not shown.'
      : `Use is worst, ${useFigures(worst.use)}, at ${said(worst.height, 'length', units)}.`;
  return [first, ...(rows.length > 0 ? [`${rows.join('; ')}.`] : [])].join(' ');
}
