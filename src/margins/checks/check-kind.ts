import type { Trace } from '../../foundation/index.ts';
import type { Comparison } from '../comparisons.ts';
import type { IceCase } from '../ice-case.ts';
import type { Demand, TowerModel } from '../model.ts';
import type { Reactions } from '../reactions.ts';
import type { RoomByCheck, RoomPlace } from '../room-by-check.ts';
import type { ComparisonRatio } from '../tower-ratio.ts';
import type { Check, CheckKindName } from './check.ts';
import type { PartKind } from './part-kinds.ts';

/** What is known of a tower when its checks are made. */
export interface CheckContext {
  readonly model: TowerModel;
  readonly ratios: readonly ComparisonRatio[];
  /** Of the design wind at the unfavourable end, with and without least pressures. */
  readonly unfavourable: Demand;
  readonly withoutLeast: Demand;
  readonly reactions: Reactions;
  /** The same tower with ice, where ice is given. */
  readonly ice?: IceCase;
  /** What several parts need of it and one has worked out already. */
  readonly worked: Map<unknown, unknown>;
}

/** A change of the load that a check is of, a larger tube for the mast, a larger footing, a counterpoise. */
export type OwnRemedy = 'load' | 'mast-tube' | 'footing' | 'counterpoise';

/** All that sets one kind of check apart: whatever goes over checks asks here, and nowhere by its kind. */
export interface CheckKind<K extends CheckKindName = CheckKindName> {
  readonly kind: K;
  /** The thing it is about. */
  readonly part: PartKind;
  /** The checks of this kind that a plan has. */
  readonly assess: (context: CheckContext) => readonly Check[];
  /** Writes down how their figures come about; undefined where the working has nothing of them. */
  readonly explain: ((context: CheckContext, checks: readonly Check[], trace: Trace) => void) | undefined;
  /** What its chance is called in the working, where that is not its kind. */
  readonly heading?: string;
  /** What it is compared for; only wind makes it hold to a wind. */
  readonly loadedBy: 'wind' | 'weight' | 'gear' | 'fall';
  /** Each comes from a rating, and stands with the others of that sort in the order of the ratings. */
  readonly byRating?: true;
  /** The comparisons with the tower's own rating that it is made of. */
  readonly comparesTower?: Comparison['check'];
  /** Remedies that are tried for it alone. */
  readonly ownRemedies?: readonly OwnRemedy[];
  /** How more area loads it; undefined where it does not. */
  readonly room: RoomRule | undefined;
}

/** How more area loads a check. */
export interface RoomRule {
  /** Only what hangs on the mast does. */
  readonly onMastOnly: boolean;
  /** Without it shown no room is told: nowhere, or nowhere on the mast. */
  readonly neededFor: 'all' | 'mast' | undefined;
  /** What it leaves at a place; `unlimited` where it is looked at and ends nowhere there, undefined where it is not looked at. */
  readonly left: (context: CheckContext, check: Check, place: RoomPlace) => RoomByCheck | 'unlimited' | undefined;
}
