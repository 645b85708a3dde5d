import {
  cite,
  defineFormula,
  evaluate,
  fromTable,
  type Trace,
  type UnitSystem,
  variable,
} from '../foundation/index.ts';
import { constantCoefficient, type ForceCoefficient, type Role } from './force-coefficient.ts';
import {
  MPH_FOOT,
  OCTAGON_ASCE,
  ROUND_SHARE_C,
  roundCoefficientAsce,
  transitionalCoefficient,
} from './round-member.ts';
import type { PoleShape } from './shape.ts';

interface PoleRow {
  readonly slow: number;
  /** Numerator and exponent between slow and fast flow; absent where the coefficient does not change. */
  readonly between?: readonly [number, number];
  readonly fast: number;
}

/** TIA-222-G Table 2-7: poles by number of sides, 0 is round. @source tia222-g */
export const TIA_POLES: Readonly<Record<PoleShape['sides'], PoleRow>> = {
  0: { slow: 1.2, between: [38.4, 1], fast: 0.6 },
  18: { slow: 1.2, between: [25.8, 0.885], fast: 0.65 },
  16: { slow: 1.2, between: [12.6, 0.678], fast: 0.75 },
  12: { slow: 1.2, between: [2.99, 0.263], fast: 1 },
  8: { slow: 1.2, fast: 1.2 },
};

/** TIA-222-G Table 2-7; -H raises them as it raises those of round members. @source tia222-g */
const TIA_POLE_LIMITS = { G: [32 * MPH_FOOT, 64 * MPH_FOOT], H: [39 * MPH_FOOT, 78 * MPH_FOOT] } as const;

/** TIA/EIA-222-F Table 1, round poles. @source eia222-f */
export const ROUND_POLE_F: PoleRow = { slow: 1.2, between: [130, 1.3], fast: 0.59 };

function coefficientByRegime(row: PoleRow, slowUpTo: number, fastFrom: number, scale: number): ForceCoefficient {
  const between = row.between;
  if (!between) return constantCoefficient(row.slow);
  const [a, b] = between;
  return {
    slow: row.slow,
    limit: slowUpTo,
    fastFrom,
    at: (flow: number, trace?: Trace) => {
      if (flow < slowUpTo) return row.slow;
      if (flow > fastFrom) return row.fast;
      return evaluate(trace, transitionalCoefficient, [a * scale ** b, flow, MPH_FOOT, b]);
    },
  };
}

/**
 * Coefficient of a pole by TIA-222-G or -H.
 *
 * C < 32: 1.2; 32–64: 38.4/C (round), 25.8/C^0.885 (18 sides), 12.6/C^0.678 (16), 2.99/C^0.263 (12); above: 0.60, 0.65, 0.75, 1.0
 *
 * @param revision G or H (H: the flow numbers raised from 32 to 39)
 * @param sides 0 is round
 * @returns the coefficient, by the flow number C
 * @example poleCoefficientTia('G', 0).at(40 * 0.136257792) // 0.96
 * @source tia222-g
 */
export function poleCoefficientTia(revision: 'G' | 'H', sides: PoleShape['sides']): ForceCoefficient {
  const [slowUpTo, fastFrom] = TIA_POLE_LIMITS[revision];
  return coefficientByRegime(TIA_POLES[sides], slowUpTo, fastFrom, slowUpTo / TIA_POLE_LIMITS.G[0]);
}

export const manySidedCreditF = defineFormula({
  id: 'ca-eia222-f-many-sided-credit',
  title: 'Coefficient of a many-sided pole in a capacity: the round row, never more than in a demand',
  symbol: 'C_a',
  unit: 'one',
  expression: 'min(C_slow, C_round)',
  variables: [
    variable('C_slow', 'round row in slow flow', 'one', 1.2, 1.2),
    variable('C_round', 'round row between slow and fast flow', 'one', 0.58, 1.44),
  ],
  cite: cite('derived', 'what is open is taken high in a demand and low in a capacity', 'derived'),
  of: (slow: number, round: number) => Math.min(slow, round),
});

/**
 * Coefficient of a pole by TIA/EIA-222-F. Only its round row is held, which just above C = 32 lies over its own slow value; a
 * many-sided pole takes the round slow value in a demand, and in a capacity the round row where that is less.
 *
 * C ≤ 32: 1.2; 32–64: 130/C^1.3; above: 0.59
 *
 * @param sides 0 is round
 * @returns the coefficient, by the flow number C
 * @example poleCoefficientF(0, 'demand').at(60 * 0.136257792) // 0.6344
 * @source eia222-f
 */
export function poleCoefficientF(sides: PoleShape['sides'], role: Role): ForceCoefficient {
  const round = coefficientByRegime(ROUND_POLE_F, 32 * MPH_FOOT, 64 * MPH_FOOT, 1);
  if (sides === 0) return round;
  if (role === 'demand') return constantCoefficient(ROUND_POLE_F.slow);
  return {
    ...round,
    at: (flow, trace) => evaluate(trace, manySidedCreditF, [ROUND_POLE_F.slow, round.at(flow, trace)]),
  };
}

/**
 * Coefficient of a pole by ASCE 7: its chimneys table, round or octagonal. Poles of 12 to 18 sides have no row there: they take
 * the octagonal one in a demand, the round one in a capacity.
 *
 * round by D√q; octagonal 1.0, 1.2, 1.4 at h/D 1, 7, 25
 *
 * @param sides 0 is round
 * @param aspect height over width of the whole pole [-]
 * @param units in which the limit of D·√q is printed
 * @example poleCoefficientAsce(8, 25, 'demand', 'us').slow // 1.4
 * @source asce7-10
 */
export function poleCoefficientAsce(
  sides: PoleShape['sides'],
  aspect: number,
  role: Role,
  units: UnitSystem,
): ForceCoefficient {
  const octagonal = sides === 8 || (sides !== 0 && role === 'demand');
  if (!octagonal) return roundCoefficientAsce(aspect, role, units);
  return constantCoefficient(fromTable(OCTAGON_ASCE, aspect), (trace) => fromTable(OCTAGON_ASCE, aspect, trace));
}

/**
 * Coefficient of a pole by RS-222-C, on the flat-plate pressure.
 *
 * two thirds, round or not: the lower reading, for ratings only
 *
 * @example poleCoefficientC().slow // 0.6667
 * @source rs222-c
 */
export function poleCoefficientC(): ForceCoefficient {
  return constantCoefficient(ROUND_SHARE_C);
}
