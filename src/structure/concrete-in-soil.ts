import { cite, defineFormula, evaluate, GRAVITY, type Trace, under, variable } from '../foundation/index.ts';
import { CONCRETE_DENSITY, DEAD_SHARE, type FootLoad } from './block-footing.ts';
import { DEEPEST_FOR_PRESSURE } from './pier-footing.ts';
import { momentOnRound } from './round-base.ts';
import { SOIL_HINTS } from './soil-hints.ts';
import { momentToPressure } from './toe-pressure.ts';

/** Weight of soil where nobody tells it, 110 lb/ft³ [N/m³]. @source common-practice */
export const SOIL_WEIGHT = 17_280;

/** Largest ratio that is told: what weight alone presses too hard has none. @source derived */
const MOST_RATIO = 1000;

/** Concrete cast in the ground, of any shape and under any name, with what the plan tells of the soil. */
export interface ConcreteInSoil {
  /** Sides of a rectangle, or the diameter of what is round [m]. */
  readonly plan: { readonly length: number; readonly width: number } | { readonly diameter: number };
  /** From the ground to its underside [m]; 0 where all of it stands above. */
  readonly depth: number;
  /** From the ground up to the foot of the tower [m]. */
  readonly head: number;
  /** Thickness of the concrete [m]. */
  readonly thickness: number;
  /** [kg/m³] */
  readonly density?: number;
  /** What the soil may carry upright [Pa]. */
  readonly bearing?: number;
  /** What it may press sideways, by depth [Pa/m]. */
  readonly lateral?: number;
  /** A rigid slab bears all round it at the ground. */
  readonly constrained: boolean;
  /** Half an inch of movement at the ground does no harm: twice `lateral`. Absent: both are tried. */
  readonly isolatedPole?: boolean;
  /** `bearing` is what may be added to the weight of the soil taken away. Absent: both are tried. */
  readonly bearingNet?: boolean;
  /** Side and base may be counted together. Absent: only to tell that a footing is not enough. */
  readonly bothAccepted?: boolean;
}

/** What a plan leaves open about soil and code. */
export const SOIL_FACTS = ['bearingNet', 'isolatedPole', 'soilLateral', 'soilBearing', 'bothAccepted'] as const;
export type SoilFact = (typeof SOIL_FACTS)[number];

/** One comparison: the largest multiple of the load that it takes is 1 over its ratio. */
export interface SoilUse {
  readonly of: 'base' | 'sides' | 'sides-and-base' | 'weight';
  readonly ratio: number;
  /** [N·m]; of weight, and of shear where that governs, [N] */
  readonly demand: number;
  readonly capacity: number;
}

/** What holds a footing under one reading of the soil, whatever the wind. */
export interface SoilHolds {
  /** Largest moment at the underside that the soil under it takes [N·m]. */
  readonly base?: number;
  /** Largest P·d + 1.09·M, or M of what is held by a slab, that the soil beside it takes [N·m]. */
  readonly sides?: number;
  /** All that the soil on its front may press [N]. */
  readonly front: number;
  /** The whole dead load, and what the soil under it carries at all [N]. */
  readonly dead: number;
  readonly carries: number;
}

export interface SoilReading {
  readonly bearing?: number;
  readonly lateral?: number;
  readonly factor: 1 | 2;
  readonly together: boolean;
}

const moment = (symbol: string, what: string) => variable(symbol, what, 'moment', 0, 1e6);
const depth = variable('d', 'depth of the underside', 'length', 0.3, 8);
const shear = variable('V', 'shear, nominal', 'force', 0, 1e5);
const surface = moment('M_s', 'moment at the ground, nominal');
const base = variable('M_b', 'moment that the soil under it takes', 'moment', 100, 1e6);
const sides = variable('C', 'S_1·b·d²/2.34', 'moment', 100, 1e6);

export const baseUse = defineFormula({
  id: 'footing-base-use',
  title: 'Moment at the underside over what the soil under it takes',
  symbol: 'u_b',
  unit: 'one',
  expression: '(M_s + V * d) / M_b',
  variables: [surface, shear, depth, base],
  cite: cite(
    'derived',
    'one over the largest multiple of the load at which the pressure reaches the allowable',
    'derived',
  ),
  of: (M: number, V: number, d: number, Mb: number) => (M + V * d) / Mb,
});

export const sidesAndBaseUse = defineFormula({
  id: 'footing-sides-and-base-use',
  title: 'Load over what the soil at the sides and under the base take together, front partly pressed',
  symbol: 'u_t',
  unit: 'one',
  expression: '(V * d + 1.09 * M_s) / (C + 1.09 * M_b)',
  variables: [shear, depth, surface, sides, base],
  cite: cite(
    'derived',
    'a field of soil forces in balance and within the allowable; sides by IBC 1807.3.2.1',
    'derived',
  ),
  of: (V: number, d: number, M: number, C: number, Mb: number) => (V * d + 1.09 * M) / (C + 1.09 * Mb),
});

