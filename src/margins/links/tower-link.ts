import {
  groupedSum,
  type Level,
  type Profile,
  profileOf,
  sliceForces,
  type Windward,
  worstOfGroups,
} from '../../structure/index.ts';
import { holdsTo } from '../holds-to.ts';
import { inCalm } from '../holds-to-use.ts';
import type { IceCase } from '../ice-case.ts';
import { fitsNoStandard } from '../rated-case.ts';
import { leansOn, misfitsOf } from '../stated-for.ts';
import { type Demand, isBraced, siteSpeed, stillUntold, type TowerModel } from '../tower-model.ts';
import { type CheckUse, calmUse, type LinkUse, linkUse } from '../tower-use.ts';
import { verdictOf } from '../verdict.ts';
import type { Compared, Link, LinkResult, NotShownBecause } from './link.ts';
import { canBeLowered } from './link.ts';

/**
 * The tower against what its maker's ratings prove.
 *
 * u = max over levels of demand/capacity
 *
 * @param model the tower [-]
 * @param uses of all checks [-]
 * @param demand of the design wind at the bad end, without least pressures [-]
 * @returns the link [-]
 * @source derived
 */
export function towerLink(model: TowerModel, uses: readonly CheckUse[], demand: Demand): Link {
  const { inquiry } = model;
  const base = { id: 'tower', kind: 'tower' } as const;
  const found = linkUse(uses, 'tower');
  const needs = towerNeeds(model);
  if (supportsUntold(model)) return { ...base, verdict: 'not-shown', because: 'missing', needs };
  if (model.lowest >= model.inquiry.station.tower.top) {
    return { ...base, verdict: 'not-shown', because: 'held', needs: ['/tower/held', ...needs] };
  }
  if (!found || model.claims.length + model.momentClaims.length === 0) {
    return { ...base, verdict: 'not-shown', because: 'missing', needs };
  }
  if (!Number.isFinite(found.bad)) {
    const because = needs.length > 0 ? 'missing' : 'unproven';
    const partial = finiteResult(model, uses, 'tower', demand);
    return { ...base, verdict: 'not-shown', because, needs, ...(partial ? { result: partial } : {}) };
  }
  const result = resultOf(model, found, demand);
  const verdict = verdictOf(found.bad, found.goodOver, inquiry.wanted.margin);
  if (verdict === 'over') {
    const over = compared(model, found.governingOver ?? found.governing, demand);
    return { ...base, verdict, needs: [], result: over.use < result.use ? { ...result, over } : result };
  }
  const held = heldGaps(model);
  if (held.length > 0) return { ...base, verdict: 'not-shown', because: 'held', needs: held, result };
  if (needs.length > 0) return { ...base, verdict: 'not-shown', because: 'missing', needs, result };
  if (verdict !== 'not-shown') return { ...base, verdict, needs: [], result };
  return { ...base, verdict, because: found.good > 1 ? 'unproven' : 'unsettled', needs: [], result };
}

/** Where only part of the checks has a proof, what that part says. */
function finiteResult(
  model: TowerModel,
  uses: readonly CheckUse[],
  link: 'tower' | 'tower-top',
  demand: Demand,
): LinkResult | undefined {
  const found = linkUse(
    uses.filter((use) => Number.isFinite(use.bad) && use.capacity > 0),
    link,
  );
  if (!found) return undefined;
  const { holdsTo: _, keepsMarginTo: __, ...rest } = resultOf(model, found, demand);
  return rest;
}

function resultOf(model: TowerModel, found: LinkUse, demand: Demand): LinkResult {
  const { governing } = found;
  const { check } = governing;
  const hung = demand.hung[governing.scenario] as Profile;
  const { value: _, ...headings } = worstOfGroups(groupedSum(hung, check.of, check.level));
  const holds = holdsTo(model, check.link, demand);
  const keeps =
    holds && canBeLowered(model) ? holdsTo(model, check.link, demand, 1 - model.inquiry.wanted.margin) : undefined;
  return {
    ...compared(model, governing, demand),
    useRange: [Math.min(found.good, found.bad), found.bad],
    headings,
    ...(holds ? { holdsTo: holds } : {}),
    ...(keeps ? { keepsMarginTo: keeps.gust } : {}),
    ...inCalm(model, calmUse(model, check.link)),
  };
}

