import { describe, expect, it } from 'vitest';
import fc from '../fast-check.ts';
import { assessed, type Document } from './any-plan.ts';

/*
 * Round figures meet each other exactly in every unit: what stands at a joint, at the top, at bearing, foot or tip of the mast
 * stands there whether it was typed in feet, inches, metres or millimetres. RANDOM_RUNS and RANDOM_SEED make a soak of it.
 */
const RUNS = Number(process.env['RANDOM_RUNS'] ?? 25);

/** From inches, in figures an owner would type; each is exact. */
const WRITERS: Readonly<Record<string, (inches: number) => unknown>> = {
  in: (inches) => `${inches} in`,
  m: (inches) => `${(inches * 254) / 10_000} m`,
  mm: (inches) => `${(inches * 254) / 10} mm`,
};

const bareFeet = (inches: number) => inches / 12;

/** Multiples of three inches, which are quarters of a foot. */
const quarters = (min: number, max: number) => fc.integer({ min: min * 4, max: max * 4 }).map((count) => count * 3);

const drawn = fc.record({
  method: fc.constantFrom('asce7-16', 'tia222-h', 'tia222-g', 'eia222-f'),
  lengths: fc.array(quarters(3, 21), { minLength: 2, maxLength: 5 }),
  pole: fc.boolean(),
  uniform: fc.boolean(),
  tapered: fc.boolean(),
  ice: fc.boolean(),
  inside: quarters(1, 3),
  lower: fc.constantFrom(0, 3, 6),
  above: quarters(2, 6),
  joint: fc.nat(),
  base: fc.constantFrom(0, 0, 9, 120),
  mast: fc.boolean(),
});
type Drawn = typeof drawn extends fc.Arbitrary<infer T> ? T : never;

/** A station in which everything that has a height has that of something else. */
function plan(of: Drawn, write: (inches: number) => unknown): Document {
  const top = of.base + of.lengths.reduce((sum, length) => sum + length, 0);
  const joint = of.lengths.slice(0, 1 + (of.joint % (of.lengths.length - 1))).reduce((a, b) => a + b, of.base);
  const bearing = top - of.lower;
  const foot = top - of.inside;
  const shape = of.pole
    ? { shape: 'pole', sides: 0, width: 6 }
    : { shape: 'lattice', faces: 3, members: 'round', width: 18, leg: 1.25, brace: 0.5, panel: 18, pattern: 'zigzag' };
  const effective = { areaKind: 'effective', weight: 10, icedArea: 5, icedWeight: 15 };
  const wind = { speed: 100, basis: of.method === 'eia222-f' ? 'fastest-mile' : 'gust3-strength' };
  const named = { ...wind, method: of.method, exposure: 'C', riskCategory: 'II' };
  return {
    units: 'us',
    method: of.method,
    site: {
      wind,
      exposure: 'C',
      riskCategory: 'II',
      groundElevation: 0,
      ...(of.ice ? { ice: { thickness: 0.5, gust: 40 } } : {}),
    },
    tower: {
      support: 'free',
      base: write(of.base),
      top: write(top),
      frequency: 2,
      damping: 0.01,
      weight: 400,
      hinge: { height: write(joint) },
      sections: of.lengths.map((length, index) => ({
        length: write(length),
        ...shape,
        ...(of.tapered ? { width: [shape.width - index / 2, shape.width - (index + 1) / 2] } : { uniform: of.uniform }),
      })),
    },
    ...(of.mast
      ? {
          mast: {
            outside: 2,
            wall: 0.25,
            yield: 46,
            inside: write(of.inside),
            length: write(of.inside + of.above),
            bearing: write(bearing),
            manufacturerPlates: true,
          },
          rotator: { weight: 20 },
        }
      : {}),
    loads: [
      { name: 'at the top', height: write(top), area: 3, on: 'tower', offset: 0, ...effective },
      { name: 'at a joint', height: write(joint), area: 2, on: 'tower', offset: write(12), ...effective },
      { name: 'under the bearing', height: write(bearing), area: 1, on: 'tower', offset: 0, ...effective },
      { name: 'at the foot of the mast', height: write(foot), area: 1, on: 'tower', offset: 0, ...effective },
      ...(of.mast ? [{ name: 'at the tip', above: write(of.above), area: 4, turns: true, ...effective }] : []),
    ],
    cables: [
      {
        name: 'lines',
        count: 3,
        diameter: 0.5,
        arrangement: 'single',
        weight: 0.2,
        from: write(of.base),
        to: write(joint),
      },
      {
        name: 'further',
        count: 2,
        diameter: 0.4,
        arrangement: 'single',
        weight: 0.2,
        from: write(joint),
        to: write(top),
      },
    ],
    ratings: [
      { of: 'tower', area: 12, areaKind: 'effective', height: write(top), top: write(top), wind: named },
      {
        of: 'tower',
        area: 9,
        areaKind: 'effective',
        above: write(12),
        furtherAreas: [{ area: 4, height: write(joint) }],
        top: write(top),
        wind: named,
      },
      { of: 'tower', kind: 'moment', moment: 9000, level: 'allowable' },
      { of: 'tower', kind: 'weight', weight: 50, top: write(top) },
    ],
  };
}

function told(document: Document) {
  const { checks, model } = assessed(document);
  return {
    levels: model.levels.length,
    checks: checks.map(({ id, verdict, result }) => ({ id, verdict, ratio: result?.ratio, place: result?.height })),
  };
}

function expectAlike(one: Document, other: Document, closeness: number, says: string): void {
  const [before, after] = [told(one), told(other)];
  expect(after.levels, says).toBe(before.levels);
  expect(
    after.checks.map(({ id, verdict }) => [id, verdict]),
    says,
  ).toEqual(before.checks.map(({ id, verdict }) => [id, verdict]));
  after.checks.forEach(({ id, ratio = 0 }, index) => {
    const { ratio: was = 0 } = before.checks[index] ?? {};
    expect(Math.abs(ratio - was), `${says}: ${id} ${was} ${ratio}`).toBeLessThanOrEqual(closeness * Math.abs(was));
  });
}

describe('round figures that meet', () => {
  it.each(Object.keys(WRITERS))('meet in %s as in bare feet', (unit) => {
    fc.assert(
      fc.property(drawn, (of) => {
        const written = WRITERS[unit] as (inches: number) => unknown;
        expectAlike(plan(of, bareFeet), plan(of, written), 1e-9, unit);
      }),
      { numRuns: RUNS },
    );
  });

  it('meet where each is typed in another unit than the next', () => {
    fc.assert(
      fc.property(drawn, fc.nat(), (of, first) => {
        const writers = [bareFeet, ...Object.values(WRITERS)];
        let number = first;
        const mixed = (inches: number) => (writers[number++ % writers.length] as (inches: number) => unknown)(inches);
        expectAlike(plan(of, bareFeet), plan(of, mixed), 1e-9, 'mixed');
      }),
      { numRuns: RUNS },
    );
  });
});
