import { nth } from '../../foundation/index.ts';
import { METHOD_BY_ID } from '../../methods/index.ts';
import { bareTowerWindKnown, type RatedLines, weightsNotGiven } from '../../structure/index.ts';
import type { SpeedBasis } from '../../wind/index.ts';
import type { Assumption } from '../assumed/assumption.ts';
import { ASSUMPTION_KIND } from '../assumed/assumption-kinds.ts';
import { assumptionsOf, worstPlans } from '../assumed/assumptions.ts';
import { type CheckInput, enteredBasis } from '../check-input.ts';
import { type MastAnswer, mastAnswer } from '../checks/mast-holds.ts';
import type { Rating } from '../rating.ts';
import { once, towerModel } from '../tower-model.ts';
import { type Found, type FoundOnTower, type Needed, neededOn, overTowers } from './needed.ts';
import { type TowerKind, type Towers, towersOf } from './towers-meant.ts';
import { type QuotedWind, ratedWith, usualAbove, usualQuotes } from './usual-ratings.ts';

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
  /** Places in the plan where a weight is missing. */
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
  /** What the plan leaves out and is read at its worst, with all loads. */
  readonly assumptions: readonly Assumption[];
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
    assumptions: assumptionsOf(whole).filter(({ of }) => ASSUMPTION_KIND[of].moves.includes('tower')),
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
    weightNotGiven: weightsNotGiven(plan.station),
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