function compared(model: TowerModel, use: CheckUse, demand: Demand): Compared {
  const torsion = (demand.hung[use.scenario] as Profile).torsion[use.check.level] as number;
  const of = isBraced(model, use.check, torsion) ? 'braces' : use.check.of;
  return {
    use: use.bad,
    of: use.byWindRatio ? 'wind-ratio' : of,
    demand: use.demand,
    capacity: use.capacity,
    height: (model.levels[use.check.level] as Level).z,
    place: use.check.place,
  };
}

/** What the tower link cannot do without. */
function towerNeeds(model: TowerModel): readonly string[] {
  const needs: string[] = [];
  const untold = supportsUntold(model);
  if (untold) needs.push('/tower/held');
  if (model.claims.length + model.momentClaims.length === 0) {
    // Ratings that name supports may fit once the tower's own are told.
    needs.push(...ratingNeeds(model).filter((need) => !untold || !need.endsWith('/held')));
  }
  if (
    !model.ownKnown &&
    model.claims.every((claim) => claim.cases.every((each) => !each.rated.some((rated) => rated.provesOwn)))
  ) {
    needs.push('/tower/shape');
  }
  needs.push(...stillUntold(model));
  return needs;
}

/** What keeps the ratings of the tower from speaking of it, where none does. */
function ratingNeeds({ inquiry }: TowerModel): readonly string[] {
  const { tower } = inquiry.station;
  const ofTower = inquiry.ratings.filter(({ of, claim }) => of === 'tower' && claim.kind !== 'weight');
  if (ofTower.length === 0) return ['/ratings'];
  const unfinished = ofTower.find((rating) => rating.claim.kind === 'area' && misfitsOf(rating, tower).length === 0);
  return [
    ...(unfinished ? [`${unfinished.at}/wind${fitsNoStandard(unfinished) ? '/year' : ''}`] : []),
    ...ofTower.flatMap((rating) => misfitsOf(rating, tower).map((misfit) => `${rating.at}/${misfit}`)),
  ];
}

/** It leans on guys or brackets, and neither the plan nor its ratings tell where. */
function supportsUntold({ inquiry }: TowerModel): boolean {
  const { tower } = inquiry.station;
  return leansOn(tower) && tower.held.length === 0;
}

/**
 * Below its highest support a tower is no cantilever, and nothing is compared; what must hold for the rating to speak for it
 * all the same: guys as the maker draws them, and nothing there but lines and its own drag, within the rated own drag.
 */
function heldGaps(model: TowerModel): readonly string[] {
  const { tower, loads, cables } = model.inquiry.station;
  if (!leansOn(tower)) return [];
  const gaps: string[] = [];
  if (tower.support === 'guyed' && !tower.asDrawn) gaps.push('/tower/asDrawn');
  for (const load of loads) if (load.low < model.lowest) gaps.push(`${load.at}/height`);
  const unnamed = model.claims.filter((claim) => claim.cases.every((each) => !each.rated[0]?.provesOwn));
  if (unnamed.length > 0 && unnamed.length === model.claims.length) {
    // Nothing but a named standard stands behind the wind on the tower itself.
    for (const claim of unnamed) gaps.push(`${claim.rating.at}/wind/method`);
  } else if (!model.ownKnown) {
    // Alone it is within the rated wind where its use is; how much room that leaves for lines, only its shape tells.
    if (tower.support === 'guyed' || cables.length > 0) gaps.push('/tower/shape');
  } else if (model.claims.every((claim) => !ownStaysBelow(model, claim.number))) {
    gaps.push(cables.length > 0 ? '/cables' : '/tower');
  }
  return gaps;
}

