import { describe, expect, it } from 'vitest';
import { readPlan, readStock, withUnits } from '../../src/plan/index.ts';
import { demoPlans } from '../margins/demo-plan.ts';

const BEAM = { name: 'beam', area: 5.5, source: 'sheet 3' };
const TOWER = { support: 'free', top: 40, shape: 'lattice', faces: 3, width: 12, members: 'round' };
const MAST = { outside: 2, length: 10, wall: 0.25 };

function faultsOf(document: unknown): string[] {
  const reading = readStock(document);
  return reading.ok ? [] : reading.faults.map(({ pointer, code }) => `${pointer} ${code}`);
}

function entriesOf(document: unknown) {
  const reading = readStock(document);
  if (!reading.ok) throw new Error(JSON.stringify(reading.faults));
  return reading.entries;
}

describe('a file of stock', () => {
  it('offers each load by itself, without a height of its own', () => {
    const panel = { name: 'panel', shape: 'plate', wide: 12, tall: 24 };
    const entries = entriesOf({ units: 'us', source: 'sheet 9', loads: [BEAM, panel] });
    expect(entries).toEqual([
      { kind: 'load', title: 'beam', units: 'us', source: 'sheet 3', fragment: { loads: [BEAM] } },
      {
        kind: 'load',
        title: 'panel',
        units: 'us',
        source: 'sheet 9',
        fragment: { loads: [{ ...panel, source: 'sheet 9' }] },
      },
    ]);
  });

  it('offers a tower with its mast, lines and ratings, and its loads apart', () => {
    const ratings = [{ of: 'tower', area: 10, wind: 70, source: 'plate' }];
    const cables = [{ count: 2, diameter: 0.4 }];
    const document = { units: 'us', title: 'Trailer', source: 'tape', tower: TOWER, mast: MAST, cables, ratings };
    const [tower, load, ...none] = entriesOf({ ...document, loads: [BEAM] });
    expect(none).toEqual([]);
    expect(tower).toEqual({
      kind: 'tower',
      title: 'Trailer',
      units: 'us',
      source: 'tape',
      fragment: {
        tower: { ...TOWER, source: 'tape' },
        mast: { ...MAST, source: 'tape' },
        cables: [{ count: 2, diameter: 0.4, source: 'tape' }],
        ratings,
      },
    });
    expect(load?.kind).toBe('load');
  });

  it('offers a mast, a rotator or a line alone', () => {
    const source = 'tape';
    expect(entriesOf({ units: 'us', title: 'Spare mast', source, mast: MAST })[0]?.kind).toBe('mast');
    expect(entriesOf({ units: 'us', title: 'Rotator', source, rotator: { weight: 20 } })[0]?.kind).toBe('rotator');
    const [line] = entriesOf({ units: 'us', source, cables: [{ name: 'reel', count: 1, diameter: 0.5 }] });
    expect(line).toMatchObject({ kind: 'cable', title: 'reel' });
  });

  it('makes a part that a plan takes as it is', () => {
    const [entry] = entriesOf({ units: 'us', title: 'Trailer', source: 'tape', tower: TOWER, mast: MAST });
    const plan = { units: 'us', method: 'asce7-16', site: { wind: 100, exposure: 'C' }, ...entry?.fragment };
    expect(readPlan(plan).ok).toBe(true);
  });

  it.each([
    ['no object', [BEAM], ['# wrong-type']],
    ['nothing in it', { units: 'us' }, ['# missing']],
    ['no units', { loads: [BEAM] }, ['#/units missing']],
    ['a site', { units: 'us', loads: [BEAM], site: { wind: 90 } }, ['#/site unknown-field']],
    ['a word wrong', { units: 'us', laods: [BEAM] }, ['#/laods unknown-field', '# missing']],
    ['no source', { units: 'us', loads: [{ ...BEAM, source: ' ' }] }, ['#/loads/0/source missing']],
    ['no title', { units: 'us', source: 'x', tower: TOWER }, ['#/title missing']],
    ['ratings alone', { units: 'us', source: 'x', ratings: [{ of: 'tower', area: 9 }] }, ['#/ratings goes-with']],
    ['a bad figure', { units: 'us', loads: [{ ...BEAM, area: '5 mph' }] }, ['#/loads/0/area unknown-unit']],
    ['a word too much', { units: 'us', loads: [{ ...BEAM, colour: 'red' }] }, ['#/loads/0/colour unknown-field']],
  ])('with %s is refused where it is wrong', (_, document, faults) => {
    expect(faultsOf(document)).toEqual(faults);
  });

  it('says all at once, in words', () => {
    const reading = readStock({ units: 'us', laods: [], tower: TOWER, loads: [{ name: 'beam', area: -1 }] });
    const faults = reading.ok ? [] : reading.faults;
    expect(faults.map(({ pointer }) => pointer).sort()).toEqual([
      '#/laods',
      '#/loads/0/area',
      '#/loads/0/source',
      '#/title',
      '#/tower/source',
    ]);
    expect(faults[0]?.says).toContain('did you mean "loads"?');
    for (const { says } of faults) expect(says.length).toBeGreaterThan(20);
  });

  it('is not led astray by names of the prototype chain', () => {
    const document = JSON.parse('{"units":"us","loads":[{"name":"constructor","area":5,"source":"x"}],"toString":1}');
    expect(faultsOf(document)).toEqual(['#/toString unknown-field']);
  });
});

