import { atLeast, atMost, cite, defineFormula, evaluate, type Trace, variable } from '../foundation/index.ts';
import type { Hill } from './site.ts';
import type { HillCondition } from './topography.ts';

const ANNEX = 'Annex A.3';

export const hillSlope = defineFormula({
  id: 'phi-en1991-hill',
  title: 'Upwind slope of the hill, EN 1991-1-4',
  symbol: 'Phi',
  unit: 'one',
  expression: 'H / L_u',
  variables: [
    variable('H', 'height of the hill', 'length', 1, 600),
    variable('L_u', 'foot to crest, upwind', 'length', 2, 6000),
  ],
  cite: cite('en1991-1-4', `${ANNEX}, Fig. A.1`, 'second-hand'),
  of: (height: number, run: number) => height / run,
});

export const hillEffectiveLengthEn = defineFormula({
  id: 'le-en1991-hill',
  title: 'Effective length of the upwind slope; a slope steeper than 0.3 counts as one of H/0.3',
  symbol: 'L_e',
  unit: 'length',
  expression: 'max(L_u, H / 0.3)',
  variables: [
    variable('L_u', 'foot to crest, upwind', 'length', 2, 6000),
    variable('H', 'height of the hill', 'length', 1, 600),
  ],
  cite: cite('en1991-1-4', `${ANNEX}, Table A.2`, 'second-hand'),
  of: (run: number, height: number) => Math.max(run, height / 0.3),
});

const r = variable('r', 'height above ground over effective length', 'one', 0, 2);

export const hillCrestFactor = defineFormula({
  id: 's0-en1991-hill',
  title: 'Orographic location factor at the crest',
  symbol: 's_0',
  unit: 'one',
  expression: '0.1552 * r^4 - 0.8575 * r^3 + 1.8133 * r^2 - 1.9115 * r + 1.0124',
  variables: [r],
  cite: cite('en1991-1-4', `${ANNEX}, Eq. (A.5)`, 'second-hand'),
  of: (ratio: number) => 0.1552 * ratio ** 4 - 0.8575 * ratio ** 3 + 1.8133 * ratio ** 2 - 1.9115 * ratio + 1.0124,
});

export const hillUpwindFactor = defineFormula({
  id: 's-en1991-upwind',
  title: 'Orographic location factor on the upwind slope',
  symbol: 's',
  unit: 'one',
  expression: 's_0 * exp(-(0.3542 * r^2 - 1.0577 * r + 2.6456) * x / L_u)',
  variables: [
    variable('s_0', 'at the crest', 'one', 0, 1.02),
    r,
    variable('x', 'distance from the crest, upwind', 'length', 0, 3000),
    variable('L_u', 'foot to crest, upwind', 'length', 2, 6000),
  ],
  cite: cite('en1991-1-4', `${ANNEX}, Eqs. (A.4), (A.6)`, 'second-hand'),
  of: (s0: number, ratio: number, x: number, run: number) =>
    s0 * Math.exp((-(0.3542 * ratio ** 2 - 1.0577 * ratio + 2.6456) * x) / run),
});

export const hillDownwindFactor = defineFormula({
  id: 's-en1991-downwind',
  title: 'Orographic location factor behind a hill or ridge; its lee slope is taken as long as its windward one',
  symbol: 's',
  unit: 'one',
  expression: 's_0 * exp((-0.3056 * r^2 + 1.0212 * r - 1.7637) * x / L_d)',
  variables: [
    variable('s_0', 'at the crest', 'one', 0, 1.02),
    r,
    variable('x', 'distance from the crest, downwind', 'length', 0, 3000),
    variable('L_d', 'crest to foot, downwind', 'length', 2, 6000),
  ],
  cite: cite('en1991-1-4', `${ANNEX}, Eqs. (A.11), (A.13)`, 'second-hand'),
  of: (s0: number, ratio: number, x: number, run: number) =>
    s0 * Math.exp(((-0.3056 * ratio ** 2 + 1.0212 * ratio - 1.7637) * x) / run),
});

