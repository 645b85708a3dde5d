import { describe, expect, it } from 'vitest';
import { icedRoundPart, outToOutWidth, partsOfLines } from '../../src/areas/index.ts';
import { METHOD_BY_ID, type WindConditions } from '../../src/methods/index.ts';
import { readPlan } from '../../src/plan/index.ts';
import { answerDocument } from '../../src/worksheet/index.ts';
import { assessed, type Document } from './any-plan.ts';

const OPEN: Omit<WindConditions, 'exposure'> = {
  units: 'si',
  speed: 25,
  speedLevel: 'own',
  actual: false,
  riskCategory: 'II',
  groundElevation: 0,
  windStructure: { kind: 'lattice', sides: 0, guyed: false, height: 20, width: 0.4 },
};

/** Effective width of lines in slow flow [m]: area times coefficient over the length. */
function width(method: keyof typeof METHOD_BY_ID, lines: Parameters<typeof partsOfLines>[0], ice = 0): number {
  const wind = METHOD_BY_ID[method].wind({ ...OPEN, exposure: METHOD_BY_ID[method].ground.usual });
  const parts = partsOfLines(lines, 0, 2).flatMap((part) => (ice === 0 ? [part] : icedRoundPart(part, () => ice)));
  return (
    parts.reduce((sum, { rule, front }) => sum + wind.forceCoefficient(rule, 'demand', 'face').byFlow.slow * front, 0) /
    2
  );
}

const half = { count: 12, diameter: 0.0127, laid: 'ladder' } as const;

describe('lines in rows on a cable ladder', () => {
  it('count by 1.5 on the longer out-to-out side, or singly where that is less', () => {
    // Two rows of six, an inch from line to line: 5·25.4 + 12.7 = 139.7 mm with 1.5; singly 12·12.7·1.2 = 182.88 mm.
    expect(width('tia222-g', { ...half, inRows: { rows: 2, spacing: 0.0254 } })).toBeCloseTo(0.18288, 9);
    expect(outToOutWidth.of(6, 0.0254, 0.0127)).toBeCloseTo(0.1397, 12);
    // Touching, 76.2 mm with 1.5.
    expect(width('tia222-g', { ...half, inRows: { rows: 2, spacing: 0.0127 } })).toBeCloseTo(0.1143, 9);
    // Four rows of three: the four decide, 3·25.4 + 12.7 = 88.9 mm.
    expect(width('tia222-g', { ...half, inRows: { rows: 4, spacing: 0.0254 } })).toBeCloseTo(0.13335, 9);
    // Thirteen in two rows are seven in the longer.
    expect(width('tia222-g', { ...half, count: 13, inRows: { rows: 2, spacing: 0.0127 } })).toBeCloseTo(
      1.5 * 7 * 0.0127,
      9,
    );
  });

  it('count singly where rows or spacing are not told', () => {
    expect(width('tia222-g', half)).toBeCloseTo(0.18288, 9);
    expect(width('tia222-g', { ...half, laid: 'single' })).toBeCloseTo(0.18288, 9);
  });

  it('count with ice by what is between them then', () => {
    // Two by two of 10 mm, 100 mm apart, with 5 mm: singly 4·20·1.2 = 96 mm; as a group (110 + 10)·1.5 = 180 mm.
    const wide = { count: 4, diameter: 0.01, laid: 'ladder', inRows: { rows: 2, spacing: 0.1 } } as const;
    expect(width('tia222-g', wide)).toBeCloseTo(0.048, 9);
    expect(width('tia222-g', wide, 0.005)).toBeCloseTo(0.096, 9);
    // Touching, as a group (20 + 10)·1.5 = 45 mm.
    expect(width('tia222-g', { ...wide, inRows: { rows: 2, spacing: 0.01 } }, 0.005)).toBeCloseTo(0.045, 9);
  });
});

const station = (run: Document): Document => ({
  units: 'us',
  method: 'tia222-g',
  site: { wind: { speed: 90, basis: 'gust3-nominal' }, exposure: 'C', riskCategory: 'II', groundElevation: 0 },
  tower: { support: 'free', top: 50, shape: 'lattice', faces: 3, width: 18, members: 'round', solidity: 0.2 },
  loads: [{ name: 'beam', height: 50, area: 5, areaKind: 'effective', offset: 0 }],
  cables: [{ count: 12, diameter: 0.5, ...run }],
  ratings: [{ of: 'tower', kind: 'moment', moment: 60000, level: 'allowable', top: 50 }],
});

describe('a run of cables in rows', () => {
  const rowOf = (run: Document) =>
    assessed(station(run)).windLoads.rows.find(({ kind }) => kind === 'lines') as { frontArea: number; front: number };

  it('is read with its rows and spacing', () => {
    // Four rows of three touching: 2 in by 50 ft with 1.5, in square metres.
    const row = rowOf({ arrangement: 'ladder', rows: 4, spacing: 0.5 });
    expect(row.frontArea).toBeCloseTo((2 / 12) * 50 * 0.3048 ** 2, 9);
    expect(row.front / row.frontArea).toBeCloseTo(1.5, 9);
    expect(row.front).toBeLessThan(rowOf({}).front);
    const plan = station({ arrangement: 'ladder', rows: 4, spacing: 0.5 });
    const { working } = answerDocument(assessed(plan), plan, [], 'full');
    const ids = (working ?? []).map(({ formula }) => formula);
    expect(ids).toEqual(expect.arrayContaining(['out-to-out-width-of-lines', 'c-group-of-lines']));
  });

  it('counts singly, and says so, without them', () => {
    for (const run of [{ rows: 4 }, { spacing: 1 }, {}]) {
      expect(rowOf({ arrangement: 'ladder', ...run }).front).toBeCloseTo(rowOf({ arrangement: 'single' }).front, 12);
      const reading = readPlan(station({ arrangement: 'ladder', ...run }));
      expect(reading.ok && reading.entryWarnings.map(({ code }) => code)).toEqual(['ladder-incomplete']);
    }
  });

  it('is refused where rows or spacing cannot be', () => {
    const faults = (run: Document) => {
      const reading = readPlan(station(run));
      return reading.ok ? [] : reading.faults.map(({ pointer, code, allowed }) => `${pointer} ${code} ${allowed}`);
    };
    expect(faults({ arrangement: 'ladder', rows: 13, spacing: 1 })).toEqual(['#/cables/0/rows out-of-bounds 1 to 12']);
    expect(faults({ arrangement: 'ladder', rows: 2, spacing: 0.4 })).toEqual([
      '#/cables/0/spacing out-of-bounds 0.5 in or more',
    ]);
    expect(faults({ rows: 2, spacing: 1 })).toEqual([
      '#/cables/0/rows goes-with only with arrangement ladder',
      '#/cables/0/spacing goes-with only with arrangement ladder',
    ]);
  });
});
