import fc from '../fast-check.ts';
import { FIELD, FLAT_ROW, FOOT, type Method, type Told, UNITS, type UnitSystem } from './told-station.ts';

/*
 * Random plans in which everything is told, so that nothing has to be assumed: every method, tower and mast, in both
 * systems of units. Numbers are drawn in feet, inches and mph and rounded as an owner would type them.
 */

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true });
const perhaps = <T>(arbitrary: fc.Arbitrary<T>, freq = 2) => fc.option(arbitrary, { nil: undefined, freq });
const rounded = (value: number, digits = 3) => Number(value.toPrecision(digits));

/** Numbers of a plan in its own units, from feet, inches, square feet, mph, pounds and pounds of force. */
function writer(system: UnitSystem) {
  const us = UNITS.us;
  const u = UNITS[system];
  return {
    long: (feet: number) => Number(rounded((feet * us.long) / u.long, 4).toFixed(3)),
    across: (inches: number) => rounded((inches * us.across) / u.across),
    area: (feet: number) => rounded((feet * us.area) / u.area),
    speed: (mph: number) => rounded((mph * us.speed) / u.speed),
    force: (pounds: number) => rounded((pounds * us.force) / u.force),
    moment: (footPounds: number) => rounded((footPounds * us.moment) / u.moment),
    weight: (pounds: number) => rounded((pounds * us.weight) / u.weight),
    lineWeight: (poundsPerFoot: number) => rounded((poundsPerFoot * us.weight * u.long) / (us.long * u.weight)),
    stress: (ksi: number) => rounded((ksi * us.stress) / u.stress),
    soil: (psf: number) => rounded((psf * us.soil) / u.soil),
  };
}
type Writer = ReturnType<typeof writer>;

const defined = (fields: Record<string, unknown>): Told =>
  Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined));

const SITE_METHODS = ['asce7-10', 'asce7-16', 'asce7-22', 'tia222-g', 'tia222-h', 'eia222-f', 'en1991-1-4'] as const;
/** Methods of which the basis gives poles with flat sides. */
const SIDED_METHODS = ['tia222-g', 'tia222-h'] as const;
const EXPOSURES = ['B', 'C', 'D'] as const;

/** Speeds in mph that go with a method: in exposure B high enough for the 16 psf of ASCE to be idle on most items. */
function speedRange(method: Method): readonly [number, number] {
  if (method.startsWith('asce7')) return [115, 150];
  if (method === 'tia222-h') return [95, 140];
  if (method === 'en1991-1-4') return [48, 66];
  return [65, 105];
}

const windOf = (method: Method) =>
  fc
    .record({
      speed: between(...speedRange(method)),
      ground: method === 'en1991-1-4' ? fc.constantFrom('0', 'I', 'II', 'III', 'IV') : fc.constantFrom(...EXPOSURES),
      riskCategory: fc.constantFrom('I', 'II', 'III'),
      otherBasis: fc.boolean(),
    })
    .map(({ speed, ground, riskCategory, otherBasis }) => {
      const own = method === 'en1991-1-4' ? 'mean-10min' : method === 'tia222-g' ? 'gust3-nominal' : 'gust3-strength';
      const basis = method === 'eia222-f' || method === 'rs222-c' ? 'fastest-mile' : own;
      const nominal = otherBasis && basis === 'gust3-strength';
      return {
        speed: nominal ? speed * 0.7746 : speed,
        basis: nominal ? 'gust3-nominal' : basis,
        ground: method === 'en1991-1-4' ? { terrain: ground } : { exposure: ground },
        riskCategory,
      };
    });

const hill = fc.record({
  shape: fc.constantFrom('ridge', 'escarpment', 'round-hill'),
  height: between(65, 200),
  steep: between(0.21, 0.9),
  away: between(0, 0.6),
  side: fc.constantFrom('upwind', 'downwind'),
  isolated: fc.constantFrom(true, true, true, false),
});

// ---- towers ----------------------------------------------------------------------------------------------------

