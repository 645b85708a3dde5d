import { type UnitSystem, withArticle } from '../foundation/index.ts';
import type { Remedies, RemedyChange, RemedyOutcome, TubeForMast, Verdict } from '../margins/index.ts';
import { checkName, inWords, listed, ratioFigures, sentence, verbOf } from '../words/index.ts';

import { type Quantity, quantity } from './quantity.ts';

/** The answer to the changed plan, as far as it is told. */
export interface RemedyOutcomeDocument {
  readonly says: string;
  /** How far a load is moved down or a mast is cut. */
  readonly by?: Quantity;
  /** Share of the area or force of a load. */
  readonly times?: number;
  /** How lines are laid. */
  readonly laid?: string;
  /** What the mast is made of. */
  readonly tube?: {
    readonly nominal: string;
    readonly schedule: number;
    readonly outside: Quantity;
    readonly wall: Quantity;
  };
  /** Of the check; absent where it went with its load. */
  readonly ratio?: number;
  readonly verdict?: Verdict;
  readonly holdsToGust?: Quantity;
  /** The check that then holds to the lowest gust. */
  readonly next?: { readonly check: string; readonly gust: Quantity };
  readonly planVerdict: Verdict;
  /** Another check then holds to hardly more than the weakest did before. */
  readonly onlyMoves: boolean;
}

export interface RemedyDocument extends RemedyOutcomeDocument {
  readonly of: RemedyChange['of'];
  /** JSON pointers of what is changed. */
  readonly at: readonly string[];
  readonly also: readonly RemedyOutcomeDocument[];
}

export interface RemediesDocument {
  readonly says: string;
  readonly ofCheck: string;
  readonly ratio: number;
  readonly verdict: Verdict;
  readonly holdsToGust?: Quantity;
  readonly canBeLowered: boolean;
  readonly rows: readonly RemedyDocument[];
}

/** Standard tubes that would do for the mast, the lightest first. */
export interface TubeForMastDocument {
  readonly nominal: string;
  readonly schedule: number;
  readonly outside: Quantity;
  readonly wall: Quantity;
  readonly weight: Quantity;
  readonly ratio: number;
}

export function tubesDocument(tubes: readonly TubeForMast[], system: UnitSystem): readonly TubeForMastDocument[] {
  return tubes.map(({ pipe, ratio, weightPerLength }) => ({
    nominal: pipe.nominal,
    schedule: pipe.schedule,
    outside: quantity(pipe.outside, 'diameter', system),
    wall: quantity(pipe.wall, 'diameter', system),
    weight: quantity(weightPerLength, 'weight-per-length', system),
    ratio,
  }));
}

/** "Of standard pipes of your steel 1 1/2 in schedule 80 is the lightest that would do for the mast." */
export function tubesSays(tubes: readonly TubeForMast[]): string {
  const [lightest] = tubes;
  if (!lightest) return 'No standard pipe up to 4 in of your mast’s yield would do for it with the margin you want.';
  const { pipe, ratio } = lightest;
  return `Of standard pipes of your mast’s yield ${pipe.nominal} in schedule ${pipe.schedule} is the lightest that would do for it, at ${ratioFigures(ratio)}.`;
}

/** What would help the weakest check, as a document. */
export function remediesDocument(remedies: Remedies, system: UnitSystem): RemediesDocument {
  const { check, canBeLowered } = remedies;
  const gust = check.result?.holdsTo?.gust;
  return {
    says: remediesSays(remedies, system),
    ofCheck: check.id,
    ratio: check.result?.ratio ?? 0,
    verdict: check.verdict,
    ...(gust === undefined ? {} : { holdsToGust: quantity(gust, 'speed', system) }),
    canBeLowered,
    rows: remedies.remedies.map((remedy) => ({
      of: remedy.change.of,
      at: placesOf(remedy.change),
      ...outcomeDocument(remedy, remedies, system),
      also: remedy.also.map((outcome) => outcomeDocument(outcome, remedies, system)),
    })),
  };
}

function outcomeDocument(outcome: RemedyOutcome, remedies: Remedies, system: UnitSystem): RemedyOutcomeDocument {
  const { change, check, weakest, verdict, onlyMoves } = outcome;
  const gust = check?.result?.holdsTo?.gust;
  const lowest = weakest?.result?.holdsTo?.gust;
  return {
    says: remedySays(outcome, remedies, system),
    ...measureOf(change, system),
    ...(check?.result === undefined ? {} : { ratio: check.result.ratio }),
    ...(check === undefined ? {} : { verdict: check.verdict }),
    ...(gust === undefined ? {} : { holdsToGust: quantity(gust, 'speed', system) }),
    ...(weakest === undefined || lowest === undefined
      ? {}
      : { next: { check: weakest.id, gust: quantity(lowest, 'speed', system) } }),
    planVerdict: verdict,
    onlyMoves,
  };
}

