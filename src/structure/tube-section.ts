import type { Material } from '../areas/index.ts';
import { cite, defineFormula, evaluate, listVariable, Refusal, type Trace, variable } from '../foundation/index.ts';
import { MATERIALS, secondMomentOfTube } from './first-mode.ts';

/** A round tube; a bar has a wall of half its outside. */
export interface Tube {
  readonly outside: number;
  readonly wall: number;
  readonly material: Material;
  /** [Pa]; never a default. */
  readonly yieldStrength?: number;
  /** Strength at rupture [Pa]; asked of aluminium only. */
  readonly ultimateStrength?: number;
  /** [Pa]; where not given, that of the material. */
  readonly youngsModulus?: number;
}

/** Least safety over yield of a steel section in bending. @source aisc-360 */
export const YIELD_SAFETY = 1.67;
/** Least safety over rupture of an aluminium section in bending, not at a weld. @source aluminum-design-manual */
export const RUPTURE_SAFETY = 1.95;
/** D·Fy/(t·E) over which the wall of a steel tube may buckle before it yields; kept for aluminium too. @source aisc-360 */
export const THIN_WALL = 0.31;
/** How much thicker than its bore an inner tube may be written down, for sizes are rounded [m]. @source common-practice */
export const FIT = 0.0005;

const outside = variable('D', 'outside diameter', 'diameter', 0.01, 2);
const wall = variable('t', 'wall', 'diameter', 0.0005, 0.005);
const modulus = variable('S', 'elastic section modulus', 'section-modulus', 1e-8, 1e-2);
const stress = (symbol: string, meaning: string) => variable(symbol, meaning, 'stress', 1e7, 2e9);

export const areaOfTubeFormula = defineFormula({
  id: 'area-of-tube',
  title: 'Area of the metal of a round tube',
  symbol: 'A',
  unit: 'section-area',
  expression: 'pi * (D - t) * t',
  variables: [outside, wall],
  cite: cite('derived', 'annulus: mean girth times wall', 'derived'),
  of: (D: number, t: number) => Math.PI * (D - t) * t,
});

export const sectionModulusOfTube = defineFormula({
  id: 'section-modulus-tube',
  title: 'Elastic section modulus of a round tube',
  symbol: 'S',
  unit: 'section-modulus',
  expression: 'pi * (D^4 - (D - 2 * t)^4) / (32 * D)',
  variables: [outside, wall],
  cite: cite('derived', 'second moment over half the outside diameter', 'derived'),
  of: (D: number, t: number) => (Math.PI * (D ** 4 - (D - 2 * t) ** 4)) / (32 * D),
});

export const radiusOfGyrationFormula = defineFormula({
  id: 'radius-of-gyration',
  title: 'Radius of gyration',
  symbol: 'r',
  unit: 'diameter',
  expression: 'sqrt(I / A)',
  variables: [
    variable('I', 'second moment of area', 'second-moment', 1e-11, 1e-2),
    variable('A', 'area of the metal', 'section-area', 1e-5, 0.1),
  ],
  cite: cite('derived', 'definition', 'derived'),
  of: (second: number, area: number) => Math.sqrt(second / area),
});

export const weightOfTubeFormula = defineFormula({
  id: 'weight-of-tube',
  title: 'Weight of a tube for each length of it',
  symbol: 'w',
  unit: 'weight-per-length',
  expression: 'rho * A',
  variables: [
    variable('rho', 'density', 'density', 1000, 9000),
    variable('A', 'area of the metal', 'section-area', 1e-5, 0.1),
  ],
  cite: cite('derived', 'density times area', 'derived'),
  of: (density: number, area: number) => density * area,
});

export const bendingByYield = defineFormula({
  id: 'bending-by-yield',
  title: 'Allowable moment of a section, by its yield',
  symbol: 'M_y',
  unit: 'moment',
  expression: 'F_y * S / 1.67',
  variables: [stress('F_y', 'yield strength'), modulus],
  cite: cite('aisc-360', 'F1, safety 1.67; on the elastic modulus on purpose, not the plastic one', 'memory'),
  of: (yieldStrength: number, S: number) => (yieldStrength * S) / YIELD_SAFETY,
});