export const sidesAndBaseFull = defineFormula({
  id: 'footing-sides-and-base-full',
  title: 'The same with all of the front pressed',
  symbol: 'u_f',
  unit: 'one',
  expression: '(M_s + V * d) / ((C - H * d) / 1.09 + H * d + M_b)',
  variables: [surface, shear, depth, sides, variable('H', 'all that the front may press', 'force', 100, 1e5), base],
  cite: cite('derived', 'moment about the underside once the front is pressed all over', 'derived'),
  of: (M: number, V: number, d: number, C: number, H: number, Mb: number) =>
    (M + V * d) / ((C - H * d) / 1.09 + H * d + Mb),
});

/** All that the soil on the front may press: ½·k·S·b·d², with depth beyond 12 ft at the pressure there. */
function frontOf(perDepth: number, width: number, d: number): number {
  const counted = Math.min(d, DEEPEST_FOR_PRESSURE);
  return perDepth * width * (counted ** 2 / 2 + counted * (d - counted));
}

/** Width that the soil beside it sees: a diameter, or the diagonal of a square; of an oblong that of its shorter side [m]. */
function widthSeen(plan: ConcreteInSoil['plan']): number {
  return 'diameter' in plan ? plan.diameter : Math.SQRT2 * Math.min(plan.length, plan.width);
}

const areaOf = (plan: ConcreteInSoil['plan']) =>
  'diameter' in plan ? (Math.PI * plan.diameter ** 2) / 4 : plan.length * plan.width;

/**
 * Dead load of the concrete and of what is known on it.
 *
 * @param concrete the footing, of the usual density where it tells none
 * @param foot what stands on it [kg]
 * @returns the whole [N]
 * @source derived, common-practice
 */
export function deadLoadOf(concrete: ConcreteInSoil, foot: FootLoad): number {
  const { plan, thickness, density = CONCRETE_DENSITY } = concrete;
  return GRAVITY * (density * areaOf(plan) * thickness + (foot.weight ?? foot.leastWeight ?? 0));
}

/**
 * The least of what the soil under a footing takes, over all headings and with 0.6 and all of the dead load.
 *
 * min over N of the moment at which the largest pressure is q
 */
function baseMoment(concrete: ConcreteInSoil, dead: number, q: number): number {
  const { plan } = concrete;
  const at = (N: number) => ('diameter' in plan ? momentOnRound(plan.diameter, N, q) : momentToPressure(plan, N, q));
  return Math.min(at(DEAD_SHARE * dead), at(dead));
}

/**
 * What holds a footing under one reading of its soil, whatever the wind.
 *
 * M_b over all headings; C = S_1·b·d²/2.34, held by a slab S_3·b·d²/4.25; H = ½·k·S·b·d²
 *
 * @param concrete the footing
 * @param dead its dead load [N]
 * @param reading what the soil carries [Pa] and presses sideways [Pa/m]
 * @returns moments [N·m] and forces [N] that it takes
 * @source ibc-2018, derived
 */
export function soilHolds(concrete: ConcreteInSoil, dead: number, reading: SoilReading): SoilHolds {
  const { bearing, lateral, factor } = reading;
  const { plan, depth: d, constrained } = concrete;
  const b = widthSeen(plan);
  const S = factor * (lateral ?? 0);
  const counted = Math.min(d, DEEPEST_FOR_PRESSURE);
  const all = S * counted * b * d ** 2;
  return {
    ...(bearing === undefined ? {} : { base: baseMoment(concrete, dead, bearing) }),
    ...(all > 0 ? { sides: constrained ? all / 4.25 : all / (3 * 2.34) } : {}),
    front: frontOf(S, b, d),
    dead,
    carries: bearing === undefined ? Number.POSITIVE_INFINITY : areaOf(plan) * bearing,
  };
}

/**
 * How far a load uses what holds: by the base alone or by the sides alone, whichever asks less, and where it counts by both
 * together. Each is one over the largest multiple of the load that it takes.
 *
 * u = min(u_base, u_sides, u_both); where the dead load D is more than q·A, D/(q·A) where that is more
 *
 * @param concrete the footing
 * @param holds by one reading of the soil
 * @param load shear [N] and moment [N·m] at the foot of the tower
 * @param together side and base count together
 * @returns what governs, and each by itself
 * @source ibc-2018, derived
 */