function measureOf(
  change: RemedyChange,
  system: UnitSystem,
): Pick<RemedyOutcomeDocument, 'by' | 'times' | 'laid' | 'tube'> {
  if ('by' in change) return { by: quantity(change.by, 'length', system) };
  if (change.of === 'load-smaller') return { times: change.times };
  if (change.of === 'lines-laid') return { laid: change.laid };
  if (change.of !== 'mast-larger') return {};
  const { nominal, schedule, outside, wall } = change.pipe;
  return {
    tube: {
      nominal,
      schedule,
      outside: quantity(outside, 'diameter', system),
      wall: quantity(wall, 'diameter', system),
    },
  };
}

function placesOf(change: RemedyChange): string[] {
  switch (change.of) {
    case 'load-lower':
    case 'load-off':
    case 'load-to-axis':
    case 'load-smaller':
      return [change.load.at];
    case 'mast-shorter':
    case 'mast-larger':
      return ['/mast'];
    case 'lines-laid':
      return change.runs.map(({ at }) => at);
    case 'line-off':
      return [change.run.at];
  }
}

export const LOWERED_BEFORE = 'This tower can also be lowered before such a wind.';

/** The best remedy in a sentence, or that there is none. */
export function remediesSays(remedies: Remedies, system: UnitSystem): string {
  const [best] = remedies.remedies;
  const lowered = remedies.canBeLowered ? ` ${LOWERED_BEFORE}` : '';
  if (best) return `${remedySays(best, remedies, system)}${lowered}`;
  const name = checkName(remedies.check);
  return `Nothing that was tried helps the ${name} without making something else worse.${lowered}`;
}

/** "Moving the beam down 2 ft: the mast then holds to an actual gust of 89 mph instead of 78 mph." */
export function remedySays(remedy: RemedyOutcome, { check }: Remedies, system: UnitSystem): string {
  const { change, check: after, weakest } = remedy;
  const what = sentence(changeInWords(change, system));
  const then = `${what}: ${thenInWords(check, after, system)}`;
  const within = check.verdict !== 'within' && after?.verdict === 'within' ? ' and is within' : '';
  const lowest = weakest?.result?.holdsTo?.gust;
  if (weakest === undefined || lowest === undefined || weakest.id === check.id) return `${then}${within}.`;
  const gives = `the ${checkName(weakest)} ${verbOf(weakest, 'gives', 'give')}`;
  const at = inWords(lowest, 'speed', system);
  const told = after?.result?.holdsTo?.gust;
  // Where the check is gone, or holds to no gust, nothing told before is more than what gives next.
  if (told === undefined) return `${then}${within}, and ${gives} next, at ${at}.`;
  return remedy.onlyMoves
    ? `${then}${within}, but the weakness only moves: ${gives} before it, at ${at}.`
    : `${then}${within}, but ${gives} before it, at ${at}.`;
}

function thenInWords(before: Remedies['check'], after: RemedyOutcome['check'], system: UnitSystem): string {
  if (after?.because === 'balanced') return `nothing off the axis is then left to turn the ${checkName(before)}`;
  if (!after?.result) return 'it is then not there to give';
  const name = checkName(before);
  const [was, is] = [before.result?.holdsTo?.gust, after.result.holdsTo?.gust];
  if (was !== undefined && is !== undefined) {
    return `the ${name} then ${verbOf(before, 'holds', 'hold')} to an actual gust of ${inWords(is, 'speed', system)} instead of ${inWords(was, 'speed', system)}`;
  }
  return `the use of the ${name} is then ${ratioFigures(after.result.ratio)} instead of ${ratioFigures(before.result?.ratio ?? 0)}`;
}

function changeInWords(change: RemedyChange, system: UnitSystem): string {
  switch (change.of) {
    case 'load-lower':
      return `moving the ${change.load.name} down ${inWords(change.by, 'length', system)}`;
    case 'load-off':
      return `leaving the ${change.load.name} off`;
    case 'load-to-axis':
      return `bringing the ${change.load.name} in to the axis, from ${inWords(change.load.offset, 'length', system)} beside it`;
    case 'load-smaller': {
      const what = change.load.shape.kind === 'stated-force' ? 'force' : 'area';
      return `${withArticle(change.load.name)} of ${ratioFigures(change.times)} of its ${what}`;
    }
    case 'mast-shorter':
      return `cutting the mast by ${inWords(change.by, 'length', system)}, down to its highest load`;
    case 'mast-larger': {
      const { nominal, schedule, outside, wall } = change.pipe;
      const tube = `${inWords(outside, 'diameter', system, 4)} by ${inWords(wall, 'diameter', system)}`;
      return `a mast of ${nominal} in pipe, schedule ${schedule} (${tube}), of the same yield, if bearing and clamps take it`;
    }
    case 'lines-laid': {
      const runs = listed(change.runs.map(({ name }) => name));
      return change.laid === 'inside' ? `taking lines inside the pole (${runs})` : `laying lines as a bundle (${runs})`;
    }
    case 'line-off':
      return `one line fewer (${change.run.name}), if it is not needed`;
  }
}

/** The same as lines of plain text. */
export function remediesLines(remedies: Remedies, system: UnitSystem): string[] {
  const lines = remedies.remedies.flatMap((remedy) =>
    [remedy, ...remedy.also].map((each) => `- ${remedySays(each, remedies, system)}`),
  );
  return lines.length > 0 ? lines : [remediesSays(remedies, system)];
}
