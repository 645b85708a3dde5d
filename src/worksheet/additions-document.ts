import type { UnitSystem } from '../foundation/index.ts';
import type { Addition, Additions, Assessment, Link, LinkChange, Verdict } from '../margins/index.ts';
import { NOT_COVERED } from './caution-words.ts';
import { type CautionDocument, type CheckDocument, cautionDocuments, checkDocument } from './check-document.ts';
import { isPlural, linkName, WORDS_FOR_VERDICT } from './choice-words.ts';
import { heldGustInWords, listed, type Quantity, quantity, sentence, useFigures } from './quantity.ts';
import { missingSentences } from './question-words.ts';
import { headline } from './says.ts';

export interface LinkStateDocument {
  readonly verdict: Verdict;
  readonly use?: number;
  readonly holdsTo?: Quantity;
}

export interface LinkChangeDocument {
  readonly id: string;
  readonly title: string;
  readonly before?: LinkStateDocument;
  readonly after?: LinkStateDocument;
  /** Use after less use before. */
  readonly change?: number;
  /** Gust held to after less that before. */
  readonly holdsToChange?: Quantity;
}

interface QueryDocument {
  readonly pointer: string;
  readonly code?: string;
  readonly says: string;
}

export interface StationStateDocument {
  readonly verdict: Verdict;
  readonly soFar?: Verdict;
  readonly weakest?: string;
  readonly says: string;
  readonly links: readonly (LinkStateDocument & { readonly id: string; readonly title: string })[];
  /** The biggest thing that still fits, effective, by height. */
  readonly roomLeft: CheckDocument['roomLeft'];
  readonly queries: readonly QueryDocument[];
}

/** Loads by their names, and cautions. */
export interface ComingsDocument {
  readonly loads: readonly string[];
  readonly cautions: readonly CautionDocument[];
}

export interface AdditionsDocument {
  readonly says: string;
  readonly before: StationStateDocument;
  readonly after: readonly (Omit<StationStateDocument, 'links'> & {
    readonly name: string;
    readonly rank: number;
    readonly links: readonly LinkChangeDocument[];
    readonly appeared: ComingsDocument;
    readonly went: ComingsDocument;
    readonly plan: unknown;
  })[];
  readonly cautions: readonly { readonly code: string; readonly says: string }[];
  readonly notCovered: readonly string[];
}

/** A proposal as it was read: the plan it would make, and what of it deserves a second look. */
export interface ProposedPlan {
  readonly plan: unknown;
  readonly queries: readonly QueryDocument[];
  readonly placed: (pointer: string) => { readonly pointer: string };
}

const CAUTIONS = [
  {
    code: 'engineer-and-local-code',
    says: 'This compares numbers you typed with ratings you typed. The local building code and a licensed engineer decide.',
  },
  {
    code: 'whole-answer',
    says: 'Before you build, ask for the whole answer to the plan you choose: its open questions and the cautions it shares with your plan are not here.',
  },
];

/** Proposals side by side, in the reader's units. */
export function additionsDocument(
  additions: Additions,
  queries: readonly QueryDocument[],
  proposed: readonly ProposedPlan[],
  system: UnitSystem,
): AdditionsDocument {
  const { before, after } = additions;
  return {
    says: additionsSays(additions, system),
    before: {
      ...stationOf(before),
      says: headline(before),
      links: before.links.map((link) => ({ id: link.id, title: linkName(link), ...stateOf(link, system) })),
      queries,
    },
    after: after.map((addition, index) => ({
      name: addition.name,
      rank: addition.rank,
      ...stationOf(addition.assessment),
      says: additionSays(before, addition, system),
      links: addition.links.map((change) => changeOf(change, system)),
      queries: newQueries(queries, proposed[index]),
      appeared: comings(before, addition.assessment),
      went: comings(addition.assessment, before),
      plan: proposed[index]?.plan,
    })),
    cautions: CAUTIONS,
    notCovered: NOT_COVERED,
  };
}

function stationOf(assessment: Assessment): Omit<StationStateDocument, 'links' | 'queries' | 'says'> {
  const { verdict, soFar, weakest } = assessment;
  return {
    verdict,
    ...(soFar === undefined ? {} : { soFar }),
    ...(weakest === undefined ? {} : { weakest }),
    // As a check of the same plan says it.
    roomLeft: checkDocument(assessment, undefined, [], 'none').roomLeft,
  };
}

function stateOf({ verdict, result }: Link, system: UnitSystem): LinkStateDocument {
  return {
    verdict,
    ...(result === undefined ? {} : { use: result.use }),
    ...(result?.holdsTo === undefined ? {} : { holdsTo: quantity(result.holdsTo.gust, 'speed', system) }),
  };
}

