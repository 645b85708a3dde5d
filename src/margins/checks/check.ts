import type { MethodId } from '../../methods/index.ts';
import { type FallComparison, HELD_FAILURES } from '../../structure/index.ts';
import type { Comparison } from '../comparisons.ts';
import type { WindsHeld } from '../holds-to-ratio.ts';
import { type Verdict, verdictOf } from '../verdict.ts';

/** Why a check is not shown. */
export const OPEN_REASONS = [
  /** Something it cannot do without is missing. */
  'missing',
  /** The readings of what is open disagree. */
  'readings-disagree',
  /** What is plausible of something not told disagrees. */
  'not-given',
  /** It is more than the maker's rating shows, which is not the same as over. */
  'beyond-rating',
  /** No cantilever below the highest support. */
  'held',
  /** The method has no ice, or none of ours. */
  'no-ice-rule',
  /** Somewhere on its way the gear has no hold on the tower. */
  'no-hold',
  /** Stated as an area, which is no force on it. */
  'area-only',
  /** Nothing hangs off the axis, and how uneven gusts twist what is balanced, no rule tells. */
  'balanced',
  /** Of a bearing: the mast has none, so that nothing is asked of it. */
  'no-bearing',
  /** Of the moment of a rotator: a bearing and the mast's foot take it as a couple, so that none is asked of the rotator. */
  'held-by-bearing',
  /** No balance is found in that wind, or beyond what the model is good for. */
  ...HELD_FAILURES,
  /** Its own measures do not bear out its rating. */
  'contradicts-rating',
  /** How firmly braces hold at their ends and where they cross. */
  'brace-ends',
  /** Not worked out by this version. */
  'not-computed',
] as const;
export type OpenBecause = (typeof OPEN_REASONS)[number];

export type FallTowards = FallComparison['to'];

/** In the order of an answer; those that speak of ratings stand together, by the ratings they come from. */
export const CHECK_KINDS = [
  'tower',
  'tower-below',
  'own-strength',
  'guys',
  'tower-top',
  'ice',
  'mast',
  'bearing',
  'rotator',
  'weight',
  'antenna',
  'elements',
  'foundation',
  'raising',
  'lying',
  'hoist',
  'fall',
] as const;

export type CheckKindName = (typeof CHECK_KINDS)[number];

/** What a rotator is held by. */
export const HOLDING_TORQUES = ['brake', 'turning-torque'] as const;

/** What a check is of. */
export interface CheckOf {
  readonly id: string;
  readonly kind: CheckKindName;
  /** JSON pointer to where the plan tells of it, or would. */
  readonly at: string;
  /** The owner's name of it, where he gave one. */
  readonly name?: string;
  /** Of the rating it comes from, or of the row of tubes of its load; the first is 1. */
  readonly number?: number;
  /** Of a fall: what may be reached. */
  readonly towards?: FallTowards;
  /** In the ice case: iced, in the gust that goes with ice. */
  readonly withIce?: true;
}

/** One thing that could give first. */
export interface Check extends CheckOf {
  readonly verdict: Verdict;
  readonly because?: OpenBecause;
  /** Pointers to what is missing. */
  readonly needs: readonly string[];
  readonly result?: CheckResult;
}

export interface CheckResult extends Compared, WindsHeld {
  /** Favourable and unfavourable end of what is open. */
  readonly ratioRange: readonly [number, number];
  readonly headings: { readonly fixed?: number; readonly turning?: number };
  /** Of a torque: what holds it, and with what it turns, up to which actual gust [N·m, m/s]. */
  readonly torque?: {
    readonly heldBy: (typeof HOLDING_TORQUES)[number];
    readonly turnsWith?: number;
    readonly turnsUpTo?: number;
  };
  /** Of a tower rated by area: what uses it, beside the wind on the tower itself. */
  readonly areaUsed?: AreaUsed;
  /** The actual gust that is held to with every open question at its good end, where that turns the verdict [m/s]. */
  readonly holdsToAtBest?: number;
  /** Where a verdict is `over`: the comparison that says so, if a larger use elsewhere says less. */
  readonly over?: Compared;
}

/** How much of a rated area is used where a comparison governs. */
export interface AreaUsed {
  /** Effective area at the rated height that asks there what loads, mast and lines ask in the site's wind [m²]. */
  readonly area: number;
  /** Effective, where its type is not stated the least it may be [m²]. */
  readonly rated: number;
  /** Above ground [m]. */
  readonly height: number;
  /** What the wind on the tower itself makes of the demand [N or N·m]. */
  readonly ofTower: number;
}

