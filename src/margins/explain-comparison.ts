import { evaluate, nth, Trace, under } from '../foundation/index.ts';
import { METHOD_BY_ID } from '../methods/index.ts';
import {
  appurtenanceItems,
  cutIntoSlices,
  type Level,
  type MastHold,
  ONE_HEIGHT,
  ratedLines,
  type Slice,
  shareInBraces,
  shearOfTorsion,
  slicesInWind,
  towerItems,
  type WindItem,
  withShapesRead,
} from '../structure/index.ts';
import type { Check } from './checks/check.ts';
import type { CheckContext } from './checks/check-kind.ts';
import { bothHaveLeast, ownReading } from './claims.ts';
import type { Comparison, Proof } from './comparisons.ts';
import {
  explainMomentAsRated,
  explainMoreThanRated,
  explainPlaceAsRated,
  shareOfRatedMoment,
} from './explain-as-rated.ts';
import { agree, explainPieces, type Reaching, sumGroup, sumsByGroup } from './explain-slices.ts';
import {
  actualSpeedHoldsTo,
  allowableForce,
  allowableMoment,
  designHoldsTo,
  marginOfRatio,
  pressureForce,
  provenInBraces,
  provenMoment,
  provenShear,
  ratedForce,
  ratioOfMoment,
  ratioOfShear,
  shearBesideMoment,
  sumOfForces,
  sumOfMoments,
  totalMoment,
  totalShear,
  windRatio,
} from './formulas.ts';
import type { Claim, ClaimCase, MomentClaim, Scenario, TowerModel } from './model.ts';
import { handedOn, proofOf, provenBy, provingTower } from './rated-capacity.ts';
import { ratedAreaFactor, ratedSpeed } from './rated-case.ts';
import { shareAllowed } from './rating.ts';
import { demandOf, weightMoment } from './tower-model.ts';
import { type ComparisonRatio, checkRatio } from './tower-ratio.ts';
import { coefficientRise, type LevelOfWindRatio, levelsOfWindRatio, windOnDragArea } from './unknown-own-drag.ts';

/** One load case as the working goes through it. */
interface LoadCase {
  readonly model: TowerModel;
  readonly speed: number;
  readonly least: boolean;
  /** Writes down the areas of what hangs on the tower, and of the tower itself. */
  readonly items: (trace: Trace) => void;
  readonly tower: (trace: Trace, scenario: Scenario) => void;
}

/**
 * The working of a check that is compared with the tower's rating, where it decides.
 *
 * u = demand/capacity
 *
 * @param which of the comparisons they are made of
 * @source derived
 */
export function explainGoverning(
  context: CheckContext,
  checks: readonly Check[],
  which: Comparison['check'],
  heading: string,
  trace: Trace,
): void {
  explainCase(inDesignWind(context.model), checks, context.ratios, [which], heading, trace);
}

/**
 * The working of what one comparison asks in the design wind.
 *
 * @param model of the tower
 * @param asked the comparison, and the scenario that asks most
 * @returns the demand [N or N·m]
 * @source derived
 */
export function explainAsked(
  model: TowerModel,
  asked: Pick<ComparisonRatio, 'comparison' | 'scenario'>,
  trace: Trace,
): number {
  return explainDemand(inDesignWind(model), asked, trace);
}

function inDesignWind(model: TowerModel): LoadCase {
  const { station } = model.input;
  return {
    model,
    speed: model.site.speed,
    least: true,
    items: (at) => appurtenanceItems(station, at),
    tower: (at, scenario) =>
      towerItems(withShapesRead(station, scenario.shapes).tower, scenario.solidity, scenario.overlaps, at),
  };
}

/**
 * The working of the tower with ice.
 *
 * u = demand/capacity
 *
 * @source derived
 */
export function explainIced(context: CheckContext, checks: readonly Check[], trace: Trace): void {
  const shown = context.ice?.shown;
  if (!shown) return;
  const { model, explainItems: items, explainTower: tower } = shown;
  const { speed } = model.site;
  const loadCase: LoadCase = { model, speed, least: false, items, tower };
  explainCase(loadCase, checks, shown.ratios, ['tower', 'tower-top'], 'tower with ice', trace);
}

function explainCase(
  loadCase: LoadCase,
  checks: readonly Check[],
  ratios: readonly ComparisonRatio[],
  of: readonly Comparison['check'][],
  heading: string,
  trace: Trace,
): void {
  const proven = ratios.filter((ratio) => Number.isFinite(ratio.unfavourable));
  const governing = checkRatio(proven, ...of)?.governing;
  for (const check of checks) {
    if (check.result && governing) under(trace, heading, () => explainCheck(loadCase, check, governing, trace));
  }
}

