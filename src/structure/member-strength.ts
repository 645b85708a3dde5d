import type { Material } from '../areas/index.ts';
import { cite, defineFormula, evaluate, type Trace, variable } from '../foundation/index.ts';
import { areaOfAngle, MATERIALS, secondMomentOfTube } from './first-mode.ts';
import { areaOfTubeFormula, radiusOfGyrationFormula } from './tube-section.ts';

/** One straight member of a lattice: a round tube, a rod (its wall is half of it), or an angle of equal sides. */
export interface Member {
  readonly form: 'round' | 'angle';
  /** Outside diameter, or width of a side [m]. */
  readonly size: number;
  /** Wall or thickness [m]. */
  readonly wall: number;
  readonly material: Material;
  /** [Pa] */
  readonly yieldStrength: number;
}

/** Safety over the stress at which a column buckles; aluminium may have 1.65. @source aisc-360 */
const BUCKLING_SAFETY = 1.67;
/** D·F_y/(t·E) over which the wall of a pressed steel tube may buckle first. @source aisc-360 */
const STOUT_TUBE = 0.11;
/** D/t over which the wall of a pressed tube of aluminium may buckle first. @source aluminum-design-manual */
const STOUT_ALUMINIUM = 55;
/** (w/t)·√(F_y/E) over which the side of an angle may buckle first. @source aisc-360 */
const STOUT_ANGLE = 0.45;
/** F_y/F_e up to which a column yields as it buckles. @source aisc-360 */
const INELASTIC_UP_TO = 2.25;

const yieldStrength = variable('F_y', 'yield strength', 'stress', 5e7, 5e8);
const young = variable('E', "Young's modulus", 'stress', 6e10, 2.2e11);
const slender = variable('s', 'slenderness, effective length over radius of gyration', 'one', 5, 300);
const side = variable('w', 'width of a side', 'diameter', 0.01, 0.2);
const thick = variable('t', 'thickness', 'diameter', 0.001, 0.005);

export const leastGyrationOfAngle = defineFormula({
  id: 'least-gyration-of-angle',
  title: 'Least radius of gyration of an angle of equal sides',
  symbol: 'r',
  unit: 'diameter',
  expression: '(w - t / 2) / sqrt(24) * 0.985',
  variables: [side, thick],
  cite: cite('derived', 'thin strips along their middles, 1.5 % off for the rounded corner', 'derived'),
  of: (w: number, t: number) => ((w - t / 2) / Math.sqrt(24)) * 0.985,
});

export const slendernessFormula = defineFormula({
  id: 'slenderness',
  title: 'Slenderness of a pressed member',
  symbol: 's',
  unit: 'one',
  expression: 'K * L / r',
  variables: [
    variable('K', 'share of its length that bows', 'one', 0.7, 1),
    variable('L', 'free length', 'length', 0.1, 3),
    variable('r', 'least radius of gyration', 'diameter', 0.002, 0.1),
  ],
  cite: cite('derived', 'definition', 'derived'),
  of: (K: number, L: number, r: number) => (K * L) / r,
});

export const slendernessOffCentre = defineFormula({
  id: 'slenderness-off-centre',
  title: 'Slenderness that an angle counts with which is pressed off its middle at both ends',
  symbol: 's',
  unit: 'one',
  expression: 'max(s_0, 60 + 0.5 * s_0)',
  variables: [variable('s_0', 'slenderness', 'one', 5, 300)],
  cite: cite('asce-10', 'compression members, single angles', 'memory'),
  of: (s: number) => Math.max(s, 60 + 0.5 * s),
});

export const elasticBuckling = defineFormula({
  id: 'elastic-buckling',
  title: 'Stress at which a straight column buckles while elastic',
  symbol: 'F_e',
  unit: 'stress',
  expression: 'pi^2 * E / s^2',
  variables: [young, slender],
  cite: cite('aisc-360', 'E3-4; Euler', 'derived'),
  of: (E: number, s: number) => (Math.PI ** 2 * E) / s ** 2,
});

