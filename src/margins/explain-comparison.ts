import { evaluate, nth, Trace, under } from '../foundation/index.ts';
import { METHOD_BY_ID, type Wind } from '../methods/index.ts';
import {
  appurtenanceItems,
  cutIntoSlices,
  type Level,
  ratedLines,
  type Slice,
  shareInBraces,
  shearOfTorsion,
  slicesInWind,
  towerItems,
  type WindItem,
} from '../structure/index.ts';
import type { Check } from './checks/check.ts';
import type { CheckContext } from './checks/check-kind.ts';
import type { Comparison } from './comparisons.ts';
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
  sumOfForces,
  sumOfMoments,
  totalMoment,
  totalShear,
  windRatio,
} from './formulas.ts';
import type { Claim, ClaimCase, MomentClaim, Scenario, TowerModel } from './model.ts';
import { handedOn, provenBy } from './rated-capacity.ts';
import { type RatedCase, ratedAreaFactor, ratedSpeed } from './rated-case.ts';
import { shareAllowed } from './rating.ts';
import { demandOf, weightMoment } from './tower-model.ts';
import { type ComparisonRatio, checkRatio } from './tower-ratio.ts';
import { coefficientRise, windOnDragArea } from './unknown-own-drag.ts';

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
  const { model, ratios } = context;
  const { station } = model.input;
  const loadCase: LoadCase = {
    model,
    speed: model.site.speed,
    least: true,
    items: (at) => appurtenanceItems(station, at),
    tower: (at, scenario) => towerItems(station.tower, scenario.solidity, scenario.overlaps, at),
  };
  explainCase(loadCase, checks, ratios, [which], heading, trace);
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
  if (by && !('cases' in by)) explainStatedMoment(model, by, trace);
  const proof =
    by && 'cases' in by
      ? under(trace, 'capacity by the rating', () => explainProof(model, by, governing, trace))
      : undefined;
  if (proof && !governing.byWindRatio) agree(proof.capacity, governing.capacity, 'capacity');
  const capacity = proof?.capacity ?? governing.capacity;
  const formula = comparison.of === 'moment' ? ratioOfMoment : ratioOfShear;
  const ratio = governing.byWindRatio
    ? explainWindRatio(model, governing, proof?.rated.wind, trace)
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

function explainStatedMoment(model: TowerModel, { number }: MomentClaim, trace: Trace): void {
  const rating = model.input.ratings[number];
  if (rating?.claim.kind !== 'moment') return;
  evaluate(trace, allowableMoment, [shareAllowed(rating.claim).low, rating.claim.moment]);
}

