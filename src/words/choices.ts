import type { AreaKind } from '../areas/index.ts';
import type { Rating } from '../margins/index.ts';
import type { Support } from '../structure/index.ts';
import { type Exposure, type Ground, isTerrain, type SpeedBasis, type Terrain } from '../wind/index.ts';
import { FIELDS } from './fields.mjs';

const { site, rating } = FIELDS;

export const GROUND_WORDS = { ...site.exposure.choices, ...site.terrain.choices } satisfies Record<Ground, string>;

export const AREA_WORDS = rating.areaKind.choices satisfies Record<AreaKind, string>;

export const SUPPORT_WORDS = {
  free: 'free-standing',
  guyed: 'guyed',
  bracketed: 'bracketed to a house',
  roof: 'on a roof',
} as const satisfies Record<Support, string>;

/** What a rating is of. */
export const RATED_WORDS = { ...rating.of.choices, gear: 'raising gear' } satisfies Record<Rating['of'], string>;

/** Types of speed as a sentence says them after the figure: "105 mph strength-level gust". */
export const SPEED_WORDS = {
  'gust3-strength': 'strength-level gust',
  'gust3-nominal': 'nominal gust',
  'fastest-mile': 'fastest mile',
  'mean-1min': '1-minute mean',
  'mean-10min': '10-minute mean',
  'mean-hour': 'hourly mean',
} as const satisfies Record<SpeedBasis, string>;

/** A ground under the name that its standard has for such. */
export function groundNamed(ground: Ground): { readonly exposure?: Exposure; readonly terrain?: Terrain } {
  return isTerrain(ground) ? { terrain: ground } : { exposure: ground };
}