/** Rounds are told by their widths, which decide their drag; flats by any of the ways of a plan. */
const members = (w: Writer, width: number, round: boolean) =>
  fc.oneof(
    {
      weight: 5,
      arbitrary: fc
        .record({
          leg: between(0.75, 2),
          brace: between(0.25, 0.75),
          panel: between(0.7, 1.4),
          pattern: fc.constantFrom('zigzag', 'cross', 'rungs'),
        })
        .map((each) => ({
          leg: w.across(each.leg),
          brace: w.across(each.brace),
          panel: w.across(each.panel * width),
          pattern: each.pattern,
        })),
    },
    { weight: round ? 0 : 2, arbitrary: between(0.08, 0.35).map((solidity) => ({ solidity: rounded(solidity) })) },
    { weight: round ? 0 : 2, arbitrary: between(1, 4).map((area) => ({ flatArea: w.area(area) })) },
    { weight: 1, arbitrary: between(3, 9).map((area) => ({ dragArea: w.area(area) })) },
  );

interface DrawnTower {
  readonly kind: 'lattice' | 'pole';
  readonly sections: readonly Told[];
  readonly byMembers: boolean;
}

const straight = (w: Writer) =>
  fc
    .record({
      faces: fc.constantFrom(3, 4),
      round: fc.boolean(),
      width: between(11, 24),
      count: fc.integer({ min: 3, max: 7 }),
      make: fc.boolean(),
      cage: fc.boolean(),
    })
    .chain(({ faces, round, width, count, make, cage }) =>
      fc.tuple(members(w, width, round), members(w, width, round)).map(([steel, ofCage]): DrawnTower => {
        const shape = { shape: 'lattice', faces, members: round ? 'round' : 'flat' };
        const section = { length: w.long(10), count, uniform: true, ...shape, width: w.across(width), ...steel };
        const top = {
          name: 'cage',
          length: w.long(5),
          uniform: true,
          ...shape,
          width: w.across(width * 1.2),
          ...ofCage,
        };
        return {
          kind: 'lattice',
          sections: [make ? { ...section, make: 'of one make' } : section, ...(cage ? [top] : [])],
          byMembers: 'leg' in steel && (!cage || 'leg' in ofCage),
        };
      }),
    );

const tapered = (w: Writer) =>
  fc
    .record({
      faces: fc.constantFrom(3, 4),
      round: fc.boolean(),
      widths: fc.tuple(between(11, 16), between(3, 8), between(3, 8)),
      leg: between(0.75, 1.75),
      brace: between(0.25, 0.75),
      panel: between(14, 24),
      pattern: fc.constantFrom('zigzag', 'cross'),
      straightTop: fc.boolean(),
    })
    .map(({ faces, round, widths: [top, more, most], leg, brace, panel, pattern, straightTop }): DrawnTower => {
      const shape = {
        shape: 'lattice',
        faces,
        members: round ? 'round' : 'flat',
        leg: w.across(leg),
        brace: w.across(brace),
        panel: w.across(panel),
        pattern,
      };
      const [low, middle, high] = [w.across(top + more + most), w.across(top + more), w.across(top)];
      return {
        kind: 'lattice',
        byMembers: true,
        sections: [
          { length: w.long(12), uniform: false, ...shape, width: [low, middle] },
          { length: w.long(12), uniform: false, ...shape, width: [middle, high] },
          ...(straightTop ? [{ length: w.long(10), count: 2, uniform: true, ...shape, width: high }] : []),
        ],
      };
    });

const poles = (w: Writer, method: Method) =>
  fc
    .record({
      width: between(3, 9),
      taper: between(0.4, 0.9),
      tapers: fc.boolean(),
      sides: method === 'tia222-g' || method === 'tia222-h' ? fc.constantFrom(0, 8, 12, 16, 18) : fc.constant(0),
      count: fc.integer({ min: 2, max: 4 }),
    })
    .map(({ width, taper, tapers, sides, count }): DrawnTower => {
      const sections = Array.from({ length: count }, (_, index) => {
        const at = (step: number) => w.across(width * (1 + ((taper - 1) * step) / count));
        return {
          length: w.long(11),
          uniform: !tapers,
          shape: 'pole',
          sides,
          width: tapers ? [at(index), at(index + 1)] : w.across(width * taper ** index),
        };
      });
      return { kind: 'pole', sections, byMembers: false };
    });

// ---- loads -----------------------------------------------------------------------------------------------------

