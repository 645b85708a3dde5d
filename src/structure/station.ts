import type { LatticeShape, Lines, Material, PoleShape, Shape } from '../areas/index.ts';
import type { UnitSystem } from '../foundation/index.ts';
import type { SpeedBasis } from '../wind/index.ts';
import type { RaisingGear } from './raising-gear.ts';

/** What stands where, in SI: the plan as the domain reads it. Heights are above the ground. */
export interface Station {
  /** The constant of the pressure formula differs by 0.06 % between the unit systems; a checker meets his copy's. */
  readonly units: UnitSystem;
  readonly tower: Tower;
  readonly mast?: Mast;
  readonly rotator?: Rotator;
  readonly loads: readonly Load[];
  readonly cables: readonly CableRun[];
}

export type Support = 'free' | 'guyed' | 'bracketed' | 'roof';
export type SectionShape = LatticeShape | PoleShape;

/** What nobody may tell of a section that has a shape all the same. */
export type NotGivenOfShape = 'sides' | 'pattern';

/** Wall of a pole, or of each leg of a lattice [m], and what it is made of. */
export interface Tubing {
  readonly wall: number;
  readonly material: Material;
  /** Of the weakest place; of aluminium that is at its welds [Pa]. */
  readonly yieldStrength?: number;
  /** Strength at rupture [Pa]; asked of aluminium only. */
  readonly ultimateStrength?: number;
  /** Wall or thickness of each brace of a lattice, half of it where it is solid [m]. */
  readonly braceWall?: number;
  /** Of a leg, the longest stretch that no brace holds [m]. */
  readonly legFree?: number;
}

export interface Section {
  readonly name: string;
  /** JSON pointer of what describes it. */
  readonly at: string;
  readonly low: number;
  readonly high: number;
  /** Sections of one make share what is proven. */
  readonly make?: string;
  /** A piece of a section that is told as one: its lower end is no joint. */
  readonly within?: boolean;
  /** Constant width and members over its length, so that what is proven anywhere in it serves all of it. */
  readonly uniform: boolean;
  /** Absent: its own wind is unknown. */
  readonly shape?: SectionShape;
  /** What of its shape nobody told; it stands in the shape as most are. */
  readonly notGiven?: readonly NotGivenOfShape[];
  /** Absent: its stiffness is unknown. */
  readonly tubing?: Tubing;
  /** [kg] */
  readonly weight?: number;
}

export interface Held {
  readonly height: number;
  readonly by: 'guys' | 'bracket';
  readonly guys?: GuysThere;
}

/** Guys at one height, evenly spread [m]. */
export interface GuysThere {
  readonly count: number;
  readonly diameter: number;
  readonly radius: number;
  /** In still air [N]. */
  readonly tension?: number;
  readonly grade?: StrandGrade;
  /** Of one of them, as its manufacturer states it [N]. */
  readonly breakingStrength?: number;
  readonly ends?: GuyEnds;
}

/** Grades of zinc-coated steel strand, the weakest first. @source astm-a475 */
export const STRAND_GRADES = ['common', 'siemens-martin', 'high-strength', 'extra-high-strength'] as const;
export type StrandGrade = (typeof STRAND_GRADES)[number];

/** How the ends of a guy are made fast: preformed grips and the like, or U-bolt clips. */
export const GUY_ENDS = ['grips', 'clips'] as const;
export type GuyEnds = (typeof GUY_ENDS)[number];

export interface Tower {
  readonly support: Support;
  readonly foot: number;
  readonly top: number;
  /** From the foot up; they cover foot to top and overlap only where the tower telescopes. */
  readonly sections: readonly Section[];
  /** The plan gave its sections; otherwise they are pieces of one length counted down from the top. */
  readonly sectionsGiven: boolean;
  readonly telescopes: boolean;
  readonly nestedTop?: number;
  /** Let down: how far lower each section stands than drawn out, from the foot up [m]; absent: as the plan has its sections. */
  readonly drops?: readonly number[];
  readonly held: readonly Held[];
  /** Supports were named in the plan, not merely left to the rating. */
  readonly heldGiven: boolean;
  readonly hingeHeight?: number;
  /** What raises it about its hinge; points from the hinge [m]. */
  readonly raisedBy?: RaisingGear;
  readonly counterpoise?: Counterpoise;
  /** [kg] */
  readonly weight?: number;
  /** [Hz] */
  readonly frequency?: number;
  /** Share of critical. */
  readonly damping?: number;
  readonly asDrawn: boolean;
  /** Whether its base is held against tilting, or stands on a pin; undefined where nobody tells. */
  readonly baseHeld?: boolean;
  readonly used: boolean;
  readonly foundation?: Foundation;
}

