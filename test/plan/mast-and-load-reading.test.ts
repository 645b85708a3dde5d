import { describe, expect, it } from 'vitest';
import { changed, entryWarningsOf, read, type Sample } from './sample-plans.ts';

const FOOT = 0.3048;
const near = (value: number) => expect.closeTo(value, 9);
const stationOf = (patch: Sample) => read(changed(patch)).input.station;
const mastOf = (mast: Sample, more: Sample = {}) => stationOf({ mast, ...more }).mast;
const shapeOf = (load: Sample) => stationOf({ loads: [{ name: 'thing', above: 2, ...load }] }).loads[0]?.shape;
const mast = { outside: 2, length: 10 };

describe('a mast', () => {
  it('stands as far inside as it says, its bearing at the top', () => {
    expect(mastOf({ ...mast, wall: 0.25, yield: 46, inside: 4 })).toEqual({
      outside: near(0.0508),
      length: near(3.048),
      wall: near(0.00635),
      yieldStrength: expect.closeTo(317158835.485745, 3),
      material: 'steel',
      foot: near(44 * FOOT),
      tip: near(54 * FOOT),
      bearing: near(48 * FOOT),
      shelf: false,
    });
  });

  it('stands on its rotator', () => {
    expect(mastOf(mast, { rotator: { height: 43 } })).toMatchObject({ foot: near(43 * FOOT), tip: near(53 * FOOT) });
  });

  it('of which nobody says how far it is inside has no foot and all its length above the top', () => {
    const { input } = read(changed({ mast }));
    expect(input.station.mast).toMatchObject({ tip: near(58 * FOOT), bearing: near(48 * FOOT) });
    expect(input.station.mast).not.toHaveProperty('foot');
    expect(input.notGiven).toContain('mast-inside');
    expect(input.notGiven).not.toContain('mast');
  });

  it('has no bearing where the plan says so, or where it is clamped on top', () => {
    expect(mastOf({ ...mast, inside: 4, bearing: false })).not.toHaveProperty('bearing');
    expect(mastOf({ ...mast, inside: 0 })).not.toHaveProperty('bearing');
    expect(mastOf({ ...mast, inside: 4, bearing: '47 ft' })?.bearing).toBeCloseTo(47 * FOOT, 10);
  });

  it('in pieces shows no single wall, and its steel stands for pieces that name none', () => {
    const pieces = [{ outside: 2, wall: 0.25, from: 0, to: 10, yield: 46 }];
    const read = mastOf({ ...mast, inside: 4, wall: 0.25, yield: 46, pieces });
    expect(read).not.toHaveProperty('wall');
    expect(read?.pieces).toHaveLength(1);
    expect(read?.pieces?.[0]).toMatchObject({ wall: near(0.25 * 0.0254), from: 0, to: near(10 * FOOT) });
    expect(read?.yieldStrength).toBeCloseTo(46 * 6894757.293168, -3);
  });

  it('with its bearing above the top is queried', () => {
    const [query] = entryWarningsOf(changed({ mast: { ...mast, inside: 4, bearing: 50 } }));
    expect(query).toMatchObject({ pointer: '#/mast/bearing', code: 'bearing-above-top' });
  });
});

describe('what carries a load', () => {
  const on = (load: Sample) =>
    stationOf({ mast: { ...mast, inside: 4 }, loads: [{ name: 'x', area: 3, ...load }] }).loads[0]?.on;

  it('is the mast above the top if there is one, else the tower', () => {
    expect(on({ above: 2 })).toBe('mast');
    expect(on({ above: 0 })).toBe('tower');
    expect(on({ above: -6 })).toBe('tower');
    expect(on({ above: 2, on: 'tower' })).toBe('tower');
    expect(stationOf({}).loads[0]?.on).toBe('tower');
  });
});

