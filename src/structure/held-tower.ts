import { nth } from '../foundation/index.ts';
import { type Cable, tensionOf, unstrainedLength } from './cable.ts';

/** East, north, up. */
export type Vector = readonly [number, number, number];

/** A guy from its leg to its anchor, and what loads it. */
export interface Guy {
  /** Of its attachment on the tower, above the ground [m]. */
  readonly height: number;
  /** From the tower's axis to that attachment [m]. */
  readonly offset: number;
  /** In which it runs out, clockwise from north [rad]. */
  readonly heading: number;
  /** From the tower's axis to its anchor [m]. */
  readonly radius: number;
  /** Of its anchor above the ground [m]. */
  readonly anchorHeight: number;
  /** E·A [N] */
  readonly stiffness: number;
  /** In still air, along its chord, when it was drawn [N]. */
  readonly tension: number;
  /** [N/m] */
  readonly weight: number;
  /** Wind on each length of it where it stands across the wind [N/m]. */
  readonly drag: number;
}

/** What holds a tower sideways at a height as a spring does, alike in all directions. */
export interface Bracket {
  readonly height: number;
  /** [N/m] */
  readonly stiffness: number;
}

/** A stretch of the tower of one stiffness [m, N·m²]. */
export interface Stretch {
  readonly low: number;
  readonly high: number;
  /** E·I */
  readonly bending: number;
}

/** Spread evenly over a stretch, or all at one height [m]: what pushes to the east and to the north, and what weighs [N]. */
export interface HeldLoad {
  readonly low: number;
  readonly high: number;
  readonly east: number;
  readonly north: number;
  readonly weight: number;
  /** It acts so far above that height, on an arm; of what acts at one height alone [m]. */
  readonly above?: number;
}

/** A tower that guys or brackets hold, from its foot up. */
export interface HeldTower {
  readonly stretches: readonly Stretch[];
  /** Its foot is held against turning; otherwise it stands on a hinge. */
  readonly footHeld: boolean;
  readonly guys: readonly Guy[];
  readonly brackets: readonly Bracket[];
}

/** Where the wind on the guys blows to, clockwise from north [rad]. */
export interface HeldCase {
  readonly loads: readonly HeldLoad[];
  readonly windTo: number;
  /** What the drag of the guys is multiplied by, all alike or by guy. */
  readonly onGuys: number | readonly number[];
}

/** What the tower feels at a height [m], on either side of it. */
export interface HeldAt {
  readonly z: number;
  readonly east: number;
  readonly north: number;
  /** Largest just below and just above [N·m]. */
  readonly momentBelow: number;
  readonly momentAbove: number;
  /** Across its bent axis, what its braces take [N]. */
  readonly shearBelow: number;
  readonly shearAbove: number;
  /** Push along it [N]. */
  readonly thrustBelow: number;
  readonly thrustAbove: number;
}

export interface GuyForces {
  /** Along its chord, and at both of its ends [N]. */
  readonly tension: number;
  readonly atTower: number;
  readonly atAnchor: number;
  /** What its anchor takes: level and up [N]. */
  readonly anchorLevel: number;
  readonly anchorUp: number;
}

/** Why no forces are given: all of them are findings about the tower. */
export const HELD_FAILURES = ['unstable', 'not-converged', 'beyond-small-movement'] as const;
export type HeldFailure = (typeof HELD_FAILURES)[number];

export interface HeldForces {
  readonly levels: readonly HeldAt[];
  readonly guys: readonly GuyForces[];
  /** By bracket: what it holds back [N]. */
  readonly brackets: readonly number[];
  /** At the foot: level force, push and moment [N, N·m]. */
  readonly foot: { readonly shear: number; readonly thrust: number; readonly moment: number };
  readonly steps: number;
}

export type HeldResult =
  | { readonly failure: HeldFailure; readonly forces?: undefined }
  | { readonly forces: HeldForces; readonly failure?: undefined };

/** Along the tower between any two places that matter. */
const ELEMENTS_BETWEEN = 6;
const UNKNOWNS = 4;
const HALF_BAND = 8;
const STEPS_AT_MOST = 40;
/** Share of all loads that may be left over. */
const CLOSE = 1e-7;
const HAIR = 1e-6;
const STEEPEST = (3 * Math.PI) / 180;
const FARTHEST = 1 / 20;

