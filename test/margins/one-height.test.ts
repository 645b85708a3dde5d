import { describe, expect, it } from 'vitest';
import { workingOf } from '../../src/margins/index.ts';
import { levelsOf } from '../../src/structure/index.ts';
import { assessed, checkInputOf, type Document } from './any-plan.ts';

/** A pole of four sections, all that is typed in round figures of its unit. */
function pole(units: 'us' | 'si', piece: number, above: number, mast: boolean): Document {
  const us = units === 'us';
  const top = 4 * piece;
  const tube = us ? { outside: 2, wall: 0.25, yield: 46 } : { outside: 50, wall: 6, yield: 320 };
  return {
    units,
    method: 'asce7-16',
    site: { wind: { speed: us ? 100 : 45, basis: 'gust3-strength' }, exposure: 'C' },
    tower: {
      support: 'free',
      top,
      sections: [{ length: piece, count: 4, shape: 'pole', sides: 0, width: us ? 6 : 150, uniform: false }],
    },
    ...(mast ? { mast: { ...tube, inside: piece, length: 2 * piece, bearing: top } } : {}),
    loads: [
      { name: 'beam', area: us ? 8 : 0.7, areaKind: 'effective', turns: true, above: 1 },
      { name: 'panel', area: us ? 1 : 0.1, areaKind: 'effective', height: 2 * piece, offset: 0 },
    ],
    cables: [],
    ratings: [
      {
        of: 'tower',
        area: us ? 12 : 1.1,
        areaKind: 'effective',
        above,
        top,
        wind: { speed: us ? 110 : 50, basis: 'gust3-strength', method: 'asce7-16', exposure: 'C' },
      },
    ],
  };
}

describe('what is typed as one height', () => {
  it.each(['us', 'si'] as const)('is one level in %s units, and what hangs there hangs on it', (units) => {
    for (let tenth = 15; tenth <= 120; tenth += 1) {
      const { station } = checkInputOf(pole(units, tenth / 10, 0, true));
      const levels = levelsOf(station);
      levels.forEach(({ z, zone }, index) => {
        const twins = levels.filter((other) => other.zone === zone && Math.abs(other.z - z) < 1e-6);
        expect(twins, `${tenth} ${index}`).toHaveLength(1);
      });
      const joints = station.tower.sections.map(({ low }) => low);
      for (const joint of joints) expect(levels.map(({ z }) => z)).toContain(joint);
      // The mast's foot is the joint below the top: the couple begins there and the plain sums are compared there.
      const atFoot = levels.filter(({ z }) => z === joints.at(-1)).map(({ zone }) => zone);
      expect(atFoot).toEqual(['couple', 'plain']);
    }
  });

  it('gives a rating a hair above the top no ratio that a rating at the top has not', () => {
    for (const mast of [true, false]) {
      const at = (above: number) => assessed(pole('us', 10, above, mast)).checks.slice(0, 2);
      for (const hair of [5e-10, 1e-8]) {
        at(hair).forEach(({ verdict, because, result }, index) => {
          const plain = at(0)[index];
          expect([verdict, because]).toEqual([plain?.verdict, plain?.because]);
          expect(result === undefined).toBe(plain?.result === undefined);
          expect(result?.ratio ?? 0).toBeCloseTo(plain?.result?.ratio ?? 0, 6);
          expect(result?.ratio ?? 0).toBeLessThan(10);
        });
      }
    }
  });

  it('is one in the working too: a panel a hair below the top is written down where it is counted', () => {
    for (const height of [25, 25 - 3e-6]) {
      const answer = assessed({
        units: 'us',
        method: 'tia222-g',
        site: { wind: { speed: 92, basis: 'gust3-nominal' }, exposure: 'C', riskCategory: 'I' },
        tower: { support: 'free', top: 25, shape: 'pole', width: 14, sides: 16 },
        mast: { outside: 1.54, length: 7, inside: 1, bearing: 25 },
        loads: [
          { name: 'panel', shape: 'plate', wide: 4, tall: 4, deep: 0, heading: 0, height, offset: 0 },
          { name: 'whip', shape: 'pole', width: 2, sides: 0, height: [25.2, 31.2] },
        ],
        cables: [],
        ratings: [
          { of: 'tower', area: 4, top: 25, wind: { speed: 115.5, basis: 'gust3-strength', method: 'tia222-g' } },
        ],
      });
      // The working throws where its demand is not that of the answer, which is worst at the top.
      const top = answer.checks.find(({ id }) => id === 'tower-top');
      expect((top?.result?.height ?? 0) / 0.3048).toBeCloseTo(25, 4);
      expect(workingOf(answer).steps.length).toBeGreaterThan(10);
    }
  });
});
