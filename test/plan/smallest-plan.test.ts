import { describe, expect, it } from 'vitest';
import { readPlan } from '../../src/plan/index.ts';
import { changed, read, tenNumbers } from './sample-plans.ts';

/** Every SI figure here is worked out by hand: 1 ft = 0.3048 m, 1 in = 0.0254 m, 1 mph = 0.44704 m/s. */
describe('the plan of ten numbers', () => {
  const { input, document, entryWarnings } = read(tenNumbers());
  const { station } = input;

  it('has its site in SI, and nothing it did not say', () => {
    expect(input.site.speed).toBeCloseTo(46.9392, 10);
    expect(input.site).toEqual({ speed: input.site.speed, exposure: 'C', groundElevation: 0 });
    expect(input.method).toBe('asce7-16');
  });

  it('has its tower in pieces of ten feet from the top, the short one at the foot', () => {
    const { tower } = station;
    expect(tower.top).toBeCloseTo(14.6304, 10);
    expect(tower.sections.map((section) => section.low)).toEqual([0, 2.4384, 5.4864, 8.5344, 11.5824].map(near));
    expect(tower.sections.map((section) => section.high)).toEqual([2.4384, 5.4864, 8.5344, 11.5824, 14.6304].map(near));
    for (const section of tower.sections) {
      expect(section.shape).toEqual({
        kind: 'lattice',
        faces: 3,
        width: [near(0.4572), near(0.4572)],
        members: 'round',
        solid: { by: 'unknown' },
      });
      expect(section.uniform).toBe(true);
      expect(section.at).toBe('/tower');
    }
    expect(tower).toMatchObject({
      support: 'free',
      foot: 0,
      sectionsGiven: false,
      telescopes: false,
      held: [],
      heldGiven: false,
      asDrawn: false,
      used: true,
    });
    expect(Object.keys(tower)).not.toContain('weight');
  });

  it('has its load two feet above the top, on the tower as there is no mast', () => {
    expect(station.loads).toEqual([
      {
        name: 'beam',
        at: '/loads/0',
        low: near(15.24),
        high: near(15.24),
        shape: {
          kind: 'stated',
          front: near(0.51096672),
          side: near(0.51096672),
          areaKind: 'unknown',
          slenderFlats: false,
        },
        count: 1,
        turns: false,
        on: 'tower',
        offset: 0,
      },
    ]);
    expect('mast' in station).toBe(false);
  });

  it('has its lines from foot to top, singly', () => {
    expect(station.cables).toEqual([
      {
        name: 'cable run 1',
        at: '/cables/0',
        count: 3,
        diameter: near(0.010287),
        low: 0,
        high: near(14.6304),
        laid: 'single',
      },
    ]);
  });

  it('has its rating with everything unsaid absent', () => {
    expect(input.ratings).toEqual([
      {
        at: '/ratings/0',
        of: 'tower',
        claim: { kind: 'area', areaKind: 'unknown', rows: [{ area: near(1.67225472) }], also: [] },
        wind: { speed: near(44.704), method: 'tia222-g' },
      },
    ]);
  });

  it('wants what everybody wants unless told otherwise', () => {
    expect(input.wanted).toEqual({ margin: 0.1, forecast: 0.1, years: 30 });
  });

  it('tells what it leaves unsaid', () => {
    expect(input.notGiven.toSorted()).toEqual(
      ['hill', 'ice', 'mast', 'risk-category', 'speed-basis', 'weights'].toSorted(),
    );
    expect(entryWarnings).toEqual([]);
  });

  it('is kept as it was written, with its format', () => {
    expect(document).toEqual({ format: 2, ...tenNumbers() });
  });
});

describe('the same plan in other words', () => {
  const plain = read(tenNumbers()).input;

  it('reads alike from texts with units', () => {
    const written = changed({
      site: { wind: '105 mph' },
      tower: { top: '48 ft', width: `1' 6"` },
      loads: [{ name: 'beam', above: '24 in', area: '5.5 sq ft' }],
      cables: [{ count: 3, diameter: '0,405 in' }],
      ratings: [{ of: 'tower', area: '18 ft²', wind: { speed: '100 mph', method: 'tia222-g' } }],
    });
    expect(read(written).input).toEqual(nearAll(plain));
  });

  it('reads alike in metres', () => {
    const metric = changed({
      units: 'si',
      site: { wind: 46.9392 },
      tower: { top: 14.6304, width: 457.2 },
      loads: [{ name: 'beam', above: 0.6096, area: 0.51096672 }],
      cables: [{ count: 3, diameter: 10.287 }],
      ratings: [{ of: 'tower', area: 1.67225472, wind: { speed: 44.704, method: 'tia222-g' } }],
    });
    const { input } = read(metric);
    const { sections: _, ...tower } = input.station.tower;
    const { sections: __, ...same } = plain.station.tower;
    expect(tower).toEqual(nearAll(same));
    expect(input.station.units).toBe('si');
    expect({ ...input, station: { ...input.station, units: 'us', tower: same } }).toEqual(
      nearAll({ ...plain, station: { ...plain.station, tower: same } }),
    );
  });

  it('has pieces of ten feet in metres too', () => {
    const { sections } = read(changed({ units: 'si', tower: { top: 14.6304 }, site: { wind: 46.9 } })).input.station
      .tower;
    expect(sections.map((section) => section.high - section.low)).toEqual(
      [2.4384, 3.048, 3.048, 3.048, 3.048].map(near),
    );
  });

  it('reads a comma as decimal sign where told', () => {
    const written = changed({ loads: [{ name: 'beam', above: '2,000', area: '5,500' }] });
    expect(read(written, { decimal: 'comma' }).input).toEqual(nearAll(plain));
  });
});

function near(value: number): number {
  return expect.closeTo(value, 10) as number;
}

function nearAll<T>(value: T): T {
  if (typeof value === 'number') return near(value) as T;
  if (Array.isArray(value)) return value.map(nearAll) as T;
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, member]) => [key, nearAll(member)])) as T;
}

describe('a load without a name', () => {
  const plan = (loads: readonly object[]) => ({
    units: 'us',
    method: 'asce7-16',
    site: { wind: 105, exposure: 'C' },
    tower: { support: 'free', top: 48 },
    loads,
    cables: [],
  });

  it('is called by its place, and counts', () => {
    const reading = readPlan(
      plan([
        { name: 'beam', above: 2, area: 5 },
        { height: 40, area: 2 },
      ]),
    );
    expect(reading.ok && reading.input.station.loads.map(({ name }) => name)).toEqual(['beam', 'load 2']);
  });

  it('shares its name with no other', () => {
    const reading = readPlan(
      plan([
        { name: 'Load 2', above: 2, area: 5 },
        { height: 40, area: 2 },
      ]),
    );
    expect(reading.ok ? [] : reading.faults).toMatchObject([{ pointer: '#/loads/1/name', code: 'name-not-unique' }]);
  });
});
