import type { AreaKind, WindDirection } from '../areas/index.ts';
import { UNKNOWN_SOLIDITY } from '../areas/index.ts';
import { GRAVITY, remember, type Trace, zeros } from '../foundation/index.ts';
import { type Exposed, METHOD_BY_ID, type MethodId, type Reading, toOwnBasis, type Wind } from '../methods/index.ts';
import {
  bracedEitherWay,
  bracedShear,
  type Cut,
  cutIntoSlices,
  type DeadLoad,
  deadLoad,
  exposedTower,
  hungItems,
  type Level,
  levelsOf,
  type MastHold,
  mastHold,
  momentOfWeight,
  type Overlaps,
  overlapsOpen,
  ownWindKnown,
  type Profile,
  profileOf,
  ratedLines,
  type Section,
  type SliceForces,
  shearOfTorsion,
  sliceForces,
  type Tower,
  towerItems,
  type WindItem,
  type Windward,
  windward,
} from '../structure/index.ts';
import { basicWindFor, type Ground, type RiskCategory } from '../wind/index.ts';
import { type Check, checksOf } from './check-list.ts';
import type { Inquiry } from './inquiry.ts';
import { type RatedCase, ratedCases } from './rated-case.ts';
import { type Rating, shareAllowed } from './rating.ts';
import { comparedFrom, misfitsOf } from './stated-for.ts';
import { type Proven, provenOf } from './tower-proof.ts';
import { largestWindRatio } from './unknown-own-drag.ts';

/** One way the tower itself may meet the wind: a direction that must be tried, and what is open about its members. */
export interface Scenario {
  readonly exposed: Exposed;
  readonly direction: WindDirection;
  readonly solidity: number;
  readonly overlaps: Overlaps;
  /** Scenarios of one key differ by direction and by what is seen of overlaps; keys differ by what nobody told. */
  readonly open: string;
}

/** What of the tower itself the wind meets. */
type SeenTower = Pick<Scenario, 'solidity' | 'overlaps'>;

/** One claim of the maker's (a row of a rating), with all its readings worked out over every scenario. */
export interface Claim {
  readonly rating: Rating;
  readonly number: number;
  readonly cases: readonly ClaimCase[];
}

export interface ClaimCase {
  /** By scenario: the rated case as it is for that kind of structure. */
  readonly rated: readonly RatedCase[];
  /** By scenario: shear and moment of the rated wind on the tower itself, at the allowable level. */
  readonly own: readonly OwnProof[];
  /** What it has already been found to prove: answers to open questions pick among the same readings. */
  readonly found: CaseProof[];
}

/** What one case proves, by check, at one end of what is open about it. */
interface CaseProof {
  readonly scenario: number;
  readonly areaFactor: number;
  readonly provesOwn: boolean;
  readonly proof: readonly number[];
}

/** A moment stated at a level of the tower. */
export interface MomentClaim {
  readonly number: number;
  readonly level: number;
  /** What it surely proves, and at most where its level is not told [N·m]. */
  readonly moment: number;
  readonly atMost: number;
}

export interface OwnProof {
  readonly shear: number[];
  readonly moment: number[];
  /** λqG of the site over that of the rating, largest over height, where the tower's own wind is not known; else 0. */
  readonly windRatio: number;
}

export interface TowerModel {
  readonly inquiry: Inquiry;
  readonly levels: readonly Level[];
  readonly checks: readonly Check[];
  readonly hold: MastHold;
  readonly dead: DeadLoad;
  /** Mass of ice on each load, with its level, where the case is one of ice [kg]. */
  readonly iceOnLoads?: readonly number[];
  readonly scenarios: readonly Scenario[];
  readonly ownKnown: boolean;
  readonly hung: readonly WindItem[];
  /** By scenario. */
  readonly hungWind: readonly Windward[];
  readonly ownWind: readonly (Windward | undefined)[];
  readonly claims: readonly Claim[];
  /** Moments stated at one height. */
  readonly momentClaims: readonly MomentClaim[];
  /** Weight the tower's rating covers [kg]. */
  readonly coveredWeight: number;
  /** Highest support; nothing below it is compared [m]. */
  readonly lowest: number;
  /** Demand without wind, by check. */
  readonly deadDemand: number[];
  /** What every claim proves with nothing further answered. */
  readonly proven: readonly Proven[];
  /** What several links need of it and one has worked out already. */
  readonly worked: Map<unknown, unknown>;
}

