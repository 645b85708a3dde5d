import type { DragPart, Role, WindDirection } from '../areas/index.ts';
import { remember, zeros } from '../foundation/index.ts';
import { type Bound, METHOD_BY_ID, type PartCoefficient, statedAreaFactor, type Wind } from '../methods/index.ts';
import type { WindItem } from './wind-item.ts';
import { pullGrowth } from './wire-pull.ts';

/**
 * A share of one part, with the height at which its force acts. A part is cut into pieces of height, and every piece makes two
 * slices of half its height each at its Gauss points: their forces and moments are those of the whole piece as long as
 * width times pressure bends no more than a cubic within it.
 */
export interface Slice {
  readonly item: number;
  /** Of what tapers, as it is at this height. */
  readonly part: DragPart;
  /** As far above as below its height: where its force is spread, for what bends within it [m]. */
  readonly low: number;
  readonly high: number;
  /** Where its force acts, and where the wind is asked for it [m]. */
  readonly z: number;
  /** Areas before any coefficient [m²]. */
  readonly front: number;
  readonly side: number;
}

/** No piece of height that makes two slices is longer [m]. @source derived */
const LONGEST_PIECE = 4;

/** Of the two Gauss points, how far they are from the nearer end, as a share of the piece. */
const FROM_END = (1 - 1 / Math.sqrt(3)) / 2;

/** Items cut into slices: all that does not depend on any wind. */
export interface Cut {
  readonly items: readonly WindItem[];
  /** In the order of the items; slices of item i are from[i] up to from[i + 1]. */
  readonly slices: readonly Slice[];
  readonly from: readonly number[];
  /** Slice numbers from the highest down, of what the tower and what the mast carries. */
  readonly onTower: readonly number[];
  readonly onMast: readonly number[];
  /** Everything is alike from all sides. */
  readonly allStill: boolean;
  /** What methods have already been asked about the slices: it does not depend on how hard their wind blows. */
  readonly asked: Map<string, Asked>;
}

/** What a method says of every slice whatever the wind. */
export interface Asked {
  readonly coefficientOf: readonly PartCoefficient[];
  /** What an area of stated kind is multiplied by, at the bad and the favourable end of its reading. */
  readonly unfavourable: number[];
  readonly favourable: number[];
  /** Some stated area is read in two ways. */
  readonly readTwoWays: boolean;
}

/**
 * Cuts items into slices, at the given heights and at the longest piece.
 *
 * F = Σq(z_i)·w(z_i)·L/2, M = Σq(z_i)·w(z_i)·z_i·L/2, z_i = z_m ± L/(2√3)
 *
 * @param heights at which no piece goes on: levels, and where the law of the pressure changes [m]
 * @source derived
 */
export function cutIntoSlices(items: readonly WindItem[], heights: readonly number[]): Cut {
  const cuts = [...new Set(heights)].sort((a, b) => a - b);
  const slices: Slice[] = [];
  const from: number[] = [];
  items.forEach((item, number) => {
    from.push(slices.length);
    for (const part of item.parts) addSlices(slices, number, part, cuts);
  });
  from.push(slices.length);
  const onTower: number[] = [];
  const onMast: number[] = [];
  slices.forEach((slice, number) => {
    ((items[slice.item] as WindItem).carriedBy === 'tower' ? onTower : onMast).push(number);
  });
  const byHeight = (a: number, b: number) => (slices[b] as Slice).z - (slices[a] as Slice).z;
  return {
    items,
    slices,
    from,
    onTower: onTower.sort(byHeight),
    onMast: onMast.sort(byHeight),
    allStill: items.every((item) => item.turn === 'still'),
    asked: new Map(),
  };
}

function addSlices(slices: Slice[], item: number, part: DragPart, cuts: readonly number[]): void {
  const { low, high } = part;
  const length = high - low;
  if (length <= 0) {
    slices.push({ item, part, low, high, z: (low + high) / 2, front: part.front, side: part.side });
    return;
  }
  const slice = (from: number, to: number, share: number) => {
    const z = (from + to) / 2;
    const here = part.asAt?.(z) ?? part;
    slices.push({ item, part: here, low: from, high: to, z, front: here.front * share, side: here.side * share });
  };
  let start = low;
  const upTo = (end: number) => {
    const count = Math.max(1, Math.ceil((end - start) / LONGEST_PIECE - 1e-9));
    const step = (end - start) / count;
    const share = step / length / 2;
    for (let piece = 0; piece < count; piece += 1) {
      const [from, to] = [start + step * piece, start + step * (piece + 1)];
      slice(from, from + 2 * FROM_END * step, share);
      slice(to - 2 * FROM_END * step, to, share);
    }
    start = end;
  };
  for (const cut of cuts) if (cut > start && cut < high) upTo(cut);
  upTo(high);
}

