import type { Answer } from '../../src/answer/index.ts';
import { DRAWING_NAMES, DRAWINGS } from '../../src/drawing/index.ts';
import { assess } from '../../src/margins/index.ts';
import { planHash, readPlan } from '../../src/plan/index.ts';
import {
  type AnswerSheetGiven,
  answerDocument,
  answerSheet,
  type Block,
  type Sheet,
  witness,
} from '../../src/worksheet/index.ts';

/** What a sheet is made of, without the reference folder. */
export function givenFor(plan: unknown, working: 'none' | 'full' = 'none'): AnswerSheetGiven {
  const reading = readPlan(plan);
  if (!reading.ok) throw new Error(JSON.stringify(reading.faults));
  const assessment = assess(reading.input);
  const document = answerDocument(assessment, reading.document, reading.entryWarnings, 'full', {
    planHash: planHash(reading),
  });
  return {
    assessment,
    document,
    drawings: DRAWING_NAMES.map((name) => ({ name, svg: DRAWINGS[name](assessment) })),
    testimony: witness(document.working ?? []),
    working,
    version: '9.9.9',
    sources: [{ id: 'asce7-16', title: 'ASCE/SEI 7-16, Minimum Design Loads', edition: '2016', seen: 'Not read.' }],
  };
}

export function sheetOf(plan: unknown, working: 'none' | 'full' = 'none'): { sheet: Sheet; document: Answer } {
  const given = givenFor(plan, working);
  return { sheet: answerSheet(given), document: given.document };
}

export type Of<Kind extends Block['kind']> = Extract<Block, { kind: Kind }>;

export function blocksOf<Kind extends Block['kind']>(sheet: Sheet, part: string, kind: Kind): readonly Of<Kind>[] {
  const blocks = sheet.parts.find(({ id }) => id === part)?.blocks ?? [];
  return blocks.filter((block): block is Of<Kind> => block.kind === kind);
}

/** Every word of a sheet but those of its drawings and its plan, a block a line. */
export function wordsOf(sheet: Sheet): readonly string[] {
  return sheet.parts.flatMap(({ heading, blocks }) => [heading, ...blocks.flatMap(wordsOfBlock)]);
}

function wordsOfBlock(block: Block): readonly string[] {
  switch (block.kind) {
    case 'subheading':
      return [block.text];
    case 'paragraph':
      return [block.words.map(({ text }) => text).join('')];
    case 'list':
    case 'ticks':
      return block.items;
    case 'caution':
      return [`${block.says} ${block.action ?? ''}`];
    case 'facts':
      return block.rows.map(({ label, words, note }) => `${label}: ${words.text} ${note ?? ''}`);
    case 'table':
      return [
        block.caption,
        ...[...block.rows, ...(block.totals ?? [])].map((row) => row.map(({ text }) => text).join(' | ')),
      ];
    case 'step':
      return [`${block.title} ${block.value} ${block.source}`];
    case 'blanks':
      return block.rows.map(({ label, filled }) => `${label}: ${filled ?? ''}`);
    case 'remarks':
    case 'seal':
      return [block.label];
    case 'drawing':
      return [block.title];
    case 'plan':
      return [];
  }
}

/** A plan with so many loads, every one with a check of its own. */
export function crowded(plan: Record<string, unknown>, count: number): Record<string, unknown> {
  const loads = Array.from({ length: count }, (_, index) => ({
    name: `panel ${index + 1} of many`,
    height: 10 + (index % 38),
    heading: (index * 37) % 360,
    shape: 'plate',
    wide: 6 + (index % 5),
    tall: 10,
    deep: 2,
    ratedWind: 120,
    offset: 0,
  }));
  return { ...plan, loads };
}

/** Little said, and names that would be markup, close an attribute, or turn the direction of what follows. */
export const HOSTILE_NAMES = ['<script>alert(1)</script>', `"quoted" & 'single'`, 'אב\u202eturned', '</textarea><b>x'];

export const GAPS: Record<string, unknown> = {
  units: 'us',
  title: HOSTILE_NAMES[0],
  method: 'asce7-16',
  site: { wind: 105, exposure: 'C' },
  tower: { support: 'free', top: 48 },
  loads: HOSTILE_NAMES.map((name, index) => ({ name, height: 20 + index, area: 1, offset: 0 })),
  titleBlock: { applicant: HOSTILE_NAMES[1], attachments: [HOSTILE_NAMES[3]] },
  cables: [],
};
