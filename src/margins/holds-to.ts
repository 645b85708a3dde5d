import { lowestReaching } from '../foundation/index.ts';
import type { Wind } from '../methods/index.ts';
import { type Windward, windward } from '../structure/index.ts';
import type { Check } from './check-list.ts';
import { actualSpeedHoldsTo, designHoldsTo } from './formulas.ts';
import { inWords } from './holds-to-use.ts';
import { type Demand, demandOf, once, type Scenario, siteWind, type TowerModel } from './tower-model.ts';
import type { Proven } from './tower-proof.ts';
import { badUse, belongs } from './tower-use.ts';

/** A link, or a selection of checks. */
type CheckChoice = Check['link'] | ((check: Check) => boolean);

/** The lowest winds at which a link reaches use 1, the dead load kept. */
export interface HoldsTo {
  /** In the basis in which the site's speed was given [m/s]. */
  readonly design: number;
  /** Actual 3-second gust at 10 m over open ground [m/s]. */
  readonly gust: number;
  /** No coefficient changes on the way, so that one line of the working gives it. */
  readonly steady: boolean;
}

/**
 * The winds at which a link reaches use 1 with every open question at its bad end.
 *
 * design: as the method says; gust: the actual gust whose own force (level 1, Kd = 1, I = 1) equals the same capacity
 *
 * @param model the tower [-]
 * @param link which link, or which of its checks [-]
 * @param demand of the design wind at the bad end, without least pressures [-]
 * @param target the use that is looked for [-]
 * @returns both speeds [m/s]; undefined where nothing is proven, or the dead load alone is more than is proven
 * @source derived
 */
export function holdsTo(model: TowerModel, link: CheckChoice, demand: Demand, target = 1): HoldsTo | undefined {
  const wind = (model.hungWind[0] as Windward).wind;
  const steady = steadySpeed(model, link, demand, wind.conditions.speed, target);
  if (steady === undefined || steady <= 0) return undefined;
  const actualWind = siteWind(model.inquiry, (model.scenarios[0] as Scenario).exposed, true);
  const actual = actualSpeedHoldsTo.of(steady, wind.level, wind.directionFactor, wind.importance);
  if (staysSteady(model, wind, actualWind, steady, actual)) return inWords(model.inquiry, steady, actual, true);
  const design = searched(model, link, model.hungWind, model.ownWind, steady, steady, target);
  const [hung, own] = actualWindward(model);
  const gust = searched(model, link, hung, own, actual, steady, target);
  return design === undefined || gust === undefined ? undefined : inWords(model.inquiry, design, gust, false);
}

/** Speed at use 1 if no coefficient changed on the way: the least over checks and scenarios, the most over claims. */
function steadySpeed(
  model: TowerModel,
  link: CheckChoice,
  demand: Demand,
  speed: number,
  target: number,
): number | undefined {
  const { proven } = model;
  let least = Number.POSITIVE_INFINITY;
  model.checks.forEach((check, index) => {
    if (!belongs(check, link)) return;
    model.scenarios.forEach((_, scenario) => {
      const wind = (demand.wind[scenario] as number[])[index] as number;
      if (wind > 0)
        least = Math.min(
          least,
          mostOfClaims(model, check, index, scenario, wind, demand.dead[index] as number, proven, speed, target),
        );
    });
  });
  return Number.isFinite(least) ? least : undefined;
}

function mostOfClaims(
  model: TowerModel,
  check: Check,
  index: number,
  scenario: number,
  wind: number,
  dead: number,
  proven: readonly Proven[],
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
  if (check.of === 'moment') {
    for (const claim of model.momentClaims) if (claim.level === check.level) most = Math.max(most, at(claim.moment));
  }
  return most;
}

function staysSteady(model: TowerModel, wind: Wind, actualWind: Wind, design: number, actual: number): boolean {
  const limit = Math.min(
    ...[...model.hungWind, ...model.ownWind].map((cut) => cut?.steadyUpTo ?? Number.POSITIVE_INFINITY),
  );
  if (limit === Number.POSITIVE_INFINITY) return true;
  const top = model.inquiry.station.tower.top;
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
export function actualWindward(model: TowerModel): ActualWindward {
  return once(model, inActualWind);
}

type ActualWindward = readonly [readonly Windward[], readonly (Windward | undefined)[]];

function inActualWind(model: TowerModel): ActualWindward {
  const winds = model.scenarios.map(({ exposed }) => siteWind(model.inquiry, exposed, true));
  const hung = winds.map((wind) => windward(wind, model.hungWind[0] as Windward, 'demand', 'face'));
  const own = model.ownWind.map((cut, scenario) =>
    cut
      ? windward(winds[scenario] as Wind, cut, 'demand', (model.scenarios[scenario] as Scenario).direction)
      : undefined,
  );
  return [hung, own];
}

/** Force may drop where a coefficient does, so the lowest speed is looked for upward from well below the steady one. */
function searched(
  model: TowerModel,
  link: CheckChoice,
  hung: readonly Windward[],
  own: readonly (Windward | undefined)[],
  near: number,
  steady: number,
  target: number,
): number | undefined {
  const atNear = (steady / (model.hungWind[0] as Windward).wind.conditions.speed) ** 2;
  const reaches = (speed: number) =>
    badUse(model, link, demandOf(model, hung, own, speed, 'bad', false), {}, atNear * (speed / near) ** 2) >= target;
  return lowestReaching(reaches, 0.4 * near, 2.6 * near, 88) ?? lowestReaching(reaches, 2.6 * near, 26 * near, 200);
}
