import { GRAVITY, nth } from '../../foundation/index.ts';
import type { Bound, Wind } from '../../methods/index.ts';
import { appurtenanceMasses, type HeldLoad, type SlicesInWind, sliceForces } from '../../structure/index.ts';
import type { ClaimCase, TowerInWind, TowerModel } from '../model.ts';

/** A force along the wind [N], with its weight [N], and how far above its height it acts [m]. */
export interface Blown {
  readonly z: number;
  readonly force: number;
  readonly weight: number;
  readonly above: number;
}

/** Forces on a tower in one wind, and the pressure of that wind on guys by the height of their middle [Pa]. */
export interface Blowing {
  readonly loads: readonly Blown[];
  readonly onGuys: (height: number) => number;
}

/**
 * A force by the heading that the wind blows to.
 *
 * @param blown the force along the wind [N]
 * @param windTo clockwise from north [rad]
 * @returns its parts to the east and to the north [N]
 */
export function blownTo(blown: Blown, windTo: number): HeldLoad {
  const { z, force, weight, above } = blown;
  return { low: z, high: z, east: force * Math.sin(windTo), north: force * Math.cos(windTo), weight, above };
}

/** A tower whose supports find no balance in a quarter more of its wind has no margin worth a figure [-]. @source common-practice */
export const SPEED_BEYOND = Math.sqrt(1.25);

/** At the level of the loads a strength is compared with, from the allowable one. @source derived */
export const TO_STRENGTH = 1 / 0.6;

/**
 * All that pushes on a tower that is held but what its guys catch themselves: what hangs on it broadside, pulls of wires, weight.
 *
 * @param inWind what hangs on it and the tower itself in a wind
 * @param speed in the basis of that wind [m/s]
 * @param bound which end of what is open of stated areas
 * @param factor from the allowable level to the one asked for, of the wind [-]
 * @param steady the same of what is there without wind [-]
 * @returns forces [N] and pressure on guys [Pa]
 * @source derived
 */
export function planBlowing(
  model: TowerModel,
  inWind: TowerInWind,
  speed: number,
  bound: Bound,
  factor: number,
  steady: number,
): Blowing {
  const { appurtenances, bareTower, least } = inWind;
  return {
    loads: atOnce([
      ...pushesOf(model, appurtenances, speed, bound, least, factor),
      ...(bareTower ? pushesOf(model, bareTower, speed, 'favourable', least, factor) : []),
      ...steadyOf(model, steady),
    ]),
    onGuys: pressureOnGuys(appurtenances.wind, speed, least, factor),
  };
}

/**
 * What a rating stood for: its areas or force in its wind, and that wind on the tower, on its guys and on the rated lines.
 *
 * @param scenario its number [-]
 * @param areaFactor from the stated to the effective area [-]
 * @returns forces [N] and pressure on guys [Pa], at strength level
 * @source derived
 */
export function ratedBlowing(model: TowerModel, claimCase: ClaimCase, scenario: number, areaFactor: number): Blowing {
  const { inWind } = nth(claimCase.own, scenario);
  const { forces, wind } = nth(claimCase.rated, scenario);
  const { least } = nth(model.scenarios, scenario);
  const { top } = model.input.station.tower;
  const onOwn = inWind ? pushesOf(model, inWind, inWind.wind.conditions.speed, 'favourable', least, TO_STRENGTH) : [];
  const rated = forces.map(({ height, area, perArea }): Blown => {
    const force = perArea * area * areaFactor * TO_STRENGTH;
    return { z: Math.min(height, top), above: Math.max(0, height - top), force, weight: 0 };
  });
  return {
    // The weight that the rating covers came down at the top.
    loads: atOnce([...onOwn, ...rated, { z: top, above: 0, force: 0, weight: model.coveredWeight * GRAVITY }]),
    onGuys: wind ? pressureOnGuys(wind, wind.conditions.speed, false, TO_STRENGTH) : () => 0,
  };
}