/** What balances a tilting tower: on its axis, below the hinge. */
export interface Counterpoise {
  /** [kg] */
  readonly mass: number;
  /** From the hinge down to its middle, along the tower [m]. */
  readonly below: number;
}

/** The rotator, as far as its weight is told. */
export interface Rotator {
  /** [kg] */
  readonly weight?: number;
}

/** What the tower stands on. */
export type Foundation =
  | (SoilTold & {
      readonly kind: 'block';
      readonly length: number;
      readonly width: number;
      readonly depth: number;
      /** Of the concrete [kg/m³]; absent: the usual one. */
      readonly density?: number;
      /** What the soil may carry [Pa]. */
      readonly bearing: number;
      /** What it may carry sideways, for each metre of depth [Pa/m]. */
      readonly lateral?: number;
      /** How far the foot of the tower, at its top, stands above the ground [m]. */
      readonly head: number;
    })
  | (SoilTold & {
      readonly kind: 'pier';
      readonly diameter: number;
      readonly depth: number;
      /** What the soil may carry sideways, for each metre of depth [Pa/m]. */
      readonly lateral: number;
      readonly constrained: boolean;
      /** Of the concrete [kg/m³]; absent: the usual one. */
      readonly density?: number;
      /** What the soil may carry [Pa]. */
      readonly bearing?: number;
      /** How far the foot of the tower, at its head, stands above the ground, below which its depth counts [m]. */
      readonly head: number;
    })
  | { readonly kind: 'manufacturer' };

/** How the values of a soil are meant, where the plan says so. */
export interface SoilTold {
  /** Half an inch of movement at the ground does it no harm: twice the pressure of the soil counts. */
  readonly isolatedPole?: boolean;
  /** What it carries is meant beyond the weight of the soil taken away. */
  readonly bearingNet?: boolean;
  /** The building official accepts side and base together. */
  readonly bothAccepted?: boolean;
}

/** One tube of a stepped or sleeved mast, heights above its foot [m]. */
export interface MastTube {
  readonly outside: number;
  readonly wall: number;
  readonly from: number;
  readonly to: number;
  /** [Pa] */
  readonly yieldStrength?: number;
}

export interface Mast {
  readonly outside: number;
  readonly length: number;
  readonly wall?: number;
  /** [Pa]; never a default. */
  readonly yieldStrength?: number;
  /** Strength at rupture [Pa]; asked of aluminium only. */
  readonly ultimateStrength?: number;
  readonly material: Material;
  /** Stepped or sleeved: its tubes; absent: one tube from end to end. */
  readonly pieces?: readonly MastTube[];
  /** Height of its foot; absent when the plan does not say how far it reaches down inside. */
  readonly foot?: number;
  /** Height of its upper end. */
  readonly tip: number;
  /** Height of its upper bearing; absent: clamped at the foot alone. */
  readonly bearing?: number;
  /** Bearing and foot stand on the maker's own plates. */
  readonly shelf: boolean;
}

export interface Load {
  readonly name: string;
  /** JSON pointer into the plan. */
  readonly at: string;
  readonly low: number;
  readonly high: number;
  readonly shape: Shape;
  readonly count: number;
  /** Of each [kg]. */
  readonly weight?: number;
  /** Of each with the ice of its site [kg]. */
  readonly icedWeight?: number;
  readonly turns: boolean;
  /** Where it faces, clockwise from true north [rad]. */
  readonly heading?: number;
  readonly on: 'mast' | 'tower';
  /** From the axis to the middle of its area [m]. */
  readonly offset: number;
  readonly boom?: number;
  readonly reach?: number;
  /** The wind its maker rates it for: speed [m/s] and, where he says so, which kind. */
  readonly ratedWind?: { readonly speed: number; readonly basis?: SpeedBasis };
}

export interface CableRun extends Lines {
  readonly name: string;
  readonly at: string;
  readonly low: number;
  readonly high: number;
  /** Of one line [kg/m]. */
  readonly weight?: number;
}
