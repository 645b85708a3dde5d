import { describe, expect, it } from 'vitest';
import { momentToPressure, pressureUnder, type ToePressure, worstToePressure } from '../../src/structure/index.ts';
import fc from '../fast-check.ts';

/** Even over its range: plain doubles are nearly all next to nothing. */
const share = (most: number) => fc.integer({ min: 0, max: 1000 }).map((part) => (most * part) / 1000);
const sides = fc.double({ min: 0.5, max: 4, noNaN: true });

const pressure = (toe: ToePressure): number => (toe.contact === 'tips' ? Number.POSITIVE_INFINITY : toe.pressure);

/**
 * Sum and middle of the pressure that an answer speaks of, on a fine grid from the corner leaned on, by no formula of the
 * program: a plane that falls from the corner and is nowhere below nothing.
 */
function onGrid(toe: ToePressure, length: number, width: number, cells = 400) {
  if (toe.contact !== 'part') throw new Error('only for what lifts in part');
  const slopeL = toe.fadeLength === undefined ? 0 : 1 / toe.fadeLength;
  const slopeW = toe.fadeWidth === undefined ? 0 : 1 / toe.fadeWidth;
  let [sum, along, across, pressed] = [0, 0, 0, 0];
  for (let i = 0; i < cells; i += 1) {
    const x = ((i + 0.5) / cells) * length;
    for (let j = 0; j < cells; j += 1) {
      const y = ((j + 0.5) / cells) * width;
      const here = toe.pressure * (1 - x * slopeL - y * slopeW);
      if (here <= 0) continue;
      sum += here;
      along += here * x;
      across += here * y;
      pressed += 1;
    }
  }
  return {
    load: (sum * length * width) / cells ** 2,
    offLength: length / 2 - along / sum,
    offWidth: width / 2 - across / sum,
    contactShare: pressed / cells ** 2,
  };
}

