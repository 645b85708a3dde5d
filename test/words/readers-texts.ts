import { DRAWING_NAMES, DRAWINGS } from '../../src/drawing/index.ts';
import {
  ASSUMED,
  type Assessment,
  additionsOf,
  assess,
  CAUTION_CODES,
  type Caution,
  CHECK_KINDS,
  type Check,
  type FallTowards,
  type OpenQuestion,
  remediesOf,
  sensitivityOf,
  spreadOf,
  standardTubesFor,
} from '../../src/margins/index.ts';
import { readAdditionsRequest, readPlan } from '../../src/plan/index.ts';
import {
  CAUTION_WORDS,
  CHECK_WORDS,
  capacityOf,
  checkName,
  demandOn,
  drawnName,
  type SaidCaution,
} from '../../src/words/index.ts';
import {
  additionsDocument,
  additionsSheet,
  additionsText,
  answerDocument,
  answerSheet,
  answerText,
  sheetHtml,
} from '../../src/worksheet/index.ts';
import { givenFor } from '../worksheet/sheet-of.ts';

/** What stands beside an answer when all of it is asked for. */
export function besidesOf(assessment: Assessment) {
  return {
    spread: spreadOf(assessment),
    sensitivity: sensitivityOf(assessment),
    remedies: remediesOf(assessment),
    tubes: standardTubesFor(assessment),
  };
}

function reading(plan: unknown) {
  const read = readPlan(plan);
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read;
}

/** The whole answer to a plan, in its documents. */
export function wholeAnswer(plan: unknown) {
  const { input, document, entryWarnings } = reading(plan);
  const assessment = assess(input);
  const besides = besidesOf(assessment);
  return {
    assessment,
    text: answerText(assessment, entryWarnings, besides),
    document: answerDocument(assessment, document, entryWarnings, 'full', besides),
  };
}