/**
 * How a guy takes hold of the tower when its attachment has moved.
 *
 * s_0·T³/EA + (s_0 − c)·T² = q_n²c³/24; F = T·t + q·c/2; k_c = (T² + q_n²c²/8)/(3s_0T²/EA + 2(s_0 − c)T)
 *
 * @param moved of its attachment: east, north, up [m]
 * @param windTo where the wind blows to, clockwise from north [rad]
 * @param onGuys share of its wind [-]
 * @returns forces on the tower and on the anchor [N]; its stiffness along the chord [N/m]
 * @source derived
 */
export function guyAt(guy: DrawnGuy, moved: Vector, windTo: number, onGuys: number) {
  const { at, anchor, cable, weight, drag } = guy;
  const away: Vector = [anchor[0] - at[0] - moved[0], anchor[1] - at[1] - moved[1], anchor[2] - at[2] - moved[2]];
  const chord = Math.hypot(...away);
  const along: Vector = [away[0] / chord, away[1] / chord, away[2] / chord];
  const wind: Vector = [Math.sin(windTo), Math.cos(windTo), 0];
  const lengthwise = wind[0] * along[0] + wind[1] * along[1];
  const across: Vector = [wind[0] - lengthwise * along[0], wind[1] - lengthwise * along[1], -lengthwise * along[2]];
  const push = drag * onGuys * Math.hypot(...across);
  const load: Vector = [push * across[0], push * across[1], push * across[2] - weight];
  const inLine = load[0] * along[0] + load[1] * along[1] + load[2] * along[2];
  const transverse = Math.sqrt(Math.max(0, load[0] ** 2 + load[1] ** 2 + load[2] ** 2 - inLine ** 2));
  const { unstrained, stiffness } = cable;
  const tension = tensionOf({ chord, unstrained, stiffness }, transverse);
  const end = (sign: 1 | -1): Vector => [
    sign * tension * along[0] + (load[0] * chord) / 2,
    sign * tension * along[1] + (load[1] * chord) / 2,
    sign * tension * along[2] + (load[2] * chord) / 2,
  ];
  const slope = (3 * unstrained * tension ** 2) / stiffness + 2 * (unstrained - chord) * tension;
  const lengthwiseStiffness = slope > 0 ? (tension ** 2 + (transverse * chord) ** 2 / 8) / slope : 0;
  return { tension, along, onTower: end(1), onAnchor: end(-1), lengthwiseStiffness, acrossStiffness: tension / chord };
}

/** A guy as it was drawn in still air. */
export interface DrawnGuy extends Pick<Guy, 'weight' | 'drag' | 'height'> {
  readonly at: Vector;
  readonly anchor: Vector;
  /** East and north of its attachment from the axis [m]. */
  readonly arm: readonly [number, number];
  readonly cable: Cable;
}

/**
 * A guy with the length that its tension in still air gives it.
 *
 * s_0 = c·(1 + q_n²c²/(24T_0²))/(1 + T_0/EA)
 *
 * @source derived
 */
export function drawnGuy(guy: Guy): DrawnGuy {
  const { height, offset, heading, radius, anchorHeight, stiffness, tension, weight, drag } = guy;
  const [east, north] = [Math.sin(heading), Math.cos(heading)];
  const at: Vector = [offset * east, offset * north, height];
  const anchor: Vector = [radius * east, radius * north, anchorHeight];
  const level = radius - offset;
  const chord = Math.hypot(level, height - anchorHeight);
  const unstrained = unstrainedLength(chord, (weight * Math.abs(level)) / chord, tension, stiffness);
  return { height, at, anchor, arm: [at[0], at[1]], cable: { chord, unstrained, stiffness }, weight, drag };
}

/**
 * A tower on guys or brackets under sideways forces and weight: a beam that bends in two planes, its push making it bend more,
 * on cables that stiffen as they draw. Newton's steps with the tangent of the cables.
 *
 * K(N)·u = P + ΣF(u); element: EI/L³·[12, 6L, 4L², 2L²] − N/(30L)·[36, 3L, 4L², −L²]
 *
 * @param tower from its foot up [m]
 * @param places heights at which forces are asked for, beside foot, top, supports and changes of stiffness [m]
 * @returns what solves it for forces on it: forces by height from the foot up, or why there are none
 * @source derived
 */
