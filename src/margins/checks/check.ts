import type { FallComparison } from '../../structure/index.ts';
import type { HoldsTo } from '../holds-to.ts';
import type { TowerModel } from '../tower-model.ts';
import type { ComparisonRatio } from '../tower-ratio.ts';
import type { Verdict } from '../verdict.ts';

/** Why a check is not shown. */
export const OPEN_REASONS = [
  /** Something it cannot do without is missing. */
  'missing',
  /** The readings of what is open disagree. */
  'readings-disagree',
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
  /** Not worked out by this version. */
  'not-computed',
] as const;
export type OpenBecause = (typeof OPEN_REASONS)[number];

export type FallTowards = FallComparison['to'];

export const CHECK_KINDS = [
  'tower',
  'tower-top',
  'ice',
  'mast',
  'bearing',
  'rotator',
  'antenna',
  'elements',
  'weight',
  'foundation',
  'raising',
  'lying',
  'hoist',
  'fall',
] as const;

export type CheckKindName = (typeof CHECK_KINDS)[number];

/** What a rotator is held by. */
export const HOLDING_TORQUES = ['brake', 'turning-torque'] as const;

/** One thing that could give first. */
export interface Check {
  readonly id: string;
  readonly kind: CheckKindName;
  /** The owner's name of it, where he gave one. */
  readonly name?: string;
  /** In the ice case: iced, in the gust that goes with ice. */
  readonly withIce?: true;
  /** Of a fall: what it may reach. */
  readonly towards?: FallTowards;
  readonly verdict: Verdict;
  readonly because?: OpenBecause;
  /** Pointers to what is missing. */
  readonly needs: readonly string[];
  readonly result?: CheckResult;
}

export interface CheckResult extends Compared {
  /** Good and unfavourable end of what is open. */
  readonly ratioRange: readonly [number, number];
  readonly headings: { readonly fixed?: number; readonly turning?: number };
  readonly holdsTo?: HoldsTo;
  /** The gust at which the ratio reaches one less the wanted margin [m/s]. */
  readonly keepsMarginTo?: number;
  /** Its use without any wind, where that alone leaves less than the wanted margin. */
  readonly ratioWithoutWind?: number;
  /** Of a torque: what holds it, and with what it turns, up to which actual gust [N·m, m/s]. */
  readonly torque?: {
    readonly heldBy: (typeof HOLDING_TORQUES)[number];
    readonly turnsWith?: number;
    readonly turnsUpTo?: number;
  };
  /** Where a verdict is `over`: the comparison that says so, if a larger use elsewhere says less. */
  readonly over?: Compared;
}

/** What is compared, each in its own unit. */
export const COMPARED = [
  'moment',
  'shear',
  /** What the braces of a lattice take: shear less what sloping legs carry, with the twist. */
  'braces',
  'wind-ratio',
  'bending',
  'side-force',
  /** At the foot of a mast without a bearing. */
  'clamp-moment',
  'torque',
  'gust',
  'weight',
  'overturning',
  'toe-pressure',
  'embedment',
  'distance',
  'pull',
  'area',
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
  readonly place?: ComparisonRatio['comparison']['place'];
}

/**
 * Whether a tower can be lowered, so that a gust at which to do it is worth working out.
 *
 * @param model the tower [-]
 * @returns true for a hinge or sections that slide [-]
 * @source derived
 */
export function canBeLowered(model: TowerModel): boolean {
  const { hingeHeight, telescopes } = model.input.station.tower;
  return hingeHeight !== undefined || telescopes;
}