function explainDemand(loadCase: LoadCase, governing: ComparisonRatio, trace: Trace): number {
  const { model, speed, least } = loadCase;
  const { comparison, scenario } = governing;
  const level = nth(model.levels, comparison.level);
  const inWind = nth(model.scenarios, scenario);
  loadCase.items(trace);
  const reach = (slice: Slice, item: WindItem) => reachOf(model, comparison, level, slice, item);
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

function reachOf(model: TowerModel, comparison: Comparison, level: Level, slice: Slice, item: WindItem) {
  const { hold } = model;
  const { z, zone } = level;
  if (item.carriedBy === 'mast' ? zone === 'clear' : slice.z < z) return undefined;
  const { offset } = item;
  const twisting = offset > 0 && (item.carriedBy === 'tower' || zone === 'plain');
  const twists = twisting ? { twists: { item: slice.item, offset } } : {};
  const braces =
    comparison.of === 'shear' && comparison.apex !== Number.POSITIVE_INFINITY
      ? shareInBraces(item, slice.z, level, comparison.apex, hold)
      : undefined;
  if (item.carriedBy === 'mast' && zone === 'couple') {
    const bearing = hold.bearing as number;
    const share = (slice.z - hold.foot) / (bearing - hold.foot);
    return { share: braces ?? share, arm: share * (bearing - z), ...twists };
  }
  return { share: braces ?? 1, arm: slice.z - z, ...twists };
}

interface Proof {
  readonly capacity: number;
  readonly rated: RatedCase;
}

/** The reading of a claim that proves least, written down. */
function explainProof(model: TowerModel, claim: Claim, governing: ComparisonRatio, trace: Trace): Proof {
  const { comparison, scenario } = governing;
  let least: { readonly each: ClaimCase; readonly capacity: number } | undefined;
  for (const each of claim.cases) {
    const capacity = provenBy(
      model,
      comparison,
      each,
      scenario,
      lowFactor(each, scenario),
      nth(each.rated, scenario).provesOwn,
    );
    if (!least || capacity < least.capacity) least = { each, capacity };
  }
  const { each } = least as { each: ClaimCase };
  const rated = nth(each.rated, scenario);
  let capacity = 0;
  let best: (() => number) | undefined;
  for (const proven of comparison.provenAt) {
    const explain = (at: Trace) =>
      explainProofAt(model, comparison, proven, rated, scenario, lowFactor(each, scenario), at);
    const value = explain(new Trace());
    if (value > capacity || !best) {
      capacity = value;
      best = () => explain(trace);
    }
  }
  best?.();
  return { capacity, rated };
}

function lowFactor(each: ClaimCase, scenario: number): number {
  const rated = nth(each.rated, scenario);
  const { claim } = rated.rating;
  return claim.kind === 'area' ? ratedAreaFactor(claim, rated.reading.method).low : 1;
}

function explainProofAt(
  model: TowerModel,
  comparison: Comparison,
  proven: Comparison['provenAt'][number],
  rated: RatedCase,
  scenario: number,
  factor: number,
  trace: Trace,
): number {
  const { wind, rating } = rated;
  const level = nth(model.levels, proven.level);
  const stated = rating.wind?.speed;
  if (wind && rating.wind && stated !== undefined) ratedSpeed(stated, rating.wind, METHOD_BY_ID[wind.method], trace);
  const forces: number[] = [];
  const reach: number[] = [];
  for (const { height, area, perArea } of rated.forces) {
    if (height < level.z) continue;
    if (wind && rating.claim.kind === 'area') {
      const inputs: [number, number, number, number] = [
        wind.toAllowableFactor,
        wind.forceDirectionFactor,
        wind.pressure(height, trace),
        wind.gustEffect(undefined, trace),
      ];
      evaluate(trace, pressureForce, inputs);
      forces.push(evaluate(trace, ratedForce, [perArea, factor, area]));
    } else {
      const { claim } = rating;
      const stated = claim.kind === 'force';
      forces.push(stated ? evaluate(trace, allowableForce, [shareAllowed(claim).low, claim.force]) : perArea * area);
    }
    reach.push(handedOn(model, comparison, height, level.z, level.zone));
  }
  const ofForces =
    forces.length === 0 ? 0 : evaluate(trace, comparison.of === 'moment' ? sumOfMoments : sumOfForces, [forces, reach]);
  const own = wind && rated.provesOwn ? explainRatedOwn(model, comparison, rated, wind, scenario, level, trace) : 0;
  return comparison.of === 'moment'
    ? evaluate(trace, provenMoment, [ofForces, own, proven.factor])
    : evaluate(trace, comparison.apex === Number.POSITIVE_INFINITY ? provenShear : provenInBraces, [ofForces, own]);
}

function explainRatedOwn(
  model: TowerModel,
  comparison: Comparison,
  rated: RatedCase,
  wind: Wind,
  scenario: number,
  level: Level,
  trace: Trace,
): number {
  const { direction, solidity, overlaps } = nth(model.scenarios, scenario);
  const { tower } = model.input.station;
  const lines = rated.rating.withCables ? [ratedLines(rated.rating.withCables, tower)] : [];
  const items = model.bareTowerKnown ? [...towerItems(tower, solidity, overlaps), ...lines] : lines;
  if (items.length === 0) return 0;
  const cut = slicesInWind(wind, cutIntoSlices(items, model.levels), 'capacity', direction);
  const pieces = under(trace, 'rated wind on the tower itself', () =>
    explainPieces(
      { cut, speed: wind.conditions.speed, bound: 'favourable', least: false },
      (slice, item) => reachOf(model, comparison, level, slice, item),
      trace,
    ),
  );
  return sumGroup(pieces, comparison.of, trace);
}

function explainWindRatio(
  model: TowerModel,
  governing: ComparisonRatio,
  rated: Wind | undefined,
  trace: Trace,
): number {
  const { windStructure, appurtenances } = nth(model.scenarios, governing.scenario);
  const site = appurtenances.wind;
  if (!rated) return governing.unfavourable;
  const rise = (z: number) => coefficientRise(site, rated, z, windStructure);
  const ratioAt = (z: number) => (rise(z) * windOnDragArea(site, z)) / windOnDragArea(rated, z);
  const worst = model.levels.reduce((most, { z }) => (ratioAt(z) > ratioAt(most) ? z : most), nth(model.levels, 0).z);
  const ratio: [number, number, number] = [
    rise(worst),
    under(trace, 'site wind', () => windOnDragArea(site, worst, trace)),
    under(trace, 'the rated wind', () => windOnDragArea(rated, worst, trace)),
  ];
  return evaluate(trace, windRatio, ratio);
}
