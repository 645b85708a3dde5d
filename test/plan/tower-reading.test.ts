import { describe, expect, it } from 'vitest';
import { changed, entryWarningsOf, read, type Sample } from './sample-plans.ts';

const FOOT = 0.3048;
const bare = { shape: null, faces: null, width: null, members: null };
const towerOf = (tower: Sample) => read(changed({ tower })).input.station.tower;
const heights = (values: readonly number[]) => values.map((value) => expect.closeTo(value, 9));

const near = (value: number) => expect.closeTo(value, 9);

describe('a tower without sections', () => {
  it('without a shape has pieces of which what is proven at the foot serves the piece', () => {
    const { sections } = towerOf(bare);
    expect(sections).toHaveLength(5);
    for (const section of sections) {
      expect(section.uniform).toBe(true);
      expect(section.shape).toBeUndefined();
    }
  });

  it('has its taper interpolated, and then nothing in it is uniform', () => {
    // 20 ft from 24 in to 12 in: 18 in half-way.
    const { sections } = towerOf({ top: 20, width: [24, 12] });
    expect(sections.map((section) => section.shape?.width)).toEqual([
      heights([0.6096, 0.4572]),
      heights([0.4572, 0.3048]),
    ]);
    expect(sections.every((section) => !section.uniform)).toBe(true);
  });

  it('shares its areas out by face, so that they add up to what was given', () => {
    const { sections } = towerOf({ top: 28, width: [24, 12], roundArea: 12, flatArea: 3 });
    let round = 0;
    let flat = 0;
    for (const { shape } of sections) {
      if (shape?.kind !== 'lattice' || shape.solid.by !== 'areas') throw new Error('no areas');
      round += shape.solid.round;
      flat += shape.solid.flat;
    }
    expect(round).toBeCloseTo(12 * FOOT ** 2, 10);
    expect(flat).toBeCloseTo(3 * FOOT ** 2, 10);
    // Faces of 28 ft from 24 to 12 in: the lowest 8 ft go from 24 to 24 − 12·8/28 = 20.5714 in, mean 22.2857 of 18.
    const lowest = sections[0]?.shape;
    if (lowest?.kind !== 'lattice' || lowest.solid.by !== 'areas') throw new Error('no areas');
    expect(lowest.solid.round).toBeCloseTo(((12 * 8 * 22.285714285714) / (28 * 18)) * FOOT ** 2, 9);
  });

  it('has no sliver at the foot where the height is a whole number of pieces', () => {
    expect(towerOf({ top: 40 }).sections).toHaveLength(4);
    expect(towerOf({ top: 60, base: 20 }).sections.map((section) => section.low / FOOT)).toEqual(
      heights([20, 30, 40, 50]),
    );
  });
});

describe('a block of concrete', () => {
  const block = { kind: 'block', length: 5, width: 5, depth: 4, soilBearing: 2000 };

  // 150 lb/ft³ by 0.45359237 kg/lb over 0.3048³ m³/ft³ is 2402.77 kg/m³.
  it.each([
    [150, 2402.77],
    ['150 pcf', 2402.77],
    ['2400 kg/m³', 2400],
    ['2.4 t/m3', 2400],
  ])('weighs what the plan says: %s', (concrete, expected) => {
    const { foundation } = towerOf({ ...bare, foundation: { ...block, concrete } });
    expect(foundation?.kind === 'block' && foundation.density).toBeCloseTo(expected, 2);
  });

  it('is left to common practice where it is not told', () => {
    expect(towerOf({ ...bare, foundation: block }).foundation).not.toHaveProperty('density');
  });
});

describe('sections as given', () => {
  it('stand on each other from the foot up, a count for so many alike', () => {
    const tower = towerOf({
      ...bare,
      sections: [
        { length: 8, name: 'base', shape: 'lattice', faces: 3, width: '24 to 18', members: 'round' },
        { length: 20, count: 2, make: 'standard', shape: 'pole', width: 8, sides: 12, uniform: true },
      ],
    });
    expect(tower.sectionsGiven).toBe(true);
    expect(tower.sections.map((section) => section.low / FOOT)).toEqual(heights([0, 8, 28]));
    expect(tower.sections.map((section) => section.high / FOOT)).toEqual(heights([8, 28, 48]));
    expect(tower.sections.map((section) => section.name)).toEqual(['base', 'section 2, 1 of 2', 'section 2, 2 of 2']);
    expect(tower.sections.map((section) => section.at)).toEqual([
      '/tower/sections/0',
      '/tower/sections/1',
      '/tower/sections/1',
    ]);
    expect(tower.sections.map((section) => section.make)).toEqual([undefined, 'standard', 'standard']);
    expect(tower.sections.map((section) => section.uniform)).toEqual([false, true, true]);
    expect(tower.sections[1]?.shape).toEqual({ kind: 'pole', width: heights([0.2032, 0.2032]), sides: 12 });
  });

  it('without a shape are not known to be uniform, unless the plan says so', () => {
    const tower = towerOf({ ...bare, sections: [{ length: 24 }, { length: 24, uniform: true }] });
    expect(tower.sections.map((section) => section.uniform)).toEqual([false, true]);
  });

  it('that telescope overlap evenly and still reach from foot to top', () => {
    // Three of 20 ft on 48 ft: 12 ft to spare, two overlaps of 6 ft.
    const tower = towerOf({ ...bare, telescopes: true, nested: 22, sections: [{ length: 20, count: 3 }] });
    expect(tower.sections.map((section) => section.low / FOOT)).toEqual(heights([0, 14, 28]));
    expect(tower.sections.map((section) => section.high / FOOT)).toEqual(heights([20, 34, 48]));
    expect(tower.nestedTop).toBeCloseTo(22 * FOOT, 10);
  });

  it('has its members in SI', () => {
    const tower = towerOf({ leg: '1 1/4 in', brace: '7/16 in', panel: 16, pattern: 'cross' });
    const shape = tower.sections[0]?.shape;
    expect(shape?.kind === 'lattice' && shape.solid).toEqual({
      by: 'members',
      leg: expect.closeTo(0.03175, 10),
      brace: expect.closeTo(0.0111125, 10),
      panel: expect.closeTo(0.4064, 10),
      pattern: 'cross',
    });
  });
});

