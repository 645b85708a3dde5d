import { describe, expect, it } from 'vitest';
import { answerWorksheet } from '../../src/http/worksheets/answer-worksheet.ts';
import { crankHeightsOf, loweredOf } from '../../src/margins/index.ts';
import { answerDocument, answerText, heightsDocument } from '../../src/worksheet/index.ts';
import { assessed, type Document } from '../margins/any-plan.ts';
import { CRANK_UP_TOWER } from '../margins/crank-up-tower.ts';

const PLAN: Document = {
  units: 'us',
  method: 'asce7-16',
  site: { wind: 105, exposure: 'C', riskCategory: 'II' },
  tower: CRANK_UP_TOWER,
  loads: [
    {
      name: 'beam',
      height: 54,
      on: 'tower',
      front: 8,
      side: 8,
      areaKind: 'effective',
      offset: 0,
      heading: 0,
      weight: 50,
    },
  ],
  cables: [],
  ratings: [
    {
      of: 'tower',
      top: 54,
      height: 54,
      area: 10,
      areaKind: 'effective',
      wind: { speed: 110, method: 'asce7-16', exposure: 'C' },
    },
  ],
};
const own = assessed(PLAN);
const heights = crankHeightsOf(own);
if (!heights) throw new Error('it does not slide');
const document = heightsDocument(heights, 'us');

describe('a crank-up at other heights, as it is told', () => {
  it('is told nested, by quarters and drawn out, from the top down', () => {
    expect(document.rows.map(({ height }) => Math.round(height.value * 2) / 2)).toEqual(
      expect.arrayContaining([54, 46.5, 39, 31.5, 24]),
    );
    const tops = document.rows.map(({ height }) => height.value);
    expect([...tops].sort((a, b) => b - a)).toEqual(tops);
  });

  it('drawn out has the ratios of the plan, and nested those of the lowered tower', () => {
    const ratioOf = (row: (typeof document.rows)[number] | undefined) =>
      row?.parts.find(({ kind }) => kind === 'tower')?.ratio ?? Number.NaN;
    const towerIn = (checks: typeof own.checks) => checks.find(({ kind }) => kind === 'tower')?.result?.ratio ?? 0;
    expect(ratioOf(document.rows[0])).toBeCloseTo(towerIn(own.checks), 9);
    expect(ratioOf(document.rows.at(-1))).toBeCloseTo(towerIn(loweredOf(own)?.assessment.checks ?? []), 9);
  });

  it('keeps the margin longer the lower it is, here', () => {
    const gusts = document.rows.map(({ keepsMarginTo }) => keepsMarginTo?.value ?? 0);
    expect([...gusts].sort((a, b) => a - b)).toEqual(gusts);
    expect(new Set(gusts).size).toBeGreaterThan(2);
  });

  it('stands in the text and on the worksheet where it is asked for, and else not', () => {
    const asked = { crankHeights: heights };
    expect(answerText(own, [], asked)).toContain('At other heights:');
    expect(answerText(own, [])).not.toContain('At other heights:');
    const sheetOf = (besides: typeof asked | undefined) =>
      answerWorksheet(own, answerDocument(own, PLAN, [], 'full', besides ?? {}), 'none').parts.map(({ id }) => id);
    expect(sheetOf(asked)).toContain('crank-heights');
    expect(sheetOf(undefined)).not.toContain('crank-heights');
  });
});