/** Every number in what a plan means, by its place. */
function numbers(value: unknown, at = ''): [string, number][] {
  if (typeof value === 'number') return [[at, value]];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, member]) => numbers(member, `${at}/${key}`));
}

describe('units written behind plain numbers', () => {
  it('stand where a plan has quantities, and nowhere else', () => {
    const part = {
      title: '5',
      tower: { ...TOWER, sections: [{ length: 10, count: 4 }], hinge: { height: '8', raisedBy: { anchor: [-2, 10] } } },
      mast: { outside: 2, bearing: false },
      loads: [
        { name: '7', height: [56, '65'], heading: 210, count: 2 },
        {
          name: 'b',
          shape: 'tubes',
          tubes: [
            {
              along: 'element',
              count: 4,
              taper: [
                [1, 48],
                ['3/4', '48 mm', 0.1],
              ],
            },
          ],
        },
      ],
      ratings: [
        { of: 'tower', areasBySpeed: [[80, 12]], coefficient: 1.2, wind: 90 },
        { of: 'tower', area: 9, wind: { speed: 70, year: 1999 } },
      ],
      wanted: { margin: 0.2, years: 30 },
    };
    expect(withUnits(part, 'us')).toEqual({
      title: '5',
      tower: {
        ...TOWER,
        top: '40 ft',
        width: '12 in',
        sections: [{ length: '10 ft', count: 4 }],
        hinge: { height: '8 ft', raisedBy: { anchor: ['-2 ft', '10 ft'] } },
      },
      mast: { outside: '2 in', bearing: false },
      loads: [
        { name: '7', height: ['56 ft', '65 ft'], heading: 210, count: 2 },
        {
          name: 'b',
          shape: 'tubes',
          tubes: [
            {
              along: 'element',
              count: 4,
              taper: [
                ['1 in', '48 in'],
                ['3/4 in', '48 mm', '0.1 in'],
              ],
            },
          ],
        },
      ],
      ratings: [
        { of: 'tower', areasBySpeed: [['80 mph', '12 ft²']], coefficient: 1.2, wind: '90 mph' },
        { of: 'tower', area: '9 ft²', wind: { speed: '70 mph', year: 1999 } },
      ],
      wanted: { margin: 0.2, years: 30 },
    });
    expect(withUnits({ tower: { top: 12 } }, 'si')).toEqual({ tower: { top: '12 m' } });
  });

  it.each(demoPlans().map(({ id, plan }) => [id, plan] as const))(
    'leave the meaning of %s as it was, in a plan of the other units',
    (_, plan) => {
      const { units, ...rest } = plan as { units: 'us' | 'si' };
      const other = { ...withUnits(rest, units), units: units === 'us' ? 'si' : 'us' };
      const [before, after] = [readPlan(plan), readPlan(other)];
      if (!before.ok || !after.ok) throw new Error(JSON.stringify(after));
      // A tower without sections is cut by the plan's own round lengths, 10 ft or 3 m.
      const cut = !('sections' in (plan['tower'] as object));
      const kept = ([at]: [string, number]) => !(cut && at.startsWith('/station/tower/sections/'));
      const wanted = numbers(before.input).filter(kept);
      const got = new Map(numbers(after.input).filter(kept));
      expect(wanted.length).toBeGreaterThan(10);
      expect([...got.keys()]).toEqual(wanted.map(([at]) => at));
      for (const [at, value] of wanted) expect(got.get(at), at).toBeCloseTo(value, 9);
    },
  );
});
