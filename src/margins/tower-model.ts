import { GRAVITY, nth, remember, type Trace } from '../foundation/index.ts';
import { type Bound, METHOD_BY_ID, type Wind, type WindStructure } from '../methods/index.ts';
import {
  appurtenanceItems,
  bareTowerWindKnown,
  bracedEitherWay,
  bracedShear,
  type Cut,
  cutIntoSlices,
  deadLoad,
  iceWeightsNotGiven,
  levelsOf,
  mastHold,
  momentOfWeight,
  type Profile,
  profileOf,
  type SliceForces,
  type SlicesInWind,
  shearOfTorsion,
  sliceForces,
  slicesInWind,
  wirePullItems,
} from '../structure/index.ts';
import type { CheckInput } from './check-input.ts';
import { claimsOf, leastOnBothSides, ratingsSpeaking } from './claims.ts';
import { type Comparison, comparisonsOf } from './comparisons.ts';
import type {
  BareModel,
  Demand,
  MomentClaim,
  Scenario,
  ScenarioDemand,
  SiteSpeed,
  TowerInWind,
  TowerModel,
} from './model.ts';
import { ratedTops } from './plausible-rated-heights.ts';
import { ratedCapacitiesOf } from './rated-capacity.ts';
import { shareAllowed } from './rating.ts';
import {
  each,
  fastestRated,
  itemsOf,
  keyOf,
  readTwoWays,
  type SeenTower,
  type SomeOf,
  type StillScenario,
  scenariosOf,
} from './scenarios.ts';
import { comparedFrom } from './stated-for.ts';
import { momentShares } from './stated-moment.ts';
import { towersAsRated } from './tower-as-rated.ts';

/**
 * The site's speed in the basis of its method; a strength-level speed as it is, where the method has factors for such maps.
 *
 * @returns the speed [m/s] and how it was taken [-]
 * @source tia-faq
 */
export function siteSpeed(input: Pick<CheckInput, 'method' | 'site'>, trace?: Trace): SiteSpeed {
  const method = METHOD_BY_ID[input.method];
  const basis = input.site.basis ?? method.basis;
  const speedLevel = method.speedLevel(basis);
  const own = method.toOwnBasis(input.site.speed, basis, 'site', trace);
  if (speedLevel === 'strength') return { speed: own, speedLevel, converted: false };
  const { returnYears } = input.site;
  return {
    speed: returnYears === undefined ? own : method.returnPeriod.speedFor(own, returnYears, trace),
    speedLevel,
    converted: basis !== method.basis,
  };
}

/**
 * The site's wind over a structure.
 *
 * @param actual whether it is a wind that has come, at full force
 * @param taken the site's speed in the basis of its method, where it is known already [-]
 */
export function siteWind(
  input: Pick<CheckInput, 'method' | 'site'> & { station: Pick<CheckInput['station'], 'units'> },
  windStructure: WindStructure,
  actual: boolean,
  taken = siteSpeed(input),
): Wind {
  const { site } = input;
  const { speed, speedLevel } = taken;
  return METHOD_BY_ID[input.method].wind({
    units: input.station.units,
    speed,
    speedLevel,
    actual,
    exposure: site.exposure,
    riskCategory: site.riskCategory ?? 'II',
    groundElevation: site.groundElevation,
    windStructure,
    ...(site.hill ? { hill: site.hill } : {}),
    ...(site.topographicFactor === undefined ? {} : { topographicFactor: site.topographicFactor }),
  });
}

