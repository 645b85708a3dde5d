import { describe, expect, it } from 'vitest';
import { ONE_HEIGHT, profileOf, type SlicesInWind, sliceForces, type WindItem } from '../../src/structure/index.ts';
import fc from '../fast-check.ts';
import { anyPlan, assessed } from './any-plan.ts';

/*
 * The largest shear and moment of what hangs on a whole plan, once more by turning the wind, and by itself the rotator,
 * in steps of a tenth of a degree over plain sums of cos² and sin².
 */
const STEPS = 1800;
const HEADINGS = Array.from({ length: STEPS }, (_, step) => (step * Math.PI) / STEPS);

describe('the worst heading of a whole plan', { timeout: 60_000 }, () => {
  it('is never beaten by a sweep of a tenth of a degree, and is reached', () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const { model, site } = assessed(plan);
        const { appurtenances: cut } = model.scenarios[0];
        const forces = sliceForces(cut, site.speed, 'unfavourable', true);
        const profile = profileOf(cut, forces, model.levels, model.hold);
        // The foot, and every third level.
        model.levels.forEach(({ z, zone }, index) => {
          if (zone !== 'plain' || (z !== 0 && index % 3 !== 0)) return;
          for (const [worst, arm] of [
            [profile.shear[index] as number, () => 1],
            [profile.moment[index] as number, (height: number) => height - z],
          ] as const) {
            const swept = sweep(cut, forces, z, arm);
            expect(swept).toBeLessThanOrEqual(worst * (1 + 1e-9) + 1e-6);
            expect(swept).toBeGreaterThanOrEqual(worst * (1 - 1e-5) - 1e-6);
          }
        });
      }),
      { numRuns: 40 },
    );
  });
});

function sweep(
  cut: SlicesInWind,
  forces: { readonly front: readonly number[]; readonly side: readonly number[] },
  z: number,
  arm: (height: number) => number,
): number {
  const above = cut.slices.flatMap((slice, number) => {
    const { turn, heading, carriedBy } = cut.items[slice.item] as WindItem;
    // What is within a thousandth of a millimetre hangs at the level itself.
    if (carriedBy === 'tower' && slice.z < z - ONE_HEIGHT) return [];
    const front = (forces.front[number] as number) * arm(slice.z);
    const side = (forces.side[number] as number) * arm(slice.z);
    return [{ turn, heading, front, side }];
  });
  const still = above.filter(({ turn }) => turn === 'still' || turn === 'own-worst');
  const largest = (turns: WindItem['turn']) => {
    const group = above.filter(({ turn }) => turn === turns);
    if (group.length === 0) return 0;
    return Math.max(
      ...HEADINGS.map((theta) =>
        group.reduce(
          (sum, { heading, front, side }) =>
            sum + front * Math.cos(theta - heading) ** 2 + side * Math.sin(theta - heading) ** 2,
          0,
        ),
      ),
    );
  };
  return still.reduce((sum, { front }) => sum + front, 0) + largest('turning') + largest('fixed');
}
