import {
  atMost,
  cite,
  defineFormula,
  evaluate,
  FOOT,
  fromTable,
  MILE_PER_HOUR,
  POUND_PER_SQUARE_FOOT,
  type Table,
  type UnitSystem,
  variable,
} from '../foundation/index.ts';
import { constantCoefficient, type ForceCoefficient, type Role } from './force-coefficient.ts';

/** 1 mph·ft, the unit of TIA-222's flow number [m²/s]. */
export const MPH_FOOT = MILE_PER_HOUR * FOOT;
/** D·√q of ASCE 7 above which its round coefficients change, as printed: 2.5 ft·√psf, 5.3 m·√Pa [m·√Pa]. @source asce7-10 */
export const ASCE_FLOW_LIMIT: Readonly<Record<UnitSystem, number>> = {
  us: 2.5 * FOOT * Math.sqrt(POUND_PER_SQUARE_FOOT),
  si: 5.3,
};

export const transitionalCoefficient = defineFormula({
  id: 'ca-tia222-transitional',
  title: 'Coefficient of a round or many-sided member between slow and fast flow, TIA-222',
  symbol: 'C_a',
  unit: 'one',
  expression: 'a / (C / C_1)^b',
  variables: [
    variable('a', 'constant of the table', 'one', 2, 140),
    variable('C', 'flow number', 'flow-number', 4, 11),
    variable('C_1', '1 mph·ft', 'flow-number', 0.136257792, 0.136257792),
    variable('b', 'exponent of the table', 'one', 0.2, 1.3),
  ],
  cite: cite('tia222-g', 'Tables 2-7 and 2-8', 'memory'),
  of: (a: number, flow: number, unit: number, b: number) => a / (flow / unit) ** b,
});

export const notLessThanBelowStep = defineFormula({
  id: 'cf-asce-below-step',
  title:
    'Coefficient in fast flow, with a force not less than that just below the step: a wind on the way up must not be worse',
  symbol: 'C_f',
  unit: 'one',
  expression: 'max(C_fast, C_slow * (s_0 / s)^2)',
  variables: [
    variable('C_fast', 'coefficient above the step', 'one', 0.5, 0.7),
    variable('C_slow', 'coefficient below the step', 'one', 0.7, 1.2),
    variable('s_0', 'D·√q at the step', 'drag-number', 5.2, 5.3),
    variable('s', 'D·√q here', 'drag-number', 5.3, 40),
  ],
  cite: cite('derived', 'a gust goes through every lower speed', 'derived'),
  of: (fast: number, slow: number, limit: number, flow: number) => Math.max(fast, slow * (limit / flow) ** 2),
});

interface TiaRoundTable {
  readonly slowUpTo: number;
  readonly fastFrom: number;
  /** Numerators and exponents between, at aspects 2.5, 7 and 25. */
  readonly between: readonly [readonly [number, number], readonly [number, number], readonly [number, number]];
}

const SLOW_TIA: Table = [
  [2.5, 0.7],
  [7, 0.8],
  [25, 1.2],
];
const FAST_TIA: Table = [
  [2.5, 0.5],
  [7, 0.6],
  [25, 0.6],
];

/** TIA-222-G Table 2-8, TIA-222-H Table 2-9: round appurtenances. @source tia222-g */
export const TIA_ROUND: Readonly<Record<'G' | 'H', TiaRoundTable>> = {
  G: {
    slowUpTo: 32 * MPH_FOOT,
    fastFrom: 64 * MPH_FOOT,
    between: [
      [3.76, 0.485],
      [3.37, 0.415],
      [38.4, 1],
    ],
  },
  H: {
    slowUpTo: 39 * MPH_FOOT,
    fastFrom: 78 * MPH_FOOT,
    between: [
      [4.14, 0.485],
      [3.66, 0.415],
      [46.8, 1],
    ],
  },
};

/** TIA/EIA-222-F Table 3: cylindrical appurtenances. @source eia222-f */
export const ROUND_F: Table = [
  [7, 0.8],
  [25, 1.2],
];

/** ASCE 7 chimneys and tanks, round, D√q ≤ 2.5: any surface. @source asce7-10 */
export const ROUND_ASCE_SLOW: Table = [
  [1, 0.7],
  [7, 0.8],
  [25, 1.2],
];

/** ASCE 7 chimneys and tanks, round, D√q > 2.5, moderately smooth (metal). @source asce7-10 */
export const ROUND_ASCE_FAST: Table = [
  [1, 0.5],
  [7, 0.6],
  [25, 0.7],
];

/** ASCE 7 chimneys and tanks, hexagonal or octagonal, any flow. @source asce7-10 */
export const OCTAGON_ASCE: Table = [
  [1, 1],
  [7, 1.2],
  [25, 1.4],
];

/**
 * Coefficient of a round member by TIA-222-G or -H.
 *
 * C < 32: 0.70, 0.80, 1.20 at aspect 2.5, 7, 25; 32–64: 3.76/C^0.485, 3.37/C^0.415, 38.4/C; above: 0.50, 0.60, 0.60
 *
 * @param revision G or H (H: limits 39 and 78, constants 4.14, 3.66, 46.8)
 * @param aspect length over diameter of the whole member [-]
 * @returns the coefficient, by the flow number C
 * @example roundCoefficientTia('G', 40).at(20 * 0.136257792) // 1.2
 * @source tia222-g
 */