export const bendingByRupture = defineFormula({
  id: 'bending-by-rupture',
  title: 'Allowable moment of an aluminium section, by its ultimate strength; not at a weld',
  symbol: 'M_u',
  unit: 'moment',
  expression: 'F_u * S / 1.95',
  variables: [stress('F_u', 'strength at rupture'), modulus],
  cite: cite('aluminum-design-manual', 'chapter F, safety 1.95 on rupture', 'memory'),
  of: (ultimate: number, S: number) => (ultimate * S) / RUPTURE_SAFETY,
});

export const bendingAtYield = defineFormula({
  id: 'bending-at-yield',
  title: 'Moment at which the outermost metal of a section begins to yield',
  symbol: 'M_0',
  unit: 'moment',
  expression: 'F_y * S',
  variables: [stress('F_y', 'yield strength'), modulus],
  cite: cite('derived', 'elastic bending, stress M/S', 'derived'),
  of: (yieldStrength: number, S: number) => yieldStrength * S,
});

const young = (symbol: string, meaning: string) => [symbol, meaning, 'stress', 1e10, 3e11] as const;
const second = (symbol: string, meaning: string) => [symbol, meaning, 'second-moment', 1e-11, 1e-4] as const;

export const shareByStiffness = defineFormula({
  id: 'share-by-stiffness',
  title: 'Share of the moment that one of several tubes inside each other takes',
  symbol: 'k',
  unit: 'one',
  expression: 'E_1 * I_1 / sum(E .* I)',
  variables: [
    variable(...young('E_1', "this tube's Young's modulus")),
    variable(...second('I_1', "this tube's second moment")),
    listVariable(...young('E', "Young's moduli of all")),
    listVariable(...second('I', 'second moments of all')),
  ],
  cite: cite('derived', 'tubes that touch bend to one curvature, so that each takes moment by its E·I', 'derived'),
  of: (E1: number, I1: number, E: readonly number[], I: readonly number[]) => (E1 * I1) / rigidityOf(E, I),
});

export const bendingByShare = defineFormula({
  id: 'bending-by-share',
  title: 'Moment on all the tubes at which one of them has its own share of it',
  symbol: 'M_all',
  unit: 'moment',
  expression: 'M_1 / k',
  variables: [
    variable('M_1', 'moment of this tube: what it is allowed, or that of its yield', 'moment', 0, 1e6),
    variable('k', 'its share of the moment', 'one', 0.01, 1),
  ],
  cite: cite('derived', 'sharing by stiffness', 'derived'),
  of: (allowed: number, share: number) => allowed / share,
});

export const ratioInBending = defineFormula({
  id: 'use-in-bending',
  title: 'Ratio of a section in bending',
  symbol: 'u',
  unit: 'one',
  expression: 'abs(M) / M_all',
  variables: [
    variable('M', 'bending moment', 'moment', -1e5, 1e5),
    variable('M_all', 'allowed moment', 'moment', 1, 1e6),
  ],
  cite: cite('derived', 'demand over what is allowed', 'derived'),
  of: (demand: number, allowed: number) => Math.abs(demand) / allowed,
});

/** Σ E·I of tubes that bend together [N·m²]. */
function rigidityOf(E: readonly number[], I: readonly number[]): number {
  return E.reduce((sum, each, index) => sum + each * (I[index] as number), 0);
}

export interface TubeSection {
  /** Of the metal [m²]. */
  readonly area: number;
  /** [m⁴] */
  readonly secondMoment: number;
  /** Elastic [m³]. */
  readonly sectionModulus: number;
  /** [m] */
  readonly radiusOfGyration: number;
  /** [kg/m] */
  readonly weightPerLength: number;
  /** [Pa] */
  readonly youngsModulus: number;
  /** E·I [N·m²]. */
  readonly rigidity: number;
}

