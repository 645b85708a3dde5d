import { Refusal, type UnitSystem } from '../../foundation/index.ts';
import type { CellFault, CellId, CellQuestion, CellReading } from '../../plan/index.ts';
import {
  areaCell,
  bundleWidthCell,
  type CellAnswer,
  chanceCell,
  forceCell,
  lowerAtCell,
  mastMomentCell,
  pressureCell,
  ratingCell,
  speedCell,
  stationCell,
} from '../../worksheet/index.ts';
import { Problem } from '../problems/problem.ts';
import { csv, guarded, sheetNumber } from './csv.ts';

type RowAnswer = CellAnswer | { readonly faults: readonly CellFault[] };

/** Faults that a cell has room for. */
const FAULTS_SAID = 6;

/** Refusals that name fields of a plan, in the names of an address. */
const SAYS_OF_REFUSAL: Readonly<Record<string, string>> = {
  'target-open':
    'The other wind must leave nothing open: give toMethod, toSpeed, toExposure and, for tia222-g, toRiskCategory.',
};

function answerOf(question: CellQuestion, units: UnitSystem): CellAnswer {
  switch (question.cell) {
    case 'pressure':
      return pressureCell(question.input, question.height);
    case 'force':
      return forceCell(question.input);
    case 'area':
      return areaCell(question.input, question.siteGiven);
    case 'speed':
      return speedCell(question.speed, question.from, question.to, units);
    case 'rating':
    case 'allowed-area':
      return ratingCell(question.input, question.ratings, question.target);
    case 'mast-moment':
      return mastMomentCell(question.tube, units);
    case 'bundle-width':
      return bundleWidthCell(question.count, question.diameter, units);
    case 'chance':
      return chanceCell(question.climate, question.speed, question.years, units);
    case 'lower-at':
      return lowerAtCell(question.holdsTo, question.margin, question.forecast, units);
    case 'station':
      return stationCell(question.input, question.give);
  }
}

function rowAnswers({ rows, units }: CellReading): readonly RowAnswer[] {
  return rows.map((row) => {
    if (!row.ok) return { faults: row.faults };
    try {
      return answerOf(row.question, units);
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      const says = SAYS_OF_REFUSAL[error.code] ?? error.message;
      return { faults: [{ code: error.code, given: '', allowed: '', says }] };
    }
  });
}

/** A fault as words in a cell, whose question mark tells them from a number and from a formula. */
function faultWords(faults: readonly CellFault[]): string {
  const said = faults.slice(0, FAULTS_SAID).map(({ says }) => says);
  const more = faults.length > FAULTS_SAID ? [`And ${faults.length - FAULTS_SAID} more.`] : [];
  return `? ${[...said, ...more].join(' ')}`.replaceAll(/[\p{Cc}\p{Zl}\p{Zp}]+/gu, ' ');
}

function refuse(answers: readonly RowAnswer[]): void {
  const faults = answers.flatMap((answer, index) =>
    'faults' in answer
      ? answer.faults.map(({ parameter, code, given, allowed, says }) => ({
          parameter,
          code,
          ...(given === '' ? {} : { given }),
          ...(allowed === '' ? {} : { allowed }),
          says: answers.length > 1 ? `Row ${index + 1}: ${says}` : says,
        }))
      : [],
  );
  if (faults.length === 0) return;
  throw new Problem('bad-query', 'The query has errors; each is listed.', { faults });
}

function headOf(id: CellId, { rows }: CellReading): string {
  const asked = rows.find((row) => row.ok)?.question;
  return asked?.cell === 'station' ? asked.give : id;
}

/** The body of a cell: one number or words; of a list, one a line; as CSV a column with its unit in the head. */
export function cellBody(id: CellId, reading: CellReading, form: 'text' | 'csv'): string {
  const { decimal, strict } = reading;
  const answers = rowAnswers(reading);
  if (strict) refuse(answers);
  const cells = answers.map((answer) => {
    if ('faults' in answer) return faultWords(answer.faults);
    return 'words' in answer ? answer.words : answer.value;
  });
  if (form === 'csv') {
    const measured = answers.find((answer) => 'unit' in answer);
    const unit = measured === undefined || measured.unit === '' ? '' : ` [${measured.unit}]`;
    return csv([[`${headOf(id, reading)}${unit}`], ...cells.map((cell) => [cell])], decimal);
  }
  return cells.map((cell) => (typeof cell === 'number' ? sheetNumber(cell, decimal) : guarded(cell))).join('\n');
}
