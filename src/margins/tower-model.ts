import { type Role, UNKNOWN_SOLIDITY, type WindDirection } from '../areas/index.ts';
import { GRAVITY, nth, remember, type Trace, zeros } from '../foundation/index.ts';
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
  type Level,
  levelsOf,
  type MastHold,
  mastHold,
  momentOfWeight,
  type Overlaps,
  overlapsOpen,
  type Profile,
  profileOf,
  ratedLines,
  type SliceForces,
  type SlicesInWind,
  shapeReadings,
  shearOfTorsion,
  sliceForces,
  slicesInWind,
  type Tower,
  towerItems,
  windStructureOf,
  withShapesRead,
} from '../structure/index.ts';
import type { CheckInput } from './check-input.ts';
import { type Comparison, comparisonsOf } from './comparisons.ts';
import type {
  BareModel,
  BareTowerCapacity,
  Claim,
  ClaimCase,
  Demand,
  MomentClaim,
  Scenario,
  ScenarioDemand,
  SiteSpeed,
  TowerInWind,
  TowerModel,
} from './model.ts';
import { ratedTops, ratingsInQuestion } from './plausible-rated-heights.ts';
import { ratedCapacitiesOf } from './rated-capacity.ts';
import { possibleMethods, type RatedCase, ratedCases, ratedSpeed } from './rated-case.ts';
import { type Rating, shareAllowed } from './rating.ts';
import { comparedFrom, misfitsOf } from './stated-for.ts';
import { momentShares } from './stated-moment.ts';
import { asStatedFor, type TowerAsRated, towersAsRated } from './tower-as-rated.ts';
import { largestWindRatio } from './unknown-own-drag.ts';

/** What of the tower itself the wind meets. */
type SeenTower = Pick<Scenario, 'solidity' | 'overlaps' | 'shapes'>;

const itemsOf = (tower: Tower, { solidity, overlaps, shapes }: SeenTower) =>
  towerItems(withShapesRead({ tower }, shapes).tower, solidity, overlaps);

function keyOf({ solidity, overlaps, shapes }: SeenTower): string {
  return `${solidity} ${overlaps} ${shapes.sides} ${shapes.pattern}`;
}

/** A scenario before any wind. */
type StillScenario = Omit<Scenario, 'appurtenances' | 'bareTower'>;

type SomeOf<T> = readonly [T, ...T[]];

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
  const appurtenances = appurtenanceItems(station);
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
  return { ...unproven, deadDemand, proven: ratedCapacitiesOf(unproven, {}), worked: new Map() };
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

/** Every scenario as one or several. */
function each<From, To>([first, ...others]: SomeOf<From>, split: (scenario: From) => SomeOf<To>): SomeOf<To> {
  return [...split(first), ...others.flatMap((scenario) => [...split(scenario)])];
}

/** The fastest wind of a rating that may be by the site's standard, or the site's own; undefined without such a rating [m/s]. */
function fastestRated({ ratings, method }: CheckInput, siteSpeed: number): number | undefined {
  const speeds = ratings.flatMap(({ of, claim, wind }) => {
    if (of !== 'tower' || !wind || !possibleMethods(wind).includes(method)) return [];
    const rows = claim.kind === 'area' ? claim.rows.map(({ speed }) => speed) : [];
    return [wind.speed, ...rows].flatMap((speed) =>
      speed === undefined ? [] : [ratedSpeed(speed, wind, METHOD_BY_ID[method]).speed],
    );
  });
  return speeds.length === 0 ? undefined : Math.max(siteSpeed, ...speeds);
}

/** Whether what the standard leaves open of the tower's own drag changes it up to a speed. */
function readTwoWays(wind: Wind, cut: Cut, direction: WindDirection, speed: number | undefined): boolean {
  if (speed === undefined || cut.slices.length === 0) return false;
  const high = slicesInWind(wind, cut, 'demand', direction);
  const low = slicesInWind(wind, cut, 'capacity', direction);
  return (
    low.steadyUpTo < speed ||
    low.coefficientOf.some(({ byFlow }, number) => byFlow.slow !== nth(high.coefficientOf, number).byFlow.slow)
  );
}

/**
 * Whether a least pressure decides somewhere and the rated case may have it too: then it is one unknown, tried on both sides
 * and on neither.
 */
