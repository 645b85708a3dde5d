import type { AreaKind } from '../areas/index.ts';
import { UNKNOWN_AREA } from './common-coefficients.ts';
import type { Method, RatedAreas } from './method.ts';

/** Kinds that may be answered where a maker does not say which area he means. */
export const RATED_AREA_KINDS: readonly AreaKind[] = ['effective', 'projected-round', 'projected-flat', 'flat-plate'];

/**
 * A reading whose two ends are the same.
 *
 * low = high
 *
 * @param factor both of them [-]
 * @example only(1).high // 1
 * @source derived
 */
export function only(factor: number): ReturnType<RatedAreas['factor']> {
  return { low: factor, high: factor };
}

/**
 * Rated areas by a method that goes by shapes.
 *
 * effective and projected-round 1; projected-flat and the least of flat-plate: the compact flat; the most 1.8
 *
 * @example ratedByShape({ round: 1.2, flat: 2, compactFlat: 1.2 }).factor('unknown').high // 1.8
 */
export function ratedByShape(slender: Method['slender']): RatedAreas {
  const { compactFlat } = slender;
  return {
    factor: (kind, coefficient) => {
      switch (kind) {
        case 'effective':
          return only(1);
        case 'projected-round':
          return only(coefficient ?? 1);
        case 'projected-flat':
          return only(coefficient ?? compactFlat);
        // What a plate itself would catch is the least he can have meant; tubes at two thirds, as the old rule has it, the most.
        case 'flat-plate':
          return { low: compactFlat, high: UNKNOWN_AREA.most };
        case 'unknown':
          return { low: UNKNOWN_AREA.least, high: UNKNOWN_AREA.most };
      }
    },
    asked: RATED_AREA_KINDS.filter((kind) => kind !== 'projected-flat'),
  };
}
