import type { Lay } from '../areas/index.ts';
import { GRAVITY, INCH, POUND } from '../foundation/index.ts';
import {
  type CableRun,
  type Counterpoise,
  type Foundation,
  type Load,
  type Mast,
  movedLoad,
  STANDARD_PIPES,
  type StandardPipe,
  type Station,
  sectionModulusOfTube,
  staysOn,
} from '../structure/index.ts';
import type { Assessment } from './assess.ts';
import type { OwnRemedy } from './checks/check-kind.ts';
import { CHECK_KIND } from './checks/check-kinds.ts';
import { heaviestLoads } from './sensitivity.ts';

/** A tube that a mast may be made of; of a standard pipe its trade name. */
export interface OtherTube {
  readonly outside: number;
  readonly wall: number;
  readonly pipe?: StandardPipe;
}

type Footing = Exclude<Foundation, { kind: 'manufacturer' }>;

/** What may be changed about what hangs on a tower, its mast, its lines and its footing. */
export type RemedyChange =
  | { readonly of: 'lines-arranged'; readonly runs: readonly CableRun[]; readonly laid: Lay }
  /** One line of a run fewer. */
  | { readonly of: 'line-off'; readonly run: CableRun }
  /** Hung on the axis, not beside it. */
  | { readonly of: 'load-to-axis'; readonly load: Load }
  /** Downwards [m]. */
  | { readonly of: 'load-lower'; readonly load: Load; readonly by: number }
  /** At its tip [m]. */
  | { readonly of: 'mast-shorter'; readonly by: number }
  /** Its lower end farther down in the tower [m]; what reaches above its highest load goes down, beyond that it is longer. */
  | { readonly of: 'mast-inside'; readonly by: number; readonly longer: number }
  /** A larger tube, or one of a thicker wall, of the same material and yield. */
  | { readonly of: 'mast-larger'; readonly tube: OtherTube }
  /** Both sides of a block longer, a pier deeper [m]. */
  | { readonly of: 'footing-larger'; readonly by: number; readonly footing: Footing }
  /** A counterpoise, or a heavier one [kg]. */
  | { readonly of: 'counterpoise'; readonly more: number; readonly counterpoise: Counterpoise }
  /** Another load of so much of its stated area or force. */
  | { readonly of: 'load-smaller'; readonly load: Load; readonly times: number }
  | { readonly of: 'load-off'; readonly load: Load };

export type RemedyName = RemedyChange['of'];
type AssessedCheck = Assessment['checks'][number];

/** A change, and what it puts in place of what the station has. */
export interface Changed {
  readonly change: RemedyChange;
  readonly parts: Partial<Station>;
}

/** Changes of one thing. */
export type Search =
  /** One after the other, the cheapest first. */
  | { readonly of: 'each'; readonly changes: readonly Changed[] }
  /** By so many grains: the fewest are the cheapest, and more help more. A short way is told beside a longer. */
  | { readonly of: 'grains'; readonly most: number; readonly by: (grains: number) => Changed; readonly short?: number };

