import { Refusal } from '../foundation/index.ts';
import { METHOD_BY_ID, SITE_METHODS, type SiteMethodId, type Wind } from '../methods/index.ts';
import type { SpeedBasis } from '../wind/index.ts';
import { type Assessment, assess, windAt } from './assess.ts';
import type { Check, CheckResult } from './checks/check.ts';
import type { Verdict } from './verdict.ts';

/** What makes one method ask for more than another, at the tower's top; `shapes` is all that is not a factor of the wind. */
export const SPREAD_FACTORS = [
  'speed',
  'level',
  'height-and-ground',
  'hill',
  'ground-elevation',
  'direction',
  'importance',
  'gust',
  'air',
  'shapes',
] as const;

export type SpreadFactor = (typeof SPREAD_FACTORS)[number];

/** Speeds averaged over another time go with another gust factor and another level: only together do they compare. */
const DESIGN_WIND: readonly SpreadFactor[] = ['speed', 'level', 'gust'];
/** Where a method has its gusts in the height law, that belongs to them too. */
const DESIGN_WIND_BY_HEIGHT: readonly SpreadFactor[] = [...DESIGN_WIND, 'height-and-ground', 'air'];

export const SPREAD_CAUSES = [...SPREAD_FACTORS, 'design-wind'] as const;
export type SpreadCause = (typeof SPREAD_CAUSES)[number];

/** The same plan by one method. */
export interface SpreadRow {
  readonly method: SiteMethodId;
  /** Its design speed [m/s], in `basis`. */
  readonly speed: number;
  readonly basis: SpeedBasis;
  readonly verdict: Verdict;
  readonly result?: CheckResult;
  /** The check with the largest ratio, which need not be the tower. */
  readonly largest?: { readonly check: string; readonly ratio: number };
  /** Overturning moment of the wind at the foot, allowable level [N·m]. */
  readonly moment: number;
  /** Moment by this method over moment by the plan's own, as a product of factors. */
  readonly factors: Readonly<Record<SpreadFactor, number>>;
}

export interface Spread {
  /** The plan's own method first, then the others as they are listed. */
  readonly rows: readonly SpreadRow[];
  /** Methods that refuse the plan, and why. */
  readonly refused: readonly { readonly method: SiteMethodId; readonly why: string }[];
  /** For the method farthest from the plan's own: the factor that differs most. */
  readonly cause?: { readonly method: SiteMethodId; readonly factor: SpreadCause; readonly ratio: number };
}

/**
 * The same plan by every method: what differs is convention, not the wind and not the tower. The site's speed is taken
 * over in its own basis and converted as each method asks; the ratings keep their own.
 *
 * M/M_own = (V/V_own)²·λ/λ_own·Kz/Kz_own·Kzt/Kzt_own·Ke/Ke_own·Kd/Kd_own·I/I_own·G/G_own·c/c_own·shapes
 *
 * @throws Refusal never: a method that refuses the plan is listed
 * @source derived
 */
export function spreadOf(own: Assessment): Spread {
  const { input } = own;
  const site = speedForOthers(input);
  const rows: SpreadRow[] = [rowOf(own, own)];
  const refused: { method: SiteMethodId; why: string }[] = [];
  for (const method of SITE_METHODS) {
    if (method === input.method) continue;
    if (input.site.groundNotGiven && METHOD_BY_ID[method].ground.counts) {
      refused.push({ method, why: 'The ground upwind is not given.' });
      continue;
    }
    try {
      rows.push(rowOf(assess({ ...input, method, site }), own));
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      refused.push({ method, why: error.message });
    }
  }
  const cause = causeOf(rows);
  return { rows, refused, ...(cause === undefined ? {} : { cause }) };
}

/** A basic wind becomes a gust by its standard's own ratio; any other speed keeps its basis. */
function speedForOthers({ method: id, site }: Assessment['input']): Assessment['input']['site'] {
  const method = METHOD_BY_ID[id];
  const basis = site.basis ?? method.basis;
  if (basis !== method.basis || basis === method.sharedBasis) return { ...site, basis };
  const { returnYears: _, ...rest } = site;
  return { ...rest, speed: method.fromOwnBasis(site.speed, method.sharedBasis, 'site'), basis: method.sharedBasis };
}

