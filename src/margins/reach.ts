import { halfElementFrom, type Load } from '../structure/index.ts';

/** How far an antenna spreads from what it hangs on [m]. */
export interface Halves {
  readonly halfBoom: number;
  readonly halfElement: number;
}

/**
 * Half the boom and half the longest element of a load, as far as the plan tells them.
 *
 * @returns both halves [m]; none where nothing tells
 */
export function halvesOf(load: Load): Halves {
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
 * How far from the mast the farthest tip of a load goes: as given, else as if its longest element sat at the end of its
 * boom, which is the most it can be.
 *
 * √((B/2)² + (E/2)²)
 *
 * @returns the distance [m]; 0 where nothing tells
 * @source derived
 */
export function farthestTip(load: Load): number {
  if (load.reach !== undefined) return load.reach;
  const { halfBoom, halfElement } = halvesOf(load);
  return Math.hypot(halfBoom, halfElement);
}
