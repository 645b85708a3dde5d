import type { Level } from '../structure/index.ts';
import type { Check } from './checks/check.ts';
import { type FootingContext, roomOfFooting } from './checks/foundation-check.ts';
import { mastRoom } from './checks/mast-check.ts';
import { roomOfHolds } from './checks/mast-holds.ts';
import type { Comparison } from './comparisons.ts';
import { roomByMoment, roomByShear } from './formulas.ts';
import { forcePerArea, type RoomByCheck } from './room-by-check.ts';
import type { Demand, TowerModel } from './tower-model.ts';

export interface RoomLeft extends RoomByCheck {
  /** Ids of the checks that were looked at. */
  readonly looked: readonly string[];
  /** Ids of those that more area would load and that are not shown. */
  readonly without: readonly string[];
}

/** What is known of a tower when its room is asked for. */
export interface RoomContext {
  readonly model: TowerModel;
  /** At the unfavourable end. */
  readonly unfavourable: Demand;
  readonly checks: readonly Check[];
  readonly footing: FootingContext;
}

/** Kinds of checks that more area loads. */
const LOADED: readonly Check['kind'][] = ['tower', 'tower-top', 'mast', 'bearing', 'rotator', 'foundation', 'ice'];

/**
 * Area that may still be added at the top of the tower, and at every height on its mast where something hangs, before any
 * check that is shown reaches the wanted margin; every open question at its unfavourable end. The weight of what is added, its ice and
 * what it weighs in raising are not in it.
 *
 * A = min over checks of ((1 − m)·capacity − demand)/(λ·q·G·arm)
 *
 * @param context the tower, its demands and its links [-]
 * @returns at the top first, then from the top down; none where tower, its top or, on the mast, the mast is not shown [-]
 * @source derived
 */
export function roomsLeft(context: RoomContext): readonly RoomLeft[] {
  const { model, checks } = context;
  const shows = (kind: Check['kind']) => checks.every((check) => check.kind !== kind || check.verdict !== 'open');
  if (!shows('tower') || !shows('tower-top')) return [];
  const { tower, loads } = model.input.station;
  const onMast = checks.some(({ id, verdict }) => id === 'mast' && verdict !== 'open');
  const heights = onMast ? new Set(loads.filter((load) => load.on === 'mast').map((load) => load.low)) : [];
  const places = [
    { height: tower.top, on: 'tower' } as const,
    ...[...heights].sort((a, b) => b - a).map((height) => ({ height, on: 'mast' }) as const),
  ];
  const ofFooting = roomOfFooting(context.footing, checks);
  return places.flatMap(({ height, on }) => roomAt(context, ofFooting, height, on) ?? []);
}

function roomAt(
  { model, unfavourable, checks }: RoomContext,
  ofFooting: (height: number) => readonly RoomByCheck[],
  height: number,
  on: RoomLeft['on'],
): RoomLeft | undefined {
  const ofTower = roomOfTower(model, unfavourable, height, on);
  if (!ofTower) return undefined;
  const rooms = [ofTower, ...ofFooting(height)];
  if (on === 'mast') rooms.push(...mastRoom(model, height), ...roomOfHolds(model, checks, height));
  const least = rooms.reduce((smallest, each) => (each.area < smallest.area ? each : smallest));
  const loaded = checks.filter(({ kind }) => LOADED.includes(kind) && (on === 'mast' || !ON_MAST.includes(kind)));
  const looked = new Set(['tower', 'tower-top', 'foundation', ...rooms.map(({ check }) => check)]);
  const isLooked = (check: Check) => looked.has(check.id) && (check.kind !== 'foundation' || check.verdict !== 'open');
  return {
    ...least,
    height,
    on,
    looked: loaded.filter(isLooked).map(({ id }) => id),
    without: loaded.filter((check) => !isLooked(check) && weighs(check)).map(({ id }) => id),
  };
}

/** Kinds of checks that only what hangs on the mast loads. */
const ON_MAST: readonly Check['kind'][] = ['mast', 'bearing', 'rotator'];

/** No area loads these, or none that is alike from all sides. */
const UNLOADED: readonly Check['because'][] = ['balanced', 'no-bearing', 'held-by-bearing'];

/** A check against a weight or a twist asks nothing of an area that is alike from all sides. */
const weighs = ({ result, because }: Check) =>
  !UNLOADED.includes(because) && (result === undefined || !['weight', 'torque'].includes(result.of));

/** What the tower or its top leaves at a height: A = ((1 − m)·capacity − demand)/(λ·q·G·arm). */
function roomOfTower(model: TowerModel, demand: Demand, height: number, on: RoomLeft['on']): RoomByCheck | undefined {
  if (!model.bareTowerKnown) return undefined;
  const { proven } = model;
  const wanted = model.input.wanted.margin;
  const perAreas = model.appurtenancesInWind.map(({ wind }) => forcePerArea(wind, height));
  let least: RoomByCheck | undefined;
  model.comparisons.forEach((comparison, index) => {
    const arm = reachOf(model, comparison, height, on);
    if (arm <= 0) return;
    perAreas.forEach((perArea, scenario) => {
      const asked = ((demand.wind[scenario] as number[])[index] as number) + (demand.dead[index] as number);
      let capacity = 0;
      for (const each of proven) capacity = Math.max(capacity, (each.low[scenario] as number[])[index] as number);
      if (comparison.of === 'moment') {
        for (const claim of model.momentClaims)
          if (claim.level === comparison.level) capacity = Math.max(capacity, claim.moment);
      }
      const formula = comparison.of === 'moment' ? roomByMoment : roomByShear;
      const area = formula.of(wanted, capacity, asked, perArea, arm);
      if (least === undefined || area < least.area)
        least = { height, on, check: comparison.check, area, of: comparison.of, perArea, capacity, demand: asked, arm };
    });
  });
  return least;
}

/** Arm or share with which a force at a height reaches a check; 0 where it does not. */
function reachOf(model: TowerModel, comparison: Comparison, height: number, on: 'tower' | 'mast'): number {
  const { z, zone } = model.levels[comparison.level] as Level;
  let share = 1;
  let arm = height - z;
  if (on === 'tower') {
    if (z > height) return 0;
  } else if (zone === 'clear') return 0;
  else if (zone === 'couple' && model.hold.bearing !== undefined) {
    share = (height - model.hold.foot) / (model.hold.bearing - model.hold.foot);
    arm = share * (model.hold.bearing - z);
  }
  if (comparison.of === 'moment') return arm;
  // Above the point where the legs meet it pushes the other way: no less.
  return comparison.apex === Number.POSITIVE_INFINITY ? share : Math.abs(share - arm / (comparison.apex - z));
}