function rowOf(assessment: Assessment, own: Assessment): SpreadRow {
  const { input, site, windLoads, checks } = assessment;
  const [tower] = checks;
  const largest = largestOf(checks);
  const strengthMap = site.speedLevel === 'strength';
  return {
    method: input.method,
    speed: site.speed,
    basis: strengthMap ? 'gust3-strength' : METHOD_BY_ID[input.method].basis,
    verdict: tower?.verdict ?? 'open',
    ...(tower?.result === undefined ? {} : { result: tower.result }),
    ...(largest === undefined ? {} : { largest }),
    moment: windLoads.total.momentAtBase,
    factors: factorsBetween(assessment, own),
  };
}

function largestOf(checks: readonly Check[]): SpreadRow['largest'] {
  let largest: SpreadRow['largest'];
  for (const { id, result } of checks) {
    if (result && (largest === undefined || result.ratio > largest.ratio)) largest = { check: id, ratio: result.ratio };
  }
  return largest;
}

function factorsBetween(assessment: Assessment, own: Assessment): Record<SpreadFactor, number> {
  const { top } = assessment.input.station.tower;
  const [wind, bareTowerInWind] = [assessment.windLoads.wind, own.windLoads.wind];
  const [here, there] = [windAt(wind, top), windAt(bareTowerInWind, top)];
  const ofWind = {
    speed: (assessment.site.speed / own.site.speed) ** 2,
    level: wind.toAllowableFactor / bareTowerInWind.toAllowableFactor,
    'height-and-ground': here.exposureCoefficient / there.exposureCoefficient,
    hill: here.topographicFactor / there.topographicFactor,
    'ground-elevation': wind.elevationFactor / bareTowerInWind.elevationFactor,
    direction: wind.directionFactor / bareTowerInWind.directionFactor,
    importance: wind.importance / bareTowerInWind.importance,
    gust: wind.gustEffect() / bareTowerInWind.gustEffect(),
    air: airOf(wind, top) / airOf(bareTowerInWind, top),
  };
  const known = Object.values(ofWind).reduce((all, each) => all * each, 1);
  return { ...ofWind, shapes: assessment.windLoads.total.momentAtBase / own.windLoads.total.momentAtBase / known };
}

/** What is left of a pressure when every factor is taken out: half the density of the method's air [kg/m³]. */
function airOf(wind: Wind, z: number): number {
  const factors = wind.exposureCoefficient(z) * wind.topographicFactor(z) * wind.elevationFactor * wind.importance;
  return (wind.pressurePerSpeedSquared(z) * wind.forceDirectionFactor) / (factors * wind.directionFactor);
}

function causeOf([own, ...others]: readonly SpreadRow[]): Spread['cause'] {
  const apart = (row: SpreadRow) => {
    const ratio = row.result && own?.result ? row.result.ratio / own.result.ratio : 1;
    return Number.isFinite(ratio) && ratio > 0 ? Math.abs(Math.log(ratio)) : 0;
  };
  const farthest = others.reduce<SpreadRow | undefined>(
    (most, row) => (apart(row) > (most ? apart(most) : 0) ? row : most),
    undefined,
  );
  if (!farthest || !Number.isFinite(farthest.factors.shapes)) return undefined;
  const { factors } = farthest;
  const separate = Math.abs(factors.speed - 1) < 1e-9;
  const byHeight = [own, farthest].some((row) => row && METHOD_BY_ID[row.method].gustsInHeightLaw);
  const together = byHeight ? DESIGN_WIND_BY_HEIGHT : DESIGN_WIND;
  const product = together.reduce((all, factor) => all * factors[factor], 1);
  const candidates: [SpreadCause, number][] = separate ? [] : [['design-wind', product]];
  for (const factor of SPREAD_FACTORS) {
    if (separate || !together.includes(factor)) candidates.push([factor, factors[factor]]);
  }
  const weight = ([, ratio]: [SpreadCause, number]) => Math.abs(Math.log(ratio));
  const [factor, ratio] = candidates.reduce((most, each) => (weight(each) > weight(most) ? each : most));
  return { method: farthest.method, factor, ratio };
}