export function soilUse(
  concrete: ConcreteInSoil,
  holds: SoilHolds,
  load: Pick<FootLoad, 'shear' | 'moment'>,
  together: boolean,
  trace?: Trace,
): { readonly governs: SoilUse; readonly base?: SoilUse; readonly sides?: SoilUse; readonly both?: SoilUse } {
  const { depth: d, head, thickness, constrained } = concrete;
  const V = load.shear;
  const Ms = load.moment + V * head;
  const underside = load.moment + V * thickness;
  const use = (of: SoilUse['of'], demand: number, capacity: number): SoilUse => {
    const ratio = Math.min(MOST_RATIO, demand > 0 ? demand / Math.max(capacity, 0) : 0);
    return { of, ratio, demand, capacity: ratio > 0 ? demand / ratio : Math.max(capacity, 0) };
  };
  const base = holds.base === undefined ? undefined : use('base', underside, holds.base);
  const sides = holds.sides === undefined ? undefined : use('sides', constrained ? Ms : V * d + 1.09 * Ms, holds.sides);
  const both = together && holds.base !== undefined && holds.sides !== undefined ? ofBoth() : undefined;
  if (trace && holds.base !== undefined && holds.base > 0)
    evaluate(trace, baseUse, [load.moment, V, thickness, holds.base]);
  const ways = [base, sides, both].filter((each) => each !== undefined);
  const best = ways.reduce((so, each) => (each.ratio < so.ratio ? each : so), ways[0] ?? use('weight', 1, 0));
  const weight = use('weight', holds.dead, holds.carries);
  return {
    governs: weight.ratio > best.ratio && weight.ratio > 1 ? weight : best,
    ...(base ? { base } : {}),
    ...(sides ? { sides } : {}),
    ...(both ? { both } : {}),
  };

  function ofBoth(): SoilUse {
    const [C, Mb, H] = [holds.sides ?? 0, Math.max(0, holds.base ?? 0), holds.front];
    if (constrained) return use('sides-and-base', Ms, C + Mb);
    const counted = V * d + 1.09 * Ms;
    const uses = [
      use('sides-and-base', counted, C + 1.09 * Mb),
      use('sides-and-base', Ms + V * d, (C - H * d) / 1.09 + H * d + Mb),
      use('sides-and-base', V * d, H * d),
    ] as const;
    if (trace)
      under(trace, 'sides and base together', () => {
        evaluate(trace, sidesAndBaseUse, [V, d, Ms, C, Mb]);
        evaluate(trace, sidesAndBaseFull, [Ms, V, d, C, H, Mb]);
      });
    return uses.reduce((so, each) => (each.ratio > so.ratio ? each : so));
  }
}

/** What a soil no worse than told may have at best, by its row of the code's table; sand where nothing is told. */
function presumed(told: number | undefined, of: 'bearing' | 'lateral', wanted: 'bearing' | 'lateral'): number {
  const sand = SOIL_HINTS[3];
  const rows = SOIL_HINTS.filter((hint) => told !== undefined && hint[of] <= told * (1 + 1e-6));
  return Math.max(...[...rows, ...(sand ? [sand] : [])].map((hint) => hint[wanted]));
}

/** The soil as it is at worst, what the plan leaves open answered against the footing; named facts answered for it. */
export function soilReading(concrete: ConcreteInSoil, answered: ReadonlySet<SoilFact> = new Set()): SoilReading {
  const { bearing, lateral, isolatedPole, bearingNet, bothAccepted, depth: d } = concrete;
  const carries = bearing ?? (answered.has('soilBearing') ? presumed(lateral, 'lateral', 'bearing') : undefined);
  const presses = lateral ?? (answered.has('soilLateral') ? presumed(bearing, 'bearing', 'lateral') : undefined);
  const net = bearingNet ?? answered.has('bearingNet');
  return {
    ...(carries === undefined ? {} : { bearing: net ? carries + SOIL_WEIGHT * d : carries }),
    ...(presses === undefined ? {} : { lateral: presses }),
    factor: (isolatedPole ?? answered.has('isolatedPole')) ? 2 : 1,
    together: bothAccepted ?? answered.has('bothAccepted'),
  };
}

/** The facts that a plan leaves open and that could speak for its footing. */
export function openFacts(concrete: ConcreteInSoil): readonly SoilFact[] {
  const { bearing, lateral, isolatedPole, bearingNet, bothAccepted, constrained } = concrete;
  const open: Readonly<Record<SoilFact, boolean>> = {
    bearingNet: bearingNet === undefined,
    isolatedPole: isolatedPole === undefined && !constrained,
    soilLateral: lateral === undefined,
    soilBearing: bearing === undefined,
    bothAccepted: bothAccepted === undefined,
  };
  return SOIL_FACTS.filter((fact) => open[fact]);
}
