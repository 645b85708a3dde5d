import { nth } from '../foundation/index.ts';
import type { Bound } from '../methods/index.ts';
import { type Governed, governed } from './capacity.ts';
import type { Comparison } from './comparisons.ts';
import type { Answers, Demand, RatedCapacity, Scenario, ScenarioDemand, TowerModel } from './model.ts';
import { ratedCapacitiesOf } from './rated-capacity.ts';

/** What is asked at every comparison, by scenario with wind and without. */
interface AskedOfTower {
  readonly scenarios: readonly Pick<ScenarioDemand, 'wind'>[];
  readonly dead: readonly number[];
}

/** A check, or a selection of comparisons. */
export type ComparisonChoice = Comparison['check'] | ((comparison: Comparison) => boolean);

/** Use of one check at both ends of what is open; Infinity where nothing is proven. */
export interface ComparisonRatio {
  readonly comparison: Comparison;
  readonly unfavourable: number;
  readonly favourable: number;
  /** The scenario and the claim that decide the unfavourable end. */
  readonly scenario: number;
  readonly by?: Governed['by'];
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
 * @source derived
 */
export function towerRatios(
  model: TowerModel,
  unfavourable: Demand,
  favourable: Demand,
  answers: Answers = {},
): readonly ComparisonRatio[] {
  const proven = answers.ratings ? ratedCapacitiesOf(model, answers, model.proven) : model.proven;
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
  let worst: (Governed & { readonly scenario: number; readonly demand: number }) | undefined;
  let leastFavourable = Number.POSITIVE_INFINITY;
  let favourableOfOpen = 0;
  // Scenarios of one open question stand together: over its directions the larger counts, over its answers the smaller.
  model.scenarios.forEach(({ open, ...read }, scenario) => {
    if (!answeredBy(read, answers)) return;
    const at = (bound: Bound, { scenarios, dead }: Demand) => {
      const demand = nth(nth(scenarios, scenario).wind, index) + nth(dead, index);
      return { ...governed(model, proven, index, scenario, bound, demand), scenario, demand };
    };
    const here = at('unfavourable', unfavourable);
    if (!worst || here.ratio > worst.ratio) worst = here;
    favourableOfOpen = Math.max(favourableOfOpen, at('favourable', favourable).ratio);
    if (model.scenarios[scenario + 1]?.open === open) return;
    leastFavourable = Math.min(leastFavourable, favourableOfOpen);
    favourableOfOpen = 0;
  });
  if (!worst) throw new RangeError('no scenario has the solidity that is answered');
  const { ratio, ...decides } = worst;
  return { comparison, unfavourable: ratio, favourable: leastFavourable, ...decides };
}

/**
 * The use of a check at the unfavourable end alone: what `towerRatios` gives, without the rest of the answer.
 *
 * u = max over checks and scenarios of min over claims
 *
 * @param windScale pressure of this wind over that of the site, for a tower whose own drag is not known [-]
 * @returns the ratio [-]; Infinity where nothing is proven
 * @source derived
 */
export function ratioAtWorst(
  model: TowerModel,
  check: ComparisonChoice,
  demand: AskedOfTower,
  answers: Answers = {},
  windScale = 1,
): number {
  const proven = answers.ratings ? ratedCapacitiesOf(model, answers, model.proven) : model.proven;
  let worst = 0;
  model.comparisons.forEach((comparison, index) => {
    if (!belongs(comparison, check)) return;
    const dead = nth(demand.dead, index);
    model.scenarios.forEach((read, scenario) => {
      if (!answeredBy(read, answers)) return;
      const asked = nth(nth(demand.scenarios, scenario).wind, index) + dead;
      worst = Math.max(worst, governed(model, proven, index, scenario, 'unfavourable', asked, windScale).ratio);
    });
  });
  return worst;
}

/**
 * The use of a check without wind: by the pull of wires and by weight alone.
 *
 * u = max over checks of dead/capacity
 *
 * @returns the ratio [-]
 * @source derived
 */
export function ratioInCalm(model: TowerModel, check: ComparisonChoice): number {
  const wind = model.comparisons.map(() => 0);
  const scenarios = model.scenarios.map(() => ({ wind }));
  return ratioAtWorst(model, check, { scenarios, dead: model.deadDemand }, {}, 0);
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

/** The ratio of a check, or of several taken together: the largest over their comparisons. */
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

/** Whether a scenario is one of those that the answers leave. */
function answeredBy(read: Pick<Scenario, 'solidity' | 'shapes'>, { solidity, shapes = {} }: Answers): boolean {
  return (
    (solidity === undefined || read.solidity === solidity) &&
    (shapes.sides === undefined || read.shapes.sides === shapes.sides) &&
    (shapes.pattern === undefined || read.shapes.pattern === shapes.pattern)
  );
}

/** Whether a comparison belongs to a check, or to a selection of comparisons. */
export function belongs(comparison: Comparison, check: ComparisonChoice): boolean {
  return typeof check === 'function' ? check(comparison) : comparison.check === check;
}