/**
 * What the shape of a tube makes of it.
 *
 * A = π(D−t)t, I = π(D⁴−d⁴)/64, S = π(D⁴−d⁴)/(32D), w = ρA
 *
 * The wall is the nominal one: the mill's tolerance and the 0.93 some codes put on welded pipe are not taken off.
 *
 * @throws Refusal tube-impossible where the wall is none, or thicker than half the outside
 * @example tubeSection({ outside: 1.9 * INCH, wall: 0.145 * INCH, material: 'steel' }).sectionModulus / INCH ** 3 // 0.3262
 * @source derived, common-practice
 */
export function tubeSection(tube: Tube, trace?: Trace): TubeSection {
  const { outside: D, wall: t, material } = tube;
  if (!(t > 0 && Number.isFinite(D) && 2 * t <= D * (1 + 1e-12))) {
    throw new Refusal('tube-impossible', 'A tube has a wall, and no more of it than half its outside.');
  }
  const { density } = MATERIALS[material];
  const youngsModulus = tube.youngsModulus ?? MATERIALS[material].youngsModulus;
  if (!(youngsModulus > 0 && Number.isFinite(youngsModulus))) {
    throw new Refusal('tube-impossible', "Young's modulus is greater than 0.");
  }
  const area = evaluate(trace, areaOfTubeFormula, [D, t]);
  const secondMoment = evaluate(trace, secondMomentOfTube, [D, t]);
  const sectionModulus = evaluate(trace, sectionModulusOfTube, [D, t]);
  return {
    area,
    secondMoment,
    sectionModulus,
    radiusOfGyration: radiusOfGyrationFormula.of(secondMoment, area),
    weightPerLength: evaluate(trace, weightOfTubeFormula, [density, area]),
    youngsModulus,
    rigidity: youngsModulus * secondMoment,
  };
}

export interface AllowedBending {
  /** What the tube is surely allowed [N·m]. */
  readonly surely: number;
  /** The same if what the plan leaves not stated turns out well [N·m]. */
  readonly atMost: number;
  readonly decidedBy: 'yield' | 'rupture' | 'rupture-not-given';
}

/**
 * Bending moment a tube is allowed.
 *
 * steel: Fy·S/1.67; aluminium: min(Fy·S/1.67, Fu·S/1.95)
 *
 * Aluminium whose strength at rupture is not given is allowed Fy·S/1.95, since rupture never comes before yield, and
 * Fy·S/1.67 at most. Not for welded places of aluminium.
 *
 * @returns what it is allowed; undefined where its yield is not given or its wall is so thin that it may buckle first
 * @throws Refusal tube-impossible, strength-impossible where a strength is not greater than 0 or rupture comes before yield
 * @example allowedBending({ outside: 0.05, wall: 0.005, material: 'steel', yieldStrength: 240e6 }).surely // 1041
 * @source aisc-360, aluminum-design-manual
 */
export function allowedBending(tube: Tube, trace?: Trace): AllowedBending | undefined {
  const { sectionModulus: S, youngsModulus } = tubeSection(tube);
  const { yieldStrength, ultimateStrength, material } = tube;
  for (const strength of [yieldStrength, ultimateStrength]) {
    if (strength !== undefined && !(strength > 0 && Number.isFinite(strength))) {
      throw new Refusal('strength-impossible', 'A strength is greater than 0.');
    }
  }
  if (yieldStrength === undefined) return undefined;
  if (ultimateStrength !== undefined && ultimateStrength < yieldStrength) {
    throw new Refusal('strength-impossible', 'No metal breaks before it yields: rupture is below yield.');
  }
  if (isThin(tube, yieldStrength, youngsModulus)) return undefined;
  const byYield = evaluate(trace, bendingByYield, [yieldStrength, S]);
  if (material === 'steel') return { surely: byYield, atMost: byYield, decidedBy: 'yield' };
  if (ultimateStrength === undefined) {
    const note = 'ultimate strength not given; the yield is assumed';
    const surely = evaluate(trace, bendingByRupture, [yieldStrength, S], note);
    return { surely, atMost: byYield, decidedBy: 'rupture-not-given' };
  }
  const byRupture = evaluate(trace, bendingByRupture, [ultimateStrength, S]);
  const least = Math.min(byYield, byRupture);
  return { surely: least, atMost: least, decidedBy: byRupture < byYield ? 'rupture' : 'yield' };
}

