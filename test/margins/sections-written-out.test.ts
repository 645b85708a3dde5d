import { describe, expect, it } from 'vitest';
import fc from '../fast-check.ts';
import { assessed, type Document } from './any-plan.ts';

/*
 * The law: however the sections of a tower are written down, it is the same tower. Told without sections, as one section, or
 * as pieces of ten feet counted down from its top, every check has one ratio.
 */
const RUNS = Number(process.env['RANDOM_RUNS'] ?? 60);

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true });
const FOOT = 0.3048;

const tower = fc.record({
  units: fc.constantFrom('us', 'si'),
  method: fc.constantFrom('asce7-16', 'tia222-h', 'eia222-f'),
  /** [ft] */
  top: fc.oneof(
    fc.constantFrom(20, 40, 60),
    between(22, 78).filter((top) => top % 10 > 2),
  ),
  wide: between(14, 24),
  /** Width at the top over that at the foot. */
  narrow: fc.oneof(fc.constant(1), between(0.6, 0.95)),
  shape: fc.constantFrom('lattice', 'pole'),
  faces: fc.constantFrom(3, 4),
  pattern: fc.constantFrom('zigzag', 'cross', 'rungs'),
  mast: fc.boolean(),
  rated: between(5, 25),
  area: between(2, 12),
  lower: between(0.3, 0.9),
  speed: between(85, 120),
});
type Drawn = typeof tower extends fc.Arbitrary<infer T> ? T : never;

/** A plan, with the sections of its tower written down in one way. */
function plan(of: Drawn, written: 'notGiven' | 'one' | 'pieces'): Document {
  const us = of.units === 'us';
  const [long, thick, area] = us ? [1, 1, 1] : [FOOT, 25.4, FOOT * FOOT];
  const fast = us ? 1 : 0.44704;
  const widthAt = (height: number) => of.wide * (1 + ((of.narrow - 1) * height) / of.top) * thick;
  const widths = (low: number, high: number) => (of.narrow === 1 ? of.wide * thick : [widthAt(low), widthAt(high)]);
  const shape = (low: number, high: number): Document =>
    of.shape === 'pole'
      ? { shape: 'pole', sides: 0, width: widths(low, high) }
      : {
          shape: 'lattice',
          faces: of.faces,
          members: 'round',
          width: widths(low, high),
          leg: 1.25 * thick,
          brace: 0.5 * thick,
          panel: 16 * thick,
          pattern: of.pattern,
        };
  const heights = [of.top];
  while ((heights[0] ?? 0) > 10) heights.unshift((heights[0] ?? 0) - 10);
  if ((heights[0] ?? 0) > 0.02) heights.unshift(0);
  else heights[0] = 0;
  const pieces = heights.slice(1).map((high, index) => {
    const low = heights[index] ?? 0;
    return { length: (high - low) * long, ...shape(low, high) };
  });
  const basis = of.method === 'eia222-f' ? 'fastest-mile' : 'gust3-strength';
  const wind = (speed: number) => ({ speed: speed * fast, basis });
  return {
    units: of.units,
    method: of.method,
    site: { wind: wind(of.speed), exposure: 'C', riskCategory: 'II', groundElevation: 0 },
    tower: {
      support: 'free',
      top: of.top * long,
      frequency: 3,
      damping: 0.01,
      weight: us ? 400 : 180,
      ...(written === 'notGiven' ? shape(0, of.top) : {}),
      ...(written === 'one' ? { sections: [{ length: of.top * long, ...shape(0, of.top) }] } : {}),
      ...(written === 'pieces' ? { sections: pieces } : {}),
    },
    ...(of.mast
      ? {
          mast: {
            outside: 2 * thick,
            wall: 0.25 * thick,
            length: 10 * long,
            inside: 4 * long,
            bearing: of.top * long,
            yield: us ? 46 : 317,
          },
        }
      : {}),
    loads: [
      { name: 'beam', above: 2 * long, area: of.area * area, areaKind: 'effective', turns: true, weight: us ? 60 : 27 },
      {
        name: 'lower',
        height: of.lower * of.top * long,
        area,
        areaKind: 'effective',
        offset: 0,
        weight: us ? 10 : 4.5,
      },
    ],
    cables: [],
    ratings: [
      {
        of: 'tower',
        area: of.rated * area,
        areaKind: 'effective',
        above: 0,
        top: of.top * long,
        wind: { ...wind(of.speed), method: of.method, exposure: 'C', riskCategory: 'II' },
      },
    ],
  };
}

