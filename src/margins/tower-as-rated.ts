import { nth } from '../foundation/index.ts';
import {
  drawnOut,
  type Level,
  levelsOf,
  type MastHold,
  mastHold,
  overlapUnder,
  type Posture,
  posturesAt,
  rimOf,
  type Station,
  sectionCarrying,
  type Tower,
} from '../structure/index.ts';
import { apexOf, type Comparison, comparisonsOf, type Proof } from './comparisons.ts';
import type { Rating } from './rating.ts';
import { movesBySections, ratedTop, SAME_HEIGHT } from './stated-for.ts';

/** The tower as a rating was stated for it, where that is of another height. */
export interface TowerAsRated {
  /** With its sections where they stood; some of it may be below the foot. */
  readonly tower: Tower;
  /** From the top down. */
  readonly levels: readonly Level[];
  /** By level: the height of that steel as the plan has it, and how far lower it stood [m]. */
  readonly cameFrom: readonly { readonly z: number; readonly drop: number }[];
  readonly hold: MastHold;
  /** By level of the plan: which of these is the same place. */
  readonly levelFor: readonly number[];
  /** By comparison: where it was proven. */
  readonly provenAt: readonly Proof[];
}

/** The plan's tower, as it is compared. */
interface Compared {
  readonly station: Station;
  readonly levels: readonly Level[];
  readonly comparisons: readonly Comparison[];
  readonly comparedFrom: number;
}

/**
 * The tower as a rating was stated for it: every way in which it may then have stood.
 *
 * @returns one row for each way, undefined for the tower as the plan has it
 * @source common-practice
 */
export function towersAsRated(
  rating: Pick<Rating, 'top' | 'supposedTop'>,
  compared: Compared,
): readonly (TowerAsRated | undefined)[] {
  const { tower } = compared.station;
  const top = ratedTop(rating, tower);
  if (Math.abs(top - tower.top) <= SAME_HEIGHT) return [undefined];
  if (!movesBySections(tower)) return [ofTheSeries(compared, top)];
  return posturesAt(tower, top).map((posture) => inPosture(compared, top, posture));
}

/** Another height of the same series: alike from the top down; what it proves at its foot, longer ones prove below that. */
function ofTheSeries({ station, levels, comparisons }: Compared, top: number): TowerAsRated {
  const { tower, mast } = station;
  const drop = tower.top - top;
  const sections = tower.sections.map((section) => ({
    ...section,
    low: section.low - drop,
    high: section.high - drop,
  }));
  const atFoot = sections.find(({ high }) => high > tower.foot + 1e-9);
  const belowFoot = (level: number) => nth(levels, level).z - drop < tower.foot - 1e-9;
  return {
    tower: { ...tower, top, sections },
    levels: levels.map(({ z, zone }) => ({ z: Math.max(tower.foot, z - drop), zone })),
    cameFrom: levels.map(({ z }) => ({ z, drop })),
    hold: sunk(mastHold(mast, tower), drop),
    levelFor: levels.map((_, level) => level),
    provenAt: comparisons.map(({ apex, provenAt }) =>
      provenAt.map(({ level, factor }) => ({
        level,
        factor,
        apex: belowFoot(level) && atFoot ? apexOf(atFoot) : apex - drop,
      })),
    ),
  };
}

function sunk({ foot, bearing }: MastHold, drop: number): MastHold {
  return { foot: foot - drop, ...(bearing === undefined ? {} : { bearing: bearing - drop }) };
}

/** The tower's own sections, slid: what was asked of one there is proven of it, wherever it now stands. */
function inPosture(compared: Compared, top: number, { sections, drops }: Posture): TowerAsRated {
  const { station, levels, comparisons, comparedFrom } = compared;
  const { tower, mast } = station;
  const ride = nth(drops, drops.length - 1);
  const moved: Tower = { ...tower, top, sections };
  const movedMast = mast && {
    ...mast,
    tip: mast.tip - ride,
    ...(mast.foot === undefined ? {} : { foot: mast.foot - ride }),
    ...(mast.bearing === undefined ? {} : { bearing: mast.bearing - ride }),
  };
  const { mast: _, ...unmasted } = station;
  const asRated: Station = {
    ...unmasted,
    tower: moved,
    ...(movedMast ? { mast: movedMast } : {}),
    loads: [],
    cables: [],
  };
  const places = tower.sections.flatMap(({ low, high }, number) =>
    levels.flatMap(({ z }) => (z >= low - 1e-9 && z <= high + 1e-9 ? [{ z, drop: nth(drops, number) }] : [])),
  );
  const ends = tower.sections.flatMap(({ low, high }, number) =>
    [low, high].map((z) => ({ z, drop: nth(drops, number) })),
  );
  const known = [...ends, ...places];
  // Looked at where the plan's tower is, and nowhere else.
  const ratedLevels = levelsOf(
    { ...asRated, tower: { ...moved, sections: sections.map((section) => ({ ...section, uniform: true })) } },
    places.map(({ z, drop }) => z - drop),
  );
  const asked = comparisonsOf(asRated, ratedLevels, comparedFrom);
  const nearest = (z: number) =>
    ratedLevels.reduce(
      (best, level, index) => (Math.abs(level.z - z) < Math.abs(nth(ratedLevels, best).z - z) ? index : best),
      0,
    );
  return {
    tower: moved,
    levels: ratedLevels,
    cameFrom: ratedLevels.map(
      ({ z }) => known.find((place) => Math.abs(place.z - place.drop - z) < 1e-9) ?? { z, drop: 0 },
    ),
    hold: mastHold(movedMast, moved),
    levelFor: levels.map(({ z }) => nearest(z - nth(drops, sectionCarrying(tower.sections, z, 'outer')))),
    provenAt: comparisons.map((comparison) =>
      askedThere(comparison, { tower, levels, sections, drops, asked, ratedLevels }),
    ),
  };
}

