import type { LatticeShape } from '../areas/index.ts';
import { MILE_PER_HOUR, nth, type UnitSystem } from '../foundation/index.ts';
import { METHOD_BY_ID, type MethodId, SITE_METHODS } from '../methods/index.ts';
import {
  bareTowerWindKnown,
  type RatedLines,
  type Section,
  type SectionShape,
  sliceForces,
  type Tower,
} from '../structure/index.ts';
import type { Ground, GroundField, RiskCategory, SpeedBasis } from '../wind/index.ts';
import { assumptionsOf, plausiblePlans, worstPlans } from './assumed/assumptions.ts';
import { type CheckInput, enteredBasis } from './check-input.ts';
import { type MastAnswer, mastAnswer } from './checks/mast-holds.ts';
import type { Comparison } from './comparisons.ts';
import { requiredAreaByMoment, requiredAreaByShear } from './formulas.ts';
import type { ClaimCase, TowerModel } from './model.ts';
import { provenBy } from './rated-capacity.ts';
import { type RatedCase, ratedAreaFactor } from './rated-case.ts';
import type { Rating } from './rating.ts';
import { demandOf, once, siteSpeed, towerModel } from './tower-model.ts';

/** A wind that a maker may state an area for. */
export interface QuotedWind {
  readonly method: MethodId;
  /** [m/s] */
  readonly speed: number;
  /** Absent: that of its method. */
  readonly basis?: SpeedBasis;
  /** Absent where its method has none; where it has, every one that is left open is read, and the lowest counts. */
  readonly exposure?: Ground;
  readonly riskCategory?: RiskCategory;
}

export interface RequirementsAsked {
  /** Absent: what is usual where the plan's standard is used. */
  readonly quotes?: readonly QuotedWind[];
  /** Height of the rated area above the tower's top [m]; absent: where the wind loads above the top have their middle. */
  readonly above?: number;
  /** A wind that is wished for beside that of the site. */
  readonly wished?: { readonly speed: number; readonly basis?: SpeedBasis };
}

export const REQUIRED_WINDS = ['site', 'wished'] as const;
export const REQUIRED_LOADS = ['now', 'with-later'] as const;
/** How a tower of unknown shape may be built. */
export const TOWER_KINDS = ['lattice', 'pole'] as const;
export type TowerKind = (typeof TOWER_KINDS)[number];

/** What it takes, and where. */
export interface Needed {
  /** Area [m²], force [N] or moment [N·m]: the most over what the tower may be; Infinity where none suffices. */
  readonly value: number;
  /** The same by kind of tower, least and most of its own drag; absent where the plan gives its shape. */
  readonly byKind?: Readonly<Partial<Record<TowerKind, readonly [number, number]>>>;
  readonly governs?: NeededAt;
}

/** Where a requirement comes from: A = (D/(1 − m) − C_own)/(f·a). */
export interface NeededAt {
  readonly of: Comparison['of'];
  readonly place: Comparison['place'];
  /** [m] */
  readonly height: number;
  /** [N or N·m] */
  readonly demand: number;
  /** What the wind beside the rating shows of the tower itself and its lines [N or N·m]. */
  readonly own: number;
  /** Force on one square metre of effective area, allowable level [N/m²]; 1 of a force. */
  readonly perArea: number;
  /** Arm [m] or share [-]. */
  readonly arm: number;
}

export interface QuotedRequirement {
  readonly wind: QuotedWind;
  /** Effective area [m²]; absent where the tower is compared nowhere. */
  readonly area?: Needed;
  /** The same as a force beside that wind, allowable level [N]. */
  readonly force?: number;
  /** What the couple of the mast takes at the top by this rating alone, where that is more [m²]; Infinity where no area shows it. */
  readonly areaForTop?: number;
}

export interface RequirementCase {
  readonly wind: (typeof REQUIRED_WINDS)[number];
  readonly loads: (typeof REQUIRED_LOADS)[number];
  /** As entered [m/s]. */
  readonly speed: number;
  readonly basis: SpeedBasis;
  /** At the height of the rated area, the wind on the tower itself in it, allowable level [N]; absent like the area. */
  readonly force?: Needed;
  /** At the base, allowable level [N·m]; absent where the tower is not compared there. */
  readonly moment?: Needed;
  readonly quotes: readonly QuotedRequirement[];
  /** What the mast does to the top. */
  readonly mast?: MastAnswer;
  /** Of what is above the base, as far as it is known [kg]. */
  readonly weight: number;
  /** Loads without a weight. */
  readonly weightNotGiven: readonly string[];
}