describe('a load', () => {
  it('has its heights from a pair, a text, or above the top', () => {
    const { loads } = stationOf({
      loads: [
        { name: 'a', height: [40, 46], area: 3 },
        { name: 'b', height: '40 to 46 ft', area: 3 },
        { name: 'c', above: [-8, -2], area: 3 },
      ],
    });
    for (const load of loads) expect(load).toMatchObject({ low: near(40 * FOOT), high: near(46 * FOOT) });
  });

  it('has its other fields in SI', () => {
    const load = stationOf({
      loads: [
        {
          name: 'a',
          height: 40,
          area: 3,
          count: 2,
          weight: 40,
          turns: true,
          heading: 90,
          offset: 3,
          boom: 14,
          reach: '16 ft',
        },
      ],
    }).loads[0];
    expect(load).toMatchObject({ count: 2, turns: true, weight: near(18.1436948), heading: near(Math.PI / 2) });
    expect(load).toMatchObject({ offset: near(3 * FOOT), boom: near(14 * FOOT), reach: near(16 * FOOT) });
  });

  it('whose boom cannot hang upright over the hinge is queried', () => {
    const plan = (boom: number) =>
      changed({ tower: { hinge: { height: 4 } }, loads: [{ name: 'beam', above: 2, area: 5, boom }] });
    expect(entryWarningsOf(plan(8))).toEqual([]);
    expect(entryWarningsOf(plan(9))[0]).toMatchObject({ pointer: '#/loads/0/boom', code: 'boom-meets-ground' });
  });
});

describe('a shape', () => {
  it('stated, by one area, by front and side, by a force', () => {
    expect(shapeOf({ front: 5, side: 2, areaKind: 'effective', slenderFlats: true })).toEqual({
      kind: 'stated',
      front: near(5 * FOOT ** 2),
      side: near(2 * FOOT ** 2),
      areaKind: 'effective',
      slenderFlats: true,
    });
    expect(shapeOf({ force: 100, wind: 80 })).toEqual({
      kind: 'stated-force',
      force: near(444.82216152605),
      wind: near(35.7632),
    });
  });

  it('tube', () => {
    const tube = stationOf({ loads: [{ name: 'v', above: [1, 21], shape: 'tube', diameter: [2, 1] }] }).loads[0]?.shape;
    expect(tube).toEqual({
      kind: 'tube',
      along: 'upright',
      diameter: [near(0.0508), near(0.0254)],
      length: near(20 * FOOT),
    });
    expect(shapeOf({ shape: 'tube', diameter: 2, along: 'boom', length: 12 })).toMatchObject({
      along: 'boom',
      length: near(12 * FOOT),
    });
  });

  it('tube upright at one height reaches to either side of it, and the reading is told', () => {
    const reading = read(changed({ loads: [{ name: 'v', above: 10, shape: 'tube', diameter: 2, length: 18 }] }));
    expect(reading.input.station.loads[0]).toMatchObject({ low: near(49 * FOOT), high: near(67 * FOOT) });
    expect(reading.entryWarnings[0]).toMatchObject({ pointer: '#/loads/0/above', code: 'read-as-middle' });
  });

  it('tubes, a taper on both sides of the boom', () => {
    const tubes = [
      { along: 'boom', diameter: 2, length: 12 },
      {
        along: 'element',
        count: 3,
        taper: [
          [1, 36, 0.058],
          ['7/8', 48],
        ],
        yield: 35,
      },
    ];
    expect(shapeOf({ shape: 'tubes', tubes })).toEqual({
      kind: 'tubes',
      rows: [
        { along: 'boom', count: 1, pieces: [{ diameter: near(0.0508), length: near(3.6576) }] },
        {
          along: 'element',
          count: 3,
          yieldStrength: expect.closeTo(241316505.260893, 3),
          pieces: [
            { diameter: near(0.022225), length: near(1.2192) },
            { diameter: near(0.0254), length: near(0.9144), wall: near(0.0014732) },
            { diameter: near(0.0254), length: near(0.9144), wall: near(0.0014732) },
            { diameter: near(0.022225), length: near(1.2192) },
          ],
        },
      ],
    });
  });

  it('plate, dish, lattice, pole', () => {
    expect(shapeOf({ shape: 'plate', wide: 12, tall: 24 })).toEqual({
      kind: 'plate',
      wide: near(0.3048),
      tall: near(0.6096),
      deep: 0,
    });
    expect(shapeOf({ shape: 'dish', diameter: 36 })).toEqual({ kind: 'dish', diameter: near(0.9144), solidity: 1 });
    expect(shapeOf({ shape: 'dish', diameter: 36, solidity: '40 %' })).toMatchObject({ solidity: near(0.4) });
    expect(shapeOf({ above: [-5, -1], shape: 'lattice', faces: 4, width: 12, members: 'flat', solidity: 0.2 })).toEqual(
      {
        kind: 'lattice',
        faces: 4,
        width: [near(0.3048), near(0.3048)],
        members: 'flat',
        solid: { by: 'solidity', solidity: 0.2 },
      },
    );
    expect(shapeOf({ above: [-5, -1], shape: 'pole', width: 4, sides: 8 })).toMatchObject({ kind: 'pole', sides: 8 });
  });

  it('wire, its pull from its tension, or from its sag and weight, or not known', () => {
    // 60 ft away and 80 ft of fall is a 3-4-5 triangle: of 100 lbf along it, 60 % is level.
    const wire = {
      height: 90,
      shape: 'wire',
      diameter: 0.08,
      to: { distance: 60, height: 10, heading: 180 },
    };
    const tower = { top: 90 };
    const of = (more: Sample) => {
      const loads = [{ name: 'leg', ...changed(more, wire) }];
      return stationOf({ tower, loads }).loads[0]?.shape;
    };
    expect(of({ tension: 100 })).toEqual({
      kind: 'wire',
      diameter: near(0.002032),
      distance: near(18.288),
      rise: near(-24.384),
      heading: near(Math.PI),
      pull: near(266.89329691563),
    });
    // H = W·L/(8·sag): 2 lb over 60 ft with 3 ft of sag is 5 lbf.
    expect(of({ sag: 3, weight: 2 })).toMatchObject({ pull: near(22.2411080763025) });
    expect(of({ sag: 3 })).not.toHaveProperty('pull');
    expect(of({})).not.toHaveProperty('pull');
  });
});

