import { describe, expect, it } from 'vitest';
import { FOOT, POUND_FORCE } from '../../src/foundation/index.ts';
import { type SpreadCause, type SpreadRow, spreadOf } from '../../src/margins/index.ts';
import { assessed } from './any-plan.ts';
import { demoPlan } from './demo-plan.ts';

/*
 * Three demo plans by every method, worked out by plain arithmetic apart from the program, as the last part of
 * reference/plans/README.md shows it: demand in lbf where the plan's own use is decided, capacity, and factors at the top
 * over those of the plan's own method.
 */
interface Convention {
  readonly id: string;
  readonly capacity: number;
  readonly demand: Readonly<Record<string, number>>;
  /** By EN 1991-1-4 another place may decide [ft]. */
  readonly european: { readonly ratio: number; readonly at: number };
  readonly cause: { readonly method: string; readonly factor: SpreadCause; readonly ratio: number };
}

const BY_HAND: readonly Convention[] = [
  {
    id: 'ten-numbers',
    capacity: 597.735,
    demand: {
      'asce7-10': 598.42,
      'asce7-16': 598.42,
      'asce7-22': 597.46,
      'tia222-g': 588.21,
      'tia222-h': 588.21,
      'eia222-f': 557.33,
    },
    european: { ratio: 1.182885, at: 8 },
    // 1/0.85: EN has no direction factor; its speed, level and height law together are 0.9171.
    cause: { method: 'en1991-1-4', factor: 'direction', ratio: 1 / 0.85 },
  },
  {
    id: 'river-bluff',
    capacity: 625.95,
    demand: {
      'asce7-10': 590.27,
      'asce7-16': 590.27,
      'asce7-22': 589.07,
      'tia222-g': 643.22,
      'tia222-h': 643.22,
      'eia222-f': 428.83,
    },
    european: { ratio: 1.091143, at: 0 },
    // (67.460/105)² · 0.75/0.6 · 1.2187/0.85
    cause: { method: 'eia222-f', factor: 'design-wind', ratio: 0.7398 },
  },
  {
    id: 'house-bracket',
    capacity: 260.36,
    demand: {
      'asce7-10': 197.22,
      'asce7-16': 197.22,
      'asce7-22': 193.14,
      'tia222-g': 197.66,
      'tia222-h': 197.66,
      'eia222-f': 246.44,
    },
    european: { ratio: 0.93997, at: 18 },
    // F knows one ground: 1.1450/0.8243.
    cause: { method: 'eia222-f', factor: 'height-and-ground', ratio: 1.389 },
  },
];

describe.each(BY_HAND)('what is convention in $id', ({ id, capacity, demand, european, cause }) => {
  const spread = spreadOf(assessed(demoPlan(id)));

  it('is what pencil and paper say, by every method', () => {
    const methods = [...Object.keys(demand), 'en1991-1-4'];
    expect(spread.rows.map(({ method }) => method).sort()).toEqual(methods.sort());
    for (const { method, result } of spread.rows) {
      if (method === 'en1991-1-4') {
        expect(Math.abs((result?.ratio as number) / european.ratio - 1)).toBeLessThan(1e-3);
        expect((result?.height as number) / FOOT).toBeCloseTo(european.at, 6);
        continue;
      }
      const byHand = demand[method] as number;
      // The hand cuts its slices at other heights.
      const near = (computed: number, worked: number) =>
        expect(Math.abs(computed / worked - 1), method).toBeLessThan(1e-3);
      near((result?.demand as number) / POUND_FORCE, byHand);
      near((result?.capacity as number) / POUND_FORCE, capacity);
      near(result?.ratio as number, byHand / capacity);
    }
  });

  it('has the cause that pencil and paper name', () => {
    expect(spread.cause).toMatchObject({ method: cause.method, factor: cause.factor });
    expect(spread.cause?.ratio).toBeCloseTo(cause.ratio, 3);
  });
});

it('the hill of the bluff is another by TIA than by ASCE, and none by F', () => {
  const { rows } = spreadOf(assessed(demoPlan('river-bluff')));
  const hill = (method: string) => (rows.find((row) => row.method === method) as SpreadRow).factors.hill;
  expect(hill('tia222-h')).toBeCloseTo(1.2395 / 1.1901, 3);
  expect(hill('eia222-f')).toBeCloseTo(1 / 1.1901, 3);
  expect(hill('en1991-1-4')).toBeCloseTo(1.2584 / 1.1901, 3);
});
