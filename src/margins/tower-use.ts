import type { Check } from './check-list.ts';
import { type Answers, type Demand, type Proven, provenOf, type TowerModel } from './tower-model.ts';

/** Use of one check at both ends of what is open; Infinity where nothing is proven. */
export interface CheckUse {
  readonly check: Check;
  readonly bad: number;
  readonly good: number;
  /** The scenario and the claim that decide the bad end; -1 where a stated moment does. */
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
 * @param bad demands at the bad end of open readings [-]
 * @param good demands at the good end [-]
 * @param answers to open questions [-]
 * @returns the uses, in the order of the checks [-]
 * @source derived
 */
export function towerUses(model: TowerModel, bad: Demand, good: Demand, answers: Answers = {}): readonly CheckUse[] {
  const proven = provenOf(model, answers);
  return model.checks.map((check, index) => useOfCheck(model, check, index, bad, good, proven, answers));
}

function useOfCheck(
  model: TowerModel,
  check: Check,
  index: number,
  bad: Demand,
  good: Demand,
  proven: readonly Proven[],
  answers: Answers,
): CheckUse {
  let worst: Omit<CheckUse, 'check' | 'good'> = {
    bad: -1,
    scenario: 0,
    claim: -1,
    demand: 0,
    capacity: 0,
    byWindRatio: false,
  };
  const goodByOpen = new Map<string, number>();
  model.scenarios.forEach((scenario, number) => {
    if (answers.solidity !== undefined && scenario.solidity !== answers.solidity) return;
    const demand = (bad.wind[number] as Float64Array)[index] as number;
    const here = bestClaim(model, check, index, number, demand + (bad.dead[index] as number), proven, 'low');
    if (here.bad > worst.bad) worst = { ...here, scenario: number };
    const goodDemand = ((good.wind[number] as Float64Array)[index] as number) + (good.dead[index] as number);
    const goodUse = bestClaim(model, check, index, number, goodDemand, proven, 'high').bad;
    goodByOpen.set(scenario.open, Math.max(goodByOpen.get(scenario.open) ?? 0, goodUse));
  });
  return { check, ...worst, good: Math.min(...goodByOpen.values()) };
}

function bestClaim(
  model: TowerModel,
  check: Check,
  index: number,
  scenario: number,
  demand: number,
  proven: readonly Proven[],
  end: 'low' | 'high',
): Omit<CheckUse, 'check' | 'good' | 'scenario'> {
  let best = { bad: Number.POSITIVE_INFINITY, claim: -1, demand, capacity: 0, byWindRatio: false };
  proven.forEach((each, claim) => {
    const capacity = (each[end][scenario] as Float64Array)[index] as number;
    const byLoads = demand === 0 ? 0 : demand / capacity;
    const byWind = (end === 'low' ? each.windRatioLow : each.windRatioHigh)[scenario] as number;
    const use = Math.max(byLoads, byWind);
    if (use < best.bad || best.claim < 0) best = { bad: use, claim, demand, capacity, byWindRatio: byWind > byLoads };
  });
  if (check.of === 'moment') {
    for (const claim of model.momentClaims) {
      const use = demand / claim.moment;
      if (claim.level === check.level && use < best.bad) {
        best = { bad: use, claim: -1, demand, capacity: claim.moment, byWindRatio: false };
      }
    }
  }
  return best;
}

/** Both ends of the use of a link, and the check that decides the bad one. */
export interface LinkUse {
  readonly bad: number;
  readonly good: number;
  /** Largest good-end use among the checks where more than 1 means over. */
  readonly goodOver: number;
  readonly governing: CheckUse;
}

/**
 * The use of a link: the largest over its checks.
 *
 * @param uses of all checks [-]
 * @param link which link [-]
 * @returns both ends and the governing check, or undefined where the link has no check [-]
 * @source derived
 */
export function linkUse(uses: readonly CheckUse[], link: Check['link']): LinkUse | undefined {
  const own = uses.filter((use) => use.check.link === link);
  const first = own[0];
  if (!first) return undefined;
  let governing = first;
  let good = 0;
  let goodOver = 0;
  for (const use of own) {
    if (use.bad > governing.bad) governing = use;
    good = Math.max(good, use.good);
    if (use.check.beyond === 'over') goodOver = Math.max(goodOver, use.good);
  }
  return { bad: governing.bad, good, goodOver, governing };
}
