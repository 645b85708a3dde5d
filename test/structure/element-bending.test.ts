import { describe, expect, it } from 'vitest';
import { Trace } from '../../src/foundation/index.ts';
import { type ElementLoads, type ElementSegment, elementBending, mastBending } from '../../src/structure/index.ts';
import { witness, workingDocument } from '../../src/worksheet/index.ts';
import fc from '../fast-check.ts';

const alloy = { material: 'aluminium', yieldStrength: 240e6, ultimateStrength: 260e6 } as const;
const segment = (outside: number, wall: number, length: number): ElementSegment => ({
  ...alloy,
  outside,
  wall,
  length,
});
const S = (D: number, t: number) => (Math.PI * (D ** 4 - (D - 2 * t) ** 4)) / (32 * D);

/** Half of an element in three sizes: 25, 19 and 12 mm. */
const HALF = [segment(0.025, 0.002, 1.8), segment(0.019, 0.0015, 1.2), segment(0.0127, 0.0012, 2)];

const segmentsAndLoads = fc
  .array(
    fc.record({
      outside: fc.integer({ min: 10, max: 60 }),
      length: fc.integer({ min: 1, max: 30 }),
      wind: fc.integer({ min: 1, max: 100 }),
      weight: fc.integer({ min: 0, max: 40 }),
    }),
    { minLength: 1, maxLength: 6 },
  )
  .map((rows) => ({
    segments: rows.map(({ outside, length }) => segment(outside / 1000, 0.0015, length / 10)),
    wind: rows.map((row) => row.wind),
    weight: rows.map((row) => row.weight),
  }));