function leastOnBothSides(scenarios: SomeOf<Scenario>, claims: readonly Claim[], speed: number): boolean {
  if (scenarios[0].appurtenances.wind.leastPressure === 0) return false;
  const cases = claims.flatMap((claim) => claim.cases);
  if (!cases.some(({ rated }) => rated.some(({ wind }) => (wind?.leastPressure ?? 0) > 0))) return false;
  return (
    cases.some(({ rated, own }) => [...rated, ...own].some(({ leastDecides }) => leastDecides)) ||
    scenarios.some(({ appurtenances, bareTower }) =>
      [appurtenances, ...(bareTower ? [bareTower] : [])].some(
        (cut) => sliceForces(cut, speed, 'unfavourable', true).leastDecides,
      ),
    )
  );
}

/**
 * How what a rated case's standard leaves open of the tower's own drag is read: as in the plan where that is by the same
 * standard, else as credits it least.
 */
export function ownReading(scenario: Scenario, rated: Wind): Role {
  return rated.method === scenario.appurtenances.wind.method ? scenario.own : 'capacity';
}

/** Whether the least pressure of a rated case counts: where that of the site's standard does. */
export function bothHaveLeast(scenario: Scenario): boolean {
  return scenario.least && scenario.appurtenances.wind.leastPressure > 0;
}

/**
 * The ratings of the tower that say something of it: those for its height and its supports. What may be for another height counts
 * only where no rating stands that surely is for this one.
 */
function ratingsSpeaking(input: CheckInput): readonly { readonly rating: Rating; readonly number: number }[] {
  const { tower } = input.station;
  const inQuestion = ratingsInQuestion(input);
  const fitting = input.ratings
    .map((rating, number) => ({ rating, number }))
    .filter(({ rating }) => rating.of === 'tower' && misfitsOf(rating, tower).length === 0);
  const sure = fitting.filter(({ rating }) => !inQuestion.includes(rating.at));
  return sure.some(({ rating }) => rating.claim.kind !== 'weight') ? sure : fitting;
}

function scenariosOf(input: CheckInput, bareTowerKnown: boolean): SomeOf<StillScenario> {
  const { station } = input;
  const [usualShapes] = shapeReadings([]);
  if (!bareTowerKnown) {
    const ofKind = (kind: WindStructure['kind']): StillScenario => ({
      windStructure: windStructureOf(station, kind),
      direction: 'face',
      solidity: 0,
      overlaps: 'both',
      shapes: usualShapes,
      own: 'demand',
      least: true,
      open: kind,
    });
    const isPole = station.tower.sections.some((section) => section.shape);
    return isPole ? [ofKind('pole')] : [ofKind('lattice'), ofKind('pole')];
  }
  const shapes = station.tower.sections.flatMap((section) => (section.shape ? [section.shape] : []));
  const turnsMatter = shapes.some(
    (shape) =>
      shape.kind === 'lattice' &&
      shape.solid.by !== 'drag' &&
      (shape.faces === 4 || shape.members === 'flat' || (shape.solid.by === 'areas' && shape.solid.flat > 0)),
  );
  const open = shapes.some((shape) => shape.kind === 'lattice' && shape.solid.by === 'unknown');
  const directions: readonly WindDirection[] = turnsMatter ? ['face', 'corner'] : ['face'];
  const solidities = open ? [UNKNOWN_SOLIDITY.least, UNKNOWN_SOLIDITY.most] : [UNKNOWN_SOLIDITY.least];
  const seen: readonly Overlaps[] = overlapsOpen(station.tower.sections) ? ['both', 'outer'] : ['both'];
  const [first, ...rest] = shapeReadings(station.tower.sections).flatMap((shapes) => {
    const windStructure = windStructureOf(withShapesRead(station, shapes), 'lattice');
    return solidities.flatMap((solidity) => {
      const open = `${solidity} ${shapes.sides} ${shapes.pattern}`;
      return seen.flatMap((overlaps) =>
        directions.map(
          (direction): StillScenario => ({
            windStructure,
            direction,
            solidity,
            overlaps,
            shapes,
            own: 'demand',
            least: true,
            open,
          }),
        ),
      );
    });
  });
  if (!first) throw new RangeError('a tower meets the wind in no scenario');
  return [first, ...rest];
}

