import { evaluate, nth, type Trace } from '../../foundation/index.ts';
import type { Bound, Wind } from '../../methods/index.ts';
import { type HeldFailure, profileOf, sliceForces } from '../../structure/index.ts';
import type { HoldsTo } from '../holds-to-ratio.ts';
import type { Claim, TowerInWind, TowerModel } from '../model.ts';
import { areaFactorOf } from '../rated-capacity.ts';
import { forcePerArea, type RoomPlace } from '../room-by-check.ts';
import { once } from '../tower-model.ts';
import { heldUse, pushInLeg } from './held-formulas.ts';
import { type Blowing, handedOver, planBlowing, ratedBlowing, SPEED_BEYOND, TO_STRENGTH } from './held-loads.ts';
import {
  askedOfHeld,
  type HeldAsked,
  type HeldModel,
  type HeldReading,
  heldModelOf,
  type InLeg,
} from './held-model.ts';
import type { Supports } from './supports.ts';
import { lowestOfWays, type UseOfWay, windsOfWays, withoutLeast } from './winds-of-ways.ts';

/** What of a held tower is compared with its rating. */
export const HELD_COMPARED = ['leg-push', 'braces', 'thrust', 'guy-tension'] as const;
export type HeldComparedOf = (typeof HELD_COMPARED)[number];

/** One comparison of a held tower, beyond what is there in still air, at the allowable level. */
export interface HeldCompared {
  readonly of: HeldComparedOf;
  readonly ratio: number;
  readonly demand: number;
  readonly capacity: number;
  readonly height: number;
  /** Of a push in a leg, at strength level: how it comes about. */
  readonly inLeg?: InLeg;
}

/** A held tower against its ratings. */
export type HeldProof = { readonly failure: HeldFailure } | ShownHeld;

export interface ShownHeld {
  readonly failure?: undefined;
  /** At the bad end of all that is not told. */
  readonly worst: HeldCompared;
  readonly favourable: number;
  /** Of the comparisons in which more than 1 means over. */
  readonly favourableOver: number;
  /** The winds that bring it to a ratio. */
  readonly reaching: (target: number) => HoldsTo | undefined;
  readonly inStillAir: number;
  /** What brings it to a ratio; undefined where no area at that place does. */
  readonly room: (place: RoomPlace, target: number) => MoreArea | undefined;
}

/** More effective area at a place [m²], and the ratio's growth by a square metre there. */
interface MoreArea {
  readonly area: number;
  readonly perSquareMetre: number;
}

/** What a claim shows of a held tower in one reading and scenario, by quantity: least and most. */
interface Shown {
  readonly claim: Claim;
  readonly least: readonly number[];
  readonly most: readonly number[];
}

/** One way in which a held tower may be, and what is shown of it there. */
interface Way {
  readonly reading: HeldReading;
  readonly scenario: number;
  readonly shown: readonly Shown[];
}

/**
 * A tower between its foot and its highest support against what its ratings show, both through the same model.
 *
 * u = what the plan's wind adds/what the rated wind adds: push in a leg, force in braces, push on the foot, tension of guys
 *
 * @returns undefined where the model or every rating is missing; ratios above 0 [-]
 * @source derived
 */
export function heldProofOf(model: TowerModel): HeldProof | undefined {
  return once(model, proven);
}

function proven(model: TowerModel): HeldProof | undefined {
  const held = heldModelOf(model);
  const claims = model.claims.filter(({ cases }) => cases.every(({ asRated }) => !asRated));
  if (!held || claims.length === 0 || tapersBelow(model, held.supports)) return undefined;
  if (held.failure !== undefined) return { failure: held.failure };
  const ways = held.readings.flatMap((reading) =>
    model.scenarios.map(
      (_, scenario): Way => ({ reading, scenario, shown: shownIn(model, held, reading, scenario, claims) }),
    ),
  );
  const { speed } = model.site;
  const found = ways.map((way) => ({ way, ratio: ratioOf(model, held, way, model.scenarios, speed, 'unfavourable') }));
  const failed = found.find(({ ratio }) => typeof ratio === 'string')?.ratio as HeldFailure | undefined;
  const settled = found.flatMap(({ way, ratio }) => (typeof ratio === 'string' ? [] : [{ way, ratio }]));
  const [first, ...others] = settled;
  if (failed !== undefined || !first) return { failure: failed ?? 'not-converged' };
  const worst = others.reduce((most, each) => (each.ratio.worst.ratio > most.ratio.worst.ratio ? each : most), first);
  const beyond = ratioOf(model, held, worst.way, model.scenarios, speed * SPEED_BEYOND, 'unfavourable');
  if (typeof beyond === 'string') return { failure: beyond };
  const readTwoWays = model.scenarios.some(({ appurtenances }) => appurtenances.readTwoWays);
  const best = readTwoWays
    ? settled.flatMap(({ way }) => {
        const ratio = ratioOf(model, held, way, model.scenarios, speed, 'favourable');
        return typeof ratio === 'string' ? [] : [{ way, ratio }];
      })
    : settled;
  const least = (of: 'best' | 'bestOver') =>
    leastOver(
      model,
      best.map(({ way, ratio }) => ({ way, value: ratio[of] })),
    );
  const useOf: UseOfWay<Way> = (way, winds, at) => {
    const ratio = ratioOf(model, held, way, winds, at, 'unfavourable');
    return typeof ratio === 'string' ? Number.POSITIVE_INFINITY : ratio.worst.ratio;
  };
  const stillAir = ratioOf(model, held, worst.way, withoutLeast(model.scenarios), 0, 'unfavourable');
  return {
    worst: worst.ratio.worst,
    favourable: Math.min(worst.ratio.worst.ratio, least('best')),
    favourableOver: least('bestOver'),
    reaching: (target) =>
      windsOfWays(
        model,
        settled.map(({ way }) => way),
        worst.way,
        useOf,
        target,
      ),
    room: (place, target) =>
      areaReaching(
        settled.map(({ way }) => way),
        worst.way,
        (way, area) => {
          const ratio = ratioOf(model, held, way, model.scenarios, speed, 'unfavourable', { place, area });
          return typeof ratio === 'string' ? Number.POSITIVE_INFINITY : ratio.worst.ratio;
        },
        target,
      ),
    inStillAir: typeof stillAir === 'string' ? Number.POSITIVE_INFINITY : stillAir.worst.ratio,
  };
}