/** A wind on slices: all that does not depend on its speed. */
export interface SlicesInWind extends Cut, Asked {
  readonly wind: Wind;
  /** By slice: λ·q/V²·(direction factor in the force) [Pa/(m/s)²]; the gust effect factor stands apart. */
  readonly forceFactor: number[];
  /** By slice: flow measure per m/s; 0 where the coefficient never changes. */
  readonly flowFactor: number[];
  /** Speed up to which no coefficient changes [m/s]. */
  readonly steadyUpTo: number;
}

/** A direction to the faces of a lattice; `worse` of what nobody told how it stands: each part by the one that asks for more. */
export type DirectionTaken = WindDirection | 'worse';

/**
 * Gathers what a method says of every slice.
 *
 * @param role demand takes open choices high, capacity low
 */
export function slicesInWind(wind: Wind, cut: Cut, role: Role, direction: DirectionTaken): SlicesInWind {
  const { slices } = cut;
  const asked = askedOf(wind, cut, role, direction);
  const forceFactor = zeros(slices.length);
  const flowFactor = zeros(slices.length);
  const levelled = wind.toAllowableFactor * wind.forceDirectionFactor;
  let steadyUpTo = wind.gustVaries ? 0 : Number.POSITIVE_INFINITY;
  for (let number = 0; number < slices.length; number += 1) {
    const { part, z } = slices[number] as Slice;
    const { byFlow, diameter: deciding } = asked.coefficientOf[number] as PartCoefficient;
    forceFactor[number] = levelled * wind.pressurePerSpeedSquared(z);
    // The tension of a cable does not go with the pressure of its wind.
    if (part.rule.of === 'wire-pull') steadyUpTo = 0;
    const diameter = byFlow.limit < Number.POSITIVE_INFINITY ? (deciding ?? part.diameter) : 0;
    if (diameter > 0) {
      const flow = wind.flowPerSpeed(z) * diameter;
      flowFactor[number] = flow;
      steadyUpTo = Math.min(steadyUpTo, byFlow.limit / flow);
    }
  }
  return { ...cut, ...asked, wind, forceFactor, flowFactor, steadyUpTo };
}

function askedOf(wind: Wind, cut: Cut, role: Role, direction: DirectionTaken): Asked {
  const { method, conditions } = wind;
  return remember(cut.asked, `${method} ${conditions.units} ${role} ${direction}`, () => {
    const { slices } = cut;
    const { slender } = METHOD_BY_ID[method];
    const unfavourable = zeros(slices.length).fill(1);
    const favourable = zeros(slices.length).fill(1);
    let readTwoWays = false;
    let part: DragPart | undefined;
    let found: PartCoefficient | undefined;
    const coefficientOf = slices.map((slice, number) => {
      if (slice.part !== part || !found) {
        part = slice.part;
        found = coefficientFrom(wind, part, role, direction);
      }
      if (part.rule.of === 'stated') {
        const { areaKind, slenderFlats } = part.rule;
        unfavourable[number] = statedAreaFactor(areaKind, slenderFlats, slender, 'unfavourable');
        favourable[number] = statedAreaFactor(areaKind, slenderFlats, slender, 'favourable');
        readTwoWays ||= unfavourable[number] !== favourable[number];
      }
      return found;
    });
    return { coefficientOf, unfavourable, favourable, readTwoWays };
  });
}

/** No flow turns the order of the two directions: every method has its direction factors beside its flow. */
function coefficientFrom(wind: Wind, { rule }: DragPart, role: Role, direction: DirectionTaken): PartCoefficient {
  if (direction !== 'worse') return wind.forceCoefficient(rule, role, direction);
  const face = wind.forceCoefficient(rule, role, 'face');
  if (rule.of !== 'lattice') return face;
  const corner = wind.forceCoefficient(rule, role, 'corner');
  return corner.byFlow.slow > face.byFlow.slow ? corner : face;
}

