import { nth } from '../../foundation/index.ts';
import { profileOf, sliceForces } from '../../structure/index.ts';
import { explainGoverning } from '../explain-comparison.ts';
import { heldProofOf } from '../held/held-proof.ts';
import type { TowerModel } from '../model.ts';
import { leansOn } from '../stated-for.ts';
import { leansTooFar } from '../sway.ts';
import { checkRatio } from '../tower-ratio.ts';
import { type Check, judged, openCheck, withoutWinds } from './check.ts';
import type { CheckContext, CheckKind } from './check-kind.ts';
import { compared, resultOf, supportsNotGiven, towerNeeds } from './compared-with-rating.ts';
import { goesByOwnStrength } from './own-strength-check.ts';
import { roomOfTower } from './room-of-tower.ts';

/** The tower against what its maker's ratings prove. */
export const towerKind: CheckKind<'tower'> = {
  kind: 'tower',
  part: 'tower',
  assess: (context) => (goesByOwnStrength(context.model) || goesByModel(context.model) ? [] : [towerCheck(context)]),
  explain: (context, checks, trace) => explainGoverning(context, checks, 'tower', 'tower', trace),
  loadedBy: 'wind',
  comparesTower: 'tower',
  room: { onMastOnly: false, neededFor: 'all', left: roomOfTower },
};

const TOWER = { id: 'tower', kind: 'tower', at: '/tower' } as const;

function towerCheck({ model, ratios, withoutLeast: demand }: CheckContext): Check {
  const found = checkRatio(ratios, 'tower');
  const needs = towerNeeds(model);
  if (supportsNotGiven(model)) return openCheck(TOWER, 'missing', needs);
  if (model.comparedFromHeight >= model.input.station.tower.top)
    return openCheck(TOWER, 'held', ['/tower/supportedAt', ...needs]);
  if (!found || model.claims.length + model.momentClaims.length === 0) return openCheck(TOWER, 'missing', needs);
  if (!Number.isFinite(found.unfavourable)) {
    // Where only part of the comparisons has a proof, what that part says.
    const shown = ratios.filter((ratio) => Number.isFinite(ratio.unfavourable) && ratio.capacity > 0);
    const partial = checkRatio(shown, 'tower');
    const result = partial && withoutWinds(resultOf(model, partial, demand));
    return openCheck(TOWER, needs.length > 0 ? 'missing' : 'beyond-rating', needs, result);
  }
  const result = resultOf(model, found, demand);
  const because = found.favourable > 1 ? 'beyond-rating' : 'readings-disagree';
  // With its shape the wind on the tower itself counts with the loads.
  const shapeDecides = found.unfavourable > 1 && found.governing.byWindRatio;
  const missing = shapeDecides ? [...new Set([...needs, '/tower/shape'])] : needs;
  const by = { margin: model.input.wanted.margin, favourable: found.favourableOver, missing, because } as const;
  const check = judged(TOWER, result, by);
  if (check.verdict === 'over') {
    const over = compared(model, found.governingOver ?? found.governing, demand);
    return over.ratio < result.ratio ? { ...check, result: { ...result, over } } : check;
  }
  if (leansTooFar(model)) return openCheck(TOWER, 'beyond-small-movement', [], result);
  const held = heldProofOf(model) ? [] : heldGaps(model);
  return held.length > 0 ? openCheck(TOWER, 'held', held, result) : check;
}

/** Held at its very top it is compared nowhere but between its supports. */
function goesByModel(model: TowerModel): boolean {
  return model.comparedFromHeight >= model.input.station.tower.top && heldProofOf(model) !== undefined;
}

/**
 * Below its highest support a tower is no cantilever, and nothing is compared; what must hold for the rating to speak for it
 * all the same: guys as the maker draws them, and nothing there but lines and its own drag, within the rated own drag.
 */
function heldGaps(model: TowerModel): readonly string[] {
  const { tower, loads, cables } = model.input.station;
  if (!leansOn(tower)) return [];
  const open: string[] = [];
  if (tower.support === 'guyed' && !tower.asDrawn) open.push('/tower/asDrawn');
  for (const load of loads) if (load.low < model.comparedFromHeight) open.push(`${load.at}/height`);
  const windless = model.claims.filter((claim) => claim.cases.every((each) => !each.rated[0]?.wind));
  if (windless.length > 0 && windless.length === model.claims.length) {
    // Nothing but a wind stands behind that on the tower itself.
    for (const claim of windless) open.push(`${claim.rating.at}/wind`);
  } else if (!model.bareTowerKnown) {
    // Alone it is within the rated wind where its ratio is; how much room that leaves for lines, only its shape tells.
    if (tower.support === 'guyed' || cables.length > 0) open.push('/tower/shape');
  } else if (model.claims.every((claim) => !bareTowerStaysBelow(model, claim.number))) {
    open.push(cables.length > 0 ? '/cables' : '/tower');
  }
  return open;
}

/** Own drag plus lines is nowhere above the rated own drag; on a bracketed tower, nowhere below its highest support. */
function bareTowerStaysBelow(model: TowerModel, number: number): boolean {
  const claim = model.claims.find((each) => each.number === number);
  if (!claim || !model.bareTowerKnown) return false;
  const { levels, hold, comparedFromHeight } = model;
  const { support } = model.input.station.tower;
  const { speed } = model.site;
  return model.scenarios.every(({ bareTower: own, appurtenances: cut, least }, scenario) => {
    if (!own) return false;
    const asked = profileOf(own, sliceForces(own, speed, 'favourable', least), levels, hold);
    const lines = cut.items.map((item) => (item.kind === 'lines' ? 1 : 0));
    const forces = sliceForces(cut, speed, 'unfavourable', least);
    cut.slices.forEach((slice, index) => {
      if (lines[slice.item]) return;
      forces.front[index] = 0;
      forces.side[index] = 0;
    });
    const ofLines = profileOf(cut, forces, levels, hold);
    return levels.every(({ z }, index) => {
      if (support === 'bracketed' && z >= comparedFromHeight) return true;
      return claim.cases.every((each) => {
        const proven = each.own[scenario];
        if (!proven || !each.rated[scenario]?.wind) return false;
        // Per length of tower: what is added between one level and the next must stay within what was rated there.
        const step = (values: number[], levelFor = (level: number) => level) =>
          nth(values, levelFor(index)) - (index === 0 ? 0 : nth(values, levelFor(index - 1)));
        const ratedLevel = (level: number) => (each.asRated ? nth(each.asRated.levelFor, level) : level);
        return step(asked.shear) + step(ofLines.shear) <= step(proven.shear, ratedLevel) + 1e-9;
      });
    });
  });
}