function isThin({ outside: D, wall: t }: Tube, yieldStrength: number, youngsModulus: number): boolean {
  return D * yieldStrength > THIN_WALL * t * youngsModulus;
}

/** Why what a tube is allowed cannot be shown. */
export interface TubeNotShown {
  /** Its place among the tubes given. */
  readonly tube: number;
  readonly why: 'yield-not-given' | 'wall-thin';
}

export interface SharedBending {
  /** In the order given. */
  readonly sections: readonly TubeSection[];
  /** Share of the moment that each takes. */
  readonly shares: readonly number[];
  /** Σ E·I [N·m²]. */
  readonly rigidity: number;
  /** Of all together [kg/m]. */
  readonly weightPerLength: number;
  /** What all together are allowed [N·m]; undefined where that of one is not shown. */
  readonly allowed?: { readonly surely: number; readonly atMost: number };
  /** Which of them reaches what it is allowed first. */
  readonly decides?: number;
  readonly notShown: readonly TubeNotShown[];
}

/**
 * Bending of tubes that stand inside each other, or of one alone: each takes its share by stiffness, and the first to
 * reach what it is allowed decides.
 *
 * kᵢ = EᵢIᵢ/Σ(E·I), M_all = min(M_all,i/kᵢ)
 *
 * True where the tubes touch all along, some diameters away from where a sleeve ends; a loose sleeve takes nothing until
 * the gap is closed, and `creditedPieces` does not count on it.
 *
 * @returns shares, stiffness and what all together are allowed
 * @throws Refusal tubes-none where there is none, tubes-do-not-nest where one does not go into the next, and as its parts do
 * @example sharedBending([{ outside: 0.05, wall: 0.005, material: 'steel' }]).shares // [1]
 * @source derived
 */
export function sharedBending(tubes: readonly Tube[], trace?: Trace): SharedBending {
  if (tubes.length === 0) throw new Refusal('tubes-none', 'There is no tube here to bend.');
  const sections = tubes.map((tube) => tubeSection(tube, trace));
  const byOutside = [...tubes].sort((a, b) => b.outside - a.outside);
  byOutside.slice(1).forEach((inner, index) => {
    const outer = byOutside[index] as Tube;
    if (inner.outside > outer.outside - 2 * outer.wall + FIT) {
      throw new Refusal('tubes-do-not-nest', 'One of two tubes at the same place does not go into the other.');
    }
  });
  const E = sections.map(({ youngsModulus }) => youngsModulus);
  const I = sections.map(({ secondMoment }) => secondMoment);
  const alone = tubes.length === 1;
  const shares = sections.map(({ youngsModulus, secondMoment }) =>
    alone ? 1 : evaluate(trace, shareByStiffness, [youngsModulus, secondMoment, E, I]),
  );
  const common = {
    sections,
    shares,
    rigidity: rigidityOf(E, I),
    weightPerLength: sections.reduce((sum, { weightPerLength }) => sum + weightPerLength, 0),
    notShown: [] as TubeNotShown[],
  };
  const each = tubes.map((tube) => allowedBending(tube, trace));
  each.forEach((allowed, tube) => {
    const why = tubes[tube]?.yieldStrength === undefined ? 'yield-not-given' : 'wall-thin';
    if (allowed === undefined) common.notShown.push({ tube, why });
  });
  let surely = Number.POSITIVE_INFINITY;
  let atMost = Number.POSITIVE_INFINITY;
  let decides = 0;
  for (const [index, allowed] of each.entries()) {
    if (allowed === undefined) return common;
    const share = shares[index] as number;
    const here = alone ? allowed.surely : evaluate(trace, bendingByShare, [allowed.surely, share]);
    if (here < surely) {
      surely = here;
      decides = index;
    }
    atMost = Math.min(atMost, allowed.atMost / share);
  }
  return { ...common, allowed: { surely, atMost }, decides };
}