describe('a rating', () => {
  const ratingOf = (rating: Sample, patch: Sample = {}) =>
    read(changed({ ratings: [rating], ...patch })).input.ratings[0];

  it('of rows, with what the maker says about its wind', () => {
    const wind = { basis: 'fastest-mile', method: 'rs222-c', exposure: 'C', riskCategory: 'II', year: 1984 };
    const rows = [
      [70, 12],
      [90, '6 ft²'],
    ];
    expect(
      ratingOf({
        of: 'tower',
        areaKind: 'flat-plate',
        areasBySpeed: rows,
        wind,
        above: 1,
        withCables: { count: 2, diameter: 0.4 },
      }),
    ).toEqual({
      at: '/ratings/0',
      of: 'tower',
      claim: {
        kind: 'area',
        areaKind: 'flat-plate',
        rows: [
          { speed: near(31.2928), area: near(1.11483648) },
          { speed: near(40.2336), area: near(0.55741824) },
        ],
        also: [],
      },
      height: near(49 * FOOT),
      wind,
      withCables: { count: 2, diameter: near(0.01016) },
    });
  });

  it('with a speed alone, a case of several areas, another top and supports', () => {
    const rating = ratingOf({
      of: 'tower',
      area: 9,
      furtherAreas: [{ area: 3, height: 30 }],
      wind: 70,
      top: 40,
      supportedAt: [20, 38],
      above: 2,
    });
    expect(rating).toMatchObject({
      claim: { rows: [{ area: near(0.83612736) }], also: [{ area: near(0.27870912), height: near(9.144) }] },
      wind: { speed: near(31.2928) },
      top: near(40 * FOOT),
      held: [near(20 * FOOT), near(38 * FOOT)],
      height: near(42 * FOOT),
    });
  });

  it('of each other kind', () => {
    const kinds = [
      [
        { of: 'tower', kind: 'force', force: 100, level: 'allowable' },
        { kind: 'force', force: near(444.82216152605), level: 'allowable', levelGiven: true },
      ],
      [
        { of: 'tower', kind: 'moment', moment: 1000 },
        { kind: 'moment', moment: near(1355.8179483314), level: 'strength', levelGiven: false },
      ],
      [{ of: 'tower', kind: 'wind', wind: 110 }, { kind: 'wind' }],
      [
        { of: 'tower', kind: 'weight', weight: 200 },
        { kind: 'weight', weight: near(90.718474) },
      ],
      [
        { of: 'rotator', kind: 'torque', torque: 100, brake: 500 },
        {
          kind: 'torque',
          torque: near(135.58179483314),
          brake: near(677.9089741657),
          level: 'strength',
          levelGiven: false,
        },
      ],
      [
        { of: 'gear', workingLoad: 2000 },
        { kind: 'gear', working: near(8896.443230521) },
      ],
    ] as const;
    for (const [rating, claim] of kinds) expect(ratingOf(rating as Sample)?.claim).toEqual(claim);
  });

  it('of a moment acts at the foot unless said otherwise, an area at the top', () => {
    expect(ratingOf({ of: 'tower', kind: 'moment', moment: 1000 })?.height).toBe(0);
    expect(ratingOf({ of: 'tower', kind: 'moment', moment: 1000, height: 20 })?.height).toBeCloseTo(20 * FOOT, 10);
    expect(ratingOf({ of: 'tower', area: 18 })).not.toHaveProperty('height');
  });
});