export const stockyColumnStress = defineFormula({
  id: 'stocky-column-stress',
  title: 'Stress at which a stocky steel column fails',
  symbol: 'F_cr',
  unit: 'stress',
  expression: '0.658^(F_y / F_e) * F_y',
  variables: [yieldStrength, variable('F_e', 'elastic buckling stress', 'stress', 1e8, 5e9)],
  cite: cite('aisc-360', 'E3-2, up to F_y/F_e of 2.25; read in its design example E.11', 'published'),
  of: (F: number, e: number) => 0.658 ** (F / e) * F,
});

export const slenderColumnStress = defineFormula({
  id: 'slender-column-stress',
  title: 'Stress at which a slender steel column fails',
  symbol: 'F_cr',
  unit: 'stress',
  expression: '0.877 * F_e',
  variables: [variable('F_e', 'elastic buckling stress', 'stress', 1e7, 2e8)],
  cite: cite('aisc-360', 'E3-3, over F_y/F_e of 2.25; read in its design example E.11', 'published'),
  of: (e: number) => 0.877 * e,
});

export const bucklingIntercept = defineFormula({
  id: 'buckling-intercept',
  title: 'Stress that the straight line of an aluminium column begins with',
  symbol: 'B',
  unit: 'stress',
  expression: 'F_y * (1 + sqrt(F_y / k))',
  variables: [yieldStrength, variable('k', 'constant of its temper: 2250 or 1000 ksi', 'stress', 6.9e9, 1.56e10)],
  cite: cite('aluminum-design-manual', 'B.4, buckling constants of columns', 'memory'),
  of: (F: number, k: number) => F * (1 + Math.sqrt(F / k)),
});

export const stockyAluminiumStress = defineFormula({
  id: 'stocky-aluminium-column-stress',
  title: 'Stress at which a stocky column of aluminium fails',
  symbol: 'F_cr',
  unit: 'stress',
  expression: 'min(F_y, 0.85 * (B - c * B * sqrt(B / E) * s))',
  variables: [
    yieldStrength,
    variable('B', 'stress its straight line begins with', 'stress', 6e7, 7e8),
    variable('c', 'slope of its temper: 1/10 or √6/20', 'one', 0.1, 0.1225),
    young,
    slender,
  ],
  cite: cite('aluminum-design-manual', 'E.3, columns', 'memory'),
  of: (F: number, B: number, c: number, E: number, s: number) => Math.min(F, 0.85 * (B - c * B * Math.sqrt(B / E) * s)),
});

export const slenderAluminiumStress = defineFormula({
  id: 'slender-aluminium-column-stress',
  title: 'Stress at which a slender column of aluminium fails',
  symbol: 'F_cr',
  unit: 'stress',
  expression: '0.85 * F_e',
  variables: [variable('F_e', 'elastic buckling stress', 'stress', 1e6, 2e8)],
  cite: cite('aluminum-design-manual', 'E.3, columns', 'memory'),
  of: (e: number) => 0.85 * e,
});

/**
 * Tempers of aluminium: 2250 and 1000 ksi, the slope of the straight line, and its end over √(E/B).
 *
 * @source aluminum-design-manual
 */
const TEMPERS = [
  { k: 2250 * 6.894757e6, c: 0.1, upTo: 4.1 },
  { k: 1000 * 6.894757e6, c: Math.sqrt(6) / 20, upTo: 40 / (3 * Math.sqrt(6)) },
] as const;

/**
 * Stress at which a straight column fails, pinned at its ends.
 *
 * steel: 0.658^(F_y/F_e)·F_y up to F_y/F_e of 2.25, else 0.877·F_e; aluminium: the less of both kinds of temper
 *
 * @param yieldStrength [Pa]
 * @param slenderness effective length over radius of gyration [-]
 * @returns the stress [Pa]
 * @example columnStress('steel', 241e6, 97.8) // 147.8e6
 * @source aisc-360, aluminum-design-manual
 */
