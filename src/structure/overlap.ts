import type { Section } from './station.ts';

/** What the wind sees where one lattice slides in another: both, or the outer alone; the truth lies between. */
export type Overlaps = 'both' | 'outer';

/** Two heights may be written this far apart [m]. */
const SAME_HEIGHT = 1e-6;

/**
 * The height above which a section stands by itself: its lower end, or the rim of what it slides in. There it is bent most;
 * between the rim and its lower end it hands its moment over.
 *
 * max(z_low, z_high of all below it)
 *
 * @param number of the section [-]
 * @returns the height [m]
 * @example rimOf([{ low: 0, high: 6 }, { low: 5, high: 11 }], 1) // 6
 */
export function rimOf(sections: readonly Pick<Section, 'low' | 'high'>[], number: number): number {
  const { low } = sections[number] as Section;
  return sections.slice(0, number).reduce((rim, { high }) => (high > rim + SAME_HEIGHT ? high : rim), low);
}

/**
 * Whether what the wind sees is open: lattices slide in each other.
 *
 * some z_low < z_high of one below
 *
 * @example overlapsOpen([{ low: 0, high: 6 }, { low: 5, high: 11 }]) // false
 */
export function overlapsOpen(sections: readonly Pick<Section, 'low' | 'high' | 'shape'>[]): boolean {
  return sections.some(
    ({ shape, low }, number) => shape?.kind === 'lattice' && rimOf(sections, number) > low + SAME_HEIGHT,
  );
}

/** Between which heights the wind sees a section. */
export interface Seen {
  readonly low: number;
  readonly high: number;
}

/**
 * Between which heights the wind sees a section: of tubes in each other the wider one.
 *
 * hidden: from z_low to the rim of a tube as wide or wider; from z_low of a wider tube to the own rim
 *
 * @param number of the section [-]
 * @param overlaps what it sees of lattices in each other
 * @returns the heights, the lower one not below the upper where nothing of it is seen [m]
 * @example seenOf([{ low: 0, high: 6, shape: { kind: 'pole', width: [0.2, 0.2] } }, { low: 5, high: 11, shape: { kind: 'pole', width: [0.15, 0.15] } }], 1, 'both') // { low: 6, high: 11 }
 */
export function seenOf(
  sections: readonly Pick<Section, 'low' | 'high' | 'shape'>[],
  number: number,
  overlaps: Overlaps,
): Seen {
  const own = sections[number] as Section;
  const hides = (other: Pick<Section, 'shape'>) =>
    overlaps === 'outer' || (own.shape?.kind === 'pole' && other.shape?.kind === 'pole');
  let { low, high } = own;
  sections.forEach((other, index) => {
    if (index === number || !hides(other) || other.low > high || other.high < low) return;
    if (index < number && widthOf(other) >= widthOf(own)) low = Math.max(low, other.high);
    if (index > number && widthOf(other) > widthOf(own)) high = Math.min(high, other.low);
  });
  return { low, high };
}

function widthOf({ shape }: Pick<Section, 'shape'>): number {
  return shape ? Math.max(...shape.width) : 0;
}
