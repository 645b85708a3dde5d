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

/** "The lightest standard pipe of the mast’s yield that keeps the margin set: 1 1/2 in schedule 80, ratio 0.82." */
export function tubesSays(tubes: readonly TubeForMast[]): string {
  const [lightest] = tubes;
  if (!lightest) return 'No standard pipe up to 4 in of the mast’s yield keeps the margin set.';
  const { pipe, ratio } = lightest;
  return `The lightest standard pipe of the mast’s yield that keeps the margin set: ${pipe.nominal} in schedule ${pipe.schedule}, ratio ${ratioFigures(ratio)}.`;
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
  return `No change tried helps the ${name} without making another check worse.${lowered}`;
}

/** "Move the beam down 2 ft: the mast holds to 89 mph instead of 78 mph (actual gust)." */
export function remedySays(remedy: RemedyOutcome, { check }: Remedies, system: UnitSystem): string {
  const { change, check: after, weakest } = remedy;
  const within = check.verdict !== 'within' && after?.verdict === 'within' ? ', which is within' : '';
  const lowest = weakest?.result?.holdsTo?.gust;
  const next =
    weakest === undefined || lowest === undefined || weakest.id === check.id
      ? ''
      : ` Then the ${checkName(weakest)} ${verbOf(weakest, 'is', 'are')} weakest, at ${inWords(lowest, 'speed', system)}.`;
  return `${sentence(changeInWords(change, system))}: ${thenInWords(check, after, system)}${within}.${next}${conditionOf(change)}`;
}

function thenInWords(before: Remedies['check'], after: RemedyOutcome['check'], system: UnitSystem): string {
  const name = checkName(before);
  if (after?.because === 'balanced') return `no load off the axis is then left to turn the ${name}`;
  if (!after?.result) return `the check of the ${name} then falls away`;
  const [was, is] = [before.result?.holdsTo?.gust, after.result.holdsTo?.gust];
  if (was !== undefined && is !== undefined) {
    return `the ${name} ${verbOf(before, 'holds', 'hold')} to ${inWords(is, 'speed', system)} instead of ${inWords(was, 'speed', system)} (actual gust)`;
  }
  return `the ratio of the ${name} is ${ratioFigures(after.result.ratio)} instead of ${ratioFigures(before.result?.ratio ?? 0)}`;
}

function changeInWords(change: RemedyChange, system: UnitSystem): string {
  switch (change.of) {
    case 'load-lower':
      return `move the ${change.load.name} down ${inWords(change.by, 'length', system)}`;
    case 'load-off':
      return `remove the ${change.load.name}`;
    case 'load-to-axis':
      return `mount the ${change.load.name} on the axis, from ${inWords(change.load.offset, 'length', system)} beside it`;
    case 'load-smaller': {
      const what = change.load.shape.kind === 'stated-force' ? 'force' : 'area';
      return `use ${withArticle(change.load.name)} of ${ratioFigures(change.times)} of its ${what}`;
    }
    case 'mast-shorter':
      return `cut the mast by ${inWords(change.by, 'length', system)}, down to its highest load`;
    case 'mast-larger': {
      const { nominal, schedule, outside, wall } = change.pipe;
      const tube = `${inWords(outside, 'diameter', system, 4)} by ${inWords(wall, 'diameter', system)}`;
      return `use a mast of ${nominal} in pipe, schedule ${schedule} (${tube}), same yield`;
    }
    case 'lines-laid': {
      const runs = listed(change.runs.map(({ name }) => name));
      return change.laid === 'inside' ? `run lines inside the pole (${runs})` : `arrange lines as a bundle (${runs})`;
    }
    case 'line-off':
      return `remove one line (${change.run.name})`;
  }
}

/** What a change must be checked for, or when it may be done at all. */
function conditionOf({ of }: RemedyChange): string {
  if (of === 'mast-larger') return ' Check that bearing and clamps take it.';
  return of === 'line-off' ? ' Do so only if it is not needed.' : '';
}

/** The same as lines of plain text. */
export function remediesLines(remedies: Remedies, system: UnitSystem): string[] {
  const lines = remedies.remedies.flatMap((remedy) =>
    [remedy, ...remedy.also].map((each) => `- ${remedySays(each, remedies, system)}`),
  );
  return lines.length > 0 ? lines : [remediesSays(remedies, system)];
}
