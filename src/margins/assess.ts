import { GRAVITY } from '../foundation/index.ts';
import { METHOD_BY_ID, type Wind } from '../methods/index.ts';
import {
  groupedSum,
  type Level,
  type Profile,
  profileOf,
  sliceForces,
  type Windward,
  worstOfGroups,
} from '../structure/index.ts';
import { type Caution, cautionsOf } from './cautions.ts';
import { type Chances, chancesOf } from './chance.ts';
import { type Gaps, openQuestions } from './gaps.ts';
import { type HoldsTo, holdsTo } from './holds-to.ts';
import { type IceCase, iceCaseOf } from './ice-case.ts';
import type { Inquiry } from './inquiry.ts';
import { type Ledger, ledgerOf } from './ledger.ts';
import { type RoomLeft, roomLeftAt } from './room-left.ts';
import { type Demand, demandOf, type SiteSpeed, siteSpeed, type TowerModel, towerModel } from './tower-model.ts';
import { type CheckUse, type LinkUse, linkUse, towerUses } from './tower-use.ts';
import { type Verdict, verdictOf, worstVerdict } from './verdict.ts';

/** Why a link is not shown. */
export type NotShownBecause =
  /** Something it cannot do without is missing. */
  | 'missing'
  /** The readings of what is open disagree. */
  | 'unsettled'
  /** It is more than the maker's rating shows, which is not the same as over. */
  | 'unproven'
  /** No cantilever below the highest support. */
  | 'held'
  /** The method has no ice, or none of ours. */
  | 'no-ice-rule'
  /** Not worked out by this version. */
  | 'not-computed';

/** One thing that could give first. */
export interface Link {
  readonly id: string;
  readonly kind: 'tower' | 'tower-top' | 'ice' | 'mast' | 'antenna' | 'foundation';
  /** The owner's name of it, where he gave one. */
  readonly name?: string;
  readonly verdict: Verdict;
  readonly because?: NotShownBecause;
  /** Pointers to what is missing. */
  readonly needs: readonly string[];
  readonly result?: LinkResult;
}

export interface LinkResult extends Compared {
  /** Good and bad end of what is open. */
  readonly useRange: readonly [number, number];
  readonly headings: { readonly fixed?: number; readonly turning?: number };
  readonly holdsTo?: HoldsTo;
  /** Where a verdict is `over`: the comparison that says so, if a larger use elsewhere says less. */
  readonly over?: Compared;
}

/** One comparison. */
export interface Compared {
  readonly use: number;
  readonly of: 'moment' | 'shear' | 'wind-ratio';
  readonly demand: number;
  readonly capacity: number;
  readonly height: number;
  readonly place: CheckUse['check']['place'];
}

/** Height, factors and wind there. */
export interface WindRow {
  readonly height: number;
  readonly exposureCoefficient: number;
  readonly topographicFactor: number;
  readonly pressure: number;
  /** The site's wind at this height: its speed times the root of the factors [m/s]. */
  readonly speed: number;
}

export interface Assessment {
  readonly inquiry: Inquiry;
  readonly model: TowerModel;
  readonly site: SiteSpeed;
  readonly wind: Wind;
  readonly windRows: readonly WindRow[];
  readonly links: readonly Link[];
  readonly verdict: Verdict;
  readonly soFar?: Verdict;
  readonly weakest?: string;
  readonly questions: Gaps;
  readonly ledger: Ledger;
  readonly reactions: Reactions;
  readonly heights: { readonly overall: number; readonly tower: number; readonly mast?: number };
  readonly roomLeft?: RoomLeft;
  /** Where a climate is given. */
  readonly chances?: Chances;
  readonly cautions: readonly Caution[];
  /** The same tower with ice, where ice is given. */
  readonly ice?: IceCase;
  /** What decided the tower's bad end, for the working. */
  readonly bad: Demand;
  readonly uses: readonly CheckUse[];
}

/** Shear [N] and moment [N·m] at the foot of the tower. */
export interface FootForces {
  readonly shear: number;
  readonly moment: number;
}

