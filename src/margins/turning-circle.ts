import type { Load } from '../structure/index.ts';
import { farthestTip } from './reach.ts';

/** The circle that a thing sweeps when it turns. */
export interface TurningCircle {
  readonly name: string;
  /** JSON pointer into the plan. */
  readonly at: string;
  /** [m] */
  readonly height: number;
  /** Absent: neither boom nor elements nor reach are told [m]. */
  readonly radius?: number;
}

/**
 * The circles swept by what the rotator turns.
 *
 * r: the farthest tip
 *
 * @returns a circle for each thing that turns, in the order of the plan
 */
export function turningCircles(loads: readonly Load[]): readonly TurningCircle[] {
  return loads
    .filter((load) => load.turns)
    .map((load) => {
      const radius = farthestTip(load);
      return { name: load.name, at: load.at, height: load.low, ...(radius > 0 ? { radius } : {}) };
    });
}
