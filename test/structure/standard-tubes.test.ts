import { describe, expect, it } from 'vitest';
import { INCH } from '../../src/foundation/index.ts';
import { allowedBending, STANDARD_PIPES, TUBE_GRADES } from '../../src/structure/index.ts';

const allowedOf = (
  nominal: string,
  schedule: 40 | 80,
  metal: Omit<Parameters<typeof allowedBending>[0], 'outside' | 'wall'>,
) => {
  const pipe = STANDARD_PIPES.find((each) => each.nominal === nominal && each.schedule === schedule);
  if (!pipe) throw new Error(`${nominal} schedule ${schedule} is listed`);
  return allowedBending({ ...metal, outside: pipe.outside, wall: pipe.wall })?.surely;
};

describe('what standard tubes carry', () => {
  it.each([
    ['2', 40, 0.5607],
    ['2', 80, 0.7309],
    ['2-1/2', 40, 1.064],
  ] as const)('%s in schedule %i, by the section modulus of a handbook', (nominal, schedule, S) => {
    const allowed = allowedOf(nominal, schedule, { material: 'steel', yieldStrength: 240e6 }) ?? 0;
    expect(allowed / ((240e6 * S * INCH ** 3) / 1.67)).toBeCloseTo(1, 3);
  });

  it('shows nothing without a yield, and holds the listed aluminium to its rupture', () => {
    expect(allowedOf('2', 40, { material: 'steel' })).toBeUndefined();
    const alloy = TUBE_GRADES.find(({ id }) => id === 'aluminium-6061-t6');
    if (!alloy) throw new Error('the alloy is listed');
    // 38/1.95 = 19.5 ksi is less than 35/1.67 = 21.0 ksi; S of 2 in schedule 40 is 0.5607 in³.
    const allowed = allowedOf('2', 40, alloy) ?? 0;
    expect(allowed / ((38 * 6894757.293 * 0.5607 * INCH ** 3) / 1.95)).toBeCloseTo(1, 3);
  });
});
