import type { Bound, Wind } from '../methods/index.ts';
import type { Assumption } from './assumed/assumption.ts';
import { assumptionsOf, plausiblePlans } from './assumed/assumptions.ts';
import { betweenEnds } from './assumed/both-ends.ts';
import { type Caution, cautionsOf } from './cautions.ts';
import { type Chances, chancesOf } from './chance.ts';
import type { CheckInput } from './check-input.ts';
import type { Check } from './checks/check.ts';
import type { CheckContext } from './checks/check-kind.ts';
import { checksOf } from './checks/check-kinds.ts';
import { type FoundationAnswer, foundationAnswer } from './checks/foundation-check.ts';
import { type MastAnswer, mastAnswer } from './checks/mast-holds.ts';
import { type RaisingAnswer, raisingAnswer } from './checks/raising-check.ts';
import { iceCaseOf } from './ice-case.ts';
import { type LowerAt, lowerAtOf } from './lower-at.ts';
import { otherOrders } from './lowered-input.ts';
import type { SiteSpeed } from './model.ts';
import { type OpenQuestions, openQuestions } from './open-questions.ts';
import { type Decided, decidedOf, type Part, partsOf } from './parts.ts';
import { reactionsOf } from './reactions.ts';
import { type RoomLeft, roomsLeft } from './room-left.ts';
import { demandOf, once, towerModel } from './tower-model.ts';
import { towerRatios } from './tower-ratio.ts';
import { type Verdict, worstVerdict } from './verdict.ts';
import { type WindLoads, windLoadsOf } from './wind-loads.ts';

/** Height, factors and wind there. */
export interface WindRow {
  readonly height: number;
  readonly exposureCoefficient: number;
  readonly topographicFactor: number;
  readonly pressure: number;
  /** The site's wind at this height: its speed times the root of the factors [m/s]. */
  readonly speed: number;
}

export interface Assessment extends CheckContext {
  /** The plan as it says itself; its model has what it does not say at the end that asks most. */
  readonly input: CheckInput;
  /** What the plan does not say. */
  readonly assumptions: readonly Assumption[];
  readonly site: SiteSpeed;
  readonly wind: Wind;
  readonly windRows: readonly WindRow[];
  readonly checks: readonly Check[];
  /** What the checks are about; the verdict is that of the worst part. */
  readonly parts: readonly Part[];
  readonly decided: Decided;
  readonly verdict: Verdict;
  readonly weakest?: string;
  readonly questions: OpenQuestions;
  readonly windLoads: WindLoads;
  /** What the mast does to what holds it. */
  readonly mast?: MastAnswer;
  /** How it is raised, where it has a hinge. */
  readonly raising?: RaisingAnswer;
  /** What the footing does, where the plan describes one. */
  readonly foundation?: FoundationAnswer;
  readonly heights: { readonly overall: number; readonly tower: number; readonly mast?: number };
  /** At the top of the tower, and at each height on the mast where something hangs; none where they are not shown. */
  readonly roomLeft: readonly RoomLeft[];
  /** Where the tower can be lowered. */
  readonly lowerAt?: LowerAt;
  /** Where a climate is given. */
  readonly chances?: Chances;
  /** The method's least pressure counts somewhere, in one way or another of reading what is not said. */
  readonly leastDecides: boolean;
  readonly cautions: readonly Caution[];
}

/**
 * The whole answer to a plan, in SI: what it does not say at its bad end, each verdict with an eye to its good end.
 *
 * @throws Refusal for what cannot be computed
 */
export function assess(input: CheckInput): Assessment {
  const assumptions = assumptionsOf(input);
  const { known, contexts, checks } = checkedInEveryWay(input, assumptions);
  const { model, ratios } = known.context;
  const { site } = model;
  const { wind } = model.scenarios[0].appurtenances;
  const leastDecides = contexts.some((each) => each.unfavourable.leastDecides);
  const mast = once(model, mastAnswer);
  const raising = raisingAnswer(model);
  const foundation = foundationAnswer(known.context);
  const parts = partsOf(checks);
  const weakest = weakestOf(checks);
  const chances = chancesOf(model.input, checks);
  const lower = lowerAtOf(model.input, checks);
  return {
    ...known.context,
    input,
    assumptions,
    site,
    wind,
    windRows: windRows(input, wind),
    checks,
    parts,
    decided: decidedOf(parts),
    verdict: worstVerdict(parts.flatMap(({ verdict }) => verdict ?? [])) ?? 'open',
    ...(weakest === undefined ? {} : { weakest }),
    questions: openQuestions(known.context, assumptions),
    windLoads: known.windLoads,
    ...(mast === undefined ? {} : { mast }),
    ...(raising === undefined ? {} : { raising }),
    ...(foundation === undefined ? {} : { foundation }),
    heights: heightsOf(input),
    roomLeft: roomsLeft(known.context, checks),
    ...(lower === undefined ? {} : { lowerAt: lower }),
    ...(chances === undefined ? {} : { chances }),
    leastDecides,
    cautions: cautionsOf(model, site, wind, checks, ratios, leastDecides, assumptions),
  };
}