export function heldTowerSolver(tower: HeldTower, places: readonly number[] = []): (held: HeldCase) => HeldResult {
  const beam = beamOf(tower, places);
  return (held) => {
    const loaded = loadedBeam(beam, held.loads);
    const whole = settle(loaded, tower, held, undefined, 1);
    if (typeof whole !== 'string') return resultOf(loaded, tower, whole);
    let from: Float64Array | undefined;
    for (const share of [0.25, 0.5, 0.75, 1]) {
      const state = settle(loaded, tower, held, from, share);
      if (typeof state === 'string') return { failure: state };
      from = state.moved;
      if (share === 1) return resultOf(loaded, tower, state);
    }
    return { failure: whole };
  };
}

/**
 * The same of one case alone.
 *
 * @param tower from its foot up [m]
 * @param held the forces on it [N]
 * @param places heights at which forces are asked for [m]
 * @returns forces by height from the foot up, or why there are none
 * @source derived
 */
export function solveHeldTower(tower: HeldTower, held: HeldCase, places: readonly number[] = []): HeldResult {
  const ends = held.loads.flatMap(({ low, high }) => (high - low > HAIR ? [low, high] : []));
  return heldTowerSolver(tower, [...places, ...ends])(held);
}

interface Beam {
  readonly z: readonly number[];
  /** By node: asked for. */
  readonly asked: readonly boolean[];
  readonly bending: readonly number[];
  readonly guys: readonly (DrawnGuy & { readonly node: number })[];
  readonly brackets: readonly { readonly node: number; readonly stiffness: number }[];
  /** What its guys bring into the sum of all forces [N]. */
  readonly scale: number;
}

interface LoadedBeam extends Beam {
  /** By element: weight above, on an average over it and at its ends, without guys [N]. */
  readonly weightAbove: Float64Array;
  readonly weightAboveLow: Float64Array;
  readonly weightAboveHigh: Float64Array;
  /** By node and unknown, of the whole wind [N, N·m]. */
  readonly loads: Float64Array;
  /** By element and unknown of both its ends: what stands within it [N, N·m]. */
  readonly within: Float64Array;
}

function beamOf(tower: HeldTower, places: readonly number[]): Beam {
  const { stretches } = tower;
  const foot = nth(stretches, 0).low;
  const top = nth(stretches, stretches.length - 1).high;
  const ends = [
    foot,
    top,
    ...places,
    ...stretches.flatMap(({ low, high }) => [low, high]),
    ...tower.guys.map(({ height }) => height),
    ...tower.brackets.map(({ height }) => height),
  ]
    .filter((z) => z >= foot - HAIR && z <= top + HAIR)
    .sort((a, b) => a - b);
  const asked = ends.filter((z, index) => index === 0 || z - nth(ends, index - 1) > HAIR);
  const supports = [foot, ...[...tower.guys, ...tower.brackets].map(({ height }) => height), top].sort((a, b) => a - b);
  const bayAt = (z: number) => {
    const above = supports.findIndex((height) => height > z + HAIR);
    return nth(supports, above) - nth(supports, above - 1);
  };
  const z: number[] = [];
  const isAsked: boolean[] = [];
  asked.forEach((low, index) => {
    z.push(low);
    isAsked.push(true);
    const high = asked[index + 1];
    if (high === undefined) return;
    const pieces = Math.max(1, Math.ceil(((high - low) / bayAt((low + high) / 2)) * ELEMENTS_BETWEEN - HAIR));
    for (let piece = 1; piece < pieces; piece += 1) {
      z.push(low + ((high - low) * piece) / pieces);
      isAsked.push(false);
    }
  });
  const nodeAt = (height: number) =>
    z.reduce((best, each, node) => (Math.abs(each - height) < Math.abs(nth(z, best) - height) ? node : best), 0);
  const bending = z.slice(1).map((high, element) => {
    const middle = (nth(z, element) + high) / 2;
    const stretch = stretches.find(({ low, high: end }) => middle >= low && middle <= end);
    if (!stretch) throw new RangeError('the stretches of a tower leave a gap');
    return stretch.bending;
  });
  const guys = tower.guys.map((guy) => ({ ...drawnGuy(guy), node: nodeAt(guy.height) }));
  const brackets = tower.brackets.map(({ height, stiffness }) => ({ node: nodeAt(height), stiffness }));
  let scale = 0;
  for (const { tension, drag, radius, height } of tower.guys) scale += tension + drag * Math.hypot(radius, height);
  return { z, asked: isAsked, bending, guys, brackets, scale };
}