export function columnStress(material: Material, yieldStrength: number, slenderness: number, trace?: Trace): number {
  const { youngsModulus } = MATERIALS[material];
  const elastic = evaluate(trace, elasticBuckling, [youngsModulus, slenderness]);
  if (material === 'steel') {
    if (yieldStrength > INELASTIC_UP_TO * elastic) return evaluate(trace, slenderColumnStress, [elastic]);
    return evaluate(trace, stockyColumnStress, [yieldStrength, elastic]);
  }
  const of = ({ k, c, upTo }: (typeof TEMPERS)[number], noted?: Trace) => {
    const B = evaluate(noted, bucklingIntercept, [yieldStrength, k]);
    if (slenderness >= upTo * Math.sqrt(youngsModulus / B)) return evaluate(noted, slenderAluminiumStress, [elastic]);
    return evaluate(noted, stockyAluminiumStress, [yieldStrength, B, c, youngsModulus, slenderness]);
  };
  const [treated, soft] = TEMPERS;
  return of(of(treated) <= of(soft) ? treated : soft, trace);
}

export const allowedCompression = defineFormula({
  id: 'allowed-compression',
  title: 'Push that a section is allowed by itself',
  symbol: 'P_c',
  unit: 'force',
  expression: 'phi * F_cr * A / 1.67',
  variables: [
    variable('phi', 'share of an allowable strength that the standard takes', 'one', 0.5, 1),
    variable('F_cr', 'stress at which it buckles', 'stress', 1e5, 5e8),
    variable('A', 'area of the metal', 'section-area', 1e-5, 0.1),
  ],
  cite: cite('aisc-360', 'E1, safety 1.67', 'memory'),
  of: (phi: number, stress: number, A: number) => (phi * stress * A) / BUCKLING_SAFETY,
});

/** How a member is held. */
export interface MemberHold {
  /** Between the points that hold it [m]. */
  readonly length: number;
  /** Share of its length that bows; 1 between hinges. */
  readonly share: number;
  /** Its ends press it off its middle, as those of a single angle that is a brace do. */
  readonly offCentre?: boolean;
}

/**
 * Area of the metal of a member and its least radius of gyration.
 *
 * @param member of one size and wall [m]
 * @returns area [m²] and radius of gyration [m]
 * @example memberSection({ form: 'round', size: 0.02, wall: 0.01, material: 'steel', yieldStrength: 250e6 }).gyration // 0.005
 * @source derived
 */
export function memberSection(member: Member, trace?: Trace) {
  const { form, size, wall } = member;
  if (form === 'angle') {
    return {
      area: evaluate(trace, areaOfAngle, [size, wall]),
      gyration: evaluate(trace, leastGyrationOfAngle, [size, wall]),
    };
  }
  const area = evaluate(trace, areaOfTubeFormula, [size, wall]);
  const second = evaluate(trace, secondMomentOfTube, [size, wall]);
  return { area, gyration: evaluate(trace, radiusOfGyrationFormula, [second, area]) };
}

/**
 * Push that a straight member is allowed. A pull as large never fails it first, its joints apart.
 *
 * φ·F_cr·A/1.67
 *
 * @param phi share of the allowable strength that the standard takes [-]
 * @returns the force [N]; undefined where its wall may buckle before the whole of it
 * @source aisc-360, aluminum-design-manual
 */
export function allowedPush(member: Member, hold: MemberHold, phi: number, trace?: Trace): number | undefined {
  const { form, size, wall, material, yieldStrength } = member;
  const { youngsModulus } = MATERIALS[material];
  const relative = yieldStrength / youngsModulus;
  const stout =
    form === 'angle'
      ? (size / wall) * Math.sqrt(relative) <= STOUT_ANGLE
      : (size / wall) * relative <= STOUT_TUBE && (material === 'steel' || size / wall <= STOUT_ALUMINIUM);
  if (!stout) return undefined;
  const { area, gyration } = memberSection(member, trace);
  const plain = evaluate(trace, slendernessFormula, [hold.share, hold.length, gyration]);
  const slenderness = hold.offCentre ? evaluate(trace, slendernessOffCentre, [plain]) : plain;
  return evaluate(trace, allowedCompression, [phi, columnStress(material, yieldStrength, slenderness, trace), area]);
}
