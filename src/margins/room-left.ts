import type { Level } from '../structure/index.ts';
import type { Check } from './check-list.ts';
import { roomByMoment, roomByShear } from './formulas.ts';
import { type FootingContext, roomOfFooting } from './links/foundation-link.ts';
import type { Link } from './links/link.ts';
import { roomOfHolds } from './links/mast-holds.ts';
import { mastRoom } from './links/mast-link.ts';
import { forcePerArea, type RoomByLink } from './room-by-link.ts';
import type { Demand, TowerModel } from './tower-model.ts';

export interface RoomLeft extends RoomByLink {
  /** Ids of the links that were looked at. */
  readonly looked: readonly string[];
  /** Ids of those that more area would load and that are not shown. */
  readonly without: readonly string[];
}

/** What is known of a tower when its room is asked for. */
export interface RoomContext {
  readonly model: TowerModel;
  /** At the bad end. */
  readonly bad: Demand;
  readonly links: readonly Link[];
  readonly footing: FootingContext;
}

/** Kinds of links that more area loads. */
const LOADED: readonly Link['kind'][] = ['tower', 'tower-top', 'mast', 'bearing', 'rotator', 'foundation', 'ice'];

/**
 * Area that may still be added at the top of the tower, and at every height on its mast where something hangs, before any
 * link that is shown reaches the wanted margin; every open question at its bad end. The weight of what is added, its ice and
 * what it weighs in raising are not in it.
 *
 * A = min over links of ((1 − m)·capacity − demand)/(λ·q·G·arm)
 *
 * @param context the tower, its demands and its links [-]
 * @returns at the top first, then from the top down; none where tower, its top or, on the mast, the mast is not shown [-]
 * @source derived
 */
export function roomsLeft(context: RoomContext): readonly RoomLeft[] {
  const { model, links } = context;
  const shows = (kind: Link['kind']) => links.every((link) => link.kind !== kind || link.verdict !== 'not-shown');
  if (!shows('tower') || !shows('tower-top')) return [];
  const { tower, loads } = model.inquiry.station;
  const onMast = links.some(({ id, verdict }) => id === 'mast' && verdict !== 'not-shown');
  const heights = onMast ? new Set(loads.filter((load) => load.on === 'mast').map((load) => load.low)) : [];
  const places = [
    { height: tower.top, on: 'tower' } as const,
    ...[...heights].sort((a, b) => b - a).map((height) => ({ height, on: 'mast' }) as const),
  ];
  const ofFooting = roomOfFooting(context.footing, links);
  return places.flatMap(({ height, on }) => roomAt(context, ofFooting, height, on) ?? []);
}

function roomAt(
  { model, bad, links }: RoomContext,
  ofFooting: (height: number) => readonly RoomByLink[],
  height: number,
  on: RoomLeft['on'],
): RoomLeft | undefined {
  const ofTower = roomOfTower(model, bad, height, on);
  if (!ofTower) return undefined;
  const rooms = [ofTower, ...ofFooting(height)];
  if (on === 'mast') rooms.push(...mastRoom(model, height), ...roomOfHolds(model, links, height));
  const least = rooms.reduce((smallest, each) => (each.area < smallest.area ? each : smallest));
  const loaded = links.filter(({ kind }) => LOADED.includes(kind) && (on === 'mast' || !ON_MAST.includes(kind)));
  const looked = new Set(['tower', 'tower-top', 'foundation', ...rooms.map(({ link }) => link)]);
  const isLooked = (link: Link) => looked.has(link.id) && (link.kind !== 'foundation' || link.verdict !== 'not-shown');
  return {
    ...least,
    height,
    on,
    looked: loaded.filter(isLooked).map(({ id }) => id),
    without: loaded.filter((link) => !isLooked(link) && weighs(link)).map(({ id }) => id),
  };
}

/** Kinds of links that only what hangs on the mast loads. */
const ON_MAST: readonly Link['kind'][] = ['mast', 'bearing', 'rotator'];

/** No area loads these, or none that is alike from all sides. */
const UNLOADED: readonly Link['because'][] = ['balanced', 'no-bearing', 'held-by-bearing'];

/** A link against a weight or a twist asks nothing of an area that is alike from all sides. */
const weighs = ({ result, because }: Link) =>
  !UNLOADED.includes(because) && (result === undefined || !['weight', 'torque'].includes(result.of));

/** What the tower or its top leaves at a height: A = ((1 − m)·capacity − demand)/(λ·q·G·arm). */
function roomOfTower(model: TowerModel, demand: Demand, height: number, on: RoomLeft['on']): RoomByLink | undefined {
  if (!model.ownKnown) return undefined;
  const { proven } = model;
  const wanted = model.inquiry.wanted.margin;
  const perAreas = model.hungWind.map(({ wind }) => forcePerArea(wind, height));
  let least: RoomByLink | undefined;
  model.checks.forEach((check, index) => {
    const arm = reachOf(model, check, height, on);
    if (arm <= 0) return;
    perAreas.forEach((perArea, scenario) => {
      const asked = ((demand.wind[scenario] as number[])[index] as number) + (demand.dead[index] as number);
      let capacity = 0;
      for (const each of proven) capacity = Math.max(capacity, (each.low[scenario] as number[])[index] as number);
      if (check.of === 'moment') {
        for (const claim of model.momentClaims)
          if (claim.level === check.level) capacity = Math.max(capacity, claim.moment);
      }
      const formula = check.of === 'moment' ? roomByMoment : roomByShear;
      const area = formula.of(wanted, capacity, asked, perArea, arm);
      if (least === undefined || area < least.area)
        least = { height, on, link: check.link, area, of: check.of, perArea, capacity, demand: asked, arm };
    });
  });
  return least;
}

/** Arm or share with which a force at a height reaches a check; 0 where it does not. */
function reachOf(model: TowerModel, check: Check, height: number, on: 'tower' | 'mast'): number {
  const { z, zone } = model.levels[check.level] as Level;
  let share = 1;
  let arm = height - z;
  if (on === 'tower') {
    if (z > height) return 0;
  } else if (zone === 'clear') return 0;
  else if (zone === 'couple' && model.hold.bearing !== undefined) {
    share = (height - model.hold.foot) / (model.hold.bearing - model.hold.foot);
    arm = share * (model.hold.bearing - z);
  }
  if (check.of === 'moment') return arm;
  // Above the point where the legs meet it pushes the other way: no less.
  return check.apex === Number.POSITIVE_INFINITY ? share : Math.abs(share - arm / (check.apex - z));
}
