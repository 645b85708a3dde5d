import type { AreaKind, DragRule, ForceCoefficient, Role, WindDirection } from '../areas/index.ts';
import type { Citation, Known, Trace, UnitSystem } from '../foundation/index.ts';
import type { Ground, GroundField, Hill, IceRule, RiskCategory, SpeedBasis, SpeedRole } from '../wind/index.ts';
import type { GuyRule } from './guy-rules.ts';
import type { ExcludedHill, HillRule } from './hill.ts';
import type { MethodId, Place, SiteMethodId } from './method-id.ts';

/** What stands in the wind, as the factors that belong to the whole structure see it. */
export interface WindStructure {
  readonly kind: 'lattice' | 'pole';
  readonly sides: 0 | 8 | 12 | 16 | 18;
  readonly guyed: boolean;
  /** Top above ground [m]. */
  readonly height: number;
  /** Mean width across the wind [m]. */
  readonly width: number;
  /** Lowest natural frequency [Hz]. */
  readonly frequency?: number;
  /** Share of critical. */
  readonly damping?: number;
}

/** `strength`: a strength-level speed given to a method whose own basis is nominal. */
export type SpeedLevel = 'own' | 'strength';

export interface WindConditions {
  readonly units: UnitSystem;
  /** [m/s], in the method's own basis unless `speedLevel` says otherwise. */
  readonly speed: number;
  readonly speedLevel: SpeedLevel;
  /** The wind is one that has come: full force, no direction or importance factor. */
  readonly actual: boolean;
  readonly exposure: Ground;
  readonly riskCategory: RiskCategory;
  /** [m] */
  readonly groundElevation: number;
  readonly hill?: Hill;
  /** On the pressure beside an exposure; on the speed beside a terrain of EN 1991-1-4. */
  readonly topographicFactor?: number;
  readonly windStructure: WindStructure;
}

/** Which end of an open reading is taken. */
export type Bound = 'unfavourable' | 'favourable';

export interface PartCoefficient {
  readonly byFlow: ForceCoefficient;
  /** Diameter its flow is measured with [m]; absent: the part's own. */
  readonly diameter?: number;
}

/** One wind by one method over one structure: everything that depends on height and speed. */
export interface Wind {
  readonly method: MethodId;
  readonly conditions: WindConditions;
  /** λ: brings every force to the allowable level; 1 for an actual wind. */
  readonly toAllowableFactor: number;
  /** Direction factor, wherever the method puts it. */
  readonly directionFactor: number;
  /** Direction factor that stands in the force and not in the pressure. */
  readonly forceDirectionFactor: number;
  readonly importance: number;
  readonly elevationFactor: number;
  /** q/V² at a height [Pa/(m/s)²]. */
  readonly pressurePerSpeedSquared: (z: number) => number;
  /** Below this height its ground no longer counts, so that its pressure has a bend there [m]; 0 where it has none. */
  readonly bendsAt: number;
  /** q at a height [Pa]. */
  readonly pressure: (z: number, trace?: Trace) => number;
  readonly exposureCoefficient: (z: number, trace?: Trace) => number;
  readonly topographicFactor: (z: number, trace?: Trace) => number;
  /** Gust effect factor at a speed; the conditions' own when none is given. */
  readonly gustEffect: (speed?: number, trace?: Trace) => number;
  readonly gustVaries: boolean;
  /** Flow measure per m/s of speed and metre of diameter, at a height. */
  readonly flowPerSpeed: (z: number) => number;
  readonly flow: (z: number, diameter: number, trace?: Trace) => number;
  readonly forceCoefficient: (rule: DragRule, role: Role, direction: WindDirection) => PartCoefficient;
  /** Least pressure on the solid area, at the method's level [Pa]; 0 where the method has none. */
  readonly leastPressure: number;
  /** Why a given hill does not count, and the factor it would have been at 10 m. */
  readonly hillExcluded?: ExcludedHill;
}

/** What brings a force at a method's own level to another. */
export interface LevelFactors {
  /** λ, to the allowable level. */
  readonly toAllowableFactor: number;
  /** To the nominal load of foundations. */
  readonly toNominalFactor: number;
  /** To strength level, where the method has one. */
  readonly toStrengthFactor?: number;
  /** The same for what stays when the wind does not; 1.2 where absent. */
  readonly toStrengthFactorWithoutWind?: number;
}

/** ASCE/SEI 7-16 2.3.1 and ANSI/TIA-222-H 2.3.2: 1.2D beside the wind, from memory. */
export const WITHOUT_WIND_AT_STRENGTH = 1.2;

/** Kinds of ground a method knows. */
export interface GroundRule {
  /** Field of a plan that names it. */
  readonly field: GroundField;
  /** From the roughest to the smoothest; the first credits a rating least. */
  readonly kinds: readonly Ground[];
  /** Stands where none is named and none counts. */
  readonly usual: Ground;
  /** Whether its wind goes by the ground at all. */
  readonly counts: boolean;
}

export interface RatedAreas {
  /**
   * What a rating's area of a kind is multiplied by to become effective, at the low and the high end of its reading; with
   * the coefficient that the maker names.
   */
  readonly factor: (kind: AreaKind, coefficient?: number) => { readonly low: number; readonly high: number };
  /** Kinds that a maker may have meant who does not say. */
  readonly asked: readonly AreaKind[];
}

