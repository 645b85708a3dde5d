import { evaluate, Trace, under } from '../foundation/index.ts';
import { METHOD_BY_ID, type Wind } from '../methods/index.ts';
import {
  cutIntoSlices,
  hungItems,
  type Level,
  ratedLines,
  type Section,
  type Slice,
  shareInBraces,
  shearOfTorsion,
  sliceForces,
  towerItems,
  type WindItem,
  type Windward,
  windward,
} from '../structure/index.ts';
import type { Assessment } from './assess.ts';
import { chancesOf } from './chance.ts';
import type { Check } from './check-list.ts';
import { agree, explainSlice, type Reaching, sumGroup } from './explain-slices.ts';
import {
  actualSpeedHoldsTo,
  allowableForce,
  allowableMoment,
  designHoldsTo,
  marginOfUse,
  pressureForce,
  provenInBraces,
  provenMoment,
  provenShear,
  ratedForce,
  roomByMoment,
  roomByShear,
  sumOfForces,
  sumOfMoments,
  totalMoment,
  totalShear,
  useOfMoment,
  useOfShear,
  windRatio,
} from './formulas.ts';
import { explainAntenna } from './links/antenna-link.ts';
import { explainElements, explainIcedElements } from './links/element-link.ts';
import { fallChecks } from './links/fall-link.ts';
import { explainFoundation } from './links/foundation-link.ts';
import { explainHoist } from './links/hoist-link.ts';
import type { Link } from './links/link.ts';
import { explainIcedMast, explainMast } from './links/mast-link.ts';
import { explainRaising } from './links/raising-link.ts';
import { lowerAtOf } from './lower-at.ts';
import { type RatedCase, ratedAreaFactor, ratedSpeed } from './rated-case.ts';
import { shareAllowed } from './rating.ts';
import { explainLegs } from './reactions.ts';
import {
  type Claim,
  type ClaimCase,
  demandOf,
  type Scenario,
  siteSpeed,
  type TowerModel,
  weightMoment,
} from './tower-model.ts';
import { handedOn, provenBy } from './tower-proof.ts';
import { type CheckUse, linkUse } from './tower-use.ts';
import { coefficientRise, windOnDragArea } from './unknown-own-drag.ts';

/**
 * The working behind an answer: the wind, every piece of everything it touches, the sums at the level that decides each
 * link, what is proven there, use, margin and the wind it holds to; with every open question at its bad end. It goes a
 * second way through the same formulas and refuses to differ from the answer.
 *
 * @param assessment the answer [-]
 * @returns the steps [-]
 * @throws Error when a sum of the working differs from the answer
 * @source derived
 */
export function workingOf(assessment: Assessment): Trace {
  const trace = new Trace();
  const { inquiry, model, site, wind } = assessment;
  under(trace, 'your wind', () => {
    if (site.converted || inquiry.site.returnYears !== undefined) siteSpeed(inquiry, trace);
    wind.gustEffect(undefined, trace);
  });
  for (const link of assessment.links) {
    if (!link.result) continue;
    if (link.kind === 'tower' || link.kind === 'tower-top') {
      const governing = linkUse(finite(assessment.uses), link.kind)?.governing;
      const heading = link.kind === 'tower' ? 'tower' : 'top of the tower';
      if (governing) under(trace, heading, () => explainLink(windCase(assessment), link, governing, trace));
    }
    const iced = assessment.ice?.shown;
    if (link.kind === 'ice' && iced) {
      const governing = linkUse(finite(iced.uses), 'tower', 'tower-top')?.governing;
      const loadCase = {
        model: iced.model,
        speed: iced.speed,
        least: false,
        items: iced.explainItems,
        tower: iced.explainTower,
      };
      if (governing) under(trace, 'tower with ice', () => explainLink(loadCase, link, governing, trace));
    }
  }
  under(trace, 'mast', () => explainMast(model, trace));
  under(trace, 'mast with ice', () => explainIcedMast(model, assessment.ice, trace));
  for (const link of assessment.links) {
    if (link.kind === 'elements' && link.withIce)
      under(trace, `elements of ${link.name} with ice`, () => explainIcedElements(model, assessment.ice, link, trace));
    else if (link.kind === 'elements')
      under(trace, `elements of ${link.name}`, () => explainElements(model, link, trace));
    if (link.kind === 'antenna') under(trace, link.name ?? 'antenna', () => explainAntenna(model, link, trace));
  }
  const { uses, reactions, bad } = assessment;
  under(trace, 'footing', () => explainFoundation({ model, uses, bad, withoutLeast: bad, reactions }, trace));
  under(trace, 'legs at the foot', () => explainLegs(model, reactions, trace));
  under(trace, 'raising', () => explainRaising(model, trace));
  under(trace, 'where it falls', () => fallChecks(model, trace));
  under(trace, 'hoist', () => explainHoist(model, trace));
  under(trace, 'when to lower', () => lowerAtOf(inquiry, assessment.links, trace));
  const [room] = assessment.roomLeft;
  if (room?.of) {
    under(trace, 'room left at the top', () =>
      evaluate(trace, room.of === 'moment' ? roomByMoment : roomByShear, [
        model.inquiry.wanted.margin,
        room.capacity,
        room.demand,
        room.perArea,
        room.arm,
      ]),
    );
  }
  chancesOf(inquiry, assessment.links, trace);
  return trace;
}