function explainCheck(loadCase: LoadCase, check: Check, governing: ComparisonRatio, trace: Trace): void {
  const { model, speed } = loadCase;
  const { comparison, scenario } = governing;
  const demand = under(trace, 'demand', () => explainDemand(loadCase, governing, trace));
  agree(demand, governing.demand, 'demand');
  const { by } = governing;
  if (by && !('cases' in by)) {
    const moment = comparison.tube?.moment ?? model.comparisons.indexOf(comparison);
    const stated = explainStatedMoment(model, by, moment, trace);
    if (comparison.tube) evaluate(trace, shearBesideMoment, [stated, comparison.tube.diameter]);
  }
  const proof =
    by && 'cases' in by
      ? under(trace, 'capacity by the rating', () => explainProof(model, by, governing, trace))
      : undefined;
  if (proof !== undefined && !governing.byWindRatio) agree(proof, governing.capacity, 'capacity');
  const capacity = proof ?? governing.capacity;
  const formula = comparison.of === 'moment' ? ratioOfMoment : ratioOfShear;
  const ratio = governing.byWindRatio
    ? explainWindRatio(model, governing, trace)
    : evaluate(trace, formula, [demand, capacity]);
  agree(ratio, governing.unfavourable, 'use');
  evaluate(trace, marginOfRatio, [ratio]);
  if (!check.result?.holdsTo?.steady) return;
  const { wind } = nth(model.scenarios, scenario).appurtenances;
  const index = model.comparisons.indexOf(comparison);
  const withoutLeast = demandOf(model, model.scenarios, speed, 'unfavourable', false);
  const windPart = nth(nth(withoutLeast.scenarios, scenario).wind, index);
  const dead = nth(withoutLeast.dead, index);
  const [deadRatio, windRatioOf] = governing.byWindRatio ? [0, ratio] : [dead / capacity, windPart / capacity];
  if (deadRatio >= 1) return;
  const design = evaluate(
    trace,
    designHoldsTo,
    [speed, deadRatio, windRatioOf],
    'of this comparison; the lowest of all counts',
  );
  const actual = evaluate(trace, actualSpeedHoldsTo, [
    design,
    wind.toAllowableFactor,
    wind.directionFactor,
    wind.importance,
  ]);
  METHOD_BY_ID[wind.method].actualGust(actual, trace);
}

function explainStatedMoment(
  model: TowerModel,
  { number, shares }: MomentClaim,
  comparison: number,
  trace: Trace,
): number {
  const rating = model.input.ratings[number];
  if (rating?.claim.kind !== 'moment') throw new Error('a moment claim is of a rating that states no moment');
  const stated = evaluate(trace, allowableMoment, [shareAllowed(rating.claim).low, rating.claim.moment]);
  const share = shares.get(comparison)?.unfavourable ?? 0;
  return share === 1 ? stated : evaluate(trace, shareOfRatedMoment, [stated, share]);
}

function explainDemand(
  loadCase: LoadCase,
  governing: Pick<ComparisonRatio, 'comparison' | 'scenario'>,
  trace: Trace,
): number {
  const { model, speed } = loadCase;
  const { comparison, scenario } = governing;
  const level = nth(model.levels, comparison.level);
  const inWind = nth(model.scenarios, scenario);
  const least = loadCase.least && inWind.least;
  loadCase.items(trace);
  const reach = (slice: Slice, item: WindItem) =>
    reachOf(model.hold, comparison.of, comparison.apex, level, slice, item);
  const all = explainPieces({ cut: inWind.appurtenances, speed, bound: 'unfavourable', least }, reach, trace);
  const pieces = oneWay(all, comparison.of);
  const own = inWind.bareTower;
  const ofTower = own
    ? under(trace, 'the tower itself', () => {
        loadCase.tower(trace, inWind);
        return explainPieces({ cut: own, speed, bound: 'favourable', least }, reach, trace);
      })
    : [];
  const sums = [...sumsByGroup(pieces, comparison.of, trace), sumGroup(ofTower, comparison.of, trace)] as const;
  if (comparison.of === 'moment') {
    const weight = weightMoment(model, comparison, trace);
    return evaluate(trace, totalMoment, [...sums, nth(model.dead.pullMoment, comparison.level), weight]);
  }
  const section = nth(model.input.station.tower.sections, comparison.section);
  const braces = shearOfTorsion(section, torsionOf(all), level.z, trace);
  const { pullShear, eccentricWeightShear } = model.dead;
  return evaluate(trace, totalShear, [
    ...sums,
    nth(pullShear, comparison.level),
    nth(eccentricWeightShear, comparison.level),
    braces,
  ]);
}

