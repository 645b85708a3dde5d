import { evaluate, nth, type Trace, under } from '../foundation/index.ts';
import { type Bound, METHOD_BY_ID } from '../methods/index.ts';
import {
  pullGrowth,
  type Slice,
  type SliceForces,
  type SlicesInWind,
  sliceForces,
  type WindItem,
} from '../structure/index.ts';
import type { Comparison } from './comparisons.ts';
import { pressureOnWire, sliceForce, sumOfForces, sumOfMoments, worstMoment, worstShear } from './formulas.ts';

/** One piece's forces, and with what share and arm they reach a level. */
export interface Reaching {
  readonly group: 'still' | 'turning' | 'fixed';
  readonly heading: number;
  readonly along: number;
  readonly across: number;
  readonly share: number;
  readonly arm: number;
  /** What it is a piece of, and how far off the axis that hangs, where it twists the tower. */
  readonly twists?: { readonly item: number; readonly offset: number };
}

/**
 * The worst of a group of pieces over headings, written down.
 *
 * still ΣF·a; turning or fixed: the worst heading in closed form
 *
 * @param of a moment by their arms, or a shear by their shares
 * @returns the sum [N or N·m]
 * @source derived
 */
export function sumGroup(pieces: readonly Reaching[], of: Comparison['of'], trace?: Trace): number {
  if (pieces.length === 0) return 0;
  const reach = pieces.map((each) => (of === 'moment' ? each.arm : each.share));
  const along = pieces.map((each) => each.along);
  if (pieces.every((each) => each.group === 'still')) {
    return evaluate(trace, of === 'moment' ? sumOfMoments : sumOfForces, [along, reach]);
  }
  const inputs = [along, pieces.map((each) => each.across), reach, pieces.map((each) => each.heading)] as const;
  return evaluate(trace, of === 'moment' ? worstMoment : worstShear, [...inputs]);
}

/**
 * The worst of what is alike from all sides, of what turns and of what faces its own way, each written down.
 *
 * @returns the sums [N or N·m]
 */
export function sumsByGroup(
  pieces: readonly Reaching[],
  of: Comparison['of'],
  trace?: Trace,
): readonly [still: number, turning: number, fixed: number] {
  const sum = (group: Reaching['group']) =>
    sumGroup(
      pieces.filter((each) => each.group === group),
      of,
      trace,
    );
  return [sum('still'), sum('turning'), sum('fixed')];
}

/** The wind for which forces are written down: speed in its basis [m/s], end of the readings, with least pressures or not. */
export interface ExplainedWind {
  readonly cut: SlicesInWind;
  readonly speed: number;
  readonly bound: Bound;
  readonly least: boolean;
}

/**
 * The forces on the pieces that reach a level along and across their headings, written down.
 *
 * F = λ·q·G·C_A·k_A·A
 *
 * @param reachOf how a piece reaches there; undefined where it does not
 * @source derived
 */
export function explainPieces(
  explained: ExplainedWind,
  reachOf: (slice: Slice, item: WindItem, index: number) => Pick<Reaching, 'share' | 'arm' | 'twists'> | undefined,
  trace: Trace,
): readonly Reaching[] {
  const { cut, speed, bound, least } = explained;
  const forces = sliceForces(cut, speed, bound, least);
  return cut.slices.flatMap((slice, index): Reaching[] => {
    const item = nth(cut.items, slice.item);
    const reach = reachOf(slice, item, index);
    if (!reach) return [];
    const [along, across] = under(trace, item.name, () => explainSlice(explained, slice, index, forces, trace));
    return [{ group: item.turn === 'own-worst' ? 'still' : item.turn, heading: item.heading, along, across, ...reach }];
  });
}

function explainSlice(
  { cut, speed, bound, least }: ExplainedWind,
  slice: Slice,
  index: number,
  forces: SliceForces,
  trace: Trace,
): readonly [number, number] {
  const { wind } = cut;
  const item = nth(cut.items, slice.item);
  const { rule } = slice.part;
  if (rule.of === 'wire-pull') {
    const pressure = evaluate(trace, pressureOnWire, [
      wind.toAllowableFactor,
      wind.forceDirectionFactor,
      wind.pressure(slice.z, trace),
      wind.gustEffect(speed),
    ]);
    const growth = pullGrowth(rule.wires, pressure, trace);
    return [growth, growth];
  }
  slice.part.asAt?.(slice.z, trace);
  const pressure = wind.pressure(slice.z, trace);
  const flowFactor = nth(cut.flowFactor, index);
  if (flowFactor > 0) wind.flow(slice.z, flowFactor / wind.flowPerSpeed(slice.z), trace);
  const coefficient = nth(cut.coefficientOf, index).byFlow.at(flowFactor * speed, trace);
  const factor = nth(cut[bound], index);
  const onArea = rule.of === 'stated-force' ? coefficient : 1;
  const leastPressure = least ? wind.leastPressure * onArea : 0;
  const force = (area: number) =>
    area === 0
      ? 0
      : evaluate(
          trace,
          sliceForce,
          [
            wind.toAllowableFactor,
            wind.forceDirectionFactor,
            pressure,
            wind.gustEffect(speed),
            coefficient,
            leastPressure,
            factor,
            area,
          ],
          undefined,
          METHOD_BY_ID[wind.method].forceCite,
        );
  const along = nth(forces.front, index);
  const across = nth(forces.side, index);
  if (item.turn === 'still') return [force(slice.front), across];
  if (item.turn === 'fixed' || item.turn === 'turning') return [force(slice.front), force(slice.side)];
  // The axis on which the whole item is larger was taken; the piece's own force tells which.
  if (along === 0) return [0, 0];
  const perArea = wind.gustEffect(speed) * speed * speed * nth(cut.forceFactor, index) * coefficient * factor;
  const byFront = Math.abs(perArea * slice.front - along) <= Math.abs(perArea * slice.side - along);
  const worst = force(byFront ? slice.front : slice.side);
  return [worst, worst];
}

/**
 * Refuses a working that differs from its answer.
 *
 * @param one of the working [-]
 * @param other of the answer [-]
 * @throws Error where they differ
 * @example agree(1, 1, 'ratio') // undefined
 */
export function agree(one: number, other: number, what: string): void {
  if (Math.abs(one - other) > 1e-9 * Math.max(1, Math.abs(other))) {
    throw new Error(`the working's ${what} ${one} differs from the answer's ${other}`);
  }
}
