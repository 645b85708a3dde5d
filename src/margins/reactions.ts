import type { Trace } from '../foundation/index.ts';
import { METHOD_BY_ID, type Wind } from '../methods/index.ts';
import {
  type FootLoad,
  type LegForces,
  legForces,
  type SlicesInWind,
  sliceForces,
  untoldWeights,
} from '../structure/index.ts';
import { siteSpeed, type TowerModel } from './tower-model.ts';
import type { WindLoads } from './wind-loads.ts';

/** Shear [N] and moment [N·m] at the foot of the tower. */
export interface FootForces {
  readonly shear: number;
  readonly moment: number;
}

/** Forces of the legs, and whether they stand on the outside width because their thickness is not told. */
export type LegsAtFoot = LegForces & { readonly byOutsideWidth?: true };

/** At the foot of the tower, at the headings of the ledger, as if nothing else held it. */
export interface Reactions {
  /** Of the wind and of what stays, at the worst heading of both. */
  readonly allowable: FootForces;
  /** For foundations. */
  readonly nominal: FootForces;
  /** Where the method has a strength level. */
  readonly strength?: FootForces;
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
  /** Of the legs of a lattice that stands by itself, nominal: shown, bolts and concrete are not checked. */
  readonly legs?: LegsAtFoot;
  /** What a bracketed tower may pull on its highest bracket, at most, nominal load of foundations [N]. */
  readonly bracketPull?: number;
}

/** ASCE/SEI 7-16 2.3.1 and ANSI/TIA-222-H 2.3.2: 1.2D beside the wind, from memory. */
const STEADY_AT_STRENGTH = 1.2;

/**
 * What the tower asks of its foot.
 *
 * wind by the ledger, and what stays; nominal: × 1/λ or 0.6/λ
 *
 * @param model the tower [-]
 * @param wind of the site [-]
 * @param windLoads of the design wind [-]
 * @returns the forces at every level [-]
 * @source derived
 */
export function reactionsOf(model: TowerModel, wind: Wind, windLoads: WindLoads): Reactions {
  const { station } = model.input;
  const { tower } = station;
  const method = METHOD_BY_ID[model.input.method];
  const strengthMap = wind.conditions.speedLevel === 'strength';
  const nominal = strengthMap ? 0.6 : method.nominal;
  const strength = strengthMap ? 1 : method.strength;
  const allWeights = tower.weight !== undefined && untoldWeights(station).length === 0;
  const last = model.levels.length - 1;
  const weight = allWeights ? (tower.weight as number) + (model.dead.weight[last] as number) : undefined;
  const pull = bracketPull(model, nominal / wind.level);
  const withoutWind = {
    shear: model.dead.pullShear[last] as number,
    moment: (model.dead.pullMoment[last] as number) + (model.dead.eccentricWeightMoment[last] as number),
  };
  const at = (windFactor: number, steadyFactor: number): FootForces => ({
    shear: windLoads.total.force * windFactor + withoutWind.shear * steadyFactor,
    moment: windLoads.total.momentAtBase * windFactor + withoutWind.moment * steadyFactor,
  });
  const legs = legsOf(model, { ...at(nominal / wind.level, 1), ...(weight === undefined ? {} : { weight }) });
  return {
    allowable: at(1, 1),
    nominal: at(nominal / wind.level, 1),
    ...(strength === undefined
      ? {}
      : { strength: at(strength / wind.level, method.strengthOfSteady ?? STEADY_AT_STRENGTH) }),
    withoutWind,
    toNominal: nominal / wind.level,
    supportedAbove: tower.support === 'guyed' || tower.support === 'bracketed',
    withoutOwnWind: !model.bareTowerKnown,
    ...(weight === undefined ? {} : { weight }),
    ...(legs === undefined ? {} : { legs }),
    ...(pull === undefined ? {} : { bracketPull: pull }),
  };
}

/**
 * The working of the legs' pull and push.
 *
 * T = M/(k_b·b) − 0.6·D/n
 *
 * @param model the tower [-]
 * @param reactions at its foot [-]
 * @param trace the working [-]
 * @returns nothing [-]
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

/**
 * What a bracketed tower may pull on its highest bracket, each piece of the wind at its own worst heading.
 *
 * R ≤ ΣF·(1 + 1.5·a/l), a above the bracket, l from it down to the next support, for any hold below; pulls as vectors
 */
function bracketPull(model: TowerModel, toNominal: number): number | undefined {
  const { tower, loads } = model.input.station;
  if (tower.support !== 'bracketed' || tower.held.length === 0) return undefined;
  const highest = model.lowest;
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
  const { speed } = siteSpeed(model.input);
  const loadEffects = (cut: SlicesInWind, reading: 'unfavourable' | 'favourable') => {
    const { front, side } = sliceForces(cut, speed, reading, true);
    return cut.slices.reduce(
      (sum, { z }, index) => sum + Math.max(front[index] as number, side[index] as number) * shareAt(z),
      0,
    );
  };
  const wind = model.appurtenancesInWind.map((appurtenances, scenario) => {
    const own = model.bareTowerInWind[scenario];
    return loadEffects(appurtenances, 'unfavourable') + (own ? loadEffects(own, 'favourable') : 0);
  });
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
  const eccentricWeight = model.dead.eccentricWeightMoment[model.levels.length - 1] as number;
  return Math.max(...wind) * toNominal + Math.hypot(east, north) + below + (1.5 * eccentricWeight) / span;
}