/** At the foot of the tower, at the headings of the ledger, as if nothing else held it. */
export interface Reactions {
  /** Of the wind and of what stays, at the worst heading of both. */
  readonly allowable: FootForces;
  /** For foundations. */
  readonly nominal: FootForces;
  /** Where the method has a strength level. */
  readonly strength?: FootForces;
  /** The part that stays when the wind does not: pull of wires, weight off the axis. Within the forces above. */
  readonly steady: FootForces;
  /** Brings the wind's part from the allowable level to the nominal load of foundations. */
  readonly toNominal: number;
  /** Guys or brackets take part of it, which is not worked out. */
  readonly heldAbove: boolean;
  /** Tower and what hangs on it [kg], as far as weights are given. */
  readonly weight?: number;
  /** What a bracketed tower may pull on its highest bracket, allowable level [N]. */
  readonly bracketPull?: number;
}

/**
 * The whole answer to a plan, in SI.
 *
 * @param inquiry the plan in SI [-]
 * @returns links, verdict, ledger, open questions, cautions [-]
 * @throws Refusal for what cannot be computed
 * @source derived
 */
export function assess(inquiry: Inquiry): Assessment {
  const model = towerModel(inquiry);
  const site = siteSpeed(inquiry);
  const wind = (model.hungWind[0] as Windward).wind;
  const bad = demandOf(model, model.hungWind, model.ownWind, site.speed, 'bad', true);
  const readTwoWays = model.hungWind.some((cut) => cut.readTwoWays);
  const good = readTwoWays ? demandOf(model, model.hungWind, model.ownWind, site.speed, 'good', true) : bad;
  const withoutLeast = bad.leastDecides
    ? demandOf(model, model.hungWind, model.ownWind, site.speed, 'bad', false)
    : bad;
  const uses = towerUses(model, bad, good);
  const { scenario, ...tower } = towerLink(model, uses, withoutLeast);
  const ice = iceCaseOf(model);
  const links = [tower, ...topLink(model, uses, withoutLeast), ...iceLink(model, ice), ...otherLinks(inquiry)];
  const shown = links.filter((link) => link.verdict !== 'not-shown').map((link) => link.verdict);
  const soFar = worstVerdict(shown);
  const weakest = weakestOf(links);
  const chances = chancesOf(inquiry, links);
  const ledger = ledgerOf(model, scenario, site.speed, bad);
  const questions = openQuestions(model, bad, site.speed);
  const showsRoom = links.every(
    (link) => (link.kind !== 'tower' && link.kind !== 'tower-top') || link.verdict !== 'not-shown',
  );
  const room = showsRoom ? roomLeftAt(model, bad, inquiry.station.tower.top) : undefined;
  return {
    inquiry,
    model,
    site,
    wind,
    windRows: windRows(inquiry, wind),
    links,
    verdict: worstVerdict(links.map((link) => link.verdict)) as Verdict,
    ...(soFar === undefined ? {} : { soFar }),
    ...(weakest === undefined ? {} : { weakest }),
    questions,
    ledger,
    reactions: reactionsOf(model, wind, ledger),
    heights: heightsOf(inquiry),
    ...(room === undefined ? {} : { roomLeft: room }),
    ...(chances === undefined ? {} : { chances }),
    cautions: cautionsOf(model, site, wind, links, uses, bad),
    ...(ice === undefined ? {} : { ice }),
    bad,
    uses,
  };
}

function towerLink(model: TowerModel, uses: readonly CheckUse[], demand: Demand): Link & { readonly scenario: number } {
  const { inquiry } = model;
  const base = { id: 'tower', kind: 'tower' } as const;
  const found = linkUse(uses, 'tower');
  const needs = towerNeeds(model);
  if (!found || model.claims.length + model.momentClaims.length === 0) {
    return { ...base, verdict: 'not-shown', because: 'missing', needs, scenario: found?.governing.scenario ?? 0 };
  }
  const { scenario } = found.governing;
  if (!Number.isFinite(found.bad)) {
    const because = needs.length > 0 ? 'missing' : 'unproven';
    const partial = finiteResult(model, uses, 'tower', demand);
    return { ...base, verdict: 'not-shown', because, needs, scenario, ...(partial ? { result: partial } : {}) };
  }
  const result = resultOf(model, found, demand);
  const verdict = verdictOf(found.bad, found.goodOver, inquiry.wanted.margin);
  if (verdict === 'over') {
    const over = compared(model, found.governingOver ?? found.governing);
    return { ...base, verdict, needs: [], result: over.use < result.use ? { ...result, over } : result, scenario };
  }
  const held = heldGaps(model);
  if (held.length > 0) return { ...base, verdict: 'not-shown', because: 'held', needs: held, result, scenario };
  if (needs.length > 0) return { ...base, verdict: 'not-shown', because: 'missing', needs, result, scenario };
  if (verdict !== 'not-shown') return { ...base, verdict, needs: [], result, scenario };
  return { ...base, verdict, because: found.good > 1 ? 'unproven' : 'unsettled', needs: [], result, scenario };
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
  const { holdsTo: _, ...rest } = resultOf(model, found, demand);
  return rest;
}

