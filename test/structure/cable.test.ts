import { describe, expect, it } from 'vitest';
import {
  sagOf,
  tensionFormula,
  tensionOf,
  unstrainedLength,
  unstrainedLengthFormula,
} from '../../src/structure/cable.ts';
import fc from '../fast-check.ts';

/** A wire of hard copper, 30 m level, 1.63 mm, that sags 0.5 m in still air. */
const COPPER = { chord: 30, stiffness: 117e9 * (Math.PI / 4) * 0.00163 ** 2, weight: 0.1819 };
const STILL = (COPPER.weight * COPPER.chord ** 2) / (8 * 0.5);

/** The half-length of the exact elastic catenary between two ends level with each other, by its level pull [N] [m]. */
const reach = (pull: number, load: number, unstrained: number, stiffness: number) =>
  (pull / load) * Math.asinh((load * unstrained) / 2 / pull) + (pull * unstrained) / 2 / stiffness;

/** Its level pull, by bisection [N]. */
function byCatenary(chord: number, load: number, unstrained: number, stiffness: number): number {
  let [low, high] = [1e-6, 1e7];
  for (let turn = 0; turn < 200; turn += 1) {
    const middle = Math.sqrt(low * high);
    if (2 * reach(middle, load, unstrained, stiffness) < chord) low = middle;
    else high = middle;
  }
  return low;
}

const apart = (one: number, other: number) => Math.abs(one / other - 1);

describe('a cable as an elastic parabola', () => {
  const { chord, stiffness, weight } = COPPER;
  const unstrained = unstrainedLength(chord, weight, STILL, stiffness);
  const inWind = Math.hypot(1.956, weight);
  const cable = { chord, stiffness, unstrained };

  it('is a copper wire of 41 N in still air and of 287 N in a wind of 1.956 N/m', () => {
    expect(apart(STILL, 40.93)).toBeLessThan(1e-4);
    expect(apart(stiffness, 244.1e3)).toBeLessThan(1e-3);
    expect(apart(tensionOf(cable, inWind), 287.5)).toBeLessThan(1e-3);
    expect(sagOf(chord, inWind, tensionOf(cable, inWind))).toBeCloseTo(0.769, 3);
    expect(apart(tensionOf(cable, weight), STILL)).toBeLessThan(1e-9);
  });

  it('is tighter by cold and by a stiffer wire', () => {
    const cold = { ...cable, unstrained: unstrained * (1 - 17e-6 * 30) };
    expect(apart(tensionOf(cold, inWind), 323.1)).toBeLessThan(1e-3);
    const clad = 165e9 * (Math.PI / 4) * 0.00163 ** 2;
    const ofClad = { chord, stiffness: clad, unstrained: unstrainedLength(chord, weight, STILL, clad) };
    expect(apart(tensionOf(ofClad, inWind), 307.7)).toBeLessThan(0.03);
    const stiff = { chord, stiffness: 1e14, unstrained: unstrainedLength(chord, weight, STILL, 1e14) };
    expect(apart(tensionOf(stiff, inWind), 442)).toBeLessThan(1e-3);
  });

  it('is a guy of 3/16 in strand at rest, and by 40 K', () => {
    const guy = { chord: Math.hypot(14, 10), stiffness: 2.168e6 };
    const across = (1.065 * 14) / guy.chord;
    const length = unstrainedLength(guy.chord, across, 1775, guy.stiffness);
    expect(length).toBeCloseTo(17.1906, 3);
    expect(sagOf(guy.chord, across, 1775)).toBeCloseTo(0.018, 3);
    const at = (kelvin: number) => tensionOf({ ...guy, unstrained: length * (1 + 12e-6 * kelvin) }, across);
    expect(apart(at(-40), 2813)).toBeLessThan(2e-3);
    expect(apart(at(40), 762)).toBeLessThan(5e-3);
  });

  it('sags as a conductor of 700 ft does in a published table', () => {
    // lbf and ft: 2.509 lb/ft at 11,318 lbf; 1.094 lb/ft at 5,429 lbf.
    expect(sagOf(700, 2.509, 11_318)).toBeCloseTo(13.58, 2);
    expect(sagOf(700, 1.094, 5429)).toBeCloseTo(12.34, 2);
  });

  it('gives itself back by the formula of the working', () => {
    const found = tensionOf(cable, inWind);
    expect(tensionFormula.of(inWind, chord, unstrained, found, stiffness)).toBeCloseTo(found, 6);
    expect(unstrainedLengthFormula.of(chord, weight, STILL, stiffness)).toBe(unstrained);
  });

  it('is the exact elastic catenary from 0.3 % below to 2.5 % above, up to a sag of a twelfth', () => {
    const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(
        between(5, 200),
        between(0.1, 5),
        between(0.005, 0.08),
        between(1, 8),
        between(2e5, 5e6),
        (c, w, sag, times, EA) => {
          const still = (w * c) / (8 * sag);
          const length = unstrainedLength(c, w, still, EA);
          const load = times * w;
          const found = tensionOf({ chord: c, unstrained: length, stiffness: EA }, load);
          fc.pre(sagOf(c, load, found) / c <= 1 / 12);
          const exact = byCatenary(c, load, length, EA);
          expect(found / exact).toBeGreaterThan(0.997);
          expect(found / exact).toBeLessThan(1.025);
        },
      ),
    );
  });

  it('is without tension where it lies slack and nothing loads it, and never less for more load', () => {
    expect(tensionOf({ chord: 30, unstrained: 31, stiffness: 1e5 }, 0)).toBe(0);
    expect(tensionOf({ chord: 30, unstrained: 29.9, stiffness: 1e5 }, 0)).toBeCloseTo((1e5 * 0.1) / 29.9, 6);
    let before = 0;
    for (const load of [0.01, 0.1, 1, 10]) {
      const tension = tensionOf(cable, load);
      expect(tension).toBeGreaterThan(before);
      before = tension;
    }
  });
});
