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

describe('lines in a pole', () => {
  const pole = { length: 6, shape: 'pole', sides: 0, width: 200 };
  const lattice = { length: 6, shape: 'lattice', faces: 4, width: 400, members: 'flat', dragArea: 1 };
  const on = (sections: readonly Document[], withCables: Document | undefined, cables: readonly Document[] = []) => {
    const { mast: _, loads, ratings, ...rest } = plan('single', {}) as Record<string, Document[]>;
    return assessed({
      ...rest,
      tower: { support: 'free', top: 12, frequency: 3, weight: 200, sections },
      loads: loads?.map((load) => ({ ...load, on: 'tower', weight: 0 })),
      cables,
      ratings: ratings?.map(({ withCables: _lines, ...rating }) => ({
        ...rating,
        areaKind: 'effective',
        ...(withCables === undefined ? {} : { withCables: { diameter: 20, ...withCables } }),
      })),
    });
  };
  const towerAt = (answer: ReturnType<typeof assessed>) => answer.checks[0]?.result?.ratio ?? Number.NaN;

  it('are in no wind, so that rated there they prove nothing', () => {
    const none = towerAt(on([pole, pole], undefined));
    expect(none).toBeCloseTo(1, 6);
    expect(towerAt(on([pole, pole], { count: 3, arrangement: 'inside' }))).toBe(none);
    expect(towerAt(on([pole, pole], { count: 3, arrangement: 'single' }))).toBeLessThan(none * 0.95);
  });

  it('are taken to have been there where nobody tells, and the answer says so of a single one', () => {
    const answer = on([pole, pole], { count: 1 });
    expect(towerAt(answer)).toBe(towerAt(on([pole, pole], undefined)));
    expect(answer.cautions.map(({ code }) => code)).toContain('rating-lines-assumed');
  });

  it('are in the wind where they pass a lattice above or below it', () => {
    const lines = { count: 3, diameter: 20, weight: 0, from: 0, to: 12, arrangement: 'inside' };
    const { rows } = on([lattice, pole], undefined, [{ name: 'lines', ...lines }]).windLoads;
    const seen = rows.filter(({ kind }) => kind === 'lines');
    // Three of 20 mm along 6 m.
    expect(seen.map(({ low, high }) => [low, high])).toEqual([[0, 6]]);
    expect(seen[0]?.frontArea).toBeCloseTo(3 * 0.02 * 6, 9);
  });
});

it('of a round group the smaller counts: 1.2 of its width, or each line by itself', () => {
  // Three lines of one diameter lie 2.1547 diameters wide, 3/2.1547 lines a width: 2/3 of each is less, 1.2 of each is more.
  expect(groupOrSingly.of(1.2, 3 / 2.1547, 2 / 3) * 2.1547).toBeCloseTo(2, 9);
  expect(groupOrSingly.of(1.2, 3 / 2.1547, 1.2) * 2.1547).toBeCloseTo(1.2 * 2.1547, 9);
});
