import { GRAVITY, nth } from '../../foundation/index.ts';
import { METHOD_BY_ID, type MethodId, type Wind } from '../../methods/index.ts';
import {
  type Cut,
  creditedPieces,
  cutIntoSlices,
  type ForcePlace,
  type Load,
  type Mast,
  type MastBeam,
  type MastPiece,
  type SliceForces,
  type SlicesInWind,
  slicesInWind,
} from '../../structure/index.ts';
import { iceWind } from '../ice-case.ts';
import type { Scenario, TowerModel } from '../model.ts';
import { siteWind } from '../tower-model.ts';

/** What hangs on the mast, and the winds on it. */
export interface MastInWind {
  readonly cut: Cut;
  readonly winds: readonly MastWinds[];
}

export interface MastWinds {
  readonly design: SlicesInWind;
  readonly actual: () => SlicesInWind;
}

/**
 * The wind on the mast and what it carries, cut into slices.
 *
 * F = λ·q·G·C·A, G of a mast where the method has one, by every standard that speaks of what stands on a tower
 *
 * @source derived
 */
export function mastInWind(model: TowerModel): MastInWind {
  const cut = mastCut(model);
  return { cut, winds: mastWinds(model, cut) };
}

/**
 * The mast and what it carries, cut into slices.
 *
 * cut where the tower is
 */
export function mastCut(model: TowerModel): Cut {
  return cutIntoSlices(
    model.appurtenances.filter((item) => item.carriedBy === 'mast'),
    model.cutAt,
  );
}

function mastWinds(model: TowerModel, cut: Cut): readonly MastWinds[] {
  if (model.ice) {
    const { speed } = model.site;
    // The gust that goes with ice is a design wind alone.
    return windsOnMast(model, (asked, windStructure) => {
      const design = slicesInWind(withMastGust(iceWind(asked, windStructure, speed)), cut, 'demand', 'worse');
      return { design, actual: () => design };
    });
  }
  return windsOnMast(model, (asked, windStructure) => {
    const on = (actual: boolean) =>
      slicesInWind(withMastGust(siteWind(asked.input, windStructure, actual, asked.site)), cut, 'demand', 'worse');
    let actual: SlicesInWind | undefined;
    return {
      design: on(false),
      actual: () => {
        actual ??= on(true);
        return actual;
      },
    };
  });
}

/** A site's wind as a method takes it. */
export type AskedWind = Pick<TowerModel, 'input' | 'site'>;

/**
 * Every wind that is asked of the mast: the plan's own, and by the standard that speaks beside its method for what stands on a
 * tower; each over every kind of structure that the tower may be.
 *
 * @param make one of them
 */
export function windsOnMast<T>(
  model: TowerModel,
  make: (asked: AskedWind, windStructure: Scenario['windStructure']) => T,
): readonly T[] {
  const { input, site, scenarios } = model;
  const { besideOnTowers, basis } = METHOD_BY_ID[input.method];
  const asked: AskedWind[] = [{ input, site }];
  if (besideOnTowers !== undefined) {
    // Its speed is that of the plan's own method: both take the strength-level gust of one map.
    const speedLevel = METHOD_BY_ID[besideOnTowers].speedLevel(basis);
    asked.push({ input: { ...input, method: besideOnTowers }, site: { ...site, speedLevel } });
  }
  const windStructures = [...new Set(scenarios.map(({ windStructure }) => windStructure))];
  return asked.flatMap((each) => windStructures.map((windStructure) => make(each, windStructure)));
}

/**
 * A wind with the gust factor that its method has for a mast, where it has one.
 *
 * max(G, G_mast)
 */
export function withMastGust(wind: Wind): Wind {
  const { mastGust } = METHOD_BY_ID[wind.method];
  if (!mastGust) return wind;
  const { windStructure } = wind.conditions;
  return { ...wind, gustEffect: (speed, trace) => Math.max(wind.gustEffect(speed), mastGust(windStructure, trace)) };
}

/**
 * The method whose wind counts, where it is not the plan's own but speaks beside it.
 *
 * @example countsBeside({ input: { method: 'tia222-h' } }, { method: 'tia222-h' }) // undefined
 */
export function countsBeside(
  model: { readonly input: Pick<TowerModel['input'], 'method'> },
  wind: Pick<Wind, 'method'>,
): MethodId | undefined {
  return wind.method === model.input.method ? undefined : wind.method;
}

/** Of a group: the mean of its forces, and how they vary with twice the heading [N or N·m]. */
type Sums = [mean: number, cosine: number, sine: number];

/**
 * The largest of a weighted sum of forces over headings: what turns together, and what faces its own way.
 *
 * Σw·F, ½Σw(N + T) + ½|Σw(N − T)·e^{2iψ}| of each group
 *
 * @param forces on the slices [N]
 * @param weights one for each slice: share [-] or arm [m]
 * @returns the sum [N or N·m] and the headings at which it comes about [rad]
 * @source derived
 */
