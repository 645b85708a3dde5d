import { describe, expect, it } from 'vitest';
import { FOOT, POUND, POUND_FORCE, POUND_PER_SQUARE_FOOT, Trace } from '../../src/foundation/index.ts';
import {
  type BlockFooting,
  blockFooting,
  bracketReaction,
  DEEPEST_FOR_PRESSURE,
  type FootLoad,
  fallDistances,
  handling,
  legForces,
  pierFooting,
} from '../../src/structure/index.ts';
import { witness, workingDocument } from '../../src/worksheet/index.ts';
import fc from '../fast-check.ts';

const between = (min: number, max: number) =>
  fc.integer({ min: 0, max: 10000 }).map((part) => min + ((max - min) * part) / 10000);
const POUND_FOOT = POUND_FORCE * FOOT;
const PSF_PER_FOOT = POUND_PER_SQUARE_FOOT / FOOT;

const feet = (length: number, width: number, depth: number) => ({
  length: length * FOOT,
  width: width * FOOT,
  depth: depth * FOOT,
});
const pounds = (shear: number, moment: number, weight?: number): FootLoad => ({
  shear: shear * POUND_FORCE,
  moment: moment * POUND_FOOT,
  ...(weight === undefined ? {} : { weight: weight * POUND }),
});

const blocks = fc
  .tuple(between(0.6, 3), between(0.6, 3), between(0.4, 2))
  .map(([length, width, depth]) => ({ length, width, depth, bearing: 75e3 }));
const loads = fc
  .tuple(between(100, 8e3), between(4, 20), between(50, 600))
  .map(([shear, height, weight]) => ({ shear, moment: shear * height, weight }));
const grown = (load: FootLoad, by: number): FootLoad => ({
  ...load,
  shear: load.shear * by,
  moment: load.moment * by,
});

