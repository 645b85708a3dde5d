import { type DragRule, UNKNOWN_SOLIDITY } from '../areas/index.ts';
import { evaluate, nth, type Trace } from '../foundation/index.ts';
import type { Wind, WindStructure } from '../methods/index.ts';
import type { Level } from '../structure/index.ts';
import { dragAreaForce } from './formulas.ts';
import type { TowerAsRated } from './tower-as-rated.ts';

/**
 * The wind on a tower whose shape is not known, against that in the maker's wind: the most over its levels.
 *
 * max over z of l·r·w_site(z)/w_r(z_r)
 *
 * @param asRated the tower it was rated for, where that is of another height
 * @returns the ratio [-]
 * @source derived
 */
export function largestWindRatio(
  site: Wind,
  rated: Wind,
  levels: readonly Level[],
  windStructure: WindStructure,
  asRated?: TowerAsRated,
): number {
  let largest = 0;
  for (const { z, ratedZ, moreOfIt } of levelsOfWindRatio(levels, asRated)) {
    const here = windOnDragArea(site, z) / windOnDragArea(rated, ratedZ);
    largest = Math.max(largest, moreOfIt * here * coefficientRise(site, rated, z, windStructure, ratedZ));
  }
  return largest;
}

/** A level, its height on the tower as rated, and how much more moment by the wind on the tower itself there may be for it. */
export interface LevelOfWindRatio {
  readonly z: number;
  readonly ratedZ: number;
  readonly moreOfIt: number;
}

/**
 * The levels at which the wind on a tower of unknown shape is compared with that on the one it was rated for. With more of it
 * above a level than was rated, moments are larger by the cube of the lengths at most, where it is no wider than in
 * proportion to how far it is from the top.
 *
 * l = max(1, ((H − z)/(H_r − z_r))³)
 *
 * @source derived
 */
export function levelsOfWindRatio(
  levels: readonly Level[],
  asRated: TowerAsRated | undefined,
): readonly LevelOfWindRatio[] {
  if (!asRated) return levels.map(({ z }) => ({ z, ratedZ: z, moreOfIt: 1 }));
  const top = levels[0]?.z ?? Number.NaN;
  return levels.map(({ z }, level) => {
    const ratedZ = nth(asRated.levels, nth(asRated.levelFor, level)).z;
    const [length, ratedLength] = [top - z, asRated.tower.top - ratedZ];
    return { z, ratedZ, moreOfIt: length > ratedLength + 1e-9 ? (length / ratedLength) ** 3 : 1 };
  });
}

/** A tube that a tower whose shape is not known may be made of, by its width [m]. */
interface TriedTube {
  readonly width: number;
  readonly rule: DragRule;
}

/**
 * Those tried: of a pole, and the members of a lattice at both ends of its open solidity.
 *
 * @source common-practice
 */
const TRIED: Readonly<Record<WindStructure['kind'], readonly TriedTube[]>> = {
  pole: [0.03, 0.05, 0.08, 0.12, 0.18, 0.27, 0.4, 0.6, 0.9].map((width) => ({
    width,
    rule: { of: 'pole', sides: 0, aspect: 25, width },
  })),
  lattice: [0.01, 0.015, 0.02, 0.03, 0.04, 0.06, 0.09, 0.14].flatMap((width) =>
    Object.values(UNKNOWN_SOLIDITY).map((solidity) => ({
      width,
      rule: { of: 'lattice', face: { faces: 3, solidity, roundShare: 1, thinnest: width, thickest: width } },
    })),
  ),
};

/**
 * By how much the coefficient of a tower whose shape is not known may be larger in the site's wind than in the rated one: it
 * falls where the flow is fast, and the slower of two winds has more of it.
 *
 * max over widths and solidities of (C_site/C_slow)/(C_r/C_slow)
 *
 * @param z height above ground [m]
 * @param ratedZ height of the same place on the tower as rated [m]
 * @returns the factor [-], 1 or more
 */
export function coefficientRise(site: Wind, rated: Wind, z: number, windStructure: WindStructure, ratedZ = z): number {
  const fallen = (wind: Wind, height: number, { rule, width }: TriedTube) => {
    const { byFlow } = wind.forceCoefficient(rule, 'capacity', 'face');
    return byFlow.at(wind.flowPerSpeed(height) * wind.conditions.speed * width) / byFlow.at(0);
  };
  return TRIED[windStructure.kind].reduce(
    (most, tube) => Math.max(most, fallen(site, z, tube) / fallen(rated, ratedZ, tube)),
    1,
  );
}

/**
 * Force of a wind on a unit of drag area of the tower itself, whose shape is not known.
 *
 * λ·Kd·q·G·C_A
 *
 * @param z height above ground [m]
 * @returns the force on a unit of area, allowable level [Pa]
 * @source derived
 */
export function windOnDragArea(wind: Wind, z: number, trace?: Trace): number {
  return evaluate(trace, dragAreaForce, [
    wind.toAllowableFactor,
    wind.forceDirectionFactor,
    wind.pressure(z, trace),
    wind.gustEffect(undefined, trace),
    wind.forceCoefficient({ of: 'drag-area' }, 'capacity', 'face').byFlow.at(0, trace),
  ]);
}