const tubesOf = (w: Writer) =>
  fc
    .record({
      boom: between(1.5, 3),
      length: between(8, 28),
      count: fc.integer({ min: 2, max: 6 }),
      element: between(0.4, 1),
      upright: fc.boolean(),
    })
    .map(({ boom, length, count, element, upright }) => [
      { along: 'boom', diameter: w.across(boom), length: w.long(length) },
      {
        along: 'element',
        count,
        taper: [
          [w.across(element), w.across(60)],
          [w.across(element * 0.75), w.across(60)],
        ],
      },
      ...(upright ? [{ along: 'upright', diameter: w.across(1), length: w.long(6) }] : []),
    ]);

const headings = fc.integer({ min: 0, max: 359 });
const heavy = (w: Writer) => between(5, 60).map((pounds) => w.weight(pounds));

/** Loads above the top, on the mast where there is one. */
const aloft = (w: Writer, tip: number, top: number) =>
  fc.oneof(
    fc.record({
      area: between(0.5, 8).map(w.area),
      areaKind: fc.constantFrom('effective', 'projected-round', 'projected-flat', 'flat-plate'),
      turns: fc.boolean(),
      height: between(top + 0.5, tip).map(w.long),
      weight: heavy(w),
    }),
    fc.record({
      front: between(0.5, 8).map(w.area),
      side: between(0.2, 4).map(w.area),
      areaKind: fc.constantFrom('effective', 'projected-round'),
      turns: fc.boolean(),
      heading: headings,
      height: between(top + 0.5, tip).map(w.long),
      weight: heavy(w),
    }),
    fc.record({
      shape: fc.constant('tubes'),
      tubes: tubesOf(w),
      turns: fc.constant(true),
      heading: headings,
      height: between(top + 0.5, tip).map(w.long),
      weight: heavy(w),
    }),
    fc.record({
      shape: fc.constant('tube'),
      along: fc.constant('upright'),
      diameter: between(0.5, 3).map(w.across),
      height: between(top + 0.5, tip - 1).map((low) => [w.long(low), w.long(low + 9)]),
      weight: heavy(w),
    }),
    fc.record({
      force: between(20, 300).map(w.force),
      wind: between(50, 120).map(w.speed),
      height: between(top + 0.5, tip).map(w.long),
      weight: heavy(w),
    }),
  );

/** Loads beside the tower. */
const beside = (w: Writer, top: number, lattice: boolean) =>
  fc.oneof(
    fc.record({
      shape: fc.constant('plate'),
      wide: between(6, 24).map(w.across),
      tall: between(6, 40).map(w.across),
      deep: between(2, 8).map(w.across),
      heading: headings,
      offset: lattice ? between(0, 2).map(w.long) : fc.constant(0),
      height: between(5, top - 2).map(w.long),
      weight: heavy(w),
    }),
    fc.record({
      front: between(0.5, 3).map(w.area),
      side: between(0.2, 2).map(w.area),
      areaKind: fc.constant('effective'),
      heading: headings,
      offset: lattice ? between(0, 2).map(w.long) : fc.constant(0),
      height: between(5, top - 2).map(w.long),
      weight: heavy(w),
    }),
    fc.record({
      shape: fc.constant('wire'),
      diameter: between(0.08, 0.25).map(w.across),
      to: fc
        .record({ distance: between(30, 120), height: between(6, 10), heading: headings })
        .map(({ distance, height, heading }) => ({ distance: w.long(distance), height: w.long(height), heading })),
      tension: between(10, 60).map(w.force),
      offset: fc.constant(0),
      height: between(14, top - 2).map(w.long),
      weight: fc.constant(0),
    }),
    fc.record({
      shape: fc.constant('lattice'),
      faces: fc.constantFrom(3, 4),
      width: between(6, 12).map(w.across),
      members: fc.constantFrom('round', 'flat'),
      leg: between(0.5, 1).map(w.across),
      brace: between(0.2, 0.4).map(w.across),
      panel: between(8, 14).map(w.across),
      pattern: fc.constant('zigzag'),
      offset: fc.constant(0),
      height: between(5, top - 10).map((low) => [w.long(low), w.long(low + 8)]),
      // Where the weight of a long load comes on the tower depends on its brackets.
      weight: fc.constant(0),
    }),
  );

