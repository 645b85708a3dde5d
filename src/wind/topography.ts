import { atLeast, atMost, cite, defineFormula, evaluate, type Trace, variable } from '../foundation/index.ts';
import type { Exposure } from './ground.ts';
import type { Hill } from './site.ts';

interface HillConstants {
  readonly k: Readonly<Record<Exposure, number>>;
  readonly gamma: number;
  readonly mu: Readonly<Record<Hill['side'], number>>;
}

/** ASCE 7 Fig. 6-4 (7-05), Fig. 26.8-1 (7-10 on). @source bnbc-2020 */
export const ASCE_HILLS: Readonly<Record<Hill['shape'], HillConstants>> = {
  ridge: { k: { B: 1.3, C: 1.45, D: 1.55 }, gamma: 3, mu: { upwind: 1.5, downwind: 1.5 } },
  escarpment: { k: { B: 0.75, C: 0.85, D: 0.95 }, gamma: 2.5, mu: { upwind: 1.5, downwind: 4 } },
  'round-hill': { k: { B: 0.95, C: 1.05, D: 1.15 }, gamma: 4, mu: { upwind: 1.5, downwind: 1.5 } },
};

/** TIA-222-G Tables 2-4 and 2-5: topographic category by shape. @source tia222-g */
export const TIA_HILLS: Readonly<
  Record<Hill['shape'], { readonly category: number; readonly kt: number; readonly f: number }>
> = {
  escarpment: { category: 2, kt: 0.43, f: 1.25 },
  'round-hill': { category: 3, kt: 0.53, f: 2 },
  ridge: { category: 4, kt: 0.72, f: 1.5 },
};

/** TIA-222-G Table 2-4: terrain constant. @source tia222-g */
export const TIA_TERRAIN_CONSTANT: Readonly<Record<Exposure, number>> = { B: 0.9, C: 1, D: 1.1 };

const ASCE_FIGURE = 'Fig. 26.8-1 (7-05: Fig. 6-4); read in BNBC 2020 Part 6 Ch. 2, Fig. 6.2.4';

export const hillHeightFactor = defineFormula({
  id: 'k1-asce-hill',
  title: 'Topographic multiplier for the height of the hill; a hill steeper than 0.5 counts as 0.5',
  symbol: 'K_1',
  unit: 'one',
  expression: 'k * min(H / L_h, 0.5)',
  variables: [
    variable('k', 'constant of shape and exposure', 'one', 0.75, 1.55),
    variable('H', 'height of the hill', 'length', 1, 600),
    variable('L_h', 'crest to half-way down, upwind', 'length', 1, 3000),
  ],
  cite: cite('asce7-16', ASCE_FIGURE, 'published'),
  of: (k: number, hillHeight: number, halfLength: number) => k * Math.min(hillHeight / halfLength, 0.5),
});

export const hillEffectiveLength = defineFormula({
  id: 'lh-asce-hill',
  title: 'Length of the hill; a hill steeper than 0.5 counts as one of twice its height',
  symbol: 'L_e',
  unit: 'length',
  expression: 'max(L_h, 2 * H)',
  variables: [
    variable('L_h', 'crest to half-way down, upwind', 'length', 1, 3000),
    variable('H', 'height of the hill', 'length', 1, 600),
  ],
  cite: cite('asce7-16', ASCE_FIGURE, 'published'),
  of: (halfLength: number, hillHeight: number) => Math.max(halfLength, 2 * hillHeight),
});

export const hillDistanceFactor = defineFormula({
  id: 'k2-asce-hill',
  title: 'Topographic multiplier for the distance from the crest',
  symbol: 'K_2',
  unit: 'one',
  expression: 'max(0, 1 - x / (mu * L_e))',
  variables: [
    variable('x', 'distance from the crest', 'length', 0, 10000),
    variable('mu', 'constant of shape and side', 'one', 1.5, 4),
    variable('L_e', 'length of the hill', 'length', 1, 3000),
  ],
  cite: cite('asce7-16', ASCE_FIGURE, 'published'),
  of: (distance: number, mu: number, length: number) => Math.max(0, 1 - distance / (mu * length)),
});

export const hillDecayFactor = defineFormula({
  id: 'k3-asce-hill',
  title: 'Topographic multiplier for the height above the ground',
  symbol: 'K_3',
  unit: 'one',
  expression: 'exp(-gamma * z / L_e)',
  variables: [
    variable('gamma', 'constant of the shape', 'one', 2.5, 4),
    variable('z', 'height above ground', 'length', 0, 600),
    variable('L_e', 'length of the hill', 'length', 1, 3000),
  ],
  cite: cite('asce7-16', ASCE_FIGURE, 'published'),
  of: (gamma: number, z: number, length: number) => Math.exp((-gamma * z) / length),
});