const ratiosOf = (document: Document) =>
  assessed(document).checks.flatMap(({ id, verdict, result }) =>
    result === undefined ? [] : [{ id, verdict, ratio: result.ratio }],
  );

describe('a tower whose sections are written down in three ways', () => {
  it('has the same ratios', () => {
    let towers = 0;
    fc.assert(
      fc.property(tower, (drawn) => {
        const notGiven = ratiosOf(plan(drawn, 'notGiven'));
        expect(notGiven.map(({ id }) => id)).toContain('tower');
        for (const written of ['one', 'pieces'] as const) {
          const found = ratiosOf(plan(drawn, written));
          expect(found.map(({ id, verdict }) => [written, id, verdict])).toEqual(
            notGiven.map(({ id, verdict }) => [written, id, verdict]),
          );
          found.forEach(({ id, ratio }, index) => {
            const of = notGiven[index]?.ratio ?? Number.NaN;
            expect(Math.abs(ratio / of - 1), `${written}, ${id}: ${ratio}, not given ${of}`).toBeLessThan(1e-6);
          });
        }
        towers += 1;
      }),
      { numRuns: RUNS },
    );
    expect(towers).toBeGreaterThanOrEqual(RUNS);
  });

  // By hand, pressures over that at 40 ft, k = (z/40)^(2/9.5), below 15 ft as there: 0.813 at 15 ft, 0.972 at 35, 1.039 at 48.
  // 6 ft² 8 ft above the top, rated 12 ft² at the top, 0.5 ft² of drag on every foot of tower. At the foot the tower has
  // 0.5·Σk = 17.58 ft² and 0.5·Σk·z = 366.3 ft³: (6·1.039 + 17.58)/(12 + 17.58) = 0.805 in shear, (6·1.039·48 + 366.3)/
  // (12·40 + 366.3) = 0.786 in moment. 10 ft below the top (6·1.039·18 + 5·0.972·5)/(12·10 + 5·0.972·5) = 0.946 in moment.
  it('is compared inside a section that nobody calls uniform, and not inside one that is', () => {
    const of = (said: Document): Document => ({
      units: 'us',
      method: 'asce7-16',
      site: { wind: { speed: 105, basis: 'gust3-strength' }, exposure: 'C', riskCategory: 'II' },
      tower: {
        support: 'free',
        top: 40,
        weight: 400,
        frequency: 3,
        sections: [{ length: 40, shape: 'lattice', faces: 3, members: 'round', width: 18, dragArea: 20, ...said }],
      },
      loads: [{ name: 'beam', on: 'tower', above: 8, area: 6, areaKind: 'effective', turns: true, weight: 0 }],
      cables: [],
      ratings: [
        {
          of: 'tower',
          area: 12,
          areaKind: 'effective',
          above: 0,
          top: 40,
          wind: { speed: 105, basis: 'gust3-strength', method: 'asce7-16', exposure: 'C', riskCategory: 'II' },
        },
      ],
    });
    const [one, uniform] = [of({}), of({ uniform: true })];
    const ratio = (document: Document) => ratiosOf(document).find(({ id }) => id === 'tower')?.ratio ?? Number.NaN;
    expect(ratio(uniform)).toBeCloseTo(0.805, 2);
    expect(ratio(one)).toBeCloseTo(0.946, 2);
    const sections = (document: Document) => assessed(document).input.station.tower.sections;
    expect(sections(uniform)).toHaveLength(1);
    expect(sections(one).map(({ name }) => name)).toEqual([
      'section 1, 0 ft to 10 ft',
      'section 1, 10 ft to 20 ft',
      'section 1, 20 ft to 30 ft',
      'section 1, 30 ft to 40 ft',
    ]);
  });
});
