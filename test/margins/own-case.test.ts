import { describe, expect, it } from 'vitest';
import { loweredOf } from '../../src/margins/index.ts';
import fc from '../fast-check.ts';
import { assessed, type Document } from './any-plan.ts';

/*
 * The law: a station that is exactly what was rated is at 1, whatever standard, shape, surface, direction and support. What
 * the maker leaves open has one answer on both sides. Expected is 1, from the meaning of a rating.
 */

/** More of them, or others, where the soak says so. */
const RUNS = Number(process.env['RANDOM_RUNS'] ?? 300);

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
    loads: [{ name: 'what was rated', on: 'tower', area, areaKind: 'effective', above, weight: 0 }],
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
      inside: 0.3048,
      bearing: 0.3048,
      from: 0.3048,
      to: 0.3048,
      distance: 0.3048,
      outside: 25.4,
      wall: 25.4,
      diameter: 25.4,
      yield: 6.894757,
      force: 4.4482216,
      tension: 4.4482216,
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
      { numRuns: RUNS },
    );
  });

  it('holds to the wind it was rated for, the least pressure of ASCE 7 decides or not', () => {
    fc.assert(
      fc.property(rated, (each) => {
        const { checks, site } = assessed(stationOf({ ...each, support: 'free' }));
        const holdsTo = checks[0]?.result?.holdsTo;
        if (!holdsTo?.steady) return;
        expect(holdsTo.design / site.speed).toBeCloseTo(1, 4);
      }),
      { numRuns: RUNS },
    );
  });
});

/** What the maker rated besides: each changes plan and rating alike, so that the station is again what was rated. */
const MORE: Readonly<Record<string, (of: Rated, by: More) => Document | undefined>> = {
  'on a mast of no width in the maker’s bearing and shelf': (of, { share }) => {
    const plan = stationOf({ ...of, taper: false, support: 'free', si: false });
    const tower = plan['tower'] as Document & { top: number };
    const { top } = tower;
    const inside = Math.min(6, 0.9 * of.length, 0.5 * top) * (0.3 + 0.7 * share);
    // Of a section that tapers the couple's moment is credited by the plain force alone, which is less.
    const sections = rows(tower, 'sections').map((section) => ({ ...section, uniform: true }));
    return {
      ...plan,
      tower: { ...tower, sections },
      mast: {
        outside: 0.004,
        wall: 0.0004,
        inside,
        length: inside + of.above + 0.5,
        bearing: top,
        yield: 50,
        manufacturerPlates: true,
      },
      loads: rows(plan, 'loads').map((load) => ({ ...load, on: 'mast' })),
    };
  },
  'with lines that were rated with it': (of, { count, diameter, laid }) => {
    const plan = stationOf({ ...of, si: false });
    const lines = { count, diameter, arrangement: laid };
    return {
      ...plan,
      cables: [{ name: 'rated', ...lines, weight: 0, from: 0, to: (plan['tower'] as { top: number }).top }],
      ratings: rows(plan, 'ratings').map((rating) => ({ ...rating, withCables: lines })),
    };
  },
  'rated by rows of speeds, with a further area lower down': (of, { share }) => {
    const plan = stationOf({ ...of, si: false });
    const height = (0.2 + 0.7 * share) * (plan['tower'] as { top: number }).top;
    const further = { area: 0.5 * of.area, height };
    return {
      ...plan,
      loads: [
        ...rows(plan, 'loads'),
        { name: 'further', ...further, areaKind: 'effective', on: 'tower', offset: 0, weight: 0 },
      ],
      ratings: rows(plan, 'ratings').map((rating) => ({ ...rating, furtherAreas: [further] })),
    };
  },
  'on a tower that tilts about a hinge': (of, { share }) => {
    const plan = stationOf({ ...of, support: 'free', si: false });
    const tower = plan['tower'] as { top: number };
    return { ...plan, tower: { ...tower, hinge: { height: 0.5 * share * tower.top } } };
  },
  'on a tower whose sections slide in each other, drawn out': (of, by) => telescoping(of, by),
  'with a wire as strong as a force that was rated': (of, { count, share }) => {
    // In the braces of a taper the wind on the tower does not relieve what a wire pulls.
    const plan = stationOf({ ...of, taper: false, support: 'free', si: false });
    const { top } = plan['tower'] as { top: number };
    const height = (0.6 + 0.4 * share) * top;
    const distance = 20 * count;
    const far = 0.5 * height;
    const tension = 200 + 20 * of.area;
    const force = (tension * distance) / Math.hypot(distance, height - far);
    return {
      ...plan,
      loads: [
        {
          name: 'wire',
          shape: 'wire',
          diameter: 0.002,
          height,
          to: { distance, height: far, heading: 40 },
          tension,
          offset: 0,
          weight: 0,
        },
      ],
      ratings: rows(plan, 'ratings').map(({ area: _, areaKind: __, above: ___, ...rating }) => ({
        ...rating,
        kind: 'force',
        force,
        level: 'allowable',
        height,
      })),
    };
  },
};

