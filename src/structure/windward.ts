import { type DragLaw, LONGEST_SLICE, type Role, type WindDirection } from '../areas/index.ts';
import { METHOD_BY_ID, type Reading, statedAreaFactor, type Wind } from '../methods/index.ts';
import type { Level } from './level.ts';
import type { WindItem } from './wind-item.ts';

/** A short piece of one part, taken at the height of its middle. */
export interface Slice {
  readonly item: number;
  readonly part: number;
  readonly low: number;
  readonly high: number;
  readonly z: number;
  /** Areas before any coefficient [m²]. */
  readonly front: number;
  readonly side: number;
  /** What an area of stated kind is multiplied by, at the bad and the good end of its reading. */
  readonly bad: number;
  readonly good: number;
  /** λ·q/V²·(direction factor in the force) [Pa/(m/s)²]; the gust effect factor stands apart. */
  readonly forceFactor: number;
  /** Flow measure per m/s. */
  readonly flowFactor: number;
  readonly law: DragLaw;
}

/** A wind on a set of items: all that does not depend on the speed, worked out once. */
export interface Windward {
  readonly wind: Wind;
  readonly items: readonly WindItem[];
  readonly slices: readonly Slice[];
  /** Slices of item i are from[i] up to from[i + 1]. */
  readonly from: readonly number[];
  /** Slice numbers from the highest down, of what the tower and what the mast carries. */
  readonly onTower: readonly number[];
  readonly onMast: readonly number[];
  /** Speed up to which no coefficient changes [m/s]. */
  readonly steadyUpTo: number;
}

/**
 * Cuts items into slices at the levels and at the longest slice, and gathers what the method says of each.
 *
 * @param wind the wind [-]
 * @param items what it touches [-]
 * @param levels heights at which forces are summed [-]
 * @param role demand takes open choices high, capacity low [-]
 * @param direction of the wind on lattices [-]
 * @returns the slices, in order of item and height [-]
 * @source derived
 */
export function windward(
  wind: Wind,
  items: readonly WindItem[],
  levels: readonly Level[],
  role: Role,
  direction: WindDirection,
): Windward {
  const slender = METHOD_BY_ID[wind.method].slender;
  const cuts = [...new Set(levels.map((level) => level.z))];
  const slices: Slice[] = [];
  const from: number[] = [];
  let steadyUpTo = wind.gustVaries ? 0 : Number.POSITIVE_INFINITY;
  items.forEach((item, itemNumber) => {
    from.push(slices.length);
    item.parts.forEach((part, partNumber) => {
      const { law, diameter = part.diameter } = wind.law(part.rule, role, direction);
      const stated = part.rule.of === 'stated' ? part.rule : undefined;
      const factor = (reading: Reading) =>
        stated ? statedAreaFactor(stated.areaKind, stated.slenderFlats, slender, reading) : 1;
      const bad = factor('bad');
      const good = factor('good');
      for (const [low, high] of pieces(part.low, part.high, item.carriedBy === 'tower' ? cuts : [])) {
        const share = part.high > part.low ? (high - low) / (part.high - part.low) : 1;
        const z = (low + high) / 2;
        const flowFactor = diameter > 0 && law.limit < Number.POSITIVE_INFINITY ? wind.flowPerSpeed(z) * diameter : 0;
        if (flowFactor > 0) steadyUpTo = Math.min(steadyUpTo, law.limit / flowFactor);
        slices.push({
          item: itemNumber,
          part: partNumber,
          low,
          high,
          z,
          front: part.front * share,
          side: part.side * share,
          bad,
          good,
          forceFactor: wind.level * wind.pressurePerSpeedSquared(z) * wind.forceDirectionFactor,
          flowFactor,
          law,
        });
      }
    });
  });
  from.push(slices.length);
  const byHeight = (a: number, b: number) => (slices[b] as Slice).z - (slices[a] as Slice).z;
  const carried = (by: WindItem['carriedBy']) =>
    slices.flatMap((slice, number) => ((items[slice.item] as WindItem).carriedBy === by ? [number] : [])).sort(byHeight);
  return { wind, items, slices, from, onTower: carried('tower'), onMast: carried('mast'), steadyUpTo };
}

function pieces(low: number, high: number, cuts: readonly number[]): readonly (readonly [number, number])[] {
  if (high <= low) return [[low, high]];
  const edges = [low, ...cuts.filter((z) => z > low && z < high).sort((a, b) => a - b), high];
  const result: (readonly [number, number])[] = [];
  for (let index = 1; index < edges.length; index += 1) {
    const start = edges[index - 1] as number;
    const end = edges[index] as number;
    const count = Math.max(1, Math.ceil((end - start) / LONGEST_SLICE - 1e-9));
    for (let piece = 0; piece < count; piece += 1) {
      result.push([start + ((end - start) * piece) / count, start + ((end - start) * (piece + 1)) / count]);
    }
  }
  return result;
}

/** Force of the wind on each slice, along and across the heading of its item [N], at the wind's level. */
export interface SliceForces {
  readonly front: Float64Array;
  readonly side: Float64Array;
}

/**
 * Forces on all slices at a speed. An item whose heading nobody told takes its own worst: the axis on which it is larger.
 *
 * F = λ·q·G·C·A
 *
 * @param windward the wind on its items [-]
 * @param speed [m/s], in the basis of the wind
 * @param reading which end of open readings of stated areas [-]
 * @param least whether the method's least pressure counts [-]
 * @returns the forces [N]
 * @source derived
 */
export function sliceForces(windward: Windward, speed: number, reading: Reading, least: boolean): SliceForces {
  const { wind, slices, items, from } = windward;
  const front = new Float64Array(slices.length);
  const side = new Float64Array(slices.length);
  const dynamic = wind.gustEffect(speed) * speed * speed;
  const leastPressure = least ? wind.leastPressure * wind.level : 0;
  for (let number = 0; number < slices.length; number += 1) {
    const slice = slices[number] as Slice;
    const flow = slice.flowFactor * speed;
    const coefficient = flow <= slice.law.limit ? slice.law.slow : slice.law.at(flow);
    const factor = reading === 'bad' ? slice.bad : slice.good;
    const pressure = Math.max(slice.forceFactor * dynamic * coefficient, leastPressure) * factor;
    front[number] = pressure * slice.front;
    side[number] = pressure * slice.side;
  }
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
    const larger = along >= across ? front : side;
    const smaller = along >= across ? side : front;
    for (let number = start; number < end; number += 1) smaller[number] = larger[number] as number;
  }
  return { front, side };
}
