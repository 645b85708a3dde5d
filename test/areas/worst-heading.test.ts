import { describe, expect, it } from 'vitest';
import {
  addToHeadingSum,
  emptyHeadingSum,
  valueAtHeading,
  worstHeading,
  worstOfHeadings,
} from '../../src/areas/index.ts';
import fc from '../fast-check.ts';

// Below this the squares of a sum leave the range of double precision.
const value = fc.oneof(fc.constant(0), fc.double({ min: 1e-9, max: 1000, noNaN: true }));
const thing = fc.record({
  broadside: value,
  endwise: value,
  heading: fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }),
});
const things = fc.array(thing, { minLength: 1, maxLength: 12 });

type Thing = { broadside: number; endwise: number; heading: number };

/** The sum at a wind heading, added up thing by thing. */
function plainly(all: readonly Thing[], theta: number): number {
  return all.reduce(
    (sum, { broadside, endwise, heading }) =>
      sum + broadside * Math.cos(theta - heading) ** 2 + endwise * Math.sin(theta - heading) ** 2,
    0,
  );
}

const summed = (all: readonly Thing[]) =>
  all.reduce(
    (sum, { broadside, endwise, heading }) => addToHeadingSum(sum, broadside, endwise, heading),
    emptyHeadingSum(),
  );

describe('the worst heading in closed form', () => {
  it('is never beaten by a sweep of a tenth of a degree, and is reached', () => {
    fc.assert(
      fc.property(things, (all) => {
        const sum = summed(all);
        const worst = worstOfHeadings(sum);
        let largest = 0;
        for (let step = 0; step < 3600; step += 1) largest = Math.max(largest, plainly(all, (step * Math.PI) / 1800));
        expect(largest).toBeLessThanOrEqual(worst * (1 + 1e-12) + 1e-9);
        expect(plainly(all, worstHeading(sum))).toBeCloseTo(worst, 6);
        // Within half a step of the top a sum of squared cosines has lost no more than (0.05°)² of its swing.
        expect(worst - largest).toBeLessThanOrEqual(worst * 1e-5);
      }),
      { numRuns: 100 },
    );
  });

  it('agrees with the plain sum at any heading', () => {
    fc.assert(
      fc.property(things, fc.double({ min: -10, max: 10, noNaN: true }), (all, theta) => {
        expect(valueAtHeading(summed(all), theta)).toBeCloseTo(plainly(all, theta), 6);
      }),
    );
  });
});
