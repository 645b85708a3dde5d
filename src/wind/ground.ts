/** Ground upwind by ASCE 7 and TIA-222. */
export const EXPOSURES = ['B', 'C', 'D'] as const;
export type Exposure = (typeof EXPOSURES)[number];

/** Ground upwind by EN 1991-1-4. */
export const TERRAINS = ['0', 'I', 'II', 'III', 'IV'] as const;
export type Terrain = (typeof TERRAINS)[number];

/** The ground upwind in the words of whichever standard speaks of it. */
export type Ground = Exposure | Terrain;

/** By the field of a plan that names the ground: its kinds, and one that stands in where none counts. */
export const GROUND_FIELDS = {
  exposure: { kinds: EXPOSURES, usual: 'C' },
  terrain: { kinds: TERRAINS, usual: 'II' },
} as const;
export type GroundField = keyof typeof GROUND_FIELDS;

const EXPOSURE_BY_TERRAIN: Readonly<Record<Terrain, Exposure>> = { '0': 'D', I: 'D', II: 'C', III: 'B', IV: 'B' };
const TERRAIN_BY_EXPOSURE: Readonly<Record<Exposure, Terrain>> = { B: 'III', C: 'II', D: 'I' };

/**
 * The exposure that comes nearest to a ground.
 *
 * B ← III, IV; C ← II; D ← 0, I
 *
 * @example exposureOf('II') // 'C'
 */
export function exposureOf(ground: Ground): Exposure {
  return isTerrain(ground) ? EXPOSURE_BY_TERRAIN[ground] : ground;
}

/**
 * The terrain that comes nearest to a ground.
 *
 * III ← B; II ← C; I ← D
 *
 * @example terrainOf('C') // 'II'
 */
export function terrainOf(ground: Ground): Terrain {
  return isTerrain(ground) ? ground : TERRAIN_BY_EXPOSURE[ground];
}

/**
 * Whether a ground is named as EN 1991-1-4 does.
 *
 * 0, I, II, III or IV
 *
 * @example isTerrain('B') // false
 * @source en1991-1-4
 */
export function isTerrain(ground: Ground): ground is Terrain {
  return (TERRAINS as readonly Ground[]).includes(ground);
}