function loadedBeam(beam: Beam, all: readonly HeldLoad[]): LoadedBeam {
  const { z } = beam;
  const elements = z.length - 1;
  const loads = new Float64Array(z.length * UNKNOWNS);
  const within = new Float64Array(elements * 2 * UNKNOWNS);
  const weightAbove = new Float64Array(elements);
  const weightAboveLow = new Float64Array(elements);
  const weightAboveHigh = new Float64Array(elements);
  let { scale } = beam;
  /** Weight on all of every element below one. */
  const weighsBelow = new Float64Array(elements + 1);
  const atElement = (element: number, ends: readonly number[], { east, north }: HeldLoad) => {
    for (let unknown = 0; unknown < UNKNOWNS; unknown += 1) {
      const at = element * 8 + (unknown >> 1) * UNKNOWNS + (unknown & 1);
      add(within, at, east * nth(ends, unknown));
      add(within, at + 2, north * nth(ends, unknown));
    }
  };
  for (const load of all) {
    const { low, high, east, north, weight, above = 0 } = load;
    scale += Math.hypot(east, north);
    if (high - low > HAIR) {
      const shareAbove = (place: number) => Math.min(1, Math.max(0, (high - Math.max(low, place)) / (high - low)));
      for (let element = 0; element < elements; element += 1) {
        const [bottom, up] = [nth(z, element), nth(z, element + 1)];
        add(weightAboveLow, element, weight * shareAbove(bottom));
        add(weightAboveHigh, element, weight * shareAbove(up));
        add(weightAbove, element, weight * shareAbove((bottom + up) / 2));
        if (bottom < low - HAIR || up > high + HAIR) continue;
        atElement(element, endsOfSpread(up - bottom, (up - bottom) / (high - low)), load);
      }
      continue;
    }
    const element = elementAt(z, low);
    const [bottom, up] = [nth(z, element), nth(z, element + 1)];
    if (above !== 0) {
      const turned = (low - bottom < up - low ? element : element + 1) * UNKNOWNS;
      add(loads, turned + 1, east * above);
      add(loads, turned + 3, north * above);
    }
    if (low > bottom + HAIR && low < up - HAIR) {
      const share = (low - bottom) / (up - bottom);
      add(weighsBelow, element, weight);
      add(weightAboveLow, element, weight);
      add(weightAbove, element, weight * share);
      atElement(element, endsOfPoint(share, up - bottom), load);
    } else {
      const node = low >= up - HAIR ? element + 1 : element;
      add(weighsBelow, node, weight);
      add(loads, node * UNKNOWNS, east);
      add(loads, node * UNKNOWNS + 2, north);
    }
  }
  let weighs = weighsBelow[elements] as number;
  for (let element = elements - 1; element >= 0; element -= 1) {
    for (const sums of [weightAbove, weightAboveLow, weightAboveHigh]) add(sums, element, weighs);
    weighs += weighsBelow[element] as number;
  }
  for (let element = 0; element < elements; element += 1)
    for (let unknown = 0; unknown < 2 * UNKNOWNS; unknown += 1)
      add(loads, element * UNKNOWNS + unknown, within[element * 8 + unknown] as number);
  return { ...beam, weightAbove, weightAboveLow, weightAboveHigh, loads, within, scale };
}