function resultOf(model: TowerModel, found: LinkUse, demand: Demand): LinkResult {
  const { governing } = found;
  const { check } = governing;
  const { value: _, ...headings } = worstOfGroups(
    groupedSum(demand.hung[governing.scenario] as Profile, check.of, check.level),
  );
  const holds = holdsTo(model, check.link, demand);
  return {
    ...compared(model, governing),
    useRange: [Math.min(found.good, found.bad), found.bad],
    headings,
    ...(holds ? { holdsTo: holds } : {}),
  };
}

function compared(model: TowerModel, use: CheckUse): Compared {
  return {
    use: use.bad,
    of: use.byWindRatio ? 'wind-ratio' : use.check.of,
    demand: use.demand,
    capacity: use.capacity,
    height: (model.levels[use.check.level] as Level).z,
    place: use.check.place,
  };
}

/** What the tower link cannot do without. */
function towerNeeds(model: TowerModel): readonly string[] {
  const { ratings, station } = model.inquiry;
  const needs: string[] = [];
  if (model.claims.length + model.momentClaims.length === 0) {
    const unfinished = ratings.find((rating) => rating.of === 'tower' && rating.claim.kind === 'area');
    needs.push(unfinished ? `${unfinished.at}/wind` : '/ratings');
  }
  if (
    !model.ownKnown &&
    model.claims.every((claim) => claim.cases.every((each) => !each.rated.some((rated) => rated.provesOwn)))
  ) {
    needs.push('/tower/shape');
  }
  station.loads.forEach((load) => {
    if (load.shape.kind === 'wire' && load.shape.pull === undefined) needs.push(`${load.at}/tension`);
  });
  return needs;
}

/** Below the highest guy a tower is no cantilever; what must hold for the rating to speak for it all the same. */
function heldGaps(model: TowerModel): readonly string[] {
  const { tower, loads, cables } = model.inquiry.station;
  if (tower.support !== 'guyed') return tower.support === 'bracketed' && tower.held.length === 0 ? ['/tower/held'] : [];
  const gaps: string[] = [];
  if (tower.held.length === 0) gaps.push('/tower/held');
  if (!tower.asDrawn) gaps.push('/tower/asDrawn');
  for (const load of loads) if (load.low < model.lowest) gaps.push(`${load.at}/height`);
  const unnamed = model.claims.filter((claim) => claim.cases.every((each) => !each.rated[0]?.provesOwn));
  if (unnamed.length > 0 && unnamed.length === model.claims.length) {
    // Nothing but a named standard stands behind the wind on the tower itself.
    for (const claim of unnamed) gaps.push(`${claim.rating.at}/wind/method`);
  } else if (model.claims.every((claim) => !ownStaysBelow(model, claim.number))) {
    gaps.push(cables.length > 0 ? '/cables' : '/ratings');
  }
  return gaps;
}

/** Own drag plus lines is nowhere above the rated own drag. */
function ownStaysBelow(model: TowerModel, number: number): boolean {
  const claim = model.claims.find((each) => each.number === number);
  if (!claim || !model.ownKnown) return false;
  const { levels, hold } = model;
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
    return levels.every((_level, index) =>
      claim.cases.every((each) => {
        const proven = each.own[scenario];
        if (!proven || !each.rated[scenario]?.provesOwn) return false;
        // Per length of tower: what is added between one level and the next must stay within what was rated there.
        const before = index === 0 ? 0 : index - 1;
        const step = (values: number[]) => (values[index] as number) - (index === 0 ? 0 : (values[before] as number));
        return step(asked.shear) + step(ofLines.shear) <= step(proven.shear) + 1e-9;
      }),
    );
  });
}

