import type { UnitSystem } from '../foundation/index.ts';
import type { Addition, Additions, Assessment, Link, LinkChange, Verdict } from '../margins/index.ts';
import { linkName, WORDS_FOR_VERDICT } from './choice-words.ts';
import { inWords, type Quantity, quantity, sentence, useFigures } from './quantity.ts';

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
}

export interface StationStateDocument {
  readonly verdict: Verdict;
  readonly soFar?: Verdict;
  readonly weakest?: string;
  readonly links: readonly (LinkStateDocument & { readonly id: string; readonly title: string })[];
  /** The biggest thing that still fits, effective, by height. */
  readonly roomLeft: readonly { readonly height: Quantity; readonly area: Quantity; readonly on: string }[];
}

export interface AdditionsDocument {
  readonly says: string;
  readonly before: StationStateDocument;
  readonly after: readonly (Omit<StationStateDocument, 'links'> & {
    readonly name: string;
    readonly rank: number;
    readonly says: string;
    readonly links: readonly LinkChangeDocument[];
    readonly plan: unknown;
  })[];
  readonly cautions: readonly { readonly code: string; readonly says: string }[];
}

/** Proposals side by side, in the reader's units. */
export function additionsDocument(
  additions: Additions,
  plans: readonly unknown[],
  system: UnitSystem,
): AdditionsDocument {
  const { before, after } = additions;
  return {
    says: additionsSays(additions, system),
    before: {
      ...stationOf(before, system),
      links: before.links.map((link) => ({ id: link.id, title: linkName(link), ...stateOf(link, system) })),
    },
    after: after.map((addition, index) => ({
      name: addition.name,
      rank: addition.rank,
      says: additionSays(before, addition, system),
      ...stationOf(addition.assessment, system),
      links: addition.links.map((change) => changeOf(change, system)),
      plan: plans[index],
    })),
    cautions: [
      {
        code: 'engineer-and-local-code',
        says: 'This compares numbers you typed with ratings you typed. The local building code and a licensed engineer decide.',
      },
      {
        code: 'whole-answer',
        says: 'Before you build, ask for the whole answer to the plan you choose: its cautions and open questions are not here.',
      },
    ],
  };
}

function stationOf(assessment: Assessment, system: UnitSystem): Omit<StationStateDocument, 'links'> {
  const { verdict, soFar, weakest, roomLeft, roomOnMast } = assessment;
  return {
    verdict,
    ...(soFar === undefined ? {} : { soFar }),
    ...(weakest === undefined ? {} : { weakest }),
    roomLeft: [...(roomLeft ? [roomLeft] : []), ...roomOnMast].map(({ height, area, on }) => ({
      height: quantity(height, 'length', system),
      area: quantity(area, 'area', system),
      on,
    })),
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
  const use = [before?.result?.use, after?.result?.use] as const;
  return {
    id,
    title: linkName((after ?? before) as Link),
    ...(before ? { before: stateOf(before, system) } : {}),
    ...(after ? { after: stateOf(after, system) } : {}),
    ...(use[0] === undefined || use[1] === undefined ? {} : { change: use[1] - use[0] }),
  };
}

/** The best of them in a sentence. */
export function additionsSays({ before, after }: Additions, system: UnitSystem): string {
  const best = after.find(({ rank }) => rank === 1) as Addition;
  const lead =
    after.length === 1 ? '' : `Of ${after.length} proposals "${best.name}" leaves the weakest link the most. `;
  return `${lead}${additionSays(before, best, system)}`;
}

/** "Tribander: the tower goes from 0.62 to 0.81, thin; it then holds to a gust of 71 mph instead of 82 mph." */
export function additionSays(before: Assessment, addition: Addition, system: UnitSystem): string {
  const change = telling(addition.links);
  if (!change?.after?.result) return `${addition.name}: nothing is known of what it would do.`;
  const { after } = change;
  const name = linkName(after);
  const use = useFigures(after.result?.use ?? 0);
  const was = change.before?.result?.use;
  const moved =
    was === undefined
      ? `the ${name} comes to ${use}`
      : Math.abs((after.result?.use ?? 0) - was) < 5e-4
        ? `the ${name} stays at ${use}`
        : `the ${name} goes from ${useFigures(was)} to ${use}`;
  const verdict = WORDS_FOR_VERDICT[after.verdict];
  const gust = after.result?.holdsTo?.gust;
  const wasGust = change.before?.result?.holdsTo?.gust;
  const holds =
    gust === undefined
      ? ''
      : `; it then holds to a gust of ${inWords(gust, 'speed', system)}${wasGust === undefined || Math.abs(wasGust - gust) < 0.05 ? '' : ` instead of ${inWords(wasGust, 'speed', system)}`}`;
  const weakest = addition.assessment.links.find((link) => link.id === addition.assessment.weakest);
  const other =
    weakest && weakest.id !== after.id && weakest.id !== before.weakest
      ? ` ${sentence(linkName(weakest))} would then be the weakest.`
      : '';
  return `${addition.name}: ${moved}, ${verdict}${holds}.${other}`;
}

/** The link with the largest use after it. */
function telling(links: readonly LinkChange[]): LinkChange | undefined {
  return links.reduce<LinkChange | undefined>(
    (most, each) => ((each.after?.result?.use ?? -1) > (most?.after?.result?.use ?? -1) ? each : most),
    undefined,
  );
}

/** Proposals as plain text, the best first. */
export function additionsText(additions: Additions, system: UnitSystem): string {
  const ranked = [...additions.after].sort((a, b) => a.rank - b.rank);
  return [
    additionsSays(additions, system),
    '',
    ...ranked.map((addition) => `${addition.rank}. ${additionSays(additions.before, addition, system)}`),
    '',
    'This compares numbers you typed with ratings you typed. The local building code and a licensed engineer decide.',
    'Ask for the whole answer to the plan you choose: its cautions and open questions are not here.',
    '',
  ].join('\n');
}
