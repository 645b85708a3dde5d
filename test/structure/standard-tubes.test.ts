import { describe, expect, it } from 'vitest';
import { INCH, Trace } from '../../src/foundation/index.ts';
import { type StandardPipe, TUBE_GRADES, tubesThatWouldDo } from '../../src/structure/index.ts';
import { witness, workingDocument } from '../../src/worksheet/index.ts';

const name = ({ pipe }: { pipe: StandardPipe }) => `${pipe.nominal} schedule ${pipe.schedule}`;
const gradeB = { material: 'steel', yieldStrength: 240e6 } as const;

describe('which standard tube would do', () => {
  it('the lightest comes first, by the section moduli of a handbook', () => {
    // S of 2 in: 0.5607 in³ schedule 40 and 0.7309 schedule 80, of 2 1/2 in 1.064; allowed 240 MPa·S/1.67.
    const allowed = (S: number) => (240e6 * S * INCH ** 3) / 1.67;
    const names = (moment: number) => tubesThatWouldDo(moment, gradeB).map(name);
    expect(names(allowed(0.55))[0]).toBe('2 schedule 40');
    expect(names(allowed(0.6))[0]).toBe('2 schedule 80');
    expect(names(allowed(0.75))[0]).toBe('2-1/2 schedule 40');
    const weights = tubesThatWouldDo(500, gradeB).map(({ weightPerLength }) => weightPerLength);
    expect(weights.length).toBeGreaterThan(8);
    expect(weights).toEqual([...weights].sort((a, b) => a - b));
  });

  it('none is heavier than asked, none is named that would not do', () => {
    for (const each of tubesThatWouldDo(2000, gradeB)) expect(each.ratio).toBeLessThanOrEqual(1);
    expect(tubesThatWouldDo(1e6, gradeB)).toEqual([]);
    expect(tubesThatWouldDo(Number.NaN, gradeB)).toEqual([]);
  });

  it('keeps to the margin and the outside that are wanted', () => {
    const all = tubesThatWouldDo(1000, gradeB);
    const withMargin = tubesThatWouldDo(1000, gradeB, { ratioAtMost: 0.7 });
    expect(withMargin.length).toBeLessThan(all.length);
    for (const { ratio } of withMargin) expect(ratio).toBeLessThanOrEqual(0.7);
    const small = tubesThatWouldDo(1000, gradeB, { outsideAtMost: 2.4 * INCH });
    expect(small.map(name)).toEqual(['2 schedule 40', '2 schedule 80']);
  });

  it('asks for the moment with the own wind of every size', () => {
    const growing = tubesThatWouldDo((pipe) => 20000 * pipe.outside, gradeB);
    for (const { pipe, demand } of growing) expect(demand).toBeCloseTo(20000 * pipe.outside, 9);
    // 2 in schedule 40: 1207 N·m against 240 MPa·0.5607 in³/1.67 = 1320 N·m; 1 1/2 in schedule 80: 965 against 970.
    expect(growing.map(name).slice(0, 2)).toEqual(['1-1/2 schedule 80', '2 schedule 40']);
    expect(tubesThatWouldDo(1207, gradeB).map(name)[0]).toBe('2 schedule 40');
  });

  it('assumes no grade, and holds aluminium to its rupture', () => {
    expect(() => tubesThatWouldDo(1, { material: 'steel' })).toThrow(/yield strength/);
    const alloy = TUBE_GRADES.find(({ id }) => id === 'aluminium-6061-t6');
    if (!alloy) throw new Error('the alloy is listed');
    const [first] = tubesThatWouldDo(1000, alloy);
    // 38/1.95 = 19.5 ksi is less than 35/1.67 = 21.0 ksi.
    const S =
      (Math.PI * ((first?.pipe.outside ?? 0) ** 4 - ((first?.pipe.outside ?? 0) - 2 * (first?.pipe.wall ?? 0)) ** 4)) /
      32;
    expect(first?.allowed).toBeCloseTo((alloy.ultimateStrength / 1.95) * (S / (first?.pipe.outside ?? 1)), 6);
  });

  it('shows a working that re-evaluates', () => {
    const trace = new Trace();
    tubesThatWouldDo(1000, gradeB, {}, trace);
    expect(trace.steps.length).toBeGreaterThan(4);
    expect(witness(workingDocument(trace.steps, 'us')).every(({ agrees }) => agrees)).toBe(true);
  });
});
