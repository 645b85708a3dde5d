import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { DRAWING_NAMES, DRAWINGS } from '../../src/drawing/index.ts';
import { PAPERS, type PaperOrder, paperOrder } from '../../src/worksheet/index.ts';
import { columnWidths } from '../../src/worksheet/paper/column-widths.ts';
import { printInk } from '../../src/worksheet/paper/print-ink.ts';
import { TypstPress } from '../../src/worksheet/paper/typst-press.ts';
import { textOf, wellFormed } from '../drawing/well-formed.ts';
import fc from '../fast-check.ts';
import { assessed } from '../margins/any-plan.ts';
import { demoPlan } from '../margins/demo-plan.ts';
import { HOSTILE, sheetWithEverything } from './every-block.ts';

const press = new TypstPress();
const isPdf = (bytes: Uint8Array) => Buffer.from(bytes.subarray(0, 5)).toString() === '%PDF-';

describe('the template', () => {
  it('fetches, reads and runs nothing', () => {
    const template = readFileSync(new URL('../../src/worksheet/paper/sheet.typ', import.meta.url), 'utf8').replaceAll(
      /\/\/.*$/gm,
      '',
    );
    expect(template).toContain('sys.inputs.order');
    expect(template).not.toMatch(/@preview|@local|#?\b(import|include|plugin|read)\b/);
    // Formulas alone are evaluated, and only as maths.
    expect(template.match(/\beval\([^)]*\)/g)?.every((call) => call.endsWith('.typst, mode: "math")'))).toBe(true);
  });
});

describe('a printed sheet', () => {
  it('holds every kind of block and every formula, on both papers, as PDF/UA-1', () => {
    for (const paper of PAPERS) {
      const pdf = press.print(paperOrder(sheetWithEverything('plain words'), paper));
      expect(isPdf(pdf)).toBe(true);
      expect(Buffer.from(pdf).toString('latin1')).toMatch(/pdfuaid:part(>|=")1/);
    }
  });

  it('is the same bytes for the same sheet, whatever was printed before and by which press', () => {
    const order = paperOrder(sheetWithEverything('Heron ≤ Bluff'), 'letter');
    const first = press.print(order);
    press.print(paperOrder(sheetWithEverything('another'), 'a4'));
    expect(Buffer.compare(press.print(order), first)).toBe(0);
    expect(Buffer.compare(new TypstPress().print(order), first)).toBe(0);
    expect(Buffer.from(first).toString('latin1')).not.toContain('CreationDate');
  });

  it.each(HOSTILE)('takes %j as letters', (text) => {
    expect(isPdf(press.print(paperOrder(sheetWithEverything(text, 6), 'letter')))).toBe(true);
  });

  it.each([
    ['an emoji', '🗼'],
    ['control characters', '\u0000\u0007\u001b[31m\u007f\u0085'],
    ['marks that turn the reading direction', '\u202eabc\u2066def'],
    ['Hebrew, Arabic, Chinese', 'שלום العربية 漢字'],
    ['half a character', 'a\ud83dz'],
    ['combining marks', 'e\u0301\u0327\u0488'],
    ['a mark with nothing to stand on', '\u05a9'],
    ['line and paragraph ends', 'a\r\nb\u2028c\u2029d\te'],
    ['200 letters without a blank', 'x'.repeat(200)],
    ['200 emoji', '🗼'.repeat(200)],
    ['no-character, private use, joiners', '\uffff\ue000\u200d\ufeff\ufe0f'],
  ])('prints %s', (_, text) => {
    expect(isPdf(press.print(paperOrder(sheetWithEverything(text, 6), 'a4')))).toBe(true);
  });

  it('prints any name', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 200 }), (text) => {
        const sheet = sheetWithEverything('plain words');
        const [part] = sheet.parts;
        const name = {
          ...sheet,
          title: text,
          says: [{ text }],
          parts: part === undefined ? [] : [{ ...part, blocks: part.blocks.slice(0, 3) }],
        };
        return isPdf(press.print(paperOrder(name, 'letter')));
      }),
      { numRuns: 60 },
    );
  });

  it('takes 60,000 different letters in its stride', () => {
    const letters = Array.from({ length: 60_000 }, (_, index) => String.fromCodePoint(0x20000 + index)).join('');
    const sheet = sheetWithEverything('plain words');
    const order = paperOrder({ ...sheet, parts: [], says: [{ text: letters }] }, 'letter');
    expect(isPdf(press.print(order))).toBe(true);
  });
});

