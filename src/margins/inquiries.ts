import type { Check } from './checks/check.ts';
import type { OpenQuestion } from './open-questions.ts';

/** Whom an answer is to be had from. */
export type Informant = 'manufacturer' | 'owner';

/** One thing to be found out. */
export interface Inquiry {
  /** JSON pointer of the field that would hold it. */
  readonly at: string;
  /** The open question; absent where a part is open for want of the field. */
  readonly question?: OpenQuestion;
}

/** What is to be asked of the tower's manufacturer, and what the owner can measure, each in the order of what it decides. */
export interface Inquiries {
  readonly letter: readonly Inquiry[];
  readonly toMeasure: readonly Inquiry[];
  /** No rating of the tower is given at all. */
  readonly withoutPapers: boolean;
}

/** More questions than these seldom get an answer. @source common-practice */
const ASKED_IN_A_LETTER = 3;

const OF_QUESTION: Readonly<Partial<Record<OpenQuestion['question'], Informant>>> = {
  'rating-method': 'manufacturer',
  'rating-exposure': 'manufacturer',
  'rating-terrain': 'manufacturer',
  'rating-class': 'manufacturer',
  'rating-area-kind': 'manufacturer',
  'rated-height': 'manufacturer',
  damping: 'manufacturer',
  'tower-members': 'owner',
  'pole-sides': 'owner',
  'bracing-pattern': 'owner',
  conductor: 'owner',
  'load-offset': 'owner',
  'bearing-height': 'owner',
  frequency: 'owner',
  cables: 'owner',
};

/** What the tower itself waits for: a rating, and what its own strength hangs on. */
const OF_TOWER: readonly Check['kind'][] = ['tower', 'own-strength'];

/** By the last name of the field of a rating of the tower, or of the tower itself. */
const OF_FIELD: readonly { readonly is: RegExp; readonly from: Informant }[] = [
  { is: /^\/ratings$/, from: 'manufacturer' },
  { is: /^\/ratings\/\d+\/(wind|wind\/year|level|top|supportedAt)$/, from: 'manufacturer' },
  { is: /^\/tower\/(foundation|asDrawn)$/, from: 'manufacturer' },
  { is: /^\/tower\/(shape|supportedAt|weight)$/, from: 'owner' },
  {
    is: /^\/tower\/.*(leg|weight|wall|legWall|braceWall|brace|panel|pattern|sides|legFree|yield|shape)$/,
    from: 'owner',
  },
  { is: /^\/mast\/(wall|inside|bearing|weight)$/, from: 'owner' },
  { is: /^\/(loads|cables)\/\d+\/(height|weight|tension)$/, from: 'owner' },
];

/**
 * What would decide most, by whom it is known.
 *
 * What the tower itself waits for comes first, then what moves its ratio, the largest fall first, then what its other parts wait for.
 *
 * @param checks of the answer, in its order
 * @param open questions, ranked by effect
 * @source common-practice
 */
export function inquiriesOf(checks: readonly Check[], open: readonly OpenQuestion[]): Inquiries {
  const needsOf = (isTower: boolean) =>
    checks
      .filter(({ kind }) => OF_TOWER.includes(kind) === isTower)
      .flatMap(({ needs }) => needs.map((at) => ({ at })));
  const all: readonly Inquiry[] = [
    ...needsOf(true),
    ...open.map((question) => ({ at: question.at, question })),
    ...needsOf(false),
  ];
  const from = (whom: Informant) =>
    all.filter(
      (inquiry, index) => informantOf(inquiry) === whom && all.findIndex(({ at }) => at === inquiry.at) === index,
    );
  return {
    letter: from('manufacturer').slice(0, ASKED_IN_A_LETTER),
    toMeasure: from('owner'),
    withoutPapers: all.some(({ at }) => at === '/ratings'),
  };
}

function informantOf({ at, question }: Inquiry): Informant | undefined {
  if (question) return OF_QUESTION[question.question];
  return OF_FIELD.find(({ is }) => is.test(at))?.from;
}