export function roundCoefficientTia(revision: 'G' | 'H', aspect: number): ForceCoefficient {
  const { slowUpTo, fastFrom, between } = TIA_ROUND[revision];
  const slow = fromTable(SLOW_TIA, aspect);
  return {
    slow,
    limit: slowUpTo,
    fastFrom,
    at: (flow, trace) => {
      if (flow < slowUpTo) return trace ? fromTable(SLOW_TIA, aspect, trace) : slow;
      if (flow > fastFrom) return fromTable(FAST_TIA, aspect, trace);
      const [first, second, third] = between;
      const value = ([a, b]: readonly [number, number]) =>
        evaluate(trace, transitionalCoefficient, [a, flow, MPH_FOOT, b]);
      return fromTable(
        [
          [2.5, value(first)],
          [7, value(second)],
          [25, value(third)],
        ],
        aspect,
        trace,
      );
    },
  };
}

/**
 * Coefficient of a round member by TIA/EIA-222-F: the same in any flow.
 *
 * 0.8 up to aspect 7, 1.2 from 25, linear between
 *
 * @param aspect length over diameter of the whole member [-]
 * @example roundCoefficientF(16).slow // 1
 * @source eia222-f
 */
export function roundCoefficientF(aspect: number): ForceCoefficient {
  return constantCoefficient(fromTable(ROUND_F, aspect), (trace) => fromTable(ROUND_F, aspect, trace));
}

/**
 * Coefficient of a round member by the chimneys table of ASCE 7, moderately smooth surface.
 *
 * D√q ≤ 2.5: 0.7, 0.8, 1.2 at h/D 1, 7, 25; above: 0.5, 0.6, 0.7, in the demand not less than the force just below the step
 *
 * @param aspect length over diameter of the whole member [-]
 * @param role demand keeps the force below the step, capacity does not claim it
 * @param units in which the limit is printed; 5.3 in metric ones
 * @example roundCoefficientAsce(25, 'capacity', 'us').at(20) // 0.7
 * @source asce7-10
 */
export function roundCoefficientAsce(aspect: number, role: Role, units: UnitSystem): ForceCoefficient {
  const limit = ASCE_FLOW_LIMIT[units];
  const slow = fromTable(ROUND_ASCE_SLOW, aspect);
  return {
    slow,
    limit,
    at: (flow, trace) => {
      if (atMost(flow, limit)) return trace ? fromTable(ROUND_ASCE_SLOW, aspect, trace) : slow;
      const fast = fromTable(ROUND_ASCE_FAST, aspect, trace);
      if (role === 'capacity') return fast;
      if (trace) fromTable(ROUND_ASCE_SLOW, aspect, trace);
      return evaluate(trace, notLessThanBelowStep, [fast, slow, limit, flow]);
    },
  };
}

/** Share of the flat-plate pressure that RS-222-C puts on a round member. @source rs222-c */
export const ROUND_SHARE_C = 2 / 3;

export const flowNumberTia = defineFormula({
  id: 'flow-number-tia222',
  title: 'Flow number of a round member, TIA-222',
  symbol: 'C',
  unit: 'flow-number',
  expression: 'sqrt(I * K_zt * K_z) * V * D',
  variables: [
    variable('I', 'importance', 'one', 0.87, 1.15),
    variable('K_zt', 'hill', 'one', 1, 3),
    variable('K_z', 'height and ground', 'one', 0.5, 2.58),
    variable('V', 'wind speed for the coefficient', 'speed', 0, 180),
    variable('D', 'diameter', 'diameter', 0.001, 2),
  ],
  cite: cite('tia222-g', 'Table 2-8', 'memory'),
  of: (I: number, Kzt: number, Kz: number, V: number, D: number) => Math.sqrt(I * Kzt * Kz) * V * D,
});

export const flowMeasureAsce = defineFormula({
  id: 'flow-measure-asce',
  title: 'Flow measure of a round member, ASCE 7 chimneys table',
  symbol: 's',
  unit: 'drag-number',
  expression: 'D * sqrt(q_z)',
  variables: [
    variable('D', 'diameter', 'diameter', 0.001, 2),
    variable('q_z', 'velocity pressure', 'pressure', 0, 8000),
  ],
  cite: cite('asce7-10', 'Fig. 29.5-1 (7-16: Fig. 29.4-1)', 'published'),
  of: (D: number, q: number) => D * Math.sqrt(q),
});

export const flowNumberF = defineFormula({
  id: 'flow-number-eia222-f',
  title: 'Flow number of a pole, TIA/EIA-222-F',
  symbol: 'C',
  unit: 'flow-number',
  expression: 'sqrt(K_z) * V * D',
  variables: [
    variable('K_z', 'height', 'one', 1, 2.58),
    variable('V', 'fastest-mile speed', 'speed', 0, 180),
    variable('D', 'diameter', 'diameter', 0.001, 2),
  ],
  cite: cite('eia222-f', 'Table 1', 'memory'),
  of: (Kz: number, V: number, D: number) => Math.sqrt(Kz) * V * D,
});
