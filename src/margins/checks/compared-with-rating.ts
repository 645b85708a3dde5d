import { nth } from '../../foundation/index.ts';
import { groupedSum, worstOfGroups } from '../../structure/index.ts';
import { holdsTo } from '../holds-to.ts';
import { heldBy } from '../holds-to-ratio.ts';
import type { Demand, TowerModel } from '../model.ts';
import { ratingsInQuestion } from '../plausible-rated-heights.ts';
import { fitsNoStandard, ratedAreaFactor } from '../rated-case.ts';
import { forcePerArea } from '../room-by-check.ts';
import { leansOn, misfitsOf } from '../stated-for.ts';
import { isBraced, steadyNotGiven } from '../tower-model.ts';
import { type CheckRatio, type ComparisonRatio, ratioInCalm } from '../tower-ratio.ts';
import type { AreaUsed, CheckResult, Compared } from './check.ts';

/**
 * What a check says that is compared with the tower's rating.
 *
 * u = demand/capacity, where it is largest
 *
 * @param demand of the design wind at the unfavourable end, without least pressures
 * @source derived
 */
export function resultOf(model: TowerModel, found: CheckRatio, demand: Demand): CheckResult {
  const { governing } = found;
  const { comparison } = governing;
  const appurtenances = nth(demand.scenarios, governing.scenario).appurtenances;
  const { value: _, ...headings } = worstOfGroups(groupedSum(appurtenances, comparison.of, comparison.level));
  const reaches = (target: number) => holdsTo(model, comparison.check, demand, target);
  return {
    ...compared(model, governing, demand),
    ratioRange: [Math.min(found.favourable, found.unfavourable), found.unfavourable],
    headings,
    ...heldBy(model, reaches, ratioInCalm(model, comparison.check)),
    ...areaUsedOf(model, governing, demand),
  };
}

/**
 * How much of a rated area is used where a tower governs, the wind on the tower itself apart.
 *
 * A = S/f, or M/(f·(h − z)); f the force of the site's wind on a square metre at the rated height
 *
 * @source derived
 */
function areaUsedOf(model: TowerModel, ratio: ComparisonRatio, demand: Demand): { readonly areaUsed?: AreaUsed } {
  const { comparison, by, scenario } = ratio;
  const { appurtenances, bareTower } = nth(demand.scenarios, scenario);
  if (comparison.check !== 'tower' || !by || !('rating' in by) || !bareTower) return {};
  // Of a tower rated at another height the area is not rated here.
  if (comparison.apex !== Number.POSITIVE_INFINITY || by.cases.some(({ asRated }) => asRated)) return {};
  const { claim, withCables, height = model.input.station.tower.top } = by.rating;
  const { reading } = nth(nth(by.cases, 0).rated, scenario);
  // Beside further rated areas or lines no one area is used.
  if (claim.kind !== 'area' || claim.rows.length !== 1 || claim.also.length > 0 || withCables) return {};
  const { of, level } = comparison;
  const arm = of === 'moment' ? height - nth(model.levels, level).z : 1;
  if (arm <= 0) return {};
  const { wind } = nth(model.scenarios, scenario).appurtenances;
  const rated = nth(claim.rows, 0).area * ratedAreaFactor(claim, reading.method).low;
  const area = nth(appurtenances[of], level) / (forcePerArea(wind, height) * arm);
  return { areaUsed: { area, rated, height, ofTower: nth(bareTower[of], level) } };
}

/**
 * One comparison with the tower's rating.
 *
 * u = demand/capacity
 *
 * @param demand of the design wind at the unfavourable end, without least pressures
 * @source derived
 */
export function compared(model: TowerModel, ratio: ComparisonRatio, demand: Demand): Compared {
  const torsion = nth(nth(demand.scenarios, ratio.scenario).appurtenances.torsion, ratio.comparison.level);
  const of = isBraced(model, ratio.comparison, torsion) ? 'braces' : ratio.comparison.of;
  return {
    ratio: ratio.unfavourable,
    of: ratio.byWindRatio ? 'wind-ratio' : of,
    demand: ratio.demand,
    capacity: ratio.capacity,
    height: nth(model.levels, ratio.comparison.level).z,
    place: ratio.comparison.place,
  };
}

/** What the tower cannot be compared without. */
export function towerNeeds(model: TowerModel): readonly string[] {
  const needs: string[] = [];
  const notGiven = supportsNotGiven(model);
  if (notGiven) needs.push('/tower/supportedAt');
  if (model.claims.length + model.momentClaims.length === 0) {
    // Ratings that name supports may fit once the tower's own are told.
    needs.push(...ratingNeeds(model).filter((need) => !notGiven || !need.endsWith('/supportedAt')));
  }
  // It may be for a height of which nobody knows what it would say of this one.
  const inQuestion = ratingsInQuestion(model.input);
  const speaking = [...model.claims, ...model.momentClaims];
  if (speaking.every(({ number }) => inQuestion.includes(nth(model.input.ratings, number).at))) {
    needs.push(...inQuestion.map((at) => `${at}/top`));
  }
  if (
    !model.bareTowerKnown &&
    model.claims.every((claim) => claim.cases.every((each) => !each.rated.some((rated) => rated.wind)))
  ) {
    needs.push('/tower/shape');
  }
  needs.push(...steadyNotGiven(model));
  return needs;
}

/** What keeps the ratings of the tower from speaking of it, where none does. */
function ratingNeeds({ input }: TowerModel): readonly string[] {
  const { tower } = input.station;
  const ofTower = input.ratings.filter(({ of, claim }) => of === 'tower' && claim.kind !== 'weight');
  if (ofTower.length === 0) return ['/ratings'];
  const unfinished = ofTower.find((rating) => rating.claim.kind === 'area' && misfitsOf(rating, tower).length === 0);
  return [
    ...(unfinished ? [`${unfinished.at}/wind${fitsNoStandard(unfinished) ? '/year' : ''}`] : []),
    ...ofTower.flatMap((rating) => misfitsOf(rating, tower).map((misfit) => `${rating.at}/${misfit}`)),
  ];
}

/** Whether it leans on guys or brackets, and neither the plan nor its ratings tell where. */
export function supportsNotGiven(model: TowerModel): boolean {
  const { tower } = model.input.station;
  return leansOn(tower) && tower.held.length === 0;
}
