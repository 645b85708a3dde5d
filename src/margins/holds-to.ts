import { lowestReaching } from '../foundation/index.ts';
import type { Wind } from '../methods/index.ts';
import { type SlicesInWind, slicesInWind } from '../structure/index.ts';
import type { Comparison } from './comparisons.ts';
import { actualSpeedHoldsTo, designHoldsTo } from './formulas.ts';
import { type HoldsTo, inSiteBasis } from './holds-to-ratio.ts';
import type { Demand, RatedCapacity, Scenario, TowerModel } from './model.ts';
import { demandOf, once, siteWind } from './tower-model.ts';
import { belongs, ratioAtWorst } from './tower-ratio.ts';

/** A check, or a selection of checks. */
type ComparisonChoice = Comparison['check'] | ((comparison: Comparison) => boolean);

/**
 * The winds at which a check reaches ratio 1 with every open question at its unfavourable end.
 *
 * design: as the method says; gust: the actual gust whose own force (level 1, Kd = 1, I = 1) equals the same capacity
 *
 * @param model the tower [-]
 * @param check which link, or which of its checks [-]
 * @param demand of the design wind at the bad end, without least pressures [-]
 * @param target the use that is looked for [-]
 * @returns both speeds [m/s]; undefined where nothing is proven, or the dead load alone is more than is proven
 * @source derived
 */
export function holdsTo(model: TowerModel, check: ComparisonChoice, demand: Demand, target = 1): HoldsTo | undefined {
  const wind = (model.appurtenancesInWind[0] as SlicesInWind).wind;
  const steady = steadySpeed(model, check, demand, wind.conditions.speed, target);
  if (steady === undefined || steady <= 0) return undefined;
  const actualWind = siteWind(model.input, (model.scenarios[0] as Scenario).windStructure, true, model.site);
  const actual = actualSpeedHoldsTo.of(steady, wind.level, wind.directionFactor, wind.importance);
  if (staysSteady(model, wind, actualWind, steady, actual)) return inSiteBasis(model.input, steady, actual, true);
  const design = searched(model, check, model.appurtenancesInWind, model.bareTowerInWind, steady, steady, target);
  const [appurtenances, own] = actualSlicesInWind(model);
  const gust = searched(model, check, appurtenances, own, actual, steady, target);
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
  const { proven } = model;
  let least = Number.POSITIVE_INFINITY;
  model.comparisons.forEach((comparison, index) => {
    if (!belongs(comparison, check)) return;
    model.scenarios.forEach((_, scenario) => {
      const wind = (demand.wind[scenario] as number[])[index] as number;
      if (wind > 0)
        least = Math.min(
          least,
          mostOfClaims(model, comparison, index, scenario, wind, demand.dead[index] as number, proven, speed, target),
        );
    });
  });
  return Number.isFinite(least) ? least : undefined;
}

function mostOfClaims(
  model: TowerModel,
  comparison: Comparison,
  index: number,
  scenario: number,
  wind: number,
  dead: number,
  proven: readonly RatedCapacity[],
  speed: number,
  target: number,
): number {
  let most = 0;
  const at = (proof: number) => {
    const capacity = target * proof;
    return capacity > dead ? designHoldsTo.of(speed, dead / capacity, wind / capacity) : 0;
  };
  for (const each of proven) {
    const byLoads = at((each.low[scenario] as number[])[index] as number);
    const ratio = each.windRatioLow[scenario] as number;
    most = Math.max(most, ratio > 0 ? Math.min(byLoads, speed * Math.sqrt(target / ratio)) : byLoads);
  }
  if (comparison.of === 'moment') {
    for (const claim of model.momentClaims)
      if (claim.level === comparison.level) most = Math.max(most, at(claim.moment));
  }
  return most;
}

function staysSteady(model: TowerModel, wind: Wind, actualWind: Wind, design: number, actual: number): boolean {
  const limit = Math.min(
    ...[...model.appurtenancesInWind, ...model.bareTowerInWind].map(
      (cut) => cut?.steadyUpTo ?? Number.POSITIVE_INFINITY,
    ),
  );
  if (limit === Number.POSITIVE_INFINITY) return true;
  const top = model.input.station.tower.top;
  const ratio = actualWind.flowPerSpeed(top) / wind.flowPerSpeed(top);
  return Math.max(design, actual * ratio, wind.conditions.speed) <= limit;
}

/**
 * What hangs on the tower, and the tower itself, in a wind that has come.
 *
 * @param model the tower [-]
 * @returns by scenario, what hangs and the tower [-]
 * @source derived
 */
export function actualSlicesInWind(model: TowerModel): ActualSlicesInWind {
  return once(model, inActualWind);
}

type ActualSlicesInWind = readonly [readonly SlicesInWind[], readonly (SlicesInWind | undefined)[]];

function inActualWind(model: TowerModel): ActualSlicesInWind {
  const winds = model.scenarios.map(({ windStructure }) => siteWind(model.input, windStructure, true, model.site));
  const appurtenances = winds.map((wind) =>
    slicesInWind(wind, model.appurtenancesInWind[0] as SlicesInWind, 'demand', 'face'),
  );
  const own = model.bareTowerInWind.map((cut, scenario) =>
    cut
      ? slicesInWind(winds[scenario] as Wind, cut, 'demand', (model.scenarios[scenario] as Scenario).direction)
      : undefined,
  );
  return [appurtenances, own];
}

/** Force may drop where a coefficient does, so the lowest speed is looked for upward from well below the steady one. */
function searched(
  model: TowerModel,
  check: ComparisonChoice,
  appurtenances: readonly SlicesInWind[],
  own: readonly (SlicesInWind | undefined)[],
  near: number,
  steady: number,
  target: number,
): number | undefined {
  const atNear = (steady / (model.appurtenancesInWind[0] as SlicesInWind).wind.conditions.speed) ** 2;
  const reaches = (speed: number) =>
    ratioAtWorst(
      model,
      check,
      demandOf(model, appurtenances, own, speed, 'unfavourable', false),
      {},
      atNear * (speed / near) ** 2,
    ) >= target;
  return lowestReaching(reaches, 0.4 * near, 2.6 * near, 88) ?? lowestReaching(reaches, 2.6 * near, 26 * near, 200);
}
