import { describe, expect, it } from 'vitest';
import { nearestName } from '../../src/plan/faults/nearest-name.ts';
import { fromFormText, readPlan } from '../../src/plan/index.ts';
import { changed, faultsOf, read, type Sample, tenNumbers } from './sample-plans.ts';

const pointersOf = (plan: unknown) => faultsOf(plan).map((fault) => `${fault.code} ${fault.pointer}`);

describe('a document that is no plan', () => {
  it.each([[undefined], [null], [5], ['plan'], [[]], [true]])('%j is refused', (document) => {
    expect(pointersOf(document)).toEqual(['wrong-type #']);
  });

  it('with nothing in it misses each field it cannot do without', () => {
    expect(pointersOf({})).toEqual(['missing #/units', 'missing #/method', 'missing #/site', 'missing #/tower']);
    expect(faultsOf({})[0]?.says).toBe('Units is missing: give us, si.');
  });

  it('misses what its parts cannot do without', () => {
    const plan = { units: 'us', method: 'asce7-16', site: {}, tower: {}, loads: [{}], cables: [{}], ratings: [{}] };
    expect(pointersOf(plan)).toEqual([
      'missing #/site/wind',
      'missing #/tower/support',
      'missing #/tower/top',
      'missing #/cables/0/count',
      'missing #/cables/0/diameter',
      'missing #/ratings/0/of',
      'missing #/site/exposure',
      'height-or-above #/loads/0',
      'one-of #/loads/0',
      'one-of #/ratings/0',
    ]);
  });
});

describe('an unknown field', () => {
  it('is refused with the nearest known one', () => {
    // That the exposure is missing follows from the slip of the pen.
    const [fault, ...others] = faultsOf(changed({ site: { exposrue: 'C', exposure: null } }));
    expect(others).toEqual([]);
    expect(fault).toMatchObject({ pointer: '#/site/exposrue', code: 'unknown-field', given: 'exposrue' });
    expect(fault?.says).toBe('Site has no field "exposrue". Did you mean "exposure"?');
  });

  it('is refused in every part, however deep', () => {
    const plan = changed({
      titel: 'x',
      site: { wind: { speed: 105, bases: 'gust3-strength' } },
      tower: { hinge: { height: 4, hight: 3 } },
      mast: { outside: 2, length: 9, wal: 1 },
      loads: [{ name: 'beam', above: 2, area: 5, arae: 6 }],
      ratings: [{ of: 'tower', area: 9, withCables: { count: 1, diameter: 1, diametre: 2 } }],
      wanted: { margins: 0.1 },
      titleBlock: { adress: 'x' },
    });
    const said = Object.fromEntries(faultsOf(plan).map(({ pointer, says }) => [pointer, says]));
    expect(said['#/titel']).toBe('The plan has no field "titel". Did you mean "title"?');
    expect(said['#/site/wind/bases']).toContain('"basis"');
    expect(said['#/tower/hinge/hight']).toContain('"height"');
    expect(said['#/mast/wal']).toContain('"wall"');
    expect(said['#/loads/0/arae']).toBe('beam has no field "arae". Did you mean "area"?');
    expect(said['#/ratings/0/withCables/diametre']).toContain('"diameter"');
    expect(said['#/wanted/margins']).toContain('"margin"');
    expect(said['#/titleBlock/adress']).toContain('"address"');
    expect(Object.keys(said)).toHaveLength(8);
  });

  it('far from every known one lists what there is', () => {
    expect(faultsOf(changed({ wanted: { quux: 1 } }))[0]?.says).toBe(
      'Wanted has no field "quux". It may have: margin, forecastError, years, source, note.',
    );
  });

  it('may be a source or a note anywhere, and nothing is lost of them', () => {
    const remark = { source: "maker's sheet 12, 2009", note: 'from the old owner' };
    const plan = changed({
      ...remark,
      site: { ...remark, wind: { speed: 105, ...remark } },
      tower: remark,
      mast: { outside: 2, length: 9, inside: 3, ...remark },
      loads: [{ name: 'beam', above: 2, area: 5, ...remark }],
      cables: [{ count: 1, diameter: 1, ...remark }],
      ratings: [{ of: 'tower', area: 9, ...remark, wind: { speed: 70, ...remark } }],
    });
    expect(read(plan).document).toEqual({ format: 2, ...plan });
  });

  it('has its pointer escaped', () => {
    expect(pointersOf(changed({ 'a/b~c': 1 }))).toEqual(['unknown-field #/a~1b~0c']);
  });
});

