import type { Trace } from '../../foundation/index.ts';
import {
  type BlockCheck,
  blockFooting,
  type FootLoad,
  type Foundation,
  momentToPressure,
  type PierCheck,
  type Profile,
  pierFooting,
  profileOf,
  sliceForces,
  untoldWeights,
  type Windward,
} from '../../structure/index.ts';
import { roomByMoment } from '../formulas.ts';
import { actualWindward, holdsTo } from '../holds-to.ts';
import { holdsToUse, inCalm, type UseByWind } from '../holds-to-use.ts';
import type { Reactions } from '../reactions.ts';
import { forcePerArea, type RoomByLink } from '../room-by-link.ts';
import { type Demand, siteSpeed, stillUntold, type TowerModel } from '../tower-model.ts';
import { type CheckUse, calmUse } from '../tower-use.ts';
import { verdictOf } from '../verdict.ts';
import type { Compared, Link } from './link.ts';
import { canBeLowered } from './link.ts';

/** What the footing does, beside its use. */
export interface FoundationAnswer {
  readonly kind: Foundation['kind'];
  readonly load: FootLoad;
  readonly block?: BlockCheck;
  readonly pier?: PierCheck;
}

export interface FoundationResult {
  readonly link: Link;
  readonly answer?: FoundationAnswer;
}

export interface FootingContext {
  readonly model: TowerModel;
  readonly uses: readonly CheckUse[];
  /** Of the design wind at the bad end, with and without least pressures. */
  readonly bad: Demand;
  readonly withoutLeast: Demand;
  readonly reactions: Reactions;
}

/**
 * The footing: a block against overturning and the pressure under its toe, a pier by its depth, or one built to the
 * maker's drawing, for which his ratings speak.
 *
 * block u = max(M/(0.6·D·B/2), p/p_soil); pier u = load over the load at which the depth is just enough
 *
 * @param context the tower, its uses and what it asks of its foot [-]
 * @returns the link, and what the footing does [-]
 * @source ibc-2018
 */
export function foundationLink(context: FootingContext): FoundationResult {
  const { model } = context;
  const { tower } = model.inquiry.station;
  const base = { id: 'foundation', kind: 'foundation' } as const;
  const { foundation } = tower;
  const missing = (needs: readonly string[]): FoundationResult => ({
    link: { ...base, verdict: 'not-shown', because: 'missing', needs },
  });
  if (!foundation) return missing(['/tower/foundation']);
  if (tower.support === 'guyed' || tower.support === 'bracketed' || tower.support === 'roof') {
    return { link: { ...base, verdict: 'not-shown', because: 'held', needs: [] } };
  }
  if (foundation.kind === 'maker') return byMaker(context);
  const load = footLoad(context);
  const steady = context.reactions.steady;
  const at = (wind: { readonly shear: number; readonly moment: number }): FootLoad => ({
    ...load,
    shear: wind.shear + steady.shear,
    moment: wind.moment + steady.moment,
  });
  const judged = judge(foundation, load);
  const needs = [
    ...(foundation.kind === 'block' && load.weight === undefined ? weightNeeds(model) : []),
    ...(model.ownKnown ? [] : ['/tower/shape']),
    ...stillUntold(model),
  ];
  const winds = windsAtFoot(context);
  const reaches = (target: number) => {
    const { speed } = siteSpeed(model.inquiry);
    if (foundation.kind === 'pier' || judged.block === undefined) {
      const pier = byUse(winds, (wind) => judge(foundation, at(wind)).compared.use);
      return holdsToUse(model.inquiry, pier, speed, target);
    }
    const most = mostMoment(foundation, judged.block, target);
    const block = byUse(winds, (wind) => {
      const { shear, moment } = at(wind);
      return (moment + shear * foundation.depth) / most;
    });
    return holdsToUse(model.inquiry, block, speed, 1);
  };
  const holds = needs.length > 0 ? undefined : reaches(1);
  const keeps = holds && canBeLowered(model) ? reaches(1 - model.inquiry.wanted.margin) : undefined;
  const { compared } = judged;
  const readTwoWays = model.hungWind.some((cut) => cut.readTwoWays);
  const useAtBest = readTwoWays ? judge(foundation, at(goodShare(context))).compared.use : compared.use;
  const result = {
    ...compared,
    height: tower.foot,
    useRange: [Math.min(useAtBest, compared.use), compared.use] as const,
    headings: {},
    ...(holds ? { holdsTo: holds } : {}),
    ...(keeps ? { keepsMarginTo: keeps.gust } : {}),
    ...inCalm(model, judge(foundation, at({ shear: 0, moment: 0 })).compared.use),
  };
  const answer = {
    kind: foundation.kind,
    load,
    ...(judged.block ? { block: judged.block } : {}),
    ...(judged.pier ? { pier: judged.pier } : {}),
  };
  const verdict = verdictOf(compared.use, useAtBest, model.inquiry.wanted.margin);
  if (verdict !== 'over' && needs.length > 0) {
    return { link: { ...base, verdict: 'not-shown', because: 'missing', needs, result }, answer };
  }
  const because = verdict === 'not-shown' ? ({ because: 'unsettled' } as const) : {};
  return { link: { ...base, verdict, ...because, needs: [], result }, answer };
}