describe('a block', () => {
  const CONCRETE = (150 * POUND) / FOOT ** 3;
  // 5 by 5 by 4 ft at 150 lb/ft³ are 15,000 lb, with the tower 15,500; 12,000 + 400·4 = 13,600 lbf·ft.
  const block = { ...feet(5, 5, 4), density: CONCRETE, bearing: 1500 * POUND_PER_SQUARE_FOOT };
  const check = blockFooting(block, pounds(400, 12000, 500));

  it('is what the hand works out', () => {
    expect(check.blockWeight / POUND).toBeCloseTo(15000, 6);
    expect(check.deadLoad / POUND_FORCE).toBeCloseTo(15500, 6);
    expect(check.momentAtUnderside / POUND_FOOT).toBeCloseTo(13600, 6);
    expect(check.edges[0].holding / POUND_FOOT).toBeCloseTo(38750, 6);
    expect(check.overturning.ratio).toBeCloseTo(13600 / 23250, 9);
    expect(check.overturning.olderRatio).toBeCloseTo(20400 / 38750, 9);
    expect(check.edges[1].factor).toBeCloseTo(2.8493, 4);
    const [{ toe }] = check.edges;
    if (toe?.contact !== 'part' || check.toe?.contact !== 'part')
      throw new Error('its edge lifts: 0.877 ft is over 5/6');
    // 2·15,500/(3·5·(2.5 − 0.877419)) psf; a corner at 0.1755 of the side presses between 1.2 and 1.3 times that.
    expect(toe.pressure / POUND_PER_SQUARE_FOOT).toBeCloseTo(1273.69, 2);
    expect(check.toe.pressure / toe.pressure).toBeGreaterThan(1.2);
    expect(check.toe.pressure / toe.pressure).toBeLessThan(1.3);
    expect(check.toePressureRatio).toBeCloseTo(check.toe.pressure / block.bearing, 12);
    expect(check.densityTaken).toBe(false);
  });

  it('says which density it took, what it leaves out, and what it cannot know', () => {
    const { bearing: _, density: __, ...bare } = block;
    const taken = blockFooting(bare, pounds(400, 12000, 500));
    expect([taken.density, taken.densityTaken]).toEqual([2400, true]);
    expect(taken.toePressureRatio).toBeUndefined();
    expect(taken.toe?.contact).toBe('part');
    expect(taken.notChecked).toContain('sliding');
    const unknown = blockFooting(block, pounds(400, 12000));
    expect([unknown.weightKnown, unknown.toe, unknown.toePressureRatio, unknown.edges[0].toe]).toEqual([
      false,
      undefined,
      undefined,
      undefined,
    ]);
    expect(unknown.overturning.ratio).toBeCloseTo(13600 / (0.6 * 37500), 9);
  });

  it('leans along its shorter side first', () => {
    const long = blockFooting({ ...block, ...feet(8, 4, 4) }, pounds(400, 12000, 500));
    expect(long.overturning.ratio).toBe(long.edges[1].ratio);
    expect(long.edges[1].ratio / long.edges[0].ratio).toBeCloseTo(2, 9);
    expect([long.edges[0].along, long.edges[1].along]).toEqual(['length', 'width']);
  });

  it('tips without a pressure where the moment is all that holds, and has uses over 1 long before', () => {
    const over = blockFooting(block, pounds(400, 40000, 500));
    expect(over.toe?.contact).toBe('tips');
    expect(over.toePressureRatio).toBeUndefined();
    expect(over.overturning.ratio).toBeGreaterThan(1 / 0.6);
  });

  it('is used more by more load, both ways of overturning alike in proportion', () => {
    fc.assert(
      fc.property(blocks, loads, between(1.001, 2), (footing, load, by) => {
        const less = blockFooting(footing, load);
        const more = blockFooting(footing, grown(load, by));
        expect(more.overturning.ratio / less.overturning.ratio).toBeCloseTo(by, 9);
        expect(more.overturning.olderRatio / less.overturning.olderRatio).toBeCloseTo(by, 9);
        // 0.6 asks for more than 1/1.5.
        expect(less.overturning.ratio).toBeGreaterThan(less.overturning.olderRatio);
        if (more.toePressureRatio === undefined) expect(more.toe?.contact).toBe('tips');
        else expect(more.toePressureRatio).toBeGreaterThan(less.toePressureRatio ?? Number.POSITIVE_INFINITY);
      }),
    );
  });

  it('is never worse longer, wider or deeper, and without the weight of the tower never better', () => {
    fc.assert(
      fc.property(blocks, loads, between(1.001, 2), (footing, load, by) => {
        const { ratio } = blockFooting(footing, load).overturning;
        for (const size of ['length', 'width', 'depth'] as const) {
          // Deeper adds a moment V·T; what is heavy, low and hit by much wind could lose by it, which no tower is.
          const larger = blockFooting({ ...footing, [size]: footing[size] * by }, load);
          expect(larger.overturning.ratio, size).toBeLessThanOrEqual(ratio * (1 + 1e-12));
        }
        const { weight: _, ...unknown } = load;
        expect(blockFooting(footing, unknown).overturning.ratio).toBeGreaterThan(ratio);
      }),
    );
  });

  it('presses less the longer and wider it is', () => {
    fc.assert(
      fc.property(blocks, loads, between(1.001, 2), (footing: BlockFooting, load, by) => {
        const { toePressureRatio } = blockFooting(footing, load);
        if (toePressureRatio === undefined) return;
        for (const size of ['length', 'width'] as const)
          expect(
            blockFooting({ ...footing, [size]: footing[size] * by }, load).toePressureRatio,
            size,
          ).toBeLessThanOrEqual(toePressureRatio * (1 + 1e-9));
      }),
    );
  });

  it('refuses what is no footing and no load', () => {
    for (const size of ['length', 'width', 'depth', 'density', 'bearing'] as const)
      expect(() => blockFooting({ ...block, [size]: 0 }, pounds(1, 1, 1))).toThrow('above zero');
    expect(() => blockFooting(block, pounds(-1, 1, 1))).toThrow('from zero up');
    expect(() => blockFooting(block, pounds(1, Number.NaN, 1))).toThrow('from zero up');
    expect(() => blockFooting(block, pounds(1, 1, -1))).toThrow('from zero up');
  });
});