export const topographicFactorAsce = defineFormula({
  id: 'kzt-asce',
  title: 'Topographic factor, ASCE 7',
  symbol: 'K_zt',
  unit: 'one',
  expression: '(1 + K_1 * K_2 * K_3)^2',
  variables: [
    variable('K_1', 'height of the hill', 'one', 0, 0.775),
    variable('K_2', 'distance from the crest', 'one', 0, 1),
    variable('K_3', 'height above the ground', 'one', 0, 1),
  ],
  cite: cite('asce7-16', '26.8.2, Eq. 26.8-1; read in BNBC 2020 Part 6 Ch. 2, 2.4.7', 'published'),
  of: (k1: number, k2: number, k3: number) => (1 + k1 * k2 * k3) ** 2,
});

export const hillDecayTia = defineFormula({
  id: 'kh-tia222',
  title: 'Height reduction factor of a hill, TIA-222-G and -H',
  symbol: 'K_h',
  unit: 'one',
  expression: 'exp(f * z / H)',
  variables: [
    variable('f', 'constant of the topographic category', 'one', 1.25, 2),
    variable('z', 'height above ground', 'length', 0, 100),
    variable('H', 'height of the crest', 'length', 5, 600),
  ],
  cite: cite('tia222-g', '2.6.6.4, Table 2-5', 'memory'),
  of: (f: number, z: number, crest: number) => Math.exp((f * z) / crest),
});

export const topographicFactorTia = defineFormula({
  id: 'kzt-tia222',
  title: 'Topographic factor, TIA-222-G and -H',
  symbol: 'K_zt',
  unit: 'one',
  expression: '(1 + K_c * K_t / K_h)^2',
  variables: [
    variable('K_c', 'terrain constant', 'one', 0.9, 1.1),
    variable('K_t', 'constant of the topographic category', 'one', 0.43, 0.72),
    variable('K_h', 'height reduction factor', 'one', 1, 1e6),
  ],
  cite: cite('tia222-g', '2.6.6.4', 'memory'),
  of: (kc: number, kt: number, kh: number) => (1 + (kc * kt) / kh) ** 2,
});

/** Why a hill does not count by its standard. */
export const HILL_EXCLUSIONS = ['too-gentle', 'too-low', 'not-isolated', 'lower-half', 'beyond-reach'] as const;
export type HillExclusion = (typeof HILL_EXCLUSIONS)[number];

/** One condition of a standard under which a hill counts. */
export interface HillCondition {
  /** What it is called when it fails. */
  readonly why: HillExclusion;
  /** Absent: the plan does not say, and then it is taken to hold. */
  readonly holds?: boolean;
  readonly of: 'slope' | 'height' | 'distance' | 'surroundings';
  /** Slope [-]; height or distance [m]; absent for surroundings. */
  readonly given?: number;
  readonly limit?: number;
}

/** Least slope H/L_h that counts. @source asce7-16 */
const ASCE_GENTLEST = 0.2;
/**
 * Heights under which ASCE 7 lets a hill be ignored [m]: the metric print, 18 m in B and 4.5 m in C and D, which counts
 * slightly more hills than the 60 ft and 15 ft beside it. @source asce7-16
 */
const ASCE_LOWEST_HILL: Readonly<Record<Exposure, number>> = { B: 18, C: 4.5, D: 4.5 };

/** Which list of conditions an edition of ASCE 7 has: the surroundings are in it from 7-05 to 7-16. */
export type AsceHillList = 'to-7-16' | '7-22';

/**
 * The conditions under which an edition of ASCE 7 counts a hill; the slope's own distance factor does the rest.
 *
 * H/L_h ≥ 0.2; H ≥ 15 ft or 4.5 m (exposures C, D), 60 ft or 18 m (B); to 7-16: isolated and twice as high as its
 * surroundings within 2 mi; the upper half of it, or near the crest of an escarpment
 *
 * @returns the conditions, those that fail among them
 * @example hillConditionsAsce({ shape: 'ridge', height: 3, halfLength: 10, distance: 0, side: 'upwind' }, 'C', '7-22')[1]?.holds // false
 * @source asce7-16, asce7-22
 */
