import type { DragRule, ForceCoefficient, Role, WindDirection } from '../areas/index.ts';
import type { Citation, Known, Trace, UnitSystem } from '../foundation/index.ts';
import type { Ground, Hill, IceRule, RiskCategory, SpeedBasis } from '../wind/index.ts';
import type { ExcludedHill, HillRule } from './hill.ts';
import type { MethodId } from './method-id.ts';

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

export interface WindConditions {
  readonly units: UnitSystem;
  /** [m/s], in the method's own basis unless `speedLevel` says otherwise. */
  readonly speed: number;
  /** `strength`: a strength-level speed given to a method whose own basis is nominal. */
  readonly speedLevel: 'own' | 'strength';
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

export interface Law {
  readonly law: ForceCoefficient;
  /** Diameter its flow is measured with [m]; absent: the part's own. */
  readonly diameter?: number;
}

/** One wind by one method over one structure: everything that depends on height and speed. */
export interface Wind {
  readonly method: MethodId;
  readonly conditions: WindConditions;
  /** λ: brings every force to the allowable level; 1 for an actual wind. */
  readonly level: number;
  /** Direction factor, wherever the method puts it. */
  readonly directionFactor: number;
  /** Direction factor that stands in the force and not in the pressure. */
  readonly forceDirectionFactor: number;
  readonly importance: number;
  readonly elevationFactor: number;
  /** q/V² at a height [Pa/(m/s)²]. */
  readonly pressurePerSpeedSquared: (z: number) => number;
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
  readonly law: (rule: DragRule, role: Role, direction: WindDirection) => Law;
  /** Least pressure on the solid area, at the method's level [Pa]; 0 where the method has none. */
  readonly leastPressure: number;
  /** Why a given hill does not count, and the factor it would have been at 10 m. */
  readonly hillExcluded?: ExcludedHill;
}

export interface Method {
  readonly id: MethodId;
  readonly title: string;
  /** Basis of its own maps and ratings. */
  readonly basis: SpeedBasis;
  readonly level: number;
  readonly levelCite: Citation;
  /** Brings a force at the method's own level to the nominal load of foundations. */
  readonly nominal: number;
  /** Brings a force at the method's own level to strength level, where the method has one. */
  readonly strength?: number;
  /** The same for what stays when the wind does not; 1.2 where absent. */
  readonly strengthOfSteady?: number;
  /** First year in which a maker could have rated by it. */
  readonly since: number;
  /** How well its weakest part is known. */
  readonly known: Known;
  readonly exposureMatters: boolean;
  /** Kinds of ground it knows, from the roughest to the smoothest; the first credits a tower least. */
  readonly grounds: readonly Ground[];
  readonly classMatters: boolean;
  /** How it counts a hill; absent where it knows none. */
  readonly hill?: HillRule;
  /** Its ice; absent where it has none, or none of ours. */
  readonly ice?: IceRule;
  /** Coefficients of slender members, for areas stated without one. */
  readonly slender: { readonly round: number; readonly flat: number; readonly compactFlat: number };
  /** Gust effect factor of a mast on a tower, for mast, bearing and rotator; absent: that of the structure. */
  readonly mastGust?: (windStructure: WindStructure, trace?: Trace) => number;
  readonly wind: (conditions: WindConditions) => Wind;
  /** The actual 3-second gust at 10 m in the open that is this speed of the method's [m/s]. */
  readonly actualGust: (speed: number, trace?: Trace) => number;
}