describe('a pier', () => {
  const pier = { diameter: 3 * FOOT, depth: 6 * FOOT, lateral: 150 * PSF_PER_FOOT, constrained: false };
  const piers = fc
    .tuple(between(0.2, 1.5), between(0.8, 6), between(15e3, 60e3), fc.boolean())
    .map(([diameter, depth, lateral, constrained]) => ({ diameter, depth, lateral, constrained }));

  it('is what the hand works out', () => {
    // h = 30 ft, S₁ = 300 psf; 6 ft are just enough at A = 36/(6 + 32.7) ft, P = A·300·3/2.34 lbf.
    const check = pierFooting(pier, pounds(500, 15000));
    expect((check.height ?? 0) / FOOT).toBeCloseTo(30, 9);
    expect(check.pressure / POUND_PER_SQUARE_FOOT).toBeCloseTo(300, 9);
    expect(check.ratio).toBeCloseTo(500 / ((36 / 38.7) * (900 / 2.34)), 9);
    // Held: S₃ = 900 psf, 36 = 4.25·M/(900·3) at M = 22,870.6 lbf·ft.
    const held = pierFooting({ ...pier, constrained: true }, pounds(500, 15000));
    expect(held.pressure / POUND_PER_SQUARE_FOOT).toBeCloseTo(900, 9);
    expect(held.ratio).toBeCloseTo(15000 / 22870.588, 6);
    expect((held.required / FOOT) ** 3).toBeCloseTo((4.25 * 15000) / (150 * 3), 5);
  });

  it('asks for just the depth it has where its use is 1, and for more where it is more', () => {
    fc.assert(
      fc.property(piers, loads, between(1.01, 3), (footing, load, by) => {
        const { ratio } = pierFooting(footing, load);
        const met = pierFooting(footing, grown(load, 1 / ratio));
        expect(met.ratio).toBeCloseTo(1, 9);
        expect(met.required / footing.depth).toBeCloseTo(1, 6);
        expect(pierFooting(footing, grown(load, by / ratio)).required).toBeGreaterThan(footing.depth);
        expect(pierFooting(footing, grown(load, 1 / ratio / by)).required).toBeLessThan(footing.depth);
        expect(pierFooting(footing, grown(load, by)).ratio / ratio).toBeCloseTo(by, 9);
      }),
    );
  });

  it('ends its turns where a depth asks for itself, or beyond 12 ft', () => {
    fc.assert(
      fc.property(piers, loads, (footing, load) => {
        const { turns, required } = pierFooting(footing, load);
        expect(turns[0]?.tried).toBe(footing.depth);
        expect(turns.length).toBeLessThan(40);
        const last = turns.at(-1);
        expect(last?.asked).toBe(required);
        if (required < DEEPEST_FOR_PRESSURE) expect(last?.tried).toBeCloseTo(required, 6);
        else expect(last?.tried).toBeGreaterThanOrEqual(DEEPEST_FOR_PRESSURE);
      }),
    );
  });

  it('is never worse deeper, wider, in firmer soil, held, alone or lower', () => {
    fc.assert(
      fc.property(piers, loads, between(1.001, 2), (footing, load, by) => {
        const { ratio } = pierFooting(footing, load);
        for (const size of ['diameter', 'depth', 'lateral'] as const)
          expect(pierFooting({ ...footing, [size]: footing[size] * by }, load).ratio, size).toBeLessThan(ratio);
        expect(pierFooting({ ...footing, isolatedPole: true }, load).ratio).toBeCloseTo(ratio / 2, 9);
        expect(pierFooting({ ...footing, head: 0.3 }, load).ratio).toBeGreaterThan(ratio);
        if (!footing.constrained)
          expect(pierFooting({ ...footing, constrained: true }, load).ratio).toBeLessThan(ratio);
      }),
    );
  });

  it('counts no more than 12 ft of depth for the pressure', () => {
    const deep = pierFooting({ ...pier, depth: 14 * FOOT }, pounds(500, 15000));
    expect(deep.depthCapped).toBe(true);
    expect(deep.pressure / POUND_PER_SQUARE_FOOT).toBeCloseTo(600, 9);
    // 20 kip at the surface: A = 2.34·20/(3·0.6) = 26 ft at the 600 psf of 12 ft, and d = A.
    const much = pierFooting(pier, pounds(20000, 0));
    expect(much.required / FOOT).toBeCloseTo(26, 9);
    expect(pierFooting(pier, pounds(500, 15000)).depthCapped).toBe(false);
  });

  it('has its use from what it is asked and what its soil holds', () => {
    // P·d + 1.09·M = 500·6 + 1.09·15,000 = 19,350 lbf·ft; S₁·b·d²/2.34 = 300·3·36/2.34 = 13,846 lbf·ft.
    const free = pierFooting(pier, pounds(500, 15000));
    expect(free.demand / POUND_FORCE / FOOT).toBeCloseTo(19350, 6);
    expect(free.capacity / POUND_FORCE / FOOT).toBeCloseTo(13846.1538, 3);
    expect(free.ratio).toBeCloseTo(19350 / 13846.1538, 6);
    const held = pierFooting({ ...pier, constrained: true }, pounds(500, 15000));
    expect(held.demand / POUND_FORCE / FOOT).toBeCloseTo(15000, 6);
    expect(held.capacity / POUND_FORCE / FOOT).toBeCloseTo(22870.588, 3);
  });

  it('takes a moment without a shear, as weight off the axis makes it', () => {
    // 2.34·1.09·1,000/(300·3·36) = 0.07872; the depth by d³ = 2.34·1.09·1,000·3/(150·3) = 17.004 ft³, 2.5715 ft.
    const free = pierFooting(pier, pounds(0, 1000));
    expect(free.height).toBeUndefined();
    expect(free.ratio).toBeCloseTo((2.34 * 1.09 * 1000) / (300 * 3 * 36), 9);
    expect((free.required / FOOT) ** 3).toBeCloseTo(17.004, 5);
    // Held: d³ = 4.25·1,000/(150·3) = 9.4444 ft³.
    const held = pierFooting({ ...pier, constrained: true }, pounds(0, 1000));
    expect(held.ratio).toBeCloseTo(1000 / 22870.588, 6);
    expect((held.required / FOOT) ** 3).toBeCloseTo(9.44444, 4);
    // As near to no shear as one likes it comes to the same.
    for (const constrained of [false, true]) {
      const nearly = pierFooting({ ...pier, constrained }, pounds(1e-6, 1000));
      const without = pierFooting({ ...pier, constrained }, pounds(0, 1000));
      expect(nearly.ratio).toBeCloseTo(without.ratio, 6);
      expect(nearly.required).toBeCloseTo(without.required, 4);
    }
  });

  it('counts the shear down to the surface from a head above it', () => {
    // 5 ft up: M = 15,000 + 500·5 = 17,500, h = 35 ft; P·d + 1.09·M = 3,000 + 19,075 = 22,075 lbf·ft.
    const raised = pierFooting({ ...pier, head: 5 * FOOT }, pounds(500, 15000));
    expect((raised.height ?? 0) / FOOT).toBeCloseTo(35, 9);
    expect(raised.ratio).toBeCloseTo(22075 / 13846.1538, 6);
  });

  it('needs nothing without a load, and refuses what it has no rule for', () => {
    const idle = pierFooting(pier, pounds(0, 0));
    expect([idle.ratio, idle.required, idle.height]).toEqual([0, 0, undefined]);
    for (const size of ['diameter', 'depth', 'lateral'] as const)
      expect(() => pierFooting({ ...pier, [size]: 0 }, pounds(1, 1))).toThrow('above zero');
    expect(() => pierFooting({ ...pier, head: -1 }, pounds(1, 1))).toThrow('at the surface');
    expect(() => pierFooting(pier, pounds(1, -1))).toThrow('from zero up');
  });
});

