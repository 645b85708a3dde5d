import { DRAWINGS, type DrawingName } from '../../drawing/index.ts';
import { assess, crankHeightsOf, remediesOf, sensitivityOf, spreadOf, standardTubesFor } from '../../margins/index.ts';
import { type DecimalSign, planHash, type readPlan } from '../../plan/index.ts';
import { answerDocument, answerText, windLoadTable } from '../../worksheet/index.ts';
import { csv } from '../cells/csv.ts';
import { pdfDisposition } from '../paper/file-name.ts';
import { PLAN_HEADER, VERSION } from '../version.ts';
import { answerWorksheet } from '../worksheets/answer-worksheet.ts';
import { type AskedWork, CHECKS_FOR } from './budget.ts';
import { asJson, asPage, asPaper, asText, type Finished, type SheetAsked } from './finished.ts';

type ReadPlan = Extract<ReturnType<typeof readPlan>, { readonly ok: true }>;

/** What is asked of a plan. */
export interface CheckAsked extends SheetAsked {
  readonly form: 'json' | 'text' | 'html' | 'csv' | 'svg' | 'pdf';
  readonly decimal: DecimalSign;
  readonly drawn: DrawingName | undefined;
  readonly along: readonly DrawingName[];
  readonly full: readonly ('working' | 'spread' | 'crankHeights' | 'sensitivity' | 'remedies')[];
}

export function checkWork({ input }: ReadPlan, { form, drawn, full }: CheckAsked): AskedWork {
  const sheet = drawn === undefined && (form === 'html' || form === 'pdf');
  const parts = new Set([...(drawn === undefined ? full : []), ...(sheet ? (['working'] as const) : [])]);
  const times = [...parts].reduce((sum, part) => sum + CHECKS_FOR[part], 1);
  const says = `The answer takes about ${times} checks. Leave out ${[...full].join(', ') || 'the worksheet'}.`;
  return { plans: [{ input }], times, several: { says } };
}

export function checkAnswer(reading: ReadPlan, asked: CheckAsked): Finished {
  const { input, document, entryWarnings } = reading;
  const { form, drawn, along, full } = asked;
  const assessment = assess(input);
  const hash = planHash(reading);
  const about = { headers: { [PLAN_HEADER]: hash.format2 }, verdicts: [assessment.verdict] };
  if (drawn !== undefined) {
    return { ...about, type: 'image/svg+xml; charset=utf-8', body: DRAWINGS[drawn](assessment) };
  }
  const withRemedies = full.includes('remedies');
  const besides = {
    version: VERSION,
    planHash: hash,
    spread: full.includes('spread') ? spreadOf(assessment) : undefined,
    crankHeights: full.includes('crankHeights') ? crankHeightsOf(assessment) : undefined,
    sensitivity: full.includes('sensitivity') ? sensitivityOf(assessment) : undefined,
    remedies: withRemedies ? remediesOf(assessment) : undefined,
    tubes: withRemedies ? standardTubesFor(assessment) : undefined,
  };
  if (form === 'text') return { ...about, ...asText(answerText(assessment, entryWarnings, besides)) };
  const depth = full.includes('working') ? 'full' : 'none';
  if (form === 'html' || form === 'pdf') {
    // A sheet says how many steps agree, so all are looked at, shown or not.
    const whole = answerDocument(assessment, document, entryWarnings, 'full', besides);
    const sheet = answerWorksheet(assessment, whole, depth);
    if (form === 'html') return { ...about, ...asPage(sheet, asked.look) };
    const headers = { ...about.headers, 'content-disposition': pdfDisposition(assessment.input.title) };
    return { ...about, headers, ...asPaper(sheet, asked.paper) };
  }
  const drawings =
    along.length === 0 ? undefined : Object.fromEntries(along.map((name) => [name, DRAWINGS[name](assessment)]));
  const answer = answerDocument(assessment, document, entryWarnings, depth, { ...besides, drawings });
  if (form === 'json') return { ...about, ...asJson(answer) };
  const { heads, rows } = windLoadTable(answer);
  // A file keeps its name and not its header.
  const name = `inline; filename="wind-loads-${hash.format2.slice(0, 8)}.csv"`;
  return {
    verdicts: about.verdicts,
    headers: { ...about.headers, 'content-disposition': name },
    type: 'text/csv; charset=utf-8',
    body: csv([heads, ...rows], asked.decimal),
  };
}