function changeOf({ id, before, after }: LinkChange, system: UnitSystem): LinkChangeDocument {
  const [was, is] = [before?.result, after?.result];
  return {
    id,
    title: linkName((after ?? before) as Link),
    ...(before ? { before: stateOf(before, system) } : {}),
    ...(after ? { after: stateOf(after, system) } : {}),
    ...(was && is ? { change: is.use - was.use } : {}),
    ...(was?.holdsTo && is?.holdsTo
      ? { holdsToChange: quantity(is.holdsTo.gust - was.holdsTo.gust, 'speed', system) }
      : {}),
  };
}

/** What the second has and the first has not. */
function comings(one: Assessment, other: Assessment): ComingsDocument {
  const names = ({ inquiry }: Assessment) => inquiry.station.loads.map(({ name }) => name);
  const key = ({ code, says }: CautionDocument) => `${code} ${says}`;
  const saidOf = ({ cautions, inquiry }: Assessment) => cautionDocuments(cautions, inquiry.station.units);
  const known = new Set(saidOf(one).map(key));
  const had = new Set(names(one));
  return {
    loads: names(other).filter((name) => !had.has(name)),
    cautions: saidOf(other).filter((caution) => !known.has(key(caution))),
  };
}

/** What only the proposal gives cause to look at again, where it stands in the request. */
function newQueries(before: readonly QueryDocument[], proposed: ProposedPlan | undefined): readonly QueryDocument[] {
  const known = new Set(before.map(({ pointer, says }) => `${pointer} ${says}`));
  const placed = (proposed?.queries ?? []).map((query) => ({
    ...query,
    pointer: proposed?.placed(query.pointer).pointer ?? query.pointer,
  }));
  return placed.filter(({ pointer, says }) => !known.has(`${pointer} ${says}`));
}

/** The best of them in a sentence. */
export function additionsSays({ before, after }: Additions, system: UnitSystem): string {
  const best = after.find(({ rank }) => rank === 1) as Addition;
  const told = best.links.some((link) => link.after?.result);
  const leaves = best.assessment.verdict === 'over' ? 'is over by the least' : 'leaves the most margin';
  const lead = after.length === 1 || !told ? '' : `Of ${after.length} proposals "${best.name}" ${leaves}. `;
  return `${lead}${additionSays(before, best, system)}`;
}

/**
 * "Tribander: the tower goes from 0.62 to 0.81, thin; it then holds to an actual gust of 71 mph instead of 82 mph.": the
 * link that then holds to the least, what is over or no longer shown besides, and what changed most where that one did not.
 */
export function additionSays(before: Assessment, addition: Addition, system: UnitSystem): string {
  const { links, assessment } = addition;
  const change = telling(links);
  const said = change === undefined ? nothingShown(assessment) : changeSays(change, system);
  const others = links.filter((link) => link !== change && link.after);
  const named = (which: (link: LinkChange) => boolean) =>
    listed(others.filter(which).map(({ after }) => linkName(after as Link)));
  const stays = (link: LinkChange) => link.after?.kind === 'fall' && unmoved(link);
  const over = named((link) => link.after?.verdict === 'over' && !stays(link));
  const overStill = named((link) => link.after?.verdict === 'over' && stays(link));
  const lost = named((link) => notShown(link.after) && link.before !== undefined && !notShown(link.before));
  const unshown = named((link) => notShown(link.after) && link.before === undefined);
  const also = change?.after?.verdict === 'over' ? ' as well' : '';
  const moved = change && unmoved(change) ? mostMoved(others) : undefined;
  return [
    `${addition.name}: ${said}.`,
    ...weakestSays(before, change, system),
    ...(moved === undefined ? [] : [`${sentence(changeSays(moved, system))}.`]),
    ...(over === '' ? [] : [`Over${also}: ${over}.`]),
    ...(overStill === '' ? [] : [`Over as before: ${overStill}.`]),
    ...(lost === '' ? [] : [`No longer shown: ${lost}.`]),
    ...(unshown === '' ? [] : [`Not shown with it: ${unshown}.`]),
  ].join(' ');
}

function notShown(link: Link | undefined): boolean {
  return link?.verdict === 'not-shown';
}

/** Which link held to the lowest gust before, where it is another one that does now. */
function weakestSays(before: Assessment, change: LinkChange | undefined, system: UnitSystem): readonly string[] {
  const was = before.links.find(({ id }) => id === before.weakest);
  if (!change?.after?.result?.holdsTo || !was?.result?.holdsTo || was.id === change.id) return [];
  if (notShown(change.after)) return [];
  const gust = heldGustInWords(was.result.holdsTo.gust, system);
  return [`Before, the link that held to the least was the ${linkName(was)}, to ${gust}.`];
}

