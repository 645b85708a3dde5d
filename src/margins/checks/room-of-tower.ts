import { nth } from '../../foundation/index.ts';
import { mostShown } from '../capacity.ts';
import type { Comparison } from '../comparisons.ts';
import { roomByMoment, roomByShear } from '../formulas.ts';
import type { TowerModel } from '../model.ts';
import { forcePerArea, type RoomByCheck, type RoomPlace } from '../room-by-check.ts';
import type { Check } from './check.ts';
import type { CheckContext } from './check-kind.ts';

/**
 * What the tower or its top leaves at a height.
 *
 * A = ((1 − m)·capacity − demand)/(λ·q·G·arm)
 *
 * @returns the area; `unlimited` where it ends nowhere there, undefined where the wind on the tower itself is not known
 * @source derived
 */
export function roomOfTower(
  context: CheckContext,
  check: Check,
  place: RoomPlace,
): RoomByCheck | 'unlimited' | undefined {
  const { model, unfavourable: demand } = context;
  const { kind } = check;
  if (!model.bareTowerKnown) return undefined;
  const wanted = model.input.wanted.margin;
  const perAreas = model.scenarios.map(({ appurtenances }) => forcePerArea(appurtenances.wind, place.height));
  let least: RoomByCheck | undefined;
  model.comparisons.forEach((comparison, index) => {
    const arm = reachOf(model, comparison, place);
    if (comparison.check !== kind || arm <= 0) return;
    const { of } = comparison;
    perAreas.forEach((perArea, scenario) => {
      const asked = nth(nth(demand.scenarios, scenario).wind, index) + nth(demand.dead, index);
      const capacity = mostShown(model, index, scenario);
      const area = (of === 'moment' ? roomByMoment : roomByShear).of(wanted, capacity, asked, perArea, arm);
      if (!least || area < least.area)
        least = { ...place, check: kind, area, of, perArea, capacity, demand: asked, arm };
    });
  });
  return least ?? 'unlimited';
}

/**
 * Arm or share with which a force at a height reaches a comparison; 0 where it does not.
 *
 * @param place where more would hang, its height in [m]
 * @returns the arm [m], or the share [-]
 * @source derived
 */
export function reachOf(model: TowerModel, comparison: Comparison, place: RoomPlace): number {
  const { height, on } = place;
  const { z, zone } = nth(model.levels, comparison.level);
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