export interface Requirements {
  readonly input: CheckInput;
  /** Height of the rated area above ground [m]. */
  readonly height: number;
  /** Lines that the rating is to include; absent: the area has to do for them. */
  readonly withCables?: RatedLines;
  /** The plan does not give the shape of the tower. */
  readonly anyTower: boolean;
  /** The tower stands on its own foot alone; else only what is above its highest support is compared. */
  readonly comparedFrom: number;
  readonly cases: readonly RequirementCase[];
}

/**
 * What to ask the makers of a tower for: the least that brings the tower's part just to the margin wanted, as a force, as a
 * moment at the base, and as an area in each wind that a maker may state.
 *
 * (1 − m)·capacity = demand, at the worst of all comparisons, scenarios and plausible readings of what the plan leaves out
 *
 * @param input the plan; its ratings of the tower are left out
 * @returns one case for each set of loads that is not empty, in each wind
 * @source derived
 */
export function requirementsOf(input: CheckInput, asked: RequirementsAsked = {}): Requirements {
  const steps = requirementSteps(input, asked);
  let step = steps.next();
  while (!step.done) step = steps.next();
  return step.value;
}

/** The same in steps, for who has something else to do in between. */
export function* requirementSteps(input: CheckInput, asked: RequirementsAsked): Generator<void, Requirements> {
  const { tower } = input.station;
  const own: CheckInput = { ...input, ratings: input.ratings.filter(({ of }) => of !== 'tower') };
  const whole = withLater(own);
  const above = asked.above ?? usualAbove(whole);
  const height = tower.top + above;
  const withCables = ratedWith(input);
  const stated: Stated = { height, top: tower.top, ...(withCables === undefined ? {} : { withCables }) };
  const quotes = asked.quotes ?? usualQuotes(input);
  const cases: RequirementCase[] = [];
  for (const { wind, loads, plan } of requirementPlans(own, asked.wished)) {
    const blowing = { wind, loads, speed: plan.site.speed, basis: enteredBasis(plan) };
    cases.push({ ...blowing, ...(yield* caseOf(plan, stated, quotes)) });
  }
  return {
    input,
    height,
    ...(withCables === undefined ? {} : { withCables }),
    anyTower: !bareTowerWindKnown(tower),
    comparedFrom: towerModel(own).comparedFromHeight,
    cases,
  };
}

/** A plan in one of the winds asked about, with one of the sets of loads. */
export interface RequirementPlan {
  readonly wind: RequirementCase['wind'];
  readonly loads: RequirementCase['loads'];
  readonly plan: CheckInput;
}

/**
 * The plan in the site's wind and in the one wished for, with the loads of now and with those that come later too; sets that
 * are empty are left out.
 */
export function requirementPlans(input: CheckInput, wished: RequirementsAsked['wished']): readonly RequirementPlan[] {
  const { station, later = [], site } = input;
  const sets = [
    ...(station.loads.length > 0 ? [{ loads: 'now', plan: input } as const] : []),
    ...(later.length > 0 ? [{ loads: 'with-later', plan: withLater(input) } as const] : []),
  ];
  const stronger = wished && {
    ...withoutReturnPeriod(site),
    speed: wished.speed,
    basis: wished.basis ?? ('gust3-nominal' as const),
  };
  return [
    ...sets.map((set) => ({ wind: 'site' as const, ...set })),
    ...(stronger
      ? sets.map(({ loads, plan }) => ({ wind: 'wished' as const, loads, plan: { ...plan, site: stronger } }))
      : []),
  ];
}

function withLater({ later = [], ...input }: CheckInput): CheckInput {
  const { station } = input;
  return { ...input, station: { ...station, loads: [...station.loads, ...later] } };
}

function withoutReturnPeriod({ returnYears: _, ...site }: CheckInput['site']): CheckInput['site'] {
  return site;
}

/** How a rating is to be stated. */
interface Stated {
  readonly height: number;
  readonly top: number;
  readonly withCables?: RatedLines;
}

