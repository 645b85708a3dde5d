import { describe, expect, it } from 'vitest';
import { FOOT } from '../../src/foundation/index.ts';
import { workingOf } from '../../src/margins/index.ts';
import { coefficientRise } from '../../src/margins/unknown-own-drag.ts';
import { witness, workingDocument } from '../../src/worksheet/index.ts';
import { assessed } from './any-plan.ts';

describe('a tower whose shape is not known, rated by RS-222-C', () => {
  const answer = assessed({
    units: 'us',
    method: 'asce7-16',
    site: { wind: { speed: 95, basis: 'gust3-strength' }, exposure: 'C' },
    tower: { support: 'free', top: 48 },
    loads: [{ name: 'small', height: 47, area: 1, areaKind: 'effective', offset: 0 }],
    ratings: [{ of: 'tower', area: 20, areaKind: 'flat-plate', wind: { speed: 86.6, method: 'rs222-c' }, top: 48 }],
    cables: [],
  });

  it('is compared by what its standard surely put on the tower itself, not by its flat-plate pressure', () => {
    // By hand: site 0.6·0.00256·1.0844·95²·0.85 = 12.777 psf at 48 ft with Kd 1 of a round pole; rated
    // 0.75·0.8·0.00256·86.6² = 11.519 psf, where 0.004·V² would have been 22.5.
    expect(answer.checks[0]?.result?.ratio).toBeCloseTo(12.777 / 11.519, 3);
    expect(answer.checks[0]?.result?.of).toBe('wind-ratio');
    expect(answer.checks[0]?.verdict).toBe('open');
  });

  it('shows that in its working', () => {
    const working = workingDocument(workingOf(answer).steps, 'us');
    expect(working.map(({ formula }) => formula)).toContain('drag-area-rs222-c');
    expect(witness(working).filter(({ agrees }) => !agrees)).toEqual([]);
  });
});

describe('a lattice whose members are not told', () => {
  const windOf = (speed: number) =>
    assessed({
      units: 'us',
      method: 'tia222-h',
      site: { wind: { speed, basis: 'gust3-strength' }, exposure: 'C', riskCategory: 'II' },
      tower: { support: 'free', top: 33 },
      loads: [],
      ratings: [],
      cables: [],
    }).wind;

  it('may be of thin faces, whose round members lose most where the flow is fast', () => {
    const lattice = { kind: 'lattice', sides: 0, guyed: false, height: 33 * FOOT, width: FOOT } as const;
    // TIA-222-H, solidity 0.1: 0.57 − 0.14·0.1 + 0.86·0.1² − 0.24·0.1³ where C is under 32,
    // 0.36 + 0.26·0.1 + 0.97·0.1² − 0.63·0.1³ over 64.
    const rise = coefficientRise(windOf(60), windOf(180), 33 * FOOT, lattice);
    expect(rise).toBeCloseTo(0.56436 / 0.39507, 4);
  });
});
