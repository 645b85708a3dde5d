import { describe, expect, it } from 'vitest';
import type { DragPart } from '../../src/areas/index.ts';
import {
  icedTowerItems,
  iceLumps,
  iceMassAbove,
  type Section,
  type Station,
  type Tower,
} from '../../src/structure/index.ts';

/** 18 m of three-sided lattice, 0.5 m wide, written as sections that end at some heights. */
function towerOf(ends: readonly number[], taper = 0): Tower {
  const width = (z: number) => 0.5 + taper * (18 - z);
  const sections = ends.slice(1).map((high, index): Section => {
    const low = ends[index] as number;
    return {
      name: `section ${index + 1}`,
      at: `/tower/sections/${index}`,
      low,
      high,
      uniform: false,
      shape: {
        kind: 'lattice',
        faces: 3,
        width: [width(low), width(high)],
        members: 'round',
        solid: { by: 'members', leg: 0.032, brace: 0.01, pattern: 'zigzag', panel: 0.4 },
      },
    };
  });
  return {
    support: 'free',
    foot: 0,
    top: 18,
    sections,
    sectionsGiven: true,
    telescopes: false,
    held: [],
    heldGiven: false,
    asDrawn: true,
    used: false,
  };
}

/** 0.02 m at 10 m, as the tenth root of the height. */
const iceAt = (z: number) => 0.02 * (z / 10) ** 0.1;
const stationOf = (tower: Tower): Station => ({ units: 'si', tower, loads: [], cables: [] });
const moment = (parts: readonly DragPart[]) =>
  parts.reduce((sum, { low, high, front }) => sum + (front * (low + high)) / 2, 0);
const sum = (parts: readonly DragPart[]) => parts.reduce((total, { front }) => total + front, 0);

describe.each([0, 0.02])('ice on a tower with a taper of %d', (taper) => {
  const ways = [
    [0, 18],
    [0, 6, 12, 18],
    [0, 3, 6, 9, 12, 15, 18],
    [0, 4.4, 13.7, 18],
    [0, 0.5, 18],
  ];
  const partsOf = (ends: readonly number[]) =>
    icedTowerItems(towerOf(ends, taper), iceAt).items.flatMap(({ parts }) => parts);

  it('does not move with how its sections are written', () => {
    const first = partsOf([0, 18]);
    for (const other of ways.map(partsOf)) {
      expect(sum(other) / sum(first)).toBeCloseTo(1, 4);
      expect(moment(other) / moment(first)).toBeCloseTo(1, 4);
    }
  });

  it('is that of the height, not of a section’s top', () => {
    const area = (low: number, high: number, z: number) =>
      icedTowerItems(towerOf([0, 18], taper), () => iceAt(z))
        .items.flatMap(({ parts }) => parts)
        .filter((part) => part.low >= low - 1e-9 && part.high <= high + 1e-9)
        .reduce((total, { front }) => total + front, 0);
    const parts = partsOf([0, 18]);
    const here = (low: number, high: number) =>
      sum(parts.filter((part) => part.low >= low - 1e-9 && part.high <= high + 1e-9));
    for (const low of [0, 5, 17]) {
      expect(here(low, low + 1)).toBeGreaterThan(area(low, low + 1, low + 0.4));
      expect(here(low, low + 1)).toBeLessThan(area(low, low + 1, low + 0.6));
    }
  });

  it('weighs the same above a height, however written', () => {
    const massAbove = (ends: readonly number[], z: number) =>
      iceMassAbove(iceLumps(stationOf(towerOf(ends, taper)), iceAt), [{ z, zone: 'clear' }])[0] as number;
    for (const z of [0, 6, 12]) {
      const whole = massAbove([0, 18], z);
      for (const ends of [
        [0, 6, 12, 18],
        [0, 3, 6, 9, 12, 15, 18],
      ]) {
        expect(massAbove(ends, z) / whole).toBeCloseTo(1, 9);
      }
    }
    expect(massAbove([0, 18], 6)).toBeGreaterThan(massAbove([0, 18], 12));
  });
});
