import type { AreaKind } from '../areas/index.ts';
import type { MethodId, UnnamedStandard } from '../methods/index.ts';
import type { RatedLines } from '../structure/index.ts';
import type { RiskCategory } from '../wind/index.ts';

/** What a maker says, in SI, with everything he did not state absent. */
export interface Rating {
  /** JSON pointer into the plan. */
  readonly at: string;
  readonly of: 'tower' | 'mast' | 'bearing' | 'rotator' | 'foundation' | 'gear';
  readonly claim: RatingClaim;
  /** Height above ground where it acts; absent: the top of the tower. */
  readonly height?: number;
  readonly wind?: RatedWind;
  /** Height of the tower's top it was stated for; absent: the plan's. */
  readonly top?: number;
  /** Where nobody tells for which height: read as if stated for a tower of the same series, or its posture, with this top [m]. */
  readonly supposedTop?: number;
  /** Heights of the supports it was stated for; absent: the plan's. */
  readonly held?: readonly number[];
  /** Lines the maker already allowed for. */
  readonly withCables?: RatedLines;
}

export type RatingClaim =
  | {
      readonly kind: 'area';
      readonly areaKind: AreaKind;
      /** Coefficient the maker names for a projected area. */
      readonly coefficient?: number;
      /** One case a row; the speed absent where the row takes it from `wind`. */
      readonly rows: readonly { readonly area: number; readonly speed?: number }[];
      /** Further areas of the same case. */
      readonly also: readonly { readonly area: number; readonly height: number }[];
    }
  | { readonly kind: 'force'; readonly force: number; readonly level: ForceLevel; readonly levelGiven: boolean }
  | { readonly kind: 'moment'; readonly moment: number; readonly level: ForceLevel; readonly levelGiven: boolean }
  | { readonly kind: 'wind' }
  | { readonly kind: 'weight'; readonly weight: number }
  | {
      readonly kind: 'torque';
      /** With which it turns [N·m]. */
      readonly torque?: number;
      /** With which it holds [N·m]. */
      readonly brake?: number;
      readonly level: ForceLevel;
      readonly levelGiven: boolean;
    }
  | { readonly kind: 'gear'; readonly breaking?: number; readonly working?: number };

export type ForceLevel = 'allowable' | 'strength';

export interface RatedWind extends UnnamedStandard {
  /** [m/s]; absent where every row has its own. */
  readonly speed?: number;
  readonly method?: MethodId;
  readonly riskCategory?: RiskCategory;
}

/** Of a strength this much is allowed. @source derived */
export const STRENGTH_TO_ALLOWABLE = 0.6;

/**
 * What counts of a stated force, moment or torque: all of what is allowable, of a strength its share.
 *
 * 1 or 0.6; where no level is told, 0.6 at the low end and 1 at the high one
 *
 * @param claim with its level, that of its strength where none is told
 * @example shareAllowed({ level: 'strength', levelGiven: true }).high // 0.6
 */
export function shareAllowed(claim: { readonly level: ForceLevel; readonly levelGiven: boolean }): {
  readonly low: number;
  readonly high: number;
} {
  const { level, levelGiven } = claim;
  const low = level === 'allowable' ? 1 : STRENGTH_TO_ALLOWABLE;
  return { low, high: levelGiven ? low : 1 };
}
