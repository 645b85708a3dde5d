/** What a body is, in SI, as far as its owner knows it. Heights and headings belong to where it hangs, not to it. */
export type Shape =
  | StatedShape
  | StatedForceShape
  | TubeShape
  | TubesShape
  | PlateShape
  | DishShape
  | WireShape
  | LatticeShape
  | PoleShape;

/** Which area a data sheet means; the same square feet differ by up to 1.8, with slender flats 2.0. */
export type AreaKind = 'effective' | 'projected-round' | 'projected-flat' | 'flat-plate' | 'unknown';

export interface StatedShape {
  readonly kind: 'stated';
  /** Area seen by a wind along the boom [m²]. */
  readonly front: number;
  /** Area seen by a wind across the boom [m²]. */
  readonly side: number;
  readonly areaKind: AreaKind;
  /** Angle or strip is among its members, so that an unknown kind may hide a factor 2.0. */
  readonly slenderFlats: boolean;
  /** Area with ice, of the same kind [m²]. */
  readonly icedArea?: number;
}

/** A maker's force at a speed. */
export interface StatedForceShape {
  readonly kind: 'stated-force';
  /** [N] */
  readonly force: number;
  /** [m/s] */
  readonly wind: number;
  /** Effective area with ice [m²]. */
  readonly icedArea?: number;
}

/** What a tube is made of. */
export const MATERIAL_NAMES = ['steel', 'aluminium'] as const;
export type Material = (typeof MATERIAL_NAMES)[number];

export type Along = 'upright' | 'boom' | 'element';

export interface TubeShape {
  readonly kind: 'tube';
  readonly along: Along;
  /** Diameter at the lower and upper (or inner and outer) end [m]. */
  readonly diameter: readonly [number, number];
  /** [m] */
  readonly length: number;
}

/** One visible piece of tube. */
export interface TubePiece {
  readonly diameter: number;
  readonly length: number;
  readonly wall?: number;
}

export interface TubeRow {
  readonly along: Along;
  readonly count: number;
  /** The whole member, tip to tip, as the wind sees it. */
  readonly pieces: readonly TubePiece[];
  /** Absent: not said. */
  readonly material?: Material;
  /** [Pa]; never a default. */
  readonly yieldStrength?: number;
  /** Strength at rupture [Pa]; asked of aluminium only. */
  readonly ultimateStrength?: number;
}

export interface TubesShape {
  readonly kind: 'tubes';
  readonly rows: readonly TubeRow[];
}

export interface PlateShape {
  readonly kind: 'plate';
  readonly wide: number;
  readonly tall: number;
  readonly deep: number;
}

export interface DishShape {
  readonly kind: 'dish';
  readonly diameter: number;
  /** Solid share of its face, 1 for a full dish. */
  readonly solidity: number;
}

/** What a wire is made of. */
export const CONDUCTORS = ['hard-copper', 'soft-copper', 'copper-clad-steel', 'aluminium', 'steel'] as const;
export type Conductor = (typeof CONDUCTORS)[number];

export interface WireShape {
  readonly kind: 'wire';
  readonly diameter: number;
  /** Horizontal distance to its far end [m]. */
  readonly distance: number;
  /** Height of its far end less height of its near end [m]. */
  readonly rise: number;
  /** Where it runs, clockwise from true north [rad]. */
  readonly heading: number;
  /** Horizontal share of its pull in still air [N]; absent: not known. */
  readonly pull?: number;
  /** Absent: as the stiffest. */
  readonly conductor?: Conductor;
}

export type Members = 'round' | 'flat';

export type LatticeSolid =
  | {
      readonly by: 'members';
      readonly leg: number;
      readonly brace: number;
      readonly panel: number;
      readonly pattern: 'zigzag' | 'cross' | 'rungs';
    }
  | { readonly by: 'solidity'; readonly solidity: number }
  /** Areas of one face of this section [m²]. */
  | { readonly by: 'areas'; readonly round: number; readonly flat: number }
  /** The maker's drag area of this section [m²]. */
  | { readonly by: 'drag'; readonly dragArea: number }
  | { readonly by: 'unknown' };

export interface LatticeShape {
  readonly kind: 'lattice';
  readonly faces: 3 | 4;
  /** Width of a face outside, at the lower and upper end [m]. */
  readonly width: readonly [number, number];
  readonly members: Members;
  readonly solid: LatticeSolid;
}

export interface PoleShape {
  readonly kind: 'pole';
  readonly width: readonly [number, number];
  /** 0 is round. */
  readonly sides: 0 | 8 | 12 | 16 | 18;
}

export const LAYS = ['single', 'flat', 'bundle', 'ladder', 'inside'] as const;
export type Lay = (typeof LAYS)[number];

/** Alike lines, and how they are arranged. */
export interface Lines {
  readonly count: number;
  /** Of one [m]. */
  readonly diameter: number;
  readonly laid: Lay;
  /** On a ladder: how many rows, and from line to line, centre to centre [m]; absent where either is not told. */
  readonly inRows?: { readonly rows: number; readonly spacing: number };
}
