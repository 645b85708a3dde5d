import type { Comparison } from './comparisons.ts';
import type { Answers, Demand, RatedCapacity, Scenario, TowerModel } from './model.ts';
import { ratedCapacitiesOf } from './rated-capacity.ts';

/** Use of one check at both ends of what is open; Infinity where nothing is proven. */
export interface ComparisonRatio {
  readonly comparison: Comparison;
  readonly unfavourable: number;
  readonly favourable: number;
  /** The scenario and the claim that decide the unfavourable end; -1 where a stated moment does. */
  readonly scenario: number;
  readonly claim: number;
  readonly demand: number;
  readonly capacity: number;
  /** The wind on a tower whose own drag is not known decides, not this comparison. */
  readonly byWindRatio: boolean;
}

/**
 * Use of every check: the largest over directions and over what is open about the tower, the best of the maker's claims.
 *
 * u = demand/capacity
 *
 * @param model the tower [-]
 * @param unfavourable demands at the bad end of open readings [-]
 * @param favourable demands at the good end [-]
 * @param answers to open questions [-]
 * @returns the ratio, in the order of the checks [-]
 * @source derived
 */
export function towerRatios(
  model: TowerModel,
  unfavourable: Demand,
  favourable: Demand,
  answers: Answers = {},
): readonly ComparisonRatio[] {
  const proven = answers.ratings ? ratedCapacitiesOf(model, answers) : model.proven;
  return model.comparisons.map((comparison, index) =>
    ratioOfComparison(model, comparison, index, unfavourable, favourable, proven, answers),
  );
}

function ratioOfComparison(
  model: TowerModel,
  comparison: Comparison,
  index: number,
  unfavourable: Demand,
  favourable: Demand,
  proven: readonly RatedCapacity[],
  answers: Answers,
): ComparisonRatio {
  let worst: BestClaim | undefined;
  let worstScenario = 0;
  let leastFavourable = Number.POSITIVE_INFINITY;
  let favourableOfOpen = 0;
  // Scenarios of one open question stand together: over its directions the larger counts, over its answers the smaller.
  for (let number = 0; number < model.scenarios.length; number += 1) {
    const scenario = model.scenarios[number] as Scenario;
    if (answers.solidity !== undefined && scenario.solidity !== answers.solidity) continue;
    const demand = ((unfavourable.wind[number] as number[])[index] as number) + (unfavourable.dead[index] as number);
    const here = bestClaim(model, comparison, index, number, demand, proven, 'low');
    if (!worst || here.ratio > worst.ratio) {
      worst = here;
      worstScenario = number;
    }
    const favourableDemand =
      ((favourable.wind[number] as number[])[index] as number) + (favourable.dead[index] as number);
    const ratioAtGoodEnd = bestClaim(model, comparison, index, number, favourableDemand, proven, 'high').ratio;
    favourableOfOpen = Math.max(favourableOfOpen, ratioAtGoodEnd);
    if (model.scenarios[number + 1]?.open !== scenario.open) {
      leastFavourable = Math.min(leastFavourable, favourableOfOpen);
      favourableOfOpen = 0;
    }
  }
  const { ratio, claim, demand, capacity, byWindRatio } = worst as BestClaim;
  return {
    comparison,
    unfavourable: ratio,
    favourable: leastFavourable,
    scenario: worstScenario,
    claim,
    demand,
    capacity,
    byWindRatio,
  };
}

interface BestClaim {
  ratio: number;
  claim: number;
  demand: number;
  capacity: number;
  byWindRatio: boolean;
}

function bestClaim(
  model: TowerModel,
  comparison: Comparison,
  index: number,
  scenario: number,
  demand: number,
  proven: readonly RatedCapacity[],
  end: 'low' | 'high',
): BestClaim {
  const best: BestClaim = { ratio: Number.POSITIVE_INFINITY, claim: -1, demand, capacity: 0, byWindRatio: false };
  for (let claim = 0; claim < proven.length; claim += 1) {
    const each = proven[claim] as RatedCapacity;
    const capacity = (each[end][scenario] as number[])[index] as number;
    const byLoads = demand === 0 ? 0 : demand / capacity;
    const byWind = (end === 'low' ? each.windRatioLow : each.windRatioHigh)[scenario] as number;
    const ratio = Math.max(byLoads, byWind);
    if (best.claim < 0 || ratio < best.ratio) {
      best.ratio = ratio;
      best.claim = claim;
      best.capacity = capacity;
      best.byWindRatio = byWind > byLoads;
    }
  }
  if (comparison.of === 'moment') {
    for (const claim of model.momentClaims) {
      const proven = end === 'low' ? claim.moment : claim.atMost;
      const ratio = demand / proven;
      if (claim.level === comparison.level && ratio < best.ratio) {
        best.ratio = ratio;
        best.claim = -1;
        best.capacity = proven;
        best.byWindRatio = false;
      }
    }
  }
  return best;
}