/** Of pieces that push the braces one way and the other, those that push harder, each with its share above zero. */
function oneWay(pieces: readonly Reaching[], of: Comparison['of']): readonly Reaching[] {
  if (of === 'moment' || pieces.every(({ share }) => share >= 0)) return pieces;
  const pushing = (sign: 1 | -1): readonly Reaching[] =>
    pieces.flatMap((each) => (sign * each.share > 0 ? [{ ...each, share: sign * each.share }] : []));
  const force = (way: readonly Reaching[]) => sumsByGroup(way, of).reduce((sum, each) => sum + each);
  const [along, against] = [pushing(1), pushing(-1)];
  return force(along) >= force(against) ? along : against;
}

/** Of each thing off the axis the sum along or the sum across, whichever is more, at its distance [N·m]. */
function torsionOf(pieces: readonly Reaching[]): number {
  const sums = new Map<number, readonly [along: number, across: number, offset: number]>();
  for (const { along, across, twists } of pieces) {
    if (!twists) continue;
    const [front, side] = sums.get(twists.item) ?? [0, 0];
    sums.set(twists.item, [front + along, side + across, twists.offset]);
  }
  return [...sums.values()].reduce((sum, [along, across, offset]) => sum + Math.max(along, across) * offset, 0);
}

function reachOf(hold: MastHold, of: Comparison['of'], apex: number, level: Level, slice: Slice, item: WindItem) {
  const { z, zone } = level;
  if (item.carriedBy === 'mast' ? zone === 'clear' : slice.z < z - ONE_HEIGHT) return undefined;
  const { offset } = item;
  const twisting = offset > 0 && (item.carriedBy === 'tower' || zone === 'plain');
  const twists = twisting ? { twists: { item: slice.item, offset } } : {};
  const braces =
    of === 'shear' && apex !== Number.POSITIVE_INFINITY ? shareInBraces(item, slice.z, level, apex, hold) : undefined;
  if (item.carriedBy === 'mast' && zone === 'couple') {
    const bearing = hold.bearing as number;
    const share = (slice.z - hold.foot) / (bearing - hold.foot);
    return { share: braces ?? share, arm: share * (bearing - z), ...twists };
  }
  return { share: braces ?? 1, arm: slice.z - z, ...twists };
}

/** The reading of a claim that proves least, written down. */
function explainProof(model: TowerModel, claim: Claim, governing: ComparisonRatio, trace: Trace): number {
  const { comparison, scenario } = governing;
  const number = model.comparisons.indexOf(comparison);
  let least: { readonly each: ClaimCase; readonly capacity: number } | undefined;
  for (const each of claim.cases) {
    const capacity = provenBy(model, number, each, scenario, lowFactor(each, scenario));
    if (!least || capacity < least.capacity) least = { each, capacity };
  }
  const { each } = least as { each: ClaimCase };
  const { tube } = comparison;
  const proving = [number, ...(tube ? [tube.moment] : [])];
  const proofs = proving.flatMap((one) =>
    proofOf(model, one, each).map((place) => (at: Trace) => {
      const value = explainProofAt(model, nth(model.comparisons, one), place, each, scenario, at);
      return tube && one === tube.moment ? evaluate(at, shearBesideMoment, [value, tube.diameter]) : value;
    }),
  );
  const values = proofs.map((explain) => explain(new Trace()));
  const capacity = Math.max(0, ...values);
  if (values.length > 0) nth(proofs, Math.max(0, values.indexOf(capacity)))(trace);
  return capacity;
}

function lowFactor(each: ClaimCase, scenario: number): number {
  const rated = nth(each.rated, scenario);
  const { claim } = rated.rating;
  return claim.kind === 'area' ? ratedAreaFactor(claim, rated.reading.method).low : 1;
}