interface Judged {
  readonly compared: Compared;
  readonly block?: BlockCheck;
  readonly pier?: PierCheck;
}

function judge(foundation: Exclude<Foundation, { kind: 'maker' }>, load: FootLoad, trace?: Trace): Judged {
  if (foundation.kind === 'pier') {
    const pier = pierFooting(foundation, load, trace);
    return { pier, compared: { use: pier.use, of: 'embedment', demand: pier.demand, capacity: pier.capacity } };
  }
  const { length, width, depth, bearing } = foundation;
  const block = blockFooting({ length, width, depth, bearing }, load, trace);
  const [edge] = [...block.edges].sort((a, b) => b.use - a.use);
  const overturning: Compared = {
    use: block.overturning.use,
    of: 'overturning',
    demand: block.momentAtUnderside,
    capacity: 0.6 * (edge?.holding ?? 0),
  };
  const { toe, bearingUse } = block;
  if (bearingUse === undefined || toe === undefined || bearingUse <= overturning.use)
    return { block, compared: overturning };
  return { block, compared: { use: bearingUse, of: 'toe-pressure', demand: bearingUse * bearing, capacity: bearing } };
}

/** The design wind at the foot, at the nominal level, with what stays: shear and moment each at its worst heading. */
function footLoad({ model, bad, reactions }: FootingContext): FootLoad {
  const { steady, toNominal, weight } = reactions;
  const last = model.levels.length - 1;
  const most = (of: 'shear' | 'moment') =>
    Math.max(...model.scenarios.map((_, each) => (bad.hung[each]?.[of][last] ?? 0) + (bad.own[each]?.[of][last] ?? 0)));
  return {
    shear: toNominal * most('shear') + steady.shear,
    moment: toNominal * most('moment') + steady.moment,
    ...(weight === undefined ? {} : { weight }),
  };
}

/** The same at the good end of the readings, wind alone. */
function goodShare(context: FootingContext): { readonly shear: number; readonly moment: number } {
  const { model, reactions } = context;
  const { speed } = siteSpeed(model.inquiry);
  return windAtFoot(model, model.hungWind, model.ownWind, speed, 'good', reactions.toNominal);
}

/**
 * Area that may be added at a height before the footing reaches the wanted margin: both its uses grow in line with the force,
 * the pressure under a block as the moment up to which it may be pressed.
 *
 * A = (M_most − M_u)/(f·(h + T)); pier (1 − m − u)/(u_1 − u) for u_1 with one square metre
 *
 * @param context the tower, its uses and what it asks of its foot [-]
 * @param links of the tower [-]
 * @returns the area at a height [-]; none where the footing is not shown or goes by the maker's rating, as the tower does
 * @source derived
 */
