import type { AreaKind } from '../areas/index.ts';
import type { Rating } from '../margins/index.ts';
import type { Support } from '../structure/index.ts';
import { type Exposure, type Ground, isTerrain, type Terrain } from '../wind/index.ts';

export const GROUND_WORDS = {
  B: 'houses or trees all round',
  C: 'open country',
  D: 'open water or flats upwind',
  '0': 'open sea upwind',
  I: 'a lake or bare flats upwind',
  II: 'open country with single obstacles',
  III: 'villages, suburbs or forest',
  IV: 'a town with tall houses',
} as const satisfies Record<Ground, string>;

export const AREA_WORDS = {
  effective: 'effective area (drag included)',
  'projected-round': 'projected area of round members',
  'projected-flat': 'projected area of flat members',
  'flat-plate': 'flat-plate equivalent area',
  unknown: 'type not stated',
} as const satisfies Record<AreaKind, string>;

export const SUPPORT_WORDS = {
  free: 'free-standing',
  guyed: 'guyed',
  bracketed: 'bracketed to a house',
  roof: 'on a roof',
} as const satisfies Record<Support, string>;

/** What a rating is of. */
export const RATED_WORDS = {
  tower: 'tower',
  mast: 'mast',
  bearing: 'bearing',
  rotator: 'rotator',
  foundation: 'footing',
  gear: 'raising gear',
} as const satisfies Record<Rating['of'], string>;

/** A ground under the name that its standard has for such. */
export function groundNamed(ground: Ground): { readonly exposure?: Exposure; readonly terrain?: Terrain } {
  return isTerrain(ground) ? { terrain: ground } : { exposure: ground };
}