/** Loads that are changed, those with the largest moment. @source derived */
const LOADS_CHANGED = 4;
/** The short way down that is told beside a longer: two feet, or half a metre [m]. @source derived */
export const LOWERING_STEP = { us: 0.6096, si: 0.5 } as const;
/** Ways down are whole numbers of this, so that the figure told is the figure checked [m]. @source derived */
export const LOWERING_GRAIN = { us: 0.03048, si: 0.05 } as const;
/** Kept free between a load on the mast and what is below it: a foot, or 0.3 m [m]. @source common-practice */
export const KEPT_FREE = { us: 0.3048, si: 0.3 } as const;
/** No load on the tower is sent below this share of it: it hangs there for its height. @source derived */
const LOWEST_SHARE = 0.5;
/** Steps of a smaller load, and the smallest that is tried. @source derived */
export const SMALLER = { grain: 0.05, most: 10 } as const;
/** A mast to be cut by less stays as it is [m]. @source derived */
const WORTH_CUTTING = 0.05;
/** Steps of a mast farther inside: half a foot, or 0.1 m [m]. @source derived */
export const INSIDE_GRAIN = { us: 0.1524, si: 0.1 } as const;
/** How much farther a mast is sent inside at most [m]: ten feet. @source common-practice */
const INSIDE_AT_MOST = 3.048;
/** Steps of a larger footing: half a foot, or 0.1 m [m]. @source derived */
export const FOOTING_GRAIN = { us: 0.1524, si: 0.1 } as const;
/** A footing is made this many times as large at most. @source common-practice */
const FOOTING_AT_MOST = 2;
/** Steps of a heavier counterpoise: 10 lb, or 5 kg [kg]. @source derived */
export const COUNTERPOISE_GRAIN = { us: 10 * POUND, si: 5 } as const;
/** A counterpoise leaves this share of what would balance the tower, so that a line always pulls. @source common-practice */
const LEFT_TO_PULL = 0.1;
/** Walls of tubes between the sizes of pipe: 1/8 to 1/2 in [m]. @source common-practice */
const TUBE_WALLS = [1 / 8, 3 / 16, 1 / 4, 5 / 16, 3 / 8, 1 / 2].map((wall) => wall * INCH);
/** A counterpoise nearer to the hinge would have to be heavier than what it spares [m]. @source common-practice */
const LEAST_ARM = 0.5;
/** A wall thicker than this share of the outside leaves a bar, no tube. @source common-practice */
const THICKEST_WALL = 0.25;
/** Two measures apart by less than this are alike [m]. @source derived */
const ALIKE = 1e-9;

/** Whole grains in a length, the last digit forgiven. */
const grainsIn = (length: number, grain: number) => Math.max(0, Math.floor(length / grain + 1e-6));

/** Whether a remedy is tried for a check of this kind alone. */
function helps({ kind }: AssessedCheck, remedy: OwnRemedy): boolean {
  return CHECK_KIND[kind].ownRemedies?.includes(remedy) ?? false;
}

/** The load that the check is of, and those that bend the base most. */
function loadsChanged(own: Assessment, check: AssessedCheck): readonly Load[] {
  const ofCheck = own.input.station.loads.filter((load) => helps(check, 'load') && load.at === check.at);
  return [...new Set([...ofCheck, ...heaviestLoads(own, LOADS_CHANGED)])];
}

const one = (change: RemedyChange, parts: Partial<Station>): Search => ({ of: 'each', changes: [{ change, parts }] });

const withLoad = ({ loads }: Station, load: Load, other: Load) => ({
  loads: loads.map((each) => (each === load ? other : each)),
});

/** What is tried of every kind of remedy, what costs least to do first. */
export const REMEDY_SEARCHES: Readonly<
  Record<RemedyName, (own: Assessment, check: AssessedCheck) => readonly Search[]>
> = {
  'lines-arranged': ({ input }) => linesArranged(input.station),
  'line-off': ({ input }) => linesOff(input.station),
  'load-to-axis': (own, check) =>
    loadsChanged(own, check)
      .filter(({ offset }) => offset > 0)
      .map((load) => one({ of: 'load-to-axis', load }, withLoad(own.input.station, load, { ...load, offset: 0 }))),
  'load-lower': (own, check) => loadsChanged(own, check).flatMap((load) => waysDown(own.input.station, load)),
  'mast-shorter': ({ input }) => mastShorter(input.station),
  'mast-inside': ({ input }) => mastInside(input.station),
  'mast-larger': ({ input }, check) => (helps(check, 'mast-tube') ? largerTubes(input.station.mast) : []),
  'footing-larger': ({ input }, check) => (helps(check, 'footing') ? footingLarger(input.station) : []),
  counterpoise: (own, check) => (helps(check, 'counterpoise') ? heavierCounterpoise(own) : []),
  'load-smaller': (own, check) => loadsChanged(own, check).flatMap((load) => smallerLoads(own.input.station, load)),
  'load-off': (own, check) => loadsOff(own.input.station, loadsChanged(own, check)),
};

/**
 * How far down a load may go: above the tower's top to just above that and what else is below it, else to half the tower's
 * height and no lower than its highest support. A wire stays, since its pull would be another.
 */
