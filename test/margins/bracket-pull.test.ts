import { describe, expect, it } from 'vitest';
import { POUND_FORCE } from '../../src/foundation/index.ts';
import { answerText } from '../../src/worksheet/index.ts';
import { assessed, type Document } from './any-plan.ts';

/** A lattice of 50 ft held to a house at these heights. */
const plan = (heights: readonly number[], loads: readonly Document[]) => ({
  units: 'us',
  method: 'tia222-g',
  site: { wind: { speed: 75, basis: 'gust3-nominal' }, exposure: 'C', riskCategory: 'II' },
  tower: {
    support: 'bracketed',
    top: 50,
    shape: 'lattice',
    faces: 3,
    width: 15,
    members: 'round',
    leg: 1.25,
    brace: 0.5,
    panel: 18,
    supportedAt: heights.map((height) => ({ height, by: 'bracket' })),
    pattern: 'zigzag',
  },
  mast: { outside: 2, wall: 0.25, length: 10, inside: 4, yield: 50, bearing: 50 },
  loads: [{ name: 'b', above: 2, front: 5, side: 3, areaKind: 'effective', turns: true, weight: 30 }, ...loads],
  cables: [{ count: 2, diameter: 0.4, weight: 0.1 }],
  ratings: [
    {
      of: 'tower',
      area: 12,
      areaKind: 'effective',
      above: 0,
      supportedAt: heights,
      wind: { speed: 90, method: 'eia222-f' },
      top: 50,
    },
  ],
});

describe('the pull on the highest bracket', () => {
  const wire = (tension: number) => ({
    name: 'dip',
    height: 45,
    on: 'tower',
    shape: 'wire',
    diameter: 0.08,
    to: { distance: 60, height: 20, heading: 90 },
    tension,
    weight: 0.1,
  });
  const pullOf = (heights: readonly number[], loads: readonly Document[]) =>
    (assessed(plan(heights, loads)).reactions.bracketPull as number) / POUND_FORCE;

  /*
   * By sums over thin slices, at the allowable level: 647.33 lbf of wind with a bracket at 20 ft alone, 997.13 lbf with one
   * at 10 ft too, since a lever of 10 ft and not of 20 ft then holds what is above; over 0.96 for the nominal load. The wire
   * pulls 60/65 of its tension level, 25 ft above the bracket: 1 + 1.5·25/20 = 2.875 times that, or 4.75 times. In 10.685 psf
   * that tension, drawn to 0.001, 40 and 400 lbf, is 0.0602, 73.221 and 401.11 lbf, its length by sag that by stretch; at
   * strength level 0.1003, 94.921 and 403.06 lbf. What the wind adds counts over 0.96 as well.
   */
  it.each([
    [[20], 0.001, 674.5],
    [[20], 40, 872.3],
    [[20], 400, 1738.9],
    [[10, 20], 0.001, 1039.0],
    [[10, 20], 400, 2797.6],
  ])('of a tower held at %j with a wire of %d lbf is %d lbf', (heights, tension, pull) => {
    expect(pullOf(heights, [wire(tension)]) / pull).toBeCloseTo(1, 3);
  });

  it('is said in the text, at its level, and of brackets below what is not worked out', () => {
    const text = answerText(assessed(plan([10, 20], [])), []);
    expect(text).toMatch(/^Largest pull on the highest bracket: [\d,.]+ lbf \(nominal level, for footings\)\./m);
    expect(text).toContain('Supports below it can be pushed the other way');
    expect(answerText(assessed(plan([20], [])), [])).not.toContain('Supports below it');
  });

  it('counts what leans off the axis: weight times arm over the lever, times 1.5', () => {
    const box = { name: 'box', height: 45, area: 0.001, areaKind: 'effective', on: 'tower', weight: 80, offset: 0 };
    // 80 lb 3 ft off the axis, 40 ft from bracket to foot: 1.5·240/40 = 9 lbf.
    expect(pullOf([40], [{ ...box, offset: 3 }]) - pullOf([40], [{ ...box, offset: 0 }])).toBeCloseTo(9, 6);
  });

  it('stays a bound where a short span above a long one balances what blows on the long', () => {
    // A beam held at 0, 39 and 40 ft, loaded evenly by w below 39 ft: w·39²/8 at 39 ft, over the span of 1 ft that follows.
    const even = 8.4 * 0.42;
    expect(pullOf([39, 40], [])).toBeGreaterThan((even * 39 ** 2) / 8);
  });
});