describe('names of the prototype chain', () => {
  it.each(['__proto__', 'constructor', 'toString', 'prototype'])(
    '%s is an unknown field and changes nothing',
    (name) => {
      for (const path of ['', 'site', 'tower', 'wanted']) {
        const inner = `{"${name}": {"polluted": true, "units": "si"}}`;
        const plan = tenNumbers();
        const poison = JSON.parse(inner) as Sample;
        const target = path === '' ? plan : ((plan[path] ?? {}) as Sample);
        if (path !== '') plan[path] = target;
        for (const key of Object.keys(poison)) {
          Object.defineProperty(target, key, {
            value: poison[key],
            enumerable: true,
            configurable: true,
            writable: true,
          });
        }
        expect(pointersOf(plan)).toEqual([`unknown-field #${path === '' ? '' : `/${path}`}/${name}`]);
      }
      expect(({} as { polluted?: boolean }).polluted).toBeUndefined();
      expect(Object.getPrototypeOf(tenNumbers())).toBe(Object.prototype);
    },
  );

  it('are refused as choices and names of units', () => {
    expect(pointersOf(changed({ method: 'constructor' }))).toEqual(['not-a-choice #/method']);
    expect(pointersOf(changed({ units: '__proto__' }))).toEqual(['not-a-choice #/units']);
    expect(read(changed({ loads: [{ name: '__proto__', above: 2, area: 3 }] })).input.station.loads[0]?.name).toBe(
      '__proto__',
    );
  });
});

describe('the ground upwind', () => {
  const faults = (plan: Sample) => faultsOf(changed(plan)).map(({ code, pointer }) => `${code} ${pointer}`);

  it('is named as the method names it, and by nothing else', () => {
    const site = { wind: 30 };
    const european = { method: 'en1991-1-4' };
    expect(faults({ ...european, site: { ...site, exposure: 'C' } })).toEqual([
      'goes-with #/site/exposure',
      'missing #/site/terrain',
    ]);
    expect(faults({ site: { terrain: 'II' } })).toEqual(['goes-with #/site/terrain']);
    const ratings = (wind: Sample) => ({ ratings: [{ of: 'tower', area: 9, wind: { speed: 70, ...wind } }] });
    expect(faults(ratings({ method: 'en1991-1-4', exposure: 'C' }))).toEqual(['goes-with #/ratings/0/wind/exposure']);
    expect(faults(ratings({ method: 'tia222-g', terrain: 'II' }))).toEqual(['goes-with #/ratings/0/wind/terrain']);
    expect(faults(ratings({ exposure: 'C', terrain: 'II' }))).toEqual(['one-of #/ratings/0/wind/terrain']);
    expect(read(changed(ratings({ method: 'en1991-1-4', terrain: 'II' }))).input.ratings[0]?.wind?.exposure).toBe('II');
  });

  it('comes with a return period under the European method only', () => {
    const plan = changed({ site: { wind: { speed: 105, years: 100 } } });
    expect(faultsOf(plan).map(({ code, pointer }) => `${code} ${pointer}`)).toEqual(['goes-with #/site/wind/years']);
  });
});

describe('the wrong form', () => {
  it('is told with what was given and what is allowed', () => {
    const of = (plan: unknown) => faultsOf(plan)[0];
    expect(of(changed({ tower: { top: true } }))).toEqual({
      pointer: '#/tower/top',
      code: 'wrong-type',
      given: 'true',
      allowed: 'a number, or text with its unit',
      says: 'Tower top: true given, a number, or text with its unit allowed.',
    });
    expect(of(changed({ tower: { support: 'gyued' } }))?.says).toBe(
      'Tower support: "gyued" given, free, guyed, bracketed, roof allowed. Did you mean guyed?',
    );
    expect(of(changed({ tower: { faces: 5 } }))).toMatchObject({ code: 'wrong-type', allowed: '3, or 4' });
    expect(of(changed({ cables: [{ count: 1.5, diameter: 1 }] }))).toMatchObject({ allowed: 'a whole number' });
    expect(of(changed({ cables: [{ count: 0, diameter: 1 }] }))).toMatchObject({
      code: 'out-of-bounds',
      allowed: 'at least 1',
    });
    expect(of(changed({ loads: [{ name: '', above: 2, area: 3 }] }))).toMatchObject({
      pointer: '#/loads/0/name',
      code: 'missing',
    });
    expect(of(changed({ loads: [{ name: 'a', above: [1, 2, 3], area: 3 }] }))).toMatchObject({
      pointer: '#/loads/0/above',
    });
    expect(of(changed({ mast: { outside: 2, length: 9, bearing: true } }))).toMatchObject({
      pointer: '#/mast/bearing',
    });
    expect(of(changed({ format: 0 }))).toMatchObject({ pointer: '#/format', allowed: '2' });
  });

  it('is a number that is not finite', () => {
    const plan = JSON.parse(JSON.stringify(tenNumbers()).replace('105', '1e999'));
    expect(faultsOf(plan)[0]).toMatchObject({ pointer: '#/site/wind', given: 'Infinity' });
    expect(pointersOf({ ...tenNumbers(), site: { wind: Number.NaN, exposure: 'C' } })).toEqual([
      'wrong-type #/site/wind',
    ]);
  });
});

