import {
  type AdditionsAnswer,
  type CautionAnswer,
  type CheckChangeAnswer,
  type EntryWarning,
  told,
} from '../answer/index.ts';
import type { UnitSystem } from '../foundation/index.ts';
import type { Addition, Additions, Assessment, Check, CheckChange } from '../margins/index.ts';
import {
  CHECK_WORDS,
  checkName,
  heldGustInWords,
  listed,
  missingSentences,
  NOT_COVERED,
  type PlanHash,
  REASON_WORDS,
  ratioFigures,
  sentence,
  VERDICT_WORDS,
} from '../words/index.ts';
import { cautionDocuments, roomLeftDocument } from './answer-document.ts';
import { checkStateDocument } from './check-document.ts';
import { partDocuments } from './part-document.ts';
import { quantity } from './quantity.ts';
import { ENGINEER_DECIDES, headlineSays, mainCheck, tracedTo } from './says.ts';

type StationAnswer = AdditionsAnswer['before'];

/** A proposal as it was read: the plan it would make, and what of it deserves a second look. */
export interface ProposedPlan {
  readonly plan: unknown;
  readonly entryWarnings: readonly EntryWarning[];
  readonly planHash?: PlanHash;
  readonly placed: (pointer: string) => { readonly pointer: string };
}

const CAUTIONS = [
  ENGINEER_DECIDES,
  {
    code: 'whole-answer',
    says: 'Before building, ask for the whole answer to the plan chosen. Its open questions and the cautions it shares with the present plan are not here.',
  },
];

/** What a kept answer is traced by: the service that gave it, and the plan as it is. */
export interface Traced {
  readonly version?: string;
  readonly planHash?: PlanHash;
}

/** Proposals side by side, in the reader's units. */
export function additionsDocument(
  additions: Additions,
  entryWarnings: readonly EntryWarning[],
  proposed: readonly ProposedPlan[],
  system: UnitSystem,
  { version, planHash }: Traced = {},
): AdditionsAnswer {
  const { before, after } = additions;
  return told<AdditionsAnswer>({
    says: additionsSays(additions, system),
    before: {
      ...stationOf(before, planHash),
      says: headlineSays(before),
      checks: before.checks.map((check) => ({
        id: check.id,
        title: checkName(check),
        ...checkStateDocument(check, system),
      })),
      entryWarnings,
    },
    after: after.map((addition, index) => ({
      name: addition.name,
      rank: addition.rank,
      ...stationOf(addition.assessment, proposed[index]?.planHash),
      says: additionSays(before, addition, system),
      checks: addition.checks.map((change) => changeOf(change, system)),
      entryWarnings: newEntryWarnings(entryWarnings, proposed[index]),
      added: comings(before, addition.assessment),
      removed: comings(addition.assessment, before),
      plan: proposed[index]?.plan,
    })),
    cautions: CAUTIONS,
    notCovered: NOT_COVERED,
    version,
  });
}

function stationOf(
  assessment: Assessment,
  planHash: PlanHash | undefined,
): Omit<StationAnswer, 'checks' | 'entryWarnings' | 'says'> {
  const { verdict, decided, weakest } = assessment;
  return told<ReturnType<typeof stationOf>>({
    verdict,
    decided,
    parts: partDocuments(assessment),
    governs: mainCheck(assessment).id,
    weakest,
    roomLeft: roomLeftDocument(assessment),
    planHash,
  });
}

function changeOf({ id, before, after }: CheckChange, system: UnitSystem): CheckChangeAnswer {
  const [was, is] = [before?.result, after?.result];
  return told<CheckChangeAnswer>({
    id,
    title: checkName((after ?? before) as Check),
    before: before && checkStateDocument(before, system),
    after: after && checkStateDocument(after, system),
    change: was && is && is.ratio - was.ratio,
    holdsToChange: was?.holdsTo && is?.holdsTo && quantity(is.holdsTo.gust - was.holdsTo.gust, 'speed', system),
  });
}

/** What the second has and the first has not. */
function comings(one: Assessment, other: Assessment): AdditionsAnswer['after'][number]['added'] {
  const names = ({ input }: Assessment) => input.station.loads.map(({ name }) => name);
  const key = ({ code, says }: CautionAnswer) => `${code} ${says}`;
  const saidOf = ({ cautions, input }: Assessment) => cautionDocuments(cautions, input.station.units);
  const known = new Set(saidOf(one).map(key));
  const had = new Set(names(one));
  return {
    loads: names(other).filter((name) => !had.has(name)),
    cautions: saidOf(other).filter((caution) => !known.has(key(caution))),
  };
}