/** Number of the element a height is in; beyond the ends the last there is. */
function elementAt(z: readonly number[], height: number): number {
  let [low, high] = [0, z.length - 2];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (nth(z, middle) <= height) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** Forces and moments of both ends of an element under a force of one across it, at a share of its length. */
function endsOfPoint(x: number, length: number): readonly number[] {
  return [1 - 3 * x ** 2 + 2 * x ** 3, length * x * (1 - x) ** 2, 3 * x ** 2 - 2 * x ** 3, -length * x ** 2 * (1 - x)];
}

/** The same where a share of the force is spread over the element. */
function endsOfSpread(length: number, share: number): readonly number[] {
  return [share / 2, (share * length) / 12, share / 2, (-share * length) / 12];
}

interface State {
  readonly moved: Float64Array;
  /** By element [N]. */
  readonly thrust: Float64Array;
  readonly holds: readonly ReturnType<typeof guyAt>[];
  readonly steps: number;
}

const onGuy = ({ onGuys }: HeldCase, number: number) => (typeof onGuys === 'number' ? onGuys : nth(onGuys, number));

/** Movement in which all forces balance, from a state nearby. */
function settle(
  beam: LoadedBeam,
  tower: HeldTower,
  held: HeldCase,
  from: Float64Array | undefined,
  share: number,
): State | HeldFailure {
  const size = beam.z.length * UNKNOWNS;
  const moved = from ? from.slice() : new Float64Array(size);
  const band = new Float64Array(size * HALF_BAND);
  const left = new Float64Array(size);
  const thrust = new Float64Array(beam.bending.length);
  for (let steps = 1; steps <= STEPS_AT_MOST; steps += 1) {
    band.fill(0);
    for (let index = 0; index < size; index += 1) left[index] = share * (beam.loads[index] as number);
    const holds = beam.guys.map((guy, number) =>
      guyAt(guy, attachmentMoved(guy, moved), held.windTo, share * onGuy(held, number)),
    );
    thrust.set(beam.weightAbove);
    holds.forEach(({ onTower }, number) => {
      const { node } = nth(beam.guys, number);
      for (let element = 0; element < node; element += 1) add(thrust, element, -onTower[2]);
    });
    for (let element = 0; element < thrust.length; element += 1)
      addElement(beam, element, thrust[element] as number, moved, band, left);
    holds.forEach((each, number) => {
      addGuy(nth(beam.guys, number), each, band, left);
    });
    for (const { node, stiffness } of beam.brackets) {
      for (const at of [node * UNKNOWNS, node * UNKNOWNS + 2]) {
        add(band, at * HALF_BAND, stiffness);
        add(left, at, -stiffness * (moved[at] as number));
      }
    }
    for (const at of tower.footHeld ? [0, 1, 2, 3] : [0, 2]) hold(at, band, left);
    let most = 0;
    for (let index = 0; index < size; index += 1) most = Math.max(most, Math.abs(left[index] as number));
    if (!factored(band, size)) return 'unstable';
    if (most <= CLOSE * beam.scale) return { moved, thrust, holds, steps };
    solveFactored(band, left, size);
    for (let index = 0; index < size; index += 1) add(moved, index, left[index] as number);
    if (!Number.isFinite(moved[size - 2] as number)) return 'not-converged';
  }
  return 'not-converged';
}

function attachmentMoved({ node, arm }: DrawnGuy & { readonly node: number }, moved: Float64Array): Vector {
  const at = node * UNKNOWNS;
  const [east, leanEast, north, leanNorth] = [moved[at], moved[at + 1], moved[at + 2], moved[at + 3]] as number[];
  return [east as number, north as number, -(arm[0] * (leanEast as number) + arm[1] * (leanNorth as number))];
}

/** How the ends of an element hold against moving: of moving, of both, of turning, of turning at the other end. */
function elementStiffness(bending: number, length: number, push: number): readonly [number, number, number, number] {
  const stiff = bending / length ** 3;
  const geometric = push / (30 * length);
  return [
    12 * stiff - 36 * geometric,
    (6 * stiff - 3 * geometric) * length,
    (4 * stiff - 4 * geometric) * length ** 2,
    (2 * stiff + geometric) * length ** 2,
  ];
}

function addElement(
  beam: LoadedBeam,
  element: number,
  push: number,
  moved: Float64Array,
  band: Float64Array,
  left: Float64Array,
): void {
  const length = nth(beam.z, element + 1) - nth(beam.z, element);
  const [a, b, c, d] = elementStiffness(nth(beam.bending, element), length, push);
  for (let plane = 0; plane < UNKNOWNS; plane += 2) {
    const start = element * UNKNOWNS + plane;
    const end = start + UNKNOWNS;
    const u = (moved[start] as number) - (moved[end] as number);
    const [lean, leanHigh] = [moved[start + 1] as number, moved[end + 1] as number];
    const across = a * u + b * (lean + leanHigh);
    add(left, start, -across);
    add(left, start + 1, -(b * u + c * lean + d * leanHigh));
    add(left, end, across);
    add(left, end + 1, -(b * u + d * lean + c * leanHigh));
    add(band, start * HALF_BAND, a);
    add(band, (start + 1) * HALF_BAND, c);
    add(band, (start + 1) * HALF_BAND + 1, b);
    add(band, end * HALF_BAND, a);
    add(band, end * HALF_BAND + UNKNOWNS, -a);
    add(band, end * HALF_BAND + UNKNOWNS - 1, -b);
    add(band, (end + 1) * HALF_BAND, c);
    add(band, (end + 1) * HALF_BAND + 1, -b);
    add(band, (end + 1) * HALF_BAND + UNKNOWNS + 1, b);
    add(band, (end + 1) * HALF_BAND + UNKNOWNS, d);
  }
}

function addGuy(
  { node, arm }: DrawnGuy & { readonly node: number },
  { onTower, along, lengthwiseStiffness, acrossStiffness }: ReturnType<typeof guyAt>,
  band: Float64Array,
  left: Float64Array,
): void {
  const at = node * UNKNOWNS;
  // What each of the four unknowns moves of the attachment: east, north, up.
  const moves: readonly Vector[] = [
    [1, 0, 0],
    [0, 0, -arm[0]],
    [0, 1, 0],
    [0, 0, -arm[1]],
  ];
  const dot = (a: Vector, b: Vector) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
  moves.forEach((row, i) => {
    add(left, at + i, dot(row, onTower));
    moves.slice(0, i + 1).forEach((column, j) => {
      const both = dot(row, along) * dot(column, along);
      const value = lengthwiseStiffness * both + acrossStiffness * (dot(row, column) - both);
      add(band, (at + i) * HALF_BAND + i - j, value);
    });
  });
}

/** An unknown that stays at nothing. */
function hold(at: number, band: Float64Array, left: Float64Array): void {
  const rows = left.length;
  for (let back = 0; back < HALF_BAND; back += 1) {
    band[at * HALF_BAND + back] = back === 0 ? 1 : 0;
    if (back > 0 && at + back < rows) band[(at + back) * HALF_BAND + back] = 0;
  }
  left[at] = 0;
}

/** L·D·Lᵀ in place, rows of eight; false where a pivot is not above nothing. */
function factored(band: Float64Array, size: number): boolean {
  for (let row = 0; row < size; row += 1) {
    const first = Math.max(0, row - HALF_BAND + 1);
    for (let column = first; column <= row; column += 1) {
      let value = band[row * HALF_BAND + row - column] as number;
      for (let k = Math.max(first, column - HALF_BAND + 1); k < column; k += 1)
        value -=
          (band[row * HALF_BAND + row - k] as number) *
          (band[column * HALF_BAND + column - k] as number) *
          (band[k * HALF_BAND] as number);
      if (column === row) {
        if (!(value > 0)) return false;
        band[row * HALF_BAND] = value;
      } else band[row * HALF_BAND + row - column] = value / (band[column * HALF_BAND] as number);
    }
  }
  return true;
}

function solveFactored(band: Float64Array, x: Float64Array, size: number): void {
  for (let row = 0; row < size; row += 1)
    for (let k = Math.max(0, row - HALF_BAND + 1); k < row; k += 1)
      add(x, row, -(band[row * HALF_BAND + row - k] as number) * (x[k] as number));
  for (let row = 0; row < size; row += 1) x[row] = (x[row] as number) / (band[row * HALF_BAND] as number);
  for (let row = size - 1; row >= 0; row -= 1)
    for (let k = Math.max(0, row - HALF_BAND + 1); k < row; k += 1)
      add(x, k, -(band[row * HALF_BAND + row - k] as number) * (x[row] as number));
}

function add(to: Float64Array, at: number, value: number): void {
  to[at] = (to[at] as number) + value;
}

function resultOf(beam: LoadedBeam, tower: HeldTower, state: State): HeldResult {
  const { z } = beam;
  const { moved, thrust, holds, steps } = state;
  const height = nth(z, z.length - 1) - nth(z, 0);
  for (let node = 0; node < z.length; node += 1) {
    const [east, leanEast, north, leanNorth] = moved.subarray(node * UNKNOWNS, (node + 1) * UNKNOWNS);
    const far = Math.hypot(east as number, north as number) > height * FARTHEST;
    if (far || Math.hypot(leanEast as number, leanNorth as number) > STEEPEST)
      return { failure: 'beyond-small-movement' };
  }
  const ends = beam.bending.map((_, element) => endsOf(beam, element, thrust[element] as number, moved));
  const levels = z.flatMap((each, node): HeldAt[] => {
    if (!beam.asked[node]) return [];
    const below = ends[node - 1]?.high;
    const above = ends[node]?.low;
    const at = node * UNKNOWNS;
    return [
      {
        z: each,
        east: moved[at] as number,
        north: moved[at + 2] as number,
        momentBelow: below?.moment ?? 0,
        momentAbove: above?.moment ?? 0,
        shearBelow: below?.shear ?? 0,
        shearAbove: above?.shear ?? 0,
        thrustBelow: node === 0 ? 0 : endThrust(beam, thrust, node - 1, 'high'),
        thrustAbove: node === thrust.length ? 0 : endThrust(beam, thrust, node, 'low'),
      },
    ];
  });
  const foot = nth(ends, 0).low;
  return {
    forces: {
      levels,
      guys: holds.map(({ tension, onTower, onAnchor }) => ({
        tension,
        atTower: Math.hypot(...onTower),
        atAnchor: Math.hypot(...onAnchor),
        anchorLevel: Math.hypot(onAnchor[0], onAnchor[1]),
        anchorUp: onAnchor[2],
      })),
      brackets: beam.brackets.map(
        ({ node, stiffness }) =>
          stiffness * Math.hypot(moved[node * UNKNOWNS] as number, moved[node * UNKNOWNS + 2] as number),
      ),
      foot: {
        shear: foot.level,
        thrust: endThrust(beam, thrust, 0, 'low'),
        moment: tower.footHeld ? foot.moment : 0,
      },
      steps,
    },
  };
}

function endThrust(beam: LoadedBeam, thrust: Float64Array, element: number, end: 'low' | 'high'): number {
  const at = end === 'low' ? beam.weightAboveLow : beam.weightAboveHigh;
  return (thrust[element] as number) - (beam.weightAbove[element] as number) + (at[element] as number);
}

interface EndForces {
  readonly moment: number;
  /** Across the bent axis, and level [N]. */
  readonly shear: number;
  readonly level: number;
}

/** What both ends of an element feel, both planes taken together. */
function endsOf(
  beam: LoadedBeam,
  element: number,
  push: number,
  moved: Float64Array,
): { readonly low: EndForces; readonly high: EndForces } {
  const length = nth(beam.z, element + 1) - nth(beam.z, element);
  const [a, b, c, d] = elementStiffness(nth(beam.bending, element), length, push);
  const planeAt = (plane: 0 | 2) => {
    const start = element * UNKNOWNS + plane;
    const u = (moved[start] as number) - (moved[start + UNKNOWNS] as number);
    const [lean, leanHigh] = [moved[start + 1] as number, moved[start + UNKNOWNS + 1] as number];
    const fixed = (unknown: number) => beam.within[element * 8 + plane + unknown] as number;
    const across = a * u + b * (lean + leanHigh);
    return {
      level: across - fixed(0),
      moment: b * u + c * lean + d * leanHigh - fixed(1),
      levelHigh: -across - fixed(UNKNOWNS),
      momentHigh: b * u + d * lean + c * leanHigh - fixed(UNKNOWNS + 1),
      lean,
      leanHigh,
    };
  };
  const [east, north] = [planeAt(0), planeAt(2)];
  return {
    low: {
      moment: Math.hypot(east.moment, north.moment),
      level: Math.hypot(east.level, north.level),
      shear: Math.hypot(east.level - push * east.lean, north.level - push * north.lean),
    },
    high: {
      moment: Math.hypot(east.momentHigh, north.momentHigh),
      level: Math.hypot(east.levelHigh, north.levelHigh),
      shear: Math.hypot(east.levelHigh + push * east.leanHigh, north.levelHigh + push * north.leanHigh),
    },
  };
}