export const cliffDownwindFactor = defineFormula({
  id: 's-en1991-cliff',
  title: 'Orographic location factor behind a cliff or escarpment, never below 0; z/L_e below 0.1 counts as 0.1',
  symbol: 's',
  unit: 'one',
  expression:
    'max(0, (-1.3420 * l^3 - 0.8222 * l^2 + 0.4609 * l - 0.0791) * m^2 + (-1.0196 * l^3 - 0.8910 * l^2 + 0.5343 * l - 0.1156) * m + 0.8030 * l^3 + 0.4236 * l^2 - 0.5738 * l + 0.1606)',
  variables: [
    variable('l', 'decimal logarithm of z/L_e', 'one', -1, 0.302),
    variable('m', 'decimal logarithm of x/L_e', 'one', -1, 0.545),
  ],
  cite: cite('en1991-1-4', `${ANNEX}, Eqs. (A.7) to (A.10)`, 'second-hand'),
  of: (l: number, m: number) =>
    Math.max(
      0,
      (-1.342 * l ** 3 - 0.8222 * l ** 2 + 0.4609 * l - 0.0791) * m ** 2 +
        (-1.0196 * l ** 3 - 0.891 * l ** 2 + 0.5343 * l - 0.1156) * m +
        0.803 * l ** 3 +
        0.4236 * l ** 2 -
        0.5738 * l +
        0.1606,
    ),
});

export const cliffLogarithm = defineFormula({
  id: 'log-ratio-en1991-cliff',
  title: 'Decimal logarithm of a distance over the effective length',
  symbol: 'l',
  unit: 'one',
  expression: 'log10(max(d / L_e, 0.1))',
  variables: [
    variable('d', 'height above ground, or distance behind the edge', 'length', 0, 400),
    variable('L_e', 'effective length', 'length', 10, 6000),
  ],
  cite: cite('en1991-1-4', `${ANNEX}, Eqs. (A.7) to (A.10)`, 'second-hand'),
  of: (distance: number, length: number) => Math.log10(Math.max(distance / length, 0.1)),
});

export const cliffEdgeFactor = defineFormula({
  id: 's-en1991-cliff-edge',
  title: 'Orographic location factor between the edge of a cliff and 0.1·L_e behind it',
  symbol: 's',
  unit: 'one',
  expression: 's_0 + (s_1 - s_0) * x / (0.1 * L_e)',
  variables: [
    variable('s_0', 'at the edge', 'one', 0, 1.02),
    variable('s_1', '0.1·L_e behind it', 'one', 0, 1.5),
    variable('x', 'distance behind the edge', 'length', 0, 600),
    variable('L_e', 'effective length', 'length', 10, 6000),
  ],
  cite: cite('en1991-1-4', `${ANNEX}, between Eqs. (A.5) and (A.7): interpolate`, 'second-hand'),
  of: (edge: number, behind: number, x: number, length: number) => edge + ((behind - edge) * x) / (0.1 * length),
});

export const orographyFactor = defineFormula({
  id: 'co-en1991',
  title: 'Orography factor on the mean wind, EN 1991-1-4; a slope steeper than 0.3 counts as 0.3',
  symbol: 'c_o',
  unit: 'one',
  expression: '1 + 2 * s * min(Phi, 0.3)',
  variables: [
    variable('s', 'orographic location factor', 'one', 0, 1.1),
    variable('Phi', 'upwind slope', 'one', 0.05, 2),
  ],
  cite: cite('en1991-1-4', `${ANNEX}, Eqs. (A.1) to (A.3)`, 'second-hand'),
  of: (s: number, slope: number) => 1 + 2 * s * Math.min(slope, 0.3),
});

/** Slope below which a hill changes nothing. @source en1991-1-4 */
export const GENTLEST_SLOPE = 0.05;
/** Heights above ground up to this many effective lengths feel the hill. @source en1991-1-4 */
export const HILL_REACH_ABOVE = 2;
/** Distances, in lengths of the slope, up to which a hill is felt upwind and behind it, a cliff behind its edge. @source en1991-1-4 */
export const HILL_REACH = { upwind: 1.5, downwind: 2, cliff: 3.5 } as const;

