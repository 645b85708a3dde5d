import type { Lay } from '../areas/index.ts';
import { Refusal } from '../foundation/index.ts';
import {
  type CableRun,
  type Load,
  type Mast,
  movedLoad,
  STANDARD_PIPES,
  type StandardPipe,
  type Station,
  sectionModulusOfTube,
  staysOn,
} from '../structure/index.ts';
import { type Assessment, assess } from './assess.ts';
import type { CheckInput } from './check-input.ts';
import type { OwnRemedy } from './checks/check-kind.ts';
import { CHECK_KIND } from './checks/check-kinds.ts';
import { canBeLowered } from './holds-to-ratio.ts';
import { heaviestLoads } from './sensitivity.ts';
import { type Verdict, worstVerdict } from './verdict.ts';

/** What may be changed about what hangs on a tower, its mast and its lines. */
export type RemedyChange =
  /** Downwards [m]. */
  | { readonly of: 'load-lower'; readonly load: Load; readonly by: number }
  | { readonly of: 'load-off'; readonly load: Load }
  /** Hung on the axis, not beside it. */
  | { readonly of: 'load-to-axis'; readonly load: Load }
  /** Another load of so much of its stated area or force. */
  | { readonly of: 'load-smaller'; readonly load: Load; readonly times: number }
  /** At its tip [m]. */
  | { readonly of: 'mast-shorter'; readonly by: number }
  /** Of the same material and yield. */
  | { readonly of: 'mast-larger'; readonly pipe: StandardPipe }
  | { readonly of: 'lines-arranged'; readonly runs: readonly CableRun[]; readonly laid: Lay }
  /** One line of a run fewer. */
  | { readonly of: 'line-off'; readonly run: CableRun };

type AssessedCheck = Assessment['checks'][number];

/** The answer to a changed plan. */
export interface RemedyOutcome {
  readonly change: RemedyChange;
  /** The check that is to be helped, as the changed plan has it; absent where it went with its load. */
  readonly check?: AssessedCheck;
  /** The check that then holds to the lowest gust. */
  readonly weakest?: AssessedCheck;
  /** Of the whole changed plan. */
  readonly verdict: Verdict;
  /** Another check then holds to hardly more than the weakest did: the weakness has only moved. */
  readonly onlyMoves: boolean;
}

export interface Remedy extends RemedyOutcome {
  /** The same remedy to another measure, the least first. */
  readonly also: readonly RemedyOutcome[];
}

export interface Remedies {
  /** The check they are for, as it is now. */
  readonly check: AssessedCheck;
  /** At most three, each of another kind, the best first; none where nothing tried helps and makes nothing worse. */
  readonly remedies: readonly Remedy[];
  /** A hinge or sections that slide: it can also be lowered before the wind comes. */
  readonly canBeLowered: boolean;
}

/** How many are told. @source derived */
const REMEDIES_TOLD = 3;
/** Loads that are changed, those with the largest moment. @source derived */
const LOADS_CHANGED = 4;
/** The short way down that is tried: two feet, or half a metre [m]. @source derived */
export const LOWERING_STEP = { us: 0.6096, si: 0.5 } as const;
/** Ways down are whole numbers of this, so that the figure told is the figure checked [m]. @source derived */
export const LOWERING_GRAIN = { us: 0.03048, si: 0.05 } as const;
/** Kept free between a load on the mast and what is below it: a foot, or 0.3 m [m]. @source common-practice */
export const KEPT_FREE = { us: 0.3048, si: 0.3 } as const;
/** No load on the tower is sent below this share of it: it hangs there for its height. @source derived */
const LOWEST_SHARE = 0.5;
/** The smaller load that is tried. @source derived */
export const SMALLER_LOAD = 0.75;
/** The next larger tubes that are tried. @source derived */
const PIPES_TRIED = 5;
/** A use that falls by less is not worth a word. @source derived */
const WORTH_TELLING = 0.01;
/** A lowest gust that rises by less has not risen. @source derived */
const HARDLY = 0.005;
/** Two answers apart by less than this are alike. @source derived */
const ALIKE = 1e-9;
/** A mast to be cut by less stays as it is [m]. @source derived */
const WORTH_CUTTING = 0.05;