/**
 * The checks of a plan alone, as `assess` has them.
 *
 * @throws Refusal for what cannot be computed
 */
export function checksOfPlan(input: CheckInput): readonly Check[] {
  return checkedInEveryWay(input, assumptionsOf(input)).checks;
}

/** They go by the height of the top, or are of the nested tower: in whatever order its sections slide. */
const ALIKE_IN_EVERY_ORDER = ['mast', 'bearing', 'rotator', 'raising', 'lying', 'hoist', 'fall'] as const;

/** A plan with what it does not say at its ends, and at what asks most also with its sections slid in every order. */
function checkedInEveryWay(input: CheckInput, assumptions: readonly Assumption[]) {
  const [worst, ...others] = plausiblePlans(input, assumptions);
  const known = knownOf(worst);
  const slid = otherOrders(worst).map((other) => knownOf(other).context);
  const ends = others.map((other) => knownOf(other).context);
  const checks = [
    ...slid.map((each) => checksOf(each, ALIKE_IN_EVERY_ORDER)),
    ...ends.map((each) => checksOf(each)),
  ].reduce((so, found) => betweenEnds(so, found, assumptions), checksOf(known.context));
  return { known, contexts: [known.context, ...slid, ...ends], checks };
}

/** All that is known of a plan with everything said, before it is checked. */
function knownOf(input: CheckInput): { readonly context: CheckContext; readonly windLoads: WindLoads } {
  const model = towerModel(input);
  const { site } = model;
  const at = (bound: Bound, least: boolean) => demandOf(model, model.scenarios, site.speed, bound, least);
  const unfavourable = at('unfavourable', true);
  const readTwoWays = model.scenarios.some(({ appurtenances }) => appurtenances.readTwoWays);
  const favourable = readTwoWays ? at('favourable', true) : unfavourable;
  const withoutLeast = unfavourable.leastDecides ? at('unfavourable', false) : unfavourable;
  const ratios = towerRatios(model, unfavourable, favourable);
  const ice = iceCaseOf(model);
  const windLoads = windLoadsOf(model, site.speed, unfavourable);
  const reactions = reactionsOf(model, model.scenarios[0].appurtenances.wind, windLoads, unfavourable);
  const context: CheckContext = {
    model,
    ratios,
    unfavourable,
    withoutLeast,
    reactions,
    ...(ice === undefined ? {} : { ice }),
    worked: new Map(),
  };
  return { context, windLoads };
}

/** The check that holds to the lowest gust; what is over without any wind holds to none. */
function weakestOf(checks: readonly Check[]): string | undefined {
  let weakest: Check | undefined;
  for (const check of checks) if (isWeaker(check, weakest)) weakest = check;
  return weakest?.id;
}

function isWeaker({ result }: Check, other: Check | undefined): boolean {
  const [calm, most] = [result?.ratioWithoutWind ?? 0, other?.result?.ratioWithoutWind ?? 0];
  if (calm > 1 || most > 1) return calm > most;
  const gust = result?.holdsTo?.gust;
  return gust !== undefined && gust < (other?.result?.holdsTo?.gust ?? Number.POSITIVE_INFINITY);
}

/** Spacing of the wind table: ten feet or three metres. */
const WIND_SPACING = { us: 3.048, si: 3 } as const;

function windRows(input: CheckInput, wind: Wind): readonly WindRow[] {
  const { station } = input;
  const { overall } = heightsOf(input);
  const spacing = WIND_SPACING[station.units];
  const heights = new Set<number>([overall, station.tower.top]);
  const base = Math.ceil((station.tower.foot + 1e-9) / spacing) * spacing;
  for (let z = base; z < overall; z += spacing) {
    // The same height comes out a last digit apart by another way of reckoning.
    if ([...heights].every((height) => Math.abs(height - z) > 1e-6)) heights.add(z);
  }
  return [...heights].sort((a, b) => b - a).map((height) => windAt(wind, height));
}

/**
 * The site's wind at one height.
 *
 * v(z) = V·√(Kz·Kzt); thin air takes from the pressure, not from the speed
 *
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
    speed: wind.conditions.speed * Math.sqrt(exposureCoefficient * topographicFactor),
  };
}

function heightsOf(input: CheckInput): Assessment['heights'] {
  const { tower, mast, loads } = input.station;
  const overall = loads.reduce((highest, load) => Math.max(highest, load.high), Math.max(tower.top, mast?.tip ?? 0));
  return { overall, tower: tower.top, ...(mast ? { mast: mast.tip } : {}) };
}
