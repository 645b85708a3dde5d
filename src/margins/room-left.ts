import type { Level } from '../structure/index.ts';
import type { Check } from './check-list.ts';
import { roomByMoment, roomByShear } from './formulas.ts';
import type { Demand, TowerModel } from './tower-model.ts';

export interface RoomLeft {
  readonly height: number;
  readonly on: 'tower' | 'mast';
  /** The link that reaches the wanted margin first. */
  readonly link: 'tower' | 'tower-top' | 'mast';
  /** Effective area, alike from all sides [m²]; negative where too much hangs already. */
  readonly area: number;
  /** Absent where the mast itself decides. */
  readonly check?: Check;
  /** Force on one square metre there, allowable level [N/m²]. */
  readonly perArea: number;
  readonly capacity: number;
  readonly demand: number;
  readonly arm: number;
}

/**
 * Area that may still be added at a height on the tower before a link reaches the wanted margin, every open question at
 * its bad end.
 *
 * A = ((1 − m)·capacity − demand)/(λ·q·G·arm)
 *
 * @param model the tower; its own drag must be known [-]
 * @param demand at the bad end [-]
 * @param height where it would hang [m]
 * @param on what would carry it [-]
 * @returns the area and what decides it, or undefined where nothing is proven [-]
 * @source derived
 */
export function roomLeftAt(
  model: TowerModel,
  demand: Demand,
  height: number,
  on: 'tower' | 'mast' = 'tower',
): RoomLeft | undefined {
  if (!model.ownKnown) return undefined;
  const { proven } = model;
  const wanted = model.inquiry.wanted.margin;
  const perAreas = model.hungWind.map(
    ({ wind }) =>
      wind.level * Math.max(wind.forceDirectionFactor * wind.pressure(height) * wind.gustEffect(), wind.leastPressure),
  );
  let least: RoomLeft | undefined;
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
        least = { height, on, link: check.link, area, check, perArea, capacity, demand: asked, arm };
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