/** Force of the wind on each slice, along and across the heading of its item [N], at the wind's level. */
export interface SliceForces {
  readonly front: number[];
  readonly side: number[];
  /** The method's least pressure decides for some slice. */
  readonly leastDecides: boolean;
}

/**
 * Forces on all slices at a speed. An item whose heading nobody told takes its own worst: the axis on which it is larger.
 *
 * F = λ·q·G·C·A
 *
 * @param speed [m/s], in the basis of the wind
 * @param bound which end of open readings of stated areas
 * @returns the forces [N]
 * @source derived
 */
export function sliceForces(slicesInWind: SlicesInWind, speed: number, bound: Bound, least: boolean): SliceForces {
  const forces = forcesOn(slicesInWind, speed, bound, least);
  if (!slicesInWind.allStill) takeOwnWorst(slicesInWind, forces.front, forces.side);
  return forces;
}

type InWind = Pick<
  SlicesInWind,
  'wind' | 'slices' | 'coefficientOf' | 'forceFactor' | 'flowFactor' | 'unfavourable' | 'favourable'
>;

function forcesOn(slicesInWind: InWind, speed: number, bound: Bound, least: boolean): SliceForces {
  const { wind, slices, coefficientOf, forceFactor, flowFactor } = slicesInWind;
  const factors = slicesInWind[bound];
  const front = zeros(slices.length);
  const side = zeros(slices.length);
  const dynamic = wind.gustEffect(speed) * speed * speed;
  const leastPressure = least ? wind.leastPressure * wind.toAllowableFactor : 0;
  let leastDecides = false;
  for (let number = 0; number < slices.length; number += 1) {
    const slice = slices[number] as Slice;
    const { rule } = slice.part;
    if (rule.of === 'wire-pull') {
      front[number] = pullGrowth(rule.wires, (forceFactor[number] as number) * dynamic);
      side[number] = front[number] as number;
      continue;
    }
    const { byFlow } = coefficientOf[number] as PartCoefficient;
    const flow = (flowFactor[number] as number) * speed;
    const coefficient = flow <= byFlow.limit ? byFlow.slow : byFlow.at(flow);
    let pressure = (forceFactor[number] as number) * dynamic * coefficient;
    // A stated force stands as one square metre with the coefficient of its effective area: the least acts on that.
    const leastHere = rule.of === 'stated-force' ? leastPressure * coefficient : leastPressure;
    if (pressure < leastHere) {
      leastDecides = true;
      pressure = leastHere;
    }
    pressure *= factors[number] as number;
    front[number] = pressure * slice.front;
    side[number] = pressure * slice.side;
  }
  return { front, side, leastDecides };
}

/**
 * Some of the slices of a cut, each side told for itself: for what asks only after its own, again and again.
 *
 * @param numbers of the slices, from 0 [-]
 * @returns them with their areas, and the forces on them at a speed [N]
 * @source derived
 */
export function someSlices(cut: SlicesInWind, numbers: readonly number[]) {
  const of = <T>(list: readonly T[]) => numbers.map((number) => list[number] as T);
  const some = {
    wind: cut.wind,
    slices: of(cut.slices),
    coefficientOf: of(cut.coefficientOf),
    forceFactor: of(cut.forceFactor),
    flowFactor: of(cut.flowFactor),
    unfavourable: of(cut.unfavourable),
    favourable: of(cut.favourable),
  };
  return {
    slices: some.slices,
    forces: (speed: number, bound: Bound, least: boolean): SliceForces => forcesOn(some, speed, bound, least),
  };
}

function takeOwnWorst({ items, from }: Cut, front: number[], side: number[]): void {
  for (let item = 0; item < items.length; item += 1) {
    if ((items[item] as WindItem).turn !== 'own-worst') continue;
    const start = from[item] as number;
    const end = from[item + 1] as number;
    let along = 0;
    let across = 0;
    for (let number = start; number < end; number += 1) {
      along += front[number] as number;
      across += side[number] as number;
    }
    const [larger, smaller] = along >= across ? [front, side] : [side, front];
    for (let number = start; number < end; number += 1) smaller[number] = larger[number] as number;
  }
}