function* caseOf(
  plan: CheckInput,
  stated: Stated,
  quotes: readonly QuotedWind[],
): Generator<void, Omit<RequirementCase, 'wind' | 'loads' | 'speed' | 'basis'>> {
  const towers = towersOf(plan);
  const [{ plan: first }] = towers;
  const model = towerModel(worstPlans(first, assumptionsOf(first))[0]);
  const mast = once(model, mastAnswer);
  const together = quotes.filter((wind) => goesWithOthers(wind, plan));
  const { moment, needed } = yield* needsOf(towers, [
    forceRating(stated),
    ...together.map((wind) => areaRating(wind, stated)),
  ]);
  const [force, ...found] = needed;
  const byWind = new Map(together.map((wind, index) => [wind, nth(found, index)]));
  for (const wind of quotes) {
    if (byWind.has(wind)) continue;
    const alone = yield* needsOf(towers, [areaRating(wind, stated)]);
    byWind.set(wind, nth(alone.needed, 0));
  }
  return {
    ...(force?.tower === undefined ? {} : { force: force.tower }),
    ...(moment === undefined ? {} : { moment }),
    quotes: quotes.map((wind) => quoted(wind, byWind.get(wind) ?? {})),
    ...(mast === undefined ? {} : { mast }),
    weight: Math.max(0, ...model.dead.weight),
    weightNotGiven: plan.station.loads.flatMap(({ name, weight }) => (weight === undefined ? [name] : [])),
  };
}

/**
 * Whether a rating's wind is worked out the same beside others: it shares with the site neither its rules nor a least pressure,
 * which only standards of structures at large have.
 */
function goesWithOthers({ method }: QuotedWind, { method: own }: CheckInput): boolean {
  return method !== own && METHOD_BY_ID[method].forTowers;
}

function quoted(wind: QuotedWind, { tower: area, top: forTop }: NeededByCheck): QuotedRequirement {
  if (area === undefined) return { wind };
  const perArea = area.governs?.perArea;
  return {
    wind,
    area,
    ...(perArea === undefined || !Number.isFinite(area.value) ? {} : { force: area.value * perArea }),
    ...(forTop !== undefined && forTop.value > area.value ? { areaForTop: forTop.value } : {}),
  };
}

interface NeededByCheck {
  readonly tower?: Needed | undefined;
  readonly top?: Needed | undefined;
}

/** What each of several ratings needs over all towers that are meant, and the moment at their base. */
function* needsOf(
  towers: Towers,
  ratings: readonly Rating[],
): Generator<void, { readonly moment: Needed | undefined; readonly needed: readonly NeededByCheck[] }> {
  const found: (FoundOnTower & { readonly kind: TowerKind | undefined })[] = [];
  for (const { plan, kind } of towers) {
    yield;
    found.push({ kind, ...neededOn(plan, ratings, kind) });
  }
  const over = (choose: (each: FoundOnTower) => Found) =>
    overTowers(found.map((each) => ({ of: choose(each), kind: each.kind })));
  return {
    moment: over(({ moment }) => moment),
    needed: ratings.map((_, number) => ({
      tower: over(({ byRating }) => nth(byRating, number).tower),
      top: over(({ byRating }) => nth(byRating, number)['tower-top']),
    })),
  };
}

const ASKED = '/ratings/asked';

/**
 * A rating of one square metre in a wind, which leaves nothing open but what that wind does.
 *
 * @param wind as a maker may state it
 */
function areaRating({ method, speed, basis, exposure, riskCategory }: QuotedWind, stated: Stated): Rating {
  return {
    at: ASKED,
    of: 'tower',
    claim: { kind: 'area', areaKind: 'effective', rows: [{ area: 1 }], also: [] },
    wind: {
      method,
      speed,
      ...(basis === undefined ? {} : { basis }),
      ...(exposure === undefined ? {} : { exposure }),
      ...(riskCategory === undefined ? {} : { riskCategory }),
    },
    ...stated,
  };
}

function forceRating({ height, top }: Stated): Rating {
  return {
    at: ASKED,
    of: 'tower',
    claim: { kind: 'force', force: 1, level: 'allowable', levelGiven: true },
    height,
    top,
  };
}

