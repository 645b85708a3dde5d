import { cite, defineFormula, evaluate, type Trace, variable } from '../foundation/index.ts';

/** A cable between two ends that stay where they are, as an elastic parabola. */
export interface Cable {
  /** Straight from end to end [m]. */
  readonly chord: number;
  /** Its length without any tension [m]. */
  readonly unstrained: number;
  /** E·A [N] */
  readonly stiffness: number;
}

export const unstrainedLengthFormula = defineFormula({
  id: 'unstrained-length-of-cable',
  title: 'Length of a cable without tension',
  symbol: 's_0',
  unit: 'length',
  expression: 'c * (1 + q^2 * c^2 / (24 * T_0^2)) / (1 + T_0 / EA)',
  variables: [
    variable('c', 'distance of its ends', 'length', 1, 300),
    variable('q', 'what loads each length of it across', 'force-per-length', 0, 100),
    variable('T_0', 'tension', 'force', 1, 1e5),
    variable('EA', 'its stiffness', 'force', 1e3, 1e8),
  ],
  cite: cite('derived', 'length of a flat parabola, less its stretch', 'derived'),
  of: (chord: number, load: number, tension: number, stiffness: number) =>
    (chord * (1 + (load * chord) ** 2 / (24 * tension ** 2))) / (1 + tension / stiffness),
});

export const tensionFormula = defineFormula({
  id: 'tension-of-cable',
  title: 'Tension of a cable: the one figure that gives itself back',
  symbol: 'T',
  unit: 'force',
  expression: 'sqrt(q^2 * c^3 / 24 / (s_0 * T_in / EA + s_0 - c))',
  variables: [
    variable('q', 'what loads each length of it across', 'force-per-length', 0.01, 100),
    variable('c', 'distance of its ends', 'length', 1, 300),
    variable('s_0', 'its length without tension', 'length', 1, 300),
    variable('T_in', 'the tension itself', 'force', 1, 1e5),
    variable('EA', 'its stiffness', 'force', 1e3, 1e8),
  ],
  cite: cite('derived', 'change of state of a cable: s_0·T³/EA + (s_0 − c)·T² = q²·c³/24', 'derived'),
  of: (load: number, chord: number, unstrained: number, tension: number, stiffness: number) =>
    Math.sqrt((load ** 2 * chord ** 3) / 24 / ((unstrained * tension) / stiffness + unstrained - chord)),
});

/**
 * Length of a cable without tension, from what it is drawn to under its load.
 *
 * s_0 = c·(1 + q²c²/(24T_0²))/(1 + T_0/EA)
 *
 * @param chord straight from end to end [m]
 * @param load across the chord [N/m]
 * @param tension along the chord, above 0 [N]
 * @param stiffness E·A [N]
 * @returns the length [m]
 * @example unstrainedLength(30, 0.1819, 40.93, 244100) // 30.01718631
 * @source derived
 */
export function unstrainedLength(
  chord: number,
  load: number,
  tension: number,
  stiffness: number,
  trace?: Trace,
): number {
  return evaluate(trace, unstrainedLengthFormula, [chord, load, tension, stiffness]);
}

/** Newton's steps come down on the root from above, each closer. */
const STEPS_AT_MOST = 60;

/**
 * Tension of a cable under a load across its chord: the one positive root.
 *
 * s_0·T³/EA + (s_0 − c)·T² = q²·c³/24
 *
 * Up to a sag of a twelfth of the chord within 0.3 % below and 2.5 % above the elastic catenary; beyond, above it.
 *
 * @param cable between its ends [m, N]
 * @param load across the chord [N/m]
 * @returns the tension along the chord [N]; 0 of a slack cable without load
 * @example tensionOf({ chord: 30, unstrained: 30.01718631, stiffness: 244100 }, 1.96444) // 287.466
 * @source derived
 */
export function tensionOf(cable: Cable, load: number): number {
  const { chord, unstrained, stiffness } = cable;
  const cubic = unstrained / stiffness;
  const square = unstrained - chord;
  const right = (load ** 2 * chord ** 3) / 24;
  let tension = Math.max(0, -square / cubic) + Math.cbrt(right / cubic);
  if (tension === 0) return 0;
  for (let step = 0; step < STEPS_AT_MOST; step += 1) {
    const value = (cubic * tension + square) * tension * tension - right;
    const next = tension - value / ((3 * cubic * tension + 2 * square) * tension);
    if (!(next < tension)) return tension;
    tension = next;
  }
  return tension;
}

/**
 * How far a cable sags half-way.
 *
 * q·c²/(8T)
 *
 * @param chord straight from end to end [m]
 * @param load across the chord [N/m]
 * @param tension along the chord, above 0 [N]
 * @returns the sag [m]
 * @example sagOf(30, 1.96444, 287.5) // 0.7687
 * @source derived
 */
export function sagOf(chord: number, load: number, tension: number): number {
  return (load * chord ** 2) / (8 * tension);
}
