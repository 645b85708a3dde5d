import type { AdditionsAnswer, CheckState } from '../../answer/index.ts';
import type { UnitSystem } from '../../foundation/index.ts';
import { figures, listed, ratioFigures, sentence, VERDICT_WORDS } from '../../words/index.ts';
import { cautionBlock } from './given.ts';
import { paragraph, plain, printed, strong } from './printed.ts';
import type { Block, Sheet, SheetPart, Words } from './sheet.ts';

type StationAnswer = AdditionsAnswer['before'];
type Proposal = AdditionsAnswer['after'][number];

const NONE = '–';

/** Proposals side by side, before and after, the best first. */
export function additionsSheet(
  document: AdditionsAnswer,
  { title, units, version }: { readonly title: string; readonly units: UnitSystem; readonly version: string },
): Sheet {
  const { before, after, says, cautions, notCovered } = document;
  const ranked = after.toSorted((a, b) => a.rank - b.rank);
  const [best] = ranked;
  const verdict = best ? (best.soFar ?? best.verdict) : before.verdict;
  const standing: readonly Block[] = [
    ...cautions.map((caution) => ({ kind: 'caution', severity: 'standing', says: caution.says }) as const),
    paragraph(strong('Not covered by this service: '), `${notCovered.join(', ')}.`),
  ];
  return {
    title: title === '' ? 'Antenna tower' : title,
    subject: 'Proposals side by side',
    verdict,
    says: [{ text: says }],
    units,
    version: `Gustworthy ${version}`,
    foot: 'Compares entered numbers with ratings. The local building code and a licensed engineer decide.',
    parts: [
      { id: 'cautions', heading: 'Cautions, and what is not covered', blocks: standing },
      sideBySide(document, ranked),
      ...ranked.map((proposal) => proposalPart(proposal)),
      asItIs(before),
      { id: 'closing', heading: 'Who decides', blocks: standing },
    ],
  };
}

function verdictWords({ verdict, soFar }: Pick<StationAnswer, 'verdict' | 'soFar'>): Words {
  const shown = soFar ?? verdict;
  const text = soFar === undefined || soFar === verdict ? VERDICT_WORDS[verdict] : `${VERDICT_WORDS[soFar]}, some open`;
  return { text, mark: shown };
}

/** Every check as a column: its ratio now, and with each proposal. */
function sideBySide({ before }: AdditionsAnswer, ranked: readonly Proposal[]): SheetPart {
  const ids = [...new Set([...before.checks, ...ranked.flatMap(({ checks }) => checks)].map(({ id }) => id))];
  const titleOf = (id: string) =>
    [...before.checks, ...ranked.flatMap(({ checks }) => checks)].find((check) => check.id === id)?.title ?? id;
  const ratio = (state: CheckState | undefined): Words => {
    if (state === undefined) return plain(NONE);
    const text = state.ratio === undefined ? VERDICT_WORDS[state.verdict] : ratioFigures(state.ratio);
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
          { head: 'weakest' },
          { head: 'which holds to, actual gust', numeric: true, voice: 'wind' },
        ],
        rows: [
          [
            strong('as it is'),
            plain(''),
            verdictWords(before),
            ...weakestWords(
              before.weakest,
              before.checks.map((check) => ({ ...check, state: check })),
            ),
          ],
          ...ranked.map((proposal): readonly Words[] => [
            strong(proposal.name),
            plain(String(proposal.rank)),
            verdictWords(proposal),
            ...weakestWords(
              proposal.weakest,
              proposal.checks.map((check) => ({ ...check, state: check.after })),
            ),
          ]),
        ],
      },
      {
        kind: 'table',
        caption: 'Ratio of each check, as it is and with each proposal',
        columns: [
          { head: 'check' },
          { head: 'as it is', numeric: true },
          ...ranked.map(({ name }) => ({ head: name, numeric: true })),
        ],
        rows: ids.map((id) => [
          strong(sentence(titleOf(id))),
          ratio(before.checks.find((check) => check.id === id)),
          ...ranked.map(({ checks }) => ratio(checks.find((check) => check.id === id)?.after)),
        ]),
      },
    ],
  };
}

function weakestWords(
  weakest: string | undefined,
  checks: readonly { readonly id: string; readonly title: string; readonly state?: CheckState | undefined }[],
): readonly Words[] {
  const check = checks.find(({ id }) => id === weakest);
  const gust = check?.state?.holdsTo;
  return [plain(check?.title ?? NONE), plain(gust ? printed(gust) : NONE, 'wind')];
}

function proposalPart(proposal: Proposal): SheetPart {
  const { name, rank, says, checks, added, removed, entryWarnings } = proposal;
  const state = (check: CheckState | undefined): readonly Words[] => [
    check === undefined ? plain(NONE) : { text: VERDICT_WORDS[check.verdict], mark: check.verdict },
    plain(check?.ratio === undefined ? NONE : ratioFigures(check.ratio)),
    plain(check?.holdsTo === undefined ? NONE : printed(check.holdsTo), 'wind'),
  ];
  return {
    id: `proposal-${rank}`,
    heading: `${rank}. ${name}`,
    blocks: [
      paragraph(says),
      {
        kind: 'table',
        caption: 'Before and after, check by check; gusts are actual gusts',
        columns: [
          { head: 'check' },
          { head: 'before' },
          { head: 'ratio before', numeric: true },
          { head: 'held to before', numeric: true, voice: 'wind' },
          { head: 'after' },
          { head: 'ratio after', numeric: true },
          { head: 'holds to after', numeric: true, voice: 'wind' },
          { head: 'change of ratio', numeric: true },
        ],
        rows: checks.map(({ title, before, after, change }) => [
          strong(sentence(title)),
          ...state(before),
          ...state(after),
          plain(change === undefined ? NONE : signed(change)),
        ]),
      },
      ...comings(added.loads, removed.loads),
      ...added.cautions.map(cautionBlock),
      ...roomBlocks(proposal),
      ...(entryWarnings.length === 0 ? [] : [{ kind: 'list', items: entryWarnings.map(({ says }) => says) } as const]),
    ],
  };
}

function signed(change: number): string {
  if (Math.abs(change) < 0.0005) return '0';
  return `${change > 0 ? '+' : '−'}${figures(Math.abs(change))}`;
}

function comings(added: readonly string[], removed: readonly string[]): readonly Block[] {
  const said = [
    ...(added.length > 0 ? [`New: ${listed(added)}.`] : []),
    ...(removed.length > 0 ? [`Taken off: ${listed(removed)}.`] : []),
  ];
  return said.length === 0 ? [] : [paragraph(said.join(' '))];
}

function roomBlocks({ roomLeft }: Pick<StationAnswer, 'roomLeft'>): readonly Block[] {
  if (roomLeft.length === 0) return [];
  return [{ kind: 'list', items: roomLeft.map(({ says }) => says) }];
}

function asItIs(before: StationAnswer): SheetPart {
  return {
    id: 'as-it-is',
    heading: 'As it is',
    blocks: [
      paragraph(before.says),
      ...roomBlocks(before),
      ...(before.entryWarnings.length === 0
        ? []
        : [{ kind: 'list', items: before.entryWarnings.map(({ says }) => says) } as const]),
    ],
  };
}
