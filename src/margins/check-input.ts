import { METHOD_BY_ID, type SiteMethodId } from '../methods/index.ts';
import type { Load, Station } from '../structure/index.ts';
import type { Site, SpeedBasis } from '../wind/index.ts';
import type { Assumed } from './assumed/assumed.ts';
import type { Rating } from './rating.ts';

/** Everything a check needs, in SI. */
export interface CheckInput {
  readonly title: string;
  readonly method: SiteMethodId;
  readonly site: Site;
  readonly station: Station;
  /** Loads that are to come later; they are in no check. */
  readonly later?: readonly Load[];
  readonly ratings: readonly Rating[];
  readonly wanted: Wanted;
  /** What the plan did not say and the reader should hear of, found while reading it. */
  readonly notGiven: readonly NotGiven[];
  /** What the plan did not say and is taken at both plausible ends. */
  readonly assumed: readonly Assumed[];
  /** The gust that keeps the margin is asked for even where the tower cannot be lowered before it. */
  readonly gustsAtMargin?: true;
}

export interface Wanted {
  /** Share of the capacity to keep. */
  readonly margin: number;
  /** Allowance for the error of a forecast. */
  readonly forecast: number;
  readonly years: number;
}

/** Something left out of the plan that has a reading and a caution, but no bracket. */
export type NotGiven =
  | 'hill'
  | 'ice'
  | 'risk-category'
  | 'speed-basis'
  | 'weights'
  | 'frequency'
  | 'mast'
  | 'mast-inside'
  | 'supports';

/** The type of speed that is entered for the site: as stated, else that of the maps of its standard. */
export function enteredBasis(input: Pick<CheckInput, 'method' | 'site'>): SpeedBasis {
  return input.site.basis ?? METHOD_BY_ID[input.method].basis;
}

/** The type of speed that enters the formulas of the standard. */
export function designBasis(
  input: Pick<CheckInput, 'method'>,
  wind: { readonly speedLevel: 'own' | 'strength' },
): SpeedBasis {
  return wind.speedLevel === 'strength' ? 'gust3-strength' : METHOD_BY_ID[input.method].basis;
}
