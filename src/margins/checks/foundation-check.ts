import type { Trace } from '../../foundation/index.ts';
import {
  type BlockComparison,
  blockFooting,
  type FootLoad,
  type Foundation,
  momentToPressure,
  type PierComparison,
  type Profile,
  pierFooting,
  profileOf,
  type SlicesInWind,
  sliceForces,
  untoldWeights,
} from '../../structure/index.ts';
import { roomByMoment } from '../formulas.ts';
import { actualSlicesInWind, holdsTo } from '../holds-to.ts';
import { holdsToRatio, type RatioByWind, ratioWithoutWind } from '../holds-to-ratio.ts';
import type { Reactions } from '../reactions.ts';
import { forcePerArea, type RoomByCheck } from '../room-by-check.ts';
import { type Demand, siteSpeed, stillUntold, type TowerModel } from '../tower-model.ts';
import { type ComparisonRatio, ratioInCalm } from '../tower-ratio.ts';
import { verdictOf } from '../verdict.ts';
import type { Check, Compared } from './check.ts';
import { canBeLowered } from './check.ts';

/** What the footing does, beside its ratio. */
export interface FoundationAnswer {
  readonly kind: Foundation['kind'];
  readonly load: FootLoad;
  readonly block?: BlockComparison;
  readonly pier?: PierComparison;
}

export interface FoundationResult {
  readonly check: Check;
  readonly answer?: FoundationAnswer;
}

