import type { Load, Station } from './station.ts';

/**
 * Whether what carries a load carries it still when it is moved along its mast or its tower.
 *
 * No end of it may leave the mast or the tower that it does not leave now.
 *
 * @param by how far it is moved, upwards [m]
 * @example staysOn({ tower: { foot: 0, top: 10 } }, { on: 'tower', low: 5, high: 6 }, 5) // false
 */
export function staysOn(
  station: Pick<Station, 'tower' | 'mast'>,
  load: Pick<Load, 'on' | 'low' | 'high'>,
  by: number,
): boolean {
  const { tower, mast } = station;
  const [low, high] = [load.low + by, load.high + by];
  if (load.on === 'tower' || !mast) return low >= tower.foot && (load.high > tower.top || high <= tower.top);
  return high <= Math.max(mast.tip, load.high) && low >= Math.min(tower.top, load.low);
}

/**
 * A load moved along what carries it. A wire keeps its pull, and its far end stays where it is.
 *
 * low + by, high + by; of a wire rise − by
 *
 * @param by how far it is moved, upwards [m]
 */
export function movedLoad(load: Load, by: number): Load {
  const { shape } = load;
  return {
    ...load,
    low: load.low + by,
    high: load.high + by,
    ...(shape.kind === 'wire' ? { shape: { ...shape, rise: shape.rise - by } } : {}),
  };
}
