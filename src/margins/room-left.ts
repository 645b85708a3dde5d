import type { Check } from './checks/check.ts';
import type { CheckContext, RoomRule } from './checks/check-kind.ts';
import { CHECK_KIND } from './checks/check-kinds.ts';
import type { RoomByCheck, RoomPlace } from './room-by-check.ts';

export interface RoomLeft extends RoomByCheck {
  /** Ids of the checks that were looked at. */
  readonly looked: readonly string[];
  /** Ids of open checks that more area would load. */
  readonly without: readonly string[];
  /** Ids of decided checks that more area would load, and by how much is not computed. */
  readonly notCovered: readonly string[];
}

/**
 * Area that may still be added at the top of the tower, and at every height on its mast where something hangs, before any
 * check that is shown reaches the wanted margin; every open question at its unfavourable end. The weight of what is added, its ice and
 * what it weighs in raising are not in it.
 *
 * A = min over checks of ((1 − m)·capacity − demand)/(λ·q·G·arm)
 *
 * @returns at the top first, then from the top down; none where tower, its top or, on the mast, the mast is not shown
 * @source derived
 */
export function roomsLeft(context: CheckContext, checks: readonly Check[]): readonly RoomLeft[] {
  const shows = (what: 'all' | 'mast') =>
    checks
      .filter(({ kind, withIce }) => CHECK_KIND[kind].room?.neededFor === what && !withIce)
      .map(({ verdict }) => verdict !== 'open');
  if (shows('all').includes(false)) return [];
  const { tower, loads } = context.model.input.station;
  const heights = shows('mast').includes(true)
    ? loads.filter((load) => load.on === 'mast').map((load) => load.low)
    : [];
  const places: readonly RoomPlace[] = [
    { height: tower.top, on: 'tower' },
    ...[...new Set(heights)].sort((a, b) => b - a).map((height) => ({ height, on: 'mast' }) as const),
  ];
  return places.flatMap((place) => roomAt(context, checks, place) ?? []);
}

function roomAt(context: CheckContext, checks: readonly Check[], place: RoomPlace): RoomLeft | undefined {
  const looked: string[] = [];
  const without: string[] = [];
  const notCovered: string[] = [];
  const rooms: RoomByCheck[] = [];
  let ofTower = false;
  for (const check of checks) {
    const room: RoomRule | undefined = CHECK_KIND[check.kind].room;
    if (!room || (room.onMastOnly && place.on !== 'mast')) continue;
    const left = room.left(context, check, place);
    if (left !== undefined) looked.push(check.id);
    else if (weighs(check)) (check.verdict === 'open' ? without : notCovered).push(check.id);
    if (left === undefined || left === 'unlimited') continue;
    rooms.push(left);
    ofTower ||= room.neededFor === 'all';
  }
  if (!ofTower) return undefined;
  const least = rooms.reduce((smallest, each) => (each.area < smallest.area ? each : smallest));
  return { ...least, ...place, looked, without, notCovered };
}

/** No area loads these, or none that is alike from all sides. */
const UNLOADED: readonly Check['because'][] = ['balanced', 'no-bearing', 'held-by-bearing'];

/** A check against a weight or a twist asks nothing of an area that is alike from all sides. */
const weighs = ({ result, because }: Check) =>
  !UNLOADED.includes(because) && (result === undefined || !['weight', 'torque'].includes(result.of));