/** Everything about the tower that does not depend on how open questions are answered. */
export function towerModel(input: CheckInput): TowerModel {
  const { station } = input;
  const { tower } = station;
  const site = siteSpeed(input);
  const bareTowerKnown = bareTowerWindKnown(tower);
  const comparedFromHeight = comparedFrom(tower);
  const levels = levelsOf(station);
  const hold = mastHold(station.mast, tower);
  const appurtenances = [...appurtenanceItems(station), ...wirePullItems(station)];
  const winds = new Map<WindStructure, Wind>();
  const windOf = (windStructure: WindStructure) =>
    remember(winds, windStructure, () => siteWind(input, windStructure, false, site));
  const appurtenancesByWind = new Map<WindStructure, SlicesInWind>();
  const still = scenariosOf(input, bareTowerKnown);
  const { windStructure } = still[0];
  const cutAt = [...levels.map(({ z }) => z), windOf(windStructure).bendsAt];
  const appurtenanceCut = cutIntoSlices(appurtenances, cutAt);
  const bareTowerCuts = new Map<string, Cut>();
  const bareTowerCut = (seen: SeenTower) =>
    remember(bareTowerCuts, keyOf(seen), () => cutIntoSlices(bareTowerKnown ? itemsOf(tower, seen) : [], cutAt));
  const inWind = (scenario: StillScenario): Scenario => {
    const { windStructure, direction, own } = scenario;
    const wind = windOf(windStructure);
    const appurtenances = remember(appurtenancesByWind, windStructure, () =>
      slicesInWind(wind, appurtenanceCut, 'demand', 'worse'),
    );
    if (!bareTowerKnown) return { ...scenario, appurtenances };
    return { ...scenario, appurtenances, bareTower: slicesInWind(wind, bareTowerCut(scenario), own, direction) };
  };
  const read = each<StillScenario, StillScenario>(still, (scenario) =>
    readTwoWays(
      windOf(scenario.windStructure),
      bareTowerCut(scenario),
      scenario.direction,
      fastestRated(input, site.speed),
    )
      ? [scenario, { ...scenario, own: 'capacity' }]
      : [scenario],
  );
  const tried = each(read, (scenario) => [inWind(scenario)]);
  const comparisons = comparisonsOf(station, levels, comparedFromHeight);
  const compared = { station, levels, comparisons, comparedFrom: comparedFromHeight };
  const speaking = ratingsSpeaking(input).map(({ rating, number }) => ({
    rating,
    number,
    asRated: ratedTops(rating, input).flatMap((top) => towersAsRated(top, compared)),
  }));
  const context = { input, levels, hold, bareTowerKnown, windOf };
  const claimsIn = (scenarios: SomeOf<Scenario>) =>
    speaking.flatMap(({ rating, number, asRated }) => claimsOf(rating, number, asRated, { ...context, scenarios }));
  const withLeast = claimsIn(tried);
  const scenarios = leastOnBothSides(tried, withLeast, site.speed)
    ? each<Scenario, Scenario>(tried, (scenario) => [scenario, { ...scenario, least: false }])
    : tried;
  const claims = scenarios === tried ? withLeast : claimsIn(scenarios);
  const momentClaims: MomentClaim[] = [];
  let coveredWeight = 0;
  for (const { rating, number, asRated } of speaking) {
    const { claim } = rating;
    if (claim.kind === 'weight') coveredWeight = Math.max(coveredWeight, claim.weight);
    if (claim.kind === 'moment') {
      const { low, high } = shareAllowed(claim);
      const moment = { unfavourable: claim.moment * low, favourable: claim.moment * high };
      const shares = momentShares(rating, tower, levels, comparisons, asRated);
      momentClaims.push({ number, shares, moment });
    }
  }
  const unproven = {
    input,
    site,
    levels,
    cutAt,
    comparisons,
    hold,
    dead: deadLoad(station, levels),
    scenarios,
    bareTowerKnown,
    appurtenances,
    claims,
    momentClaims,
    coveredWeight,
    comparedFromHeight,
  };
  const deadDemand = unproven.comparisons.map((comparison) => deadDemandOf(unproven, comparison));
  return { ...unproven, deadDemand, proven: ratedCapacitiesOf(unproven), worked: new Map() };
}

/**
 * What is worked out of a tower, or of all that is known of it, the first time it is asked for.
 *
 * @param known the tower, or all that is known
 */
export function once<C extends { readonly worked: Map<unknown, unknown> }, T>(known: C, work: (known: C) => T): T {
  if (!known.worked.has(work)) known.worked.set(work, work(known));
  return known.worked.get(work) as T;
}

/**
 * Demands of all checks at a speed.
 *
 * @param scenarios what hangs on it and the tower itself in that wind
 * @param speed in the basis of the wind [m/s]
 */
export function demandOf(
  model: TowerModel,
  scenarios: readonly TowerInWind[],
  speed: number,
  bound: Bound,
  least: boolean,
): Demand {
  const { levels, hold, comparisons } = model;
  const loadEffects = { with: new Map<SlicesInWind, LoadEffect>(), without: new Map<SlicesInWind, LoadEffect>() };
  let leastDecides = false;
  const inWind = (cut: SlicesInWind, end: Bound, counts: boolean) =>
    remember(loadEffects[counts ? 'with' : 'without'], cut, () => {
      const forces = sliceForces(cut, speed, end, counts);
      leastDecides ||= forces.leastDecides;
      return { cut, forces, profile: profileOf(cut, forces, levels, hold) };
    });
  const asked = scenarios.map(({ appurtenances: hanging, bareTower: itself, least: counts }): ScenarioDemand => {
    const effect = inWind(hanging, bound, least && counts);
    const bareTower = itself && inWind(itself, 'favourable', least && counts).profile;
    const wind = comparisons.map((comparison) => windDemand(model, comparison, effect, bareTower));
    return { appurtenances: effect.profile, ...(bareTower ? { bareTower } : {}), wind };
  });
  return { scenarios: asked, dead: model.deadDemand, leastDecides };
}

