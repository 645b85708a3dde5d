import { type DragPart, type Lines, latticeParts, partsOfLines, partsOfShape, poleParts } from '../areas/index.ts';
import { cite, defineFormula, evaluate, type Trace, under, variable } from '../foundation/index.ts';
import { counterpoiseLoad } from './counterpoise.ts';
import { outsideAlong } from './mast-tubes.ts';
import { type Overlaps, type Seen, seenOf } from './overlap.ts';
import type { CableRun, Load, Mast, Section, Station, Tower } from './station.ts';

export const WIND_ITEM_KINDS = ['load', 'mast', 'lines', 'guys', 'counterpoise', 'wire-pull', 'tower'] as const;

/** One thing the wind touches: a row of the wind loads. */
export interface WindItem {
  readonly name: string;
  /** JSON pointer into the plan. */
  readonly at: string;
  readonly kind: (typeof WIND_ITEM_KINDS)[number];
  readonly parts: readonly DragPart[];
  /**
   * `still` is alike from all sides; `turning` shares the rotator's unknown heading; `fixed` has a heading of its own;
   * `own-worst` has one nobody told, so it takes its own worst.
   */
  readonly turn: 'still' | 'turning' | 'fixed' | 'own-worst';
  /** ψ, clockwise from true north; of turning things at rotator zero [rad]. */
  readonly heading: number;
  readonly carriedBy: 'tower' | 'mast';
  /** From the axis to the middle of its area [m]. */
  readonly offset: number;
}

/** What hangs on the tower's axis and is alike from all sides. */
export const ALIKE_ON_TOWER = { turn: 'still', heading: 0, carriedBy: 'tower', offset: 0 } as const;

/** Everything the wind touches but the tower itself, in the order of the plan: loads, mast, lines, guys, counterpoise. */
export function appurtenanceItems(station: Station, trace?: Trace): readonly WindItem[] {
  const turnsWithOthers = station.loads.filter((load) => load.turns).length > 1;
  const items = station.loads.map((load) => under(trace, load.name, () => loadItem(load, turnsWithOthers, trace)));
  if (station.mast) items.push(...mastItems(station.mast, station.tower, trace));
  for (const run of station.cables) {
    const item = under(trace, run.name, () => linesItem(run, station.tower, trace));
    if (item) items.push(item);
  }
  station.tower.held.forEach((held, index) => {
    const item = under(trace, `guys ${index + 1}`, () => guysItem(held, index, station.tower, trace));
    if (item) items.push(item);
  });
  under(trace, 'counterpoise', () => {
    const counterpoise = counterpoiseLoad(station.tower, trace);
    if (counterpoise) items.push({ ...loadItem(counterpoise, false, trace), kind: 'counterpoise' });
  });
  return items;
}

function loadItem(load: Load, turnsWithOthers: boolean, trace: Trace | undefined): WindItem {
  const parts = partsOfShape(load.shape, load.low, load.high, load.count, trace);
  const heading = load.shape.kind === 'wire' ? load.shape.heading : (load.heading ?? 0);
  const allAlike = parts.every((part) => part.front === part.side);
  const notGiven = load.heading === undefined && load.shape.kind !== 'wire';
  // What turns alone meets the wind as it likes; which way it points beside others only its heading tells.
  const ownWorst = notGiven && (!load.turns || turnsWithOthers);
  const turn = allAlike ? 'still' : ownWorst ? 'own-worst' : load.turns ? 'turning' : 'fixed';
  return { name: load.name, at: load.at, kind: 'load', parts, turn, heading, carriedBy: load.on, offset: load.offset };
}

function mastItems(mast: Mast, tower: Tower, trace: Trace | undefined): WindItem[] {
  const foot = mast.foot ?? tower.top;
  const stretches = outsideAlong(mast, foot);
  const shadow = stretches.reduce((sum, { low, high, outside }) => sum + (high - low) * outside, 0);
  // Of the whole member: its length over its width, on average where it is stepped.
  const aspect = mast.length ** 2 / shadow;
  const tube = (name: string, low: number, high: number): WindItem[] => {
    if (high <= low) return [];
    const within = stretches
      .map((each) => ({ ...each, low: Math.max(low, each.low), high: Math.min(high, each.high) }))
      .filter((each) => each.high > each.low);
    const parts = under(trace, name, () =>
      within.flatMap(({ outside, ...ends }) => {
        const length = ends.high - ends.low;
        const shape = { kind: 'tube', along: 'upright', diameter: [outside, outside], length } as const;
        const rule = { of: 'round', aspect, diameter: outside } as const;
        return partsOfShape(shape, ends.low, ends.high, 1, trace).map((part) => ({ ...part, rule }));
      }),
    );
    return [{ name, at: '/mast', kind: 'mast', parts, turn: 'still', heading: 0, carriedBy: 'mast', offset: 0 }];
  };
  const items = tube('mast above the top', Math.max(foot, tower.top), mast.tip);
  for (const { low, high } of outsidePoles(tower, { low: foot, high: tower.top }))
    items.push(...tube('mast inside the tower', low, high));
  return items;
}

/** What of a stretch inside the tower the wind reaches: inside a lattice it does, inside a pole it does not. */
function outsidePoles(tower: Tower, whole: Seen): readonly Seen[] {
  const poles = tower.sections.filter(({ shape }) => shape?.kind === 'pole');
  const cut = (open: readonly Seen[], pole: Seen) =>
    open.flatMap(({ low, high }) => [
      { low, high: Math.min(high, pole.low) },
      { low: Math.max(low, pole.high), high },
    ]);
  return poles.reduce(cut, [whole]).filter(({ low, high }) => high - low > SLIVER);
}

