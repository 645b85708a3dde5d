import { nestedStation, type Station, stationsAt } from '../structure/index.ts';
import type { CheckInput } from './check-input.ts';
import { misfitsOf } from './stated-for.ts';

/** The plan of a telescoping tower let down. */
export interface LoweredInput {
  readonly input: CheckInput;
  /** Loads that meet the rim of an outer section: they come off, or the tower does not go down. */
  readonly clashes: readonly string[];
  /** Ratings of the tower that say nothing of it there. */
  readonly unspoken: number;
}

/**
 * The plan with the tower nested.
 *
 * @returns undefined where nothing slides, or the plan does not say how low it goes
 * @throws Refusal where its sections do not nest that low
 */
export function nestedInput(input: CheckInput): LoweredInput | undefined {
  const nested = nestedStation(input.station);
  return nested && withStation(input, nested.station, nested.clashes);
}

/**
 * The plan with the top of its tower at another height, its sections moved alike; the other orders in which they may slide are
 * tried where it is checked.
 *
 * @param top height of the top there [m]
 * @returns undefined where nothing slides so
 */
export function loweredInput(input: CheckInput, top: number): LoweredInput | undefined {
  const [alike] = stationsAt(input.station, top);
  return alike && withStation(input, alike.station, alike.clashes);
}

/** The same plan with its sections slid in the other orders: nobody tells in which they slide. */
export function otherOrders(input: CheckInput): readonly CheckInput[] {
  const { tower } = input.station;
  if (tower.drops === undefined) return [];
  const [, ...others] = stationsAt(input.station, tower.top);
  return others.map(({ station }) => ({ ...input, station }));
}

function withStation(input: CheckInput, station: Station, clashes: readonly string[]): LoweredInput {
  const ratings = input.ratings.filter(
    (rating) => rating.of !== 'tower' || misfitsOf(rating, station.tower).length === 0,
  );
  return { input: { ...input, station, ratings }, clashes, unspoken: input.ratings.length - ratings.length };
}
