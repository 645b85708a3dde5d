import { nth, type Trace } from '../foundation/index.ts';
import { levelFactors, METHOD_BY_ID, WITHOUT_WIND_AT_STRENGTH, type Wind } from '../methods/index.ts';
import {
  allWeightsNotGiven,
  type FootLoad,
  groupedSum,
  groupsAt,
  type LegForces,
  legForces,
  type SlicesInWind,
  sliceForces,
  worstOfGroups,
} from '../structure/index.ts';
import { guyedForcesOf } from './held/guyed-forces.ts';
import type { Demand, TowerModel } from './model.ts';
import type { WindLoads } from './wind-loads.ts';

/** Shear [N] and moment [N·m] at the foot of the tower. */
export interface FootForces {
  readonly shear: number;
  readonly moment: number;
}

/** Forces of the legs, and whether they stand on the outside width because their thickness is not told. */
export type LegsAtFoot = LegForces & { readonly byOutsideWidth?: true };

/** Something at the foot, at every level it is asked for at. */
export interface ByLevel<T> {
  readonly allowable: T;
  /** For foundations. */
  readonly nominal: T;
  /** Where the method has a strength level. */
  readonly strength?: T;
}

/** The heading of the wind, for what faces its own way, and of the rotator against it, for what turns [rad]. */
type Headings = WindLoads['headings'];

/**
 * At the foot of the tower, as if nothing else held it: the largest moment with its shear, of the wind and of what stays, at the
 * headings of the ledger.
 */
export interface Reactions extends ByLevel<FootForces> {
  readonly headings: Headings;
  /** The largest shear with its moment, at headings of its own. */
  readonly atLargestShear: ByLevel<FootForces> & { readonly headings: Headings };
  /** Largest torsion of what is off the axis, each thing at its own worst heading [N·m]. */
  readonly torsion: ByLevel<number>;
  /** The part that stays when the wind does not: pull of wires, weight off the axis. Within the forces above. */
  readonly withoutWind: FootForces;
  /** Brings the wind's part from the allowable level to the nominal load of foundations. */
  readonly toNominal: number;
  /** Guys or brackets take part of it, which is not worked out. */
  readonly supportedAbove: boolean;
  /** The wind on the tower itself is not known and not in it. */
  readonly withoutOwnWind: boolean;
  /** Tower and all that hangs on it [kg]; absent: some weight is not told. */
  readonly weight?: number;
  /** What of it is told [kg]. */
  readonly leastWeight: number;
  /** Of the legs of a lattice that stands by itself, nominal: shown, bolts and concrete are not checked. */
  readonly legs?: LegsAtFoot;
  /** What a bracketed tower may pull on its highest bracket, at most, nominal load of foundations [N]. */
  readonly bracketPull?: number;
}

/**
 * What the tower asks of its foot.
 *
 * wind by the ledger, and what stays; nominal: × 1/λ or 0.6/λ
 *
 * @param demand of the design wind at the unfavourable end
 */
export function reactionsOf(model: TowerModel, wind: Wind, windLoads: WindLoads, demand: Demand): Reactions {
  const { station } = model.input;
  const { tower } = station;
  const factors = levelFactors(METHOD_BY_ID[model.input.method], wind.conditions.speedLevel);
  const { toStrengthFactor: strength, toStrengthFactorWithoutWind } = factors;
  const toNominal = factors.toNominalFactor / wind.toAllowableFactor;
  const last = model.levels.length - 1;
  const leastWeight = (tower.weight ?? 0) + nth(model.dead.weight, last);
  const weight = allWeightsNotGiven(station).length === 0 ? leastWeight : undefined;
  const pull = solvedPull(model) ?? bracketPull(model, toNominal);
  const withoutWind = withoutWindOf(model);
  const byLevel = <T>(at: (windFactor: number, steadyFactor: number) => T): ByLevel<T> => ({
    allowable: at(1, 1),
    nominal: at(toNominal, 1),
    ...(strength === undefined
      ? {}
      : { strength: at(strength / wind.toAllowableFactor, toStrengthFactorWithoutWind ?? WITHOUT_WIND_AT_STRENGTH) }),
  });
  const withSteady = ({ shear, moment }: FootForces) =>
    byLevel((windFactor, steadyFactor) => ({
      shear: shear * windFactor + withoutWind.shear * steadyFactor,
      moment: moment * windFactor + withoutWind.moment * steadyFactor,
    }));
  const { force, momentAtBase } = windLoads.total;
  const atLargestMoment = withSteady({ shear: force, moment: momentAtBase });
  const { headings, ...sheared } = largestShear(demand, last);
  const twist = Math.max(...demand.scenarios.map(({ appurtenances }) => nth(appurtenances.torsion, last)));
  const legs = legsOf(model, { ...atLargestMoment.nominal, ...(weight === undefined ? {} : { weight }) });
  return {
    ...atLargestMoment,
    headings: windLoads.headings,
    atLargestShear: { ...withSteady(sheared), headings },
    torsion: byLevel((windFactor) => twist * windFactor),
    withoutWind,
    toNominal,
    supportedAbove: tower.support === 'guyed' || tower.support === 'bracketed',
    withoutOwnWind: !model.bareTowerKnown,
    leastWeight,
    ...(weight === undefined ? {} : { weight }),
    ...(legs === undefined ? {} : { legs }),
    ...(pull === undefined ? {} : { bracketPull: pull }),
  };
}