interface More {
  readonly share: number;
  readonly count: number;
  readonly diameter: number;
  readonly laid: string;
}
const more: fc.Arbitrary<More> = fc.record({
  share: between(0, 1),
  count: fc.integer({ min: 1, max: 6 }),
  diameter: between(0.2, 0.9),
  laid: fc.constantFrom('single', 'flat', 'bundle', 'inside'),
});
const rows = (plan: Document, key: string) => plan[key] as Document[];

/** Each section a fifth narrower than the one it slides in. */
function telescoping(of: Rated, { share }: More): Document | undefined {
  if (of.count < 2) return undefined;
  const plan = stationOf({ ...of, support: 'free', taper: false, si: false });
  const overlap = (0.1 + 0.2 * share) * of.length;
  const top = of.count * of.length - (of.count - 1) * overlap;
  const [{ width, count: _, ...section }] = rows(plan['tower'] as Document, 'sections') as [
    { width: number; count: number },
  ];
  const sections = Array.from({ length: of.count }, (__, index) => ({
    ...section,
    name: `section ${index}`,
    width: width * 0.8 ** index,
  }));
  return {
    ...plan,
    tower: { ...(plan['tower'] as Document), top, telescopes: true, sections },
    ratings: rows(plan, 'ratings').map((rating) => ({ ...rating, top })),
  };
}

describe('a station of more that is exactly what was rated', () => {
  it.each(Object.entries(MORE))('is at 1 at the good end and never over %s', (_, make) => {
    let looked = 0;
    fc.assert(
      fc.property(rated, more, (of, by) => {
        const plan = make(of, by);
        if (plan === undefined) return;
        looked += 1;
        const { ratios, model } = assessed(of.si ? inMetres(plan as ReturnType<typeof Object>) : plan);
        const compared = ratios.filter(
          ({ comparison }) => (model.levels[comparison.level]?.z ?? 0) < model.input.station.tower.top,
        );
        const most = (end: (ratio: (typeof ratios)[number]) => number) => Math.max(...compared.map(end));
        expect(most(({ unfavourable }) => unfavourable)).toBeLessThan(1.005);
        expect(most(({ favourable }) => favourable)).toBeGreaterThan(0.995);
      }),
      { numRuns: RUNS / 3 },
    );
    expect(looked).toBeGreaterThan(RUNS / 10);
  });

  it('is at 1 at the good end and never over let down, where that is what was rated', () => {
    let looked = 0;
    fc.assert(
      fc.property(rated, more, (of, by) => {
        const plan = telescoping(of, by);
        if (plan === undefined) return;
        const nested = of.length * (1 + 0.08 * (of.count - 1));
        const down = {
          ...plan,
          tower: { ...(plan['tower'] as Document), nested },
          ratings: rows(plan, 'ratings').map((rating) => ({ ...rating, top: nested })),
        };
        const lowered = loweredOf(assessed(down))?.assessment;
        if (lowered === undefined) throw new Error('it does not go down');
        looked += 1;
        const { ratios, model } = lowered;
        const below = ratios.filter(({ comparison }) => (model.levels[comparison.level]?.z ?? 0) < nested * 0.3048);
        expect(Math.max(...below.map(({ unfavourable }) => unfavourable))).toBeLessThan(1 + 1e-6);
        expect(Math.max(...below.map(({ favourable }) => favourable))).toBeGreaterThan(0.995);
      }),
      { numRuns: RUNS / 3 },
    );
    expect(looked).toBeGreaterThan(RUNS / 10);
  });
});