/** What a method's own kind of speed is, and how it turns into others. */
export interface SpeedRule {
  /** Basis of its own maps and ratings. */
  readonly basis: SpeedBasis;
  /** Basis in which its speeds are handed to another method. */
  readonly sharedBasis: SpeedBasis;
  /** Factors of a speed off a strength-level map, where it takes one as it is; absent: such a speed is converted. */
  readonly strengthMap?: LevelFactors;
  /** `strength` where a speed of this basis enters as it is, with the factors of `strengthMap`. */
  readonly speedLevel: (basis: SpeedBasis) => SpeedLevel;
  /** A speed as its wind takes it [m/s]. */
  readonly toOwnBasis: (speed: number, basis: SpeedBasis, role: SpeedRole, trace?: Trace) => number;
  /** Turns `toOwnBasis` round [m/s]. */
  readonly fromOwnBasis: (speed: number, basis: SpeedBasis, role: SpeedRole, trace?: Trace) => number;
  /** The actual 3-second gust at 10 m in the open that is this speed of the method's [m/s]. */
  readonly actualGust: (speed: number, trace?: Trace) => number;
  /** What an antenna feels of one of its winds at a speed and a height, as a gust its maker may have rated it for [m/s]. */
  readonly gustAtHeight: (wind: Wind, speed: number, z: number, trace?: Trace) => number;
  readonly returnPeriod: {
    /** Whether a plan may name one; else it is in the maps. */
    readonly asked: boolean;
    /** Its speed for another return period than that of its maps [m/s]. */
    readonly speedFor: (speed: number, years: number, trace?: Trace) => number;
  };
}

/** What a method has its user told wherever it is used. */
export type MethodCaution = 'partial-factor';

/** All that is known of a standard; nothing else in the service asks which one it is. */
export interface Method extends LevelFactors, SpeedRule {
  readonly id: MethodId;
  readonly title: string;
  /** Where or when it was in use, said behind the title where one is chosen. */
  readonly aside: string | undefined;
  readonly toAllowableFactorCite: Citation;
  /** Where it has the force of its wind on an area. */
  readonly forceCite: Citation;
  /** Where towers are designed by it. */
  readonly place: Place;
  /** Written for antenna towers, not for structures at large. */
  readonly forTowers: boolean;
  /** Units of new plans that it is offered to. */
  readonly offeredTo?: 'us' | 'si';
  /** First year in which a maker could have rated by it. */
  readonly since: number;
  /**
   * Plans, by the place of their own method, in which a rating that names no standard may be by this one, if its year, kind
   * of speed and ground allow. Where a plan's answers must stay as they are, its place is not among them.
   */
  readonly meantUnnamedIn: 'every-place' | readonly Place[];
  /** How well its weakest part is known. */
  readonly known: Known;
  readonly cautions: readonly MethodCaution[];
  readonly ground: GroundRule;
  readonly classMatters: boolean;
  /** Gusts stand in its height law, not in a gust effect factor beside it. */
  readonly gustsInHeightLaw: boolean;
  /** How it counts a hill; undefined where it knows none. */
  readonly hill: HillRule | undefined;
  /** Its ice; undefined where it has none, or none of ours. */
  readonly ice: IceRule | undefined;
  /** Coefficients of slender members, for areas stated without one. */
  readonly slender: { readonly round: number; readonly flat: number; readonly compactFlat: number };
  readonly ratedAreas: RatedAreas;
  /**
   * Standard that speaks beside it for the mast on a tower and what holds it: the building codes send antenna structures to
   * it (IBC 1609.1.1). The worse counts.
   */
  readonly besideOnTowers: SiteMethodId | undefined;
  /** What share of its breaking strength a guy may bear; several rules where the method has none of its own. */
  readonly guyRules: readonly GuyRule[];
  /** Gust effect factor of a mast on a tower, for mast, bearing and rotator; undefined: that of the structure. */
  readonly mastGust: ((windStructure: WindStructure, trace?: Trace) => number) | undefined;
  /** Lowest natural frequency below which its gust effect factor counts how a structure sways [Hz]; undefined: it never does. */
  readonly flexibleBelow: number | undefined;
  /** Lower than this [m] or swinging faster [Hz] its forces stand without a look at how a structure sways; undefined: always. */
  readonly stiffIf: { readonly height: number; readonly frequency: number } | undefined;
  /**
   * What it takes of a column that is allowed by AISC 360: 0.6 of its own resistance factor, times 1.67; as for a pole, that of
   * TIA-222-H where it has none for towers.
   */
  readonly columnShare: number;
  readonly wind: (conditions: WindConditions) => Wind;
}

/** Of a column that is allowed by AISC 360: 0.6 of φ of it, over 1/1.67. @source tia222-g, tia222-h */
export const COLUMN_SHARE = { byG: 0.6 * 0.85 * 1.67, byH: 0.6 * 0.9 * 1.67 } as const;

/**
 * The factors of a method for a speed that entered at a level.
 *
 * λ, to nominal, to strength
 *
 * @source tia-faq
 */
export function levelFactors(method: LevelFactors & Pick<Method, 'strengthMap'>, speedLevel: SpeedLevel): LevelFactors {
  return speedLevel === 'strength' ? (method.strengthMap ?? method) : method;
}
