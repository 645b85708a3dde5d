import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type Assessment, towerLevels } from '../../src/margins/index.ts';
import fc from '../fast-check.ts';
import { anyPlan, assessed, type Document } from './any-plan.ts';
import { demoPlan } from './demo-plan.ts';

const levelsOf = ({ model, ratios, unfavourable }: Assessment) => towerLevels(model, ratios, unfavourable);
const FOOT = 0.3048;

describe('a tower level by level', () => {
  /* Worked by pencil in reference/plans/README.md, heights, uses in shear, uses in bending. */
  it.each([
    [
      'ten-numbers',
      [38, 28, 18, 8, 0].map((feet) => feet * FOOT),
      [0.787, 0.895, 0.955, 0.984, 1.001],
      [0.806, 0.83, 0.871, 0.903, 0.924],
    ],
    [
      'river-bluff',
      [38, 28, 18, 8, 0].map((feet) => feet * FOOT),
      [0.579, 0.797, 0.861, 0.908, 0.943],
      [0.612, 0.66, 0.722, 0.769, 0.8],
    ],
    ['light-mast', [6, 3, 0], [0.018, 0.013, 0.013], [0.747, 0.746, 0.765]],
  ] as const)('is the pencil’s in %s', (id, heights, sideways, bending) => {
    const levels = levelsOf(assessed(demoPlan(id))).filter(({ place }) => place !== 'top-couple');
    expect(levels.map(({ height }) => Number(height.toFixed(6)))).toEqual(heights.map((z) => Number(z.toFixed(6))));
    levels.forEach((level, index) => {
      expect(level.sideways.ratio).toBeCloseTo(sideways[index] as number, 3);
      expect(level.bending.ratio).toBeCloseTo(bending[index] as number, 3);
    });
  });

  it('tells the couple of the mast: 343.9 lbf asked, 394.3 shown', () => {
    const [, couple] = levelsOf(assessed(demoPlan('river-bluff')));
    expect(couple).toMatchObject({ place: 'top-couple', section: 'section, 4 of 4', sideways: { of: 'shear' } });
    expect((couple?.sideways.demand ?? 0) / 4.4482216).toBeCloseTo(343.9, 0);
    expect((couple?.sideways.capacity ?? 0) / 4.4482216).toBeCloseTo(394.3, 0);
  });

  it('tells the force in sloping, twisted braces apart from the shear', () => {
    const plan: Document = JSON.parse(readFileSync(new URL('by-hand/wholly-told.json', import.meta.url), 'utf8'));
    const level = levelsOf(assessed(plan)).find(({ height, section }) => height === 4 && section === 'low');
    // By the second hand, at 4 m: 664.99 N of what reaches the braces, √3 · 123.89/0.402 = 533.79 N of the twist.
    expect(level?.sideways.of).toBe('braces');
    expect((level?.sideways.demand ?? 0) / (664.99 + 533.79)).toBeCloseTo(1, 3);
    expect((level?.torsion ?? 0) / 123.89).toBeCloseTo(1, 3);
    expect(assessed(plan).checks[0]?.result?.of).toBe('braces');
  });

  it('shows nothing where nothing proves it', () => {
    const levels = levelsOf(assessed({ ...demoPlan('river-bluff'), ratings: [] }));
    expect(levels).toHaveLength(7);
    for (const { sideways, bending } of levels) {
      expect([sideways.capacity, sideways.ratio, bending.capacity, bending.ratio]).toEqual(
        new Array(4).fill(undefined),
      );
      expect(sideways.demand).toBeGreaterThan(0);
    }
  });

  it('holds the use of the tower and of its top as the largest of its own, whatever the plan', () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        // The levels are those of the bad end of what is assumed; a check shows the end that asks more of it.
        const answer = assessed({ ...plan, tower: { ...(plan['tower'] as Document), frequency: 3 } });
        for (const id of ['tower', 'tower-top']) {
          const ratio = answer.checks.find((check) => check.id === id)?.result?.ratio;
          if (ratio === undefined || answer.checks[0]?.because === 'beyond-rating') continue;
          const own = levelsOf(answer).filter(({ place }) => (place === 'top-couple') === (id === 'tower-top'));
          const ratios = own.flatMap(({ sideways, bending }) => [sideways.ratio ?? 0, bending.ratio ?? 0]);
          expect(Math.max(...ratios)).toBeCloseTo(ratio, 9);
        }
      }),
      { numRuns: 100 },
    );
  });
});