/** The site's speed as its method takes it. */
export interface SiteSpeed {
  readonly speed: number;
  readonly speedLevel: 'own' | 'strength';
  readonly converted: boolean;
}

/**
 * The site's speed in the basis of its method. A strength-level speed enters TIA-222-G as it is, with the level of such
 * maps.
 *
 * @param inquiry the plan in SI [-]
 * @param trace the working, or nothing [-]
 * @returns the speed [m/s] and how it was taken [-]
 * @source tia-faq
 */
export function siteSpeed(inquiry: Pick<Inquiry, 'method' | 'site'>, trace?: Trace): SiteSpeed {
  const method = METHOD_BY_ID[inquiry.method];
  const basis = inquiry.site.basis ?? method.basis;
  if (method.id === 'tia222-g' && basis === 'gust3-strength') {
    return { speed: inquiry.site.speed, speedLevel: 'strength', converted: false };
  }
  const own = toOwnBasis(method, inquiry.site.speed, basis, 'site', trace);
  const { returnYears } = inquiry.site;
  return {
    speed: returnYears === undefined ? own : basicWindFor(own, returnYears, trace),
    speedLevel: 'own',
    converted: basis !== method.basis,
  };
}

/**
 * The site's wind over a structure.
 *
 * @param inquiry the plan in SI [-]
 * @param exposed the structure [-]
 * @param actual whether it is a wind that has come, at full force [-]
 * @returns the wind [-]
 * @source derived
 */
export function siteWind(
  inquiry: Pick<Inquiry, 'method' | 'site'> & { station: Pick<Inquiry['station'], 'units'> },
  exposed: Exposed,
  actual: boolean,
): Wind {
  const { site } = inquiry;
  const { speed, speedLevel } = siteSpeed(inquiry);
  return METHOD_BY_ID[inquiry.method].wind({
    units: inquiry.station.units,
    speed,
    speedLevel,
    actual,
    exposure: site.exposure,
    riskCategory: site.riskCategory ?? 'II',
    groundElevation: site.groundElevation,
    exposed,
    ...(site.hill ? { hill: site.hill } : {}),
    ...(site.topographicFactor === undefined ? {} : { topographicFactor: site.topographicFactor }),
  });
}

/**
 * Everything about the tower that does not depend on how open questions are answered.
 *
 * @param inquiry the plan in SI [-]
 * @returns the model [-]
 * @source derived
 */
export function towerModel(inquiry: Inquiry): TowerModel {
  const { station } = inquiry;
  const { tower } = station;
  const ownKnown = ownWindKnown(tower);
  const lowest = comparedFrom(tower);
  const levels = levelsOf(station);
  const hold = mastHold(station.mast, tower);
  const scenarios = scenariosOf(inquiry, ownKnown);
  const hung = hungItems(station);
  const winds = new Map<Exposed, Wind>();
  const windOf = (exposed: Exposed) => remember(winds, exposed, () => siteWind(inquiry, exposed, false));
  const hungByWind = new Map<Exposed, Windward>();
  const hungCut = cutIntoSlices(hung, levels);
  const hungWind = scenarios.map(({ exposed }) =>
    remember(hungByWind, exposed, () => windward(windOf(exposed), hungCut, 'demand', 'face')),
  );
  const ownCuts = new Map<string, Cut>();
  const ownCut = ({ solidity, overlaps }: SeenTower) =>
    remember(ownCuts, `${solidity} ${overlaps}`, () =>
      cutIntoSlices(ownKnown ? towerItems(tower, solidity, overlaps) : [], levels),
    );
  const ownWind = scenarios.map((scenario) =>
    ownKnown ? windward(windOf(scenario.exposed), ownCut(scenario), 'demand', scenario.direction) : undefined,
  );
  const claims: Claim[] = [];
  const momentClaims: MomentClaim[] = [];
  let coveredWeight = 0;
  inquiry.ratings.forEach((rating, number) => {
    if (rating.of !== 'tower' || !speaksOfThis(rating, tower)) return;
    const { claim } = rating;
    if (claim.kind === 'weight') coveredWeight = Math.max(coveredWeight, claim.weight);
    if (claim.kind === 'moment') {
      const level = levels.findIndex(
        (each) => each.zone === 'plain' && Math.abs(each.z - (rating.height ?? tower.foot)) < 1e-6,
      );
      const { low, high } = shareAllowed(claim);
      momentClaims.push({ number, level, moment: claim.moment * low, atMost: claim.moment * high });
    }
    claims.push(...claimsOf(rating, number, { inquiry, scenarios, levels, hold, ownCut, ownKnown, windOf }));
  });
  const unproven = {
    inquiry,
    levels,
    checks: checksOf(station, levels, lowest),
    hold,
    dead: deadLoad(station, levels),
    scenarios,
    ownKnown,
    hung,
    hungWind,
    ownWind,
    claims,
    momentClaims,
    coveredWeight,
    lowest,
  };
  const deadDemand = unproven.checks.map((check) => deadDemandOf(unproven, check));
  return { ...unproven, deadDemand, proven: provenOf(unproven, {}), worked: new Map() };
}

