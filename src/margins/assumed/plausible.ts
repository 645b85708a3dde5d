import type { Shape } from '../../areas/index.ts';
import type { Load, Section, Tower } from '../../structure/index.ts';

/*
 * What a station plausibly has where its plan is silent: not the extremes of what a field may hold, but the ends of what owners
 * of such stations have. One value more in a plan always beats these.
 */

/** Lines where none are told: how many, and of what diameter [m] and weight [kg/m]. @source common-practice */
export const USUAL_LINES = { count: 3, diameter: 0.4 * 0.0254, weight: 0.15 } as const;

/** Length of a piece of a tower that is taken as alike all along, where nobody tells: ten feet [m]. @source common-practice */
export const PIECE_ALIKE = 3.048;

/** How far an arm may hold a load off the face it is fixed to, where nobody tells [m]. @source common-practice */
export const LONGEST_ARM = 0.4;

/** Face of a tower of which no shape is told [m]. @source common-practice */
const UNKNOWN_FACE = 0.3;

/** How far below the top of a tower its upper bearing may sit, where nobody tells: one and a half feet [m]. @source common-practice */
export const LOWEST_BEARING = 0.4572;

/** Class that counts for ice where none is told: a tower that must stand in an emergency. @source common-practice */
export const ICE_CLASS = { most: 'III', least: 'II' } as const;

/** Damping of a pole where none is told, share of critical: a welded tube without loads, and steel in general. @source common-practice */
export const POLE_DAMPING = { least: 0.005, usual: 0.01 } as const;

/**
 * How far off the axis a load stands that is fixed to the side of a tower: half the face, and half of what it is deep itself.
 *
 * e = b/2 + d/2; to it an arm of up to 0.4 m
 *
 * @returns least and largest plausible [m]
 * @source common-practice
 */
export function plausibleOffset(load: Load, tower: Tower): { readonly least: number; readonly most: number } {
  const middle = (load.low + load.high) / 2;
  const section = tower.sections.find(({ low, high }) => low <= middle && middle <= high);
  const least = widthAt(section, middle) / 2 + depthOf(load.shape) / 2;
  return { least, most: least + LONGEST_ARM };
}

function widthAt(section: Section | undefined, z: number): number {
  if (section?.shape === undefined) return UNKNOWN_FACE;
  const [low, high] = section.shape.width;
  return low + ((high - low) * (z - section.low)) / (section.high - section.low);
}

/** What is known of how deep a load is [m]; 0 where only its area is told. */
function depthOf(shape: Shape): number {
  if (shape.kind === 'lattice') return Math.max(...shape.width);
  if (shape.kind === 'tube') return Math.max(...shape.diameter);
  return 0;
}