/** One load case as the working goes through it. */
interface LoadCase {
  readonly model: TowerModel;
  readonly speed: number;
  readonly least: boolean;
  /** Writes down the areas of what hangs on the tower, and of the tower itself. */
  readonly items: (trace: Trace) => void;
  readonly tower: (trace: Trace, scenario: Scenario) => void;
}

function windCase({ model, site, inquiry }: Assessment): LoadCase {
  return {
    model,
    speed: site.speed,
    least: true,
    items: (trace) => hungItems(inquiry.station, trace),
    tower: (trace, scenario) => towerItems(inquiry.station.tower, scenario.solidity, scenario.overlaps, trace),
  };
}

function finite(uses: readonly CheckUse[]): readonly CheckUse[] {
  return uses.filter((use) => Number.isFinite(use.bad));
}

function explainLink(loadCase: LoadCase, link: Link, governing: CheckUse, trace: Trace): void {
  const { model, speed } = loadCase;
  const { check, scenario } = governing;
  const demand = under(trace, 'demand', () => explainDemand(loadCase, governing, trace));
  agree(demand, governing.demand, 'demand');
  const claim = model.claims[governing.claim];
  if (!claim && check.of === 'moment') explainStatedMoment(model, governing, trace);
  const proof = claim
    ? under(trace, 'what the rating proves', () => explainProof(model, claim, governing, trace))
    : undefined;
  if (proof && !governing.byWindRatio) agree(proof.capacity, governing.capacity, 'capacity');
  const capacity = proof?.capacity ?? governing.capacity;
  const formula = check.of === 'moment' ? useOfMoment : useOfShear;
  const use = governing.byWindRatio
    ? explainWindRatio(model, governing, proof?.rated.wind, trace)
    : evaluate(trace, formula, [demand, capacity]);
  agree(use, governing.bad, 'use');
  evaluate(trace, marginOfUse, [use]);
  if (!link.result?.holdsTo?.steady) return;
  const { wind } = model.hungWind[scenario] as Windward;
  const index = model.checks.indexOf(check);
  const withoutLeast = demandOf(model, model.hungWind, model.ownWind, speed, 'bad', false);
  const windPart = (withoutLeast.wind[scenario] as number[])[index] as number;
  const dead = withoutLeast.dead[index] as number;
  const [deadUse, windUse] = governing.byWindRatio ? [0, use] : [dead / capacity, windPart / capacity];
  if (deadUse >= 1) return;
  const design = evaluate(
    trace,
    designHoldsTo,
    [speed, deadUse, windUse],
    'of this comparison; the lowest of all counts',
  );
  const actual = evaluate(trace, actualSpeedHoldsTo, [design, wind.level, wind.directionFactor, wind.importance]);
  METHOD_BY_ID[wind.method].actualGust(actual, trace);
}

function explainStatedMoment(model: TowerModel, governing: CheckUse, trace: Trace): void {
  const stated = model.momentClaims.find((claim) => claim.moment === governing.capacity);
  const rating = stated && model.inquiry.ratings[stated.number];
  if (rating?.claim.kind !== 'moment') return;
  evaluate(trace, allowableMoment, [shareAllowed(rating.claim).low, rating.claim.moment]);
}