/** Of a section's width: legs nearer together than this at the foot run to a point, which holds no moment [-]. */
const POINT = 0.25;

/**
 * A lattice that narrows or widens below its highest support, but for a foot that pivots on its lower end: its legs take part of
 * the force across, so that its braces are not compared by that force alone.
 */
function tapersBelow({ input }: TowerModel, { guys, brackets }: Supports): boolean {
  const { sections, foot, baseHeld } = input.station.tower;
  const highest = Math.max(...guys.map(({ height }) => height), ...brackets);
  return sections.some(({ shape, low }) => {
    if (shape?.kind !== 'lattice' || low >= highest) return false;
    const [below, above] = shape.width;
    const pivots = low === foot && below < above && (baseHeld === false || below <= POINT * above);
    return below !== above && !pivots;
  });
}

/** Over directions the larger counts, over what nobody tells the smaller. */
function leastOver(model: TowerModel, found: readonly { readonly way: Way; readonly value: number }[]): number {
  const by = new Map<string, number>();
  for (const { way, value } of found) {
    const key = `${found.findIndex(({ way: other }) => other.reading === way.reading)} ${nth(model.scenarios, way.scenario).open}`;
    by.set(key, Math.max(value, by.get(key) ?? 0));
  }
  return Math.min(...by.values());
}

/** Quantities of one case, in one order. */
function quantitiesOf({ legs, braces, thrust, guys }: HeldAsked): readonly number[] {
  return [...legs, ...braces, thrust, ...guys];
}

function shownIn(
  model: TowerModel,
  held: HeldModel,
  reading: HeldReading,
  scenario: number,
  claims: readonly Claim[],
): readonly Shown[] {
  return claims.map((claim): Shown => {
    const ends = claim.cases.map((each) => {
      const factor = areaFactorOf(nth(each.rated, scenario), {});
      // What is rated for an area is rated for less of it too, and under less a lower guy may pull more.
      const at = (areaFactor: number) => {
        const [all, none] = [areaFactor, 0].map((factor) => {
          const asked = askedOfHeld(held, reading, ratedBlowing(model, each, scenario, factor), () => 0);
          return typeof asked === 'string' ? undefined : quantitiesOf(asked);
        });
        return all?.map((most, index) => Math.max(most, none?.[index] ?? 0));
      };
      const low = at(factor.low);
      return { low, high: factor.high === factor.low ? low : at(factor.high) };
    });
    const size = 2 * held.zones + 1 + held.supports.guys.length;
    const of = (end: 'low' | 'high', pick: (...values: number[]) => number) =>
      Array.from({ length: size }, (_, index) => pick(...ends.map((each) => each[end]?.[index] ?? 0)));
    return { claim, least: of('low', Math.min), most: of('high', Math.max) };
  });
}

interface Ratios {
  readonly worst: HeldCompared;
  readonly best: number;
  readonly bestOver: number;
}

/** Less than this is a difference of rounding [N]. */
const NOTHING = 1e-3;