/**
 * What is worked out of a tower, the first time it is asked for.
 *
 * @param model the tower [-]
 * @param work what is worked out [-]
 * @returns what the work returns [-]
 * @source derived
 */
export function once<T>(model: TowerModel, work: (model: TowerModel) => T): T {
  if (!model.worked.has(work)) model.worked.set(work, work(model));
  return model.worked.get(work) as T;
}

/** The tower before anything is compared. */
export type BareModel = Omit<TowerModel, 'deadDemand' | 'proven' | 'worked'>;

/** A rating speaks only for the height and the supports it was stated for. */
function speaksOfThis(rating: Rating, tower: Tower): boolean {
  return misfitsOf(rating, tower).length === 0;
}

function scenariosOf(inquiry: Inquiry, ownKnown: boolean): readonly Scenario[] {
  const { station } = inquiry;
  if (!ownKnown) {
    const kinds = station.tower.sections.some((section) => section.shape)
      ? (['pole'] as const)
      : (['lattice', 'pole'] as const);
    return kinds.map((kind) => ({
      exposed: exposedTower(station, kind),
      direction: 'face',
      solidity: 0,
      overlaps: 'both',
      open: kind,
    }));
  }
  const shapes = station.tower.sections.flatMap((section) => (section.shape ? [section.shape] : []));
  const turnsMatter = shapes.some(
    (shape) =>
      shape.kind === 'lattice' &&
      shape.solid.by !== 'drag' &&
      (shape.faces === 4 || shape.members === 'flat' || (shape.solid.by === 'areas' && shape.solid.flat > 0)),
  );
  const open = shapes.some((shape) => shape.kind === 'lattice' && shape.solid.by === 'unknown');
  const exposed = exposedTower(station, 'lattice');
  const directions: readonly WindDirection[] = turnsMatter ? ['face', 'corner'] : ['face'];
  const solidities = open ? [UNKNOWN_SOLIDITY.least, UNKNOWN_SOLIDITY.most] : [UNKNOWN_SOLIDITY.least];
  const seen: readonly Overlaps[] = overlapsOpen(station.tower.sections) ? ['both', 'outer'] : ['both'];
  return solidities.flatMap((solidity) =>
    seen.flatMap((overlaps) =>
      directions.map((direction) => ({ exposed, direction, solidity, overlaps, open: String(solidity) })),
    ),
  );
}

interface ClaimContext {
  readonly inquiry: Inquiry;
  readonly scenarios: readonly Scenario[];
  readonly levels: readonly Level[];
  readonly hold: MastHold;
  readonly ownCut: (seen: SeenTower) => Cut;
  readonly ownKnown: boolean;
  readonly windOf: (exposed: Exposed) => Wind;
}