/** Things in a wind: the forces on their slices, and what comes of them at every level. */
interface LoadEffect {
  readonly cut: SlicesInWind;
  readonly forces: SliceForces;
  readonly profile: Profile;
}

function windDemand(
  model: TowerModel,
  comparison: Comparison,
  { cut, forces, profile: appurtenances }: LoadEffect,
  own?: Profile,
): number {
  const { level, apex } = comparison;
  const at = nth(model.levels, level);
  const section = nth(model.input.station.tower.sections, comparison.section);
  if (comparison.of === 'moment') return nth(appurtenances.moment, level) + (own ? nth(own.moment, level) : 0);
  const torsion = shearOfTorsion(section, nth(appurtenances.torsion, level), at.z);
  if (apex === Number.POSITIVE_INFINITY) {
    return nth(appurtenances.shear, level) + (own ? nth(own.shear, level) : 0) + torsion;
  }
  const appurtenancePart = hangsAbove(model, apex)
    ? bracedEitherWay(cut, forces, at, apex, model.hold)
    : bracedShear(appurtenances, level, apex);
  return appurtenancePart + (own ? bracedShear(own, level, apex) : 0) + torsion;
}

/**
 * Whether the braces of a lattice take more, or less, than the shear: its legs slope, or something twists it.
 *
 * @param torsion there [N·m]
 */
export function isBraced(model: Pick<TowerModel, 'input'>, comparison: Comparison, torsion: number): boolean {
  if (comparison.of !== 'shear') return false;
  const shape = model.input.station.tower.sections[comparison.section]?.shape;
  return comparison.apex !== Number.POSITIVE_INFINITY || (torsion > 0 && shape?.kind === 'lattice');
}

/** Whether something hangs above the point where a section's legs would meet: it turns the sign in the braces. */
function hangsAbove(model: TowerModel, apex: number): boolean {
  return model.appurtenances.some((item) => item.parts.some((part) => part.high > apex));
}

/**
 * Demand of a check without wind: the pull of wires, and the weight aloft as moment.
 *
 * @returns the demand [N or N·m]
 */
export function deadDemandOf(model: BareModel, comparison: Comparison): number {
  const { pullShear, eccentricWeightShear, pullMoment } = model.dead;
  if (comparison.of === 'shear') return nth(pullShear, comparison.level) + nth(eccentricWeightShear, comparison.level);
  return nth(pullMoment, comparison.level) + weightMoment(model, comparison);
}

/**
 * Moment of the weight aloft at a check: what fills the legs, and what hangs off the axis.
 *
 * k·W·b + ΣW·e
 *
 * @returns the moment [N·m]
 * @source derived
 */
export function weightMoment(model: BareModel, comparison: Comparison, trace?: Trace): number {
  const { dead, coveredWeight } = model;
  const extra = Math.max(0, nth(dead.weight, comparison.level) - coveredWeight) * GRAVITY;
  const section = nth(model.input.station.tower.sections, comparison.section);
  const { z } = nth(model.levels, comparison.level);
  return momentOfWeight(section, extra, z, trace) + nth(dead.eccentricWeightMoment, comparison.level);
}

/**
 * What is there without wind and is not told: the pull of a wire, the weight of what hangs off the axis.
 *
 * @param on the mast alone, or all of them
 */
export function steadyNotGiven(model: Pick<TowerModel, 'input' | 'ice'>, on?: 'mast'): readonly string[] {
  const { input, ice } = model;
  return input.station.loads
    .filter((load) => on === undefined || load.on === on)
    .flatMap((load) => {
      const { at, shape, offset, weight } = load;
      return [
        ...(shape.kind === 'wire' && shape.pull === undefined ? [`${at}/tension`] : []),
        ...(offset > 0 && weight === undefined ? [`${at}/weight`] : []),
        ...(offset > 0 && ice && weight !== undefined ? iceWeightsNotGiven([load]) : []),
      ];
    });
}