interface ClaimContext {
  readonly input: CheckInput;
  readonly scenarios: TowerModel['scenarios'];
  readonly levels: readonly Level[];
  readonly hold: MastHold;
  readonly bareTowerKnown: boolean;
  readonly windOf: (windStructure: WindStructure) => Wind;
}

/** A claim holds on every way in which the tower may have stood as it was rated: they are readings of it. */
function claimsOf(
  rating: Rating,
  number: number,
  asRated: readonly (TowerAsRated | undefined)[],
  context: ClaimContext,
): readonly Claim[] {
  const rows = rating.claim.kind === 'area' ? rating.claim.rows.length : 1;
  const casesOfEach = asRated.map((each) => claimCasesOf(rating, each, context));
  return Array.from({ length: rows }, (_, row) => ({
    rating,
    number,
    cases: casesOfEach.flatMap((cases) => {
      const each = cases.length / rows;
      return cases.slice(row * each, (row + 1) * each);
    }),
  })).filter((claim) => claim.cases.length > 0);
}

function claimCasesOf(rating: Rating, asRated: TowerAsRated | undefined, context: ClaimContext): readonly ClaimCase[] {
  const { input, scenarios, bareTowerKnown } = context;
  const { station } = input;
  const { withCables } = rating;
  const tower = asRated?.tower ?? station.tower;
  const heights = (asRated?.levels ?? context.levels).map(({ z }) => z);
  const cuts = new Map<string, Cut>();
  // The rated wind blew on the tower itself, where it is known, and on the lines the maker allowed for. Each reading is cut where
  // its own pressure bends, so that it proves the same beside others and alone.
  const ratedCut = (seen: SeenTower, cutAt: readonly number[]) =>
    remember(cuts, `${keyOf(seen)} ${cutAt.at(-1)}`, () => {
      const own = bareTowerKnown ? itemsOf(tower, seen) : [];
      return cutIntoSlices(withCables ? [...own, ratedLines(withCables, tower)] : own, cutAt);
    });
  const stated = asRated ? asStatedFor(rating, station.tower, asRated) : rating;
  const byWindStructure = {
    with: new Map<WindStructure, readonly RatedCase[]>(),
    without: new Map<WindStructure, readonly RatedCase[]>(),
  };
  const ratedIn = (scenario: Scenario) => {
    const { windStructure, appurtenances } = scenario;
    const shared = { sways: appurtenances.wind.gustVaries, least: bothHaveLeast(scenario) };
    const structure = asRated ? { ...windStructure, height: tower.top } : windStructure;
    return remember(byWindStructure[shared.least ? 'with' : 'without'], windStructure, () =>
      ratedCases(stated, structure, station.units, tower.top, undefined, shared),
    );
  };
  return ratedIn(scenarios[0]).map((_, caseNumber) => {
    const rated = scenarios.map((scenario) => nth(ratedIn(scenario), caseNumber));
    const cutAt = [...heights, nth(rated, 0).wind?.bendsAt ?? 0];
    const own = scenarios.map((scenario, index) =>
      bareTowerCapacity(nth(rated, index), scenario, ratedCut(scenario, cutAt), asRated, context),
    );
    return { ...(asRated ? { asRated } : {}), cutAt, rated, own, found: [] };
  });
}

function bareTowerCapacity(
  rated: RatedCase,
  scenario: Scenario,
  cut: Cut,
  asRated: TowerAsRated | undefined,
  context: ClaimContext,
): BareTowerCapacity {
  const { bareTowerKnown, windOf } = context;
  const { levels, hold } = asRated ?? context;
  const { wind } = rated;
  const nothing = { shear: zeros(levels.length), moment: zeros(levels.length), leastDecides: false };
  if (!wind) return { ...nothing, windRatio: bareTowerKnown ? 0 : Number.POSITIVE_INFINITY };
  const windRatio = bareTowerKnown
    ? 0
    : largestWindRatio(windOf(scenario.windStructure), wind, context.levels, scenario.windStructure, asRated);
  if (cut.items.length === 0) return { ...nothing, windRatio };
  const inWind = slicesInWind(wind, cut, ownReading(scenario, wind), scenario.direction);
  const forces = sliceForces(inWind, wind.conditions.speed, 'favourable', bothHaveLeast(scenario));
  const { shear, moment } = profileOf(inWind, forces, levels, hold);
  return { shear, moment, windRatio, leastDecides: forces.leastDecides };
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