/** A stretch this short is none [m]. */
const SLIVER = 1e-6;

function linesItem(run: CableRun, tower: Tower, trace: Trace | undefined): WindItem | undefined {
  if (run.high <= run.low) return undefined;
  const stretches = run.laid === 'inside' ? outsidePoles(tower, run) : [run];
  const parts = stretches.flatMap(({ low, high }) => partsOfLines(run, low, high, trace));
  if (parts.length === 0) return undefined;
  return { name: run.name, at: run.at, kind: 'lines', parts, ...ALIKE_ON_TOWER };
}

export const guysArea = defineFormula({
  id: 'area-of-guys',
  title: 'Area across the wind of the upper halves of the guys at one height',
  symbol: 'A_g',
  unit: 'area',
  expression: 'n * k * d * l / 2',
  variables: [
    variable('n', 'how many', 'one', 1, 12),
    variable('k', 'share that crosses the wind: 1 − cos²β/2 for three or more evenly spread, else 1', 'one', 0.5, 1),
    variable('d', 'diameter', 'diameter', 0.002, 0.05),
    variable('l', 'length', 'length', 1, 200),
  ],
  cite: cite('derived', 'cross-flow on a sloping round member, summed over evenly spread headings', 'derived'),
  of: (count: number, share: number, diameter: number, length: number) => (count * share * diameter * length) / 2,
});

/** How far below its height a support takes hold, so that what it takes does not count just above it [m]. */
const COLLAR = 0.01;

/** The guys at one height, as far as the plan tells them: half of their wind is the tower's, half the anchors'. */
function guysItem(
  { height, guys }: Tower['held'][number],
  index: number,
  tower: Tower,
  trace: Trace | undefined,
): WindItem | undefined {
  if (!guys) return undefined;
  const { count, diameter, radius } = guys;
  const length = Math.hypot(radius, height - tower.foot);
  const share = count >= 3 ? 1 - (radius / length) ** 2 / 2 : 1;
  const area = evaluate(trace, guysArea, [count, share, diameter, length]);
  const at = height - COLLAR;
  const rule = { of: 'round', aspect: length / diameter, diameter } as const;
  const part = { low: at, high: at, what: 'half the guys', front: area, side: area, diameter, rule };
  return {
    name: `guys at support ${index + 1}`,
    at: `/tower/supportedAt/${index}`,
    kind: 'guys',
    parts: [part],
    ...ALIKE_ON_TOWER,
  };
}

/**
 * The tower itself, one item a section, as much of it as the wind sees.
 *
 * @param tower the tower; sections without a shape give nothing, nor does what would be below its foot
 * @param unknownSolidity solid share to take where nothing is said of a lattice's members [-]
 * @param overlaps what it sees of lattices in each other
 */
export function towerItems(
  tower: Tower,
  unknownSolidity: number,
  overlaps: Overlaps,
  trace?: Trace,
): readonly WindItem[] {
  return tower.sections.flatMap((section, number) => {
    const { low, high } = seenOf(tower.sections, number, overlaps);
    const seen = { low: Math.max(low, tower.foot), high };
    const parts = under(trace, section.name, () =>
      sectionParts(section, tower, unknownSolidity, trace).flatMap((part) => seenPart(part, seen)),
    );
    if (parts.length === 0) return [];
    return [{ name: section.name, at: section.at, kind: 'tower', parts, ...ALIKE_ON_TOWER } as const];
  });
}

/** As much of a part as is seen. */
function seenPart(part: DragPart, seen: Seen): readonly DragPart[] {
  if (part.low >= seen.low && part.high <= seen.high) return [part];
  const [low, high] = [Math.max(part.low, seen.low), Math.min(part.high, seen.high)];
  if (high <= low) return [];
  const share = (high - low) / (part.high - part.low);
  const seenOf = (whole: DragPart): DragPart => {
    const { front, side, asAt } = whole;
    const ends = { low, high, front: share * front, side: share * side };
    return { ...whole, ...ends, ...(asAt ? { asAt: (z, trace) => seenOf(asAt(z, trace)) } : {}) };
  };
  return [seenOf(part.asAt?.((low + high) / 2) ?? part)];
}

function sectionParts(
  section: Section,
  tower: Tower,
  unknownSolidity: number,
  trace: Trace | undefined,
): readonly DragPart[] {
  const { shape, low, high } = section;
  if (!shape) return [];
  if (shape.kind === 'lattice') return latticeParts(shape, low, high, unknownSolidity, 1, trace);
  const meanWidth = (shape.width[0] + shape.width[1]) / 2;
  return poleParts(shape, low, high, (tower.top - tower.foot) / meanWidth, 1);
}

/** Lines a maker allowed for; how they are arranged may be told by nobody. */
export type RatedLines = Omit<Lines, 'laid'> & Partial<Pick<Lines, 'laid'>>;

/**
 * Lines the maker already allowed for, from the foot to the top; where nobody tells how they lay, as what credits least: a
 * bundle, of a pole inside it.
 *
 * @param lines how many, of what diameter
 * @source common-practice
 */
export function ratedLines(lines: RatedLines, tower: Tower, trace?: Trace): WindItem {
  const { laid } = lines;
  const whole = { low: tower.foot, high: tower.top };
  const stretches = laid === undefined || laid === 'inside' ? outsidePoles(tower, whole) : [whole];
  const parts = stretches.flatMap(({ low, high }) => partsOfLines({ laid: 'bundle', ...lines }, low, high, trace));
  return {
    name: 'lines allowed for in the rating',
    at: '',
    kind: 'lines',
    parts,
    ...ALIKE_ON_TOWER,
  };
}