/** What only the proposal gives cause to look at again, where it stands in the request. */
function newEntryWarnings(
  before: readonly EntryWarning[],
  proposed: ProposedPlan | undefined,
): readonly EntryWarning[] {
  const known = new Set(before.map(({ pointer, says }) => `${pointer} ${says}`));
  const placed = (proposed?.entryWarnings ?? []).map((query) => ({
    ...query,
    pointer: proposed?.placed(query.pointer).pointer ?? query.pointer,
  }));
  return placed.filter(({ pointer, says }) => !known.has(`${pointer} ${says}`));
}

/** How far a tower may fall is no margin. */
function largestRatio({ assessment: { checks } }: Addition): number {
  return Math.max(...checks.flatMap(({ kind, result }) => (result && kind !== 'fall' ? [result.ratio] : [])));
}

/** The best of them in a sentence. */
export function additionsSays({ before, after }: Additions, system: UnitSystem): string {
  const best = after.find(({ rank }) => rank === 1) as Addition;
  const told = best.checks.some((check) => check.after?.result);
  const { verdict, decided } = best.assessment;
  const leaves =
    verdict === 'over'
      ? 'comes first, and is over'
      : decided.parts < decided.of
        ? 'comes first, with parts still open'
        : after.some((each) => largestRatio(each) < largestRatio(best) - 1e-9)
          ? 'comes first, with the least not given'
          : 'leaves the most margin';
  const lead = after.length === 1 || !told ? '' : `Of ${after.length} proposals "${best.name}" ${leaves}. `;
  return `${lead}${additionSays(before, best, system)}`;
}

/**
 * "Tribander: the tower goes from 0.62 to 0.81, low margin. It then holds to an actual gust of 71 mph instead of 82 mph.": the
 * check that then holds to the least, what is over or no longer decided besides, and what changed most where that one did not.
 */
export function additionSays(before: Assessment, addition: Addition, system: UnitSystem): string {
  const { checks, assessment } = addition;
  const change = telling(checks);
  const said = change === undefined ? openSays(assessment) : `${changeSays(change, system)}.`;
  const others = checks.filter((check) => check !== change && check.after);
  const named = (which: (check: CheckChange) => boolean) =>
    listed(others.filter(which).map(({ after }) => checkName(after as Check)));
  const stays = (check: CheckChange) => check.after?.kind === 'fall' && unmoved(check);
  const over = named((check) => check.after?.verdict === 'over' && !stays(check));
  const overStill = named((check) => check.after?.verdict === 'over' && stays(check));
  const undecided = named((check) => isOpen(check.after) && check.before !== undefined && !isOpen(check.before));
  const opened = named((check) => isOpen(check.after) && check.before === undefined);
  const also = change?.after?.verdict === 'over' ? ' as well' : '';
  const moved = change && unmoved(change) ? mostMoved(others) : undefined;
  return [
    `${addition.name}: ${said}`,
    ...weakestSays(before, change, system),
    ...(moved === undefined ? [] : [`${sentence(changeSays(moved, system))}.`]),
    ...(over === '' ? [] : [`Over${also}: ${over}.`]),
    ...(overStill === '' ? [] : [`Over as before: ${overStill}.`]),
    ...(undecided === '' ? [] : [`No longer decided: ${undecided}.`]),
    ...(opened === '' ? [] : [`Open with it: ${opened}.`]),
  ].join(' ');
}

function isOpen(check: Check | undefined): boolean {
  return check?.verdict === 'open';
}

/** Which check held to the lowest gust before, where it is another one that does now. */
function weakestSays(before: Assessment, change: CheckChange | undefined, system: UnitSystem): readonly string[] {
  const was = before.checks.find(({ id }) => id === before.weakest);
  if (!change?.after?.result?.holdsTo || !was?.result?.holdsTo || was.id === change.id) return [];
  if (isOpen(change.after)) return [];
  const gust = heldGustInWords(was.result.holdsTo.gust, system);
  return [`Before, the weakest was the ${checkName(was)}, at ${gust}.`];
}

function unmoved({ before, after }: CheckChange): boolean {
  const [was, is] = [before?.result?.ratio, after?.result?.ratio];
  return was !== undefined && is !== undefined && ratioFigures(was) === ratioFigures(is);
}

