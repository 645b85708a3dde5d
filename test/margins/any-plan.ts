import { type Assessment, assess, type CheckInput } from '../../src/margins/index.ts';
import { readPlan } from '../../src/plan/index.ts';
import fc from '../fast-check.ts';

export type Document = Record<string, unknown>;

/** The inquiry of a plan that must be readable. */
export function checkInputOf(plan: unknown): CheckInput {
  const reading = readPlan(plan);
  if (!reading.ok) throw new Error(`${JSON.stringify(reading.faults)} in ${JSON.stringify(plan)}`);
  return reading.input;
}

export function assessed(plan: unknown): Assessment {
  return assess(checkInputOf(plan));
}

/** Largest demand at every check, without the capacity. */
export function demands(assessment: Assessment): number[] {
  return assessment.unfavourable.scenarios.flatMap(({ wind }) =>
    wind.map((value, index) => value + (assessment.unfavourable.dead[index] as number)),
  );
}

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true });
const METHODS = ['asce7-10', 'asce7-16', 'asce7-22', 'tia222-g', 'tia222-h', 'eia222-f'] as const;
const exposures = fc.constantFrom('B', 'C', 'D');

/** Makes a field absent now and then. */
const perhaps = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: undefined, freq: 2 });

function defined(fields: Record<string, unknown>): Document {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined));
}

const lattice = fc
  .record({
    faces: fc.constantFrom(3, 4),
    width: between(10, 24),
    members: fc.constantFrom('round', 'flat'),
    solid: fc.oneof(
      fc.record({
        leg: between(0.75, 2),
        brace: between(0.25, 0.75),
        panel: between(10, 24),
        pattern: fc.constantFrom('zigzag', 'cross', 'rungs'),
      }),
      fc.record({ solidity: between(0.08, 0.4) }),
      fc.record({ roundArea: between(1, 4), flatArea: between(0, 3) }),
      fc.record({ dragArea: between(5, 40) }),
      fc.constant({}),
    ),
  })
  .map(({ solid, ...shape }) => ({ shape: 'lattice', ...shape, ...solid }))
  .map((shape) =>
    'flatArea' in shape && shape.members === 'flat' ? { ...shape, flatArea: shape.flatArea + 1 } : shape,
  );

const pole = fc.record({
  shape: fc.constant('pole'),
  width: between(3, 14),
  sides: fc.constantFrom(0, 8, 12, 16, 18),
});

const tapered = fc.record({
  shape: fc.constant('lattice'),
  faces: fc.constantFrom(3, 4),
  width: fc.tuple(between(20, 30), between(10, 18)).map(([low, high]) => [low, high]),
  members: fc.constant('round'),
  leg: between(0.75, 1.5),
  brace: between(0.25, 0.75),
  panel: between(10, 24),
});

const appurtenances = (top: number) =>
  fc.oneof(
    fc.record({
      area: between(0.5, 8),
      areaKind: fc.constantFrom('effective', 'projected-round', 'flat-plate', 'unknown'),
      turns: fc.boolean(),
      height: between(top + 0.5, top + 5),
    }),
    fc.record({
      front: between(0.5, 8),
      side: between(0.2, 4),
      areaKind: fc.constantFrom('effective', 'unknown'),
      turns: fc.boolean(),
      heading: fc.integer({ min: 0, max: 359 }),
      height: between(top + 0.5, top + 5),
    }),
    fc.record({
      front: between(0.5, 3),
      side: between(0.2, 2),
      areaKind: fc.constant('effective'),
      height: between(5, top),
    }),
    fc.record({
      shape: fc.constant('tube'),
      diameter: between(0.5, 3),
      height: between(top + 0.2, top + 1).map((low) => [low, low + 9]),
    }),
    fc.record({
      shape: fc.constant('plate'),
      wide: between(4, 24),
      tall: between(4, 40),
      deep: between(0, 8),
      heading: fc.integer({ min: 0, max: 359 }),
      offset: perhaps(between(0, 2)),
      height: between(5, top),
    }),
    fc.record({
      shape: fc.constant('tubes'),
      turns: fc.boolean(),
      height: between(top + 0.5, top + 5),
      tubes: fc
        .tuple(between(1, 3), between(6, 30), fc.integer({ min: 1, max: 6 }), between(0.375, 1))
        .map(([boom, length, count, element]) => [
          { along: 'boom', diameter: boom, length },
          {
            along: 'element',
            count,
            taper: [
              [element, 60],
              [element * 0.75, 60],
            ],
          },
        ]),
    }),
    fc.record({
      force: between(20, 300),
      wind: between(50, 120),
      height: between(top + 0.5, top + 5),
    }),
    fc.record({
      shape: fc.constant('tube'),
      along: fc.constantFrom('boom', 'element'),
      diameter: between(0.5, 3),
      length: between(2, 30),
      turns: fc.boolean(),
      height: between(top + 0.5, top + 5),
    }),
    fc.record({
      shape: fc.constant('pole'),
      width: between(2, 5),
      sides: fc.constantFrom(0, 8, 12, 16, 18),
      height: between(top + 0.2, top + 1).map((low) => [low, low + 6]),
    }),
    fc.record({
      shape: fc.constant('wire'),
      diameter: between(0.08, 0.25),
      to: fc.record({ distance: between(30, 120), height: between(6, 30), heading: fc.integer({ min: 0, max: 359 }) }),
      tension: between(10, 80),
      weight: between(0.5, 5),
      icedWeight: perhaps(between(6, 20)),
      height: between(12, top),
    }),
    fc.record({
      shape: fc.constant('dish'),
      diameter: between(12, 60),
      heading: fc.integer({ min: 0, max: 359 }),
      height: between(5, top),
    }),
  );

