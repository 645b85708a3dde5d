import {
  cite,
  defineFormula,
  evaluate,
  listVariable,
  Refusal,
  type Trace,
  under,
  variable,
} from '../foundation/index.ts';
import {
  bendingAtYield,
  bendingByShare,
  ratioInBending,
  type SharedBending,
  sharedBending,
  type Tube,
  type TubeNotShown,
  type TubeSection,
} from './tube-section.ts';

/** A tube of an element or a boom, as much of it as shows, from the hold outwards. */
export interface ElementSegment extends Tube {
  /** What shows of it [m]. */
  readonly length: number;
  /** Tubes inside it over all that shows: they share its moment. */
  readonly sleeves?: readonly Tube[];
}

/** What hangs on a boom at one place: an element, a trap, a balun. */
export interface MountedOn {
  /** From the hold outwards [m]. */
  readonly at: number;
  /** Force of the wind across the boom [N]. */
  readonly wind: number;
  /** Its weight's force [N]. */
  readonly weight: number;
}

/** Force for each length [N/m] of every segment: a list in their order, or a function of the segment. */
export type ForcePerLength = readonly number[] | ((segment: ElementSegment, index: number) => number);

export interface ElementLoads {
  /** Level force of the wind; along one heading all of one sign. */
  readonly wind: ForcePerLength;
  /** Force of its weight and of ice on it, at right angles to the wind; none for what stands upright. */
  readonly weight?: ForcePerLength;
  readonly appurtenances?: readonly MountedOn[];
}

const forces = (symbol: string, meaning: string) => listVariable(symbol, meaning, 'force', -1e4, 1e4);
const arms = listVariable('a', 'their distances from the joint', 'length', 0, 20);
const moment = (symbol: string, meaning: string) => variable(symbol, meaning, 'moment', -1e5, 1e5);

export const forceOnLength = defineFormula({
  id: 'force-on-length',
  title: 'Force on a length that is loaded evenly',
  symbol: 'F',
  unit: 'force',
  expression: 'w * L',
  variables: [
    variable('w', 'force for each length', 'force-per-length', -1e3, 1e3),
    variable('L', 'length', 'length', 0, 20),
  ],
  cite: cite('derived', 'force spread evenly', 'derived'),
  of: (perLength: number, length: number) => perLength * length,
});

export const momentAtJoint = defineFormula({
  id: 'moment-at-joint',
  title: 'Bending moment at a joint, of all that lies outside of it',
  symbol: 'M',
  unit: 'moment',
  expression: 'sum(F .* a)',
  variables: [forces('F', 'forces outside of the joint'), arms],
  cite: cite('derived', 'a beam fixed at its inner end', 'derived'),
  of: (F: readonly number[], a: readonly number[]) =>
    F.reduce((sum, each, index) => sum + each * (a[index] as number), 0),
});

export const momentOfWindAndWeight = defineFormula({
  id: 'moment-of-wind-and-weight',
  title: 'Bending moment of the wind and of the weight, at right angles to each other',
  symbol: 'M_t',
  unit: 'moment',
  expression: 'sqrt(M_w^2 + M_g^2)',
  variables: [moment('M_w', 'of the wind'), moment('M_g', 'of the weight')],
  cite: cite('derived', 'a round tube bends alike in every direction', 'derived'),
  of: (wind: number, weight: number) => Math.sqrt(wind ** 2 + weight ** 2),
});

export const stressInBending = defineFormula({
  id: 'stress-in-bending',
  title: 'Stress at the outermost metal of a tube, of its share of the moment',
  symbol: 'f_b',
  unit: 'stress',
  expression: 'k * M_t / S',
  variables: [
    variable('k', 'its share of the moment: 1 alone', 'one', 0.01, 1),
    variable('M_t', 'bending moment', 'moment', 0, 1e5),
    variable('S', 'elastic section modulus', 'section-modulus', 1e-8, 1e-2),
  ],
  cite: cite('derived', 'elastic bending', 'derived'),
  of: (share: number, bending: number, S: number) => (share * bending) / S,
});

