import { describe, expect, it } from 'vitest';
import { workingOf } from '../../src/margins/index.ts';
import { witness, workingDocument } from '../../src/worksheet/index.ts';
import { assessed } from './any-plan.ts';

describe('a tower whose shape is not known, rated by RS-222-C', () => {
  const answer = assessed({
    units: 'us',
    method: 'asce7-16',
    site: { wind: { speed: 95, basis: 'gust3-strength' }, exposure: 'C' },
    tower: { support: 'free', top: 48 },
    loads: [{ name: 'small', height: 47, area: 1, areaKind: 'effective' }],
    ratings: [{ of: 'tower', area: 20, areaKind: 'flat-plate', wind: { speed: 86.6, method: 'rs222-c' } }],
  });

  it('is compared by what its standard surely put on the tower itself, not by its flat-plate pressure', () => {
    // By hand: site 0.6·0.00256·1.0844·95²·0.85 = 12.777 psf at 48 ft with Kd 1 of a round pole; rated
    // 0.75·0.8·0.00256·86.6² = 11.519 psf, where 0.004·V² would have been 22.5.
    expect(answer.links[0]?.result?.use).toBeCloseTo(12.777 / 11.519, 3);
    expect(answer.links[0]?.result?.of).toBe('wind-ratio');
    expect(answer.links[0]?.verdict).toBe('not-shown');
  });

  it('shows that in its working', () => {
    const working = workingDocument(workingOf(answer).steps, 'us');
    expect(working.map(({ formula }) => formula)).toContain('drag-area-rs222-c');
    expect(witness(working).filter(({ agrees }) => !agrees)).toEqual([]);
  });
});
