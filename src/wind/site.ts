import type { Climate } from './climate.ts';
import type { Ground } from './ground.ts';
import type { SpeedBasis } from './speed-basis.ts';

export const RISK_CATEGORIES = ['I', 'II', 'III', 'IV'] as const;
export type RiskCategory = (typeof RISK_CATEGORIES)[number];

export interface Hill {
  readonly shape: 'ridge' | 'escarpment' | 'round-hill';
  /** Crest above the surroundings [m]. */
  readonly height: number;
  /** From the crest to half-way down, upwind [m]. */
  readonly halfLength: number;
  /** From the crest to the tower [m]. */
  readonly distance: number;
  readonly side: 'upwind' | 'downwind';
  /** Alone, and twice as high as its surroundings; absent: nobody says. */
  readonly isolated?: boolean;
}

/** How far it is from the foot of the tower to what it must not fall on [m]. */
export interface SiteDistances {
  readonly powerLine?: number;
  readonly propertyLine?: number;
  readonly building?: number;
}

export interface Site {
  readonly speed: number;
  /** Absent: that of the method's own maps, with a caution. */
  readonly basis?: SpeedBasis;
  /** Years after which, on average, the design wind comes back, where that is not the 50 of EN 1991-1-4. */
  readonly returnYears?: number;
  readonly exposure: Ground;
  /** Nobody gives its ground, which the plan's own method does not use; by others it is not compared. */
  readonly groundNotGiven?: true;
  /** Absent: II, with a caution. */
  readonly riskCategory?: RiskCategory;
  /** The one that counts for ice, where it is another. */
  readonly iceCategory?: RiskCategory;
  /** Height of the ground above the sea [m]. */
  readonly groundElevation: number;
  readonly hill?: Hill;
  /** A topographic factor the county gives; it stands for the hill. */
  readonly topographicFactor?: number;
  /** Ice of the map (or radial ice) and the 3-second gust that goes with it. */
  readonly ice?: { readonly thickness: number; readonly gust: number };
  /** From the foot of the tower [m]. */
  readonly distances?: SiteDistances;
  /** The strongest winds of the place, for the chance of what a link holds to. */
  readonly climate?: Climate;
}