export interface FootingContext {
  readonly model: TowerModel;
  readonly ratios: readonly ComparisonRatio[];
  /** Of the design wind at the unfavourable end, with and without least pressures. */
  readonly unfavourable: Demand;
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
 * @returns the check, and what the footing does [-]
 * @source ibc-2018
 */
export function foundationCheck(context: FootingContext): FoundationResult {
  const { model } = context;
  const { tower } = model.input.station;
  const base = { id: 'foundation', kind: 'foundation' } as const;
  const { foundation } = tower;
  const missing = (needs: readonly string[]): FoundationResult => ({
    check: { ...base, verdict: 'open', because: 'missing', needs },
  });
  if (!foundation) return missing(['/tower/foundation']);
  if (tower.support === 'guyed' || tower.support === 'bracketed' || tower.support === 'roof') {
    return { check: { ...base, verdict: 'open', because: 'held', needs: [] } };
  }
  if (foundation.kind === 'maker') return byMaker(context);
  const load = footLoad(context);
  const steady = context.reactions.withoutWind;
  const at = (wind: { readonly shear: number; readonly moment: number }): FootLoad => ({
    ...load,
    shear: wind.shear + steady.shear,
    moment: wind.moment + steady.moment,
  });
  const judged = judge(foundation, load);
  const needs = [
    ...(foundation.kind === 'block' && load.weight === undefined ? weightNeeds(model) : []),
    ...(model.bareTowerKnown ? [] : ['/tower/shape']),
    ...stillUntold(model),
  ];
  const winds = windsAtFoot(context);
  const reaches = (target: number) => {
    const { speed } = siteSpeed(model.input);
    if (foundation.kind === 'pier' || judged.block === undefined) {
      const pier = byRatio(winds, (wind) => judge(foundation, at(wind)).compared.ratio);
      return holdsToRatio(model.input, pier, speed, target);
    }
    const most = mostMoment(foundation, judged.block, target);
    const block = byRatio(winds, (wind) => {
      const { shear, moment } = at(wind);
      return (moment + shear * foundation.depth) / most;
    });
    return holdsToRatio(model.input, block, speed, 1);
  };
  const holds = needs.length > 0 ? undefined : reaches(1);
  const keeps = holds && canBeLowered(model) ? reaches(1 - model.input.wanted.margin) : undefined;
  const { compared } = judged;
  const readTwoWays = model.appurtenancesInWind.some((cut) => cut.readTwoWays);
  const ratioAtBest = readTwoWays ? judge(foundation, at(favourableShare(context))).compared.ratio : compared.ratio;
  const result = {
    ...compared,
    height: tower.foot,
    ratioRange: [Math.min(ratioAtBest, compared.ratio), compared.ratio] as const,
    headings: {},
    ...(holds ? { holdsTo: holds } : {}),
    ...(keeps ? { keepsMarginTo: keeps.gust } : {}),
    ...ratioWithoutWind(model, judge(foundation, at({ shear: 0, moment: 0 })).compared.ratio),
  };
  const answer = {
    kind: foundation.kind,
    load,
    ...(judged.block ? { block: judged.block } : {}),
    ...(judged.pier ? { pier: judged.pier } : {}),
  };
  const verdict = verdictOf(compared.ratio, ratioAtBest, model.input.wanted.margin);
  if (verdict !== 'over' && needs.length > 0) {
    return { check: { ...base, verdict: 'open', because: 'missing', needs, result }, answer };
  }
  const because = verdict === 'open' ? ({ because: 'readings-disagree' } as const) : {};
  return { check: { ...base, verdict, ...because, needs: [], result }, answer };
}

interface Judged {
  readonly compared: Compared;
  readonly block?: BlockComparison;
  readonly pier?: PierComparison;
}

function judge(foundation: Exclude<Foundation, { kind: 'maker' }>, load: FootLoad, trace?: Trace): Judged {
  if (foundation.kind === 'pier') {
    const pier = pierFooting(foundation, load, trace);
    return { pier, compared: { ratio: pier.ratio, of: 'embedment', demand: pier.demand, capacity: pier.capacity } };
  }
  const { length, width, depth, bearing } = foundation;
  const block = blockFooting({ length, width, depth, bearing }, load, trace);
  const [edge] = [...block.edges].sort((a, b) => b.ratio - a.ratio);
  const overturning: Compared = {
    ratio: block.overturning.ratio,
    of: 'overturning',
    demand: block.momentAtUnderside,
    capacity: 0.6 * (edge?.holding ?? 0),
  };
  const { toe, toePressureRatio } = block;
  if (toePressureRatio === undefined || toe === undefined || toePressureRatio <= overturning.ratio)
    return { block, compared: overturning };
  return {
    block,
    compared: { ratio: toePressureRatio, of: 'toe-pressure', demand: toePressureRatio * bearing, capacity: bearing },
  };
}

/** The design wind at the foot, at the nominal level, with what stays: shear and moment each at its worst heading. */
function footLoad({ model, unfavourable, reactions }: FootingContext): FootLoad {
  const { withoutWind: steady, toNominal, weight } = reactions;
  const last = model.levels.length - 1;
  const most = (of: 'shear' | 'moment') =>
    Math.max(
      ...model.scenarios.map(
        (_, each) => (unfavourable.appurtenances[each]?.[of][last] ?? 0) + (unfavourable.own[each]?.[of][last] ?? 0),
      ),
    );
  return {
    shear: toNominal * most('shear') + steady.shear,
    moment: toNominal * most('moment') + steady.moment,
    ...(weight === undefined ? {} : { weight }),
  };
}

/** The same at the favourable end of the readings, wind alone. */
function favourableShare(context: FootingContext): { readonly shear: number; readonly moment: number } {
  const { model, reactions } = context;
  const { speed } = siteSpeed(model.input);
  return windAtFoot(model, model.appurtenancesInWind, model.bareTowerInWind, speed, 'favourable', reactions.toNominal);
}

/**
 * Area that may be added at a height before the footing reaches the wanted margin: both its ratio grow in line with the force,
 * the pressure under a block as the moment up to which it may be pressed.
 *
 * A = (M_most − M_u)/(f·(h + T)); pier (1 − m − u)/(u_1 − u) for u_1 with one square metre
 *
 * @param context the tower, its uses and what it asks of its foot [-]
 * @param checks of the tower [-]
 * @returns the area at a height [-]; none where the footing is not shown or goes by the maker's rating, as the tower does
 * @source derived
 */
export function roomOfFooting(
  context: FootingContext,
  checks: readonly Check[],
): (height: number) => readonly RoomByCheck[] {
  const { model, reactions } = context;
  const { foundation, foot } = model.input.station.tower;
  const shown = checks.some(({ kind, verdict }) => kind === 'foundation' && verdict !== 'open');
  if (!shown || !foundation || foundation.kind === 'maker') return () => [];
  const wanted = model.input.wanted.margin;
  const load = footLoad(context);
  const { block, compared } = judge(foundation, load);
  const at = (height: number) => {
    const loadEffects = Math.max(...model.appurtenancesInWind.map(({ wind }) => forcePerArea(wind, height)));
    return { height, on: 'tower', check: 'foundation', perArea: reactions.toNominal * loadEffects } as const;
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
    const more = judge(foundation, withOne).compared.ratio - compared.ratio;
    const area = (1 - wanted - compared.ratio) / more;
    return [{ ...common, capacity: 1, demand: compared.ratio, arm: more / perArea, area }];
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

const byRatio = ({ design, actual, steadyUpTo }: WindsAtFoot, ratio: (wind: FootWind) => number): RatioByWind => ({
  design: (V) => ratio(design(V)),
  actual: (V) => ratio(actual(V)),
  steadyUpTo,
});

/** The wind at the foot by its speed; up to where no coefficient changes it goes with the square of it. */
function windsAtFoot({ model, reactions }: FootingContext): WindsAtFoot {
  const [appurtenances, own] = actualSlicesInWind(model);
  const all = [...model.appurtenancesInWind, ...model.bareTowerInWind, ...appurtenances, ...own];
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
    design: scaled((V) =>
      windAtFoot(model, model.appurtenancesInWind, model.bareTowerInWind, V, 'unfavourable', reactions.toNominal),
    ),
    // A wind that has come acts with all its force on the same footing.
    actual: scaled((V) => windAtFoot(model, appurtenances, own, V, 'unfavourable', 1)),
    steadyUpTo,
  };
}

/** The moment at its underside at which a block comes to a ratio. */
function mostMoment(
  block: Extract<Foundation, { kind: 'block' }>,
  comparison: BlockComparison,
  target: number,
): number {
  const tipping = target * 0.6 * Math.min(...comparison.edges.map((edge) => edge.holding));
  if (comparison.toe === undefined) return tipping;
  return Math.min(tipping, momentToPressure(block, comparison.deadLoad, target * block.bearing));
}

/** Shear and moment of the wind at the foot, the largest over what is open about the tower. */
function windAtFoot(
  model: TowerModel,
  appurtenances: readonly SlicesInWind[],
  own: readonly (SlicesInWind | undefined)[],
  speed: number,
  reading: 'unfavourable' | 'favourable',
  factor: number,
): { readonly shear: number; readonly moment: number } {
  if (speed <= 0) return { shear: 0, moment: 0 };
  const last = model.levels.length - 1;
  const profiles = new Map<SlicesInWind, Profile>();
  const profile = (cut: SlicesInWind) => {
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
    const hanging = profile(appurtenances[scenario] as SlicesInWind);
    const cut = own[scenario];
    const itself = cut ? profile(cut) : undefined;
    shear = Math.max(shear, (hanging.shear[last] as number) + (itself?.shear[last] ?? 0));
    moment = Math.max(moment, (hanging.moment[last] as number) + (itself?.moment[last] ?? 0));
  });
  return { shear: factor * shear, moment: factor * moment };
}

function weightNeeds({ input: { station } }: TowerModel): readonly string[] {
  return [...(station.tower.weight === undefined ? ['/tower/weight'] : []), ...untoldWeights(station)];
}

/** Built to the drawing that goes with the rating: what is proven at the foot of the tower is proven of its footing. */
function byMaker({ model, ratios, withoutLeast }: FootingContext): FoundationResult {
  const base = { id: 'foundation', kind: 'foundation' } as const;
  const { tower } = model.input.station;
  const atFoot = ratios.filter(
    (ratio) => model.levels[ratio.comparison.level]?.z === tower.foot && ratio.comparison.check === 'tower',
  );
  const worst = atFoot.reduce<ComparisonRatio | undefined>(
    (most, ratio) => (most && most.unfavourable >= ratio.unfavourable ? most : ratio),
    undefined,
  );
  if (!worst || !Number.isFinite(worst.unfavourable)) {
    return { check: { ...base, verdict: 'open', because: 'missing', needs: ['/ratings'] } };
  }
  const favourable = Math.max(...atFoot.map((ratio) => ratio.favourable));
  const verdict = verdictOf(worst.unfavourable, favourable, model.input.wanted.margin);
  const ofFoot = (comparison: ComparisonRatio['comparison']) =>
    comparison.check === 'tower' && model.levels[comparison.level]?.z === tower.foot;
  const holds = holdsTo(model, ofFoot, withoutLeast);
  const keeps =
    holds && canBeLowered(model) ? holdsTo(model, ofFoot, withoutLeast, 1 - model.input.wanted.margin) : undefined;
  const result = {
    ratio: worst.unfavourable,
    of: worst.byWindRatio ? ('wind-ratio' as const) : worst.comparison.of,
    demand: worst.demand,
    capacity: worst.capacity,
    height: tower.foot,
    ratioRange: [Math.min(favourable, worst.unfavourable), worst.unfavourable] as const,
    headings: {},
    ...(holds ? { holdsTo: holds } : {}),
    ...(keeps ? { keepsMarginTo: keeps.gust } : {}),
    ...ratioWithoutWind(model, ratioInCalm(model, ofFoot)),
  };
  // More than the rating shows at the foot says nothing of the concrete but that the maker has not shown it.
  if (verdict === 'over' || verdict === 'open') {
    return { check: { ...base, verdict: 'open', because: 'beyond-rating', needs: [], result } };
  }
  return { check: { ...base, verdict, needs: [], result } };
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
  const { foundation } = context.model.input.station.tower;
  if (!foundation || foundation.kind === 'maker') return;
  judge(foundation, footLoad(context), trace);
}
