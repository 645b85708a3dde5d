import { MILE_PER_HOUR, Refusal } from '../foundation/index.ts';
import { type Assessment, assess } from './assess.ts';
import type { CheckInput } from './check-input.ts';
import { CHECK_KIND } from './checks/check-kinds.ts';
import { canBeLowered } from './holds-to-ratio.ts';
import { type Changed, REMEDY_SEARCHES, type RemedyChange, type Search } from './remedy-kinds.ts';
import { betterVerdict, type Verdict, worstVerdict } from './verdict.ts';

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
  /** Every other check whose ratio it moves, those that rise most first. */
  readonly moves: readonly MovedRatio[];
}

export interface MovedRatio {
  readonly check: AssessedCheck;
  readonly from: number;
  readonly to: number;
}

export interface Remedy extends RemedyOutcome {
  /** The same remedy to another measure, the least first. */
  readonly also: readonly RemedyOutcome[];
}

export interface Remedies {
  /** The check they are for, as it is now. */
  readonly check: AssessedCheck;
  /** At most five, each of another kind; none where nothing tried helps and makes nothing worse. */
  readonly remedies: readonly Remedy[];
  /** A hinge or sections that slide: it can also be lowered before the wind comes. */
  readonly canBeLowered: boolean;
}

type GrainSearch = Extract<Search, { of: 'grains' }>;

/** How many are told. @source derived */
const REMEDIES_TOLD = 5;
/** A gust that rises by less is no reason to change a tower: 2 mph [m/s]. @source common-practice */
export const WORTH_RISING = 2 * MILE_PER_HOUR;
/** A ratio of another check that changes by less is not worth a word. @source derived */
export const WORTH_TELLING = 0.005;
/** A lowest gust that rises or falls by less has done neither. @source derived */
const HARDLY = 0.005;
/** Two answers apart by less than this are alike. @source derived */
const ALIKE = 1e-9;

/**
 * What would help the weakest check: every remedy is tried by checking the plan again with it and with nothing else
 * changed, and is told by that answer.
 *
 * The check is the one that holds to the lowest gust; where that is not over and something else is, by weight or by the pull on
 * its gear, that; else the one with the largest ratio. A remedy helps where the check gets a better verdict or holds to a gust
 * that is higher by 2 mph, and no check gets a worse verdict or a lower gust than the lowest now. Of the changes of one thing
 * the cheapest is told that does: with which the check is within; else has its better verdict; else holds to a higher gust, of
 * lengths to the gust that no more of it raises. Those that turn the verdict come first, what costs least before what costs more; then those that
 * raise the gust, by how far. To answer an open question well is no remedy: it changes what is known, not what stands.
 * Electrical reasons to keep antennas apart are not looked at.
 *
 * @returns the check and its remedies; undefined where no check has a ratio that is proven
 */
export function remediesOf(own: Assessment): Remedies | undefined {
  const check = checkToHelp(own);
  if (!check) return undefined;
  const best = Object.values(REMEDY_SEARCHES).flatMap((searches) => bestOfKinds(searches(own, check), own, check));
  const turning = best.filter(({ told }) => told.turns > 0).sort((a, b) => b.told.turns - a.told.turns);
  const raising = best.filter(({ told }) => told.turns === 0).sort((a, b) => byGain(a.told, b.told));
  return {
    check,
    remedies: [...turning, ...raising]
      .slice(0, REMEDIES_TOLD)
      .map(({ told, also }) => ({ ...told.outcome, also: also.map(({ outcome }) => outcome) })),
    canBeLowered: canBeLowered(own.input.station),
  };
}

interface Found {
  readonly told: Trial;
  readonly also: readonly Trial[];
}

/** The best that each kind of change does, whatever it is done to, and then the least of it that does as well. */
function bestOfKinds(searches: readonly Search[], own: Assessment, check: AssessedCheck): readonly Found[] {
  const kinds = new Map<string, Strongest>();
  for (const search of searches) {
    const here = search.of === 'each' ? ofEach(own, check, search.changes) : ofGrains(own, check, search);
    if (!here) continue;
    const kind = kindOf(here.best.outcome.change);
    const before = kinds.get(kind);
    if (!before || byHelp(here.best, before.best) < 0) kinds.set(kind, here);
  }
  return [...kinds.values()].map(({ found }) => found());
}

interface Strongest {
  readonly best: Trial;
  readonly found: () => Found;
}

/** The cheapest that turns the verdict as far as any, else the cheapest that raises the gust. */
function ofEach(own: Assessment, check: AssessedCheck, changes: readonly Changed[]): Strongest | undefined {
  const helping: Trial[] = [];
  for (const change of changes) {
    const here = trial(own, check, change);
    if (!here?.helps) continue;
    if (here.turns === MOST_TURNED) return { best: here, found: () => ({ told: here, also: [] }) };
    helping.push(here);
  }
  const [best] = [...helping].sort(byHelp);
  if (!best) return undefined;
  const told = helping.find(({ turns }) => turns === best.turns) ?? best;
  return { best: told, found: () => ({ told, also: [] }) };
}

