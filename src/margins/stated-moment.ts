import { nth } from '../foundation/index.ts';
import type { Level, Tower } from '../structure/index.ts';
import type { Comparison } from './comparisons.ts';
import type { Rating } from './rating.ts';
import { asStatedFor, type TowerAsRated } from './tower-as-rated.ts';

/** Two heights are one [m]. */
const SAME = 1e-6;

/**
 * Of which comparisons a stated moment speaks, and with what share: of those at its level. Stated for a tower of another height
 * it speaks of the same place of this one; at the foot of a shorter one, of all that is below; at the foot of a taller one, of
 * as much as it had to be above.
 *
 * 1; a/b where the couple of an overlap is shorter; (l/l_r)³ above the foot of a taller one
 *
 * @param asRated the ways in which that tower may have stood
 * @returns by number of the comparison
 * @source derived
 */
export function momentShares(
  rating: Rating,
  tower: Tower,
  levels: readonly Level[],
  comparisons: readonly Comparison[],
  asRated: readonly (TowerAsRated | undefined)[],
): ReadonlyMap<number, number> {
  const shares = new Map<number, number>();
  comparisons.forEach((comparison, number) => {
    if (comparison.of !== 'moment') return;
    const each = asRated.map((other) =>
      other ? shareThere(rating, tower, comparison, number, other) : shareHere(rating, tower, levels, comparison),
    );
    const least = Math.min(...each);
    if (least > 0) shares.set(number, least);
  });
  return shares;
}

function shareHere(rating: Rating, tower: Tower, levels: readonly Level[], { level }: Comparison): number {
  const { z, zone } = nth(levels, level);
  return zone === 'plain' && Math.abs(z - (rating.height ?? tower.foot)) < SAME ? 1 : 0;
}

function shareThere(
  rating: Rating,
  tower: Tower,
  comparison: Comparison,
  number: number,
  asRated: TowerAsRated,
): number {
  const { foot } = tower;
  const atFoot = Math.abs((rating.height ?? foot) - foot) < SAME;
  const stated = atFoot ? foot : (asStatedFor(rating, tower, asRated).height ?? foot);
  const proof = nth(asRated.provenAt, number);
  const share = proof.reduce((most, { level, factor }) => {
    const { z, zone } = nth(asRated.levels, level);
    return zone === 'plain' && Math.abs(z - stated) < SAME ? Math.max(most, factor) : most;
  }, 0);
  if (share > 0 || !atFoot || comparison.place !== 'base') return share;
  return shareAbove(asRated, nth(proof, 0).level);
}

/**
 * Of a moment at the foot, what there must be at a level above: the wind on a tower grows at most in proportion to the
 * distance from its top, and so its moment at most by the cube of that distance.
 *
 * ((H − z)/(H − z_0))³
 */
function shareAbove({ tower, levels }: TowerAsRated, level: number): number {
  return ((tower.top - nth(levels, level).z) / (tower.top - tower.foot)) ** 3;
}