describe('a site', () => {
  const siteOf = (site: Sample) => read(changed({ site })).input;

  it('has its hill by run or by half length', () => {
    const hill = { shape: 'ridge', height: 60, distance: 50, side: 'upwind' };
    const expected = {
      shape: 'ridge',
      height: near(18.288),
      halfLength: near(45.72),
      distance: near(15.24),
      side: 'upwind',
    };
    expect(siteOf({ hill: { ...hill, run: 300 } }).site.hill).toEqual(expected);
    expect(siteOf({ hill: { ...hill, halfLength: 150 } }).site.hill).toEqual(expected);
    expect(siteOf({ hill: { ...hill, run: 300 } }).notGiven).not.toContain('hill');
  });

  it('has what it says about its wind', () => {
    const said = siteOf({
      wind: { speed: 90, basis: 'gust3-nominal' },
      riskCategory: 'III',
      groundElevation: 5000,
      topographicFactor: 1.3,
    });
    expect(said.site).toEqual({
      speed: near(40.2336),
      basis: 'gust3-nominal',
      exposure: 'C',
      riskCategory: 'III',
      groundElevation: near(1524),
      topographicFactor: 1.3,
    });
    expect(said.notGiven.toSorted()).toEqual(['ice', 'mast', 'weights']);
  });

  it('queries what a maker would hardly state: a unit may have been taken for another', () => {
    const rated = (rating: Sample, units = 'si') =>
      entryWarningsOf(
        changed({ units, tower: { support: 'free', top: 12 }, ratings: [{ of: 'tower', ...rating }] }),
      ).map(({ code, pointer }) => [code, pointer]);
    const wind = { speed: 45, method: 'asce7-16', exposure: 'C' };
    expect(rated({ area: 1.8, wind })).toEqual([]);
    expect(rated({ area: 18, wind })).toEqual([['area-of-no-small-tower', '#/ratings/0/area']]);
    expect(rated({ area: 1.8, wind: { ...wind, speed: 160 } })).toEqual([
      ['speed-beyond-maps', '#/ratings/0/wind/speed'],
    ]);
    expect(rated({ area: 36, wind: { speed: 1.4, method: 'asce7-16', exposure: 'C' } })).toEqual([
      ['rated-speed-low', '#/ratings/0/wind/speed'],
      ['area-of-no-small-tower', '#/ratings/0/area'],
    ]);
    expect(rated({ areasBySpeed: [[160, 1.8]], wind: { method: 'asce7-16', exposure: 'C' } })).toEqual([
      ['speed-beyond-maps', '#/ratings/0/areasBySpeed'],
    ]);
  });

  it('queries a speed that is low for its basis, named or of the maps of the method', () => {
    expect(entryWarningsOf(changed({ site: { wind: 85 } }))[0]).toMatchObject({
      pointer: '#/site/wind',
      code: 'speed-low',
    });
    expect(entryWarningsOf(changed({ site: { wind: 85 } }))[0]?.says).toContain(
      '85 mph is low for its type, 3-second gust, strength level',
    );
    expect(entryWarningsOf(changed({ site: { wind: 90 } }))[0]?.code).toBe('speed-low');
    expect(entryWarningsOf(changed({ site: { wind: 91 } }))).toEqual([]);
    expect(entryWarningsOf(changed({ method: 'eia222-f', site: { wind: 85 } }))).toEqual([]);
    expect(entryWarningsOf(changed({ site: { wind: { speed: 85, basis: 'fastest-mile' } } }))).toEqual([]);
    expect(entryWarningsOf(changed({ site: { wind: { speed: 60, basis: 'fastest-mile' } } }))[0]?.code).toBe(
      'speed-low',
    );
  });
});
