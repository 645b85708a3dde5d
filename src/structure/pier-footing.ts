import { cite, defineFormula, evaluate, FOOT, Refusal, type Trace, under, variable } from '../foundation/index.ts';
import { type FootLoad, refuseBelowZero } from './block-footing.ts';

/** Deepest that counts for the pressure of the soil [m]: 12 ft. @source ibc-2018 */
export const DEEPEST_FOR_PRESSURE = 12 * FOOT;

/** Numbers of the rules for a pier free at the surface, and for one held there. @source ibc-2018 */
const FREE = { load: 2.34, ofMoment: 1.09 } as const;
const HELD = 4.25;

/** A round post or pier in earth that holds by its sides. */
export interface PierFooting {
  /** Of a round pier, or the diagonal of a square one [m]. */
  readonly diameter: number;
  /** In the earth [m]. */
  readonly depth: number;
  /** What the soil may press sideways, for each unit of depth [Pa/m]. */
  readonly lateral: number;
  /** Held against moving at the surface, as by a stiff floor. */
  readonly constrained: boolean;
  /**
   * Twice the pressure, which the code allows an isolated pole that half an inch of movement at the surface does not
   * hurt. Absent: not taken.
   */
  readonly isolatedPole?: boolean;
  /** How far its head, the foot of the tower, stands above the surface [m]; absent: level with it. */
  readonly head?: number;
}

/** One turn of the search for the depth. */
export interface DepthTurn {
  /** Depth tried [m]. */
  readonly tried: number;
  /** Pressure of the soil there [Pa]. */
  readonly pressure: number;
  /** Depth that this pressure asks for [m]. */
  readonly asked: number;
}

export interface PierComparison {
  /** Pressure of the soil that counts at the depth it has [Pa]: at a third of it, or, held at the surface, at all of it. */
  readonly pressure: number;
  /** The depth is more than counts for the pressure. */
  readonly depthCapped: boolean;
  /** Shear at the surface [N], and how high it acts [m]; no height without a shear. */
  readonly shear: number;
  readonly height?: number;
  /** Depth that the load asks for [m]. */
  readonly required: number;
  readonly given: number;
  /** The turns that lead to it, the last one standing. */
  readonly turns: readonly DepthTurn[];
  /**
   * Load over the load at which the depth asked for is the depth given, shear and moment grown together: 1 exactly there,
   * and in proportion to the load. The depths' own ratio would hide by roots how far a load is over.
   */
  readonly ratio: number;
  /** What the ratio is made of: the load as it counts in the rule, and what the soil holds at the depth given [N·m]. */
  readonly demand: number;
  readonly capacity: number;
  /** What the rule says nothing of, or is left out. */
  readonly notChecked: readonly ['weight-on-the-soil', 'pull-out', 'strength-of-the-concrete', 'movement'];
}

const forceVariable = variable('P', 'shear, nominal', 'force', 10, 1e5);
const diameterVariable = variable('b', 'diameter, or diagonal of a square', 'length', 0.1, 3);
const depthVariable = variable('d', 'depth', 'length', 0.3, 8);
const S1Variable = variable('S_1', 'pressure of the soil at a third of the depth', 'soil-pressure', 500, 3e5);
const S3Variable = variable('S_3', 'pressure of the soil at the depth', 'soil-pressure', 1500, 9e5);
const momentVariable = variable('M', 'moment at the surface, nominal', 'moment', 0, 1e6);

export const lateralPressure = defineFormula({
  id: 'lateral-pressure-of-soil',
  title: 'Lateral soil pressure allowed at a depth',
  symbol: 'S_d',
  unit: 'soil-pressure',
  expression: 'k_p * S * min(d, d_max) / n',
  variables: [
    variable('k_p', '1; 2 for an isolated pole', 'one', 1, 2),
    variable('S', 'for a unit of depth', 'soil-pressure-per-depth', 5e3, 2e5),
    depthVariable,
    variable('d_max', 'deepest that counts, 12 ft', 'length', DEEPEST_FOR_PRESSURE, DEEPEST_FOR_PRESSURE),
    variable('n', '3 for a third of the depth, 1 for the whole', 'one', 1, 3),
  ],
  cite: cite('ibc-2018', '1806.3.4, 1807.3.2.1 and 1807.3.2.2', 'second-hand'),
  of: (factor: number, perDepth: number, depth: number, most: number, part: number) =>
    (factor * perDepth * Math.min(depth, most)) / part,
});

export const embedmentLength = defineFormula({
  id: 'embedment-a',
  title: 'Term A of the depth of a pier free at the surface',
  symbol: 'A',
  unit: 'length',
  expression: '2.34 * P / (S_1 * b)',
  variables: [forceVariable, S1Variable, diameterVariable],
  cite: cite('ibc-2018', '1807.3.2.1', 'second-hand'),
  of: (P: number, S1: number, b: number) => (FREE.load * P) / (S1 * b),
});

