import type { Trace } from '../foundation/index.ts';
import { METHOD_BY_ID, type Wind } from '../methods/index.ts';
import { type FootLoad, type LegForces, legForces, untoldWeights } from '../structure/index.ts';
import type { Ledger } from './ledger.ts';
import type { TowerModel } from './tower-model.ts';

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
  readonly steady: FootForces;
  /** Brings the wind's part from the allowable level to the nominal load of foundations. */
  readonly toNominal: number;
  /** Guys or brackets take part of it, which is not worked out. */
  readonly heldAbove: boolean;
  /** Tower and all that hangs on it [kg]; absent: some weight is not told. */
  readonly weight?: number;
  /** Of the legs of a lattice that stands by itself, nominal: shown, bolts and concrete are not checked. */
  readonly legs?: LegsAtFoot;
  /** What a bracketed tower may pull on its highest bracket, allowable level [N]. */
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
 * @param ledger of the design wind [-]
 * @returns the forces at every level [-]
 * @source derived
 */
export function reactionsOf(model: TowerModel, wind: Wind, ledger: Ledger): Reactions {
  const { station } = model.inquiry;
  const { tower } = station;
  const method = METHOD_BY_ID[model.inquiry.method];
  const strengthMap = wind.conditions.speedLevel === 'strength';
  const nominal = strengthMap ? 0.6 : method.nominal;
  const strength = strengthMap ? 1 : method.strength;
  const allWeights = tower.weight !== undefined && untoldWeights(station).length === 0;
  const last = model.levels.length - 1;
  const weight = allWeights ? (tower.weight as number) + (model.dead.weight[last] as number) : undefined;
  const pull = bracketPull(model, ledger);
  const steady = {
    shear: model.dead.pullShear[last] as number,
    moment: (model.dead.pullMoment[last] as number) + (model.dead.leaningMoment[last] as number),
  };
  const at = (windFactor: number, steadyFactor: number): FootForces => ({
    shear: ledger.total.force * windFactor + steady.shear * steadyFactor,
    moment: ledger.total.momentAtFoot * windFactor + steady.moment * steadyFactor,
  });
  const legs = legsOf(model, { ...at(nominal / wind.level, 1), ...(weight === undefined ? {} : { weight }) });
  return {
    allowable: at(1, 1),
    nominal: at(nominal / wind.level, 1),
    ...(strength === undefined
      ? {}
      : { strength: at(strength / wind.level, method.strengthOfSteady ?? STEADY_AT_STRENGTH) }),
    steady,
    toNominal: nominal / wind.level,
    heldAbove: tower.support === 'guyed' || tower.support === 'bracketed',
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
  const { tower } = model.inquiry.station;
  const shape = tower.sections[0]?.shape;
  if (tower.support === 'guyed' || tower.support === 'bracketed' || shape?.kind !== 'lattice') return undefined;
  const { solid, width, faces } = shape;
  if (solid.by !== 'members') return { ...legForces(faces, width[0], foot, trace), byOutsideWidth: true };
  return legForces(faces, width[0] - solid.leg, foot, trace);
}

/**
 * ΣF(1 + 1.5·a/l), a above the bracket, l from the bracket to the foot: fixed at the foot, propped at the bracket. What
 * blows below it counts in full, which is more than its share; a row that reaches past it is parted there.
 */
function bracketPull(model: TowerModel, ledger: Ledger): number | undefined {
  const { tower } = model.inquiry.station;
  if (tower.support !== 'bracketed' || tower.held.length === 0) return undefined;
  const span = model.lowest - tower.foot;
  if (span <= 0) return undefined;
  return ledger.rows.reduce((sum, { force, momentAtFoot, low, high }) => {
    if (high <= model.lowest || force <= 0) return sum + force;
    const parted = low < model.lowest;
    const share = parted ? (high - model.lowest) / (high - low) : 1;
    const above = parted ? (high - model.lowest) / 2 : momentAtFoot / force - span;
    return sum + force * (1 + (share * 1.5 * above) / span);
  }, 0);
}
