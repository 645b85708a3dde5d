import type { Wind } from '../methods/index.ts';
import type { Comparison } from './comparisons.ts';

export const ROOM_PLACES = ['tower', 'mast'] as const;

/** Where more may hang. */
export interface RoomPlace {
  readonly height: number;
  readonly on: (typeof ROOM_PLACES)[number];
}

/** What one check leaves at one place. */
export interface RoomByCheck extends RoomPlace {
  /** Id of the check. */
  readonly check: string;
  /** Effective area, alike from all sides [m²]; negative where too much hangs already. */
  readonly area: number;
  /** Force, or moment [N, N·m]; absent where a ratio is what grows. */
  readonly of?: Comparison['of'];
  /** Force on one square metre there, at the level of what is compared [N/m²]. */
  readonly perArea: number;
  readonly capacity: number;
  readonly demand: number;
  readonly arm: number;
}

/**
 * Force of a wind on a square metre of effective area at a height.
 *
 * f = λ·max(K_d·q·G, p_min)
 *
 * @param height above ground [m]
 * @returns the force [N/m²]
 * @source derived
 */
export function forcePerArea(wind: Wind, height: number): number {
  const loadEffects = wind.forceDirectionFactor * wind.pressure(height) * wind.gustEffect();
  return wind.toAllowableFactor * Math.max(loadEffects, wind.leastPressure);
}