function topLink(model: TowerModel, uses: readonly CheckUse[], demand: Demand): readonly Link[] {
  const { mast } = model.inquiry.station;
  if (!mast) return [];
  const base = { id: 'tower-top', kind: 'tower-top' } as const;
  const found = linkUse(uses, 'tower-top');
  if (mast.foot === undefined) return [{ ...base, verdict: 'not-shown', because: 'missing', needs: ['/mast/inside'] }];
  if (!found) return [];
  if (!Number.isFinite(found.bad))
    return [{ ...base, verdict: 'not-shown', because: 'unproven', needs: towerNeeds(model) }];
  const result = resultOf(model, found, demand);
  const verdict = verdictOf(found.bad, found.goodOver, model.inquiry.wanted.margin);
  if (verdict !== 'not-shown') return [{ ...base, verdict, needs: [], result }];
  return [{ ...base, verdict, because: found.good > 1 ? 'unproven' : 'unsettled', needs: [], result }];
}

/** Tower and its top in the ice case. */
function iceLink(model: TowerModel, ice: IceCase | undefined): readonly Link[] {
  if (!ice) return [];
  const base = { id: 'ice', kind: 'ice' } as const;
  const { shown } = ice;
  const notShown = (because: NotShownBecause, needs: readonly string[], result?: LinkResult): readonly Link[] => [
    { ...base, verdict: 'not-shown', because, needs, ...(result ? { result } : {}) },
  ];
  if (!shown) return notShown(ice.thicknessAtTop === undefined ? 'no-ice-rule' : 'missing', ice.needs);
  const found = linkUse(shown.uses, 'tower', 'tower-top');
  const needs = towerNeeds(model);
  if (!found || !Number.isFinite(found.bad)) return notShown(needs.length > 0 ? 'missing' : 'unproven', needs);
  const { holdsTo: _, ...result } = resultOf(shown.model, found, shown.bad);
  const verdict = verdictOf(found.bad, found.goodOver, model.inquiry.wanted.margin);
  if (verdict === 'over') return [{ ...base, verdict, needs: [], result }];
  // Ice makes the tower's own drag larger than any rated one, which a guyed tower's proof leans on.
  if (model.inquiry.station.tower.support === 'guyed') return notShown('held', [], result);
  if (needs.length > 0) return notShown('missing', needs, result);
  if (verdict !== 'not-shown') return [{ ...base, verdict, needs: [], result }];
  return notShown(found.good > 1 ? 'unproven' : 'unsettled', [], result);
}

/** Links that a later version works out: listed, so that nobody takes their silence for a pass. */
function otherLinks(inquiry: Inquiry): readonly Link[] {
  const { mast, loads, tower } = inquiry.station;
  const links: Link[] = [];
  const needsMast = loads.some((load) => load.low > tower.top + 1e-6);
  const notShown = (id: string, kind: Link['kind'], needs: readonly string[], name?: string): Link => ({
    id,
    kind,
    ...(name === undefined ? {} : { name }),
    verdict: 'not-shown',
    because: needs.length > 0 ? 'missing' : 'not-computed',
    needs,
  });
  if (!mast) {
    if (needsMast) links.push(notShown('mast', 'mast', ['/mast']));
  } else {
    const needs = [
      ...(mast.wall === undefined ? ['/mast/wall'] : []),
      ...(mast.yieldStrength === undefined ? ['/mast/yield'] : []),
      ...(mast.foot === undefined ? ['/mast/inside'] : []),
    ];
    links.push(notShown('mast', 'mast', needs));
  }
  for (const load of loads) {
    if (load.shape.kind === 'wire') continue;
    links.push(notShown(`antenna:${load.name}`, 'antenna', load.ratedWind ? [] : [`${load.at}/ratedWind`], load.name));
  }
  links.push(notShown('foundation', 'foundation', tower.foundation ? [] : ['/tower/foundation']));
  return links;
}

function weakestOf(links: readonly Link[]): string | undefined {
  let weakest: Link | undefined;
  for (const link of links) {
    const gust = link.result?.holdsTo?.gust;
    if (gust !== undefined && (weakest === undefined || gust < (weakest.result?.holdsTo?.gust as number)))
      weakest = link;
  }
  return weakest?.id;
}

/** Spacing of the wind table: ten feet or three metres. */
const WIND_SPACING = { us: 3.048, si: 3 } as const;

