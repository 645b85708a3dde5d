import type { Material } from '../areas/index.ts';
import { type Citation, cite, INCH } from '../foundation/index.ts';

/** A size of pipe that is made everywhere, by its trade name. */
export interface StandardPipe {
  /** Nominal size [in]: a name, no measure. */
  readonly nominal: string;
  readonly schedule: 40 | 80;
  readonly outside: number;
  /** Nominal wall; a mill may deliver an eighth less. */
  readonly wall: number;
  readonly cite: Citation;
}

const ASME = cite('asme-b36-10m', 'Table 1, outside diameter and wall', 'second-hand');
const HANDBOOK = cite('mott', '4th edition, Table A16-6', 'published');

const pipe = (nominal: string, schedule: 40 | 80, outside: number, wall: number, source = ASME): StandardPipe => ({
  nominal,
  schedule,
  outside: outside * INCH,
  wall: wall * INCH,
  cite: source,
});

/** Sizes and walls in inches. @source asme-b36-10m, mott */
export const STANDARD_PIPES: readonly StandardPipe[] = [
  pipe('1', 40, 1.315, 0.133),
  pipe('1', 80, 1.315, 0.179),
  pipe('1-1/4', 40, 1.66, 0.14),
  pipe('1-1/4', 80, 1.66, 0.191),
  pipe('1-1/2', 40, 1.9, 0.145, HANDBOOK),
  pipe('1-1/2', 80, 1.9, 0.2),
  pipe('2', 40, 2.375, 0.154, HANDBOOK),
  pipe('2', 80, 2.375, 0.218),
  pipe('2-1/2', 40, 2.875, 0.203, HANDBOOK),
  pipe('2-1/2', 80, 2.875, 0.276),
  pipe('3', 40, 3.5, 0.216),
  pipe('3', 80, 3.5, 0.3),
  pipe('3-1/2', 40, 4, 0.226),
  pipe('3-1/2', 80, 4, 0.318),
  pipe('4', 40, 4.5, 0.237, HANDBOOK),
  pipe('4', 80, 4.5, 0.337),
];

/** What a seller's paper may name; none is ever assumed. */
export interface TubeGrade {
  readonly id: string;
  /** As it stands on paper. */
  readonly name: string;
  readonly material: Material;
  /** Least by its standard [Pa]. */
  readonly yieldStrength: number;
  readonly ultimateStrength: number;
  readonly cite: Citation;
}

const KSI = 6894757.293168361;
const MPA = 1e6;

const grade = (
  id: string,
  name: string,
  material: Material,
  [yieldStrength, ultimateStrength]: readonly [number, number],
  unit: number,
  source: Citation,
): TubeGrade => ({
  id,
  name,
  material,
  yieldStrength: yieldStrength * unit,
  ultimateStrength: ultimateStrength * unit,
  cite: source,
});

const A53_A = cite('astm-a53', 'table of tensile requirements', 'memory');
const A53_B = cite('astm-a53', 'table of tensile requirements', 'second-hand');
const A500 = cite('astm-a500', 'table of tensile requirements, round, editions to 2018', 'second-hand');
const EN10219 = cite('en10219', 'EN 10219-1, Annex A and B; EN 1993-1-1, Table 3.1; walls to 40 mm', 'memory');
const ALUMINIUM = cite('aluminum-design-manual', 'Part I, Table A.4.3 (unwelded)', 'second-hand');

/** Least yield and rupture. Tubes ordered to a strength of their own (ASTM A513) have it on their mill sheet. @source astm-a53, astm-a500, en10219, aluminum-design-manual */
export const TUBE_GRADES: readonly TubeGrade[] = [
  grade('astm-a53-a', 'ASTM A53 grade A', 'steel', [30, 48], KSI, A53_A),
  grade('astm-a53-b', 'ASTM A53 grade B', 'steel', [35, 60], KSI, A53_B),
  grade('astm-a500-b-round', 'ASTM A500 grade B, round', 'steel', [42, 58], KSI, A500),
  grade('astm-a500-c-round', 'ASTM A500 grade C, round', 'steel', [46, 62], KSI, A500),
  grade('en10219-s235', 'EN 10219 S235', 'steel', [235, 360], MPA, EN10219),
  grade('en10219-s355', 'EN 10219 S355', 'steel', [355, 470], MPA, EN10219),
  grade('aluminium-6061-t6', 'aluminium 6061-T6, extruded, no weld', 'aluminium', [35, 38], KSI, ALUMINIUM),
];