function waysDown(station: Station, load: Load): readonly Search[] {
  if (load.shape.kind === 'wire') return [];
  const { units, tower, mast, loads } = station;
  const grain = LOWERING_GRAIN[units];
  const support = Math.max(tower.foot, ...tower.held.map(({ height }) => height));
  const below = loads.filter((each) => each !== load && each.high > tower.top && each.low <= load.low);
  const lowest =
    load.high > tower.top
      ? Math.max(tower.top, mast?.bearing ?? 0, ...below.map(({ high }) => high)) + KEPT_FREE[units]
      : Math.max(support, tower.foot + LOWEST_SHARE * (tower.top - tower.foot));
  const most = grainsIn(load.low - lowest, grain);
  if (most === 0 || !staysOn(station, load, -most * grain)) return [];
  const by = (grains: number): Changed => ({
    change: { of: 'load-lower', load, by: grains * grain },
    parts: withLoad(station, load, movedLoad(load, -grains * grain)),
  });
  return [{ of: 'grains', most, by, short: Math.round(LOWERING_STEP[units] / grain) }];
}

function mastShorter(station: Station): readonly Search[] {
  const { mast } = station;
  if (!mast || mast.pieces) return [];
  const by = mast.tip - lowestTip(station, mast);
  if (by <= WORTH_CUTTING) return [];
  return [one({ of: 'mast-shorter', by }, { mast: { ...mast, length: mast.length - by, tip: mast.tip - by } })];
}

/** A mast reaches to its highest load and line, and to its bearing; what stands up beyond it needs it as it is. */
function lowestTip({ tower, loads, cables }: Station, mast: Mast): number {
  const onMast = loads.filter((load) => load.on === 'mast');
  if (onMast.length === 0) return mast.tip;
  const reached = [...onMast, ...cables].map(({ high }) => Math.min(high, mast.tip));
  return Math.max(tower.top, mast.bearing ?? 0, ...reached);
}

function mastInside(station: Station): readonly Search[] {
  const { mast, tower, units } = station;
  if (mast?.foot === undefined || mast.bearing === undefined || mast.pieces) return [];
  const { foot } = mast;
  const grain = INSIDE_GRAIN[units];
  const most = grainsIn(Math.min(foot - tower.foot, INSIDE_AT_MOST), grain);
  const lowest = lowestTip(station, mast);
  const by = (grains: number): Changed => {
    const down = grains * grain;
    const tip = Math.max(lowest, mast.tip - down);
    const deeper = { ...mast, foot: foot - down, tip, length: tip - (foot - down) };
    return { change: { of: 'mast-inside', by: down, longer: deeper.length - mast.length }, parts: { mast: deeper } };
  };
  return most === 0 ? [] : [{ of: 'grains', most, by }];
}

/** Standard pipes no smaller outside, and thicker walls of the same outside, with a larger section modulus, the lightest first. */
function largerTubes(mast: Mast | undefined): readonly Search[] {
  if (mast?.wall === undefined || mast.yieldStrength === undefined) return [];
  const { outside, wall } = mast;
  const now = sectionModulusOfTube.of(outside, wall);
  const metal = (tube: OtherTube) => (tube.outside - tube.wall) * tube.wall;
  const pipes = STANDARD_PIPES.filter((pipe) => pipe.outside >= outside - ALIKE).map(
    (pipe): OtherTube => ({ outside: pipe.outside, wall: pipe.wall, pipe }),
  );
  const thicker = TUBE_WALLS.filter((other) => other <= THICKEST_WALL * outside).map(
    (other): OtherTube => ({ outside, wall: other }),
  );
  const changes = [...pipes, ...thicker]
    .filter((tube) => sectionModulusOfTube.of(tube.outside, tube.wall) > now * (1 + ALIKE))
    .sort((a, b) => metal(a) - metal(b))
    .map((tube): Changed => {
      const parts = { mast: { ...mast, outside: tube.outside, wall: tube.wall } };
      return { change: { of: 'mast-larger', tube }, parts };
    });
  return [{ of: 'each', changes }];
}

function footingLarger({ tower, units }: Station): readonly Search[] {
  const { foundation } = tower;
  if (!foundation || foundation.kind === 'manufacturer') return [];
  const grain = FOOTING_GRAIN[units];
  const size = foundation.kind === 'block' ? Math.max(foundation.length, foundation.width) : foundation.depth;
  const by = (grains: number): Changed => {
    const more = grains * grain;
    const footing =
      foundation.kind === 'block'
        ? { ...foundation, length: foundation.length + more, width: foundation.width + more }
        : { ...foundation, depth: foundation.depth + more };
    const parts = { tower: { ...tower, foundation: footing } };
    return { change: { of: 'footing-larger', by: more, footing }, parts };
  };
  return [{ of: 'grains', most: grainsIn((FOOTING_AT_MOST - 1) * size, grain), by }];
}

