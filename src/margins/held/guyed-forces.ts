import { nth } from '../../foundation/index.ts';
import { levelFactors, METHOD_BY_ID } from '../../methods/index.ts';
import type { HeldFailure } from '../../structure/index.ts';
import type { TowerModel } from '../model.ts';
import { once } from '../tower-model.ts';
import { blownTo, planBlowing } from './held-loads.ts';
import { heldModelOf, heldWeightsNotGiven } from './held-model.ts';
import { breakingOf } from './supports.ts';

/** Guys at one height: the largest over headings and over what is not told. */
export interface GuyLevel {
  readonly height: number;
  /** At the tower [N]. */
  readonly tension: number;
  /** What one anchor takes: level and up [N]. */
  readonly anchorLevel: number;
  readonly anchorUp: number;
  /** What breaks the strand: of no told grade from the weakest to the strongest [N]. */
  readonly breaking: { readonly least: number; readonly most: number };
}

/** A tower on guys or brackets in the design wind, nominal level, each figure at its own worst. */
export interface GuyedForces {
  /** One of the ways in which it may stand gave no figures, for this. */
  readonly failure?: HeldFailure;
  readonly levels: readonly GuyLevel[];
  /** By bracket from the lowest up: where it is, and what pulls on it [m, N]. */
  readonly brackets: readonly { readonly height: number; readonly pull: number }[];
  /** Shear [N] and push [N] at the foot, and the moment there if it is held [N·m]. */
  readonly foot: { readonly shear: number; readonly thrust: number; readonly moment: number };
  /** Of the top [m]. */
  readonly movement: number;
}

/**
 * Forces of a tower on guys or brackets, as a beam on cables and springs: in every way in which what is not told may be, wind
 * from everywhere that differs, all that hangs on it broadside.
 *
 * @param checked the plan, heights [m]
 * @returns forces [N, N·m]; undefined where the model lacks something
 * @source derived
 */
export function guyedForcesOf(checked: { readonly model: TowerModel }): GuyedForces | undefined {
  return once(checked.model, workedOut);
}

function workedOut(model: TowerModel): GuyedForces | undefined {
  const held = heldModelOf(model);
  if (!held || heldWeightsNotGiven(model).length > 0) return undefined;
  const { tower } = model.input.station;
  const { supports } = held;
  const [{ appurtenances }] = model.scenarios;
  const { conditions, toAllowableFactor } = appurtenances.wind;
  const toNominal =
    levelFactors(METHOD_BY_ID[model.input.method], conditions.speedLevel).toNominalFactor / toAllowableFactor;
  const blowings = model.scenarios.map((scenario) =>
    planBlowing(model, scenario, model.site.speed, 'unfavourable', toNominal, 1),
  );
  let { failure } = held;
  let foot = { shear: 0, thrust: 0, moment: 0 };
  let movement = 0;
  const levels = supports.guys.map((each) => ({
    height: each.height,
    tension: 0,
    anchorLevel: 0,
    anchorUp: 0,
    breaking: breakingOf(each),
  }));
  const pulls = supports.brackets.map(() => 0);
  for (const reading of held.readings)
    for (const { loads, onGuys } of blowings) {
      const pressures = reading.guys.map(({ height, anchorHeight }) => onGuys((height + anchorHeight) / 2));
      for (const windTo of held.headings) {
        const blown = [reading.ownWeight, ...loads.map((load) => blownTo(load, windTo))];
        const { forces, failure: found } = reading.solve({ loads: blown, windTo, onGuys: pressures });
        if (!forces) {
          failure ??= found;
          continue;
        }
        foot = {
          shear: Math.max(foot.shear, forces.foot.shear),
          thrust: Math.max(foot.thrust, forces.foot.thrust),
          moment: Math.max(foot.moment, forces.foot.moment),
        };
        const top = forces.levels.find(({ z }) => Math.abs(z - tower.top) < 1e-6);
        if (top) movement = Math.max(movement, Math.hypot(top.east, top.north));
        forces.brackets.forEach((pull, index) => {
          pulls[index] = Math.max(nth(pulls, index), pull);
        });
        let next = 0;
        supports.guys.forEach(({ there }, level) => {
          const row = forces.guys.slice(next, next + there.count);
          next += there.count;
          const most = nth(levels, level);
          levels[level] = {
            ...most,
            tension: Math.max(most.tension, ...row.map(({ atTower }) => atTower)),
            anchorLevel: Math.max(most.anchorLevel, ...row.map((each) => each.anchorLevel)),
            anchorUp: Math.max(most.anchorUp, ...row.map(({ anchorUp }) => anchorUp)),
          };
        });
      }
    }
  const brackets = supports.brackets.map((height, index) => ({ height, pull: nth(pulls, index) }));
  return { ...(failure === undefined ? {} : { failure }), levels, brackets, foot, movement };
}
