import { type RemediesAnswer, type RemedyOutcomeAnswer, type StandardTubes, told } from '../answer/index.ts';
import { type UnitSystem, withArticle } from '../foundation/index.ts';
import {
  betterVerdict,
  type OtherTube,
  type Remedies,
  type RemedyChange,
  type RemedyOutcome,
  type TubeForMast,
  WORTH_RISING,
} from '../margins/index.ts';
import { checkName, inWords, listed, ratioFigures, sentence, VERDICT_WORDS, verbOf } from '../words/index.ts';
import { quantity } from './quantity.ts';

function tubeDocument({ outside, wall, pipe }: OtherTube, system: UnitSystem) {
  return {
    ...(pipe === undefined ? {} : { nominal: pipe.nominal, schedule: pipe.schedule }),
    outside: quantity(outside, 'diameter', system),
    wall: quantity(wall, 'diameter', system),
  };
}

/** Standard tubes that would do for the mast, the lightest first. */
export function tubesDocument(tubes: readonly TubeForMast[], system: UnitSystem): StandardTubes {
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
export function remediesDocument(remedies: Remedies, system: UnitSystem): RemediesAnswer {
  const { check, canBeLowered } = remedies;
  return told<RemediesAnswer>({
    says: remediesSays(remedies, system),
    ofCheck: check.id,
    ratio: check.result?.ratio ?? 0,
    verdict: check.verdict,
    holdsToGust: quantity(check.result?.holdsTo?.gust, 'speed', system),
    canBeLowered,
    rows: remedies.remedies.map((remedy) => ({
      of: remedy.change.of,
      at: placesOf(remedy.change),
      ...outcomeDocument(remedy, remedies, system),
      also: remedy.also.map((outcome) => outcomeDocument(outcome, remedies, system)),
    })),
  });
}

function outcomeDocument(outcome: RemedyOutcome, remedies: Remedies, system: UnitSystem): RemedyOutcomeAnswer {
  const { change, check, weakest, verdict, onlyMoves, moves } = outcome;
  const lowest = weakest?.result?.holdsTo?.gust;
  return told<RemedyOutcomeAnswer>({
    says: remedySays(outcome, remedies, system),
    by: quantity('by' in change ? change.by : undefined, 'length', system),
    times: change.of === 'load-smaller' ? change.times : undefined,
    weight: quantity(change.of === 'counterpoise' ? change.more : undefined, 'weight', system),
    arrangement: change.of === 'lines-arranged' ? change.laid : undefined,
    tube: change.of === 'mast-larger' ? tubeDocument(change.tube, system) : undefined,
    ratio: check?.result?.ratio,
    verdict: check?.verdict,
    holdsToGust: quantity(check?.result?.holdsTo?.gust, 'speed', system),
    next:
      weakest === undefined || lowest === undefined
        ? undefined
        : { check: weakest.id, gust: quantity(lowest, 'speed', system) },
    planVerdict: verdict,
    onlyMoves,
    moves: moves.map(({ check: other, from, to }) => ({ check: other.id, from, to })),
  });
}

function placesOf(change: RemedyChange): string[] {
  switch (change.of) {
    case 'load-lower':
    case 'load-off':
    case 'load-to-axis':
    case 'load-smaller':
      return [change.load.at];
    case 'mast-shorter':
    case 'mast-inside':
    case 'mast-larger':
      return ['/mast'];
    case 'footing-larger':
      return ['/tower/foundation'];
    case 'counterpoise':
      return ['/tower/hinge'];
    case 'lines-arranged':
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
  const more = inWords(WORTH_RISING, 'speed', system);
  return `No change tried gives the ${name} a better verdict, or ${more} more gust. What makes another check worse is left out.${lowered}`;
}

/** "Move the beam down 2 ft: the mast holds to 89 mph instead of 78 mph (actual gust)." */
export function remedySays(remedy: RemedyOutcome, { check }: Remedies, system: UnitSystem): string {
  const { change, check: after, weakest, moves } = remedy;
  const turned = after && betterVerdict(after.verdict, check.verdict) ? `, ${VERDICT_WORDS[after.verdict]}` : '';
  const lowest = weakest?.result?.holdsTo?.gust;
  const next =
    weakest === undefined || lowest === undefined || weakest.id === check.id
      ? ''
      : ` Then the ${checkName(weakest)} ${verbOf(weakest, 'is', 'are')} weakest, at ${inWords(lowest, 'speed', system)}.`;
  return `${sentence(changeInWords(change, system))}: ${thenInWords(check, after, system)}${turned}.${next}${raisesInWords(moves)}${CONDITIONS[change.of] ?? ''}`;
}

/** How many other checks a sentence names. */
const NAMED = 2;

/** What else a remedy loads more: " It raises the tower from 0.71 to 0.76." */
function raisesInWords(moves: RemedyOutcome['moves']): string {
  const raised = moves.filter(({ from, to }) => to > from && ratioFigures(from) !== ratioFigures(to)).slice(0, NAMED);
  if (raised.length === 0) return '';
  const each = raised.map(
    ({ check, from, to }) => `the ${checkName(check)} from ${ratioFigures(from)} to ${ratioFigures(to)}`,
  );
  return ` It raises ${listed(each)}.`;
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
      return `mount the ${change.load.name} on the axis`;
    case 'load-smaller': {
      const what = change.load.shape.kind === 'stated-force' ? 'force' : 'area';
      return `use ${withArticle(change.load.name)} of ${ratioFigures(change.times)} of its ${what}`;
    }
    case 'mast-shorter':
      return `cut ${inWords(change.by, 'length', system)} off the mast`;
    case 'mast-larger': {
      const { pipe, outside, wall } = change.tube;
      const tube = `${inWords(outside, 'diameter', system, 4)} by ${inWords(wall, 'diameter', system)}`;
      return pipe === undefined
        ? `use a mast tube of ${tube}, same yield`
        : `use a mast of ${pipe.nominal} in pipe, schedule ${pipe.schedule} (${tube}), same yield`;
    }
    case 'mast-inside': {
      const longer = change.longer > ALIKE ? `, ${inWords(change.longer, 'length', system)} longer` : '';
      return `put the mast ${inWords(change.by, 'length', system)} farther inside${longer}`;
    }
    case 'footing-larger': {
      const by = inWords(change.by, 'length', system);
      return change.footing.kind === 'block' ? `build the block ${by} longer and wider` : `build the pier ${by} deeper`;
    }
    case 'counterpoise': {
      const { more, counterpoise } = change;
      const what = more < counterpoise.mass - ALIKE ? 'to the counterpoise' : 'as a counterpoise';
      const where = `${inWords(counterpoise.below, 'length', system)} below the hinge`;
      return `add ${inWords(more, 'weight', system)} ${what}, ${where}`;
    }
    case 'lines-arranged': {
      const runs = listed(change.runs.map(({ name }) => name));
      return change.laid === 'inside' ? `run lines inside the pole (${runs})` : `arrange lines as a bundle (${runs})`;
    }
    case 'line-off':
      return `remove one line (${change.run.name})`;
  }
}

/** Lengths apart by less are alike [m]. */
const ALIKE = 1e-6;

/** What a change must be checked for, or when it may be done at all; by what is changed. */
const CONDITIONS: Partial<Record<RemedyChange['of'], string>> = {
  'mast-larger': ' Check that bearing and clamps take it.',
  'mast-inside': ' Check that the tower has room for it, and a plate to hold it there.',
  'footing-larger': ' A footing that is built can be enlarged only as an engineer details it.',
  counterpoise: ' Check that the tower reaches below its hinge, and that hinge and post take it.',
  'line-off': ' Do so only if it is not needed.',
};

/** The same as lines of plain text. */
export function remediesLines(remedies: Remedies, system: UnitSystem): string[] {
  const lines = remedies.remedies.flatMap((remedy) =>
    [remedy, ...remedy.also].map((each) => `- ${remedySays(each, remedies, system)}`),
  );
  return lines.length > 0 ? lines : [remediesSays(remedies, system)];
}