/**
 * What would help the weakest check most: every remedy is tried by checking the plan again with it and with nothing else
 * changed, and is told by that answer.
 *
 * The check is the one that holds to the lowest gust; where that is not over and something else is, by weight or by the pull on
 * its gear, that; else the one with the largest ratio. A remedy helps where the ratio of
 * the check falls and no check gets a worse verdict or a lower gust than the lowest now. Ranked by the lowest gust that then
 * remains, then by the ratio of the check. To answer an open question well is no remedy: it changes what is known, not what
 * stands. Electrical reasons to keep antennas apart are not looked at.
 *
 * @returns the check and its remedies; undefined where no check has a ratio that is proven
 */
export function remediesOf(own: Assessment): Remedies | undefined {
  const check = checkToHelp(own);
  if (!check) return undefined;
  const tried = triedChanges(own, check)
    .flatMap((change) => trial(own, check, change) ?? [])
    .filter((each) => each.helps)
    .sort(byGain);
  const kinds = new Set<string>();
  const best = tried.filter(({ outcome: { change } }) => {
    const kind = kindOf(change);
    return kinds.has(kind) ? false : kinds.add(kind);
  });
  return {
    check,
    remedies: best
      .slice(0, REMEDIES_TOLD)
      .map((each) => inMeasures(own, check, each))
      .sort((a, b) => byGain(a.told, b.told))
      .map(({ told, also }) => ({ ...told.outcome, also: also.map(({ outcome }) => outcome) })),
    canBeLowered: canBeLowered(own.input.station),
  };
}

function byGain(a: Trial, b: Trial): number {
  if (a.stationGain !== b.stationGain) return b.stationGain - a.stationGain;
  return a.checkGain === b.checkGain ? 0 : b.checkGain - a.checkGain;
}

/** Lines laid in a bundle and lines taken inside are two kinds. */
function kindOf(change: RemedyChange): string {
  return change.of === 'lines-arranged' ? `${change.of} ${change.laid}` : change.of;
}

function checkToHelp(own: Assessment): AssessedCheck | undefined {
  const weakest = checkOf(own, own.weakest);
  // What is over whatever the wind does not wait for a gust.
  const over = own.checks.filter(
    ({ kind, verdict, result }) => verdict === 'over' && CHECK_KIND[kind].loadedBy !== 'fall' && result,
  );
  if (weakest && (weakest.verdict === 'over' || over.length === 0)) return weakest;
  if (over.length > 0) return over.reduce((most, each) => (ratioOf(each) > ratioOf(most) ? each : most));
  // What is compared only in part, or with nothing, has no use that a remedy could be told by.
  const shown = own.checks.filter(
    ({ result, because }) =>
      result &&
      Number.isFinite(result.ratio) &&
      result.ratio > 0 &&
      because !== 'missing' &&
      because !== 'beyond-rating',
  );
  return shown.reduce<AssessedCheck | undefined>(
    (most, each) => (ratioOf(each) > ratioOf(most) ? each : most),
    undefined,
  );
}

function checkOf(assessment: Assessment, id: string | undefined): AssessedCheck | undefined {
  return assessment.checks.find((check) => check.id === id);
}

function ratioOf(check: AssessedCheck | undefined): number {
  return check?.result?.ratio ?? 0;
}

function gustOf(check: AssessedCheck | undefined): number | undefined {
  return check?.result?.holdsTo?.gust;
}

interface Trial {
  readonly outcome: RemedyOutcome;
  readonly helps: boolean;
  /** The lowest gust over that without the change. */
  readonly stationGain: number;
  /** The use of the check without the change over that with it. */
  readonly checkGain: number;
}

