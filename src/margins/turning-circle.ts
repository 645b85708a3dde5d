import { halfElementFrom, type Load } from '../structure/index.ts';

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
 * Half the boom and half the longest element, as far as the plan tells them.
 *
 * l_b/2, l_e/2
 *
 * @param load what hangs there [-]
 * @returns both halves; 0 where the plan tells nothing [m]
 * @source derived
 */
export function halvesOf(load: Load): { readonly halfBoom: number; readonly halfElement: number } {
  const { shape, boom, reach } = load;
  let halfBoom = (boom ?? 0) / 2;
  let halfElement = 0;
  if (shape.kind === 'tube' && shape.along !== 'upright') {
    if (shape.along === 'boom') halfBoom = Math.max(halfBoom, shape.length / 2);
    else halfElement = shape.length / 2;
  }
  if (shape.kind === 'tubes') {
    for (const row of shape.rows) {
      const half = row.pieces.reduce((sum, piece) => sum + piece.length, 0) / 2;
      if (row.along === 'boom') halfBoom = Math.max(halfBoom, half);
      if (row.along === 'element') halfElement = Math.max(halfElement, half);
    }
  }
  if (reach !== undefined && reach >= halfBoom)
    halfElement = Math.max(halfElement, halfElementFrom(reach, 2 * halfBoom));
  return { halfBoom, halfElement };
}

/**
 * The circles swept by what the rotator turns.
 *
 * r = √((l_b/2)² + (l_e/2)²), or the reach that the plan gives
 *
 * @param loads everything that hangs on the tower [-]
 * @returns a circle for each thing that turns, in the order of the plan [-]
 * @source derived
 */
export function turningCircles(loads: readonly Load[]): readonly TurningCircle[] {
  return loads
    .filter((load) => load.turns)
    .map((load) => {
      const { halfBoom, halfElement } = halvesOf(load);
      const radius = load.reach ?? Math.hypot(halfBoom, halfElement);
      return { name: load.name, at: load.at, height: load.low, ...(radius > 0 ? { radius } : {}) };
    });
}