/** What is compared, each in its own unit. */
export const COMPARED = [
  'moment',
  'shear',
  /** What the braces of a lattice take: shear less what sloping legs carry, with the twist. */
  'braces',
  'wind-ratio',
  'bending',
  /** Push in a member of a lattice. */
  'leg',
  'brace',
  'side-force',
  /** At the foot of a mast without a bearing. */
  'clamp-moment',
  'torque',
  'gust',
  'weight',
  'overturning',
  'embedment',
  /** Of a footing: by the soil at its sides and under its base together. */
  'sides-and-base',
  /** Of a footing: what its weight alone presses, over what the soil carries. */
  'soil-weight',
  'distance',
  'pull',
  'area',
  /** Of a held tower, each beyond what is there in still air. */
  'leg-push',
  'thrust',
  'guy-tension',
] as const;
export type ComparedOf = (typeof COMPARED)[number];

/** One comparison. */
export interface Compared {
  readonly ratio: number;
  readonly of: ComparedOf;
  readonly demand: number;
  readonly capacity: number;
  /** Where it is, above ground; absent where it has no one height [m]. */
  readonly height?: number;
  /** From the hold outwards, on an element or a boom [m]. */
  readonly along?: number;
  readonly place?: Comparison['place'];
  /** Standard whose wind counts, where it is not the plan's own method but the one beside it for what stands on a tower. */
  readonly bySecondMethod?: MethodId;
}

/** A check that is not shown. */
export function openCheck(
  of: CheckOf,
  because: OpenBecause,
  needs: readonly string[] = [],
  result?: CheckResult,
): Check {
  return { ...of, verdict: 'open', because, needs, ...(result ? { result } : {}) };
}

/** What a verdict goes by beside the ratio. */
export interface JudgedBy {
  /** Share of the capacity to keep. */
  readonly margin: number;
  /** The ratio at the favourable end, of the comparisons in which more than 1 means over. */
  readonly favourable?: number;
  /** Pointers to what is missing: with any of them it is shown only where it is over. */
  readonly missing?: readonly string[];
  /** Why it is open where only its ends disagree, and pointers to what would tell. */
  readonly because?: OpenBecause;
  readonly asks?: readonly string[];
}

/**
 * A check with the verdict of its ratio.
 *
 * over where the favourable end is; else open for what is missing or disagrees
 */
export function judged(of: CheckOf, result: CheckResult, by: JudgedBy): Check {
  const { margin, favourable = result.ratioRange[0], missing = [], because = 'readings-disagree', asks = [] } = by;
  const verdict = verdictOf(result.ratio, favourable, margin);
  if (verdict !== 'over' && missing.length > 0) return openCheck(of, 'missing', missing, result);
  return verdict === 'open' ? openCheck(of, because, asks, atBothEnds(result)) : { ...of, verdict, needs: [], result };
}

/**
 * A result whose ends lie on both sides of 1, with the gust that its good end holds to, where no coefficient changes on the way.
 *
 * V_best = V·√(u_worst/u_best)
 */
function atBothEnds(result: CheckResult): CheckResult {
  const [best, worst] = result.ratioRange;
  const { holdsTo, ratioWithoutWind } = result;
  if (!holdsTo?.steady || ratioWithoutWind !== undefined || !(best > 0) || best > 1 || worst <= 1) return result;
  return { ...result, holdsToAtBest: holdsTo.gust * Math.sqrt(worst / best) };
}

/** The result of a comparison of which nothing is open. */
export function settled(compared: Compared): CheckResult {
  return { ...compared, ratioRange: [compared.ratio, compared.ratio], headings: {} };
}

/** Nobody can tell these of ice apart from what is told of them without. */
const ALIKE_WITH_ICE: readonly Check['because'][] = [
  'area-only',
  'balanced',
  'no-bearing',
  'held-by-bearing',
  'not-computed',
];

/**
 * Checks of a tower with ice, as those of the ice case: they hold to no wind of the site.
 *
 * id:ice
 */
export function withIce(checks: readonly Check[]): readonly Check[] {
  return checks
    .filter(({ because }) => !ALIKE_WITH_ICE.includes(because))
    .map(({ result, ...check }) => ({
      ...check,
      id: `${check.id}:ice`,
      withIce: true,
      ...(result ? { result: withoutWinds(result) } : {}),
    }));
}

/** A comparison without the winds it holds to, of which something else is missing. */
export function withoutWinds(result: CheckResult): CheckResult {
  const { holdsTo: _, keepsMarginTo: __, ...rest } = result;
  return rest;
}