describe('legs and brackets', () => {
  /** Vertical forces of legs on a circle that answer a moment in a heading and a weight, leg by leg. */
  const legByLeg = (faces: 3 | 4, width: number, moment: number, weight: number) => {
    const radius = faces === 3 ? width / Math.sqrt(3) : width / Math.SQRT2;
    const forces: number[] = [];
    for (let heading = 0; heading < 360; heading += 1) {
      for (let leg = 0; leg < faces; leg += 1) {
        const angle = (leg * 2 * Math.PI) / faces - (heading * Math.PI) / 180;
        // Σr²cos² over the legs is faces·r²/2 whatever the heading.
        forces.push((moment * radius * Math.cos(angle)) / ((faces * radius ** 2) / 2) + weight / faces);
      }
    }
    return { push: Math.max(...forces), pull: -Math.min(...forces) };
  };

  it('of three and four pull and press as a sum over the legs has it, in the worst of all headings', () => {
    for (const faces of [3, 4] as const) {
      const { uplift, push, upliftWithoutWeight } = legForces(faces, 0.45, { shear: 1, moment: 12e3, weight: 250 });
      const weight = 250 * 9.80665;
      expect(uplift).toBeCloseTo(legByLeg(faces, 0.45, 12e3, 0.6 * weight).pull, 6);
      expect(upliftWithoutWeight).toBeCloseTo(legByLeg(faces, 0.45, 12e3, 0).pull, 6);
      expect(push).toBeCloseTo(legByLeg(faces, 0.45, 12e3, weight).push, 6);
    }
    expect(legForces(3, 1, { shear: 0, moment: 0, weight: 100 }).uplift).toBeCloseTo(-196.133, 6);
    expect(legForces(3, 1, { shear: 0, moment: 87 }).upliftWithoutWeight).toBeCloseTo(100, 0);
    expect(legForces(3, 1, { shear: 0, moment: 87 }).uplift).toBeUndefined();
    expect(() => legForces(3, 0, { shear: 0, moment: 1 })).toThrow('apart');
  });

  it('of a wall take what a beam on two supports does, and more with a stiff foot', () => {
    const { pull, pullWithHingedFoot, footWithHingedFoot } = bracketReaction(1000, 3, 6);
    // Moments about the foot: R·6 = 1000·9. Stiff: the prop of a cantilever loaded by M = 3000 at its end adds 1.5·M/l.
    expect(pullWithHingedFoot).toBeCloseTo(1500, 9);
    expect(footWithHingedFoot).toBeCloseTo(500, 9);
    expect(pull).toBeCloseTo(1000 + (1.5 * 3000) / 6, 9);
    expect(() => bracketReaction(1, 1, 0)).toThrow('above the base');
  });
});