/** The fewest grains that do as well as the most do, with a short way and the whole beside them. */
function ofGrains(own: Assessment, check: AssessedCheck, search: GrainSearch): Strongest | undefined {
  const tried = new Map<number, Trial | undefined>();
  const at = (grains: number) => {
    if (!tried.has(grains)) tried.set(grains, trial(own, check, search.by(grains)));
    return tried.get(grains);
  };
  const most = mostThatHelps(search.most, at);
  if (!most) return undefined;
  const found = (): Found => {
    // The last way that does less, and the first that does as well.
    let [short, long, told] = [0, most.grains, most.trial];
    while (long - short > 1) {
      const middle = Math.floor((short + long) / 2);
      const here = at(middle);
      if (here?.helps && doesAs(here, most.trial)) [long, told] = [middle, here];
      else short = middle;
    }
    const beside = search.short === undefined ? [] : [search.short, most.grains];
    const also = beside
      .filter((grains) => grains <= most.grains && grains !== long)
      .flatMap((grains) => at(grains) ?? [])
      .filter(({ helps }) => helps);
    return { told, also };
  };
  return { best: most.trial, found };
}

/** So many grains as help; where all of them make something worse, half of them, and so on. What gains nothing is not looked into. */
function mostThatHelps(
  most: number,
  at: (grains: number) => Trial | undefined,
): { readonly grains: number; readonly trial: Trial } | undefined {
  for (let grains = most; grains >= 1; grains = Math.floor(grains / 2)) {
    const here = at(grains);
    if (here?.helps) return { grains, trial: here };
    if (here && !here.gains) return undefined;
  }
  return undefined;
}

/** As good a verdict; where none turns, a lowest gust that no more of it raises. */
function doesAs(each: Trial, best: Trial): boolean {
  if (best.turns > 0) return each.turns >= best.turns;
  return each.stationGain * (1 + HARDLY) >= best.stationGain && each.checkGain * (1 + HARDLY) >= best.checkGain;
}

function byHelp(a: Trial, b: Trial): number {
  return a.turns === b.turns ? byGain(a, b) : b.turns - a.turns;
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

/** The check is within, or gone. */
const MOST_TURNED = 2;

interface Trial {
  readonly outcome: RemedyOutcome;
  /** The check has a better verdict, or holds to a gust that is worth it. */
  readonly gains: boolean;
  /** It gains, and nothing gets worse. */
  readonly helps: boolean;
  /** How far the verdict of the check turns: not at all, to a better one, to `within`. */
  readonly turns: 0 | 1 | typeof MOST_TURNED;
  /** The lowest gust over that without the change. */
  readonly stationGain: number;
  /** The use of the check without the change over that with it. */
  readonly checkGain: number;
}

/** The changed plan checked again; undefined where it cannot be computed, so that nothing can be said of it. */
function trial(own: Assessment, check: AssessedCheck, { change, parts }: Changed): Trial | undefined {
  const other = answerTo({ ...own.input, station: { ...own.input.station, ...parts } });
  if (!other) return undefined;
  const after = checkOf(other, check.id);
  const weakest = checkOf(other, other.weakest);
  const [before, then] = [lowestGust(own), lowestGust(other)];
  const stationGain = before === undefined || then === undefined ? 1 : then / before;
  const checkGain = after ? ratioOf(check) / ratioOf(after) : Number.POSITIVE_INFINITY;
  const outcome: RemedyOutcome = {
    change,
    ...(after ? { check: after } : {}),
    ...(weakest ? { weakest } : {}),
    verdict: other.verdict,
    onlyMoves: own.weakest !== undefined && weakest?.id !== check.id && stationGain < 1 + HARDLY,
    moves: movesOf(own, other, check),
  };
  const gone = change.of === 'load-off' ? `antenna:${change.load.name}` : undefined;
  const turns = turnsOf(check, after);
  const rises = (gustOf(after) ?? 0) - (gustOf(check) ?? Number.POSITIVE_INFINITY);
  const eased = ratioOf(after) <= ratioOf(check) * (1 + ALIKE);
  const gains = after
    ? after.because === 'balanced' || (eased && (turns > 0 || rises >= WORTH_RISING))
    : check.id === gone;
  const helps =
    gains &&
    (before === undefined || then !== undefined) &&
    // Low down, the wind on a counterpoise is next to nothing beside what it spares the gear.
    stationGain >= 1 - (change.of === 'counterpoise' ? HARDLY : ALIKE) &&
    own.checks.every((each) => each.id === gone || noWorse(each, checkOf(other, each.id))) &&
    other.checks.every((each) => checkOf(own, each.id) !== undefined);
  return { outcome, gains, helps, turns, stationGain: alike(stationGain), checkGain: alike(checkGain) };
}

/** The lowest gust that any check holds to [m/s]: what is over without wind holds to none. */
function lowestGust({ checks }: Assessment): number | undefined {
  const gusts = checks.flatMap((check) => gustOf(check) ?? []);
  return gusts.length === 0 ? undefined : Math.min(...gusts);
}

function turnsOf(check: AssessedCheck, after: AssessedCheck | undefined): Trial['turns'] {
  if (!after || after.because === 'balanced') return MOST_TURNED;
  if (!after.result || !betterVerdict(after.verdict, check.verdict)) return 0;
  return after.verdict === 'within' ? MOST_TURNED : 1;
}

function movesOf(own: Assessment, other: Assessment, check: AssessedCheck): readonly MovedRatio[] {
  return own.checks
    .flatMap((each): MovedRatio[] => {
      const [from, to] = [each.result?.ratio, checkOf(other, each.id)?.result?.ratio];
      if (each.id === check.id || from === undefined || to === undefined) return [];
      return Math.abs(to - from) >= WORTH_TELLING ? [{ check: each, from, to }] : [];
    })
    .sort((a, b) => b.to - b.from - (a.to - a.from));
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
