import { describe, expect, it } from 'vitest';
import { FOOT, MILE_PER_HOUR, POUND_FORCE } from '../../src/foundation/index.ts';
import { assessed } from './any-plan.ts';
import { demoPlan } from './demo-plan.ts';

/*
 * The three demo plans that have no file of their own here, worked out by hand arithmetic as reference/plans/README.md
 * shows it: uses and forces to the digits that the hand carried.
 */
const useAt = (
  plan: ReturnType<typeof assessed>,
  of: 'shear' | 'moment',
  height: number,
  link: 'tower' | 'tower-top' = 'tower',
) =>
  plan.uses.find(
    ({ check }) =>
      check.link === link && check.of === of && Math.abs((plan.model.levels[check.level]?.z ?? -1) - height) < 1e-6,
  );

describe('the orchard mast', () => {
  const answer = assessed(demoPlan('light-mast'));

  it.each([
    [0, 936.985656, 1164.899427, 0.763052],
    [3, 665.479725, 868.723327, 0.743115],
    [6, 450.527202, 634.239315, 0.743538],
  ])('at %f m', (height, demand, capacity, moment) => {
    const shear = useAt(answer, 'shear', height);
    expect(shear?.demand).toBeCloseTo(demand, 4);
    expect(shear?.capacity).toBeCloseTo(capacity, 4);
    // The hand left out the weight of the lines, 0.02 % of the moment.
    expect(useAt(answer, 'moment', height)?.bad).toBeCloseTo(moment, 3);
  });

  it('is thin, and holds to more than a steady law would give', () => {
    expect(answer.links[0]?.verdict).toBe('thin');
    expect(answer.links[0]?.result?.use).toBeCloseTo(0.804349, 6);
    expect(answer.links[0]?.result?.holdsTo?.steady).toBe(false);
  });
});

describe('the crank-up on the gable', () => {
  const answer = assessed(demoPlan('house-bracket'));
  const pounds = (value: number | undefined) => (value ?? 0) / POUND_FORCE;

  it.each([
    [33, 135.506582, 197.409947, 0.608778],
    [18, 197.548194, 260.363507, 0.670586],
  ])('at %f ft', (feet, demand, capacity, moment) => {
    const shear = useAt(answer, 'shear', feet * FOOT);
    expect(pounds(shear?.demand)).toBeCloseTo(demand, 4);
    expect(pounds(shear?.capacity)).toBeCloseTo(capacity, 4);
    expect(useAt(answer, 'moment', feet * FOOT)?.bad).toBeCloseTo(moment, 5);
  });

  it('compares nothing below the bracket', () => {
    for (const { check } of answer.uses) {
      expect((answer.model.levels[check.level]?.z ?? 0) / FOOT).toBeGreaterThan(17.999);
    }
    expect(answer.cautions.map((caution) => caution.code)).toContain('bracket-not-checked');
  });

  it('has the couple of its mast', () => {
    const couple = useAt(answer, 'shear', 50 * FOOT, 'tower-top');
    expect(pounds(couple?.demand)).toBeCloseTo(81.561156, 4);
    expect(couple?.bad).toBeCloseTo(0.637344, 5);
  });

  it('is within, and holds to 110/√0.75874 mph', () => {
    expect(answer.links[0]?.verdict).toBe('within');
    expect((answer.links[0]?.result?.holdsTo?.design ?? 0) / MILE_PER_HOUR).toBeCloseTo(110 / Math.sqrt(0.7587399), 3);
  });
});

describe('the guyed tower in the back field', () => {
  const answer = assessed(demoPlan('guyed-lattice'));

  it('takes 2.85 as read at its highest guy, 0.376 at best', () => {
    const [tower] = answer.links;
    expect(tower?.result?.use).toBeCloseTo(2.849769, 5);
    // 343.81690 lbf by TIA/EIA-222-F, times 1.8; with the beam effective and the rated wind on the tower above the guy.
    expect(tower?.result?.useRange[0]).toBeCloseTo(0.375975, 5);
    expect(useAt(answer, 'shear', 65 * FOOT)?.bad).toBeCloseTo(2.216096, 5);
    expect(useAt(answer, 'shear', 66 * FOOT, 'tower-top')?.bad).toBeCloseTo(3.130275, 5);
  });

  it('is not shown, since no standard is named behind the wind on the tower itself', () => {
    const [tower] = answer.links;
    expect(tower?.verdict).toBe('not-shown');
    expect(tower?.because).toBe('held');
    expect(tower?.needs).toEqual(['/ratings/0/wind/method']);
  });
});