export function roomOfFooting(
  context: FootingContext,
  links: readonly Link[],
): (height: number) => readonly RoomByLink[] {
  const { model, reactions } = context;
  const { foundation, foot } = model.inquiry.station.tower;
  const shown = links.some(({ kind, verdict }) => kind === 'foundation' && verdict !== 'not-shown');
  if (!shown || !foundation || foundation.kind === 'maker') return () => [];
  const wanted = model.inquiry.wanted.margin;
  const load = footLoad(context);
  const { block, compared } = judge(foundation, load);
  const at = (height: number) => {
    const blown = Math.max(...model.hungWind.map(({ wind }) => forcePerArea(wind, height)));
    return { height, on: 'tower', link: 'foundation', perArea: reactions.toNominal * blown } as const;
  };
  if (foundation.kind === 'block' && block) {
    const [capacity, demand] = [mostMoment(foundation, block, 1 - wanted) / (1 - wanted), block.momentAtUnderside];
    return (height) => {
      const common = at(height);
      const arm = height - foot + foundation.depth;
      const area = roomByMoment.of(wanted, capacity, demand, common.perArea, arm);
      return [{ ...common, of: 'moment', capacity, demand, arm, area }];
    };
  }
  return (height) => {
    const common = at(height);
    const { perArea } = common;
    const withOne = { ...load, shear: load.shear + perArea, moment: load.moment + perArea * (height - foot) };
    const more = judge(foundation, withOne).compared.use - compared.use;
    const area = (1 - wanted - compared.use) / more;
    return [{ ...common, capacity: 1, demand: compared.use, arm: more / perArea, area }];
  };
}

interface FootWind {
  readonly shear: number;
  readonly moment: number;
}

interface WindsAtFoot {
  readonly design: (speed: number) => FootWind;
  readonly actual: (speed: number) => FootWind;
  readonly steadyUpTo: number;
}

const byUse = ({ design, actual, steadyUpTo }: WindsAtFoot, use: (wind: FootWind) => number): UseByWind => ({
  design: (V) => use(design(V)),
  actual: (V) => use(actual(V)),
  steadyUpTo,
});

/** The wind at the foot by its speed; up to where no coefficient changes it goes with the square of it. */
function windsAtFoot({ model, reactions }: FootingContext): WindsAtFoot {
  const [hung, own] = actualWindward(model);
  const all = [...model.hungWind, ...model.ownWind, ...hung, ...own];
  const steadyUpTo = Math.min(...all.map((cut) => cut?.steadyUpTo ?? Number.POSITIVE_INFINITY));
  const scaled = (find: (V: number) => FootWind) => {
    let unit: FootWind | undefined;
    return (V: number): FootWind => {
      if (V > steadyUpTo || steadyUpTo <= 0) return find(V);
      unit ??= find(Math.min(1, steadyUpTo));
      const share = (V / Math.min(1, steadyUpTo)) ** 2;
      return { shear: unit.shear * share, moment: unit.moment * share };
    };
  };
  return {
    design: scaled((V) => windAtFoot(model, model.hungWind, model.ownWind, V, 'bad', reactions.toNominal)),
    // A wind that has come acts with all its force on the same footing.
    actual: scaled((V) => windAtFoot(model, hung, own, V, 'bad', 1)),
    steadyUpTo,
  };
}

/** The moment at its underside at which a block comes to a use. */
function mostMoment(block: Extract<Foundation, { kind: 'block' }>, check: BlockCheck, target: number): number {
  const tipping = target * 0.6 * Math.min(...check.edges.map((edge) => edge.holding));
  if (check.toe === undefined) return tipping;
  return Math.min(tipping, momentToPressure(block, check.deadLoad, target * block.bearing));
}

