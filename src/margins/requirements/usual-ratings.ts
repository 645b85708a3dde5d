import { MILE_PER_HOUR, nth, type UnitSystem } from '../../foundation/index.ts';
import { METHOD_BY_ID, type MethodId, SITE_METHODS } from '../../methods/index.ts';
import { type RatedLines, sliceForces } from '../../structure/index.ts';
import type { Ground, GroundField, RiskCategory, SpeedBasis } from '../../wind/index.ts';
import { assumptionsOf, worstPlans } from '../assumed/assumptions.ts';
import type { CheckInput } from '../check-input.ts';
import { siteSpeed, towerModel } from '../tower-model.ts';

/** What is left of differences in double precision. */
const ROUNDING = 1e-9;

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

/** Heights and speeds that data sheets state come in such steps. */
const STEP = { us: 0.3048, si: 0.5 } as const;

/**
 * The height above the top at which the wind loads above it have their middle, down to a whole step.
 *
 * Σ(F·(z − H))/ΣF
 *
 * @returns the height [m]; 0 where nothing is above the top
 * @source common-practice
 */
export function usualAbove(plan: CheckInput): number {
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

/**
 * Lines as one rating may include them.
 *
 * @returns undefined where a rating cannot include them, or where they are not given
 * @source common-practice
 */
export function ratedWith(input: CheckInput): RatedLines | undefined {
  const { station, assumed } = input;
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
