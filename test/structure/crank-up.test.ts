import { describe, expect, it } from 'vitest';
import { GRAVITY, Refusal, Trace } from '../../src/foundation/index.ts';
import { hoistPull, nestedPlace, nestedSections, nestedStation, type Section } from '../../src/structure/index.ts';
import fc from '../fast-check.ts';
import { checkInputOf, type Document } from '../margins/any-plan.ts';

const section = (low: number, high: number): Section => ({ name: '', at: '', low, high, uniform: true });
const three = [section(0, 6), section(5, 11), section(10, 16)];

describe('the hoist of a crank-up', () => {
  it('pulls once the second section and twice the third with its loads', () => {
    expect(hoistPull([120, 80, 60 + 45])).toBeCloseTo((80 + 2 * 105) * 9.80665, 9);
    const trace = new Trace();
    hoistPull([120, 80, 105], trace);
    expect(trace.steps.map(({ formula }) => formula.id)).toEqual(['hoist-pull-of-crank-up']);
  });

  it('does the work of lifting every section, metre of line for metre of the second', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 1, max: 300, noNaN: true }), { minLength: 2, maxLength: 6 }), (masses) => {
        const sections = masses.map((_, index) => section(5 * index, 5 * index + 6));
        const top = (sections.at(-1) as Section).high;
        const nested = nestedSections(sections, top - 4 * (masses.length - 1));
        const lifted = masses.reduce((sum, mass, index) => {
          const rise = (sections[index] as Section).low - (nested.sections[index] as Section).low;
          return sum + mass * GRAVITY * rise;
        }, 0);
        // The line takes in what the second section rises against the first.
        expect(Math.abs((hoistPull(masses) * 4) / lifted - 1)).toBeLessThan(1e-12);
      }),
    );
  });

  it('is refused for one section or a weight that is none', () => {
    expect(() => hoistPull([100])).toThrow(Refusal);
    expect(() => hoistPull([100, Number.NaN])).toThrow(Refusal);
    expect(() => hoistPull([100, -1])).toThrow(Refusal);
  });
});

describe('a tower nested', () => {
  it('sinks every section evenly into the one below', () => {
    const { sections, drops } = nestedSections(three, 7);
    expect(drops).toEqual([0, 4.5, 9]);
    expect(sections.map(({ low, high }) => [low, high])).toEqual([
      [0, 6],
      [0.5, 6.5],
      [1, 7],
    ]);
    for (const [index, { low, high }] of sections.entries()) {
      const before = three[index] as Section;
      expect(high - low).toBeCloseTo(before.high - before.low, 12);
    }
  });

  it('is refused where a section would reach into the ground, or up', () => {
    expect(() => nestedSections(three, 5.9)).toThrow(/below the tower's base/);
    expect(() => nestedSections(three, 17)).toThrow(Refusal);
    expect(() => nestedSections(three, 0)).toThrow(Refusal);
    expect(() => nestedSections([section(0, 6)], 4)).toThrow(Refusal);
    expect(nestedSections(three, 16).drops).toEqual([0, 0, 0]);
  });

  it('takes along what hangs on it, and tells what meets a rim', () => {
    const nested = nestedSections(three, 7);
    expect(nestedPlace(three, nested, 4)).toEqual({ height: 4, section: 1, clashes: false });
    // In the overlap of 5 to 6 m it hangs on the outer section.
    expect(nestedPlace(three, nested, 5.5)).toEqual({ height: 5.5, section: 1, clashes: false });
    // Just at a rim it may be on either: on the inner one it is in the way.
    expect(nestedPlace(three, nested, 6)).toEqual({ height: 1.5, section: 2, clashes: true });
    expect(nestedPlace(three, nested, 6, 'outer')).toEqual({ height: 6, section: 1, clashes: false });
    // At 8 m on the second section: sinks to 3.5 m, and the first reaches up to 6.
    expect(nestedPlace(three, nested, 8)).toEqual({ height: 3.5, section: 2, clashes: true });
    expect(nestedPlace(three, nested, 10.75)).toEqual({ height: 6.25, section: 2, clashes: false });
    expect(nestedPlace(three, nested, 18)).toEqual({ height: 9, section: 3, clashes: false });
  });
});

describe('a whole station lowered', () => {
  const document = (tower: Document = {}): Document => ({
    units: 'si',
    method: 'asce7-16',
    site: { wind: 45, exposure: 'C' },
    tower: {
      support: 'free',
      top: 16,
      telescopes: true,
      nested: 7,
      sections: [300, 250, 200].map((width) => ({ length: 6, shape: 'pole', width, sides: 0 })),
      ...tower,
    },
    mast: { outside: 50, length: 4, inside: 1, wall: 4, bearing: 16 },
    loads: [
      { name: 'beam', above: 2, area: 0.5, weight: 20 },
      { name: 'panel', height: [8, 9], area: 0.1, offset: 0 },
      {
        name: 'wire',
        height: 16,
        shape: 'wire',
        diameter: 2,
        tension: 50,
        to: { distance: 20, height: 3, heading: 0 },
      },
    ],
    cables: [{ count: 2, diameter: 10 }],
  });

  it('has mast, loads and lines where they then are', () => {
    const { station } = checkInputOf(document());
    const lowered = nestedStation(station);
    expect(lowered?.clashes).toEqual(['panel']);
    if (!lowered) throw new Error('the station was not lowered');
    const { tower, mast, loads, cables } = lowered.station;
    expect(tower.top).toBe(7);
    expect(tower.sections.map(({ high }) => high)).toEqual([6, 6.5, 7]);
    expect(mast).toMatchObject({ tip: 10, foot: 6, bearing: 7 });
    expect(loads.map(({ low }) => low)).toEqual([9, 3.5, 7]);
    expect(loads.map(({ high }) => high)).toEqual([9, 4.5, 7]);
    const rise = (of: typeof loads) => of.map(({ shape }) => (shape.kind === 'wire' ? shape.rise : undefined));
    expect(rise(station.loads)).toEqual([undefined, undefined, -13]);
    expect(rise(loads)).toEqual([undefined, undefined, -4]);
    expect(cables.map(({ low, high }) => [low, high])).toEqual([[0, 7]]);
    // The station itself stays as it was.
    expect(station.tower.top).toBe(16);
    expect(station.loads.map(({ low }) => low)).toEqual([18, 8, 16]);
  });

  it('is none where it cannot be known', () => {
    const plain = document();
    const without = (key: string) => {
      const tower = { ...(plain['tower'] as Document) };
      delete tower[key];
      return { ...plain, tower };
    };
    expect(nestedStation(checkInputOf(without('nested')).station)).toBeUndefined();
    expect(nestedStation(checkInputOf(document({ support: 'guyed' })).station)).toBeUndefined();
    const held = (height: number) => document({ support: 'bracketed', held: [{ height, by: 'bracket' }] });
    expect(nestedStation(checkInputOf(held(9)).station)).toBeUndefined();
    expect(nestedStation(checkInputOf(held(5)).station)?.station.tower.top).toBe(7);
  });
});
