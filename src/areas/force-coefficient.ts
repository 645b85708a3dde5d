import type { Trace } from '../foundation/index.ts';

/**
 * A drag coefficient as a function of the flow: constant below a limit of the flow measure, by the method's rule above.
 * The measure is C = √(I·Kzt·Kz)·V·D [m²/s] in TIA-222, D·√q [m·√Pa] in ASCE 7.
 */
export interface ForceCoefficient {
  /** The coefficient in slow flow, up to `limit`. */
  readonly slow: number;
  /** Flow measure up to which `slow` holds; Infinity where the coefficient never changes. */
  readonly limit: number;
  /** Flow measure from which it changes no more; absent: where it goes on changing, or steps once. */
  readonly fastFrom?: number;
  readonly at: (flow: number, trace?: Trace) => number;
}

/** Where a choice is open, it is taken high in the demand and low in the capacity. */
export type Role = 'demand' | 'capacity';

/** Wind on a face, or on a corner (square: the diagonal; triangle: 60° round from a face). */
export const WIND_DIRECTIONS = ['face', 'corner'] as const;
export type WindDirection = (typeof WIND_DIRECTIONS)[number];

/**
 * A coefficient that never changes with the flow.
 *
 * C(flow) = C
 *
 * @param coefficient the coefficient [-]
 * @param explain records how it comes about, or nothing
 * @example constantCoefficient(1.2).at(100) // 1.2
 * @source derived
 */
export function constantCoefficient(coefficient: number, explain?: (trace: Trace) => number): ForceCoefficient {
  return {
    slow: coefficient,
    limit: Number.POSITIVE_INFINITY,
    at: explain ? (_flow, trace) => (trace ? explain(trace) : coefficient) : () => coefficient,
  };
}