describe('pressure under a block', () => {
  it('is what the hand works out', () => {
    const square = { length: 2, width: 2 };
    // 40 kN on 4 m², a tenth of the side off the middle: 10 kPa times 1 + 0.6.
    expect(pressure(pressureUnder(square, 40e3, 0.2, 0))).toBeCloseTo(16e3, 6);
    // Both ways: 1 + 0.3 + 0.3.
    expect(pressure(pressureUnder(square, 40e3, 0.1, 0.1))).toBeCloseTo(16e3, 6);
    // A wedge of 3 times 0.4 m: 2·40/(3·2·0.4).
    expect(pressure(pressureUnder(square, 40e3, 0.6, 0))).toBeCloseTo(100e3 / 3, 6);
    // A pyramid over half the square: a sixth of p·2·2 carries it.
    expect(pressure(pressureUnder(square, 40e3, 0.5, 0.5))).toBeCloseTo(60e3, 4);
    // A pyramid of 4 times 0.25 m: 6·40/(1·1).
    expect(pressure(pressureUnder(square, 40e3, 0.75, 0.75))).toBeCloseTo(240e3, 4);
    // Edges of one and a half sides: 9/4·(1 − 2/27)/6 = 25/72 of p·A carries it, its middle 0.355 of the side from the edge.
    expect(pressure(pressureUnder(square, 40e3, 0.29, 0.29))).toBeCloseTo((10e3 * 72) / 25, 4);
  });

  it('tips where the load is outside, and only there', () => {
    const under = { length: 2, width: 3 };
    expect(pressureUnder(under, 1e3, 1, 0).contact).toBe('tips');
    expect(pressureUnder(under, 1e3, 0, 1.5).contact).toBe('tips');
    expect(pressureUnder(under, 1e3, 0.999, 1.499).contact).toBe('part');
    expect(pressureUnder(under, 1e3, 0.3, 0.05).contact).toBe('full');
  });

  it('carries the load where the load is, whichever part lifts', () => {
    let lifted = 0;
    fc.assert(
      fc.property(sides, sides, share(0.45), share(0.45), (length, width, x, y) => {
        const toe = pressureUnder({ length, width }, 50e3, x * length, y * width);
        if (toe.contact !== 'part') return;
        lifted += 1;
        const found = onGrid(toe, length, width);
        expect(Math.abs(found.load / 50e3 - 1)).toBeLessThan(2e-3);
        expect(Math.abs(found.offLength - x * length)).toBeLessThan(1e-3 * length);
        expect(Math.abs(found.offWidth - y * width)).toBeLessThan(1e-3 * width);
        expect(Math.abs(found.contactShare - toe.contactShare)).toBeLessThan(6e-3);
      }),
      { numRuns: 60 },
    );
    expect(lifted).toBeGreaterThan(30);
  });

  it('does so to the last digits on a grid that follows the edge of what is pressed', () => {
    // Five kinds: one edge, strips both ways, a corner, all but a corner.
    for (const [x, y] of [
      [0.3, 0],
      [0.1, 0.3],
      [0.32, 0.05],
      [0.3, 0.35],
      [0.12, 0.15],
    ] as const) {
      const toe = pressureUnder({ length: 2, width: 3 }, 50e3, 2 * x, 3 * y);
      if (toe.contact !== 'part') throw new Error('lifts in part');
      const strips = 20000;
      let [sum, along, across] = [0, 0, 0];
      for (let strip = 0; strip < strips; strip += 1) {
        const at = (2 * (strip + 0.5)) / strips;
        const high = 1 - at / (toe.fadeLength ?? Number.POSITIVE_INFINITY);
        if (high <= 0) continue;
        const slope = 1 / (toe.fadeWidth ?? Number.POSITIVE_INFINITY);
        const to = slope > 0 ? Math.min(3, high / slope) : 3;
        const force = high * to - (slope * to ** 2) / 2;
        sum += force;
        along += force * at;
        across += (high * to ** 2) / 2 - (slope * to ** 3) / 3;
      }
      expect(((toe.pressure * sum * 2) / strips / 50e3 - 1) * 1e6).toBeCloseTo(0, 1);
      expect(1 - along / sum).toBeCloseTo(2 * x, 7);
      expect(1.5 - across / sum).toBeCloseTo(3 * y, 7);
    }
  });

  it('goes over from one kind to the next without a step, and grows with the moment', () => {
    for (const [length, width] of [
      [1, 1],
      [1, 2.5],
    ] as const) {
      for (let heading = 0; heading <= 90; heading += 2.5) {
        const along = Math.cos((heading * Math.PI) / 180);
        const across = Math.sin((heading * Math.PI) / 180);
        const tips = Math.min(length / 2 / along, width / 2 / Math.max(across, 1e-12));
        let last = 0;
        for (let step = 0; step < 2000; step += 1) {
          const off = (0.9 * tips * step) / 2000;
          const now = pressure(pressureUnder({ length, width }, 1, off * along, off * across));
          expect(now, `${heading}°, ${off}`).toBeGreaterThan(last);
          if (step > 0) expect(now / last, `${heading}°, ${off}`).toBeLessThan(1.01);
          last = now;
        }
      }
    }
  });

  it('is the same from both sides of the kern', () => {
    for (const [x, y] of [
      [1 / 6, 0],
      [0, 1 / 6],
      [1 / 12, 1 / 12],
      [1 / 9, 1 / 18],
    ] as const) {
      const inside = pressureUnder({ length: 2, width: 3 }, 1e3, 2 * x * (1 - 1e-9), 3 * y * (1 - 1e-9));
      const outside = pressureUnder({ length: 2, width: 3 }, 1e3, 2 * x * (1 + 1e-9), 3 * y * (1 + 1e-9));
      expect([inside.contact, outside.contact]).toEqual(['full', 'part']);
      expect(pressure(outside) / pressure(inside)).toBeCloseTo(1, 7);
      expect(pressure(inside)).toBeCloseTo((2 * 1e3) / 6, 4);
    }
  });

  it('turns with the block', () => {
    fc.assert(
      fc.property(sides, sides, share(0.49), share(0.49), (length, width, x, y) => {
        const one = pressure(pressureUnder({ length, width }, 1e4, x * length, y * width));
        const turned = pressure(pressureUnder({ length: width, width: length }, 1e4, y * width, -x * length));
        expect(Math.abs(turned / one - 1)).toBeLessThan(1e-9);
      }),
    );
  });

  it('near an axis is that on the axis', () => {
    for (const off of [0.1, 0.2, 0.3, 0.4]) {
      const on = pressure(pressureUnder({ length: 1, width: 1 }, 1, off, 0));
      expect(pressure(pressureUnder({ length: 1, width: 1 }, 1, off, 3e-8)) / on).toBeCloseTo(1, 5);
      expect(pressure(pressureUnder({ length: 1, width: 1 }, 1, off, 1e-6)) / on).toBeCloseTo(1, 4);
    }
  });

  it('refuses a block without a size and a footing without weight', () => {
    expect(() => pressureUnder({ length: 0, width: 1 }, 1, 0, 0)).toThrow('above zero');
    expect(() => pressureUnder({ length: 1, width: Number.NaN }, 1, 0, 0)).toThrow('above zero');
    expect(() => pressureUnder({ length: 1, width: 1 }, 0, 0, 0)).toThrow('no pressure');
  });
});