describe('what holds a tower', () => {
  it('is read with its guys', () => {
    const held = [
      { height: 30, by: 'guys', count: 3, diameter: 0.1875, radius: 24 },
      { height: 46, by: 'guys' },
    ];
    const tower = towerOf({ support: 'guyed', held });
    expect(tower.heldGiven).toBe(true);
    expect(tower.held).toEqual([
      {
        height: expect.closeTo(9.144, 10),
        by: 'guys',
        guys: { count: 3, diameter: expect.closeTo(0.0047625, 10), radius: expect.closeTo(7.3152, 10) },
      },
      { height: expect.closeTo(14.0208, 10), by: 'guys' },
    ]);
  });

  it('is unsaid for a guyed tower without supports, and not for one that stands free', () => {
    expect(read(changed({ tower: { support: 'guyed' } })).input.notGiven).toContain('supports');
    expect(read(changed({ tower: { support: 'bracketed' } })).input.notGiven).toContain('supports');
    expect(read(changed({})).input.notGiven).not.toContain('supports');
  });

  it('is queried where the guys are half described', () => {
    const [query] = entryWarningsOf(
      changed({ tower: { support: 'guyed', supportedAt: [{ height: 30, by: 'guys', count: 3 }] } }),
    );
    expect(query).toMatchObject({ pointer: '#/tower/supportedAt/0', code: 'guys-incomplete' });
    expect(query?.says).toContain('diameter and radius');
  });

  it('is queried where guys are too few to hold it, or cross', () => {
    const guys = { by: 'guys', count: 3, diameter: 0.1875 };
    const warned = (supportedAt: Parameters<typeof changed>[0][string][]) =>
      entryWarningsOf(changed({ tower: { support: 'guyed', supportedAt } })).map(({ code, pointer }) => [
        code,
        pointer,
      ]);
    expect(warned([{ height: 30, ...guys, count: 2, radius: 20 }])).toEqual([
      ['guys-too-few', '#/tower/supportedAt/0/count'],
    ]);
    const [low, high] = [
      { height: 15, ...guys },
      { height: 30, ...guys },
    ];
    expect(
      warned([
        { ...low, radius: 25 },
        { ...high, radius: 20 },
      ]),
    ).toEqual([['guys-cross', '#/tower/supportedAt/0/radius']]);
    expect(
      warned([
        { ...low, radius: 20 },
        { ...high, radius: 20 },
      ]),
    ).toEqual([]);
  });
});

describe('the rest of a tower', () => {
  it('is read in SI', () => {
    const tower = towerOf({
      weight: 400,
      frequency: 3.2,
      damping: '2 %',
      asDrawn: true,
      used: false,
      hinge: { height: 4 },
    });
    expect(tower).toMatchObject({ frequency: 3.2, damping: 0.02, asDrawn: true, used: false });
    expect(tower.weight).toBeCloseTo(181.436948, 8);
    expect(tower.hingeHeight).toBeCloseTo(1.2192, 10);
  });

  it('is read whole', () => {
    const plan = changed({
      site: {
        ice: { thickness: 0.5, gust: 40 },
        climate: {
          basis: 'gust3-nominal',
          returnPeriods: [
            [10, 76],
            [50, 92],
          ],
        },
        distances: { powerLine: 80 },
      },
      tower: {
        hinge: { height: 4, raisedBy: { kind: 'winch', anchor: [-20, 0], attach: 20, workingLoad: 2000 } },
        foundation: { kind: 'block', length: 5, width: 5, depth: 4, soilBearing: 2000 },
      },
      rotator: { weight: 20 },
      mast: { outside: 2, length: 10, inside: 4, pieces: [{ outside: 2, wall: 0.25, from: 0, to: 10 }] },
      loads: [{ name: 'beam', above: 2, area: 5.5, icedArea: 8, ratedWind: { speed: 100 } }],
    });
    const reading = read(plan);
    expect(reading.entryWarnings).toEqual([]);
    const { kind, anchor, attach } = reading.input.station.tower.raisedBy ?? {};
    expect([kind, anchor?.[0], attach?.[0]]).toEqual(['winch', near(-20 * 0.3048), near(20 * 0.3048)]);
    expect(reading.document).toEqual({ format: 2, ...plan });
    expect(reading.input.station.tower.foundation).toMatchObject({ kind: 'block', length: 5 * 0.3048 });
    expect(reading.input.site.distances?.powerLine).toBeCloseTo(80 * 0.3048, 10);
    expect(reading.input.site.ice?.thickness).toBeCloseTo(0.0127, 12);
    expect(reading.input.site.ice?.gust).toBeCloseTo(17.8816, 10);
  });
});