describe('a telescoped element', () => {
  it('by hand: moment, stress and the wind at which it yields', () => {
    const { joints, first, wind, weight } = elementBending(HALF, { wind: [12, 9, 6] });
    // Outermost 6·2²/2 = 12; middle 9·1.2²/2 + 12·(1.2 + 1) = 32.88; root 12·1.8²/2 + 10.8·2.4 + 12·4 = 93.36 N·m.
    expect(joints.map(({ moment }) => moment)).toEqual([
      expect.closeTo(93.36, 9),
      expect.closeTo(32.88, 9),
      expect.closeTo(12, 9),
    ]);
    expect(joints.map(({ at }) => at)).toEqual([0, 1.8, 3]);
    expect(wind).toBeCloseTo(21.6 + 10.8 + 12, 9);
    expect(weight).toBe(0);
    const moduli = [S(0.025, 0.002), S(0.019, 0.0015), S(0.0127, 0.0012)];
    const factors = [93.36, 32.88, 12].map((moment, index) => (240e6 * (moduli[index] as number)) / moment);
    joints.forEach(({ stresses, factorToYield }, index) => {
      expect(stresses).toEqual([expect.closeTo(240e6 / (factors[index] as number), 0)]);
      expect(factorToYield).toBeCloseTo(factors[index] as number, 9);
    });
    expect(first).toBe(factors.indexOf(Math.min(...factors)));
    // 260/1.95 = 133 MPa is less than 240/1.67 = 144 MPa.
    expect(joints[0]?.ratio).toBeCloseTo(93.36 / ((260e6 / 1.95) * (moduli[0] as number)), 9);
  });

  it('has the moments of a beam clamped at its hold', () => {
    fc.assert(
      fc.property(segmentsAndLoads, ({ segments, wind }) => {
        let at = 0;
        const beam = segments.map(({ length, ...tube }) => {
          const low = at;
          at += length;
          return { ...tube, low, high: at };
        });
        const acting = beam.map(({ low, high }, index) => ({
          low,
          high,
          force: (wind[index] as number) * (high - low),
        }));
        const { stations } = mastBending({ pieces: beam, foot: 0 }, acting);
        elementBending(segments, { wind }).joints.forEach(({ moment }, index) => {
          expect(moment).toBeCloseTo(stations[index]?.moment as number, 8);
        });
      }),
    );
  });

  it('yields where it says, at the wind it says, its weight kept', () => {
    fc.assert(
      fc.property(segmentsAndLoads, ({ segments, wind, weight }) => {
        const { joints, first } = elementBending(segments, { wind, weight });
        const factor = joints[first ?? -1]?.factorToYield as number;
        fc.pre(factor > 0);
        const grown = elementBending(segments, { wind: wind.map((each) => each * factor), weight }).joints;
        const stresses = grown.map((joint) => joint.stresses[0] as number);
        expect(stresses[first as number]).toBeCloseTo(240e6, -1);
        expect(Math.max(...stresses)).toBeLessThanOrEqual(240e6 * (1 + 1e-9));
      }),
    );
  });

  it('is used the more, the more it is loaded', () => {
    fc.assert(
      fc.property(segmentsAndLoads, fc.integer({ min: 0, max: 5 }), ({ segments, wind, weight }, which) => {
        const more = (list: number[]) => list.map((each, index) => (index === which % list.length ? each + 5 : each));
        const before = elementBending(segments, { wind, weight }).joints;
        for (const loads of [
          { wind: more(wind), weight },
          { wind, weight: more(weight) },
        ]) {
          elementBending(segments, loads).joints.forEach(({ ratio, factorToYield }, index) => {
            expect(ratio).toBeGreaterThanOrEqual((before[index]?.ratio as number) * (1 - 1e-12));
            expect(factorToYield).toBeLessThanOrEqual((before[index]?.factorToYield as number) * (1 + 1e-12));
          });
        }
      }),
    );
  });

  it('takes a force for each length from a function of the segment', () => {
    const pressed = elementBending(HALF, { wind: ({ outside }) => 500 * outside });
    expect(pressed).toEqual(elementBending(HALF, { wind: HALF.map(({ outside }) => 500 * outside) }));
  });

  it('carries what hangs on a boom, beyond each joint only', () => {
    const boom = [segment(0.05, 0.003, 2), segment(0.045, 0.002, 2)];
    const appurtenances = [
      { at: 3, wind: 40, weight: 30 },
      { at: 1, wind: 10, weight: 0 },
    ];
    const { joints } = elementBending(boom, { wind: [0, 0], appurtenances });
    expect(joints[0]).toMatchObject({ momentOfWind: 130, momentOfWeight: 90, moment: Math.sqrt(130 ** 2 + 90 ** 2) });
    expect(joints[1]).toMatchObject({ momentOfWind: 40, momentOfWeight: 30, moment: 50 });
  });

  it('bends no more than its weight in a calm, and yields in no wind where that is too much', () => {
    const calm = elementBending(HALF, { wind: [0, 0, 0], weight: [3, 2, 1] });
    expect(calm.joints.every(({ factorToYield }) => factorToYield === Number.POSITIVE_INFINITY)).toBe(true);
    expect(calm.first).toBeUndefined();
    const iced = elementBending(HALF, { wind: [1, 1, 1], weight: [900, 900, 900] });
    expect(iced.joints[0]?.factorToYield).toBe(0);
  });

  it('is stiffer and stronger with a sleeve, by shares', () => {
    const sleeve = { ...alloy, outside: 0.0208, wall: 0.0015 };
    const [root] = HALF as [ElementSegment];
    const sleeved = elementBending([{ ...root, sleeves: [sleeve] }], { wind: [20] }).joints[0];
    const plain = elementBending([root], { wind: [20] }).joints[0];
    // Of one alloy the outer tube has the larger stress, and all together carry (I_1 + I_2)/(D_1/2) of it.
    const I = (D: number, t: number) => (S(D, t) * D) / 2;
    const together = (I(0.025, 0.002) + I(0.0208, 0.0015)) / 0.0125;
    expect(sleeved?.factorToYield).toBeCloseTo((240e6 * together) / (20 * 1.8 * 0.9), 9);
    expect(sleeved?.factorToYield).toBeGreaterThan(plain?.factorToYield as number);
    expect(sleeved?.stresses[0]).toBeGreaterThan(sleeved?.stresses[1] as number);
  });

  it('does not say which yields first where the alloy of one is not given', () => {
    const [root, middle, tip] = HALF as [ElementSegment, ElementSegment, ElementSegment];
    const { yieldStrength: _, ultimateStrength: __, ...unknown } = middle;
    const found = elementBending([root, unknown, tip], { wind: [12, 9, 6] });
    expect(found.first).toBeUndefined();
    expect(found.notShown).toEqual([1]);
    expect(found.joints[1]?.ratio).toBeUndefined();
    expect(found.joints[1]?.stresses).toHaveLength(1);
    expect(found.joints[0]?.ratio).toBeGreaterThan(0);
  });

  it('refuses what cannot be', () => {
    const code = (segments: readonly ElementSegment[], loads: ElementLoads) => {
      try {
        elementBending(segments, loads);
      } catch (error) {
        return (error as { code: string }).code;
      }
      return 'none';
    };
    expect(code([], { wind: [] })).toBe('segments-none');
    expect(code([segment(0.02, 0.002, 0)], { wind: [1] })).toBe('segment-impossible');
    expect(code([segment(0.02, 0.011, 1)], { wind: [1] })).toBe('tube-impossible');
    expect(code(HALF, { wind: [1, 2] })).toBe('element-load-impossible');
    expect(code(HALF, { wind: [1, 2, 3], appurtenances: [{ at: 6, wind: 1, weight: 1 }] })).toBe(
      'element-load-impossible',
    );
  });

  it.each(['us', 'si'] as const)('shows a working that re-evaluates in %s units, and changes nothing', (units) => {
    const [root, ...others] = HALF as [ElementSegment, ...ElementSegment[]];
    const segments = [{ ...root, sleeves: [{ ...alloy, outside: 0.0208, wall: 0.0015 }] }, ...others];
    const loads = { wind: [12, 9, 6], weight: [5, 3, 2], appurtenances: [{ at: 3, wind: 5, weight: 2 }] };
    const trace = new Trace();
    const found = elementBending(segments, loads, trace);
    expect(found).toEqual(elementBending(segments, loads));
    expect(witness(workingDocument(trace.steps, units)).filter(({ agrees }) => !agrees)).toEqual([]);
    const last = (id: string) => trace.steps.filter(({ formula }) => formula.id === id).at(-1)?.value;
    expect(last('use-in-bending')).toBe(found.joints[2]?.ratio);
    expect(last('wind-factor-to-moment')).toBe(found.joints[2]?.factorToAllowed);
  });
});