const ratedWind = fc
  .record({
    basis: perhaps(fc.constantFrom('gust3-nominal', 'gust3-strength', 'fastest-mile')),
    method: perhaps(fc.constantFrom(...METHODS, 'rs222-c')),
    exposure: perhaps(exposures),
    riskCategory: perhaps(fc.constantFrom('I', 'II', 'III')),
    year: perhaps(fc.integer({ min: 1975, max: 2020 })),
  })
  .map(({ method, year, ...wind }) => defined({ ...wind, ...(method ? { method } : { year }) }));

const stated = { above: perhaps(between(0, 3)), wind: ratedWind, speed: between(60, 120) };
const areaKind = perhaps(fc.constantFrom('effective', 'projected-round', 'projected-flat', 'flat-plate', 'unknown'));
const lines = perhaps(fc.record({ count: fc.integer({ min: 1, max: 4 }), diameter: between(0.2, 0.9) }));
const level = perhaps(fc.constantFrom('allowable', 'strength'));

/** What a maker may say of his tower, in every kind. */
const rating = fc
  .oneof(
    {
      weight: 6,
      arbitrary: fc
        .record({ ...stated, area: between(4, 40), areaKind, withCables: lines, also: perhaps(between(1, 10)) })
        .map(({ wind, speed, also, ...rest }) =>
          defined({ ...rest, wind: { speed, ...wind }, furtherAreas: also && [{ area: also, height: 20 }] }),
        ),
    },
    {
      weight: 2,
      arbitrary: fc
        .record({ ...stated, areaKind, withCables: lines, area: between(4, 40) })
        .map(({ speed, area, ...rest }) =>
          defined({
            ...rest,
            areasBySpeed: [
              [speed, area],
              [speed * 1.2, area * 0.6],
            ],
          }),
        ),
    },
    {
      weight: 1,
      arbitrary: fc
        .record({ ...stated, level, force: between(100, 900) })
        .map(({ wind, speed, ...rest }) => defined({ kind: 'force', ...rest, wind: { speed, ...wind } })),
    },
    {
      weight: 1,
      arbitrary: fc
        .record({ wind: ratedWind, speed: between(60, 120) })
        .map(({ wind, speed }) => ({ kind: 'wind', wind: { speed, ...wind } })),
    },
    {
      weight: 1,
      arbitrary: fc
        .record({ level, moment: between(3000, 60_000) })
        .map(({ moment, level }) => defined({ kind: 'moment', moment, level })),
    },
    { weight: 1, arbitrary: between(20, 400).map((weight) => ({ kind: 'weight', weight })) },
  )
  .map((said) => ({ of: 'tower', ...said }));

/** Plans of every sort that the reader takes, in us units, with things left unsaid; lines and the height of its ratings are said. */
export const anyPlan: fc.Arbitrary<Document> = fc
  .record({
    method: fc.constantFrom(...METHODS),
    speed: between(70, 130),
    basis: perhaps(fc.constantFrom('gust3-strength', 'gust3-nominal', 'fastest-mile')),
    exposure: exposures,
    riskCategory: perhaps(fc.constantFrom('I', 'II', 'III', 'IV')),
    hill: perhaps(
      fc.record({
        shape: fc.constantFrom('ridge', 'escarpment', 'round-hill'),
        height: between(10, 200),
        halfLength: between(30, 600),
        distance: between(0, 300),
        side: fc.constantFrom('upwind', 'downwind'),
      }),
    ),
    groundElevation: perhaps(between(0, 6000)),
    top: between(25, 80),
    shape: fc.oneof(
      { weight: 4, arbitrary: lattice },
      { weight: 2, arbitrary: pole },
      { weight: 1, arbitrary: tapered },
    ),
    mast: perhaps(
      fc.record({
        outside: between(1.5, 3),
        inside: between(1, 5),
        bearing: fc.boolean(),
        manufacturerPlates: fc.boolean(),
      }),
    ),
    cables: perhaps(
      fc.oneof(
        {
          weight: 4,
          arbitrary: fc.record({
            count: fc.integer({ min: 1, max: 8 }),
            diameter: between(0.2, 0.9),
            arrangement: fc.constantFrom('single', 'flat', 'bundle', 'inside'),
          }),
        },
        {
          weight: 1,
          arbitrary: fc.record({
            count: fc.integer({ min: 4, max: 12 }),
            diameter: between(0.2, 0.9),
            arrangement: fc.constant('ladder'),
            rows: fc.integer({ min: 1, max: 4 }),
            spacing: between(0.9, 3),
          }),
        },
      ),
    ),
    ratings: fc.array(rating, { minLength: 1, maxLength: 3 }),
  })
  .chain(
    ({ speed, basis, exposure, riskCategory, hill, groundElevation, top, shape, mast, cables, ratings, ...rest }) =>
      fc.array(appurtenances(top), { minLength: 1, maxLength: 4 }).map((loads) =>
        defined({
          units: 'us',
          ...rest,
          site: defined({
            wind: defined({ speed, basis }),
            exposure,
            riskCategory,
            hill,
            groundElevation,
          }),
          tower: { support: 'free', top, ...shape },
          mast: mast && {
            outside: mast.outside,
            length: mast.inside + 6,
            inside: mast.inside,
            bearing: mast.bearing ? top : false,
            manufacturerPlates: mast.manufacturerPlates,
          },
          loads: loads.map((load, index) => defined({ name: `load ${index}`, ...load })),
          cables: cables ? [cables] : [],
          ratings: ratings.map((rating) => ({ ...rating, top })),
        }),
      ),
  );