function claimsOf(rating: Rating, number: number, context: ClaimContext): readonly Claim[] {
  const { inquiry, scenarios, levels, ownCut } = context;
  const { station } = inquiry;
  const { withCables } = rating;
  const cuts = new Map<Cut, Cut>();
  // The rated wind blew on the tower itself, where it is known, and on the lines the maker allowed for.
  const ratedCut = (seen: SeenTower) => {
    const own = ownCut(seen);
    return remember(cuts, own, () =>
      withCables ? cutIntoSlices([...own.items, ratedLines(withCables, station.tower)], levels) : own,
    );
  };
  const byExposed = new Map<Exposed, readonly RatedCase[]>();
  for (const { exposed } of scenarios) {
    if (!byExposed.has(exposed)) byExposed.set(exposed, ratedCases(rating, exposed, station.units, station.tower.top));
  }
  const first = byExposed.get((scenarios[0] as Scenario).exposed) as readonly RatedCase[];
  const cases = first.map((_, caseNumber) => {
    const rated = scenarios.map(
      ({ exposed }) => (byExposed.get(exposed) as readonly RatedCase[])[caseNumber] as RatedCase,
    );
    const own = scenarios.map((scenario, index) =>
      ownProof(rated[index] as RatedCase, scenario, ratedCut(scenario), context),
    );
    return { rated, own, found: [] };
  });
  const rows = rating.claim.kind === 'area' ? rating.claim.rows.length : 1;
  const each = cases.length / rows;
  return Array.from({ length: rows }, (_, row) => ({
    rating,
    number,
    cases: cases.slice(row * each, (row + 1) * each),
  })).filter((claim) => claim.cases.length > 0);
}

function ownProof(rated: RatedCase, scenario: Scenario, cut: Cut, context: ClaimContext): OwnProof {
  const { levels, hold, ownKnown, windOf } = context;
  const { wind } = rated;
  const nothing = { shear: zeros(levels.length), moment: zeros(levels.length) };
  if (!wind) return { ...nothing, windRatio: ownKnown ? 0 : Number.POSITIVE_INFINITY };
  const windRatio = ownKnown ? 0 : largestWindRatio(windOf(scenario.exposed), wind, levels, scenario.exposed);
  if (cut.items.length === 0) return { ...nothing, windRatio };
  const inWind = windward(wind, cut, 'capacity', scenario.direction);
  const forces = sliceForces(inWind, wind.conditions.speed, 'good', false);
  const { shear, moment } = profileOf(inWind, forces, levels, hold);
  return { shear, moment, windRatio };
}

/** Answers to open questions; what is not answered stays at both ends of its bracket. */
export interface Answers {
  readonly ratings?: ReadonlyMap<number, RatingAnswer>;
  /** By number of the load: what its stated area is multiplied by. */
  readonly loads?: ReadonlyMap<number, number>;
  readonly solidity?: number;
}

export interface RatingAnswer {
  readonly method?: MethodId;
  readonly exposure?: Ground;
  readonly riskCategory?: RiskCategory;
  readonly areaKind?: AreaKind;
}

/** What the wind and the weights ask of the tower, by scenario, at one end of the readings. */
export interface Demand {
  /** Shear and moment of what hangs on it, by scenario. */
  readonly hung: readonly Profile[];
  /** The same of the tower itself; undefined where its own wind is not known. */
  readonly own: readonly (Profile | undefined)[];
  /** The method's least pressure decides for some piece. */
  readonly leastDecides: boolean;
  /** Moment and shear by the wind, by scenario and check [N·m, N]. */
  readonly wind: readonly (readonly number[])[];
  /** The same without wind, by check. */
  readonly dead: number[];
}

/**
 * Demands of all checks at a speed.
 *
 * @param model the tower [-]
 * @param hungWind its hung items in the wind, by scenario [-]
 * @param ownWind the tower itself in the wind, by scenario [-]
 * @param speed in the basis of the wind [m/s]
 * @param reading which end of open readings [-]
 * @param least whether the method's least pressure counts [-]
 * @returns the demands [-]
 * @source derived
 */
export function demandOf(
  model: TowerModel,
  hungWind: readonly Windward[],
  ownWind: readonly (Windward | undefined)[],
  speed: number,
  reading: Reading,
  least: boolean,
): Demand {
  const { levels, hold, checks } = model;
  const blown = new Map<Windward, Blown>();
  let leastDecides = false;
  const inWind = (cut: Windward, role: Reading) =>
    remember(blown, cut, () => {
      const forces = sliceForces(cut, speed, role, least);
      leastDecides ||= forces.leastDecides;
      return { cut, forces, profile: profileOf(cut, forces, levels, hold) };
    });
  const hung = model.scenarios.map((_, scenario) => inWind(hungWind[scenario] as Windward, reading));
  const own = model.scenarios.map((_, scenario) => {
    const cut = ownWind[scenario];
    return cut && inWind(cut, 'good').profile;
  });
  const wind = hung.map((hungBlown, scenario) => {
    const values = zeros(checks.length);
    for (let index = 0; index < checks.length; index += 1) {
      values[index] = windDemand(model, checks[index] as Check, hungBlown, own[scenario]);
    }
    return values;
  });
  return { hung: hung.map(({ profile }) => profile), own, leastDecides, wind, dead: model.deadDemand };
}

