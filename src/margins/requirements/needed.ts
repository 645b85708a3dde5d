import { nth } from '../../foundation/index.ts';
import { assumptionsOf, plausiblePlans, worstPlans } from '../assumed/assumptions.ts';
import type { CheckInput } from '../check-input.ts';
import type { Comparison } from '../comparisons.ts';
import { requiredAreaByMoment, requiredAreaByShear } from '../formulas.ts';
import type { ClaimCase, TowerModel } from '../model.ts';
import { provenBy } from '../rated-capacity.ts';
import { type RatedCase, ratedAreaFactor } from '../rated-case.ts';
import type { Rating } from '../rating.ts';
import { demandOf, towerModel } from '../tower-model.ts';
import { SHAPE_OF_KIND, type TowerKind } from './towers-meant.ts';

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

/** One requirement on one tower; undefined where nothing is compared. */
export type Found = { readonly value: number; readonly governs: NeededAt } | undefined;

/** The most of what is needed over the towers that are meant, with its range for each kind of them. */
export function overTowers(
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

export interface FoundOnTower {
  /** At the base. */
  readonly moment: Found;
  /** For the tower itself, and for the couple of the mast at its top. */
  readonly byRating: readonly FoundByCheck[];
}

/** What ratings need on one tower, in every way that its plan may be meant. */
export function neededOn(plan: CheckInput, ratings: readonly Rating[], kind: TowerKind | undefined): FoundOnTower {
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
      if (kind !== undefined && windStructure.kind !== SHAPE_OF_KIND[kind]) return;
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

/** What is left of differences in double precision. */
const ROUNDING = 1e-9;

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