/** One tower that the plan may mean. */
interface TowerMeant {
  readonly plan: CheckInput;
  /** Of a tower of unknown shape. */
  readonly kind?: TowerKind;
}
type Towers = readonly [TowerMeant, ...TowerMeant[]];

/**
 * How thick small towers are: shapes between which the wind on most of them lies. The coefficient of a pole falls over the widths
 * between, so that some of them are tried as well; how many sides it has, nobody tells.
 *
 * @source common-practice
 */
const PLAUSIBLE_TOWERS: Readonly<Record<TowerKind, readonly SectionShape[]>> = {
  lattice: [latticeOf(3, 0.25, 'round', 0.15), latticeOf(4, 0.6, 'flat', 0.25)],
  pole: [0.08, 0.14, 0.2, 0.3].map((width) => ({ kind: 'pole', sides: 0, width: [width, width] })),
};

function latticeOf(
  faces: LatticeShape['faces'],
  width: number,
  members: LatticeShape['members'],
  solidity: number,
): LatticeShape {
  return { kind: 'lattice', faces, members, width: [width, width], solid: { by: 'solidity', solidity } };
}

/**
 * The plan's own tower; where it has no shape, one of every kind without any wind on itself, and at both ends of what is
 * plausible of it. What is required is a largest of straight lines in the own drag, so that its most is at an end.
 *
 * @source derived
 */
function towersOf(plan: CheckInput): Towers {
  const { tower } = plan.station;
  if (bareTowerWindKnown(tower)) return [{ plan }];
  const known = tower.sections.flatMap(({ shape }) => (shape ? [shape.kind] : []));
  const kinds = known.length === 0 ? TOWER_KINDS : TOWER_KINDS.filter((kind) => known.includes(kind));
  const [first, ...others] = kinds.flatMap((kind): readonly TowerMeant[] => [
    { plan, kind },
    ...PLAUSIBLE_TOWERS[kind].map((shape) => ({ plan: withTower(plan, shaped(tower, shape)), kind })),
  ]);
  return [first as TowerMeant, ...others];
}

function withTower(plan: CheckInput, tower: Tower): CheckInput {
  return { ...plan, station: { ...plan.station, tower } };
}

function shaped(tower: Tower, shape: SectionShape): Tower {
  return {
    ...tower,
    sections: tower.sections.map(
      (section): Section =>
        section.shape ? section : { ...section, shape, ...(shape.kind === 'pole' ? { notGiven: ['sides'] } : {}) },
    ),
  };
}

/** One requirement on one tower; undefined where nothing is compared. */
type Found = { readonly value: number; readonly governs: NeededAt } | undefined;

function overTowers(
  found: readonly { readonly of: Found; readonly kind: TowerKind | undefined }[],
): Needed | undefined {
  let most: Found;
  const byKind: Partial<Record<TowerKind, readonly [number, number]>> = {};
  for (const { of, kind } of found) {
    if (of === undefined) continue;
    if (most === undefined || of.value > most.value) most = of;
    if (kind === undefined) continue;
    const [least, largest] = byKind[kind] ?? [of.value, of.value];
    byKind[kind] = [Math.min(least, of.value), Math.max(largest, of.value)];
  }
  if (most === undefined) return undefined;
  return { ...most, ...(Object.keys(byKind).length > 0 ? { byKind } : {}) };
}

type FoundByCheck = Record<Comparison['check'], Found>;

interface FoundOnTower {
  /** At the base. */
  readonly moment: Found;
  /** For the tower itself, and for the couple of the mast at its top. */
  readonly byRating: readonly FoundByCheck[];
}

