import {
  groupedSum,
  type Level,
  type Profile,
  profileOf,
  type SlicesInWind,
  sliceForces,
  worstOfGroups,
} from '../../structure/index.ts';
import { holdsTo } from '../holds-to.ts';
import { ratioWithoutWind } from '../holds-to-ratio.ts';
import type { IceCase } from '../ice-case.ts';
import { fitsNoStandard } from '../rated-case.ts';
import { leansOn, misfitsOf } from '../stated-for.ts';
import { type Demand, isBraced, siteSpeed, stillUntold, type TowerModel } from '../tower-model.ts';
import { type CheckRatio, type ComparisonRatio, checkRatio, ratioInCalm } from '../tower-ratio.ts';
import { verdictOf } from '../verdict.ts';
import type { Check, CheckResult, Compared, OpenBecause } from './check.ts';
import { canBeLowered } from './check.ts';

/**
 * The tower against what its maker's ratings prove.
 *
 * u = max over levels of demand/capacity
 *
 * @param model the tower [-]
 * @param ratios of all checks [-]
 * @param demand of the design wind at the bad end, without least pressures [-]
 * @returns the check [-]
 * @source derived
 */
export function towerCheck(model: TowerModel, ratios: readonly ComparisonRatio[], demand: Demand): Check {
  const { input } = model;
  const base = { id: 'tower', kind: 'tower' } as const;
  const found = checkRatio(ratios, 'tower');
  const needs = towerNeeds(model);
  if (supportsUntold(model)) return { ...base, verdict: 'open', because: 'missing', needs };
  if (model.lowest >= model.input.station.tower.top) {
    return { ...base, verdict: 'open', because: 'held', needs: ['/tower/supportedAt', ...needs] };
  }
  if (!found || model.claims.length + model.momentClaims.length === 0) {
    return { ...base, verdict: 'open', because: 'missing', needs };
  }
  if (!Number.isFinite(found.unfavourable)) {
    const because = needs.length > 0 ? 'missing' : 'beyond-rating';
    const partial = finiteResult(model, ratios, 'tower', demand);
    return { ...base, verdict: 'open', because, needs, ...(partial ? { result: partial } : {}) };
  }
  const result = resultOf(model, found, demand);
  const verdict = verdictOf(found.unfavourable, found.favourableOver, input.wanted.margin);
  if (verdict === 'over') {
    const over = compared(model, found.governingOver ?? found.governing, demand);
    return { ...base, verdict, needs: [], result: over.ratio < result.ratio ? { ...result, over } : result };
  }
  const held = heldGaps(model);
  if (held.length > 0) return { ...base, verdict: 'open', because: 'held', needs: held, result };
  if (needs.length > 0) return { ...base, verdict: 'open', because: 'missing', needs, result };
  if (verdict !== 'open') return { ...base, verdict, needs: [], result };
  return { ...base, verdict, because: found.favourable > 1 ? 'beyond-rating' : 'readings-disagree', needs: [], result };
}

/** Where only part of the checks has a proof, what that part says. */
function finiteResult(
  model: TowerModel,
  ratios: readonly ComparisonRatio[],
  check: 'tower' | 'tower-top',
  demand: Demand,
): CheckResult | undefined {
  const found = checkRatio(
    ratios.filter((ratio) => Number.isFinite(ratio.unfavourable) && ratio.capacity > 0),
    check,
  );
  if (!found) return undefined;
  const { holdsTo: _, keepsMarginTo: __, ...rest } = resultOf(model, found, demand);
  return rest;
}

function resultOf(model: TowerModel, found: CheckRatio, demand: Demand): CheckResult {
  const { governing } = found;
  const { comparison } = governing;
  const appurtenances = demand.appurtenances[governing.scenario] as Profile;
  const { value: _, ...headings } = worstOfGroups(groupedSum(appurtenances, comparison.of, comparison.level));
  const holds = holdsTo(model, comparison.check, demand);
  const keeps =
    holds && canBeLowered(model) ? holdsTo(model, comparison.check, demand, 1 - model.input.wanted.margin) : undefined;
  return {
    ...compared(model, governing, demand),
    ratioRange: [Math.min(found.favourable, found.unfavourable), found.unfavourable],
    headings,
    ...(holds ? { holdsTo: holds } : {}),
    ...(keeps ? { keepsMarginTo: keeps.gust } : {}),
    ...ratioWithoutWind(model, ratioInCalm(model, comparison.check)),
  };
}

