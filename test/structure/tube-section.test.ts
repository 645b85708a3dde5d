import { describe, expect, it } from 'vitest';
import { INCH, Trace } from '../../src/foundation/index.ts';
import { allowedBending, sharedBending, type Tube, tubeSection } from '../../src/structure/index.ts';
import { witness, workingDocument } from '../../src/worksheet/index.ts';
import fc from '../fast-check.ts';

const steel = (outside: number, wall: number, yieldStrength = 240e6): Tube => ({
  outside,
  wall,
  material: 'steel',
  yieldStrength,
});

describe('the section of a tube', () => {
  it('is that of a disc less a disc', () => {
    const disc = (D: number) => tubeSection({ outside: D, wall: D / 2, material: 'steel' });
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 0.2, noNaN: true }),
        fc.double({ min: 0.05, max: 0.45, noNaN: true }),
        (D, share) => {
          const tube = tubeSection(steel(D, share * D));
          const inner = disc(D - 2 * share * D);
          expect(tube.area / (disc(D).area - inner.area)).toBeCloseTo(1, 10);
          expect(tube.secondMoment / (disc(D).secondMoment - inner.secondMoment)).toBeCloseTo(1, 10);
          expect(tube.sectionModulus / (tube.secondMoment / (D / 2))).toBeCloseTo(1, 12);
        },
      ),
    );
    expect(disc(2).area).toBeCloseTo(Math.PI, 12);
    expect(disc(2).secondMoment).toBeCloseTo(Math.PI / 4, 12);
  });
});

describe('what bending a tube is allowed', () => {
  it('of steel goes by its yield', () => {
    // 2 in schedule 40 of 35 ksi: 35·0.5607/1.67 = 11.75 kip·in = 1328 N·m.
    const ksi = 6894757.293;
    const allowed = allowedBending(steel(2.375 * INCH, 0.154 * INCH, 35 * ksi));
    expect(allowed?.surely).toBeCloseTo((35 * ksi * 0.5606 * INCH ** 3) / 1.67, 0);
    expect(allowed?.decidedBy).toBe('yield');
  });

  it('of aluminium goes by the lower of two limits, and is least where one is not given', () => {
    const tube = { outside: 0.05, wall: 0.003, material: 'aluminium', yieldStrength: 240e6 } as const;
    const S = tubeSection(tube).sectionModulus;
    expect(allowedBending({ ...tube, ultimateStrength: 262e6 })).toEqual({
      surely: expect.closeTo((262e6 * S) / 1.95, 9),
      atMost: expect.closeTo((262e6 * S) / 1.95, 9),
      decidedBy: 'rupture',
    });
    expect(allowedBending({ ...tube, ultimateStrength: 300e6 })?.decidedBy).toBe('yield');
    expect(allowedBending(tube)).toEqual({
      surely: expect.closeTo((240e6 * S) / 1.95, 9),
      atMost: expect.closeTo((240e6 * S) / 1.67, 9),
      decidedBy: 'rupture-not-given',
    });
  });

  it('is not shown without a yield, nor for a wall like paper', () => {
    expect(allowedBending({ outside: 0.05, wall: 0.003, material: 'steel' })).toBeUndefined();
    // 0.31·200 GPa/240 MPa = 258 times the wall.
    expect(allowedBending(steel(0.257, 0.001))).toBeDefined();
    expect(allowedBending(steel(0.26, 0.001))).toBeUndefined();
    expect(sharedBending([steel(0.26, 0.001)]).notShown).toEqual([{ tube: 0, why: 'wall-thin' }]);
  });

  it('refuses strengths that cannot be', () => {
    expect(() => allowedBending(steel(0.05, 0.003, -1))).toThrow(/greater than 0/);
    expect(() => allowedBending({ ...steel(0.05, 0.003), ultimateStrength: 100e6 })).toThrow(/breaks before/);
  });
});

describe('a sleeve', () => {
  const outer = steel(0.0603, 0.0039);
  const inner = steel(0.0483, 0.0037, 350e6);

  it('takes its share by stiffness, and the first to reach its own limit decides', () => {
    const I = (D: number, t: number) => (Math.PI / 64) * (D ** 4 - (D - 2 * t) ** 4);
    const [one, two] = [I(0.0603, 0.0039), I(0.0483, 0.0037)];
    const { shares, allowed, decides, rigidity } = sharedBending([outer, inner]);
    expect(shares).toEqual([expect.closeTo(one / (one + two), 12), expect.closeTo(two / (one + two), 12)]);
    expect(rigidity).toBeCloseTo(200e9 * (one + two), 6);
    // The outer tube is farther out and of the weaker steel: 240 MPa/1.67 at its outside decides.
    expect(decides).toBe(0);
    expect(allowed?.surely).toBeCloseTo(((240e6 / 1.67) * (one + two)) / (0.0603 / 2), 6);
  });

  it('of weak metal inside can be the first', () => {
    expect(sharedBending([steel(0.0603, 0.0039, 500e6), steel(0.0483, 0.0037, 100e6)]).decides).toBe(1);
  });

  it('of aluminium in steel takes less than its second moment alone would give it', () => {
    const alloy: Tube = { outside: 0.0483, wall: 0.0037, material: 'aluminium', yieldStrength: 240e6 };
    const [, share] = sharedBending([outer, alloy]).shares;
    const [, ofSteel] = sharedBending([outer, inner]).shares;
    expect((share as number) / (1 - (share as number))).toBeCloseTo(
      (0.35 * (ofSteel as number)) / (1 - (ofSteel as number)),
      12,
    );
  });

  it('of the same steel always makes a mast stiffer and stronger', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.02, max: 0.0524, noNaN: true }),
        fc.double({ min: 0.001, max: 0.006, noNaN: true }),
        (D, t) => {
          const alone = sharedBending([outer]);
          const both = sharedBending([outer, steel(D, t)]);
          expect(both.rigidity).toBeGreaterThan(alone.rigidity);
          expect(both.allowed?.surely).toBeGreaterThan(alone.allowed?.surely as number);
          expect(both.shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 12);
        },
      ),
    );
  });

  it('goes into the tube around it, or is refused; of unknown grade nothing is shown', () => {
    expect(() => sharedBending([outer, steel(0.056, 0.003)])).toThrow(/does not go into/);
    expect(() => sharedBending([])).toThrow(/no tube/);
    const { yieldStrength: _, ...unknown } = inner;
    const found = sharedBending([outer, unknown]);
    expect(found.allowed).toBeUndefined();
    expect(found.notShown).toEqual([{ tube: 1, why: 'yield-not-given' }]);
  });

  it('shows a working that re-evaluates', () => {
    const trace = new Trace();
    sharedBending([outer, inner], trace);
    for (const units of ['us', 'si'] as const) {
      const testimonies = witness(workingDocument(trace.steps, units));
      expect(testimonies.length).toBeGreaterThan(8);
      expect(testimonies.every(({ agrees }) => agrees)).toBe(true);
    }
  });
});
