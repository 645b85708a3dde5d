import type { UnitSystem } from '../../foundation/index.ts';
import type { AdditionsDocument, LinkStateDocument, StationStateDocument } from '../additions-document.ts';
import { WORDS_FOR_VERDICT } from '../choice-words.ts';
import { figures, listed, sentence, useFigures } from '../quantity.ts';
import { cautionBlock } from './given.ts';
import { paragraph, plain, printed, strong } from './printed.ts';
import type { Block, Sheet, SheetPart, Words } from './sheet.ts';

type Proposal = AdditionsDocument['after'][number];

const NONE = '–';

/** Proposals side by side, before and after, the best first. */
export function additionsSheet(
  document: AdditionsDocument,
  { title, units, version }: { readonly title: string; readonly units: UnitSystem; readonly version: string },
): Sheet {
  const { before, after, says, cautions, notCovered } = document;
  const ranked = after.toSorted((a, b) => a.rank - b.rank);
  const [best] = ranked;
  const verdict = best ? (best.soFar ?? best.verdict) : before.verdict;
  const standing: readonly Block[] = [
    ...cautions.map((caution) => ({ kind: 'caution', severity: 'standing', says: caution.says }) as const),
    paragraph(strong('Never covered here: '), `${notCovered.join(', ')}.`),
  ];
  return {
    title: title === '' ? 'Antenna tower' : title,
    subject: 'Proposals side by side',
    verdict,
    says,
    units,
    version: `Gustworthy ${version}`,
    foot: 'Compares numbers typed with ratings typed. The local building code and a licensed engineer decide.',
    parts: [
      { id: 'cautions', heading: 'Cautions, and what is never covered', blocks: standing },
      sideBySide(document, ranked),
      ...ranked.map((proposal) => proposalPart(proposal)),
      asItIs(before),
      { id: 'closing', heading: 'Who decides', blocks: standing },
    ],
  };
}

function verdictWords({ verdict, soFar }: Pick<StationStateDocument, 'verdict' | 'soFar'>): Words {
  const shown = soFar ?? verdict;
  const text =
    soFar === undefined || soFar === verdict ? WORDS_FOR_VERDICT[verdict] : `${WORDS_FOR_VERDICT[soFar]} so far`;
  return { text, mark: shown };
}

/** Every link as a column: use now, and with each proposal. */
function sideBySide({ before }: AdditionsDocument, ranked: readonly Proposal[]): SheetPart {
  const ids = [...new Set([...before.links, ...ranked.flatMap(({ links }) => links)].map(({ id }) => id))];
  const titleOf = (id: string) =>
    [...before.links, ...ranked.flatMap(({ links }) => links)].find((link) => link.id === id)?.title ?? id;
  const use = (state: LinkStateDocument | undefined): Words => {
    if (state === undefined) return plain(NONE);
    const text = state.use === undefined ? WORDS_FOR_VERDICT[state.verdict] : useFigures(state.use);
    return { text, mark: state.verdict };
  };
  return {
    id: 'side-by-side',
    heading: 'Side by side',
    blocks: [
      {
        kind: 'table',
        caption: 'The proposals, the best first',
        columns: [
          { head: 'proposal' },
          { head: 'rank', numeric: true },
          { head: 'verdict' },
          { head: 'weakest link' },
          { head: 'which holds to, actual gust', numeric: true, voice: 'wind' },
        ],
        rows: [
          [
            strong('as it is'),
            plain(''),
            verdictWords(before),
            ...weakestWords(
              before.weakest,
              before.links.map((link) => ({ ...link, state: link })),
            ),
          ],
          ...ranked.map((proposal): readonly Words[] => [
            strong(proposal.name),
            plain(String(proposal.rank)),
            verdictWords(proposal),
            ...weakestWords(
              proposal.weakest,
              proposal.links.map((link) => ({ ...link, state: link.after })),
            ),
          ]),
        ],
      },
      {
        kind: 'table',
        caption: 'Use of each link, as it is and with each proposal',
        columns: [
          { head: 'link' },
          { head: 'as it is', numeric: true },
          ...ranked.map(({ name }) => ({ head: name, numeric: true })),
        ],
        rows: ids.map((id) => [
          strong(sentence(titleOf(id))),
          use(before.links.find((link) => link.id === id)),
          ...ranked.map(({ links }) => use(links.find((link) => link.id === id)?.after)),
        ]),
      },
    ],
  };
}

function weakestWords(
  weakest: string | undefined,
  links: readonly { readonly id: string; readonly title: string; readonly state?: LinkStateDocument | undefined }[],
): readonly Words[] {
  const link = links.find(({ id }) => id === weakest);
  const gust = link?.state?.holdsTo;
  return [plain(link?.title ?? NONE), plain(gust ? printed(gust) : NONE, 'wind')];
}

function proposalPart(proposal: Proposal): SheetPart {
  const { name, rank, says, links, appeared, went, queries } = proposal;
  const state = (link: LinkStateDocument | undefined): readonly Words[] => [
    link === undefined ? plain(NONE) : { text: WORDS_FOR_VERDICT[link.verdict], mark: link.verdict },
    plain(link?.use === undefined ? NONE : useFigures(link.use)),
    plain(link?.holdsTo === undefined ? NONE : printed(link.holdsTo), 'wind'),
  ];
  return {
    id: `proposal-${rank}`,
    heading: `${rank}. ${name}`,
    blocks: [
      paragraph(says),
      {
        kind: 'table',
        caption: 'Before and after, link by link; what it holds to is an actual gust',
        columns: [
          { head: 'link' },
          { head: 'before' },
          { head: 'use before', numeric: true },
          { head: 'held to before', numeric: true, voice: 'wind' },
          { head: 'after' },
          { head: 'use after', numeric: true },
          { head: 'holds to after', numeric: true, voice: 'wind' },
          { head: 'change of use', numeric: true },
        ],
        rows: links.map(({ title, before, after, change }) => [
          strong(sentence(title)),
          ...state(before),
          ...state(after),
          plain(change === undefined ? NONE : signed(change)),
        ]),
      },
      ...comings(appeared.loads, went.loads),
      ...appeared.cautions.map(cautionBlock),
      ...roomBlocks(proposal),
      ...(queries.length === 0 ? [] : [{ kind: 'list', items: queries.map(({ says }) => says) } as const]),
    ],
  };
}

function signed(change: number): string {
  if (Math.abs(change) < 0.0005) return '0';
  return `${change > 0 ? '+' : '−'}${figures(Math.abs(change))}`;
}

function comings(appeared: readonly string[], went: readonly string[]): readonly Block[] {
  const said = [
    ...(appeared.length > 0 ? [`New: ${listed(appeared)}.`] : []),
    ...(went.length > 0 ? [`Taken off: ${listed(went)}.`] : []),
  ];
  return said.length === 0 ? [] : [paragraph(said.join(' '))];
}

function roomBlocks({ roomLeft }: Pick<StationStateDocument, 'roomLeft'>): readonly Block[] {
  if (roomLeft.length === 0) return [];
  return [{ kind: 'list', items: roomLeft.map(({ says }) => says) }];
}

function asItIs(before: StationStateDocument): SheetPart {
  return {
    id: 'as-it-is',
    heading: 'As it is',
    blocks: [
      paragraph(before.says),
      ...roomBlocks(before),
      ...(before.queries.length === 0
        ? []
        : [{ kind: 'list', items: before.queries.map(({ says }) => says) } as const]),
    ],
  };
}
