import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assessed, type Document } from './any-plan.ts';

/*
 * The law: a station that is exactly what was rated is at 1, whatever standard, shape, surface, direction and support. What
 * the maker leaves open has one answer on both sides. Expected is 1, from the meaning of a rating.
 */

/** More of them, or others, where the soak says so. */
const RUNS = Number(process.env['SOAK_RUNS'] ?? 300);
const SEED = process.env['SOAK_SEED'] ? { seed: Number(process.env['SOAK_SEED']) } : {};

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true });

const WINDS = {
  'asce7-10': { basis: 'gust3-strength', speeds: [70, 170] },
  'asce7-16': { basis: 'gust3-strength', speeds: [70, 170] },
  'asce7-22': { basis: 'gust3-strength', speeds: [70, 170] },
  'tia222-g': { basis: 'gust3-nominal', speeds: [60, 150] },
  'tia222-h': { basis: 'gust3-strength', speeds: [70, 170] },
  'eia222-f': { basis: 'fastest-mile', speeds: [60, 120] },
  'en1991-1-4': { basis: 'mean-10min', speeds: [40, 90] },
} as const;

const wind = fc.constantFrom(...(Object.keys(WINDS) as (keyof typeof WINDS)[])).chain((method) =>
  fc.record({
    method: fc.constant(method),
    basis: fc.constant(WINDS[method].basis),
    speed: between(WINDS[method].speeds[0], WINDS[method].speeds[1]),
    exposure: fc.constantFrom('B', 'C', 'D'),
    terrain: fc.constantFrom('0', 'I', 'II', 'III', 'IV'),
    riskCategory: fc.constantFrom('I', 'II', 'III'),
  }),
);

const lattice = fc
  .record({
    shape: fc.constant('lattice'),
    faces: fc.constantFrom(3, 4),
    members: fc.constantFrom('round', 'flat'),
    leg: between(0.5, 2),
    brace: between(0.2, 0.5),
    panel: between(10, 24),
    pattern: fc.constantFrom('zigzag', 'cross', 'rungs'),
  })
  .chain((each) => fc.record({ each: fc.constant(each), wide: between(10, 30), narrow: between(0.5, 1) }))
  .map(
    ({ each, wide, narrow }) =>
      (taper: boolean): Document => ({
        ...each,
        width: taper ? [wide, narrow * wide] : wide,
      }),
  );
const pole = fc
  .record({ sides: fc.constantFrom(0, 0, 8, 12, 16, 18), wide: between(2, 24), narrow: between(0.4, 1) })
  .map(
    ({ sides, wide, narrow }) =>
      (taper: boolean): Document => ({
        shape: 'pole',
        sides,
        width: taper ? [wide, narrow * wide] : wide,
      }),
  );

const rated = fc.record({
  wind,
  shape: fc.oneof(lattice, pole),
  taper: fc.boolean(),
  count: fc.integer({ min: 1, max: 5 }),
  length: between(5, 20),
  support: fc.constantFrom('free', 'free', 'guyed', 'bracketed'),
  frequency: fc.option(between(0.3, 4), { nil: undefined }),
  area: between(0.5, 40),
  above: between(0.01, 4),
  si: fc.boolean(),
});
type Rated = typeof rated extends fc.Arbitrary<infer T> ? T : never;

/** The station that was rated, and nothing else on it. */
function stationOf({ wind, shape, taper, count, length, support, frequency, area, above, si }: Rated): Document {
  const { method, basis, speed, exposure, terrain, riskCategory } = wind;
  const top = count * length;
  const ground = method === 'en1991-1-4' ? { terrain } : { exposure };
  const held =
    support === 'free' ? {} : { supportedAt: [{ height: 0.6 * top, by: support === 'guyed' ? 'guys' : 'bracket' }] };
  const plan = {
    units: 'us',
    method,
    site: { wind: { speed, basis }, ...ground, riskCategory, groundElevation: 0, topographicFactor: 1 },
    tower: {
      support,
      top,
      ...held,
      asDrawn: true,
      weight: 300,
      ...(frequency === undefined ? {} : { frequency, damping: 0.01 }),
      sections: [{ ...shape(taper && count === 1), length, count }],
    },
    loads: [{ name: 'what was rated', area, areaKind: 'effective', above, weight: 0 }],
    cables: [],
    ratings: [
      { of: 'tower', area, areaKind: 'effective', above, top, wind: { speed, basis, method, ...ground, riskCategory } },
    ],
  };
  return si ? inMetres(plan) : plan;
}

/** The same told in SI. */
function inMetres(plan: ReturnType<typeof Object>): Document {
  const text = JSON.parse(JSON.stringify(plan), (key, value: unknown) => {
    const factor = {
      length: 0.3048,
      top: 0.3048,
      above: 0.3048,
      height: 0.3048,
      width: 25.4,
      leg: 25.4,
      brace: 25.4,
      panel: 25.4,
      area: 0.09290304,
      speed: 0.44704,
      weight: 0.45359237,
    }[key];
    if (factor === undefined) return value;
    if (typeof value === 'number') return value * factor;
    return Array.isArray(value) ? value.map((each) => Number(each) * factor) : value;
  }) as Document;
  return { ...text, units: 'si' };
}

describe('a station that is exactly what was rated', () => {
  it('is at 1 at the good end and never over, whatever standard, shape and support', () => {
    fc.assert(
      fc.property(rated, (each) => {
        const { ratios, model } = assessed(stationOf(each));
        const compared = ratios.filter(
          ({ comparison }) => (model.levels[comparison.level]?.z ?? 0) < model.input.station.tower.top,
        );
        expect(compared.length).toBeGreaterThan(0);
        const most = (of: (ratio: (typeof ratios)[number]) => number) => Math.max(...compared.map(of));
        expect(most(({ unfavourable }) => unfavourable)).toBeLessThan(1 + 1e-6);
        expect(most(({ favourable }) => favourable)).toBeGreaterThan(0.995);
      }),
      { numRuns: RUNS, ...SEED },
    );
  });

  it('holds to the wind it was rated for, the least pressure of ASCE 7 decides or not', () => {
    fc.assert(
      fc.property(rated, (each) => {
        const { checks, site } = assessed(stationOf({ ...each, support: 'free' }));
        const holdsTo = checks[0]?.result?.holdsTo;
        if (!holdsTo?.steady) return;
        expect(holdsTo.design / site.speed).toBeCloseTo(1, 5);
      }),
      { numRuns: RUNS, ...SEED },
    );
  });
});
