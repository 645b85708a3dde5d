import { describe, expect, it } from 'vitest';
import { assessed, type Document } from './any-plan.ts';

/*
 * Under ASCE 7 a structure that swings less than once a second is flexible. Of which nobody tells how often it swings, that is
 * read by its members, else by its height, width and weight.
 */
const FOOT = 0.3048;
const plan = (tower: Document, more: Document = {}): Document => ({
  units: 'us',
  method: 'asce7-16',
  site: { wind: 105, exposure: 'C', riskCategory: 'II' },
  tower: { support: 'free', ...tower },
  loads: [{ name: 'beam', on: 'tower', above: 1, area: 4, areaKind: 'effective', weight: 40 }],
  cables: [],
  ratings: [
    {
      of: 'tower',
      top: tower['top'],
      area: 9,
      areaKind: 'effective',
      wind: { speed: 100, method: 'tia222-g', exposure: 'C', riskCategory: 'II' },
    },
  ],
  ...more,
});
const pole = (top: number, more: Document = {}) => ({ top, shape: 'pole', width: 12, sides: 0, ...more });
const lattice = (top: number, width: number | readonly number[], more: Document = {}) => ({
  top,
  shape: 'lattice',
  faces: 3,
  members: 'round',
  leg: 1.25,
  brace: 0.4,
  panel: 16,
  pattern: 'zigzag',
  width,
  ...more,
});
const ends = (document: Document) =>
  assessed(document)
    .assumptions.find(({ of }) => of === 'frequency')
    ?.readings.map(({ value }) => value)
    .filter((_, number) => number !== 1);

describe('a frequency that is not given', () => {
  it('of a pole whose wall is not known goes by its height, and by its width where that is less', () => {
    expect(ends(plan(pole(40)))).toEqual([0.5, 1]);
    expect(ends(plan(pole(9 / FOOT)))).toEqual([expect.closeTo(0.75, 9), 1]);
    const low = ends(plan(pole(19, { width: 6 })))?.[0];
    expect(low).toBeLessThan(1);
    expect(low).toBeGreaterThan(0.96);
    // 441·b/h²: 4 in at 40 ft.
    expect(ends(plan(pole(40, { width: 4 })))?.[0]).toBeCloseTo((441 * 4 * 0.0254) / (40 * FOOT) ** 2, 9);
  });

  it('of a lattice goes by its width, and only what is under 1 Hz so is flexible', () => {
    expect(ends(plan(lattice(48, 18)))?.[0]).toBeCloseTo((416 * 18 * 0.0254) / (48 * FOOT) ** 2, 9);
    expect(ends(plan(lattice(40, 18)))).toBeUndefined();
    // A heavy one with little on it is stiff.
    expect(ends(plan(lattice(48, 18, { weight: 600 })))).toBeUndefined();
    expect(ends(plan(lattice(48, 18, { weight: 60 })))?.[0]).toBeLessThan(1);
  });

  it('of an extended crank-up goes by its height, of one nested as of a lattice', () => {
    const sections = [18, 15, 12].map((width) => {
      const { top: _, ...section } = lattice(0, width);
      return { ...section, length: 18, uniform: true };
    });
    const crankUp = { top: 48, telescopes: true, nested: 20, sections };
    expect(ends(plan(crankUp))?.[0]).toBeCloseTo(0.5, 9);
  });

  it('is told by the members where they are known: under 1 Hz both ends, above it nothing of a pole', () => {
    const limp = ends(plan(pole(60, { width: 8, wall: 0.2, material: 'steel' })));
    expect(limp?.[0]).toBeLessThan(Number(limp?.[1]));
    expect(limp?.[1]).toBeLessThan(1);
    const stiff = ends(plan(pole(30, { width: 20, wall: 0.3, material: 'steel' })));
    expect(stiff?.[0]).toBeLessThan(1);
    expect(stiff?.[0]).toBeGreaterThan(0.999999);
    expect(stiff?.[1]).toBe(1);
  });

  it('is not asked where it is given, does not count, is held, or the tower is stout', () => {
    expect(ends(plan(pole(40, { frequency: 0.9 })))).toBeUndefined();
    expect(ends({ ...plan(pole(40)), method: 'tia222-h' })).toBeUndefined();
    expect(ends(plan(lattice(80, 12, { support: 'guyed' })))).toBeUndefined();
    expect(ends(plan(pole(15)))).toBeUndefined();
    expect(ends(plan(pole(16, { width: 8 })))).toBeDefined();
    expect(ends(plan(lattice(48, [150, 144])))).toBeUndefined();
  });

  it('leaves the damping of a pole to be asked too', () => {
    const of = (tower: Document) => assessed(plan(tower)).assumptions.map((each) => each.of);
    expect(of(pole(40))).toEqual(['frequency', 'damping']);
    expect(of(pole(40, { damping: 0.01 }))).toEqual(['frequency']);
  });
});

describe('a pole of 40 ft whose frequency is not given', () => {
  const loads = [{ name: 'beam', on: 'tower', above: 1, area: 8, areaKind: 'effective', weight: 40 }];
  const told = (frequency: number) =>
    assessed(plan(pole(40, { width: 8, damping: 0.01, frequency }), { loads })).checks[0];
  const tower = assessed(plan(pole(40, { width: 8, damping: 0.01 }), { loads })).checks[0];

  it('is open between swinging at 0.5 Hz and not swaying, and never within', () => {
    expect(told(2)?.verdict).toBe('within');
    expect(told(0.5)?.verdict).toBe('over');
    expect(tower?.verdict).toBe('open');
    expect(tower?.because).toBe('not-given');
    expect(tower?.needs).toEqual(['/tower/frequency']);
    expect(tower?.result?.ratio).toBeCloseTo(told(0.5)?.result?.ratio ?? Number.NaN, 9);
    expect(tower?.result?.ratioRange[0]).toBeCloseTo(told(2)?.result?.ratio ?? Number.NaN, 9);
  });

  it('counts the same frequency on both sides where it is rated by ASCE 7', () => {
    const wind = { speed: 105, basis: 'gust3-strength', method: 'asce7-16', exposure: 'C', riskCategory: 'II' };
    const rating = { of: 'tower', top: 40, area: 4, areaKind: 'effective', above: 1, wind };
    const own = plan(pole(40, { width: 8, damping: 0.01 }), { ratings: [rating] });
    const [check] = assessed({
      ...own,
      loads: [{ name: 'rated', on: 'tower', area: 4, areaKind: 'effective', above: 1, weight: 0 }],
    }).checks;
    expect(check?.result?.ratio).toBeGreaterThan(0.995);
    expect(check?.result?.ratio).toBeLessThan(1 + 1e-6);
  });
});

describe('the tubes of a beam on a tower that sways', () => {
  it('are compared in still air too', () => {
    const plan = {
      units: 'us',
      method: 'asce7-16',
      site: { wind: 100, exposure: 'C' },
      tower: { support: 'free', top: 40, shape: 'pole', width: 12, sides: 0, frequency: 0.6, damping: 0.01 },
      mast: { outside: 2, wall: 0.25, length: 10, inside: 4, yield: 36, bearing: 40 },
      loads: [
        {
          name: 'beam',
          height: 44,
          offset: 0,
          shape: 'tubes',
          tubes: [{ along: 'element', count: 3, material: 'aluminium', yield: 35, taper: [[0.75, 72, 0.049]] }],
        },
      ],
      cables: [],
      ratings: [],
    };
    const elements = assessed(plan).checks.find(({ kind }) => kind === 'elements');
    expect(elements?.result?.holdsTo?.gust).toBeGreaterThan(0);
  });
});
