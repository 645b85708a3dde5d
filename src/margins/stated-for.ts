import { nth } from '../foundation/index.ts';
import { posturesAt, type Tower } from '../structure/index.ts';
import type { Rating } from './rating.ts';

/** Heights of one support, or of one top, may be written this far apart [m]. */
export const SAME_HEIGHT = 0.01;

/** What a rating was stated for and the tower is not, by its field. */
export type Misfit = 'top' | 'supportedAt';

/**
 * The height of the top that a rating is read for: as stated, as supposed, or the tower's own, drawn out.
 *
 * @returns the height above ground [m]
 */
export function ratedTop(rating: Pick<Rating, 'top' | 'supposedTop'>, tower: Pick<Tower, 'top' | 'drops'>): number {
  return rating.top ?? rating.supposedTop ?? tower.top + (tower.drops?.at(-1) ?? 0);
}

/** Whether a rating for another height speaks of a tower through its sections, which slide and are told. */
export function movesBySections(tower: Pick<Tower, 'telescopes' | 'sectionsGiven'>): boolean {
  return tower.telescopes && tower.sectionsGiven;
}

/**
 * What keeps a rating from speaking of a tower: it was stated for another height or for other supports. One that names
 * supports says nothing of a tower that has none, or whose own nobody tells. Of a tower that slides every posture speaks: what
 * a section bears in one it bears in another. A weight is for its own height alone.
 */
export function misfitsOf(
  rating: Pick<Rating, 'top' | 'supposedTop' | 'held'> & { readonly claim: Pick<Rating['claim'], 'kind'> },
  tower: Tower,
): readonly Misfit[] {
  const misfits: Misfit[] = [];
  if (!speaksForHeight(rating, tower)) misfits.push('top');
  const heights = tower.held.map(({ height }) => height);
  if (rating.held !== undefined && !sameHeights(rating.held, heights)) misfits.push('supportedAt');
  return misfits;
}

function speaksForHeight(
  { top, supposedTop, claim }: Pick<Rating, 'top' | 'supposedTop'> & { readonly claim: Pick<Rating['claim'], 'kind'> },
  tower: Tower,
): boolean {
  const told = ratedTop(top === undefined ? {} : { top }, tower);
  const ofTheSame = Math.abs(told - tower.top) <= SAME_HEIGHT;
  if (claim.kind === 'weight') return ofTheSame;
  const stated = ratedTop(
    { ...(top === undefined ? {} : { top }), ...(supposedTop === undefined ? {} : { supposedTop }) },
    tower,
  );
  if (Math.abs(stated - tower.top) <= SAME_HEIGHT) return true;
  if (movesBySections(tower)) return posturesAt(tower, stated).length > 0;
  // Let down, each section is where it was asked for more; drawn out, nobody knows how much is asked of it.
  if (tower.telescopes) return stated > tower.top;
  return top === undefined && stated > tower.foot;
}

/** Whether a tower leans on guys or brackets. */
export function leansOn(tower: Pick<Tower, 'support'>): boolean {
  return tower.support === 'guyed' || tower.support === 'bracketed';
}

/**
 * The lowest height at which a tower is compared: its foot, or its highest support. Where it leans on supports that nobody
 * tells it is no cantilever from any height known, and nothing is compared.
 *
 * @returns height above ground [m]
 */
export function comparedFrom(tower: Tower): number {
  if (leansOn(tower) && tower.held.length === 0) return tower.top;
  return tower.held.reduce((highest, { height }) => Math.max(highest, height), tower.foot);
}

/**
 * The sets of supports that the ratings of a tower name, each once, of those ratings that are for its height.
 *
 * @returns heights above ground, from the lowest up [m]
 */
export function ratedSupports(ratings: readonly Rating[], tower: Tower): readonly (readonly number[])[] {
  const sets: (readonly number[])[] = [];
  for (const rating of ratings) {
    const { of, held } = rating;
    if (of !== 'tower' || held === undefined || misfitsOf(rating, tower).includes('top')) continue;
    if (!sets.some((set) => sameHeights(set, held))) sets.push(ascending(held));
  }
  return sets;
}

/**
 * A tower that leans on supports which its plan does not give, held as its ratings have it where they agree.
 *
 * @returns the tower, with supports where it had none and the ratings name one set of them
 * @source project-rule
 */
export function heldAsRated(tower: Tower, ratings: readonly Rating[]): Tower {
  if (!leansOn(tower) || tower.heldGiven) return tower;
  const [heights, another] = ratedSupports(ratings, tower);
  if (heights === undefined || another !== undefined) return tower;
  const by = tower.support === 'guyed' ? 'guys' : 'bracket';
  return { ...tower, held: heights.map((height) => ({ height, by })) };
}

function sameHeights(one: readonly number[], other: readonly number[]): boolean {
  const [these, those] = [ascending(one), ascending(other)];
  return (
    these.length === those.length && these.every((height, index) => Math.abs(height - nth(those, index)) < SAME_HEIGHT)
  );
}

function ascending(heights: readonly number[]): readonly number[] {
  return [...heights].sort((a, b) => a - b);
}
