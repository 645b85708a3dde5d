import { cite, defineFormula, evaluate, GRAVITY, Refusal, type Trace, variable } from '../foundation/index.ts';
import { DEAD_SHARE, type FootLoad, refuseBelowZero } from './block-footing.ts';

/** What the legs of a lattice pull and press at the foot; shown, never judged: bolts and concrete are not checked. */
export interface LegForces {
  /** Pull of a leg with the dead load that may hold; below zero it still presses. Absent: weight not known [N]. */
  readonly uplift?: number;
  /** Pull of a leg with no weight counted [N]. */
  readonly upliftWithoutWeight: number;
  /** Push of the leg leaned on with the whole dead load; absent: weight not known [N]. */
  readonly push?: number;
}

/** From the leg that pulls to the line of those that press, as a share of the width: √3/2 and √2. @source derived */
const LEG_ARM = { 3: Math.sqrt(3) / 2, 4: Math.SQRT2 } as const;

const arm = variable('k_b', '√3/2 for three legs, √2 for four', 'one', LEG_ARM[3], LEG_ARM[4]);
const moment = variable('M', 'moment at the base, nominal', 'moment', 0, 1e6);
const width = variable('b', 'from axis to axis of two legs at the base', 'length', 0.1, 5);
const legs = variable('n', 'number of legs', 'one', 3, 4);
const dead = variable('D', 'weight of the tower and all on it', 'force', 0, 1e5);

export const legUpliftFormula = defineFormula({
  id: 'leg-uplift',
  title: 'Uplift of one leg at the base',
  symbol: 'T',
  unit: 'force',
  expression: 'M / (k_b * b) - k_D * D / n',
  variables: [moment, arm, width, variable('k_D', 'share of the dead load that resists', 'one', 0, 1), dead, legs],
  cite: cite('derived', 'one leg against two (three legs), one against the one across (four)', 'derived'),
  of: (M: number, k: number, b: number, share: number, D: number, n: number) => M / (k * b) - (share * D) / n,
});

export const legPushFormula = defineFormula({
  id: 'leg-push',
  title: 'Compression of one leg at the base',
  symbol: 'C',
  unit: 'force',
  expression: 'M / (k_b * b) + D / n',
  variables: [moment, arm, width, dead, legs],
  cite: cite('derived', 'one leg against two (three legs), one against the one across (four)', 'derived'),
  of: (M: number, k: number, b: number, D: number, n: number) => M / (k * b) + D / n,
});

/**
 * What the legs of a three- or four-legged tower pull and press at the foot, in the heading that is worst for one leg.
 *
 * T = M/(0.87·b) − 0.6·D/3 (three legs), M/(1.41·b) − 0.6·D/4 (four); C = M/(k_b·b) + D/n
 *
 * Holds for the legs of a roof tripod or quadruped too, b from foot to foot.
 *
 * @param width from axis to axis of two legs at the foot [m]
 * @param foot nominal shear [N], moment [N·m] and weight [kg] at the foot
 * @returns pull and push of a leg [N]
 * @throws Refusal where the width is not above zero or a load is below it
 * @example legForces(3, 0.5, { shear: 1e3, moment: 10e3, weight: 200 }).uplift // 22702
 * @example legForces(4, 0.5, { shear: 1e3, moment: 10e3 }).upliftWithoutWeight // 14142
 * @source derived, ibc-2018
 */
export function legForces(faces: 3 | 4, width: number, foot: FootLoad, trace?: Trace): LegForces {
  if (!(width > 0 && Number.isFinite(width))) throw new Refusal('leg-spacing', 'Legs are more than zero apart.');
  refuseBelowZero(foot);
  const k = LEG_ARM[faces];
  const upliftWithoutWeight = evaluate(trace, legUpliftFormula, [foot.moment, k, width, 0, 0, faces]);
  if (foot.weight === undefined) return { upliftWithoutWeight };
  const D = foot.weight * GRAVITY;
  return {
    uplift: evaluate(trace, legUpliftFormula, [foot.moment, k, width, DEAD_SHARE, D, faces]),
    upliftWithoutWeight,
    push: evaluate(trace, legPushFormula, [foot.moment, k, width, D, faces]),
  };
}
