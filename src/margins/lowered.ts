import { nestedStation } from '../structure/index.ts';
import { type Assessment, assess } from './assess.ts';

/** The same station with its sections slid together. */
export interface Lowered {
  readonly assessment: Assessment;
  /** Loads that meet the rim of an outer section: they come off, or the tower does not go down. */
  readonly clashes: readonly string[];
  /** Ratings of the raised tower that say nothing of it lowered. */
  readonly unspoken: number;
}

/** Heights of one top may be written this far apart [m]. */
const SAME_TOP = 0.01;

/**
 * A telescoping tower let down, checked as it then stands. Only ratings stated for that height of the top speak for it: the
 * raised tower's prove nothing of another posture.
 *
 * @returns the lowered answer; undefined where nothing slides, or the plan does not say how low it goes
 * @throws Refusal where its sections do not nest that low
 */
export function loweredOf(own: Assessment): Lowered | undefined {
  const { input } = own;
  const nested = nestedStation(input.station);
  if (!nested) return undefined;
  const { top } = nested.station.tower;
  const speaks = input.ratings.filter(
    ({ of, top: stated }) => of !== 'tower' || (stated !== undefined && Math.abs(stated - top) < SAME_TOP),
  );
  return {
    assessment: assess({ ...input, station: nested.station, ratings: speaks }),
    clashes: nested.clashes,
    unspoken: input.ratings.length - speaks.length,
  };
}