// ---- ratings ---------------------------------------------------------------------------------------------------

const rating = (w: Writer, top: number, pole: boolean, methods: readonly Method[]) =>
  fc.constantFrom<Method>(...methods).chain((method) =>
    fc
      .record({
        wind: windOf(method),
        kind: fc.constantFrom('area', 'area', 'area', 'rows', 'further', 'force', 'moment', 'wind'),
        area: between(12, 45),
        areaKind: fc.constantFrom('effective', 'effective', 'projected-flat'),
        above: between(0, 4),
        lines: perhaps(fc.record({ count: fc.integer({ min: 1, max: 5 }), diameter: between(0.3, 0.9) })),
        level: fc.constantFrom('allowable', 'strength'),
      })
      .map(({ wind: { speed, ground, ...wind }, kind, area, areaKind, above, lines, level }) => {
        const said = { ...wind, method, ...(method === 'eia222-f' || method === 'rs222-c' ? {} : ground) };
        const at = { above: w.long(above), wind: { speed: w.speed(speed), ...said } };
        const withCables = lines && {
          count: lines.count,
          diameter: w.across(lines.diameter),
          [FIELD.arrangement]: pole ? 'single' : 'bundle',
        };
        const byArea = { of: 'tower', areaKind: method === 'rs222-c' ? 'flat-plate' : areaKind, withCables };
        switch (kind) {
          case 'rows':
            return defined({
              ...byArea,
              above: at.above,
              wind: said,
              [FIELD.areasBySpeed]: [
                [w.speed(speed), w.area(area)],
                [w.speed(speed * 1.15), w.area(area * 0.6)],
              ],
            });
          case 'further':
            return defined({
              ...byArea,
              ...at,
              area: w.area(area),
              [FIELD.furtherAreas]: [{ area: w.area(area / 3), height: w.long(top * 0.7) }],
            });
          case 'force':
            return defined({ of: 'tower', kind, force: w.force(area * 20), level, ...at, withCables });
          case 'moment':
            return { of: 'tower', kind, moment: w.moment(area * 20 * top), level };
          case 'wind':
            return defined({ of: 'tower', kind, wind: at.wind, withCables });
          default:
            return defined({ ...byArea, ...at, area: w.area(area) });
        }
      }),
  );

/** Methods by which the basis tells the wind on a tower, and so what it was rated with. */
function methodsFor({ sections }: DrawnTower): readonly Method[] {
  if (sections.some(({ sides }) => Number(sides ?? 0) > 0)) return SIDED_METHODS;
  return sections.some(({ dragArea }) => dragArea !== undefined) ? SITE_METHODS : [...SITE_METHODS, 'rs222-c'];
}

const OPTIONS = {
  mast: fc.record({
    outside: between(1.5, 3),
    wall: between(0.12, 0.3),
    yieldKsi: between(35, 60),
    inside: between(3, 8),
    above: between(4, 9),
    lower: fc.constantFrom(0, 0, 0.5),
    plates: fc.boolean(),
    rotator: between(10, 60),
  }),
  lines: fc.record({
    count: fc.integer({ min: 1, max: 8 }),
    diameter: between(0.2, 0.9),
    weight: between(0.05, 0.3),
    arrangement: fc.constantFrom('single', FLAT_ROW, 'bundle', 'inside'),
    upTo: between(0.5, 1),
  }),
  block: fc.record({
    side: between(4.5, 9),
    longer: between(1, 1.4),
    depth: between(2.5, 6),
    bearing: between(1500, 4000),
  }),
} as const;

