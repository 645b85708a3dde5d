import { drawnOut, type Tower, topsOf } from '../structure/index.ts';
import type { CheckInput } from './check-input.ts';
import { apexOf } from './comparisons.ts';
import type { Rating } from './rating.ts';
import { misfitsOf } from './stated-for.ts';

/** Between which heights of the top a rating may have been stated [m]. */
export interface RatedHeights {
  readonly shortest: number;
  readonly tallest: number;
}

/** What a tower is to those who list it. */
type Kind = 'telescoping' | 'roof' | 'guyed' | 'bracketed' | 'pole' | 'lattice';

/**
 * Shortest and tallest tower whose line of a data sheet an owner may take for his own, over the length of his.
 *
 * - lattice: a series goes in sections of 8 to 10 ft, one line for each height from 30 to 80 or 100 ft; two lines off at 60 ft
 *   is a third.
 * - pole: made for its height, listed in fewer and wider steps, and seldom cut down: a quarter.
 * - guyed: lines by height and by the levels of the guys, 10 or 20 ft apart up to 100 ft and more: a third.
 * - bracketed: what stands above the bracket is what is listed, and the same sections are sold free-standing: a third shorter,
 *   a third taller.
 * - roof: a tripod or a small tower of its own size, one line or two: the next is a fifth off.
 *
 * @source common-practice
 */
const SHARES: Readonly<Record<Exclude<Kind, 'telescoping'>, { readonly shortest: number; readonly tallest: number }>> =
  {
    lattice: { shortest: 2 / 3, tallest: 4 / 3 },
    pole: { shortest: 3 / 4, tallest: 5 / 4 },
    guyed: { shortest: 2 / 3, tallest: 4 / 3 },
    bracketed: { shortest: 2 / 3, tallest: 4 / 3 },
    roof: { shortest: 4 / 5, tallest: 6 / 5 },
  };

/**
 * A telescoping tower is listed drawn out and let down, and some at heights between. Drawn out, a section stays in the one below
 * it by about a tenth of its length. Where its sections are not told, it is let down to two fifths of its length: of three
 * sections, which most have.
 *
 * @source common-practice
 */
const TELESCOPING = { stays: 0.1, letDown: 0.4 } as const;

/**
 * Between which heights of the top a rating of a tower may have been stated, where it names none: those of which a maker lists
 * a tower of this kind, so that an owner of this one may copy the wrong line.
 *
 * H_r = z_0 + k·(H − z_0); of a telescoping tower nested and drawn out
 *
 * @returns the heights above ground [m]; the tower's own is one of those between
 * @example plausibleRatedHeights({ support: 'free', foot: 0, top: 18, sections: [], sectionsGiven: false, telescopes: false, held: [], heldGiven: false, asDrawn: false, used: true }) // { shortest: 12, tallest: 24 }
 * @source common-practice
 */
export function plausibleRatedHeights(tower: Tower): RatedHeights {
  const { foot, top } = tower;
  const kind = kindOf(tower);
  if (kind === 'telescoping') {
    const { nested, extended } = topsOf(tower, TELESCOPING.stays);
    const told = tower.sectionsGiven || tower.nestedTop !== undefined;
    return { shortest: told ? nested : foot + TELESCOPING.letDown * (top - foot), tallest: extended };
  }
  const { shortest, tallest } = SHARES[kind];
  return { shortest: foot + shortest * (top - foot), tallest: foot + tallest * (top - foot) };
}

/**
 * A rating as it is read: as stated, or where nobody tells for which height it is, as one for this tower, for the shortest and for
 * the tallest plausible.
 *
 * @returns the readings that say something of this tower; the others are in question
 * @source common-practice
 */
export function ratedTops(rating: Rating, input: CheckInput): readonly Rating[] {
  const { station, assumed } = input;
  if (!isTopAssumed(rating, assumed)) return [rating];
  const { shortest, tallest } = plausibleRatedHeights(station.tower);
  const between = heightsBetween(station.tower).filter((height) => height > shortest && height < tallest);
  const supposed = [shortest, ...between, tallest].map((supposedTop) => ({ ...rating, supposedTop }));
  return [rating, ...supposed.filter((each) => misfitsOf(each, station.tower).length === 0)];
}

/**
 * Between legs that draw together the braces may be shown least by a height in between: where a joint comes to the foot, just
 * above and below it, and half way to either end [m].
 */
function heightsBetween(tower: Tower): readonly number[] {
  const { foot, top, sections } = drawnOut(tower);
  if (sections.every((section) => !Number.isFinite(apexOf(section)))) return [];
  const { shortest, tallest } = plausibleRatedHeights(tower);
  const joints = sections.slice(0, -1).map(({ high }) => top - (high - foot));
  return [(shortest + top) / 2, (top + tallest) / 2, ...joints.flatMap((height) => [height - 1e-3, height + 1e-3])];
}

/** Whether nobody tells for which height a rating is. */
export function isTopAssumed(rating: Rating, assumed: CheckInput['assumed']): boolean {
  return assumed.some((each) => each.of === 'rated-height' && each.at === `${rating.at}/top`);
}

/**
 * The ratings of a plan that would say nothing of this tower if they were for the shortest or the tallest plausible one.
 *
 * @returns where they stand in the plan
 */
export function ratingsInQuestion(input: CheckInput): readonly string[] {
  const { ratings, station, assumed } = input;
  const { shortest, tallest } = plausibleRatedHeights(station.tower);
  return ratings
    .filter(
      (rating) =>
        isTopAssumed(rating, assumed) &&
        [shortest, tallest].some((supposedTop) => misfitsOf({ ...rating, supposedTop }, station.tower).length > 0),
    )
    .map(({ at }) => at);
}

function kindOf({ telescopes, support, sections }: Tower): Kind {
  if (telescopes) return 'telescoping';
  if (support !== 'free') return support;
  const shaped = sections.filter(({ shape }) => shape !== undefined);
  return shaped.length > 0 && shaped.every(({ shape }) => shape?.kind === 'pole') ? 'pole' : 'lattice';
}
