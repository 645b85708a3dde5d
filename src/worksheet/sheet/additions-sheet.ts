import type { AdditionsAnswer, CheckState, PartAnswer } from '../../answer/index.ts';
import type { UnitSystem } from '../../foundation/index.ts';
import { figures, listed, partsSideBySide, ratioFigures, sentence, VERDICT_WORDS } from '../../words/index.ts';
import { versionLine } from './closing-parts.ts';
import { cautionBlock } from './given.ts';
import { list, orNone, paragraph, plain, printed, strong, table } from './printed.ts';
import type { Block, Sheet, SheetPart, Words } from './sheet.ts';

type StationAnswer = AdditionsAnswer['before'];
type Proposal = AdditionsAnswer['after'][number];

/** Proposals side by side, before and after, the best first. */
export function additionsSheet(
  document: AdditionsAnswer,
  { title, units, version }: { readonly title: string; readonly units: UnitSystem; readonly version: string },
): Sheet {
  const { before, after, says, cautions, notCovered } = document;
  const ranked = after.toSorted((a, b) => a.rank - b.rank);
  const [best] = ranked;
  const verdict = (best ?? before).decided.verdict ?? 'open';
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
    version: versionLine({ version, document: before }),
    foot: 'Compares entered numbers with ratings. The local building code and a licensed engineer decide.',
    parts: [
      { id: 'cautions', heading: 'Cautions, and what is not covered', blocks: standing },
      sideBySide(document, ranked),
      ...ranked.map(proposalPart),
      asItIs(before),
      { id: 'closing', heading: 'Who decides', blocks: standing },
    ],
  };
}

function verdictWords({ decided }: Pick<StationAnswer, 'decided'>): Words {
  const { parts, of, verdict = 'open' } = decided;
  const text = parts === of ? VERDICT_WORDS[verdict] : `${VERDICT_WORDS[verdict]}, ${parts} of ${of} parts decided`;
  return { text, mark: verdict };
}

/** Before, or a proposal, as a row beside the others. */
interface Shown extends Pick<StationAnswer, 'decided' | 'parts' | 'weakest'> {
  readonly name: string;
  readonly rank: string;
  readonly checks: readonly { readonly id: string; readonly title: string; readonly after?: CheckState | undefined }[];
}

/** Every check as a row: its ratio now, and with each proposal. */
function sideBySide({ before }: AdditionsAnswer, ranked: readonly Proposal[]): SheetPart {
  const checks = before.checks.map((check) => ({ ...check, after: check }));
  const shown: readonly Shown[] = [
    { ...before, name: 'as it is', rank: '', checks },
    ...ranked.map((proposal) => ({ ...proposal, rank: String(proposal.rank) })),
  ];
  const titles = new Map(shown.flatMap((each) => each.checks).map(({ id, title }) => [id, title]));
  const checkOf = (each: Shown, id: string | undefined) => each.checks.find((check) => check.id === id);
  const weakest = (each: Shown) => checkOf(each, each.weakest);
  const ratio = ({ ratio: of, verdict }: CheckState): Words => ({
    text: of === undefined ? VERDICT_WORDS[verdict] : ratioFigures(of),
    mark: verdict,
  });
  return {
    id: 'side-by-side',
    heading: 'Side by side',
    blocks: [
      table<Shown>(
        'The proposals, the best first',
        [
          { head: 'proposal', of: ({ name }) => strong(name) },
          { head: 'rank', numeric: true, of: ({ rank }) => rank },
          { head: 'verdict', of: verdictWords },
          { head: 'weakest', of: (each) => orNone(weakest(each)?.title, plain) },
          {
            head: 'which holds to, actual gust',
            numeric: true,
            voice: 'wind',
            of: (each) => orNone(weakest(each)?.after?.holdsTo, printed),
          },
        ],
        shown,
      ),
      table<ReturnType<typeof partsSideBySide<PartAnswer>>[number]>(
        'Each part as it is and with each proposal',
        [
          { head: 'part', of: ({ title }) => strong(sentence(title)) },
          ...shown.map((each, index) => ({
            head: each.name,
            of: (row: { readonly of: readonly (readonly PartAnswer[])[] }) => partWords(row.of[index] ?? []),
          })),
        ],
        partsSideBySide(shown.map(({ parts }) => parts)),
      ),
      table<string>(
        'Ratio of each check, as it is and with each proposal',
        [
          { head: 'check', of: (id) => strong(sentence(titles.get(id) ?? id)) },
          ...shown.map((each) => ({
            head: each.name,
            numeric: true,
            of: (id: string) => orNone(checkOf(each, id)?.after, ratio),
          })),
        ],
        [...titles.keys()],
      ),
    ],
  };
}

/** "within, 0.795"; where several share a row, the worst has the mark and each its name. */
function partWords(parts: readonly PartAnswer[]): Words | string {
  const said = parts.map(({ title, verdict, ratio }) => {
    const word = verdict === undefined ? 'nothing to compare' : VERDICT_WORDS[verdict];
    const figure = ratio === undefined ? word : `${word}, ${ratioFigures(ratio)}`;
    return parts.length > 1 ? `${title}: ${figure}` : figure;
  });
  if (said.length === 0) return '–';
  const [worst] = (['over', 'open', 'low-margin', 'within'] as const).filter((verdict) =>
    parts.some((part) => part.verdict === verdict),
  );
  return { text: said.join('; '), ...(worst === undefined ? {} : { mark: worst }) };
}

function proposalPart(proposal: Proposal): SheetPart {
  const { name, rank, says, checks, added, removed, entryWarnings } = proposal;
  const verdict = (check: CheckState): Words => ({ text: VERDICT_WORDS[check.verdict], mark: check.verdict });
  return {
    id: `proposal-${rank}`,
    heading: `${rank}. ${name}`,
    blocks: [
      paragraph(says),
      table<(typeof checks)[number]>(
        'Before and after, check by check; gusts are actual gusts',
        [
          { head: 'check', of: ({ title }) => strong(sentence(title)) },
          { head: 'before', of: ({ before }) => orNone(before, verdict) },
          { head: 'ratio before', numeric: true, of: ({ before }) => orNone(before?.ratio, ratioFigures) },
          {
            head: 'held to before',
            numeric: true,
            voice: 'wind',
            of: ({ before }) => orNone(before?.holdsTo, printed),
          },
          { head: 'after', of: ({ after }) => orNone(after, verdict) },
          { head: 'ratio after', numeric: true, of: ({ after }) => orNone(after?.ratio, ratioFigures) },
          { head: 'holds to after', numeric: true, voice: 'wind', of: ({ after }) => orNone(after?.holdsTo, printed) },
          { head: 'change of ratio', numeric: true, of: ({ change }) => orNone(change, signed) },
        ],
        checks,
      ),
      ...comings(added.loads, removed.loads),
      ...added.cautions.map(cautionBlock),
      ...saysList(proposal.roomLeft),
      ...saysList(entryWarnings),
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

const saysList = (each: readonly { readonly says: string }[]) => list(each.map(({ says }) => says));

function asItIs({ says, roomLeft, entryWarnings }: StationAnswer): SheetPart {
  const blocks = [paragraph(says), ...saysList(roomLeft), ...saysList(entryWarnings)];
  return { id: 'as-it-is', heading: 'As it is', blocks };
}