interface Slid {
  readonly tower: Tower;
  readonly levels: readonly Level[];
  readonly sections: Tower['sections'];
  readonly drops: readonly number[];
  readonly asked: readonly Comparison[];
  readonly ratedLevels: readonly Level[];
}

/** Where the rated posture asks of a section what a comparison needs. */
function askedThere(comparison: Comparison, slid: Slid): Proof {
  const { tower, levels, sections, drops, asked, ratedLevels } = slid;
  const { section: number, of, place } = comparison;
  const { z, zone } = nth(levels, comparison.level);
  const there = z - nth(drops, number);
  const ofSection = asked.filter((each) => each.section === number && each.of === of);
  const lowEnd = ofSection.find((each) => each.place === 'joint' || each.place === 'base');
  const samePlace = ofSection.find((each) => {
    const level = nth(ratedLevels, each.level);
    return Math.abs(level.z - there) < 1e-6 && (level.zone === 'couple') === (zone === 'couple');
  });
  const { uniform } = nth(tower.sections, number);
  const atEnd = place === 'joint' || place === 'base';
  const found = uniform && atEnd ? (lowEnd ?? samePlace) : (samePlace ?? (uniform ? lowEnd : undefined));
  if (!found) return uniform ? ofSection.flatMap(proofOf) : handedOver(of, there, number, slid);
  const proof = proofOf(found);
  if (!atEnd || of === 'shear' || number === 0) return proof;
  // A moment is handed to the section below by a couple over the overlap: a shorter one takes less moment by the same couple.
  const [now, then] = [overlapUnder(tower.sections, number), overlapUnder(sections, number)];
  return proof.map((each) => ({ ...each, factor: each.factor * Math.min(1, now / then) }));
}

function proofOf({ provenAt, apex, level, place }: Comparison): Proof {
  // Sections of one make slide each its own way.
  const own = place === 'joint' ? provenAt.filter((each) => each.level === level) : provenAt;
  return own.map((each) => ({ ...each, apex }));
}

/**
 * Of a section not uniform, what it takes between its lower end and the rim: its moment falls to nothing there, and the couple
 * that takes it is its shear.
 */
function handedOver(of: Comparison['of'], z: number, number: number, { sections, asked, ratedLevels }: Slid): Proof {
  const rim = rimOf(sections, number);
  const { low } = nth(sections, number);
  const overlap = rim - low;
  const atRim = asked.find((each) => each.section === number && each.of === 'moment' && each.place === 'joint');
  if (!atRim || overlap <= 0 || z < low || z > rim) return [];
  if (Math.abs(nth(ratedLevels, atRim.level).z - rim) > 1e-6) return [];
  if (atRim.apex !== Number.POSITIVE_INFINITY && of === 'shear') return [];
  const { level, apex } = atRim;
  return [{ level, apex, factor: of === 'moment' ? (z - low) / overlap : 1 / overlap, of: 'moment' }];
}

/**
 * A rating as it was stated for a tower of another height: what acts at a height of this tower acted at the same place there.
 * Heights beside a stated top are that tower's already.
 */
export function asStatedFor(rating: Rating, tower: Tower, asRated: TowerAsRated): Rating {
  const rated = asRated.tower;
  const { top, height, claim } = rating;
  if (top !== undefined) return rating;
  const asTold = drawnOut(tower);
  const moved = (z: number) => z - dropOf(asTold, rated, z);
  return {
    ...rating,
    ...(height === undefined ? {} : { height: moved(height) }),
    claim:
      claim.kind === 'area'
        ? {
            ...claim,
            // What would be below its foot is not on it.
            also: claim.also
              .map((each) => ({ ...each, height: moved(each.height) }))
              .filter((each) => each.height >= rated.foot),
          }
        : claim,
  };
}

/** How far lower something at a height of the plan's tower stood on the tower as rated [m]. */
function dropOf(tower: Tower, rated: Tower, z: number): number {
  const number = movesBySections(tower) ? sectionCarrying(tower.sections, z, 'outer') : tower.sections.length - 1;
  return nth(tower.sections, number).high - nth(rated.sections, number).high;
}