export function worstHeadingOf(
  cut: SlicesInWind,
  forces: SliceForces,
  weights: readonly number[],
): { readonly value: number; readonly fixed?: number; readonly turning?: number } {
  let still = 0;
  const groups: Record<'turning' | 'fixed', Sums> = { turning: [0, 0, 0], fixed: [0, 0, 0] };
  for (let number = 0; number < weights.length; number += 1) {
    const weight = nth(weights, number);
    if (weight === 0) continue;
    const item = nth(cut.items, nth(cut.slices, number).item);
    const front = weight * nth(forces.front, number);
    const side = weight * nth(forces.side, number);
    if (item.turn === 'still' || item.turn === 'own-worst') {
      still += Math.max(front, side);
      continue;
    }
    const sums = groups[item.turn];
    const half = (front - side) / 2;
    sums[0] += (front + side) / 2;
    sums[1] += half * Math.cos(2 * item.heading);
    sums[2] += half * Math.sin(2 * item.heading);
  }
  const worst = ([mean, cosine, sine]: Sums) => mean + Math.hypot(cosine, sine);
  const heading = ([, cosine, sine]: Sums) => {
    if (Math.hypot(cosine, sine) < 1e-9) return undefined;
    const angle = Math.atan2(sine, cosine) / 2;
    return angle < 0 ? angle + Math.PI : angle;
  };
  const [turning, fixed] = [heading(groups.turning), heading(groups.fixed)];
  return {
    value: still + worst(groups.turning) + worst(groups.fixed),
    ...(turning === undefined ? {} : { turning }),
    ...(fixed === undefined ? {} : { fixed }),
  };
}

/**
 * Speed up to which no coefficient of what the mast carries changes.
 *
 * @returns the speed [m/s]
 */
export function steadySpeed(winds: readonly MastWinds[]): number {
  return Math.min(...winds.flatMap((each) => [each.design.steadyUpTo, each.actual().steadyUpTo]));
}

/**
 * Moment at a height of one newton spread over a length, as far as it acts above.
 *
 * (z_m − z), or (z_h − z)²/(2L) where it is cut
 *
 * @param place where the force is spread [m]
 * @param z the height [m]
 * @returns the arm [m]
 * @source derived
 */
export function armAbove(place: ForcePlace, z: number): number {
  const { low, high } = place;
  if (high <= z) return 0;
  if (low >= z) return (low + high) / 2 - z;
  return (high - z) ** 2 / (2 * (high - low));
}

/** Moments that are there without wind [N·m]. */
export interface StillMoments {
  /** Of the pull of wires, as a vector sum. */
  readonly pull: number;
  /** Of weight off the axis. */
  readonly eccentricWeight: number;
}

/**
 * Moments on the mast that are there without wind: the pull of wires, and weight off the axis.
 *
 * |ΣH·(z_i − z)|, ΣW·e
 *
 * @param z the height [m]
 * @returns both [N·m]
 * @source derived
 */
export function stillMoments(model: TowerModel, z: number): StillMoments {
  return {
    pull: pullOfWires(model, (height) => Math.max(0, height - z)),
    eccentricWeight: eccentricWeightOnMast(model, z),
  };
}

/**
 * Vector sum of the pulls of the wires on the mast, each by a share or an arm of its height.
 *
 * @returns the force [N], or the moment [N·m]
 */
export function pullOfWires(model: TowerModel, reach: (height: number) => number): number {
  let [east, north] = [0, 0];
  for (const load of model.input.station.loads) {
    if (load.on !== 'mast' || load.shape.kind !== 'wire') continue;
    const pull = pullOf(load) * reach(load.low);
    east += pull * Math.sin(load.shape.heading);
    north += pull * Math.cos(load.shape.heading);
  }
  return Math.hypot(east, north);
}

/**
 * Moment of what rides on the mast above a height off its axis, ice with its level.
 *
 * ΣW·e
 *
 * @param z the height; all of it where none is given [m]
 * @returns the moment [N·m]
 * @source derived
 */
export function eccentricWeightOnMast(model: TowerModel, z = Number.NEGATIVE_INFINITY): number {
  const { input, ice } = model;
  let eccentricWeight = 0;
  input.station.loads.forEach((load, number) => {
    if (load.on !== 'mast' || load.low <= z) return;
    const mass = load.count * (load.weight ?? 0) + (ice?.onLoads[number] ?? 0);
    eccentricWeight += mass * load.offset * GRAVITY;
  });
  return eccentricWeight;
}

/**
 * Horizontal pull of a load that is a wire.
 *
 * n·H
 *
 * @returns the pull [N]; 0 of what is no wire or not known
 * @source derived
 */
export function pullOf(load: Load): number {
  return load.shape.kind === 'wire' ? load.count * (load.shape.pull ?? 0) : 0;
}

/**
 * The mast as a beam, loose tubes not counted on.
 *
 * E·I and strength by its pieces
 *
 * @returns the beam; undefined where a wall is not told or its foot is not
 * @source derived
 */
export function beamOf(mast: Mast): MastBeam | undefined {
  const { foot } = mast;
  const pieces = piecesOf(mast);
  if (foot === undefined || pieces === undefined) return undefined;
  const { bearing } = mast;
  return { pieces: creditedPieces(pieces), foot, ...(bearing !== undefined && bearing > foot ? { bearing } : {}) };
}

/**
 * The pieces of a mast, above the ground.
 *
 * z_f + from, z_f + to
 *
 * @returns the pieces; undefined where a wall is not told or its foot is not
 */
export function piecesOf(mast: Mast): readonly MastPiece[] | undefined {
  const { foot } = mast;
  if (foot === undefined) return undefined;
  const metal = {
    material: mast.material,
    ...(mast.ultimateStrength === undefined ? {} : { ultimateStrength: mast.ultimateStrength }),
  };
  const strength = (own: number | undefined) => {
    const yieldStrength = own ?? mast.yieldStrength;
    return yieldStrength === undefined ? {} : { yieldStrength };
  };
  if (mast.pieces) {
    return mast.pieces.map(({ outside, wall, from, to, yieldStrength }) => ({
      ...metal,
      ...strength(yieldStrength),
      outside,
      wall,
      low: foot + from,
      high: foot + to,
    }));
  }
  if (mast.wall === undefined) return undefined;
  return [{ ...metal, ...strength(undefined), outside: mast.outside, wall: mast.wall, low: foot, high: mast.tip }];
}
