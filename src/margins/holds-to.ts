import { lowestReaching, nth } from '../foundation/index.ts';
import type { Wind } from '../methods/index.ts';
import { slicesInWind } from '../structure/index.ts';
import { eachCapacity } from './capacity.ts';
import { actualSpeedHoldsTo, designHoldsTo } from './formulas.ts';
import { type HoldsTo, inSiteBasis } from './holds-to-ratio.ts';
import type { Demand, Scenario, TowerInWind, TowerModel } from './model.ts';
import { demandOf, once, siteWind } from './tower-model.ts';
import { belongs, type ComparisonChoice, ratioAtWorst } from './tower-ratio.ts';

/**
 * The winds at which a check reaches ratio 1 with every open question at its unfavourable end.
 *
 * design: as the method says; gust: the actual gust whose own force (level 1, Kd = 1, I = 1) equals the same capacity
 *
 * @param demand of the design wind at the bad end, without least pressures
 * @param target the use that is looked for [-]
 * @returns both speeds [m/s]; undefined where nothing is proven, or the dead load alone is more than is proven
 * @source derived
 */
export function holdsTo(model: TowerModel, check: ComparisonChoice, demand: Demand, target = 1): HoldsTo | undefined {
  const [{ appurtenances, windStructure }] = model.scenarios;
  const { wind } = appurtenances;
  const steady = steadySpeed(model, check, demand, wind.conditions.speed, target);
  if (steady === undefined || steady <= 0) return undefined;
  const actualWind = siteWind(model.input, windStructure, true, model.site);
  const actual = actualSpeedHoldsTo.of(steady, wind.toAllowableFactor, wind.directionFactor, wind.importance);
  if (staysSteady(model, wind, actualWind, steady, actual)) return inSiteBasis(model.input, steady, actual, true);
  const design = searched(model, check, model.scenarios, steady, steady, target);
  const gust = searched(model, check, inActualWind(model), actual, steady, target);
  return design === undefined || gust === undefined ? undefined : inSiteBasis(model.input, design, gust, false);
}

/** Speed at ratio 1 if no coefficient changed on the way: the least over checks and scenarios, the most over claims. */
function steadySpeed(
  model: TowerModel,
  check: ComparisonChoice,
  demand: Demand,
  speed: number,
  target: number,
): number | undefined {
  let least = Number.POSITIVE_INFINITY;
  model.comparisons.forEach((comparison, index) => {
    if (!belongs(comparison, check)) return;
    const dead = nth(demand.dead, index);
    demand.scenarios.forEach((asked, scenario) => {
      const wind = nth(asked.wind, index);
      if (wind <= 0) return;
      let most = 0;
      eachCapacity(model, model.proven, index, scenario, 'unfavourable', (proven, windRatio) => {
        const capacity = target * proven;
        const byLoads = capacity > dead ? designHoldsTo.of(speed, dead / capacity, wind / capacity) : 0;
        most = Math.max(most, windRatio > 0 ? Math.min(byLoads, speed * Math.sqrt(target / windRatio)) : byLoads);
      });
      least = Math.min(least, most);
    });
  });
  return Number.isFinite(least) ? least : undefined;
}

function staysSteady(model: TowerModel, wind: Wind, actualWind: Wind, design: number, actual: number): boolean {
  const limit = steadyUpTo(model.scenarios);
  if (limit === Number.POSITIVE_INFINITY) return true;
  const top = model.input.station.tower.top;
  const ratio = actualWind.flowPerSpeed(top) / wind.flowPerSpeed(top);
  return Math.max(design, actual * ratio, wind.conditions.speed) <= limit;
}

/**
 * Speed up to which no coefficient of a tower and of what hangs on it changes.
 *
 * min over all its slices
 *
 * @returns the speed [m/s]
 */
export function steadyUpTo(scenarios: readonly TowerInWind[]): number {
  return scenarios.reduce(
    (least, { appurtenances, bareTower }) =>
      Math.min(least, appurtenances.steadyUpTo, bareTower?.steadyUpTo ?? Number.POSITIVE_INFINITY),
    Number.POSITIVE_INFINITY,
  );
}

/** What hangs on the tower, and the tower itself, in a wind that has come. */
export function inActualWind(model: TowerModel): readonly [TowerInWind, ...TowerInWind[]] {
  return once(model, towerInActualWind);
}

function towerInActualWind(model: TowerModel): readonly [TowerInWind, ...TowerInWind[]] {
  const [first, ...others] = model.scenarios;
  const blown = ({ windStructure, direction, bareTower, own, least }: Scenario): TowerInWind => {
    const wind = siteWind(model.input, windStructure, true, model.site);
    const appurtenances = slicesInWind(wind, first.appurtenances, 'demand', 'worse');
    return bareTower
      ? { appurtenances, bareTower: slicesInWind(wind, bareTower, own, direction), least }
      : { appurtenances, least };
  };
  return [blown(first), ...others.map(blown)];
}

/** Force may drop where a coefficient does, so the lowest speed is looked for upward from well below the steady one. */
function searched(
  model: TowerModel,
  check: ComparisonChoice,
  scenarios: readonly TowerInWind[],
  near: number,
  steady: number,
  target: number,
): number | undefined {
  const atNear = (steady / model.scenarios[0].appurtenances.wind.conditions.speed) ** 2;
  const reaches = (speed: number) =>
    ratioAtWorst(
      model,
      check,
      demandOf(model, scenarios, speed, 'unfavourable', false),
      {},
      atNear * (speed / near) ** 2,
    ) >= target;
  return lowestReaching(reaches, 0.4 * near, 2.6 * near, 88) ?? lowestReaching(reaches, 2.6 * near, 26 * near, 200);
}