function explainProofAt(
  model: TowerModel,
  comparison: Comparison,
  place: Proof[number],
  each: ClaimCase,
  scenario: number,
  trace: Trace,
): number {
  const rated = nth(each.rated, scenario);
  const { wind, rating } = rated;
  const proving = provingTower(model, each);
  const { of = comparison.of, apex = comparison.apex } = place;
  const level = nth(proving.levels, place.level);
  if (each.asRated) explainPlaceAsRated(model, each.asRated, place, trace);
  const stated = rating.wind?.speed;
  if (wind && rating.wind && stated !== undefined) ratedSpeed(stated, rating.wind, METHOD_BY_ID[wind.method], trace);
  const forces: number[] = [];
  const reach: number[] = [];
  for (const { height, area, perArea } of rated.forces) {
    if (height < level.z - ONE_HEIGHT) continue;
    if (wind && rating.claim.kind === 'area') {
      const inputs: [number, number, number, number, number] = [
        wind.toAllowableFactor,
        wind.forceDirectionFactor,
        wind.pressure(height, trace),
        wind.gustEffect(undefined, trace),
        bothHaveLeast(nth(model.scenarios, scenario)) ? wind.leastPressure : 0,
      ];
      evaluate(trace, pressureForce, inputs);
      forces.push(evaluate(trace, ratedForce, [perArea, lowFactor(each, scenario), area]));
    } else {
      const { claim } = rating;
      const stated = claim.kind === 'force';
      forces.push(stated ? evaluate(trace, allowableForce, [shareAllowed(claim).low, claim.force]) : perArea * area);
    }
    reach.push(handedOn(proving, of, apex, height, level.z, level.zone));
  }
  const ofForces =
    forces.length === 0 ? 0 : evaluate(trace, of === 'moment' ? sumOfMoments : sumOfForces, [forces, reach]);
  const own = wind ? explainRatedOwn(model, of, apex, each, scenario, level, trace) : 0;
  if (each.asRated && of === 'moment') return explainMomentAsRated(comparison.of, place.factor, ofForces, own, trace);
  return of === 'moment'
    ? evaluate(trace, provenMoment, [ofForces, own, place.factor])
    : evaluate(trace, apex === Number.POSITIVE_INFINITY ? provenShear : provenInBraces, [ofForces, own]);
}

function explainRatedOwn(
  model: TowerModel,
  of: Comparison['of'],
  apex: number,
  each: ClaimCase,
  scenario: number,
  level: Level,
  trace: Trace,
): number {
  const inWind = nth(model.scenarios, scenario);
  const { direction, solidity, overlaps, shapes } = inWind;
  const rated = nth(each.rated, scenario);
  const { wind } = rated;
  const { tower } = withShapesRead(each.asRated ?? model.input.station, shapes);
  const { hold } = provingTower(model, each);
  const lines = rated.rating.withCables ? [ratedLines(rated.rating.withCables, tower)] : [];
  const items = model.bareTowerKnown ? [...towerItems(tower, solidity, overlaps), ...lines] : lines;
  if (!wind || items.length === 0) return 0;
  const cut = slicesInWind(wind, cutIntoSlices(items, each.cutAt), ownReading(inWind, wind), direction);
  const pieces = under(trace, 'rated wind on the tower itself', () =>
    explainPieces(
      { cut, speed: wind.conditions.speed, bound: 'favourable', least: bothHaveLeast(inWind) },
      (slice, item) => reachOf(hold, of, apex, level, slice, item),
      trace,
    ),
  );
  return sumGroup(pieces, of, trace);
}

function explainWindRatio(model: TowerModel, governing: ComparisonRatio, trace: Trace): number {
  const { by: claim, scenario } = governing;
  const { windStructure, appurtenances } = nth(model.scenarios, scenario);
  const site = appurtenances.wind;
  const most = (one: ClaimCase, other: ClaimCase) =>
    nth(other.own, scenario).windRatio > nth(one.own, scenario).windRatio ? other : one;
  const by = claim && 'cases' in claim ? claim.cases.reduce(most) : undefined;
  const rated = by && nth(by.rated, scenario).wind;
  if (!rated) return governing.unfavourable;
  const rise = ({ z, ratedZ }: LevelOfWindRatio) => coefficientRise(site, rated, z, windStructure, ratedZ);
  const ratioAt = (each: LevelOfWindRatio) =>
    (each.moreOfIt * rise(each) * windOnDragArea(site, each.z)) / windOnDragArea(rated, each.ratedZ);
  const levels = levelsOfWindRatio(model.levels, by.asRated);
  const worst = levels.reduce((worse, each) => (ratioAt(each) > ratioAt(worse) ? each : worse), nth(levels, 0));
  const ratio: [number, number, number] = [
    rise(worst),
    under(trace, 'site wind', () => windOnDragArea(site, worst.z, trace)),
    under(trace, 'the rated wind', () => windOnDragArea(rated, worst.ratedZ, trace)),
  ];
  const byWind = evaluate(trace, windRatio, ratio);
  return by.asRated ? explainMoreThanRated(model.levels, worst, by.asRated, byWind, trace) : byWind;
}