function explainDemand(loadCase: LoadCase, governing: CheckUse, trace: Trace): number {
  const { model, speed, least } = loadCase;
  const { check, scenario } = governing;
  const level = model.levels[check.level] as Level;
  const hung = model.hungWind[scenario] as Windward;
  loadCase.items(trace);
  const all = explainPieces(model, hung, speed, 'bad', least, check, level, trace);
  const pieces = oneWay(all, check.of);
  const own = model.ownWind[scenario];
  const ofTower = own
    ? under(trace, 'the tower itself', () => {
        loadCase.tower(trace, model.scenarios[scenario] as Scenario);
        return explainPieces(model, own, speed, 'good', least, check, level, trace);
      })
    : [];
  const group = (name: Reaching['group']) =>
    sumGroup(
      pieces.filter((each) => each.group === name),
      check.of,
      trace,
    );
  const sums = [group('still'), group('turning'), group('fixed'), sumGroup(ofTower, check.of, trace)] as const;
  if (check.of === 'moment') {
    const weight = weightMoment(model, check, trace);
    return evaluate(trace, totalMoment, [...sums, model.dead.pullMoment[check.level] as number, weight]);
  }
  const section = model.inquiry.station.tower.sections[check.section] as Section;
  const braces = shearOfTorsion(section, torsionOf(all), level.z, trace);
  const { pullShear, leaningShear } = model.dead;
  return evaluate(trace, totalShear, [
    ...sums,
    pullShear[check.level] as number,
    leaningShear[check.level] as number,
    braces,
  ]);
}

/** Writes down every piece above a level and gathers how it reaches there. */
function explainPieces(
  model: TowerModel,
  cut: Windward,
  speed: number,
  reading: 'bad' | 'good',
  least: boolean,
  check: Check,
  level: Level,
  trace: Trace,
): readonly Reaching[] {
  const forces = sliceForces(cut, speed, reading, least);
  const reaching: Reaching[] = [];
  cut.slices.forEach((slice, index) => {
    const item = cut.items[slice.item] as WindItem;
    const reach = reachOf(model, check, level, slice, item);
    if (!reach) return;
    const [along, across] = under(trace, item.name, () =>
      explainSlice(cut, slice, index, forces, speed, reading, least, trace),
    );
    const group = item.turn === 'own-worst' ? 'still' : item.turn;
    const twists = reach.twists && item.offset > 0 ? { twists: { item: slice.item, offset: item.offset } } : {};
    reaching.push({ group, heading: item.heading, along, across, share: reach.share, arm: reach.arm, ...twists });
  });
  return reaching;
}