/**
 * The use of a check at the unfavourable end alone: what `linkUse` gives, without the rest of the answer.
 *
 * u = max over checks and scenarios of min over claims
 *
 * @param model the tower [-]
 * @param check which link, or which of its checks [-]
 * @param demand at the bad end [-]
 * @param answers to open questions [-]
 * @param windScale pressure of this wind over that of the site, for a tower whose own drag is not known [-]
 * @returns the ratio [-]; Infinity where nothing is proven
 * @source derived
 */
export function ratioAtWorst(
  model: TowerModel,
  check: Comparison['check'] | ((comparison: Comparison) => boolean),
  demand: Pick<Demand, 'wind' | 'dead'>,
  answers: Answers = {},
  windScale = 1,
): number {
  const proven = answers.ratings ? ratedCapacitiesOf(model, answers) : model.proven;
  let worst = 0;
  for (let index = 0; index < model.comparisons.length; index += 1) {
    const comparison = model.comparisons[index] as Comparison;
    if (!belongs(comparison, check)) continue;
    const dead = demand.dead[index] as number;
    for (let scenario = 0; scenario < model.scenarios.length; scenario += 1) {
      if (answers.solidity !== undefined && model.scenarios[scenario]?.solidity !== answers.solidity) continue;
      const asked = ((demand.wind[scenario] as number[])[index] as number) + dead;
      worst = Math.max(worst, leastRatio(model, comparison, index, scenario, asked, proven, windScale));
    }
  }
  return worst;
}

/**
 * The use of a check without wind: by the pull of wires and by weight alone.
 *
 * u = max over checks of dead/capacity
 *
 * @param model the tower [-]
 * @param check which link, or which of its checks [-]
 * @returns the ratio [-]
 * @source derived
 */
export function ratioInCalm(
  model: TowerModel,
  check: Comparison['check'] | ((comparison: Comparison) => boolean),
): number {
  const none = model.comparisons.map(() => 0);
  return ratioAtWorst(model, check, { wind: model.scenarios.map(() => none), dead: model.deadDemand }, {}, 0);
}

function leastRatio(
  model: TowerModel,
  comparison: Comparison,
  index: number,
  scenario: number,
  asked: number,
  proven: readonly RatedCapacity[],
  windScale: number,
): number {
  let least = Number.POSITIVE_INFINITY;
  for (const each of proven) {
    const byLoads = asked === 0 ? 0 : asked / ((each.low[scenario] as number[])[index] as number);
    const ratio = each.windRatioLow[scenario] as number;
    least = Math.min(least, Math.max(byLoads, ratio === 0 ? 0 : ratio * windScale));
  }
  if (comparison.of === 'moment') {
    for (const claim of model.momentClaims)
      if (claim.level === comparison.level) least = Math.min(least, asked / claim.moment);
  }
  return least;
}

/** Both ends of the ratio of a check, and the check that decides the bad one. */
export interface CheckRatio {
  readonly unfavourable: number;
  readonly favourable: number;
  /** Largest good-end use among the checks where more than 1 means over. */
  readonly favourableOver: number;
  readonly governing: ComparisonRatio;
  /** The largest of the checks where more than 1 means over. */
  readonly governingOver?: ComparisonRatio;
}

/**
 * The use of a check: the largest over its checks.
 *
 * @param ratios of all checks [-]
 * @param checks which link, or several taken together [-]
 * @returns both ends and the governing check, or undefined where the check has no check [-]
 * @source derived
 */
export function checkRatio(
  ratios: readonly ComparisonRatio[],
  ...checks: readonly Comparison['check'][]
): CheckRatio | undefined {
  const own = ratios.filter((ratio) => checks.includes(ratio.comparison.check));
  const first = own[0];
  if (!first) return undefined;
  let governing = first;
  let favourable = 0;
  let favourableOver = 0;
  let governingOver: ComparisonRatio | undefined;
  for (const ratio of own) {
    if (ratio.unfavourable > governing.unfavourable) governing = ratio;
    favourable = Math.max(favourable, ratio.favourable);
    if (ratio.comparison.beyond !== 'over') continue;
    favourableOver = Math.max(favourableOver, ratio.favourable);
    if (!governingOver || ratio.unfavourable > governingOver.unfavourable) governingOver = ratio;
  }
  return {
    unfavourable: governing.unfavourable,
    favourable,
    favourableOver,
    governing,
    ...(governingOver ? { governingOver } : {}),
  };
}

/**
 * Whether a check belongs to a check, or to a selection of checks.
 *
 * @param comparison the comparison [-]
 * @param check which link, or which checks [-]
 * @returns true when it does [-]
 * @source derived
 */
export function belongs(
  comparison: Comparison,
  check: Comparison['check'] | ((comparison: Comparison) => boolean),
): boolean {
  return typeof check === 'function' ? check(comparison) : comparison.check === check;
}