describe('an order', () => {
  const order = paperOrder(sheetWithEverything('plain words'), 'letter');
  const blocksOf = ({ parts }: PaperOrder) => parts.flatMap(({ blocks }) => blocks);

  it('holds the plan to the letter, to go along as a file', () => {
    const { parts } = sheetWithEverything('x'.repeat(200));
    const plan = parts.flatMap(({ blocks }) => blocks).find((block) => block.kind === 'plan');
    expect(paperOrder({ ...sheetWithEverything('x'.repeat(200)) }, 'a4').plan).toBe(plan?.json);
  });

  it('prints all lines of the plan, once and in order', () => {
    const { json } = sheetWithEverything('plain words')
      .parts.flatMap(({ blocks }) => blocks)
      .find((block) => block.kind === 'plan') as { json: string };
    const printed = blocksOf(order).flatMap((block) => (block.kind === 'plan' ? block.chunks.flat() : []));
    expect(printed.join('\n')).toBe(json);
  });

  it('leaves out no block', () => {
    const count = (blocks: readonly { kind: string }[]): Record<string, number> => {
      const counted: Record<string, number> = {};
      const visit = (block: { kind: string }) => {
        const inner =
          (block as { blocks?: { kind: string }[] }).blocks ??
          (block as { cells?: { kind: string }[][] }).cells?.flat();
        if (inner) inner.forEach(visit);
        else counted[block.kind] = (counted[block.kind] ?? 0) + 1;
      };
      blocks.forEach(visit);
      return counted;
    };
    const sheet = sheetWithEverything('plain words');
    expect(count(blocksOf(order))).toEqual(count(sheet.parts.flatMap(({ blocks }) => blocks)));
  });

  it('fills rows of the title block to their end', () => {
    const rows = blocksOf(order).flatMap((block) => (block.kind === 'blanks' ? block.rows : []));
    expect(rows.map(({ span }) => span)).toEqual([1, 3, 1]);
  });
});

describe('the columns of a table', () => {
  it('fill the width, and give numbers the room they need while there is any', () => {
    const cell = fc.record({ text: fc.string({ maxLength: 60 }), strong: fc.boolean() });
    const table = fc.integer({ min: 1, max: 12 }).chain((count) =>
      fc.record({
        columns: fc.array(fc.record({ head: fc.string({ maxLength: 30 }), numeric: fc.boolean() }), {
          minLength: count,
          maxLength: count,
        }),
        rows: fc.array(fc.array(cell, { minLength: count, maxLength: count }), { maxLength: 6 }),
      }),
    );
    fc.assert(
      fc.property(table, ({ columns, rows }) => {
        const { points, size } = columnWidths(columns, rows, 500);
        const sum = points.reduce((total, each) => total + each, 0);
        return Math.abs(sum - 500) < 1e-6 && points.every((each) => each > 0) && size >= 6.25 && size <= 8.75;
      }),
    );
  });
});

describe('a drawing on paper', () => {
  const assessment = assessed({ ...demoPlan('river-bluff'), title: 'fill="#f8f3e7" font-family="x"' });

  it('keeps its text, and loses the inks and letters of the screen', () => {
    for (const name of DRAWING_NAMES) {
      const drawn = DRAWINGS[name](assessment);
      const printed = printInk(drawn);
      expect(textOf(wellFormed(printed))).toBe(textOf(wellFormed(drawn.replace(/<style>[^<]*<\/style>/, ''))));
      expect(printed).not.toMatch(/="#(f8f3e7|211c15|17557c|a52a17)"|Sheet Serif|<style|var\(/);
      expect(printed).toContain(`font-family="'Source Serif 4'`);
    }
  });
});
