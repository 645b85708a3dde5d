import type { Wind } from '../methods/index.ts';
import type { Check } from './check-list.ts';

/** What one link leaves at one height. */
export interface RoomByLink {
  readonly height: number;
  readonly on: 'tower' | 'mast';
  /** Id of the link. */
  readonly link: string;
  /** Effective area, alike from all sides [m²]; negative where too much hangs already. */
  readonly area: number;
  /** Force, or moment [N, N·m]; absent where a use is what grows. */
  readonly of?: Check['of'];
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
 * @param wind the wind [-]
 * @param height above ground [m]
 * @returns the force [N/m²]
 * @source derived
 */
export function forcePerArea(wind: Wind, height: number): number {
  const blown = wind.forceDirectionFactor * wind.pressure(height) * wind.gustEffect();
  return wind.level * Math.max(blown, wind.leastPressure);
}