/** The changed plan checked again; undefined where it cannot be computed, so that nothing can be said of it. */
function trial(own: Assessment, check: AssessedCheck, change: RemedyChange): Trial | undefined {
  const other = answerTo(changedBy(own.input, change));
  if (!other) return undefined;
  const after = checkOf(other, check.id);
  const weakest = checkOf(other, other.weakest);
  const [before, then] = [gustOf(checkOf(own, own.weakest)), gustOf(weakest)];
  const stationGain = before === undefined || then === undefined ? 1 : then / before;
  const checkGain = after ? ratioOf(check) / ratioOf(after) : Number.POSITIVE_INFINITY;
  const outcome: RemedyOutcome = {
    change,
    ...(after ? { check: after } : {}),
    ...(weakest ? { weakest } : {}),
    verdict: other.verdict,
    onlyMoves: own.weakest !== undefined && weakest?.id !== check.id && stationGain < 1 + HARDLY,
  };
  const gone = change.of === 'load-off' ? `antenna:${change.load.name}` : undefined;
  const helps =
    (after ? isHelped(check, after) : check.id === gone) &&
    (before === undefined || then !== undefined) &&
    stationGain >= 1 - ALIKE &&
    own.checks.every((each) => each.id === gone || noWorse(each, checkOf(other, each.id))) &&
    other.checks.every((each) => checkOf(own, each.id) !== undefined);
  return { outcome, helps, stationGain: alike(stationGain), checkGain: alike(checkGain) };
}

function isHelped(check: AssessedCheck, after: AssessedCheck): boolean {
  if (after.because === 'balanced') return true;
  return after.result !== undefined && ratioOf(after) <= ratioOf(check) * (1 - WORTH_TELLING);
}

function answerTo(input: CheckInput): Assessment | undefined {
  try {
    return assess(input);
  } catch (error) {
    if (error instanceof Refusal) return undefined;
    throw error;
  }
}

/** What was shown is shown, with no worse verdict; a check that is not there any more shows nothing. */
function noWorse(before: AssessedCheck, after: AssessedCheck | undefined): boolean {
  if (!after) return before.result === undefined;
  // What is on the axis asks a rotator for nothing that a rule is known for.
  if (after.because === 'balanced') return true;
  if (before.result?.holdsTo && !after.result?.holdsTo) return false;
  return worstVerdict([before.verdict, after.verdict]) === before.verdict;
}

/** Without the last digits, so that what is alike ranks alike. */
function alike(gain: number): number {
  return Number.isFinite(gain) ? Math.round(gain * 1e6) / 1e6 : gain;
}

interface InMeasures {
  readonly told: Trial;
  readonly also: readonly Trial[];
}

function inMeasures(own: Assessment, check: AssessedCheck, best: Trial): InMeasures {
  const { change } = best.outcome;
  if (change.of === 'load-lower') return inWaysDown(own, check, best, change);
  if (change.of === 'mast-larger') return { told: best, also: lightestWithin(own, check, best) };
  return { told: best, also: [] };
}

/** The tube that leaves the station most may not be within, where another check gives before the mast does. */
function lightestWithin(own: Assessment, check: AssessedCheck, best: Trial): readonly Trial[] {
  const { mast } = own.input.station;
  if (!mast || isWithin(best)) return [];
  for (const pipe of largerTubes(mast)) {
    const here = trial(own, check, { of: 'mast-larger', pipe });
    if (here && isWithin(here)) return [here];
  }
  return [];
}

function isWithin({ outcome, helps }: Trial): boolean {
  return helps && outcome.check?.verdict === 'within';
}

