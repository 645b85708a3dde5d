import { UNKNOWN_SOLIDITY, type WindDirection } from '../areas/index.ts';
import { nth } from '../foundation/index.ts';
import type { Wind } from '../methods/index.ts';
import {
  appurtenanceItems,
  bareTowerWindKnown,
  cutIntoSlices,
  groupedSum,
  profileOf,
  sliceForces,
  slicesInWind,
  towerItems,
  type WindItem,
  windStructureOf,
  worstOfGroups,
} from '../structure/index.ts';
import type { CheckInput } from './check-input.ts';
import { siteWind } from './tower-model.ts';

/** Effective projected area of one thing. */
export interface ItemArea {
  readonly name: string;
  readonly at: string;
  readonly kind: WindItem['kind'];
  readonly low: number;
  readonly high: number;
  /** By a wind along and across its heading, at the unfavourable end of open readings [m²]. */
  readonly front: number;
  readonly side: number;
  /** Along and across at the favourable end [m²]. */
  readonly least: readonly [number, number];
  /** Largest over headings [m²]. */
  readonly worst: number;
  /** Of a lattice: with the wind on a face, and on a corner; the larger counts [m²]. */
  readonly byDirection?: Readonly<Record<WindDirection, number>>;
  /** Height of the middle of its area [m]. */
  readonly middle: number;
  readonly turn: WindItem['turn'];
}

export interface AreasAnswer {
  readonly items: readonly ItemArea[];
  /** Largest sum over wind headings: what turns, what is fixed and what is alike from all sides [m²]. */
  readonly worst: number;
  readonly headings: { readonly fixed?: number; readonly turning?: number };
  /** Height of the middle of the whole area [m]; absent where there is none. */
  readonly middle?: number;
  /** The coefficients are those of slow wind, since no site is given. */
  readonly slow: boolean;
}

/** A wind so slow that no coefficient has changed yet, over whose pressure areas come out bare [m/s]. */
const SLOW = 1e-3;

/**
 * Effective projected areas of whatever a part of a plan names.
 *
 * EPA = Σ C·A
 *
 * @param siteGiven whether its site is the owner's; else the coefficients are those of slow wind
 * @source derived
 */
export function areasOf(input: CheckInput, siteGiven: boolean, towerGiven: boolean): AreasAnswer {
  const { station } = input;
  const windStructure = windStructureOf(station, 'lattice');
  const wind = siteWind(input, windStructure, false);
  const speed = siteGiven ? wind.conditions.speed : SLOW;
  const own =
    towerGiven && bareTowerWindKnown(station.tower) ? towerItems(station.tower, UNKNOWN_SOLIDITY.most, 'both') : [];
  const still = cutIntoSlices([...appurtenanceItems(station), ...own], []);
  const cut = slicesInWind(bare(wind), still, 'demand', 'worse');
  const unfavourable = sliceForces(cut, speed, 'unfavourable', false);
  const from = (direction: WindDirection) =>
    sliceForces(slicesInWind(bare(wind), still, 'demand', direction), speed, 'unfavourable', false).front;
  const fronts = { face: from('face'), corner: from('corner') };
  const favourable = sliceForces(cut, speed, 'favourable', false);
  const scale = speed * speed * wind.gustEffect(speed);
  const items = cut.items.map((item, number): ItemArea => {
    const sum = { front: 0, side: 0, leastFront: 0, leastSide: 0, moment: 0, weight: 0 };
    let low = Number.POSITIVE_INFINITY;
    let high = 0;
    for (let index = nth(cut.from, number); index < nth(cut.from, number + 1); index += 1) {
      const slice = nth(cut.slices, index);
      const front = nth(unfavourable.front, index) / scale;
      const side = nth(unfavourable.side, index) / scale;
      sum.front += front;
      sum.side += side;
      sum.leastFront += nth(favourable.front, index) / scale;
      sum.leastSide += nth(favourable.side, index) / scale;
      sum.moment += Math.max(front, side) * slice.z;
      sum.weight += Math.max(front, side);
      low = Math.min(low, slice.low);
      high = Math.max(high, slice.high);
    }
    const isLattice = item.parts.some(({ rule }) => rule.of === 'lattice');
    const seenFrom = (direction: WindDirection) =>
      fronts[direction]
        .slice(nth(cut.from, number), nth(cut.from, number + 1))
        .reduce((all, force) => all + force / scale, 0);
    return {
      name: item.name,
      at: item.at,
      kind: item.kind,
      low,
      high,
      front: sum.front,
      side: sum.side,
      least: [sum.leastFront, sum.leastSide],
      worst: Math.max(sum.front, sum.side),
      ...(isLattice ? { byDirection: { face: seenFrom('face'), corner: seenFrom('corner') } } : {}),
      middle: sum.weight > 0 ? sum.moment / sum.weight : (low + high) / 2,
      turn: item.turn,
    };
  });
  // Summed at the ground as one profile: what the mast carries counts plainly there.
  const profile = profileOf(
    {
      ...cut,
      onTower: [...cut.onTower, ...cut.onMast].sort((a, b) => nth(cut.slices, b).z - nth(cut.slices, a).z),
      onMast: [],
    },
    unfavourable,
    [{ z: 0, zone: 'plain' }],
    { foot: 0 },
  );
  const { value, ...headings } = worstOfGroups(groupedSum(profile, 'shear', 0));
  const total = value / scale;
  const moment = worstOfGroups(groupedSum(profile, 'moment', 0)).value / scale;
  return { items, worst: total, headings, ...(total > 0 ? { middle: moment / total } : {}), slow: !siteGiven };
}

/** The same wind with a pressure of one per speed squared everywhere, so that forces come out as areas. */
function bare(wind: Wind): Wind {
  return { ...wind, toAllowableFactor: 1, forceDirectionFactor: 1, pressurePerSpeedSquared: () => 1 };
}