/** At the place of the one there is; else a little above the base, where a hinge higher up leaves room below it. */
function heavierCounterpoise({ input: { station }, raising }: Assessment): readonly Search[] {
  const { tower, units } = station;
  const flat = raising?.raising?.rows[0]?.moment ?? 0;
  const { counterpoise, hingeHeight = tower.foot } = tower;
  const below = counterpoise?.below ?? hingeHeight - tower.foot - KEPT_FREE[units];
  if (!(flat > 0) || below < LEAST_ARM) return [];
  const grain = COUNTERPOISE_GRAIN[units];
  const by = (grains: number): Changed => {
    const more = grains * grain;
    const heavier = { mass: (counterpoise?.mass ?? 0) + more, below };
    const parts = { tower: { ...tower, counterpoise: heavier } };
    return { change: { of: 'counterpoise', more, counterpoise: heavier }, parts };
  };
  return [{ of: 'grains', most: grainsIn(((1 - LEFT_TO_PULL) * flat) / (GRAVITY * below), grain), by }];
}

function linesArranged({ tower, cables }: Station): readonly Search[] {
  const laidAs = (laid: Lay, runs: readonly CableRun[]): readonly Search[] => {
    const changed = cables.map((run) => (runs.includes(run) ? { ...run, laid } : run));
    return runs.length === 0 ? [] : [one({ of: 'lines-arranged', runs, laid }, { cables: changed })];
  };
  return [
    ...laidAs(
      'bundle',
      cables.filter(({ count, laid }) => count > 1 && (laid === 'single' || laid === 'flat')),
    ),
    ...laidAs(
      'inside',
      cables.filter((run) => run.laid !== 'inside' && run.high <= tower.top && poleAllAlong(run, tower)),
    ),
  ];
}

function poleAllAlong(run: CableRun, { sections }: Station['tower']): boolean {
  const along = sections.filter(({ low, high }) => low < run.high && high > run.low);
  return along.length > 0 && along.every(({ shape }) => shape?.kind === 'pole');
}

function linesOff({ cables }: Station): readonly Search[] {
  // The last line feeds something.
  if (cables.reduce((sum, { count }) => sum + count, 0) < 2) return [];
  return cables.map((run) => {
    const fewer = run.count > 1 ? [oneLineLess(run)] : [];
    return one({ of: 'line-off', run }, { cables: cables.flatMap((each) => (each === run ? fewer : [each])) });
  });
}

/** A ladder has no more rows than lines. */
function oneLineLess(run: CableRun): CableRun {
  const count = run.count - 1;
  const { inRows } = run;
  return { ...run, count, ...(inRows ? { inRows: { ...inRows, rows: Math.min(inRows.rows, count) } } : {}) };
}

function loadsOff({ loads }: Station, tried: readonly Load[]): readonly Search[] {
  // A tower with nothing on it is no remedy.
  if (loads.length < 2) return [];
  return tried.map((load) => one({ of: 'load-off', load }, { loads: loads.filter((each) => each !== load) }));
}

function smallerLoads(station: Station, load: Load): readonly Search[] {
  const { kind } = load.shape;
  if (kind !== 'stated' && kind !== 'stated-force') return [];
  const by = (grains: number): Changed => {
    const times = Number((1 - grains * SMALLER.grain).toFixed(2));
    return { change: { of: 'load-smaller', load, times }, parts: withLoad(station, load, smallerLoad(load, times)) };
  };
  return [{ of: 'grains', most: SMALLER.most, by }];
}

function smallerLoad(load: Load, times: number): Load {
  const { shape } = load;
  if (shape.kind === 'stated-force') return { ...load, shape: { ...shape, force: shape.force * times } };
  if (shape.kind !== 'stated') return load;
  const { front, side, icedArea } = shape;
  const iced = icedArea === undefined ? {} : { icedArea: icedArea * times };
  return { ...load, shape: { ...shape, front: front * times, side: side * times, ...iced } };
}