/** Own drag plus lines is nowhere above the rated own drag; on a bracketed tower, nowhere below its highest support. */
function ownStaysBelow(model: TowerModel, number: number): boolean {
  const claim = model.claims.find((each) => each.number === number);
  if (!claim || !model.ownKnown) return false;
  const { levels, hold, lowest } = model;
  const { support } = model.inquiry.station.tower;
  const { speed } = siteSpeed(model.inquiry);
  return model.scenarios.every((_, scenario) => {
    const own = model.ownWind[scenario] as Windward;
    const asked = profileOf(own, sliceForces(own, speed, 'good', true), levels, hold);
    const cut = model.hungWind[scenario] as Windward;
    const lines = cut.items.map((item) => (item.kind === 'lines' ? 1 : 0));
    const forces = sliceForces(cut, speed, 'bad', true);
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
 * @param uses of all checks [-]
 * @param demand of the design wind at the bad end, without least pressures [-]
 * @returns the link, where there is a mast [-]
 * @source derived
 */
export function topLink(model: TowerModel, uses: readonly CheckUse[], demand: Demand): readonly Link[] {
  const { mast } = model.inquiry.station;
  if (!mast) return [];
  const base = { id: 'tower-top', kind: 'tower-top' } as const;
  const found = linkUse(uses, 'tower-top');
  if (supportsUntold(model)) return [{ ...base, verdict: 'not-shown', because: 'missing', needs: ['/tower/held'] }];
  if (mast.foot === undefined) return [{ ...base, verdict: 'not-shown', because: 'missing', needs: ['/mast/inside'] }];
  if (!found) return [];
  if (!Number.isFinite(found.bad))
    return [{ ...base, verdict: 'not-shown', because: 'unproven', needs: towerNeeds(model) }];
  const result = resultOf(model, found, demand);
  const untold = stillUntold(model);
  const verdict = verdictOf(found.bad, found.goodOver, model.inquiry.wanted.margin);
  if (untold.length > 0 && verdict !== 'over') {
    const { holdsTo: _, keepsMarginTo: __, ...rest } = result;
    return [{ ...base, verdict: 'not-shown', because: 'missing', needs: untold, result: rest }];
  }
  if (verdict !== 'not-shown') return [{ ...base, verdict, needs: [], result }];
  return [{ ...base, verdict, because: found.good > 1 ? 'unproven' : 'unsettled', needs: [], result }];
}

/**
 * Tower and its top in the ice case.
 *
 * @param model the bare tower [-]
 * @param ice its ice case [-]
 * @returns the link, where the plan gives ice [-]
 * @source derived
 */
export function iceLink(model: TowerModel, ice: IceCase | undefined): readonly Link[] {
  if (!ice) return [];
  const base = { id: 'ice', kind: 'ice' } as const;
  const { shown } = ice;
  const notShown = (because: NotShownBecause, needs: readonly string[], result?: LinkResult): readonly Link[] => [
    { ...base, verdict: 'not-shown', because, needs, ...(result ? { result } : {}) },
  ];
  if (!shown) return notShown(ice.thicknessAtTop === undefined ? 'no-ice-rule' : 'missing', ice.needs);
  const found = linkUse(shown.uses, 'tower', 'tower-top');
  const needs = towerNeeds(model);
  if (model.lowest >= model.inquiry.station.tower.top) return notShown('held', needs);
  if (!found || !Number.isFinite(found.bad)) return notShown(needs.length > 0 ? 'missing' : 'unproven', needs);
  const { holdsTo: _, keepsMarginTo: __, ...result } = resultOf(shown.model, found, shown.bad);
  const verdict = verdictOf(found.bad, found.goodOver, model.inquiry.wanted.margin);
  if (verdict === 'over') return [{ ...base, verdict, needs: [], result }];
  // Ice makes the tower's own drag larger than any rated one, which the proof of a held tower leans on.
  if (leansOn(model.inquiry.station.tower)) return notShown('held', [], result);
  if (needs.length > 0) return notShown('missing', needs, result);
  if (verdict !== 'not-shown') return [{ ...base, verdict, needs: [], result }];
  return notShown(found.good > 1 ? 'unproven' : 'unsettled', [], result);
}