export const windFactorToMoment = defineFormula({
  id: 'wind-factor-to-moment',
  title: 'Factor on the force of the wind at which a section comes to a moment, its weight staying as it is',
  symbol: 'k_w',
  unit: 'one',
  expression: 'sqrt(max(M_0^2 - M_g^2, 0 * M_0^2)) / abs(M_w)',
  variables: [
    variable('M_0', 'the moment it may come to', 'moment', 0.1, 1e6),
    moment('M_g', 'moment of the weight'),
    variable('M_w', 'moment of the wind', 'moment', 0.01, 1e5),
  ],
  cite: cite('derived', 'M_0² = (k·M_w)² + M_g²; 0 where the weight alone is over it', 'derived'),
  of: (limit: number, weight: number, wind: number) =>
    Math.sqrt(Math.max(limit ** 2 - weight ** 2, 0)) / Math.abs(wind),
});

/** What happens at the inner end of a segment, where it leaves the next larger one or its hold. */
export interface ElementJoint {
  /** From the hold [m]. */
  readonly at: number;
  readonly momentOfWind: number;
  readonly momentOfWeight: number;
  readonly moment: number;
  /** Stress at the outermost metal of the segment and of each of its sleeves [Pa]. */
  readonly stresses: readonly number[];
  /** Against what the section is surely allowed; undefined where that is not shown. */
  readonly ratio?: number;
  /** The same if what the plan leaves not stated turns out well. */
  readonly ratioAtBest?: number;
  /**
   * Factor on the wind at which the section begins to yield, its weight kept; infinite where no wind bends it. Undefined
   * where that is not shown.
   */
  readonly factorToYield?: number;
  /** Factor on the wind at which it reaches what it is surely allowed. */
  readonly factorToAllowed?: number;
  readonly notShown: readonly TubeNotShown[];
}

export interface ElementBending {
  /** From the hold outwards, one for every segment. */
  readonly joints: readonly ElementJoint[];
  /** The segment that yields first as the wind grows; undefined where one is not shown (it might be that) or no wind bends it. */
  readonly first?: number;
  /** Segments whose strength is not shown. */
  readonly notShown: readonly number[];
  /** All that the element hands to its hold [N]. */
  readonly wind: number;
  readonly weight: number;
}

interface LoadOutside {
  readonly wind: number;
  readonly weight: number;
  readonly at: number;
}

const perLength = (given: ForcePerLength | undefined, segment: ElementSegment, index: number): number =>
  given === undefined ? 0 : typeof given === 'function' ? given(segment, index) : (given[index] ?? Number.NaN);

/**
 * A telescoped element or half of a boom, held at its inner end: moment, stress and use where each segment leaves the
 * next larger one, the segment that yields first, and at how much more wind.
 *
 * M = ΣF·a outside of the joint, M_t = √(M_w² + M_g²), f_b = M_t/S, k = √((Fy·S)² − M_g²)/M_w
 *
 * Each segment is looked at where its smaller section stands alone; what overlaps inside is left out, and so is the larger
 * section's own end. A speed goes with the square root of the factor while the coefficient stays. For what is held by a
 * truss or by a rope, or welded, this does not hold.
 *
 * @param loads wind, weight and what hangs on it
 * @throws Refusal segments-none, segment-impossible, element-load-impossible where a load is no number or beyond the tip, and
 *   as its sections do
 * @example elementBending([{ outside: 0.025, wall: 0.002, length: 2, material: 'aluminium', yieldStrength: 240e6 }], { wind: [10] }).joints[0].moment // 20
 * @source derived
 */
export function elementBending(
  segments: readonly ElementSegment[],
  loads: ElementLoads,
  trace?: Trace,
): ElementBending {
  if (segments.length === 0) throw new Refusal('segments-none', 'An element has a segment at least.');
  if (!segments.every(({ length }) => length > 0 && Number.isFinite(length))) {
    throw new Refusal('segment-impossible', 'Of every segment some length shows.');
  }
  const starts: number[] = [];
  let tip = 0;
  for (const { length } of segments) {
    starts.push(tip);
    tip += length;
  }
  const outside = loadsOf(segments, starts, tip, loads, trace);
  const joints = segments.map((segment, index) =>
    under(trace, `segment ${index + 1}`, () => jointOf(segment, starts[index] as number, outside, trace)),
  );
  const notShown = joints.flatMap((joint, index) => (joint.notShown.length > 0 ? [index] : []));
  const factors = joints.map(({ factorToYield }) => factorToYield ?? Number.POSITIVE_INFINITY);
  const least = Math.min(...factors);
  return {
    joints,
    ...(notShown.length === 0 && Number.isFinite(least) ? { first: factors.indexOf(least) } : {}),
    notShown,
    wind: outside.reduce((sum, { wind }) => sum + wind, 0),
    weight: outside.reduce((sum, { weight }) => sum + weight, 0),
  };
}