/** The largest shear of the wind at the foot, and the moment at the same headings. */
function largestShear({ scenarios }: Demand, last: number): FootForces & { readonly headings: Headings } {
  const pairs = scenarios.map(({ appurtenances, bareTower }) => {
    const { value, ...headings } = worstOfGroups(groupedSum(appurtenances, 'shear', last));
    const moment = groupsAt(groupedSum(appurtenances, 'moment', last), headings);
    const own = (of: 'shear' | 'moment') => (bareTower ? nth(bareTower[of], last) : 0);
    return { shear: value + own('shear'), moment: moment + own('moment'), headings };
  });
  return pairs.reduce((most, each) => (each.shear > most.shear ? each : most));
}

/**
 * What the foot takes without wind: the pull of wires, and weight off the axis.
 *
 * |ΣH|, |ΣH·z| + ΣW·e
 *
 * @source derived
 */
export function withoutWindOf(model: TowerModel): FootForces {
  const { dead, levels } = model;
  const last = levels.length - 1;
  return {
    shear: nth(dead.pullShear, last),
    moment: nth(dead.pullMoment, last) + nth(dead.eccentricWeightMoment, last),
  };
}

/**
 * The working of the legs' pull and push.
 *
 * T = M/(k_b·b) − 0.6·D/n
 *
 * @source derived
 */
export function explainLegs(model: TowerModel, reactions: Reactions, trace: Trace): void {
  const { nominal, weight } = reactions;
  legsOf(model, { ...nominal, ...(weight === undefined ? {} : { weight }) }, trace);
}

function legsOf(model: TowerModel, foot: FootLoad, trace?: Trace): LegsAtFoot | undefined {
  const { tower } = model.input.station;
  const shape = tower.sections[0]?.shape;
  if (tower.support === 'guyed' || tower.support === 'bracketed' || shape?.kind !== 'lattice') return undefined;
  const { solid, width, faces } = shape;
  if (solid.by !== 'members') return { ...legForces(faces, width[0], foot, trace), byOutsideWidth: true };
  return legForces(faces, width[0] - solid.leg, foot, trace);
}

/** Of the highest bracket, where the tower is told well enough for the model of a beam on springs. */
function solvedPull(model: TowerModel): number | undefined {
  if (model.input.station.tower.support !== 'bracketed') return undefined;
  const found = guyedForcesOf({ model });
  return found?.failure === undefined ? found?.brackets.at(-1)?.pull : undefined;
}

/**
 * What a bracketed tower may pull on its highest bracket, each piece of the wind at its own worst heading.
 *
 * R ≤ ΣF·(1 + 1.5·a/l), a above the bracket, l from it down to the next support, for any hold below; pulls as vectors
 */
function bracketPull(model: TowerModel, toNominal: number): number | undefined {
  const { tower, loads } = model.input.station;
  if (tower.support !== 'bracketed' || tower.held.length === 0) return undefined;
  const highest = model.comparedFromHeight;
  const next = tower.held.reduce(
    (most, { height }) => (height < highest - 1e-6 ? Math.max(most, height) : most),
    tower.foot,
  );
  const span = highest - next;
  if (!(span > 0)) return undefined;
  // What lies below takes less than its own force from the bracket, unless a long span there turns a short one above it:
  // a force on it makes a moment of at most 0.2 of force times span, which the short one balances.
  const farBelow = Math.max(1, (0.2 * (next - tower.foot)) / span);
  const shareAt = (z: number) => (z >= highest ? 1 + (1.5 * (z - highest)) / span : z >= next ? 1 : farBelow);
  const { speed } = model.site;
  const loadEffects = (cut: SlicesInWind, bound: 'unfavourable' | 'favourable') => {
    const { front, side } = sliceForces(cut, speed, bound, true);
    return cut.slices.reduce(
      (sum, { z }, index) => sum + Math.max(nth(front, index), nth(side, index)) * shareAt(z),
      0,
    );
  };
  const wind = model.scenarios.map(
    ({ appurtenances, bareTower }) =>
      loadEffects(appurtenances, 'unfavourable') + (bareTower ? loadEffects(bareTower, 'favourable') : 0),
  );
  let [east, north, below] = [0, 0, 0];
  for (const { low, count, shape } of loads) {
    if (shape.kind !== 'wire' || shape.pull === undefined) continue;
    const pull = count * shape.pull * shareAt(low);
    if (low < highest) below += pull;
    else {
      east += pull * Math.sin(shape.heading);
      north += pull * Math.cos(shape.heading);
    }
  }
  const eccentricWeight = nth(model.dead.eccentricWeightMoment, model.levels.length - 1);
  return Math.max(...wind) * toNominal + Math.hypot(east, north) + below + (1.5 * eccentricWeight) / span;
}