/**
 * The conditions under which EN 1991-1-4 counts a hill.
 *
 * Φ = H/L_u ≥ 0.05; x ≤ 1.5·L_u upwind, 2·L_d behind a hill, 3.5·L_e behind a cliff
 *
 * @returns the conditions, those that fail among them
 * @example hillConditionsEn({ shape: 'ridge', height: 8, halfLength: 100, distance: 0, side: 'upwind' })[0]?.holds // false
 * @source en1991-1-4
 */
export function hillConditionsEn(hill: Hill): readonly HillCondition[] {
  const run = runOf(hill);
  const slope = hill.height / run;
  const behindEdge = hill.shape === 'escarpment' && hill.side === 'downwind';
  const limit = behindEdge
    ? HILL_REACH.cliff * hillEffectiveLengthEn.of(run, hill.height)
    : HILL_REACH[hill.side] * run;
  return [
    { why: 'too-gentle', of: 'slope', holds: atLeast(slope, GENTLEST_SLOPE), given: slope, limit: GENTLEST_SLOPE },
    { why: 'beyond-reach', of: 'distance', holds: atMost(hill.distance, limit), given: hill.distance, limit },
  ];
}

/** The run from foot to crest of a hill whose half-length reaches half-way down. */
function runOf(hill: Hill): number {
  return 2 * hill.halfLength;
}

/**
 * Orographic location factor of a hill at a height, Annex A.3.
 *
 * upwind s = s₀·e^(−B·x/L_u); behind a hill s₀·e^(−B′·x/L_d); behind a cliff by logarithms; 0 out of reach
 *
 * @param hill the hill; its lee slope is taken as long as its windward one
 * @param z height above ground [m]
 * @returns s [-], 0 or more
 * @example hillLocationFactor({ shape: 'ridge', height: 50, halfLength: 125, distance: 0, side: 'upwind' }, 10) // 0.9388
 * @source en1991-1-4
 */
export function hillLocationFactor(hill: Hill, z: number, trace?: Trace): number {
  const run = runOf(hill);
  const length = evaluate(trace, hillEffectiveLengthEn, [run, hill.height]);
  const ratio = z / length;
  if (!atMost(ratio, HILL_REACH_ABOVE)) return 0;
  const crest = () => evaluate(trace, hillCrestFactor, [ratio]);
  const x = hill.distance;
  if (hill.side === 'upwind') {
    return atMost(x / run, HILL_REACH.upwind) ? evaluate(trace, hillUpwindFactor, [crest(), ratio, x, run]) : 0;
  }
  if (hill.shape !== 'escarpment') {
    return atMost(x / run, HILL_REACH.downwind) ? evaluate(trace, hillDownwindFactor, [crest(), ratio, x, run]) : 0;
  }
  if (!atMost(x / length, HILL_REACH.cliff)) return 0;
  const l = evaluate(trace, cliffLogarithm, [z, length]);
  const behind = (distance: number) =>
    evaluate(trace, cliffDownwindFactor, [l, evaluate(trace, cliffLogarithm, [distance, length])]);
  if (x / length >= 0.1) return behind(x);
  return evaluate(trace, cliffEdgeFactor, [crest(), behind(0.1 * length), x, length]);
}

/**
 * Orography factor of a hill at a height, EN 1991-1-4 Annex A.3.
 *
 * c_o = 1 + 2·s·min(Φ, 0.3)
 *
 * @param hill the hill; whether it counts is asked of `hillConditionsEn`
 * @param z height above ground [m]
 * @returns c_o [-], 1 or more
 * @example hillFactorEn({ shape: 'ridge', height: 50, halfLength: 125, distance: 0, side: 'upwind' }, 10) // 1.3755
 * @source en1991-1-4
 */
export function hillFactorEn(hill: Hill, z: number, trace?: Trace): number {
  const slope = evaluate(trace, hillSlope, [hill.height, runOf(hill)]);
  return evaluate(trace, orographyFactor, [hillLocationFactor(hill, z, trace), slope]);
}