/** Wholly told plans that stand by themselves, by the method where one is named. */
export const toldPlan: fc.Arbitrary<Told> = fc
  .record({ system: fc.constantFrom<UnitSystem>('us', 'si'), method: fc.constantFrom<Method>(...SITE_METHODS) })
  .chain(({ system, method }) => {
    const w = writer(system);
    const towers = fc.oneof(
      { weight: 4, arbitrary: straight(w) },
      { weight: 2, arbitrary: tapered(w) },
      { weight: 2, arbitrary: poles(w, method) },
    );
    return fc
      .record({
        wind: windOf(method),
        hill: perhaps(hill, 3),
        factor: perhaps(between(1, 1.5), 6),
        elevation: perhaps(between(0, 4000)),
        frequency: fc.oneof({ weight: 3, arbitrary: between(1.2, 4) }, { weight: 1, arbitrary: between(0.4, 0.95) }),
        tower: towers,
        mast: perhaps(OPTIONS.mast, 4),
        lines: perhaps(OPTIONS.lines),
        block: perhaps(OPTIONS.block),
        ice: perhaps(fc.record({ thickness: between(0.25, 1), gust: between(30, 50) }), 4),
        tilts: fc.boolean(),
        ratedWeight: perhaps(between(50, 300)),
      })
      .chain((drawn) => {
        const metres = drawn.tower.sections.reduce(
          (sum, { length, count }) => sum + Number(length) * Number(count ?? 1) * UNITS[system].long,
          0,
        );
        const top = metres / FOOT;
        const tip = top + (drawn.mast?.above ?? 3);
        const pole = drawn.tower.kind === 'pole';
        return fc
          .record({
            aloft: fc.array(aloft(w, tip, top), { minLength: 1, maxLength: 3 }),
            beside: fc.array(beside(w, top, !pole), { maxLength: 2 }),
            ratings: fc.array(rating(w, top, pole, methodsFor(drawn.tower)), { minLength: 1, maxLength: 2 }),
          })
          .map((stood) => document(system, method, w, metres, drawn, stood));
      });
  });

interface Drawn {
  readonly wind: {
    readonly speed: number;
    readonly basis: string;
    readonly ground: Told;
    readonly riskCategory: string;
  };
  readonly hill:
    | {
        readonly shape: string;
        readonly height: number;
        readonly steep: number;
        readonly away: number;
        readonly side: string;
        readonly isolated: boolean;
      }
    | undefined;
  readonly factor: number | undefined;
  readonly elevation: number | undefined;
  readonly frequency: number;
  readonly tower: DrawnTower;
  readonly mast:
    | {
        readonly outside: number;
        readonly wall: number;
        readonly yieldKsi: number;
        readonly inside: number;
        readonly above: number;
        readonly lower: number;
        readonly plates: boolean;
        readonly rotator: number;
      }
    | undefined;
  readonly lines:
    | {
        readonly count: number;
        readonly diameter: number;
        readonly weight: number;
        readonly arrangement: string;
        readonly upTo: number;
      }
    | undefined;
  readonly block:
    | { readonly side: number; readonly longer: number; readonly depth: number; readonly bearing: number }
    | undefined;
  readonly ice: { readonly thickness: number; readonly gust: number } | undefined;
  readonly tilts: boolean;
  readonly ratedWeight: number | undefined;
}

interface Stood {
  readonly aloft: readonly object[];
  readonly beside: readonly object[];
  readonly ratings: readonly Told[];
}