describe('the heading that presses hardest', () => {
  it('is on a square the corner, up to 1.35 times an axis, until it nearly tips', () => {
    let most = 0;
    for (let off = 0.01; off <= 0.35; off += 0.005) {
      const under = { length: 1, width: 1 };
      const worst = worstToePressure(under, 1, off);
      expect((worst.heading * 180) / Math.PI).toBeCloseTo(45, 2);
      most = Math.max(most, pressure(worst) / pressure(pressureUnder(under, 1, off, 0)));
    }
    // "up to 1.35": the largest is 1.3527.
    expect(most).toBeCloseTo(1.35, 2);
    expect(most).toBeGreaterThan(1.35);
  });

  it('presses no less than any heading tried', () => {
    fc.assert(
      fc.property(sides, sides, share(0.499), share(Math.PI / 2), (length, width, off, heading) => {
        const moment = off * Math.min(length, width) * 1e4;
        const there = pressureUnder(
          { length, width },
          1e4,
          (moment / 1e4) * Math.cos(heading),
          (moment / 1e4) * Math.sin(heading),
        );
        expect(pressure(worstToePressure({ length, width }, 1e4, moment))).toBeGreaterThanOrEqual(
          pressure(there) * (1 - 1e-9),
        );
      }),
      { numRuns: 400 },
    );
  });

  it('tips where one axis tips', () => {
    expect(worstToePressure({ length: 2, width: 1 }, 1e3, 500).contact).toBe('tips');
    expect(worstToePressure({ length: 1, width: 2 }, 1e3, 500).contact).toBe('tips');
    expect(worstToePressure({ length: 1, width: 2 }, 1e3, 499).contact).toBe('part');
  });
});

describe('the moment that comes to a pressure', () => {
  it('presses to it in the heading that presses hardest, on blocks of any shape', () => {
    let lifted = 0;
    fc.assert(
      fc.property(sides, sides, share(1), (length, width, part) => {
        const load = 5e4;
        // From a little more than the load alone presses to thirty times that.
        const limit = (load / (length * width)) * (1.01 + 29 * part ** 2);
        const moment = momentToPressure({ length, width }, load, limit);
        const toe = worstToePressure({ length, width }, load, moment);
        if (toe.contact === 'part') lifted += 1;
        expect(Math.abs(pressure(toe) / limit - 1)).toBeLessThan(1e-7);
        expect(pressure(worstToePressure({ length, width }, load, moment * 1.001))).toBeGreaterThan(limit);
        expect(pressure(worstToePressure({ length, width }, load, moment * 0.999))).toBeLessThan(limit);
      }),
      { numRuns: 300 },
    );
    expect(lifted).toBeGreaterThan(100);
  });

  it('is none where the load alone presses as much', () => {
    expect(momentToPressure({ length: 2, width: 2 }, 40e3, 10e3)).toBe(0);
    expect(momentToPressure({ length: 2, width: 2 }, 40e3, 9e3)).toBe(0);
    // P/A·(1 + 6e/L) along both axes at 45°: 10 kPa·(1 + 2·6·0.1/2) at e = 0.1·√2.
    expect(momentToPressure({ length: 2, width: 2 }, 40e3, 16e3)).toBeCloseTo(40e3 * 0.1 * Math.SQRT2, 5);
  });
});
