import { cite, defineFormula, evaluate, nth, type Trace, under, variable } from '../foundation/index.ts';
import type { Comparison, Proof } from './comparisons.ts';
import { provenMoment } from './formulas.ts';
import type { TowerModel } from './model.ts';
import type { TowerAsRated } from './tower-as-rated.ts';
import type { LevelOfWindRatio } from './unknown-own-drag.ts';

const top = variable('H', 'height of its top', 'length', 1, 60);
const ratedTop = variable('H_r', 'height of the top it is rated for', 'length', 1, 90);

export const lowerAsRated = defineFormula({
  id: 'lower-as-rated',
  title: 'How much lower a tower of the same series is that a rating is read for; below zero where it is higher',
  symbol: 'd',
  unit: 'length',
  expression: 'H - H_r',
  variables: [top, ratedTop],
  cite: cite('common-practice', 'towers of a series are alike from the top down', 'common-practice'),
  of: (height: number, rated: number) => height - rated,
});

export const slidAsRated = defineFormula({
  id: 'slid-as-rated',
  title: 'How much lower a section stands with the top at the height it is rated for, all sections moved alike',
  symbol: 'd',
  unit: 'length',
  expression: '(k - 1) / (n - 1) * (H - H_r)',
  variables: [
    variable('k', 'number of the section from below, 1 the fixed one', 'one', 1, 10),
    variable('n', 'number of sections', 'one', 2, 10),
    top,
    ratedTop,
  ],
  cite: cite('common-practice', 'one cable moves all sections alike', 'common-practice'),
  of: (number: number, count: number, height: number, rated: number) => ((number - 1) / (count - 1)) * (height - rated),
});

export const heightAsRated = defineFormula({
  id: 'height-as-rated',
  title:
    'Where the same place of a tower is on the one a rating is read for; what is below its base counts as its base',
  symbol: 'z_r',
  unit: 'length',
  expression: 'max(z_0, z - d)',
  variables: [
    variable('z', 'height of the place', 'length', 0, 60),
    variable('d', 'how much lower it is there', 'length', -30, 60),
    variable('z_0', 'height of the base', 'length', 0, 20),
  ],
  cite: cite('common-practice', 'a lower section of a series is no weaker than one above it', 'common-practice'),
  of: (z: number, drop: number, foot: number) => Math.max(foot, z - drop),
});

export const shareOfRatedMoment = defineFormula({
  id: 'share-of-rated-moment',
  title: 'Moment capacity here, from that with the top at another height',
  symbol: 'M_cap',
  unit: 'moment',
  expression: 'M_p * k',
  variables: [
    variable('M_p', 'capacity there', 'moment', 0, 1e6),
    variable('k', 'share: width or overlap here over that there; the cube of lengths above a base', 'one', 0, 1),
  ],
  cite: cite('derived', 'legs, and the couple by which a section is held, are forces times their distance', 'derived'),
  of: (proven: number, share: number) => proven * share,
});

export const coupleAsRated = defineFormula({
  id: 'couple-as-rated',
  title: 'Shear capacity inside an overlap: the couple that holds the section there',
  symbol: 'V_cap',
  unit: 'force',
  expression: 'M_p / s',
  variables: [
    variable('M_p', 'moment capacity at the rim', 'moment', 0, 1e6),
    variable('s', 'overlap', 'length', 0.1, 10),
  ],
  cite: cite('derived', 'legs, and the couple by which a section is held, are forces times their distance', 'derived'),
  of: (proven: number, overlap: number) => proven / overlap,
});

export const moreThanRated = defineFormula({
  id: 'more-tower-than-rated',
  title: 'Ratio by the wind on a tower of unknown shape where more of it is above a level than was rated',
  symbol: 'k',
  unit: 'one',
  expression: 'max(1, (l / l_r)^3) * k_w',
  variables: [
    variable('l', 'length above the level', 'length', 0.1, 60),
    variable('l_r', 'length above it as rated', 'length', 0.1, 60),
    variable('k_w', 'site wind over rated wind', 'one', 0, 10),
  ],
  cite: cite('derived', 'the wind on it grows at most in proportion to the distance from its top', 'derived'),
  of: (length: number, rated: number, wind: number) => Math.max(1, (length / rated) ** 3) * wind,
});

/**
 * Where a place of proof is on the tower that a rating is read for, written down.
 *
 * z_r = max(z_0, z − d)
 *
 * @source common-practice
 */
export function explainPlaceAsRated(
  model: TowerModel,
  asRated: TowerAsRated,
  place: Proof[number],
  trace: Trace,
): void {
  const { tower } = model.input.station;
  const { z, drop } = nth(asRated.cameFrom, place.level);
  under(trace, 'the tower as rated', () => {
    const said = explainDrop(tower, asRated, drop, trace);
    evaluate(trace, heightAsRated, [z, drop, tower.foot], said ? undefined : 'its sections slid one after the other');
  });
}

function explainDrop(
  tower: TowerModel['input']['station']['tower'],
  asRated: TowerAsRated,
  drop: number,
  trace: Trace,
): boolean {
  const { top, sections } = tower;
  const rated = asRated.tower.top;
  const drops = sections.map((section, index) => section.high - nth(asRated.tower.sections, index).high);
  const same = (one: number, other: number) => Math.abs(one - other) < 1e-9;
  if (drops.every((each) => same(each, top - rated))) {
    evaluate(trace, lowerAsRated, [top, rated]);
    return true;
  }
  const number = drops.findIndex((each) => same(each, drop));
  const inputs: [number, number, number, number] = [number + 1, sections.length, top, rated];
  if (number < 0 || !same(slidAsRated.of(...inputs), drop)) return false;
  evaluate(trace, slidAsRated, inputs);
  return true;
}

/**
 * What is proven on the tower that a rating is read for, written down: a moment, or the couple of an overlap.
 *
 * M_p·k; M_p/s
 *
 * @param factor share of the moment, or one over the overlap [- or 1/m]
 * @param ofForces moment of the rated forces [N·m]
 * @param own moment of the rated wind on the tower itself [N·m]
 * @returns the capacity [N·m or N]
 * @source derived
 */
export function explainMomentAsRated(
  of: Comparison['of'],
  factor: number,
  ofForces: number,
  own: number,
  trace: Trace,
): number {
  const proven = evaluate(trace, provenMoment, [ofForces, own, 1]);
  if (of === 'shear') return evaluate(trace, coupleAsRated, [proven, 1 / factor]);
  return factor === 1 ? proven : evaluate(trace, shareOfRatedMoment, [proven, factor]);
}

/**
 * The ratio by the wind on a tower of unknown shape, where more of it may be above a level than was rated.
 *
 * max(1, (l/l_r)³)·k_w
 *
 * @param at the level that decides
 * @param byWind site wind over rated wind there [-]
 * @returns the ratio [-]
 * @source derived
 */
export function explainMoreThanRated(
  levels: readonly { readonly z: number }[],
  at: LevelOfWindRatio,
  asRated: TowerAsRated,
  byWind: number,
  trace: Trace,
): number {
  const { z, ratedZ, moreOfIt } = at;
  if (moreOfIt === 1) return byWind;
  return evaluate(trace, moreThanRated, [nth(levels, 0).z - z, asRated.tower.top - ratedZ, byWind]);
}