/** The text of a page: what is between its tags, and what is read aloud of its attributes. */
export function textOfMarkup(markup: string): string {
  const aloud = [...markup.matchAll(/ (?:title|alt|aria-label|placeholder)="([^"]*)"/g)].map(([, text]) => text);
  const shown = markup.replaceAll(/<(style|script)\b[\s\S]*?<\/\1>/g, ' ').replaceAll(/<[^>]*>/g, ' ');
  return [shown, ...aloud]
    .join('\n')
    .replaceAll('&amp;', '&')
    .replaceAll(/&(#39|quot);/g, "'");
}

const PAGE = { styles: [], icon: '', home: '' };

/** A whole worksheet, its working printed, as the text of its page. */
export function worksheetText(plan: unknown): string {
  const page = sheetHtml(answerSheet(givenFor(plan, 'full')), PAGE);
  // Its appendix is the plan itself, as its owner wrote it.
  return textOfMarkup(page.replace(/<pre class="plan"[\s\S]*?<\/pre>/, ''));
}

export function drawingTexts(assessment: Assessment): readonly string[] {
  return DRAWING_NAMES.map((name) => textOfMarkup(DRAWINGS[name](assessment)));
}

/** Proposals as text, as documents and as a sheet. */
export function additionsTexts(request: unknown): { readonly texts: readonly string[]; readonly document: unknown } {
  const read = readAdditionsRequest(request);
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  const { units } = read.before.station;
  const then = read.after.map(({ name, input }) => ({ name, assessment: assess(input) }));
  const additions = additionsOf(assess(read.before), then);
  const given = [additions, read.entryWarnings, read.after, units] as const;
  const document = additionsDocument(...given);
  const sheet = additionsSheet(document, { title: '', units, version: '9.9.9' });
  return { texts: [additionsText(...given), textOfMarkup(sheetHtml(sheet, PAGE))], document };
}

const FALLS: readonly FallTowards[] = ['power-line', 'property-line', 'building'];

/** A check of every kind, with and without a name, ice and a place it may fall to. */
export const EVERY_CHECK: readonly Check[] = CHECK_KINDS.flatMap((kind) =>
  (kind === 'fall' ? FALLS : [undefined]).flatMap((towards) =>
    [false, true].map(
      (withIce): Check => ({
        id: kind,
        kind,
        at: '/tower',
        verdict: 'open',
        needs: [],
        name: 'quad',
        ...(withIce ? { withIce } : {}),
        ...(towards === undefined ? {} : { towards }),
      }),
    ),
  ),
);

export function checkTexts(check: Check): readonly string[] {
  const { over } = CHECK_WORDS[check.kind];
  return [checkName(check), drawnName(check), demandOn(check), capacityOf(check), over];
}

/** The words and figures that tell cautions of one code apart. */
const TOLD_APART: readonly Omit<SaidCaution, 'code' | 'severity'>[] = [
  {},
  { of: 'quad' },
  { names: ['quad', 'dish'] },
  { value: 0.6 },
  { value: 1.9 },
  ...[
    'notGiven',
    'told',
    'IV',
    'pole',
    'outside-width',
    'hinge',
    'iced',
    'rated-guyed',
    'rated-bracketed',
    'rated-apart',
    'too-short',
    'low',
  ].map((word) => ({ word })),
  { word: 'at-most', value: 0.6 },
  { word: 'at-most', value: 1.9 },
  ...EVERY_CHECK.map((check) => ({ check })),
];

/** Cautions whose word is the title of a standard. */
const NAMES_A_STANDARD: ReadonlySet<string> = new Set([
  'rating-old-standard',
  'by-second-standard',
  'method-from-memory',
]);

/** Every caution with all that may tell it apart. */
export const EVERY_CAUTION: readonly string[] = CAUTION_CODES.flatMap((code) => {
  const { says, action } = CAUTION_WORDS[code];
  const word = code.includes('basis') || code === 'climate-converted' ? 'gust3-strength' : undefined;
  if (code === 'assumed') {
    return ASSUMED.flatMap((name) => {
      const caution: SaidCaution & Caution = { code, severity: 'line', of: 'quad', word: name };
      return [says(caution, 'us'), typeof action === 'string' ? action : action(caution, 'us')];
    });
  }
  return TOLD_APART.flatMap((told) => {
    const caution: SaidCaution & Caution = { code, severity: 'line', ...(word === undefined ? {} : { word }), ...told };
    if (told.word !== undefined && (word !== undefined || NAMES_A_STANDARD.has(code))) return [];
    if (code === 'topography-not-applied') return [says({ ...caution, word: 'too-gentle' }, 'us')];
    return [says(caution, 'us'), typeof action === 'string' ? action : action(caution, 'us')];
  });
});

/** Questions of every kind, asked of a plan that has what they are about. */
export const EVERY_QUESTION: readonly OpenQuestion[] = (
  [
    ['rating-method', 'tia222-g', '/ratings/0/wind/method'],
    ['rating-exposure', 'C', '/ratings/0/wind/exposure'],
    ['rating-terrain', 'IV', '/ratings/0/wind/terrain'],
    ['rating-class', 'II', '/ratings/0/wind/riskCategory'],
    ['rating-area-kind', 'effective', '/ratings/0/areaKind'],
    ['load-area-kind', 'unknown', '/loads/0/areaKind'],
    ['tower-members', '0.1', '/tower'],
    ['cables', '3', '/cables'],
    ['load-offset', '0.75', '/loads/0/offset'],
    ['bearing-height', '17.8', '/mast/bearing'],
    ['rated-height', '12', '/ratings/0/top'],
    ['ice-class', 'III', '/site/riskCategory'],
    ['damping', '0.005', '/tower/damping'],
    ['pole-sides', '8', '/tower/sides'],
    ['bracing-pattern', 'cross', '/tower/pattern'],
  ] as const
).map(([question, answer, at]) => ({
  question,
  at,
  of: 'quad',
  assumed: answer,
  ofCheck: 'tower',
  ratio: 0.9,
  ratioIf: [
    { answer, ratio: 0.8 },
    { answer, ratio: 1.2 },
  ],
}));