function loadsOf(
  segments: readonly ElementSegment[],
  starts: readonly number[],
  tip: number,
  { wind, weight, appurtenances = [] }: ElementLoads,
  trace: Trace | undefined,
): readonly LoadOutside[] {
  const all = segments.map((segment, index): LoadOutside => {
    const { length } = segment;
    const at = (starts[index] as number) + length / 2;
    const push = evaluate(
      trace,
      forceOnLength,
      [perLength(wind, segment, index), length],
      `wind, segment ${index + 1}`,
    );
    const down =
      weight === undefined
        ? 0
        : evaluate(trace, forceOnLength, [perLength(weight, segment, index), length], `weight, segment ${index + 1}`);
    return { wind: push, weight: down, at };
  });
  all.push(...appurtenances);
  if (!all.every((load) => load.at >= 0 && load.at <= tip && Number.isFinite(load.wind + load.weight))) {
    throw new Refusal('element-load-impossible', 'A load on an element is a number, between its support and its tip.');
  }
  return all;
}

function jointOf(
  segment: ElementSegment,
  at: number,
  loads: readonly LoadOutside[],
  trace: Trace | undefined,
): ElementJoint {
  // A load in the middle of its segment lies wholly outside of the joint at which that segment begins.
  const beyond = loads.filter((load) => load.at > at);
  const arm = beyond.length ? beyond.map((load) => load.at - at) : [0];
  const sum = (of: 'wind' | 'weight') =>
    evaluate(trace, momentAtJoint, [beyond.length ? beyond.map((load) => load[of]) : [0], arm], of);
  const momentOfWind = sum('wind');
  const momentOfWeight = sum('weight');
  const moment = evaluate(trace, momentOfWindAndWeight, [momentOfWind, momentOfWeight]);
  const tubes = [segment, ...(segment.sleeves ?? [])];
  const bending = sharedBending(tubes, trace);
  const stresses = bending.sections.map(({ sectionModulus }, index) =>
    evaluate(trace, stressInBending, [bending.shares[index] as number, moment, sectionModulus]),
  );
  const { allowed, notShown } = bending;
  const common = { at, momentOfWind, momentOfWeight, moment, stresses, notShown };
  if (!allowed) return common;
  return {
    ...common,
    ratio: evaluate(trace, ratioInBending, [moment, allowed.surely]),
    ratioAtBest: ratioInBending.of(moment, allowed.atMost),
    factorToYield: factorTo(momentAtYield(tubes, bending, trace), momentOfWeight, momentOfWind, trace),
    factorToAllowed: factorTo(allowed.surely, momentOfWeight, momentOfWind, trace),
  };
}

/** The moment at which the first of the tubes begins to yield. */
function momentAtYield(tubes: readonly Tube[], { shares, sections }: SharedBending, trace: Trace | undefined): number {
  const each = tubes.map(({ yieldStrength = Number.NaN }, index) => {
    const { sectionModulus } = sections[index] as TubeSection;
    const own = evaluate(trace, bendingAtYield, [yieldStrength, sectionModulus]);
    return tubes.length === 1 ? own : evaluate(trace, bendingByShare, [own, shares[index] as number], 'at yield');
  });
  return Math.min(...each);
}

function factorTo(limit: number, ofWeight: number, ofWind: number, trace: Trace | undefined): number {
  if (ofWind !== 0) return evaluate(trace, windFactorToMoment, [limit, ofWeight, ofWind]);
  return Math.abs(ofWeight) < limit ? Number.POSITIVE_INFINITY : 0;
}
