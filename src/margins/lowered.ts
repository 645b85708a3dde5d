import { nestedStation } from '../structure/index.ts';
import { type Assessment, assess } from './assess.ts';
import { misfitsOf } from './stated-for.ts';

/** The same station with its sections slid together. */
export interface Lowered {
  readonly assessment: Assessment;
  /** Loads that meet the rim of an outer section: they come off, or the tower does not go down. */
  readonly clashes: readonly string[];
  /** Ratings of the tower that say nothing of it lowered. */
  readonly unspoken: number;
}

/**
 * A telescoping tower let down, checked as it then stands: by ratings stated for it so, and by those of the raised tower as far
 * as its sections bear what they were asked for there.
 *
 * @returns the lowered answer; undefined where nothing slides, or the plan does not say how low it goes
 * @throws Refusal where its sections do not nest that low
 */
export function loweredOf(own: Assessment): Lowered | undefined {
  const { input } = own;
  const nested = nestedStation(input.station);
  if (!nested) return undefined;
  const raised = input.station.tower.top;
  const speaks = input.ratings
    .map((rating) =>
      rating.of === 'tower' && rating.supposedTop === undefined ? { ...rating, top: rating.top ?? raised } : rating,
    )
    .filter((rating) => rating.of !== 'tower' || misfitsOf(rating, nested.station.tower).length === 0);
  return {
    assessment: assess({ ...input, station: nested.station, ratings: speaks }),
    clashes: nested.clashes,
    unspoken: input.ratings.length - speaks.length,
  };
}