/** What ratings need on one tower, in every way that its plan may be meant. */
function neededOn(plan: CheckInput, ratings: readonly Rating[], kind: TowerKind | undefined): FoundOnTower {
  const rated = { ...plan, ratings: [...plan.ratings, ...ratings] };
  const needed = 1 / (1 - plan.wanted.margin);
  const byRating = ratings.map((): FoundByCheck => ({ tower: undefined, 'tower-top': undefined }));
  let moment: Found;
  // A tower that is only meant stands for many, and what asks most of it is enough.
  const ways = kind === undefined ? plausiblePlans : worstPlans;
  for (const said of ways(rated, assumptionsOf(rated))) {
    const model = towerModel(said);
    const { scenarios, dead } = demandOf(model, model.scenarios, model.site.speed, 'unfavourable', true);
    model.scenarios.forEach(({ windStructure }, scenario) => {
      if (kind !== undefined && windStructure.kind !== kind) return;
      model.comparisons.forEach(({ check, of, place, level }, index) => {
        const demand = nth(nth(scenarios, scenario).wind, index) + nth(dead, index);
        if (of === 'moment' && place === 'base' && !(demand * needed <= (moment?.value ?? Number.NEGATIVE_INFINITY))) {
          const { z: height } = nth(model.levels, level);
          moment = { value: demand * needed, governs: { of, place, height, demand, own: 0, perArea: 1, arm: 1 } };
        }
        for (const { number, cases } of model.claims) {
          const most = nth(byRating, number - plan.ratings.length);
          for (const claimCase of cases) {
            const shown = shownBy(model, index, claimCase, scenario);
            if (isEnough(shown, most[check]?.value, demand * needed)) continue;
            const found = neededAt(model, index, claimCase, scenario, demand, shown);
            if (found.value > (most[check]?.value ?? Number.NEGATIVE_INFINITY)) most[check] = found;
          }
        }
      });
    });
  }
  return { moment, byRating };
}

/** More than any tower is asked for [m² or N]. */
const BEYOND = 1e7;
const STEPS_AT_MOST = 60;

/** What a rated case shows for a comparison by an area, or a force [N or N·m]. */
type ShownBy = (area: number) => number;

function shownBy(model: TowerModel, index: number, claimCase: ClaimCase, scenario: number): ShownBy {
  const factor = effectiveFactor(nth(claimCase.rated, scenario));
  return (area) => provenBy(model, index, claimCase, scenario, area * factor);
}

function effectiveFactor({ rating: { claim }, reading }: RatedCase): number {
  return claim.kind === 'area' ? ratedAreaFactor(claim, reading.method).low : 1;
}

/** Whether what is needed elsewhere, and every more of it, is enough here. */
function isEnough(shown: ShownBy, area: number | undefined, needed: number): boolean {
  if (area === undefined || !Number.isFinite(area)) return area !== undefined;
  const here = shown(area);
  return here >= needed && shown(2 * area) >= here;
}

/**
 * The least area, or force, above which every more of it suffices for one comparison. What a rated case shows is a largest of
 * straight lines in its area, so that a chord to twice the area never leads below the root.
 */
function neededAt(
  model: TowerModel,
  index: number,
  claimCase: ClaimCase,
  scenario: number,
  demand: number,
  shown: ShownBy,
): NonNullable<Found> {
  const { of, place, level } = nth(model.comparisons, index);
  const rated = nth(claimCase.rated, scenario);
  const perArea = nth(rated.forces, 0).perArea * effectiveFactor(rated);
  const { margin } = model.input.wanted;
  const formula = of === 'moment' ? requiredAreaByMoment : requiredAreaByShear;
  const at = (own: number, arm: number): NeededAt => ({
    of,
    place,
    height: nth(model.levels, level).z,
    demand,
    own,
    perArea,
    arm,
  });
  let area = BEYOND;
  let governs = at(0, 0);
  for (let step = 0; step < STEPS_AT_MOST; step += 1) {
    const slope = (shown(2 * area) - shown(area)) / area;
    const arm = slope / perArea;
    const own = shown(area) - slope * area;
    governs = at(own, arm);
    // More of it shows no more: all of it suffices, or none.
    if (arm <= ROUNDING) {
      return { value: shown(area) * (1 - margin) >= demand ? 0 : Number.POSITIVE_INFINITY, governs };
    }
    const next = Math.max(0, formula.of(demand, margin, own, perArea, arm));
    if (next === 0 || Math.abs(next - area) <= ROUNDING * area) return { value: next, governs };
    area = next;
  }
  return { value: area, governs };
}

/** What is left of differences in double precision. */
const ROUNDING = 1e-9;

/** Heights and speeds that data sheets state come in such steps. */
const STEP = { us: 0.3048, si: 0.5 } as const;

