import { describe, expect, it } from 'vitest';
import { pressureOnWire } from '../../src/margins/formulas.ts';
import {
  growthOfPull,
  growthOfWire,
  loadOfWire,
  pullGrowth,
  stiffnessOfWire,
  wirePullItems,
} from '../../src/structure/wire-pull.ts';

/** 30 m level, hard copper of 1.63 mm, sagging 0.5 m in still air. */
const WIRE = {
  count: 1,
  chord: 30,
  level: 1,
  heading: 0,
  diameter: 0.00163,
  tension: 40.9275,
  stiffness: stiffnessOfWire.of(117e9, 0.00163),
  weight: 0.1819,
  weightWithIce: 0.1819,
};

describe('what the wind adds to the pull of wires', () => {
  it('is 246.5 N in 1000 Pa on the copper wire', () => {
    expect(loadOfWire.of(1000, 1.2, 0.00163, 1, 0)).toBeCloseTo(1.956, 9);
    expect(pressureOnWire.of(0.6, 1, 2000, 0.85)).toBeCloseTo(1020, 9);
    expect(pullGrowth([WIRE], 1000)).toBeCloseTo(287.5 - 40.93, 0);
    expect(pullGrowth([{ ...WIRE, count: 2 }], 1000)).toBeCloseTo(2 * pullGrowth([WIRE], 1000), 9);
    expect(pullGrowth([WIRE], 0)).toBeCloseTo(0, 9);
  });

  it('counts 0.6 of the strength level where that is more', () => {
    expect(growthOfWire.of(1, 1, 100, 150, 40)).toBe(60);
    expect(growthOfWire.of(1, 1, 100, 180, 40)).toBe(68);
  });

  it('is a sum of vectors: nothing for two that run against each other, one of two at a right angle at their best heading', () => {
    expect(growthOfPull.of([3, 4], [0, Math.PI / 2])).toBeCloseTo(5, 12);
    const one = pullGrowth([WIRE], 1000);
    expect(pullGrowth([WIRE, { ...WIRE, heading: Math.PI }], 1000)).toBeCloseTo(0, 9);
    const square = pullGrowth([WIRE, { ...WIRE, heading: Math.PI / 2 }], 1000);
    expect(square).toBeGreaterThanOrEqual(one);
    expect(square).toBeLessThan(Math.SQRT2 * one);
    // Three evenly spread: what the wind across one of them adds to it, the two others pull back in part.
    const three = [0, 1, 2].map((number) => ({ ...WIRE, heading: (number * 2 * Math.PI) / 3 }));
    expect(pullGrowth(three, 1000)).toBeLessThan(one);
  });

  it('is spared by no opposite wire of which nobody tells the conductor', () => {
    const untold = {
      ...WIRE,
      stiffness: stiffnessOfWire.of(190e9, 0.00163),
      softest: stiffnessOfWire.of(69e9, 0.00163),
    };
    const told = (stiffness: number) => ({ ...WIRE, stiffness });
    const opposite = <T extends typeof WIRE>(wire: T) => ({ ...wire, heading: Math.PI });
    const both = pullGrowth([untold, opposite(untold)], 1000);
    const unlike = pullGrowth([told(untold.stiffness), opposite(told(untold.softest))], 1000);
    expect(both).toBeCloseTo(unlike, 9);
    expect(both).toBeGreaterThan(10);
    expect(pullGrowth([untold], 1000)).toBeCloseTo(pullGrowth([told(untold.stiffness)], 1000), 9);
  });

  it('is more with ice, and for steel than for copper', () => {
    expect(pullGrowth([{ ...WIRE, diameter: 0.01363, weightWithIce: 1.4 }], 420)).toBeGreaterThan(
      pullGrowth([WIRE], 420),
    );
    const steel = { ...WIRE, stiffness: stiffnessOfWire.of(190e9, 0.00163) };
    expect(pullGrowth([steel], 1000)).toBeGreaterThan(pullGrowth([WIRE], 1000));
  });

  it('stands once for all wires of one height, and not for those whose tension nobody gave', () => {
    const wire = (name: string, low: number, pull?: number) => ({
      name,
      at: `/loads/${name}`,
      low,
      high: low,
      count: 1,
      turns: false,
      on: 'tower' as const,
      offset: 0,
      shape: { kind: 'wire' as const, diameter: 0.002, distance: 20, rise: -5, heading: 1, ...(pull ? { pull } : {}) },
    });
    const items = wirePullItems({ loads: [wire('0', 9, 50), wire('1', 9, 60), wire('2', 7, 60), wire('3', 7)] });
    expect(items.map(({ name }) => name)).toEqual(['wind on the pull of 0, 1', 'wind on the pull of 2']);
  });
});
