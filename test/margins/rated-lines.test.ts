import { describe, expect, it } from 'vitest';
import { groupOrSingly } from '../../src/areas/bundle.ts';
import { assessed, type Document } from './any-plan.ts';

/** A pole of a tower with three lines, hung with just what its maker rated, in just the wind he rated. */
const plan = (arrangement: string, withCables: Document): Document => ({
  units: 'si',
  method: 'asce7-16',
  site: { wind: '45 m/s', exposure: 'C' },
  tower: {
    support: 'free',
    top: 12,
    sections: [
      {
        length: 12,
        shape: 'lattice',
        faces: 3,
        width: 400,
        members: 'round',
        leg: 35,
        brace: 12,
        panel: 400,
        pattern: 'zigzag',
      },
    ],
  },
  loads: [{ name: 'panel', above: 1, area: 1.3, areaKind: 'effective', on: 'mast' }],
  mast: { outside: 0.1, wall: 0.01, length: 2.5, inside: 1.5, yield: '250 MPa', bearing: 12 },
  cables: [{ name: 'lines', count: 3, diameter: 20, arrangement }],
  ratings: [
    {
      of: 'tower',
      area: 1.3,
      areaKind: 'effective',
      above: 1,
      wind: { speed: '45 m/s', method: 'asce7-16', exposure: 'C', riskCategory: 'II' },
      withCables: { count: 3, diameter: 20, ...withCables },
      top: 12,
    },
  ],
});
const ratio = (arrangement: string, withCables: Document) =>
  assessed(plan(arrangement, withCables)).checks.find(({ id }) => id === 'tower')?.result?.ratio ?? Number.NaN;
const codes = (withCables: Document) => assessed(plan('single', withCables)).cautions.map(({ code }) => code);

describe('lines allowed for in the rating', () => {
  it('are credited as he laid them: his own case takes just what it is rated for', () => {
    for (const arrangement of ['single', 'flat', 'bundle', 'inside'])
      expect(ratio(arrangement, { arrangement })).toBeCloseTo(1, 3);
  });

  it('are credited as a bundle, which is least, where nobody tells, and the answer says so', () => {
    expect(ratio('bundle', {})).toBe(ratio('bundle', { arrangement: 'bundle' }));
    expect(ratio('single', {})).toBe(ratio('single', { arrangement: 'bundle' }));
    expect(ratio('single', {})).toBeGreaterThan(ratio('single', { arrangement: 'single' }));
    expect(codes({})).toContain('rating-lines-assumed');
    expect(codes({ arrangement: 'single' })).not.toContain('rating-lines-assumed');
    expect(codes({ count: 2 })).not.toContain('rating-lines-assumed');
  });
});

it('of a round group the smaller counts: 1.2 of its width, or each line by itself', () => {
  // Three lines of one diameter lie 2.1547 diameters wide, 3/2.1547 lines a width: 2/3 of each is less, 1.2 of each is more.
  expect(groupOrSingly.of(1.2, 3 / 2.1547, 2 / 3) * 2.1547).toBeCloseTo(2, 9);
  expect(groupOrSingly.of(1.2, 3 / 2.1547, 1.2) * 2.1547).toBeCloseTo(1.2 * 2.1547, 9);
});
