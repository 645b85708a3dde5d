import { describe, expect, it } from 'vitest';
import { roundCoefficientAsce } from '../../src/areas/index.ts';
import { atLeast, atMost, FOOT, INCH, POUND_PER_SQUARE_FOOT } from '../../src/foundation/index.ts';
import {
  type Hill,
  hillConditionsAsce,
  hillConditionsEn,
  hillConditionsTia,
  hillExclusion,
  hillLocationFactor,
} from '../../src/wind/index.ts';

/** Round figures in feet, inches, metres and millimetres. */
const UNITS = [FOOT, INCH, 1, 0.001];
const figures = Array.from({ length: 76 }, (_, index) => index + 1);
const everyPair = (test: (figure: number, unit: number, says: string) => void) => {
  for (const unit of UNITS) for (const figure of figures) test(figure, unit, `${figure} of ${unit} m`);
};

const hill = (given: Partial<Hill>): Hill => ({
  shape: 'escarpment',
  height: 30,
  halfLength: 60,
  distance: 0,
  side: 'upwind',
  ...given,
});
const LISTS = ['to-7-16', '7-22'] as const;

describe('limits of standards met exactly by round figures', () => {
  it('are met in every unit, and missed just beyond', () => {
    everyPair((figure, unit, says) => {
      for (const limit of [0.05, 0.2, 0.3, 1.5, 2, 3.5, 7, 25]) {
        const [value, base] = [figure * limit * unit, figure * unit];
        expect(atLeast(value / base, limit), says).toBe(true);
        expect(atMost(value / base, limit), says).toBe(true);
        expect(atLeast((value / base) * 0.9999, limit), says).toBe(false);
        expect(atMost((value / base) * 1.0001, limit), says).toBe(false);
      }
    });
  });

  it('hold a slope of 1 in 5: 50 in 250 ft as 10 in 50 m', () => {
    let lost = 0;
    everyPair((figure, unit, says) => {
      const [height, halfLength] = [figure * 1000 * unit, figure * 5000 * unit];
      if (height / halfLength < 0.2) lost += 1;
      for (const list of LISTS) {
        const [slope] = hillConditionsAsce(hill({ height, halfLength }), 'C', list);
        expect(slope?.holds, says).toBe(true);
        const longer = hill({ height, halfLength: halfLength * 1.0001 });
        expect(hillExclusion(hillConditionsAsce(longer, 'C', list)), says).toBe('too-gentle');
      }
    });
    // What is tested is there: without a tolerance, some of these are lost.
    expect(lost).toBeGreaterThan(0);
    for (const list of LISTS) {
      const typed = hill({ height: 50 * FOOT, halfLength: 250 * FOOT });
      expect(hillExclusion(hillConditionsAsce(typed, 'C', list))).toBeUndefined();
    }
  });

  it('hold the least heights of a hill, in feet and in metres', () => {
    for (const [height, exposure] of [
      [15 * FOOT, 'C'],
      [180 * INCH, 'D'],
      [4.5, 'C'],
      [4500 * 0.001, 'D'],
      [60 * FOOT, 'B'],
      [18, 'B'],
      [18_000 * 0.001, 'B'],
    ] as const) {
      const of = (share: number) => hill({ height: height * share, halfLength: 5 });
      expect(hillExclusion(hillConditionsAsce(of(1), exposure, '7-22'))).toBeUndefined();
      expect(hillExclusion(hillConditionsAsce(of(0.98), exposure, '7-22'))).toBe('too-low');
    }
  });

  it('hold the upper half and the reach of each shape', () => {
    everyPair((figure, unit, says) => {
      const halfLength = figure * 100 * unit;
      const height = halfLength / 2;
      const on = (share: number, given: Partial<Hill> = {}) =>
        hill({ shape: 'ridge', height, halfLength, distance: figure * 100 * share * unit, ...given });
      for (const conditions of [
        hillConditionsTia,
        // Beside the height, which is another limit.
        (of: Hill) => hillConditionsAsce(of, 'C', '7-22').filter(({ of: kind }) => kind === 'distance'),
      ]) {
        expect(hillExclusion(conditions(on(1))), says).toBeUndefined();
        expect(hillExclusion(conditions(on(1.0001))), says).toBe('lower-half');
      }
      const behind = { shape: 'escarpment', side: 'downwind' } as const;
      expect(hillExclusion(hillConditionsTia(on(4, behind))), says).toBeUndefined();
      expect(hillExclusion(hillConditionsTia(on(4.001, behind))), says).toBe('beyond-reach');
      const enReach = [on(3), on(4, { side: 'downwind' })];
      for (const at of enReach) {
        expect(hillExclusion(hillConditionsEn(at)), says).toBeUndefined();
        expect(hillLocationFactor(at, halfLength / 100), says).toBeGreaterThan(0);
      }
      expect(hillExclusion(hillConditionsEn(on(3.001))), says).toBe('beyond-reach');
      const gentle = hill({ height: figure * 10 * unit, halfLength: figure * 100 * unit });
      expect(hillExclusion(hillConditionsEn(gentle)), says).toBeUndefined();
    });
  });

  it('hold D·√q of 2.5 at the slow side, and 25 and 7 of the aspect', () => {
    for (const figure of figures) {
      // D in inches and q in psf that make 2.5 ft·√psf exactly.
      const diameter = (30 / figure) * INCH;
      const flow = diameter * Math.sqrt(figure * figure * POUND_PER_SQUARE_FOOT);
      const law = roundCoefficientAsce(25, 'capacity', 'us');
      expect(law.at(flow), `${figure}`).toBe(1.2);
      expect(law.at(flow * 1.0001), `${figure}`).toBeCloseTo(0.7, 12);
      for (const [aspect, slow] of [
        [7, 0.8],
        [25, 1.2],
      ] as const) {
        for (const unit of UNITS) {
          const found = roundCoefficientAsce((aspect * figure * unit) / (figure * unit), 'demand', 'us').slow;
          expect(found).toBeCloseTo(slow, 9);
        }
      }
    }
  });
});