export const embedmentFree = defineFormula({
  id: 'embedment-free',
  title: 'Depth of a pier free at the surface',
  symbol: 'd',
  unit: 'length',
  expression: 'A / 2 * (1 + sqrt(1 + 4.36 * h / A))',
  variables: [
    variable('A', 'term A', 'length', 0.01, 10),
    variable('h', 'height at which the shear acts: M/P', 'length', 0, 60),
  ],
  cite: cite('ibc-2018', '1807.3.2.1', 'second-hand'),
  of: (A: number, h: number) => (A / 2) * (1 + Math.sqrt(1 + (4.36 * h) / A)),
});

export const embedmentHeld = defineFormula({
  id: 'embedment-held',
  title: 'Depth of a pier restrained at the surface',
  symbol: 'd',
  unit: 'length',
  expression: 'sqrt(4.25 * P * h / (S_3 * b))',
  variables: [
    forceVariable,
    variable('h', 'height at which the shear acts: M/P', 'length', 0, 60),
    S3Variable,
    diameterVariable,
  ],
  cite: cite('ibc-2018', '1807.3.2.2', 'second-hand'),
  of: (P: number, h: number, S3: number, b: number) => Math.sqrt((HELD * P * h) / (S3 * b)),
});

export const heightOfShear = defineFormula({
  id: 'height-of-shear',
  title: 'Height above the surface at which the shear acts',
  symbol: 'h',
  unit: 'length',
  expression: 'M / P + c',
  variables: [
    variable('M', 'moment at the base of the tower, nominal', 'moment', 0, 1e6),
    forceVariable,
    variable('c', "the pier's head above the surface", 'length', 0, 10),
  ],
  cite: cite('derived', 'statics', 'derived'),
  of: (moment: number, shear: number, head: number) => moment / shear + head,
});

export const momentAtSurface = defineFormula({
  id: 'moment-at-surface',
  title: 'Moment at the surface of the ground',
  symbol: 'M_s',
  unit: 'moment',
  expression: 'M + P * c',
  variables: [
    variable('M', 'moment at the base of the tower, nominal', 'moment', 0, 1e6),
    variable('P', 'shear, nominal', 'force', 0, 1e5),
    variable('c', "the pier's head above the surface", 'length', 0, 10),
  ],
  cite: cite('derived', 'statics', 'derived'),
  of: (moment: number, shear: number, head: number) => moment + shear * head,
});

export const embedmentFreeByMoment = defineFormula({
  id: 'embedment-free-by-moment',
  title: 'Depth of a pier free at the surface, under a moment without a shear',
  symbol: 'd',
  unit: 'length',
  expression: 'sqrt(2.34 * 1.09 * M / (S_1 * b))',
  variables: [momentVariable, S1Variable, diameterVariable],
  cite: cite('derived', '1807.3.2.1 as P falls to nothing with P·h kept: A·h = 2.34·M/(S₁·b)', 'derived'),
  of: (M: number, S1: number, b: number) => Math.sqrt((FREE.load * FREE.ofMoment * M) / (S1 * b)),
});

export const embedmentHeldByMoment = defineFormula({
  id: 'embedment-held-by-moment',
  title: 'Depth of a pier restrained at the surface, under a moment without a shear',
  symbol: 'd',
  unit: 'length',
  expression: 'sqrt(4.25 * M / (S_3 * b))',
  variables: [momentVariable, S3Variable, diameterVariable],
  cite: cite('derived', '1807.3.2.2 with P·h = M', 'derived'),
  of: (M: number, S3: number, b: number) => Math.sqrt((HELD * M) / (S3 * b)),
});

export const embedmentRatioFree = defineFormula({
  id: 'embedment-use-free',
  title: 'Load over that at which a pier free at the surface has just the required depth',
  symbol: 'u',
  unit: 'one',
  expression: '2.34 * (P * d + 1.09 * M) / (S_1 * b * d^2)',
  variables: [forceVariable, depthVariable, momentVariable, S1Variable, diameterVariable],
  cite: cite('derived', '1807.3.2.1 solved for P with d as built: A = d²/(d + 1.09·h)', 'derived'),
  of: (P: number, d: number, M: number, S1: number, b: number) =>
    (FREE.load * (P * d + FREE.ofMoment * M)) / (S1 * b * d ** 2),
});

export const embedmentRatioHeld = defineFormula({
  id: 'embedment-use-held',
  title: 'Load over that at which a pier restrained at the surface has just the required depth',
  symbol: 'u',
  unit: 'one',
  expression: '4.25 * M / (S_3 * b * d^2)',
  variables: [depthVariable, momentVariable, S3Variable, diameterVariable],
  cite: cite('derived', '1807.3.2.2 solved for P·h with d as built', 'derived'),
  of: (d: number, M: number, S3: number, b: number) => (HELD * M) / (S3 * b * d ** 2),
});

/** Share of the last depth tried by which the next one may differ [-]. @source derived */
const CLOSE_ENOUGH = 1e-9;