/** Things in a wind: the forces on their slices, and what comes of them at every level. */
interface Blown {
  readonly cut: Windward;
  readonly forces: SliceForces;
  readonly profile: Profile;
}

function windDemand(model: TowerModel, check: Check, { cut, forces, profile: hung }: Blown, own?: Profile): number {
  const { level, apex } = check;
  const at = model.levels[level] as Level;
  const section = model.inquiry.station.tower.sections[check.section] as Section;
  if (check.of === 'moment') return (hung.moment[level] as number) + (own ? (own.moment[level] as number) : 0);
  const torsion = shearOfTorsion(section, hung.torsion[level] as number, at.z);
  if (apex === Number.POSITIVE_INFINITY) {
    return (hung.shear[level] as number) + (own ? (own.shear[level] as number) : 0) + torsion;
  }
  const hungPart = hangsAbove(model, apex)
    ? bracedEitherWay(cut, forces, at, apex, model.hold)
    : bracedShear(hung, level, apex);
  return hungPart + (own ? bracedShear(own, level, apex) : 0) + torsion;
}

/**
 * Whether the braces of a lattice take more, or less, than the shear: its legs slope, or something twists it.
 *
 * @param model the tower [-]
 * @param check the comparison [-]
 * @param torsion there [N·m]
 * @returns true where they do [-]
 * @source derived
 */
export function isBraced(model: Pick<TowerModel, 'inquiry'>, check: Check, torsion: number): boolean {
  if (check.of !== 'shear') return false;
  const shape = model.inquiry.station.tower.sections[check.section]?.shape;
  return check.apex !== Number.POSITIVE_INFINITY || (torsion > 0 && shape?.kind === 'lattice');
}

/**
 * Whether something hangs above the point where a section's legs would meet: it turns the sign in the braces.
 *
 * @param model the tower [-]
 * @param apex where the legs would meet [m]
 * @returns true when something does [-]
 * @source derived
 */
export function hangsAbove(model: TowerModel, apex: number): boolean {
  return model.hung.some((item) => item.parts.some((part) => part.high > apex));
}

/**
 * Demand of a check without wind: the pull of wires, and the weight aloft as moment.
 *
 * @param model the tower [-]
 * @param check the comparison [-]
 * @returns the demand [N or N·m]
 * @source derived
 */
export function deadDemandOf(model: BareModel, check: Check): number {
  const { pullShear, leaningShear, pullMoment } = model.dead;
  if (check.of === 'shear') return (pullShear[check.level] as number) + (leaningShear[check.level] as number);
  return (pullMoment[check.level] as number) + weightMoment(model, check);
}

/**
 * Moment of the weight aloft at a check: what fills the legs, and what hangs off the axis.
 *
 * k·W·b + ΣW·e
 *
 * @param model the tower [-]
 * @param check the comparison [-]
 * @param trace the working, or nothing [-]
 * @returns the moment [N·m]
 * @source derived
 */
export function weightMoment(model: BareModel, check: Check, trace?: Trace): number {
  const { dead, coveredWeight } = model;
  const extra = Math.max(0, (dead.weight[check.level] as number) - coveredWeight) * GRAVITY;
  const section = model.inquiry.station.tower.sections[check.section] as Section;
  return momentOfWeight(section, extra, trace) + (dead.leaningMoment[check.level] as number);
}

/**
 * What is there without wind and is not told: the pull of a wire, the weight of what hangs off the axis.
 *
 * n = Σ 1
 *
 * @param model the tower [-]
 * @param on the mast alone, or all of them [-]
 * @returns pointers to what is missing [-]
 * @source derived
 */
export function stillUntold(model: Pick<TowerModel, 'inquiry'>, on?: 'mast'): readonly string[] {
  const { loads } = model.inquiry.station;
  return loads
    .filter((load) => on === undefined || load.on === on)
    .flatMap(({ at, shape, offset, weight }) => [
      ...(shape.kind === 'wire' && shape.pull === undefined ? [`${at}/tension`] : []),
      ...(offset > 0 && weight === undefined ? [`${at}/weight`] : []),
    ]);
}