/** Shear and moment of the wind at the foot, the largest over what is open about the tower. */
function windAtFoot(
  model: TowerModel,
  hung: readonly Windward[],
  own: readonly (Windward | undefined)[],
  speed: number,
  reading: 'bad' | 'good',
  factor: number,
): { readonly shear: number; readonly moment: number } {
  if (speed <= 0) return { shear: 0, moment: 0 };
  const last = model.levels.length - 1;
  const profiles = new Map<Windward, Profile>();
  const profile = (cut: Windward) => {
    let found = profiles.get(cut);
    if (!found) {
      found = profileOf(cut, sliceForces(cut, speed, reading, false), model.levels, model.hold);
      profiles.set(cut, found);
    }
    return found;
  };
  let shear = 0;
  let moment = 0;
  model.scenarios.forEach((_, scenario) => {
    const hanging = profile(hung[scenario] as Windward);
    const cut = own[scenario];
    const itself = cut ? profile(cut) : undefined;
    shear = Math.max(shear, (hanging.shear[last] as number) + (itself?.shear[last] ?? 0));
    moment = Math.max(moment, (hanging.moment[last] as number) + (itself?.moment[last] ?? 0));
  });
  return { shear: factor * shear, moment: factor * moment };
}

function weightNeeds({ inquiry: { station } }: TowerModel): readonly string[] {
  return [...(station.tower.weight === undefined ? ['/tower/weight'] : []), ...untoldWeights(station)];
}

/** Built to the drawing that goes with the rating: what is proven at the foot of the tower is proven of its footing. */
function byMaker({ model, uses, withoutLeast }: FootingContext): FoundationResult {
  const base = { id: 'foundation', kind: 'foundation' } as const;
  const { tower } = model.inquiry.station;
  const atFoot = uses.filter((use) => model.levels[use.check.level]?.z === tower.foot && use.check.link === 'tower');
  const worst = atFoot.reduce<CheckUse | undefined>(
    (most, use) => (most && most.bad >= use.bad ? most : use),
    undefined,
  );
  if (!worst || !Number.isFinite(worst.bad)) {
    return { link: { ...base, verdict: 'not-shown', because: 'missing', needs: ['/ratings'] } };
  }
  const good = Math.max(...atFoot.map((use) => use.good));
  const verdict = verdictOf(worst.bad, good, model.inquiry.wanted.margin);
  const ofFoot = (check: CheckUse['check']) => check.link === 'tower' && model.levels[check.level]?.z === tower.foot;
  const holds = holdsTo(model, ofFoot, withoutLeast);
  const keeps =
    holds && canBeLowered(model) ? holdsTo(model, ofFoot, withoutLeast, 1 - model.inquiry.wanted.margin) : undefined;
  const result = {
    use: worst.bad,
    of: worst.byWindRatio ? ('wind-ratio' as const) : worst.check.of,
    demand: worst.demand,
    capacity: worst.capacity,
    height: tower.foot,
    useRange: [Math.min(good, worst.bad), worst.bad] as const,
    headings: {},
    ...(holds ? { holdsTo: holds } : {}),
    ...(keeps ? { keepsMarginTo: keeps.gust } : {}),
    ...inCalm(model, calmUse(model, ofFoot)),
  };
  // More than the rating shows at the foot says nothing of the concrete but that the maker has not shown it.
  if (verdict === 'over' || verdict === 'not-shown') {
    return { link: { ...base, verdict: 'not-shown', because: 'unproven', needs: [], result } };
  }
  return { link: { ...base, verdict, needs: [], result } };
}

/**
 * The working of the footing.
 *
 * @param context the tower, its uses and what it asks of its foot [-]
 * @param trace the working [-]
 * @returns nothing [-]
 * @source ibc-2018
 */
export function explainFoundation(context: FootingContext, trace: Trace): void {
  const { foundation } = context.model.inquiry.station.tower;
  if (!foundation || foundation.kind === 'maker') return;
  judge(foundation, footLoad(context), trace);
}