/** A load need not go as low as it can: the least way down that is within, with the short way and the whole beside it. */
function inWaysDown(
  own: Assessment,
  check: AssessedCheck,
  best: Trial,
  change: Extract<RemedyChange, { of: 'load-lower' }>,
): InMeasures {
  const { units } = own.input.station;
  const grain = LOWERING_GRAIN[units];
  const down = (by: number) => trial(own, check, { ...change, by });
  let told = best;
  if (check.verdict !== 'within' && isWithin(best)) {
    // The last way that is not within and the first that is, in grains.
    let [short, long] = [0, Math.round(change.by / grain)];
    while (long - short > 1) {
      const middle = Math.floor((short + long) / 2);
      const here = down(middle * grain);
      if (here && isWithin(here)) [long, told] = [middle, here];
      else short = middle;
    }
  }
  const step = LOWERING_STEP[units];
  const shorter = step < change.by - ALIKE ? [step] : [];
  const others = [...shorter, change.by].filter((by) => Math.abs(by - wayOf(told)) > ALIKE);
  const also = others.flatMap((by) => (by === change.by ? best : (down(by) ?? []))).filter(({ helps }) => helps);
  return { told, also };
}

function wayOf({ outcome: { change } }: Trial): number {
  return change.of === 'load-lower' ? change.by : 0;
}

function triedChanges(own: Assessment, check: AssessedCheck): RemedyChange[] {
  const { station } = own.input;
  const ofCheck = station.loads.filter((load) => helps(check, 'load') && load.at === check.at);
  return [...new Set([...ofCheck, ...heaviestLoads(own, LOADS_CHANGED)])]
    .flatMap((load) => loadChanges(station, load))
    .concat(mastChanges(station, check), lineChanges(station));
}

/** Whether a remedy is tried for a check of this kind alone. */
function helps({ kind }: AssessedCheck, remedy: OwnRemedy): boolean {
  return CHECK_KIND[kind].ownRemedies?.includes(remedy) ?? false;
}

function loadChanges(station: Station, load: Load): RemedyChange[] {
  const changes: RemedyChange[] = [];
  const whole = wayDown(station, load);
  for (const by of new Set([whole, Math.min(whole, LOWERING_STEP[station.units])])) {
    if (by > 0) changes.push({ of: 'load-lower', load, by });
  }
  // A tower with nothing on it is no remedy.
  if (station.loads.length > 1) changes.push({ of: 'load-off', load });
  if (load.offset > 0) changes.push({ of: 'load-to-axis', load });
  const { kind } = load.shape;
  if (kind === 'stated' || kind === 'stated-force') changes.push({ of: 'load-smaller', load, times: SMALLER_LOAD });
  return changes;
}

/**
 * How far down a load may go: above the tower's top to just above that and what else is below it, else to half the tower's
 * height and no lower than its highest support. A wire stays, since its pull would be another.
 */
function wayDown(station: Station, load: Load): number {
  if (load.shape.kind === 'wire') return 0;
  const { units, tower, mast, loads } = station;
  const grain = LOWERING_GRAIN[units];
  const support = Math.max(tower.foot, ...tower.held.map(({ height }) => height));
  const below = loads.filter((each) => each !== load && each.high > tower.top && each.low <= load.low);
  const lowest =
    load.high > tower.top
      ? Math.max(tower.top, mast?.bearing ?? 0, ...below.map(({ high }) => high)) + KEPT_FREE[units]
      : Math.max(support, tower.foot + LOWEST_SHARE * (tower.top - tower.foot));
  const by = Math.floor((load.low - lowest) / grain + 1e-6) * grain;
  return by > 0 && staysOn(station, load, -by) ? by : 0;
}

function mastChanges(station: Station, check: AssessedCheck): RemedyChange[] {
  const { mast } = station;
  if (!mast) return [];
  const changes: RemedyChange[] = [];
  const by = mast.tip - lowestTip(station, mast);
  if (by > WORTH_CUTTING && !('pieces' in mast)) changes.push({ of: 'mast-shorter', by });
  if (helps(check, 'mast-tube'))
    changes.push(...largerTubes(mast).map((pipe) => ({ of: 'mast-larger', pipe }) as const));
  return changes;
}