function ratioOf(
  model: TowerModel,
  held: HeldModel,
  { reading, scenario, shown }: Way,
  winds: readonly TowerInWind[],
  speed: number,
  bound: Bound,
  more?: { readonly place: RoomPlace; readonly area: number },
): Ratios | HeldFailure {
  const upTo = model.comparedFromHeight;
  const planned = planBlowing(model, nth(winds, scenario), speed, bound, TO_STRENGTH, TO_STRENGTH);
  const blowing = more ? withMore(model, planned, nth(winds, scenario).appurtenances.wind, more) : planned;
  const torsion = torsionIn(model, nth(winds, scenario), speed, bound);
  const asked = askedOfHeld(held, reading, blowing, torsion, upTo);
  if (typeof asked === 'string') return asked;
  const { zones, supports } = held;
  const { foot } = model.input.station.tower;
  let worst: HeldCompared = { of: 'leg-push', ratio: 0, demand: 0, capacity: 0, height: foot };
  let best = 0;
  quantitiesOf(asked).forEach((demand, index) => {
    if (demand < NOTHING) return;
    const capacityAt = (end: 'least' | 'most') => Math.max(...shown.map((each) => nth(each[end], index)));
    const [least, most] = [capacityAt('least'), capacityAt('most')];
    const [ratio, atBest] = [least, most].map((capacity) =>
      capacity > 0 ? demand / capacity : Number.POSITIVE_INFINITY,
    ) as [number, number];
    const { of, height } = placeOf(index);
    best = Math.max(best, atBest);
    if (ratio > worst.ratio)
      worst = { of, ratio, height, demand: demand / TO_STRENGTH, capacity: least / TO_STRENGTH, ...inLegAt(index) };
  });
  return { worst, best, bestOver: beyondAnyLeg(asked) };

  /**
   * More wind than is shown of any leg of the tower: beyond what the manufacturer stands behind, be its steel alike or not, and
   * whatever weight he thought of.
   */
  function beyondAnyLeg({ legs }: HeldAsked): number {
    const most = Math.max(...shown.flatMap((each) => each.most.slice(0, zones)));
    const demand = Math.max(...legs);
    if (demand < NOTHING) return 0;
    if (demand <= most) return demand / most;
    const weightless = { ...blowing, loads: blowing.loads.map((load) => ({ ...load, weight: 0 })) };
    const byWind = askedOfHeld(held, reading, weightless, torsion, upTo);
    return typeof byWind === 'string' ? Number.POSITIVE_INFINITY : Math.max(...byWind.legs) / most;
  }

  function inLegAt(index: number): Pick<HeldCompared, 'inLeg'> {
    const inLeg = index < zones ? (asked as HeldAsked).inLegs[index] : undefined;
    return inLeg ? { inLeg } : {};
  }

  function placeOf(index: number): { of: HeldComparedOf; height: number } {
    const { legsAt, bracesAt } = asked as HeldAsked;
    if (index < zones) return { of: 'leg-push', height: legsAt[index] as number };
    if (index < 2 * zones) return { of: 'braces', height: bracesAt[index - zones] as number };
    if (index === 2 * zones) return { of: 'thrust', height: foot };
    return { of: 'guy-tension', height: nth(supports.guys, index - 2 * zones - 1).height };
  }
}

/** With more effective area at a place, in the design wind. */
function withMore(
  model: TowerModel,
  { loads, onGuys }: Blowing,
  wind: Wind,
  { place, area }: { readonly place: RoomPlace; readonly area: number },
): Blowing {
  const force = TO_STRENGTH * forcePerArea(wind, place.height) * area;
  return { onGuys, loads: [...loads, ...handedOver(model, place.on, place.height, force)] };
}

/** So much nobody adds [m²]. */
const FAR_TOO_MUCH = 100;

/**
 * Area that brings the way that rules there to a ratio: with it no other way reaches more. Not above 0 where it has more already,
 * undefined where none does: at the top more area may slacken the guys below.
 */
function areaReaching(
  ways: readonly Way[],
  ruling: Way,
  use: (way: Way, area: number) => number,
  target: number,
): MoreArea | undefined {
  const here = use(ruling, 0);
  const perSquareMetre = use(ruling, 1) - here;
  if (here >= target) return { area: perSquareMetre > 0 ? (target - here) / perSquareMetre : 0, perSquareMetre };
  const byRoot = (way: Way, root: number) => use(way, root ** 2);
  const from = (way: Way) => lowestOfWays(ways, way, byRoot, 1, target);
  const other = () => ways.find((way) => use(way, FAR_TOO_MUCH) >= target);
  const way = use(ruling, FAR_TOO_MUCH) >= target ? ruling : other();
  const root = way && from(way);
  return root === undefined ? undefined : { area: root ** 2, perSquareMetre };
}

/** Torsion of what hangs off the axis in a wind, by height; between two levels that of the lower one. */
function torsionIn(model: TowerModel, { appurtenances, least }: TowerInWind, speed: number, bound: Bound) {
  const { levels, hold } = model;
  const { torsion } = profileOf(appurtenances, sliceForces(appurtenances, speed, bound, least), levels, hold);
  return (z: number) => {
    const found = levels.findIndex((level) => level.z <= z + 1e-6);
    return TO_STRENGTH * nth(torsion, found < 0 ? levels.length - 1 : found);
  };
}

/**
 * The working of the comparison that rules a tower between its supports.
 *
 * u = F_d/F_r; in a leg F = N/n + M/(k·b), less what is there in still air
 *
 * @source derived
 */
export function explainHeldProof(model: TowerModel, trace: Trace): void {
  const found = heldProofOf(model);
  if (!found || found.failure !== undefined || !(found.worst.capacity > 0)) return;
  const { inLeg, demand, capacity } = found.worst;
  if (inLeg) {
    const { side, thrust, moment } = inLeg;
    evaluate(trace, pushInLeg, [side.byThrust, thrust, moment, side.arm, side.still]);
  }
  evaluate(trace, heldUse, [demand, capacity]);
}
