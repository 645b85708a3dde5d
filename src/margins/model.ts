import type { AreaKind, Role, WindDirection } from '../areas/index.ts';
import type { Bound, MethodId, WindStructure } from '../methods/index.ts';
import type {
  DeadLoad,
  Level,
  MastHold,
  Overlaps,
  Profile,
  ShapeReading,
  SlicesInWind,
  WindItem,
} from '../structure/index.ts';
import type { Ground, RiskCategory } from '../wind/index.ts';
import type { CheckInput } from './check-input.ts';
import type { Comparison } from './comparisons.ts';
import type { RatedCase } from './rated-case.ts';
import type { Rating } from './rating.ts';
import type { TowerAsRated } from './tower-as-rated.ts';

/** What hangs on a tower and the tower itself, cut into slices in a wind. */
export interface TowerInWind {
  readonly appurtenances: SlicesInWind;
  /** Absent where the wind on the tower itself is not known. */
  readonly bareTower?: SlicesInWind;
  /** The least pressure of the method counts here; where a rated case may have it too, on both sides or on neither. */
  readonly least: boolean;
}

/**
 * One way the tower itself may meet the wind: a direction that must be tried, and what is open about its members; with all of
 * it in the site's wind.
 */
export interface Scenario extends TowerInWind {
  readonly windStructure: WindStructure;
  readonly direction: WindDirection;
  readonly solidity: number;
  readonly overlaps: Overlaps;
  readonly shapes: ShapeReading;
  /** How what the standard leaves open of the tower's own drag is read, the same in the plan and in a rated case of that standard. */
  readonly own: Role;
  /** Scenarios of one key differ by what has one answer for both sides; keys differ by what nobody told. */
  readonly open: string;
}

/** One claim of the maker's (a row of a rating), with all its readings worked out over every scenario. */
export interface Claim {
  readonly rating: Rating;
  readonly number: number;
  readonly cases: readonly ClaimCase[];
}

export interface ClaimCase {
  /** The tower as it was rated, where that is of another height. */
  readonly asRated?: TowerAsRated;
  /** Heights at which the wind on it is cut into slices [m]. */
  readonly cutAt: readonly number[];
  /** By scenario: the rated case as it is for that kind of structure. */
  readonly rated: readonly RatedCase[];
  /** By scenario: shear and moment of the rated wind on the tower itself, at the allowable level. */
  readonly own: readonly BareTowerCapacity[];
  /** What it has already been found to prove: answers to open questions pick among the same readings. */
  readonly found: CaseProof[];
}

/** What one case proves, by check, at one end of what is open about it. */
interface CaseProof {
  readonly scenario: number;
  readonly areaFactor: number;
  readonly proof: readonly number[];
}

/** A moment stated at a level of the tower. */
export interface MomentClaim {
  readonly number: number;
  /** By number of the comparison that it speaks of: the share of it that counts there. */
  readonly shares: ReadonlyMap<number, Readonly<Record<Bound, number>>>;
  /** What it surely proves, and at most where its level is not told [N·m]. */
  readonly moment: Readonly<Record<Bound, number>>;
}

export interface BareTowerCapacity {
  readonly shear: number[];
  readonly moment: number[];
  /** λqG of the site over that of the rating, largest over height, where the tower's own wind is not known; else 0. */
  readonly windRatio: number;
  /** The least pressure of its method decides for some piece. */
  readonly leastDecides: boolean;
  /** The rated wind on the tower itself and on its rated lines; absent without one. */
  readonly inWind?: SlicesInWind;
}

export interface TowerModel {
  readonly input: CheckInput;
  readonly site: SiteSpeed;
  readonly levels: readonly Level[];
  /** Heights at which no piece in the wind goes on: levels, and where the pressure, the rated one too, has a bend [m]. */
  readonly cutAt: readonly number[];
  readonly comparisons: readonly Comparison[];
  readonly hold: MastHold;
  readonly dead: DeadLoad;
  /** Where the case is one of ice. */
  readonly ice?: IceWeights;
  readonly scenarios: readonly [Scenario, ...Scenario[]];
  readonly bareTowerKnown: boolean;
  readonly appurtenances: readonly WindItem[];
  readonly claims: readonly Claim[];
  /** Moments stated at one height. */
  readonly momentClaims: readonly MomentClaim[];
  /** Weight the tower's rating covers [kg]. */
  readonly coveredWeight: number;
  /** The foot, or the highest support: nothing below it is compared [m]. */
  readonly comparedFromHeight: number;
  /** Demand without wind, by check. */
  readonly deadDemand: number[];
  /** What every claim proves with nothing further answered. */
  readonly proven: readonly RatedCapacity[];
  /** What several checks need of it and one has worked out already. */
  readonly worked: Map<unknown, unknown>;
}

/** What ice weighs, brought to the allowable level [kg]. */
export interface IceWeights {
  /** By load; 0 where nobody can tell. */
  readonly onLoads: readonly number[];
  /** On the mast and what it carries. */
  readonly onMast: number;
  /** On all that hangs on the tower, the tower's own not counted. */
  readonly aloft: number;
  /** On all of it. */
  readonly all: number;
  /** Pointers to what would tell the rest, of all that hangs on the tower and of the mast alone. */
  readonly needs: readonly string[];
  readonly needsOfMast: readonly string[];
}

/** The site's speed as its method takes it. */
export interface SiteSpeed {
  readonly speed: number;
  readonly speedLevel: 'own' | 'strength';
  readonly converted: boolean;
}

/** Least and most that is proven for every check by one claim, by scenario. */
export interface RatedCapacity {
  readonly claim: Claim;
  readonly unfavourable: readonly (readonly number[])[];
  readonly favourable: readonly (readonly number[])[];
  /** By scenario: the ratio by the wind on a tower whose own drag is not known; 0 where it is. */
  readonly windRatio: Readonly<Record<Bound, readonly number[]>>;
}

/** The tower before anything is compared. */
export type BareModel = Omit<TowerModel, 'deadDemand' | 'proven' | 'worked'>;

/** Answers to open questions; what is not answered stays at both ends of its bracket. */
export interface Answers {
  readonly ratings?: ReadonlyMap<number, RatingAnswer>;
  /** By number of the load: what its stated area is multiplied by. */
  readonly loads?: ReadonlyMap<number, number>;
  readonly solidity?: number;
  readonly shapes?: Partial<ShapeReading>;
}

export interface RatingAnswer {
  readonly method?: MethodId;
  readonly exposure?: Ground;
  readonly riskCategory?: RiskCategory;
  readonly areaKind?: AreaKind;
  /** Height of the top that it is for [m]. */
  readonly top?: number;
}

/** What the wind asks of the tower in one scenario. */
export interface ScenarioDemand {
  /** Shear and moment of what hangs on it. */
  readonly appurtenances: Profile;
  /** The same of the tower itself; absent where its own wind is not known. */
  readonly bareTower?: Profile;
  /** By comparison, moment and shear by the wind [N·m, N]. */
  readonly wind: readonly number[];
}

/** What the wind and the weights ask of the tower, at one end of the readings. */
export interface Demand {
  readonly scenarios: readonly ScenarioDemand[];
  /** By comparison, the same without wind. */
  readonly dead: readonly number[];
  /** The method's least pressure decides for some piece. */
  readonly leastDecides: boolean;
}