function unmoved({ before, after }: LinkChange): boolean {
  const [was, is] = [before?.result?.use, after?.result?.use];
  return was !== undefined && is !== undefined && useFigures(was) === useFigures(is);
}

/** Of the other links that are shown, the one whose use changes most; none where all stay. */
function mostMoved(links: readonly LinkChange[]): LinkChange | undefined {
  const step = ({ before, after }: LinkChange) => Math.abs((after?.result?.use ?? 0) - (before?.result?.use ?? 0));
  const moved = links.filter(
    (link) => link.before?.result && link.after?.result && !notShown(link.after) && !unmoved(link),
  );
  const [first, ...rest] = moved;
  return first && rest.reduce((most, each) => (step(each) > step(most) ? each : most), first);
}

function changeSays({ before, after }: LinkChange, system: UnitSystem): string {
  const { verdict, result } = after as Link;
  const name = linkName(after as Link);
  const use = useFigures(result?.use ?? 0);
  const was = before?.result === undefined ? undefined : useFigures(before.result.use);
  const [comes, stays, goes, it] = isPlural(after as Link)
    ? ['come', 'stay', 'go', 'they then hold']
    : ['comes', 'stays', 'goes', 'it then holds'];
  const moved =
    was === undefined
      ? `the ${name} ${comes} to ${use}`
      : was === use
        ? `the ${name} ${stays} at ${use}`
        : `the ${name} ${goes} from ${was} to ${use}`;
  const gust = result?.holdsTo && heldGustInWords(result.holdsTo.gust, system);
  const wasGust = before?.result?.holdsTo && heldGustInWords(before.result.holdsTo.gust, system);
  const instead = wasGust === undefined || wasGust === gust ? '' : ` instead of ${wasGust}`;
  const holds = gust === undefined ? '' : `; ${it} to an actual gust of ${gust}${instead}`;
  return `${moved}, ${WORDS_FOR_VERDICT[verdict]}${holds}`;
}

/** Where no link has a use. */
function nothingShown({ links, inquiry }: Assessment): string {
  const tower = links[0] as Link;
  const needs = missingSentences(tower.needs, inquiry);
  return `the ${linkName(tower)} is not shown. ${needs || 'Nothing given proves it.'}`.replace(/\.$/, '');
}

/**
 * The link that holds to the lowest gust after it, of those that are over where any is; where none holds to a gust, the one
 * with the largest use. How far the tower may fall is told first only where it changes and nothing else has a use.
 */
function telling(links: readonly LinkChange[]): LinkChange | undefined {
  const used = links.filter(({ after }) => after?.result);
  const standing = used.filter(({ after }) => after?.kind !== 'fall');
  const over = standing.filter(({ after }) => after?.verdict === 'over');
  const falls = used.filter((link) => link.after?.kind === 'fall' && !unmoved(link));
  const pool = [over, standing, falls].find((each) => each.length > 0) ?? [];
  const held = pool.filter(({ after }) => after?.result?.holdsTo);
  const use = ({ after }: LinkChange) => after?.result?.use ?? 0;
  const gust = ({ after }: LinkChange) => after?.result?.holdsTo?.gust ?? Number.POSITIVE_INFINITY;
  const [first, ...others] = held.length > 0 ? held : pool;
  const worse = (one: LinkChange, other: LinkChange) =>
    held.length > 0 ? gust(one) < gust(other) : use(one) > use(other);
  return first && others.reduce((worst, each) => (worse(each, worst) ? each : worst), first);
}

/** Proposals as plain text, the best first. */
export function additionsText(
  additions: Additions,
  queries: readonly QueryDocument[],
  proposed: readonly ProposedPlan[],
  system: UnitSystem,
): string {
  const { says, before, after, cautions, notCovered } = additionsDocument(additions, queries, proposed, system);
  const { title } = additions.before.inquiry;
  const lines = [...(title === '' ? [] : [title, '']), says, '', `As it is: ${before.says}`, ...besides(before)];
  for (const each of after.toSorted((a, b) => a.rank - b.rank)) {
    lines.push('', `${each.rank}. ${each.says}`, ...besides(each));
    for (const caution of each.appeared.cautions) lines.push(`   - ${caution.says} ${caution.do}`);
  }
  lines.push('', ...cautions.map((caution) => caution.says), `Never covered here: ${notCovered.join(', ')}.`, '');
  return lines.join('\n');
}

function besides({ roomLeft, queries }: Pick<StationStateDocument, 'roomLeft' | 'queries'>): readonly string[] {
  return [...roomLeft.map(({ says }) => `   ${says}`), ...queries.map(({ says }) => `   - ${says}`)];
}