function document(system: UnitSystem, method: Method, w: Writer, metres: number, drawn: Drawn, stood: Stood): Told {
  const { wind, mast, lines, block } = drawn;
  const height = metres / UNITS[system].long;
  const feet = metres / FOOT;
  const byHill = drawn.hill !== undefined && method !== 'eia222-f' && !isLeeOfEscarpment(drawn.hill, method);
  const uniform = drawn.tower.sections.every(({ width }) => !Array.isArray(width));
  const frequency = uniform && drawn.tower.sections.length === 1 ? drawn.frequency : Math.max(1.2, drawn.frequency);
  return defined({
    units: system,
    method,
    site: defined({
      wind: { speed: w.speed(wind.speed), basis: wind.basis },
      ...wind.ground,
      riskCategory: wind.riskCategory,
      groundElevation: drawn.elevation === undefined ? 0 : w.long(drawn.elevation),
      hill:
        byHill && drawn.hill
          ? {
              shape: drawn.hill.shape,
              height: w.long(drawn.hill.height),
              halfLength: w.long(drawn.hill.height / drawn.hill.steep),
              distance: w.long((drawn.hill.away * drawn.hill.height) / drawn.hill.steep),
              side: drawn.hill.side,
              isolated: drawn.hill.isolated,
            }
          : undefined,
      topographicFactor:
        byHill || method === 'eia222-f' ? undefined : drawn.factor === undefined ? 1 : rounded(drawn.factor),
      ice:
        drawn.ice && wind.riskCategory !== 'I'
          ? { thickness: w.across(drawn.ice.thickness), gust: w.speed(drawn.ice.gust) }
          : undefined,
    }),
    tower: defined({
      support: 'free',
      [FIELD.base]: 0,
      top: Number(height.toFixed(9)),
      sections: drawn.tower.sections,
      frequency: rounded(frequency),
      damping: 0.01,
      weight: w.weight(300),
      hinge: drawn.tilts ? { height: w.long(6) } : undefined,
      foundation: block && {
        kind: 'block',
        length: w.long(block.side * block.longer),
        width: w.long(block.side),
        depth: w.long(block.depth),
        [FIELD.soilBearing]: w.soil(block.bearing),
      },
    }),
    mast: mast && {
      outside: w.across(mast.outside),
      wall: w.across(mast.wall),
      yield: w.stress(mast.yieldKsi),
      inside: w.long(mast.inside),
      length: w.long(mast.inside + mast.above + 0.5),
      bearing: Number((height - w.long(mast.lower)).toFixed(9)),
      material: 'steel',
      [FIELD.manufacturerPlates]: mast.plates,
    },
    rotator: mast && { height: Number((height - w.long(mast.inside)).toFixed(9)), weight: w.weight(mast.rotator) },
    loads: [...stood.aloft.map((load) => (mast ? load : { ...load, on: 'tower' })), ...stood.beside].map(
      (load, index) => ({ name: `load ${index}`, ...load }),
    ),
    cables:
      lines === undefined
        ? []
        : [
            {
              name: 'lines',
              count: lines.count,
              diameter: w.across(lines.diameter),
              weight: w.lineWeight(lines.weight),
              [FIELD.arrangement]: lines.arrangement,
              from: 0,
              to: w.long(Math.max(8, lines.upTo * feet * 0.999)),
            },
          ],
    ratings: [
      ...stood.ratings.map((rating) => ({ ...rating, top: Number(height.toFixed(9)) })),
      ...(drawn.ratedWeight === undefined
        ? []
        : [{ of: 'tower', kind: 'weight', weight: w.weight(drawn.ratedWeight) }]),
    ],
  });
}

/** By EN 1991-1-4 the lee of an escarpment is left to others. */
const isLeeOfEscarpment = (hill: { readonly shape: string; readonly side: string }, method: Method) =>
  method === 'en1991-1-4' && hill.shape === 'escarpment' && hill.side === 'downwind';

/** Those of them whose ice is told as well: on round members of known widths, or as an area with ice. */
export const icedPlan: fc.Arbitrary<Told> = toldPlan
  .filter((plan) => {
    const tower = plan['tower'] as Told;
    const sections = tower['sections'] as readonly Told[];
    const ice = (plan['site'] as Told)['riskCategory'] !== 'I';
    return (
      ice && sections.every(({ leg, members, sides }) => (leg !== undefined && members === 'round') || sides === 0)
    );
  })
  .map((plan) => {
    const { loads, cables, ratings, site, units } = plan as Readonly<Record<string, readonly Told[]>>;
    const w = writer(units as unknown as UnitSystem);
    const iced = (loads ?? [])
      .filter(
        ({ shape, force, members }) =>
          force === undefined &&
          (shape === undefined ||
            shape === 'tube' ||
            shape === 'tubes' ||
            (shape === 'lattice' && members === 'round')),
      )
      .map((load) =>
        load['shape'] === undefined
          ? {
              ...load,
              icedArea: rounded(2 * Math.max(Number(load['area'] ?? load['front']), Number(load['side'] ?? 0))),
            }
          : load,
      );
    return {
      ...plan,
      site: { ...(site as unknown as Told), ice: { thickness: w.across(0.5), gust: w.speed(45) } },
      loads: iced,
      cables: (cables ?? []).map((lines) => ({ ...lines, [FIELD.arrangement]: 'single' })),
      // More than all that hangs there and its ice.
      ratings: [...(ratings ?? []), { of: 'tower', kind: 'weight', weight: w.weight(9000) }],
    };
  });
