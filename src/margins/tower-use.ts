import type { Check } from './check-list.ts';
import type { Answers, Demand, Scenario, TowerModel } from './tower-model.ts';
import { type Proven, provenOf } from './tower-proof.ts';

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
  const proven = answers.ratings ? provenOf(model, answers) : model.proven;
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
  let worst: BestClaim | undefined;
  let worstScenario = 0;
  let leastGood = Number.POSITIVE_INFINITY;
  let goodOfOpen = 0;
  // Scenarios of one open question stand together: over its directions the larger counts, over its answers the smaller.
  for (let number = 0; number < model.scenarios.length; number += 1) {
    const scenario = model.scenarios[number] as Scenario;
    if (answers.solidity !== undefined && scenario.solidity !== answers.solidity) continue;
    const demand = ((bad.wind[number] as number[])[index] as number) + (bad.dead[index] as number);
    const here = bestClaim(model, check, index, number, demand, proven, 'low');
    if (!worst || here.use > worst.use) {
      worst = here;
      worstScenario = number;
    }
    const goodDemand = ((good.wind[number] as number[])[index] as number) + (good.dead[index] as number);
    const goodUse = bestClaim(model, check, index, number, goodDemand, proven, 'high').use;
    goodOfOpen = Math.max(goodOfOpen, goodUse);
    if (model.scenarios[number + 1]?.open !== scenario.open) {
      leastGood = Math.min(leastGood, goodOfOpen);
      goodOfOpen = 0;
    }
  }
  const { use, claim, demand, capacity, byWindRatio } = worst as BestClaim;
  return { check, bad: use, good: leastGood, scenario: worstScenario, claim, demand, capacity, byWindRatio };
}

interface BestClaim {
  use: number;
  claim: number;
  demand: number;
  capacity: number;
  byWindRatio: boolean;
}

function bestClaim(
  model: TowerModel,
  check: Check,
  index: number,
  scenario: number,
  demand: number,
  proven: readonly Proven[],
  end: 'low' | 'high',
): BestClaim {
  const best: BestClaim = { use: Number.POSITIVE_INFINITY, claim: -1, demand, capacity: 0, byWindRatio: false };
  for (let claim = 0; claim < proven.length; claim += 1) {
    const each = proven[claim] as Proven;
    const capacity = (each[end][scenario] as number[])[index] as number;
    const byLoads = demand === 0 ? 0 : demand / capacity;
    const byWind = (end === 'low' ? each.windRatioLow : each.windRatioHigh)[scenario] as number;
    const use = Math.max(byLoads, byWind);
    if (best.claim < 0 || use < best.use) {
      best.use = use;
      best.claim = claim;
      best.capacity = capacity;
      best.byWindRatio = byWind > byLoads;
    }
  }
  if (check.of === 'moment') {
    for (const claim of model.momentClaims) {
      const proven = end === 'low' ? claim.moment : claim.atMost;
      const use = demand / proven;
      if (claim.level === check.level && use < best.use) {
        best.use = use;
        best.claim = -1;
        best.capacity = proven;
        best.byWindRatio = false;
      }
    }
  }
  return best;
}

/**
 * The use of a link at the bad end alone: what `linkUse` gives, without the rest of the answer.
 *
 * u = max over checks and scenarios of min over claims
 *
 * @param model the tower [-]
 * @param link which link, or which of its checks [-]
 * @param demand at the bad end [-]
 * @param answers to open questions [-]
 * @param windScale pressure of this wind over that of the site, for a tower whose own drag is not known [-]
 * @returns the use [-]; Infinity where nothing is proven
 * @source derived
 */
export function badUse(
  model: TowerModel,
  link: Check['link'] | ((check: Check) => boolean),
  demand: Pick<Demand, 'wind' | 'dead'>,
  answers: Answers = {},
  windScale = 1,
): number {
  const proven = answers.ratings ? provenOf(model, answers) : model.proven;
  let worst = 0;
  for (let index = 0; index < model.checks.length; index += 1) {
    const check = model.checks[index] as Check;
    if (!belongs(check, link)) continue;
    const dead = demand.dead[index] as number;
    for (let scenario = 0; scenario < model.scenarios.length; scenario += 1) {
      if (answers.solidity !== undefined && model.scenarios[scenario]?.solidity !== answers.solidity) continue;
      const asked = ((demand.wind[scenario] as number[])[index] as number) + dead;
      worst = Math.max(worst, leastUse(model, check, index, scenario, asked, proven, windScale));
    }
  }
  return worst;
}

/**
 * The use of a link without wind: by the pull of wires and by weight alone.
 *
 * u = max over checks of dead/capacity
 *
 * @param model the tower [-]
 * @param link which link, or which of its checks [-]
 * @returns the use [-]
 * @source derived
 */
export function calmUse(model: TowerModel, link: Check['link'] | ((check: Check) => boolean)): number {
  const none = model.checks.map(() => 0);
  return badUse(model, link, { wind: model.scenarios.map(() => none), dead: model.deadDemand }, {}, 0);
}

function leastUse(
  model: TowerModel,
  check: Check,
  index: number,
  scenario: number,
  asked: number,
  proven: readonly Proven[],
  windScale: number,
): number {
  let least = Number.POSITIVE_INFINITY;
  for (const each of proven) {
    const byLoads = asked === 0 ? 0 : asked / ((each.low[scenario] as number[])[index] as number);
    const ratio = each.windRatioLow[scenario] as number;
    least = Math.min(least, Math.max(byLoads, ratio === 0 ? 0 : ratio * windScale));
  }
  if (check.of === 'moment') {
    for (const claim of model.momentClaims)
      if (claim.level === check.level) least = Math.min(least, asked / claim.moment);
  }
  return least;
}

/** Both ends of the use of a link, and the check that decides the bad one. */
export interface LinkUse {
  readonly bad: number;
  readonly good: number;
  /** Largest good-end use among the checks where more than 1 means over. */
  readonly goodOver: number;
  readonly governing: CheckUse;
  /** The largest of the checks where more than 1 means over. */
  readonly governingOver?: CheckUse;
}

/**
 * The use of a link: the largest over its checks.
 *
 * @param uses of all checks [-]
 * @param links which link, or several taken together [-]
 * @returns both ends and the governing check, or undefined where the link has no check [-]
 * @source derived
 */
export function linkUse(uses: readonly CheckUse[], ...links: readonly Check['link'][]): LinkUse | undefined {
  const own = uses.filter((use) => links.includes(use.check.link));
  const first = own[0];
  if (!first) return undefined;
  let governing = first;
  let good = 0;
  let goodOver = 0;
  let governingOver: CheckUse | undefined;
  for (const use of own) {
    if (use.bad > governing.bad) governing = use;
    good = Math.max(good, use.good);
    if (use.check.beyond !== 'over') continue;
    goodOver = Math.max(goodOver, use.good);
    if (!governingOver || use.bad > governingOver.bad) governingOver = use;
  }
  return { bad: governing.bad, good, goodOver, governing, ...(governingOver ? { governingOver } : {}) };
}

/**
 * Whether a check belongs to a link, or to a selection of checks.
 *
 * @param check the comparison [-]
 * @param link which link, or which checks [-]
 * @returns true when it does [-]
 * @source derived
 */
export function belongs(check: Check, link: Check['link'] | ((check: Check) => boolean)): boolean {
  return typeof link === 'function' ? link(check) : check.link === link;
}