/** A mast reaches to its highest load and line, and to its bearing; what stands up beyond it needs it as it is. */
function lowestTip({ tower, loads, cables }: Station, mast: Mast): number {
  const onMast = loads.filter((load) => load.on === 'mast');
  if (onMast.length === 0) return mast.tip;
  const reached = [...onMast, ...cables].map(({ high }) => Math.min(high, mast.tip));
  return Math.max(tower.top, mast.bearing ?? 0, ...reached);
}

/** The next pipes no smaller outside with a larger section modulus, the lightest first. */
function largerTubes({ outside, wall, yieldStrength }: Mast): readonly StandardPipe[] {
  if (wall === undefined || yieldStrength === undefined) return [];
  const now = sectionModulusOfTube.of(outside, wall);
  const metal = (pipe: StandardPipe) => (pipe.outside - pipe.wall) * pipe.wall;
  return STANDARD_PIPES.filter(
    (pipe) => pipe.outside >= outside - ALIKE && sectionModulusOfTube.of(pipe.outside, pipe.wall) > now,
  )
    .sort((a, b) => metal(a) - metal(b))
    .slice(0, PIPES_TRIED);
}

function lineChanges({ tower, cables }: Station): RemedyChange[] {
  const changes: RemedyChange[] = [];
  const bundled = cables.filter(({ count, laid }) => count > 1 && (laid === 'single' || laid === 'flat'));
  if (bundled.length > 0) changes.push({ of: 'lines-arranged', runs: bundled, laid: 'bundle' });
  const inside = cables.filter((run) => run.laid !== 'inside' && run.high <= tower.top && poleAllAlong(run, tower));
  if (inside.length > 0) changes.push({ of: 'lines-arranged', runs: inside, laid: 'inside' });
  const lines = cables.reduce((sum, { count }) => sum + count, 0);
  // The last line feeds something.
  if (lines > 1) changes.push(...cables.map((run) => ({ of: 'line-off', run }) as const));
  return changes;
}

function poleAllAlong(run: CableRun, { sections }: Station['tower']): boolean {
  const along = sections.filter(({ low, high }) => low < run.high && high > run.low);
  return along.length > 0 && along.every(({ shape }) => shape?.kind === 'pole');
}

/** A plan with one remedy and nothing else changed. */
export function changedBy(input: CheckInput, change: RemedyChange): CheckInput {
  return { ...input, station: { ...input.station, ...changedParts(input.station, change) } };
}

function changedParts({ mast, loads, cables }: Station, change: RemedyChange): Partial<Station> {
  const instead = (load: Load, other: Load) => ({ loads: loads.map((each) => (each === load ? other : each)) });
  switch (change.of) {
    case 'load-lower':
      return instead(change.load, movedLoad(change.load, -change.by));
    case 'load-off':
      return { loads: loads.filter((each) => each !== change.load) };
    case 'load-to-axis':
      return instead(change.load, { ...change.load, offset: 0 });
    case 'load-smaller':
      return instead(change.load, smallerLoad(change.load, change.times));
    case 'mast-shorter':
      return mast ? { mast: { ...mast, length: mast.length - change.by, tip: mast.tip - change.by } } : {};
    case 'mast-larger':
      return mast ? { mast: { ...mast, outside: change.pipe.outside, wall: change.pipe.wall } } : {};
    case 'lines-arranged':
      return { cables: cables.map((run) => (change.runs.includes(run) ? { ...run, laid: change.laid } : run)) };
    case 'line-off':
      return {
        cables: cables.flatMap((run) => {
          if (run !== change.run) return [run];
          return run.count > 1 ? [{ ...run, count: run.count - 1 }] : [];
        }),
      };
  }
}

function smallerLoad(load: Load, times: number): Load {
  const { shape } = load;
  if (shape.kind === 'stated-force') return { ...load, shape: { ...shape, force: shape.force * times } };
  if (shape.kind !== 'stated') return load;
  const { front, side, icedArea } = shape;
  const iced = icedArea === undefined ? {} : { icedArea: icedArea * times };
  return { ...load, shape: { ...shape, front: front * times, side: side * times, ...iced } };
}