/** Of the other checks that are shown, the one whose ratio changes most; none where all stay. */
function mostMoved(checks: readonly CheckChange[]): CheckChange | undefined {
  const step = ({ before, after }: CheckChange) => Math.abs((after?.result?.ratio ?? 0) - (before?.result?.ratio ?? 0));
  const moved = checks.filter(
    (check) => check.before?.result && check.after?.result && !isOpen(check.after) && !unmoved(check),
  );
  const [first, ...rest] = moved;
  return first && rest.reduce((most, each) => (step(each) > step(most) ? each : most), first);
}

function changeSays({ before, after }: CheckChange, system: UnitSystem): string {
  const { verdict, result } = after as Check;
  const name = checkName(after as Check);
  const ratio = ratioFigures(result?.ratio ?? 0);
  const was = before?.result === undefined ? undefined : ratioFigures(before.result.ratio);
  const [comes, stays, goes, it] =
    CHECK_WORDS[(after as Check).kind].number === 'several'
      ? ['come', 'stay', 'go', 'They then hold']
      : ['comes', 'stays', 'goes', 'It then holds'];
  const moved =
    was === undefined
      ? `the ${name} ${comes} to ${ratio}`
      : was === ratio
        ? `the ${name} ${stays} at ${ratio}`
        : `the ${name} ${goes} from ${was} to ${ratio}`;
  const gust = result?.holdsTo && heldGustInWords(result.holdsTo.gust, system);
  const wasGust = before?.result?.holdsTo && heldGustInWords(before.result.holdsTo.gust, system);
  const instead = wasGust === undefined || wasGust === gust ? '' : ` instead of ${wasGust}`;
  const holds = gust === undefined ? '' : `. ${it} to an actual gust of ${gust}${instead}`;
  return `${moved}, ${VERDICT_WORDS[verdict]}${holds}`;
}

/** Where no check has a ratio. */
function openSays({ checks, input }: Assessment): string {
  const tower = checks[0] as Check;
  const needs = missingSentences(tower.needs, input);
  return `the ${checkName(tower)} is open. ${needs || REASON_WORDS['beyond-rating']}`;
}

/**
 * The check that holds to the lowest gust after it, of those that are over where any is; where none holds to a gust, the one
 * with the largest ratio. How far the tower may fall is told first only where it changes and nothing else has a ratio.
 */
function telling(checks: readonly CheckChange[]): CheckChange | undefined {
  const used = checks.filter(({ after }) => after?.result);
  const standing = used.filter(({ after }) => after?.kind !== 'fall');
  const over = standing.filter(({ after }) => after?.verdict === 'over');
  const falls = used.filter((check) => check.after?.kind === 'fall' && !unmoved(check));
  const pool = [over, standing, falls].find((each) => each.length > 0) ?? [];
  const held = pool.filter(({ after }) => after?.result?.holdsTo);
  const ratio = ({ after }: CheckChange) => after?.result?.ratio ?? 0;
  const gust = ({ after }: CheckChange) => after?.result?.holdsTo?.gust ?? Number.POSITIVE_INFINITY;
  const [first, ...others] = held.length > 0 ? held : pool;
  const worse = (one: CheckChange, other: CheckChange) =>
    held.length > 0 ? gust(one) < gust(other) : ratio(one) > ratio(other);
  return first && others.reduce((worst, each) => (worse(each, worst) ? each : worst), first);
}

/** Proposals as plain text, the best first. */
export function additionsText(
  additions: Additions,
  entryWarnings: readonly EntryWarning[],
  proposed: readonly ProposedPlan[],
  system: UnitSystem,
  traced: Traced = {},
): string {
  const { says, before, after, cautions, notCovered } = additionsDocument(additions, entryWarnings, proposed, system);
  const { title } = additions.before.input;
  const lines = [...(title === '' ? [] : [title, '']), says, '', `As it is: ${before.says}`, ...besides(before)];
  for (const each of after.toSorted((a, b) => a.rank - b.rank)) {
    lines.push('', `${each.rank}. ${each.says}`, ...besides(each));
    for (const caution of each.added.cautions) lines.push(`   - ${caution.says} ${caution.action}`);
  }
  lines.push(
    '',
    ...cautions.map((caution) => caution.says),
    `Not covered by this service: ${notCovered.join(', ')}.`,
    '',
    ...(traced.version === undefined ? [] : [tracedTo(traced.version, traced.planHash), '']),
  );
  return lines.join('\n');
}

function besides({ roomLeft, entryWarnings }: Pick<StationAnswer, 'roomLeft' | 'entryWarnings'>): readonly string[] {
  return [...roomLeft.map(({ says }) => `   ${says}`), ...entryWarnings.map(({ says }) => `   - ${says}`)];
}