describe('fall distance', () => {
  it('is height, half an element and ten feet', () => {
    const [line, fence] = fallDistances(60 * FOOT, 15 * FOOT, [
      { to: 'power-line', distance: 100 * FOOT },
      { to: 'property-line', distance: 80 * FOOT },
    ]);
    expect((line?.wanted ?? 0) / FOOT).toBeCloseTo(85, 9);
    expect(line?.ratio).toBeCloseTo(0.85, 9);
    expect((line?.spare ?? 0) / FOOT).toBeCloseTo(15, 9);
    expect(fence?.ratio).toBeCloseTo(85 / 80, 9);
    expect([line?.outOfReach, fence?.outOfReach]).toEqual([true, true]);
    expect(fallDistances(60 * FOOT, 15 * FOOT, [{ to: 'building', distance: 70 * FOOT }])[0]?.outOfReach).toBe(false);
    expect(fallDistances(10, 1, [])).toEqual([]);
  });

  it('refuses what is no distance', () => {
    expect(() => fallDistances(10, 1, [{ to: 'building', distance: 0 }])).toThrow('above zero');
    expect(() => fallDistances(-1, 1, [])).toThrow('from zero up');
    expect(() => fallDistances(1, Number.NaN, [])).toThrow('from zero up');
  });
});

