import { describe, expect, it } from 'vitest';
import { Trace } from '../../src/foundation/index.ts';
import { convertSpeed, type SpeedBasis } from '../../src/wind/index.ts';

const MPH = 0.44704;
const turned = (speed: number, from: SpeedBasis, to: SpeedBasis, role: 'site' | 'rating' = 'site') =>
  convertSpeed(speed, from, to, role);

describe('a mean over another mean', () => {
  it('takes for a site the larger of the two tables, in-land 1.21 and 1.28 and 1.08', () => {
    expect(turned(30, 'mean-10min', 'mean-1min')).toBeCloseTo(36.3, 9);
    expect(turned(30, 'mean-hour', 'mean-1min')).toBeCloseTo(38.4, 9);
    expect(turned(30, 'mean-hour', 'mean-10min')).toBeCloseTo(32.4, 9);
    // The other way round the least: 30·1.49/1.66 is 26.93, 30/1.21 24.79, 30·1.07/1.25 25.68.
    expect(turned(30, 'mean-1min', 'mean-10min')).toBeCloseTo(26.928, 3);
  });

  it('takes for a rating the least of them', () => {
    expect(turned(30, 'mean-10min', 'mean-1min', 'rating')).toBeCloseTo(33.423, 3);
    expect(turned(30, 'mean-1min', 'mean-10min', 'rating')).toBeCloseTo(24.793, 3);
    for (const [from, to] of [
      ['mean-hour', 'mean-10min'],
      ['mean-hour', 'mean-1min'],
      ['mean-10min', 'mean-1min'],
      ['mean-1min', 'mean-hour'],
    ] as const) {
      expect(turned(30, from, to, 'rating')).toBeLessThanOrEqual(turned(30, from, to));
      expect(turned(turned(30, from, to), to, from, 'rating')).toBeCloseTo(30, 9);
    }
  });
});

describe('a fastest mile of a site', () => {
  const gust = (mph: number, role: 'site' | 'rating' = 'site') =>
    turned(mph * MPH, 'fastest-mile', 'gust3-nominal', role) / MPH;

  it('takes the larger of the formula and its averaging time', () => {
    // 80 mph run a mile in 45 s; 1.53 over what lies between 1.32 at 30 s and 1.25 at 60 s. The formula gives 94.5.
    expect(gust(80)).toBeCloseTo(95.696, 3);
    expect(gust(70)).toBeCloseTo(84.626, 3);
    expect(gust(100)).toBeCloseTo(117.549, 3);
    expect(gust(130)).toBeCloseTo(149.853, 3);
    // Below about 60 mph the formula gives more.
    expect(gust(60)).toBeCloseTo(73.5, 9);
    expect(gust(50)).toBeCloseTo(63, 9);
  });

  it('is never less than by the formula, which a rating keeps', () => {
    for (let mph = 20; mph <= 200; mph += 1) {
      expect(gust(mph)).toBeGreaterThanOrEqual(1.05 * mph + 10.5 - 1e-9);
      expect(gust(mph, 'rating')).toBeCloseTo(1.05 * mph + 10.5, 9);
    }
  });

  it('comes back from a gust, as a rating has it, to what it was', () => {
    for (let mph = 20; mph <= 200; mph += 7) {
      expect(turned(gust(mph) * MPH, 'gust3-nominal', 'fastest-mile', 'rating') / MPH).toBeCloseTo(mph, 9);
      expect(turned(gust(mph) * MPH, 'gust3-nominal', 'fastest-mile') / MPH).toBeGreaterThanOrEqual(mph - 1e-9);
    }
  });

  it('shows the way it took', () => {
    const ids = (mph: number) => {
      const trace = new Trace();
      convertSpeed(mph * MPH, 'fastest-mile', 'gust3-nominal', 'site', trace);
      return trace.steps.map(({ formula }) => formula.id);
    };
    expect(ids(80)).toContain('speed-gust-from-fastest-mile-by-time');
    expect(ids(50)).toEqual(['speed-nominal-from-fastest-mile']);
  });
});