describe('limits', () => {
  const rows = (count: number, row: (index: number) => Sample) =>
    Array.from({ length: count }, (_, index) => row(index));
  const loads = (count: number) => rows(count, (index) => ({ name: `load ${index}`, above: 2, area: 0.1 }));

  it('are 300 loads, 60 sections, 40 ratings, texts of 200', () => {
    const sections = rows(60, () => ({ length: 0.8 }));
    const bare = { support: 'free', top: 48 };
    const title = 'x'.repeat(200);
    const ratings = rows(40, () => ({ of: 'tower', area: 9 }));
    expect(read({ ...tenNumbers(), title, loads: loads(300), tower: { ...bare, sections }, ratings }).ok).toBe(true);
    const over = {
      ...tenNumbers(),
      title: `${title}x`,
      loads: loads(301),
      ratings: [...ratings, { of: 'tower', area: 9 }],
    };
    const plan = { ...over, tower: { ...bare, sections: [...sections, { length: 0.8 }] } };
    const faults = faultsOf(plan);
    expect(faults.map(({ code, pointer }) => `${code} ${pointer}`)).toEqual([
      'too-long #/title',
      'too-many #/tower/sections',
      'too-many #/loads',
      'too-many #/ratings',
    ]);
    expect(faults.map(({ allowed }) => allowed)).toEqual([
      'at most 200 characters',
      'at most 60',
      'at most 300',
      'at most 40',
    ]);
  });

  it('do not hide what else is wrong in a list that is too long', () => {
    const plan = {
      ...tenNumbers(),
      loads: [...loads(299), { name: 'x', above: 2, aera: 3 }, { name: 'y', above: 2, area: 3 }],
    };
    expect(pointersOf(plan)).toEqual(['too-many #/loads', 'unknown-field #/loads/299/aera']);
  });

  it('hold for a document nested a hundred thousand deep', () => {
    const deep = JSON.parse(`${'['.repeat(100_000)}${']'.repeat(100_000)}`);
    expect(pointersOf(changed({ extra: deep, tower: { top: deep } }))).toEqual([
      'wrong-type #/tower/top',
      'unknown-field #/extra',
    ]);
    expect(pointersOf(fromFormText(changed({ extra: deep })))).toEqual(['unknown-field #/extra']);
  });

  it('hold for a flood of unknown fields, in little time', () => {
    const flood = Object.fromEntries(Array.from({ length: 20_000 }, (_, index) => [`field${index}`, 1]));
    const before = performance.now();
    const faults = faultsOf({ ...tenNumbers(), ...flood });
    expect(faults.length).toBeGreaterThan(100);
    expect(faults.length).toBeLessThan(1000);
    expect(performance.now() - before).toBeLessThan(5000);
  });
});

describe('all faults at once', () => {
  it('of form and of sense, each once, and none that follows from another', () => {
    const plan = {
      units: 'us',
      method: 'asce7-15',
      site: { wind: 1200, exposure: 'E' },
      tower: { support: 'free', top: 48, sections: [{ length: 10 }, { length: 'long' }], foo: 1 },
      mast: { outside: 2, length: 10, wall: 1.5, yield: true },
      loads: [
        { name: 'a', above: 2, aera: 5 },
        { name: 'a', height: [50, 40], area: 3 },
        5,
        { name: 'b', above: 2, shape: 'dich', diameter: 30 },
      ],
      ratings: [
        {
          of: 'tower',
          areasBySpeed: [
            [70, 12],
            [70, 11],
          ],
        },
      ],
    };
    expect(pointersOf(plan).toSorted()).toEqual(
      [
        'not-a-choice #/method',
        'out-of-bounds #/site/wind',
        'not-a-choice #/site/exposure',
        'unreadable #/tower/sections/1/length',
        'unknown-field #/tower/foo',
        'wall-too-thick #/mast/wall',
        'wrong-type #/mast/yield',
        'unknown-field #/loads/0/aera',
        'name-not-unique #/loads/1/name',
        'low-above-high #/loads/1/height',
        'wrong-type #/loads/2',
        'not-a-choice #/loads/3/shape',
        'speed-twice #/ratings/0/areasBySpeed/1',
      ].toSorted(),
    );
  });

  it('leaves the document it was given alone', () => {
    const plan = { ...tenNumbers(), units: 5, extra: [1, 2] };
    const before = JSON.stringify(plan);
    readPlan(plan);
    expect(JSON.stringify(plan)).toBe(before);
  });
});

describe('the nearest name', () => {
  it.each([
    ['exposrue', 'exposure'],
    ['Wind', 'wind'],
    ['ground_elevation', 'groundElevation'],
    ['topo', 'topographicFactor'],
  ])('to %s is %s', (given, known) => {
    expect(nearestName(given, ['wind', 'exposure', 'groundElevation', 'topographicFactor'])).toBe(known);
  });

  it('is none where nothing is near', () => {
    expect(nearestName('qqqqq', ['wind', 'exposure'])).toBeUndefined();
  });
});
