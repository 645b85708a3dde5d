import { describe, expect, it } from 'vitest';
import { baseByWind } from '../../src/margins/index.ts';
import { assessed } from './any-plan.ts';
import { demoPlan } from './demo-plan.ts';

describe('the base of a tower in the wind on a face and on a corner', () => {
  it('has the ratio of its check in one of them, and the forces of the wind loads in the other', () => {
    const assessment = assessed(demoPlan('headland-ridge'));
    const { model, unfavourable, checks, reactions, windLoads } = assessment;
    const rows = baseByWind(model, unfavourable);
    expect(new Set(rows.map(({ direction }) => direction))).toEqual(new Set(['face', 'corner']));
    const worst = rows.reduce((most, each) => (each.ratio > most.ratio ? each : most));
    // The check is governed by the wind on a face, the wind loads are of the wind on a corner.
    expect(worst.ratio).toBeCloseTo(checks[0]?.result?.ratio as number, 9);
    expect(worst.direction).toBe('face');
    expect(windLoads.direction).toBe('corner');
    const corner = rows.find(({ direction, of }) => direction === 'corner' && of === 'moment');
    expect(corner?.demand).toBeDefined();
    // What the wind loads have is the wind’s part; the weight aloft is beside it.
    expect((corner?.demand ?? 0) - (corner?.ofWeight ?? 0)).toBeCloseTo(
      reactions.allowable.moment - reactions.withoutWind.moment,
      6,
    );
    for (const { demand, capacity, ratio } of rows) expect(ratio).toBeCloseTo(demand / capacity, 9);
  });

  it('is nothing of its own where the wind meets the tower alike from all sides', () => {
    const { model, unfavourable } = assessed(demoPlan('light-mast'));
    expect(baseByWind(model, unfavourable)).toEqual([]);
  });
});