function compared(model: TowerModel, ratio: ComparisonRatio, demand: Demand): Compared {
  const torsion = (demand.appurtenances[ratio.scenario] as Profile).torsion[ratio.comparison.level] as number;
  const of = isBraced(model, ratio.comparison, torsion) ? 'braces' : ratio.comparison.of;
  return {
    ratio: ratio.unfavourable,
    of: ratio.byWindRatio ? 'wind-ratio' : of,
    demand: ratio.demand,
    capacity: ratio.capacity,
    height: (model.levels[ratio.comparison.level] as Level).z,
    place: ratio.comparison.place,
  };
}

/** What the tower check cannot do without. */
function towerNeeds(model: TowerModel): readonly string[] {
  const needs: string[] = [];
  const untold = supportsUntold(model);
  if (untold) needs.push('/tower/supportedAt');
  if (model.claims.length + model.momentClaims.length === 0) {
    // Ratings that name supports may fit once the tower's own are told.
    needs.push(...ratingNeeds(model).filter((need) => !untold || !need.endsWith('/supportedAt')));
  }
  if (
    !model.bareTowerKnown &&
    model.claims.every((claim) => claim.cases.every((each) => !each.rated.some((rated) => rated.provesOwn)))
  ) {
    needs.push('/tower/shape');
  }
  needs.push(...stillUntold(model));
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

/** It leans on guys or brackets, and neither the plan nor its ratings tell where. */
function supportsUntold({ input }: TowerModel): boolean {
  const { tower } = input.station;
  return leansOn(tower) && tower.held.length === 0;
}

/**
 * Below its highest support a tower is no cantilever, and nothing is compared; what must hold for the rating to speak for it
 * all the same: guys as the maker draws them, and nothing there but lines and its own drag, within the rated own drag.
 */
function heldGaps(model: TowerModel): readonly string[] {
  const { tower, loads, cables } = model.input.station;
  if (!leansOn(tower)) return [];
  const open: string[] = [];
  if (tower.support === 'guyed' && !tower.asDrawn) open.push('/tower/asDrawn');
  for (const load of loads) if (load.low < model.lowest) open.push(`${load.at}/height`);
  const unnamed = model.claims.filter((claim) => claim.cases.every((each) => !each.rated[0]?.provesOwn));
  if (unnamed.length > 0 && unnamed.length === model.claims.length) {
    // Nothing but a named standard stands behind the wind on the tower itself.
    for (const claim of unnamed) open.push(`${claim.rating.at}/wind/method`);
  } else if (!model.bareTowerKnown) {
    // Alone it is within the rated wind where its ratio is; how much room that leaves for lines, only its shape tells.
    if (tower.support === 'guyed' || cables.length > 0) open.push('/tower/shape');
  } else if (model.claims.every((claim) => !bareTowerStaysBelow(model, claim.number))) {
    open.push(cables.length > 0 ? '/cables' : '/tower');
  }
  return open;
}

/** Own drag plus lines is nowhere above the rated own drag; on a bracketed tower, nowhere below its highest support. */
function bareTowerStaysBelow(model: TowerModel, number: number): boolean {
  const claim = model.claims.find((each) => each.number === number);
  if (!claim || !model.bareTowerKnown) return false;
  const { levels, hold, lowest } = model;
  const { support } = model.input.station.tower;
  const { speed } = siteSpeed(model.input);
  return model.scenarios.every((_, scenario) => {
    const own = model.bareTowerInWind[scenario] as SlicesInWind;
    const asked = profileOf(own, sliceForces(own, speed, 'favourable', true), levels, hold);
    const cut = model.appurtenancesInWind[scenario] as SlicesInWind;
    const lines = cut.items.map((item) => (item.kind === 'lines' ? 1 : 0));
    const forces = sliceForces(cut, speed, 'unfavourable', true);
    cut.slices.forEach((slice, index) => {
      if (lines[slice.item]) return;
      forces.front[index] = 0;
      forces.side[index] = 0;
    });
    const ofLines = profileOf(cut, forces, levels, hold);
    return levels.every(({ z }, index) => {
      if (support === 'bracketed' && z >= lowest) return true;
      return claim.cases.every((each) => {
        const proven = each.own[scenario];
        if (!proven || !each.rated[scenario]?.provesOwn) return false;
        // Per length of tower: what is added between one level and the next must stay within what was rated there.
        const before = index === 0 ? 0 : index - 1;
        const step = (values: number[]) => (values[index] as number) - (index === 0 ? 0 : (values[before] as number));
        return step(asked.shear) + step(ofLines.shear) <= step(proven.shear) + 1e-9;
      });
    });
  });
}

/**
 * The top of the tower, where the mast hands over its load as a couple.
 *
 * @param model the tower [-]
 * @param ratios of all checks [-]
 * @param demand of the design wind at the bad end, without least pressures [-]
 * @returns the check, where there is a mast [-]
 * @source derived
 */
export function topCheck(model: TowerModel, ratios: readonly ComparisonRatio[], demand: Demand): readonly Check[] {
  const { mast } = model.input.station;
  if (!mast) return [];
  const base = { id: 'tower-top', kind: 'tower-top' } as const;
  const found = checkRatio(ratios, 'tower-top');
  if (supportsUntold(model)) return [{ ...base, verdict: 'open', because: 'missing', needs: ['/tower/supportedAt'] }];
  if (mast.foot === undefined) return [{ ...base, verdict: 'open', because: 'missing', needs: ['/mast/inside'] }];
  if (!found) return [];
  if (!Number.isFinite(found.unfavourable))
    return [{ ...base, verdict: 'open', because: 'beyond-rating', needs: towerNeeds(model) }];
  const result = resultOf(model, found, demand);
  const untold = stillUntold(model);
  const verdict = verdictOf(found.unfavourable, found.favourableOver, model.input.wanted.margin);
  if (untold.length > 0 && verdict !== 'over') {
    const { holdsTo: _, keepsMarginTo: __, ...rest } = result;
    return [{ ...base, verdict: 'open', because: 'missing', needs: untold, result: rest }];
  }
  if (verdict !== 'open') return [{ ...base, verdict, needs: [], result }];
  return [
    { ...base, verdict, because: found.favourable > 1 ? 'beyond-rating' : 'readings-disagree', needs: [], result },
  ];
}

/**
 * Tower and its top in the ice case.
 *
 * @param model the bare tower [-]
 * @param ice its ice case [-]
 * @returns the check, where the plan gives ice [-]
 * @source derived
 */
export function iceCheck(model: TowerModel, ice: IceCase | undefined): readonly Check[] {
  if (!ice) return [];
  const base = { id: 'ice', kind: 'ice' } as const;
  const { shown } = ice;
  const notShown = (because: OpenBecause, needs: readonly string[], result?: CheckResult): readonly Check[] => [
    { ...base, verdict: 'open', because, needs, ...(result ? { result } : {}) },
  ];
  if (!shown) return notShown(ice.thicknessAtTop === undefined ? 'no-ice-rule' : 'missing', ice.needs);
  const found = checkRatio(shown.ratios, 'tower', 'tower-top');
  const needs = towerNeeds(model);
  if (model.lowest >= model.input.station.tower.top) return notShown('held', needs);
  if (!found || !Number.isFinite(found.unfavourable))
    return notShown(needs.length > 0 ? 'missing' : 'beyond-rating', needs);
  const { holdsTo: _, keepsMarginTo: __, ...result } = resultOf(shown.model, found, shown.unfavourable);
  const verdict = verdictOf(found.unfavourable, found.favourableOver, model.input.wanted.margin);
  if (verdict === 'over') return [{ ...base, verdict, needs: [], result }];
  // Ice makes the tower's own drag larger than any rated one, which the proof of a held tower leans on.
  if (leansOn(model.input.station.tower)) return notShown('held', [], result);
  if (needs.length > 0) return notShown('missing', needs, result);
  if (verdict !== 'open') return [{ ...base, verdict, needs: [], result }];
  return notShown(found.favourable > 1 ? 'beyond-rating' : 'readings-disagree', [], result);
}