/** Of pieces that push the braces one way and the other, those that push harder, each with its share above zero. */
function oneWay(pieces: readonly Reaching[], of: Check['of']): readonly Reaching[] {
  if (of === 'moment' || pieces.every(({ share }) => share >= 0)) return pieces;
  const pushing = (sign: 1 | -1): readonly Reaching[] =>
    pieces.flatMap((each) => (sign * each.share > 0 ? [{ ...each, share: sign * each.share }] : []));
  const force = (way: readonly Reaching[]) =>
    (['still', 'turning', 'fixed'] as const).reduce(
      (sum, group) =>
        sum +
        sumGroup(
          way.filter((each) => each.group === group),
          of,
        ),
      0,
    );
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

function reachOf(model: TowerModel, check: Check, level: Level, slice: Slice, item: WindItem) {
  const { hold } = model;
  const { z, zone } = level;
  if (item.carriedBy === 'mast' ? zone === 'clear' : slice.z < z) return undefined;
  const twists = item.carriedBy === 'tower' || zone === 'plain';
  const braces =
    check.of === 'shear' && check.apex !== Number.POSITIVE_INFINITY
      ? shareInBraces(item, slice.z, level, check.apex, hold)
      : undefined;
  if (item.carriedBy === 'mast' && zone === 'couple') {
    const bearing = hold.bearing as number;
    const share = (slice.z - hold.foot) / (bearing - hold.foot);
    return { share: braces ?? share, arm: share * (bearing - z), twists };
  }
  return { share: braces ?? 1, arm: slice.z - z, twists };
}

interface Proof {
  readonly capacity: number;
  readonly rated: RatedCase;
}

/** The reading of a claim that proves least, written down. */
function explainProof(model: TowerModel, claim: Claim, governing: CheckUse, trace: Trace): Proof {
  const { check, scenario } = governing;
  let least: { readonly each: ClaimCase; readonly capacity: number } | undefined;
  for (const each of claim.cases) {
    const capacity = provenBy(
      model,
      check,
      each,
      scenario,
      lowFactor(each, scenario),
      (each.rated[scenario] as RatedCase).provesOwn,
    );
    if (!least || capacity < least.capacity) least = { each, capacity };
  }
  const { each } = least as { each: ClaimCase };
  const rated = each.rated[scenario] as RatedCase;
  let capacity = 0;
  let best: (() => number) | undefined;
  for (const proven of check.provenAt) {
    const explain = (at: Trace) => explainProofAt(model, check, proven, rated, scenario, lowFactor(each, scenario), at);
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
  const rated = each.rated[scenario] as RatedCase;
  const { claim } = rated.rating;
  return claim.kind === 'area' ? ratedAreaFactor(claim, rated.reading.method).low : 1;
}

function explainProofAt(
  model: TowerModel,
  check: Check,
  proven: Check['provenAt'][number],
  rated: RatedCase,
  scenario: number,
  factor: number,
  trace: Trace,
): number {
  const { wind, rating } = rated;
  const level = model.levels[proven.level] as Level;
  const stated = rating.wind?.speed;
  if (wind && rating.wind && stated !== undefined) ratedSpeed(stated, rating.wind, METHOD_BY_ID[wind.method], trace);
  const forces: number[] = [];
  const reach: number[] = [];
  for (const { height, area, perArea } of rated.forces) {
    if (height < level.z) continue;
    if (wind && rating.claim.kind === 'area') {
      const inputs: [number, number, number, number] = [
        wind.level,
        wind.forceDirectionFactor,
        wind.pressure(height, trace),
        wind.gustEffect(undefined, trace),
      ];
      evaluate(trace, pressureForce, inputs);
      forces.push(evaluate(trace, ratedForce, [perArea, factor, area]));
    } else forces.push(explainStatedForce(rated, perArea * area, trace));
    reach.push(handedOn(model, check, height, level.z, level.zone));
  }
  const ofForces =
    forces.length === 0 ? 0 : evaluate(trace, check.of === 'moment' ? sumOfMoments : sumOfForces, [forces, reach]);
  const own = wind && rated.provesOwn ? explainRatedOwn(model, check, rated, wind, scenario, level, trace) : 0;
  return check.of === 'moment'
    ? evaluate(trace, provenMoment, [ofForces, own, proven.factor])
    : evaluate(trace, check.apex === Number.POSITIVE_INFINITY ? provenShear : provenInBraces, [ofForces, own]);
}

function explainStatedForce(rated: RatedCase, atLevel: number, trace: Trace): number {
  const { claim } = rated.rating;
  return claim.kind === 'force'
    ? evaluate(trace, allowableForce, [claim.level === 'allowable' ? 1 : 0.6, claim.force])
    : atLevel;
}

function explainRatedOwn(
  model: TowerModel,
  check: Check,
  rated: RatedCase,
  wind: Wind,
  scenario: number,
  level: Level,
  trace: Trace,
): number {
  const { direction, solidity, overlaps } = model.scenarios[scenario] as Scenario;
  const { tower } = model.inquiry.station;
  const lines = rated.rating.withCables ? [ratedLines(rated.rating.withCables, tower)] : [];
  const items = model.ownKnown ? [...towerItems(tower, solidity, overlaps), ...lines] : lines;
  if (items.length === 0) return 0;
  const cut = windward(wind, cutIntoSlices(items, model.levels), 'capacity', direction);
  const pieces = under(trace, 'rated wind on the tower itself', () =>
    explainPieces(model, cut, wind.conditions.speed, 'good', false, check, level, trace),
  );
  return sumGroup(pieces, check.of, trace);
}

function explainWindRatio(model: TowerModel, governing: CheckUse, rated: Wind | undefined, trace: Trace): number {
  const site = (model.hungWind[governing.scenario] as Windward).wind;
  if (!rated) return governing.bad;
  const { exposed } = model.scenarios[governing.scenario] as Scenario;
  const rise = (z: number) => coefficientRise(site, rated, z, exposed);
  const ratioAt = (z: number) => (rise(z) * windOnDragArea(site, z)) / windOnDragArea(rated, z);
  const worst = model.levels.reduce(
    (most, { z }) => (ratioAt(z) > ratioAt(most) ? z : most),
    (model.levels[0] as Level).z,
  );
  const ratio: [number, number, number] = [
    rise(worst),
    under(trace, 'your wind', () => windOnDragArea(site, worst, trace)),
    under(trace, 'the rated wind', () => windOnDragArea(rated, worst, trace)),
  ];
  return evaluate(trace, windRatio, ratio);
}