function windRows(inquiry: Inquiry, wind: Wind): readonly WindRow[] {
  const { station } = inquiry;
  const { overall } = heightsOf(inquiry);
  const spacing = WIND_SPACING[station.units];
  const heights = new Set<number>([overall, station.tower.top]);
  const base = Math.ceil((station.tower.foot + 1e-9) / spacing) * spacing;
  for (let z = base; z < overall; z += spacing) heights.add(z);
  return [...heights].sort((a, b) => b - a).map((height) => windAt(wind, height));
}

/**
 * The site's wind at one height.
 *
 * v(z) = V·√(Kz·Kzt·Ke)
 *
 * @param wind the wind [-]
 * @param height above ground [m]
 * @returns factors, pressure [Pa] and speed [m/s]
 * @source derived
 */
export function windAt(wind: Wind, height: number): WindRow {
  const exposureCoefficient = wind.exposureCoefficient(height);
  const topographicFactor = wind.topographicFactor(height);
  return {
    height,
    exposureCoefficient,
    topographicFactor,
    pressure: wind.pressure(height),
    speed: wind.conditions.speed * Math.sqrt(exposureCoefficient * topographicFactor * wind.elevationFactor),
  };
}

function heightsOf(inquiry: Inquiry): Assessment['heights'] {
  const { tower, mast, loads } = inquiry.station;
  const overall = loads.reduce((highest, load) => Math.max(highest, load.high), Math.max(tower.top, mast?.tip ?? 0));
  return { overall, tower: tower.top, ...(mast ? { mast: mast.tip } : {}) };
}

/** ASCE/SEI 7-16 2.3.1 and ANSI/TIA-222-H 2.3.2: 1.2D beside the wind, from memory. */
const STEADY_AT_STRENGTH = 1.2;

function reactionsOf(model: TowerModel, wind: Wind, ledger: Ledger): Reactions {
  const { tower, loads, cables } = model.inquiry.station;
  const method = METHOD_BY_ID[model.inquiry.method];
  const strengthMap = wind.conditions.speedLevel === 'strength';
  const nominal = strengthMap ? 0.6 : method.nominal;
  const strength = strengthMap ? 1 : method.strength;
  const allWeights =
    tower.weight !== undefined &&
    loads.every((load) => load.weight !== undefined) &&
    cables.every((run) => run.weight !== undefined);
  const last = model.levels.length - 1;
  const weight = allWeights ? (tower.weight as number) + (model.dead.weight[last] as number) : undefined;
  const pull = bracketPull(model, ledger);
  const steady = {
    shear: model.dead.pullShear[last] as number,
    moment: (model.dead.pullMoment[last] as number) + (model.dead.leaning[last] as number) * GRAVITY,
  };
  const at = (windFactor: number, steadyFactor: number): FootForces => ({
    shear: ledger.total.force * windFactor + steady.shear * steadyFactor,
    moment: ledger.total.momentAtFoot * windFactor + steady.moment * steadyFactor,
  });
  return {
    allowable: at(1, 1),
    nominal: at(nominal / wind.level, 1),
    ...(strength === undefined
      ? {}
      : { strength: at(strength / wind.level, method.strengthOfSteady ?? STEADY_AT_STRENGTH) }),
    steady,
    toNominal: nominal / wind.level,
    heldAbove: tower.support === 'guyed' || tower.support === 'bracketed',
    ...(weight === undefined ? {} : { weight }),
    ...(pull === undefined ? {} : { bracketPull: pull }),
  };
}

/**
 * ΣF(1 + 1.5·a/l), a above the bracket, l from the bracket to the foot: fixed at the foot, propped at the bracket. What
 * blows below it counts in full, which is more than its share; a row that reaches past it is parted there.
 */
function bracketPull(model: TowerModel, ledger: Ledger): number | undefined {
  const { tower } = model.inquiry.station;
  if (tower.support !== 'bracketed' || tower.held.length === 0) return undefined;
  const span = model.lowest - tower.foot;
  if (span <= 0) return undefined;
  return ledger.rows.reduce((sum, { force, momentAtFoot, low, high }) => {
    if (high <= model.lowest || force <= 0) return sum + force;
    const parted = low < model.lowest;
    const share = parted ? (high - model.lowest) / (high - low) : 1;
    const above = parted ? (high - model.lowest) / 2 : momentAtFoot / force - span;
    return sum + force * (1 + (share * 1.5 * above) / span);
  }, 0);
}