export function hillConditionsAsce(hill: Hill, exposure: Exposure, list: AsceHillList): readonly HillCondition[] {
  const slope = hill.height / hill.halfLength;
  const lowest = ASCE_LOWEST_HILL[exposure];
  const behindEdge = hill.shape === 'escarpment' && hill.side === 'downwind';
  const { mu } = ASCE_HILLS[hill.shape];
  const reach = mu[hill.side] * Math.max(hill.halfLength, 2 * hill.height);
  const surroundings: HillCondition = {
    why: 'not-isolated',
    of: 'surroundings',
    ...(hill.isolated === undefined ? {} : { holds: hill.isolated }),
  };
  return [
    { why: 'too-gentle', of: 'slope', holds: atLeast(slope, ASCE_GENTLEST), given: slope, limit: ASCE_GENTLEST },
    { why: 'too-low', of: 'height', holds: atLeast(hill.height, lowest), given: hill.height, limit: lowest },
    ...(list === '7-22' ? [] : [surroundings]),
    within(behindEdge ? 'beyond-reach' : 'lower-half', hill.distance, behindEdge ? reach : hill.halfLength),
  ];
}

/** The condition that a distance from the crest is at most a limit [m]. */
function within(why: HillExclusion, given: number, limit: number): HillCondition {
  return { why, of: 'distance', holds: atMost(given, limit), given, limit };
}

/**
 * The condition under which TIA-222 takes a site out of category 1, which has no speed-up.
 *
 * the upper half of the slope; behind the edge of an escarpment not more than 8·H
 *
 * @example hillConditionsTia({ shape: 'escarpment', height: 10, halfLength: 20, distance: 90, side: 'downwind' })[0]?.holds // false
 * @source tia222-g
 */
export function hillConditionsTia(hill: Hill): readonly HillCondition[] {
  const behindEdge = hill.shape === 'escarpment' && hill.side === 'downwind';
  const limit = behindEdge ? 8 * hill.height : hill.halfLength;
  return [within(behindEdge ? 'beyond-reach' : 'lower-half', hill.distance, limit)];
}

/**
 * The first condition that fails.
 *
 * @returns why the hill does not count, or undefined when it does
 * @example hillExclusion(hillConditionsAsce({ shape: 'ridge', height: 30, halfLength: 400, distance: 0, side: 'upwind' }, 'C', '7-22')) // 'too-gentle'
 */
export function hillExclusion(conditions: readonly HillCondition[]): HillExclusion | undefined {
  return conditions.find((condition) => condition.holds === false)?.why;
}

/**
 * Topographic factor of a hill by ASCE 7 as a function of the height: K₁ and K₂ are the same at every height.
 *
 * K_zt(z) = (1 + K₁·K₂·K₃(z))²
 *
 * @param hill the hill; whether it counts is asked of `hillConditionsAsce`
 * @returns the factor [-], 1 or more, by height above ground [m]
 * @example hillByHeightAsce({ shape: 'ridge', height: 30, halfLength: 100, distance: 50, side: 'upwind' }, 'C')(20) // 1.3436
 * @source asce7-16
 */
export function hillByHeightAsce(hill: Hill, exposure: Exposure, trace?: Trace): (z: number) => number {
  const { k, gamma, mu } = ASCE_HILLS[hill.shape];
  const k1 = evaluate(trace, hillHeightFactor, [k[exposure], hill.height, hill.halfLength]);
  const length = evaluate(trace, hillEffectiveLength, [hill.halfLength, hill.height]);
  const k2 = evaluate(trace, hillDistanceFactor, [hill.distance, mu[hill.side], length]);
  return (z) => {
    const k3 = evaluate(trace, hillDecayFactor, [gamma, z, length]);
    return evaluate(trace, topographicFactorAsce, [k1, k2, k3]);
  };
}

/**
 * Topographic factor of a hill by TIA-222-G and -H as a function of the height.
 *
 * K_zt(z) = (1 + K_c·K_t/K_h(z))², K_h = e^(f·z/H)
 *
 * @param hill the hill; whether it counts is asked of `hillConditionsTia`
 * @returns the factor [-], 1 or more, by height above ground [m]
 * @example hillByHeightTia({ shape: 'ridge', height: 30.48, halfLength: 60, distance: 0, side: 'upwind' }, 'B')(0) // 2.7159
 * @source tia222-g
 */
export function hillByHeightTia(hill: Hill, exposure: Exposure, trace?: Trace): (z: number) => number {
  const { kt, f } = TIA_HILLS[hill.shape];
  return (z) => {
    const kh = evaluate(trace, hillDecayTia, [f, z, hill.height]);
    return evaluate(trace, topographicFactorTia, [TIA_TERRAIN_CONSTANT[exposure], kt, kh]);
  };
}
