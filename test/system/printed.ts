import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Answer } from '../../src/answer/index.ts';
import { answerWorksheet } from '../../src/http/worksheets/answer-worksheet.ts';
import { assess } from '../../src/margins/index.ts';
import { planHash, readPlan } from '../../src/plan/index.ts';
import { answerDocument, type Paper, paperOrder, type Sheet } from '../../src/worksheet/index.ts';
import { TypstPress } from '../../src/worksheet/paper/typst-press.ts';

const press = new TypstPress();

/** A sheet as printed, and as the programs of poppler-utils read it. */
export interface Printed {
  readonly document: Answer;
  readonly sheet: Sheet;
  readonly pdf: Uint8Array;
  readonly pages: number;
  /** Text in the order it is written in, which is that of the tags, without blanks. */
  readonly text: string;
  /** Text of each page as it looks. */
  readonly seen: readonly string[];
  readonly fonts: readonly string[];
  readonly information: string;
  readonly attached: string;
}

/** Text without blanks, line ends and the places where a long word may break. */
export function tight(text: string): string {
  return text.replaceAll(/[\s\u200b\u00ad]+/gu, '');
}

type Run = (program: string, ...options: string[]) => string;

function withFile<T>(pdf: Uint8Array, read: (run: Run, file: string, folder: string) => T): T {
  const folder = mkdtempSync(join(tmpdir(), 'gustworthy-paper-'));
  const file = join(folder, 'sheet.pdf');
  const run: Run = (program, ...options) =>
    execFileSync(program, options, { encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'], maxBuffer: 1 << 28 });
  try {
    writeFileSync(file, pdf);
    return read(run, file, folder);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

export function readPdf(pdf: Uint8Array): Omit<Printed, 'document' | 'sheet' | 'pdf'> {
  return withFile(pdf, (run, file, folder) => {
    const information = run('pdfinfo', file);
    const pages = Number(/^Pages:\s+(\d+)/m.exec(information)?.[1]);
    run('pdfdetach', '-save', '1', '-o', join(folder, 'plan.json'), file);
    return {
      information,
      pages,
      text: tight(run('pdftotext', '-raw', file, '-')),
      seen: run('pdftotext', '-layout', file, '-').split('\f').slice(0, pages),
      fonts: run('pdffonts', file).trim().split('\n').slice(2),
      attached: readFileSync(join(folder, 'plan.json'), 'utf8'),
    };
  });
}

/** The tags of a PDF, by the program that reads them slowly: for short sheets. */
export function tagsOf(pdf: Uint8Array): string {
  return withFile(pdf, (run, file) => run('pdfinfo', '-struct-text', file));
}

/** The worksheet of a plan, printed and read back. */
export function printed(plan: unknown, paper: Paper = 'letter', working: 'none' | 'full' = 'none'): Printed {
  const reading = readPlan(plan);
  if (!reading.ok) throw new Error(JSON.stringify(reading.faults));
  const assessment = assess(reading.input);
  const document = answerDocument(assessment, reading.document, reading.entryWarnings, 'full', {
    planHash: planHash(reading),
  });
  const sheet = answerWorksheet(assessment, document, working);
  const pdf = press.print(paperOrder(sheet, paper));
  return { document, sheet, pdf, ...readPdf(pdf) };
}