describe('handling a lying tower', () => {
  const beam = (boom: number, more: object = {}) => ({
    name: 'beam',
    along: 40 * FOOT,
    halfBoom: (boom / 2) * FOOT,
    halfElement: 17 * FOOT,
    ...more,
  });

  it('puts the mast half a boom up: 15 ft for a boom of 30, 6 to 7 for one of 12', () => {
    expect(handling(3 * FOOT, [beam(30)]).orientations[0].mastAtLeast / FOOT).toBeCloseTo(15, 9);
    const twelve = handling(3 * FOOT, [beam(12)]).orientations[0].mastAtLeast / FOOT;
    expect(twelve).toBeGreaterThanOrEqual(6 - 1e-9);
    expect(twelve).toBeLessThanOrEqual(7);
  });

  it('stops where the first antenna touches, and there nothing is in the ground', () => {
    fc.assert(
      fc.property(
        between(0, 3),
        fc.array(
          fc.record({
            name: fc.constant('a'),
            along: between(2, 25),
            halfBoom: between(0.5, 8),
            halfElement: between(0.5, 8),
            crossed: fc.boolean(),
          }),
          { minLength: 1, maxLength: 4 },
        ),
        (h, antennas) => {
          for (const { orientation, restsAt, workingHeights, clearance } of handling(h, antennas).orientations) {
            // Both ends of what points down, in the plane of the fall: along the tower, then square to it.
            const lowest = antennas.map(({ along, halfBoom, halfElement, crossed }) => {
              const down = (orientation === 'booms-upright') === crossed ? halfElement : halfBoom;
              return Math.min(
                h + along * Math.sin(restsAt) + down * Math.sin(restsAt - Math.PI / 2),
                h + along * Math.sin(restsAt) + down * Math.sin(restsAt + Math.PI / 2),
              );
            });
            expect(Math.min(...lowest)).toBeGreaterThan(-1e-9);
            if (clearance < 0) {
              expect(Math.min(...lowest)).toBeLessThan(1e-9);
              expect(restsAt).toBeGreaterThan(0);
            } else expect(restsAt).toBe(0);
            expect(workingHeights[0]).toBeCloseTo(h + (antennas[0]?.along ?? 0) * Math.sin(restsAt), 9);
          }
        },
      ),
    );
  });

  it('finds the better of both, antenna by antenna', () => {
    const low = handling(10 * FOOT, [beam(12)]);
    expect(low.best).toBe('booms-upright');
    expect((low.orientations[0].antennas[0]?.clearance ?? 0) / FOOT).toBeCloseTo(4, 9);
    expect((low.orientations[1].antennas[0]?.clearance ?? 0) / FOOT).toBeCloseTo(-7, 9);
    expect(handling(10 * FOOT, [beam(40)]).best).toBe('elements-upright');
    expect(handling(10 * FOOT, [beam(12, { crossed: true })]).best).toBe('elements-upright');
    // Fixed: 6 and 17 ft make 18.03 whichever way the mast is turned.
    const fixed = handling(10 * FOOT, [beam(12, { fixed: true })]);
    for (const { mastAtLeast } of fixed.orientations) expect(mastAtLeast / FOOT).toBeCloseTo(Math.sqrt(325), 9);
    expect(handling(2, []).orientations[0]).toMatchObject({ clearance: 2, mastAtLeast: 0, restsAt: 0 });
  });

  it('refuses sizes below zero', () => {
    expect(() => handling(-1, [])).toThrow('at the ground');
    expect(() => handling(1, [beam(12, { along: -1 })])).toThrow('from zero up');
  });
});

describe('the working of footings, falls and handling', () => {
  it.each(['us', 'si'] as const)('re-evaluates in %s units, every kind of step', (system) => {
    const trace = new Trace();
    trace.under('footing', () => {
      for (const moment of [2e3, 20e3, 30e3, 42e3])
        for (const sizes of [
          { length: 1.6, width: 1.6, depth: 1.2 },
          { length: 1.4, width: 2.4, depth: 1.2, density: 2300 },
        ])
          blockFooting({ ...sizes, bearing: 100e3 }, { shear: 2e3, moment, weight: 300 }, trace);
      for (const constrained of [true, false])
        for (const shear of [2e3, 0])
          pierFooting(
            { diameter: 0.9, depth: 2, lateral: 25e3, constrained, head: 0.1 },
            { shear, moment: 20e3 },
            trace,
          );
      legForces(3, 0.5, { shear: 2e3, moment: 20e3, weight: 300 }, trace);
      bracketReaction(1e3, 2, 5, trace);
      fallDistances(20, 5, [{ to: 'power-line', distance: 40 }], trace);
      handling(1, [{ name: 'beam', along: 12, halfBoom: 4, halfElement: 6 }], trace);
      handling(1, [{ name: 'beam', along: 12, halfBoom: 4, halfElement: 6, fixed: true }], trace);
    });
    const steps = workingDocument(trace.steps, system);
    expect(new Set(steps.map(({ formula }) => formula)).size).toBe(31);
    const failed = witness(steps).filter(({ agrees }) => !agrees);
    expect(failed.map(({ step, evaluated }) => `${step.formula}: ${evaluated} against ${step.value}`)).toEqual([]);
    // The last lines of a block that leans on a corner: its pressure acts where the load is.
    const middle = steps.filter(({ formula }) => formula === 'centre-of-corner-pressure');
    expect(middle.length).toBeGreaterThan(1);
  });
});