/**
 * A pier or post that holds by the soil at its sides, free or held at the surface.
 *
 * free: d = ½·A·{1 + √(1 + 4.36·h/A)}, A = 2.34·P/(S₁·b), S₁ = S·min(d, 12 ft)/3; held: d = √(4.25·P·h/(S₃·b)),
 * S₃ = S·min(d, 12 ft); use = P over the P for which d is the depth given
 *
 * A moment without a shear, as weight off the axis makes it in still air, has no height h; the rule is then taken to its
 * end at P = 0 with P·h kept, where it is finite: d = √(2.34·1.09·M/(S₁·b)).
 *
 * The depth is found in turns from the given one; free at the surface each turn tries the mean of what was tried and what
 * that asked for, since the plain turns swing about the answer.
 *
 * @param pier its size [m] and the soil [Pa/m]
 * @param foot at the pier's head, its weight not asked for: nominal shear [N] and moment [N·m]
 * @returns depth asked for and given [m], the turns, and the ratio
 * @throws Refusal where a size or the soil is not above zero, or a load below it
 * @example pierFooting({ diameter: 1, depth: 2, lateral: 30e3, constrained: false }, { shear: 2e3, moment: 12e3 }).ratio // 0.4996
 * @example pierFooting({ diameter: 1, depth: 2, lateral: 30e3, constrained: true }, { shear: 2e3, moment: 12e3 }).required // 1.193
 * @source ibc-2018, derived
 */
export function pierFooting(pier: PierFooting, foot: FootLoad, trace?: Trace): PierComparison {
  const { diameter, depth, lateral, constrained, head = 0 } = pier;
  for (const each of [diameter, depth, lateral])
    if (!(each > 0 && Number.isFinite(each)))
      throw new Refusal('footing-size', 'Diameter, depth and soil pressure of a pier are above zero.');
  if (!(head >= 0 && Number.isFinite(head)))
    throw new Refusal('footing-size', 'The head of a pier is at the surface or above it.');
  refuseBelowZero(foot);
  const { shear } = foot;
  const moment = evaluate(trace, momentAtSurface, [foot.moment, shear, head]);
  const height = shear > 0 ? evaluate(trace, heightOfShear, [foot.moment, shear, head]) : undefined;
  const pressureAt = (tried: number, kept?: Trace) =>
    evaluate(kept, lateralPressure, [
      pier.isolatedPole ? 2 : 1,
      lateral,
      tried,
      DEEPEST_FOR_PRESSURE,
      constrained ? 1 : 3,
    ]);
  const askedAt = (tried: number, kept?: Trace): DepthTurn => {
    const pressure = pressureAt(tried, kept);
    if (height === undefined) {
      const byMoment = constrained ? embedmentHeldByMoment : embedmentFreeByMoment;
      return { tried, pressure, asked: moment > 0 ? evaluate(kept, byMoment, [moment, pressure, diameter]) : 0 };
    }
    if (constrained)
      return { tried, pressure, asked: evaluate(kept, embedmentHeld, [shear, height, pressure, diameter]) };
    const A = evaluate(kept, embedmentLength, [shear, pressure, diameter]);
    return { tried, pressure, asked: evaluate(kept, embedmentFree, [A, height]) };
  };
  const pressure = pressureAt(depth, trace);
  const ratio = constrained
    ? evaluate(trace, embedmentRatioHeld, [depth, moment, pressure, diameter])
    : evaluate(trace, embedmentRatioFree, [shear, depth, moment, pressure, diameter]);
  const turns = turnsToDepth(askedAt, depth);
  const last = turns.at(-1) as DepthTurn;
  if (trace && last.asked > 0) under(trace, 'depth it needs', () => askedAt(last.tried, trace));
  return {
    pressure,
    depthCapped: depth > DEEPEST_FOR_PRESSURE,
    shear,
    ...(height === undefined ? {} : { height }),
    required: last.asked,
    given: depth,
    turns,
    ratio,
    ...(constrained
      ? { demand: moment, capacity: (pressure * diameter * depth ** 2) / HELD }
      : { demand: shear * depth + FREE.ofMoment * moment, capacity: (pressure * diameter * depth ** 2) / FREE.load }),
    notChecked: ['weight-on-the-soil', 'pull-out', 'strength-of-the-concrete', 'movement'],
  };
}

/**
 * Tries depths until one asks for itself. More depth never asks for more, so that one answer exists; where 12 ft asks for
 * more than 12 ft the pressure no longer grows and the first asking stands.
 */
function turnsToDepth(askedAt: (tried: number) => DepthTurn, first: number): readonly DepthTurn[] {
  const turns = [askedAt(first)];
  if ((turns[0] as DepthTurn).asked === 0) return turns;
  const atMost = askedAt(DEEPEST_FOR_PRESSURE);
  if (atMost.asked >= DEEPEST_FOR_PRESSURE) return first >= DEEPEST_FOR_PRESSURE ? turns : [...turns, atMost];
  for (let turn = 0; turn < 100; turn += 1) {
    const { tried, asked } = turns.at(-1) as DepthTurn;
    if (Math.abs(asked - tried) <= CLOSE_ENOUGH * tried) break;
    turns.push(askedAt(Math.min(DEEPEST_FOR_PRESSURE, (tried + asked) / 2)));
  }
  return turns;
}
