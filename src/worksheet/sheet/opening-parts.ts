import type { PartAnswer } from '../../answer/index.ts';
import type { UnitSystem } from '../../foundation/index.ts';
import type { OpenQuestion } from '../../margins/index.ts';
import {
  answerWords,
  figures,
  listed,
  ratioFigures,
  sentence,
  takenInWords,
  VERDICT_WORDS,
} from '../../words/index.ts';
import { decidedSays } from '../says.ts';
import { type AnswerSheetGiven, cautionBlock, planWords } from './given.ts';
import { list, orNone, paragraph, plain, printed, strong, table } from './printed.ts';
import type { Block, SheetPart } from './sheet.ts';

/** The verdict and what changes it: what it holds to, what is still open, the cautions that go with it. */
export function verdictPart(given: AnswerSheetGiven): SheetPart {
  const { document, assessment } = given;
  const weakest = document.checks.find(({ id }) => id === document.weakest);
  const { wanted } = assessment.input;
  const rows: Extract<Block, { kind: 'facts' }>['rows'] = [
    {
      label: 'Verdict',
      words: { ...strong(VERDICT_WORDS[document.verdict]), mark: document.verdict },
      note: `${decidedSays(assessment)} The verdict is that of the worst part.`,
    },
    ...(weakest?.holdsTo === undefined
      ? []
      : [
          {
            label: 'Weakest',
            words: plain(weakest.title),
            note: `holds to an actual gust of ${printed(weakest.holdsTo.gust)}`,
          },
        ]),
    { label: 'Margin set', words: plain(`${figures(100 * wanted.margin)} %`, 'given') },
  ];
  return {
    id: 'verdict',
    heading: 'The verdict, and what changes it',
    blocks: [
      { kind: 'facts', rows },
      partsTable(given),
      ...openQuestions(given),
      ...document.cautions.filter(({ severity }) => severity === 'verdict').map(cautionBlock),
      ...list(
        document.entryWarnings.map(({ says }) => says),
        'Entries to check',
      ),
    ],
  };
}

/** Every part with the check that its verdict comes from. */
function partsTable({ document }: AnswerSheetGiven): Block {
  return table<PartAnswer>(
    'Parts: each has the verdict of its worst check',
    [
      { head: 'part', of: ({ title }) => strong(sentence(title)) },
      {
        head: 'verdict',
        of: ({ verdict }) =>
          verdict === undefined ? 'nothing to compare' : { text: VERDICT_WORDS[verdict], mark: verdict },
      },
      { head: 'ratio', numeric: true, of: ({ ratio }) => orNone(ratio, ratioFigures) },
      { head: 'governs, or not given', of: ({ says }) => says },
    ],
    document.parts,
  );
}

function openQuestions({ document, assessment }: AnswerSheetGiven): readonly Block[] {
  const { toFindOut, alsoOpen } = document;
  const { open } = assessment.questions;
  const system = assessment.input.station.units;
  const needs = document.checks.filter(({ verdict }) => verdict === 'open');
  if (toFindOut.length === 0 && needs.length === 0) return [];
  return [
    { kind: 'subheading', text: 'To find out' },
    ...(toFindOut.length === 0
      ? []
      : [
          table<OpenQuestion>(
            'Open questions, and the ratio by each answer',
            [
              { head: 'question', of: (_, index) => strong(toFindOut[index]?.ask ?? '') },
              { head: 'assumed', of: (question) => takenInWords(question, system) },
              { head: 'ratio if answered', of: (question) => ratiosInWords(question, system) },
              { head: 'effect', of: (_, index) => toFindOut[index]?.says ?? '' },
            ],
            open,
          ),
        ]),
    ...(alsoOpen > 0 ? [paragraph(`The same of ${alsoOpen} more loads.`)] : []),
    ...list(needs.map(({ says }) => says)),
  ];
}

function ratiosInWords(question: OpenQuestion, system: UnitSystem): string {
  return question.ratioIf
    .map(({ answer, ratio }) => `${ratioFigures(ratio)} if ${answerWords(question, answer, system)}`)
    .join('; ');
}

/** What is on every answer. */
export function standingPart(given: AnswerSheetGiven): SheetPart {
  return {
    id: 'cautions',
    heading: 'Cautions, and what is not covered',
    blocks: standingBlocks(given),
  };
}

export function standingBlocks({ document }: AnswerSheetGiven): readonly Block[] {
  return [
    ...document.cautions.filter(({ severity }) => severity === 'standing').map(cautionBlock),
    paragraph(strong('Not covered by this service: '), `${document.notCovered.join(', ')}.`),
  ];
}

/** The title block, with room to write where the plan says nothing. */
export function titleBlockPart(given: AnswerSheetGiven): SheetPart {
  const { applicant, owner, address, parcel, jurisdiction, permit, code, date, drawings, note } =
    planWords(given).titleBlock ?? {};
  const row = (label: string, filled: string | undefined, wide = false) => ({
    label,
    ...(filled === undefined ? {} : { filled }),
    ...(wide ? { wide } : {}),
  });
  return {
    id: 'title-block',
    heading: 'Title block',
    blocks: [
      {
        kind: 'blanks',
        rows: [
          row('Applicant', applicant),
          row('Owner', owner),
          row('Address of the site', address, true),
          row('Parcel', parcel),
          row('Jurisdiction', jurisdiction),
          row('Permit number', permit),
          row('Date', date),
          row('Building code and edition adopted', code, true),
        ],
      },
      ...(drawings === undefined || drawings.length === 0
        ? []
        : [
            {
              kind: 'facts',
              rows: [{ label: 'Drawings', words: plain(sentence(listed(drawings)), 'given') }],
            } as const,
          ]),
      ...(note === undefined ? [] : [paragraph(plain(note, 'given'))]),
    ],
  };
}