/** Height above the top at which the wind loads above it have their middle, down to a whole step [m]. @source common-practice */
function usualAbove(plan: CheckInput): number {
  const { tower, units } = plan.station;
  const { site, scenarios } = towerModel(worstPlans(plan, assumptionsOf(plan))[0]);
  const { appurtenances } = scenarios[0];
  const { front, side } = sliceForces(appurtenances, site.speed, 'unfavourable', true);
  let [force, moment] = [0, 0];
  appurtenances.slices.forEach(({ z }, index) => {
    const own = z > tower.top ? Math.max(nth(front, index), nth(side, index)) : 0;
    force += own;
    moment += own * (z - tower.top);
  });
  return force === 0 ? 0 : Math.floor(moment / force / STEP[units] + ROUNDING) * STEP[units];
}

/** Lines as one rating may include them; undefined where it cannot, or where nobody tells them. */
function ratedWith({ station, assumed }: CheckInput): RatedLines | undefined {
  const [run, another] = station.cables;
  if (run === undefined || another !== undefined || assumed.some(({ of }) => of === 'cables')) return undefined;
  const { count, diameter, laid, low, high } = run;
  const { foot, top } = station.tower;
  // A rating has its lines from the base to the top.
  const whole = low <= foot + ROUNDING && high >= top - ROUNDING;
  return whole && laid !== 'ladder' ? { count, diameter, laid } : undefined;
}

/** Speeds that data sheets of small towers state, by type of speed, in the plan's own units. @source common-practice */
const USUAL_SPEEDS: Readonly<Partial<Record<SpeedBasis, Readonly<Record<UnitSystem, readonly number[]>>>>> = {
  'fastest-mile': { us: [70, 80].map((speed) => speed * MILE_PER_HOUR), si: [32, 36] },
  'gust3-nominal': { us: [80, 90].map((speed) => speed * MILE_PER_HOUR), si: [36, 40] },
  'gust3-strength': { us: [105, 115].map((speed) => speed * MILE_PER_HOUR), si: [47, 51] },
  'mean-10min': { us: [55, 60].map((speed) => speed * MILE_PER_HOUR), si: [24, 27] },
};

/**
 * Winds that makers state where the plan's standard is used: its own, then those of the standards of that place that new towers
 * are designed by.
 *
 * @source common-practice
 */
export function usualQuotes(input: Pick<CheckInput, 'method' | 'site' | 'station'>): readonly QuotedWind[] {
  const { method, site, station } = input;
  const own = METHOD_BY_ID[method];
  const asked = site.riskCategory ?? 'II';
  // Classes of towers end at III, as which category IV counts.
  const riskCategory = asked === 'IV' ? 'III' : asked;
  const category = (id: MethodId) => (METHOD_BY_ID[id].classMatters ? { riskCategory } : {});
  const ofSite: QuotedWind = {
    method,
    speed: siteSpeed(input).speed,
    ...(siteSpeed(input).speedLevel === 'strength' ? { basis: 'gust3-strength' } : {}),
    ...(own.ground.counts ? { exposure: site.exposure } : {}),
    ...category(method),
  };
  const others = SITE_METHODS.filter((id) => {
    const { place, forTowers } = METHOD_BY_ID[id];
    return place === own.place && (forTowers || id === method);
  });
  const usual = others.flatMap((id): readonly QuotedWind[] => {
    const { ground, basis } = METHOD_BY_ID[id];
    const grounds = ground.counts ? (USUAL_GROUNDS[ground.field] ?? []) : [undefined];
    return (USUAL_SPEEDS[basis]?.[station.units] ?? []).flatMap((speed) =>
      grounds.map((exposure) => ({
        method: id,
        speed,
        ...(exposure === undefined ? {} : { exposure }),
        ...category(id),
      })),
    );
  });
  return [ofSite, ...usual.filter((quote) => !isSameWind(quote, ofSite))];
}

function isSameWind(one: QuotedWind, other: QuotedWind): boolean {
  const sameKind = one.method === other.method && one.exposure === other.exposure && one.basis === other.basis;
  return sameKind && Math.abs(one.speed - other.speed) <= ROUNDING * one.speed;
}

/** Grounds that data sheets state. @source common-practice */
const USUAL_GROUNDS: Readonly<Record<GroundField, readonly Ground[]>> = {
  exposure: ['B', 'C'],
  terrain: ['II', 'III'],
};