/** Pressure of a wind on a guy [Pa]. */
function pressureOnGuys(wind: Wind, speed: number, least: boolean, factor: number): (height: number) => number {
  const grows = (speed / wind.conditions.speed) ** 2;
  return (height) =>
    factor *
    wind.toAllowableFactor *
    wind.forceDirectionFactor *
    Math.max(wind.pressure(height) * wind.gustEffect(undefined) * grows, least ? wind.leastPressure : 0);
}

/** Each slice at its height; on the mast as its foot and its bearing hand it over. */
function pushesOf(
  model: TowerModel,
  cut: SlicesInWind,
  speed: number,
  bound: Bound,
  least: boolean,
  factor: number,
): Blown[] {
  const { front, side } = sliceForces(cut, speed, bound, least);
  return cut.slices.flatMap(({ z, item }, index) => {
    const { kind, carriedBy } = nth(cut.items, item);
    // The solver blows on guys where they stand.
    if (kind === 'guys') return [];
    return handedOver(model, carriedBy, z, factor * Math.max(nth(front, index), nth(side, index)));
  });
}

/**
 * A force at a height, as the tower gets it: on the mast from its foot and its bearing.
 *
 * @param on the mast or the tower itself
 * @param z height above ground [m]
 * @param force along the wind [N]
 * @returns forces on the tower [N]
 * @source derived
 */
export function handedOver(model: TowerModel, on: 'tower' | 'mast', z: number, force: number): Blown[] {
  const { hold, input } = model;
  const { top, foot } = input.station.tower;
  const at = (height: number, share: number): Blown => {
    const place = Math.max(foot, Math.min(height, top));
    return { z: place, above: height - place, force: share, weight: 0 };
  };
  if (on !== 'mast' || hold.bearing === undefined) return [at(z, force)];
  const atBearing = (force * (z - hold.foot)) / (hold.bearing - hold.foot);
  return [at(hold.bearing, atBearing), at(hold.foot, force - atBearing)];
}

/** Weights, pulls of wires in still air, and weight off the axis as a moment. */
function steadyOf(model: TowerModel, factor: number): Blown[] {
  const { station } = model.input;
  const { top, foot } = station.tower;
  const weights = appurtenanceMasses(station).map(({ low, high, carriedAt, mass }): Blown => {
    // What is spread comes down no lower than its upper end.
    return { z: Math.min(carriedAt ?? Math.max(low, high), top), weight: mass * GRAVITY, force: 0, above: 0 };
  });
  const others = station.loads.flatMap(({ shape, count, low, offset, weight }): Blown[] => {
    const z = Math.max(foot, Math.min(low, top));
    const turning = factor * count * (weight ?? 0) * GRAVITY * offset;
    return [
      ...(shape.kind === 'wire' ? [{ z, above: low - z, weight: 0, force: factor * count * (shape.pull ?? 0) }] : []),
      // A couple alone: a force far enough above, and the same back at its height.
      ...(turning > 0
        ? [
            { z, above: 1, weight: 0, force: turning },
            { z, above: 0, weight: 0, force: -turning },
          ]
        : []),
    ];
  });
  return [...weights, ...others];
}

/** What acts at one height, as one: the arms by their moment. */
function atOnce(loads: readonly Blown[]): Blown[] {
  const by = new Map<string, { z: number; force: number; weight: number; moment: number }>();
  for (const { z, force, weight, above } of loads) {
    const key = z.toFixed(4);
    const there = by.get(key) ?? { z, force: 0, weight: 0, moment: 0 };
    by.set(key, {
      z,
      force: there.force + force,
      weight: there.weight + weight,
      moment: there.moment + force * above,
    });
  }
  return [...by.values()].flatMap(({ z, force, weight, moment }): Blown[] => {
    if (moment === 0) return [{ z, force, weight, above: 0 }];
    if (Math.abs(force) * 1e3 > Math.abs(moment)) return [{ z, force, weight, above: moment / force }];
    return [
      { z, force: force - moment, weight, above: 0 },
      { z, force: moment, weight: 0, above: 1 },
    ];
  });
}
