import { type DragRule, UNKNOWN_SOLIDITY } from '../areas/index.ts';
import { evaluate, type Trace } from '../foundation/index.ts';
import type { Wind, WindStructure } from '../methods/index.ts';
import type { Level } from '../structure/index.ts';
import { dragAreaForce } from './formulas.ts';

/**
 * The wind on a tower whose shape is not known, against that in the maker's wind: the most over its levels.
 *
 * max over z of r·w_site/w_r
 *
 * @returns the ratio [-]
 * @source derived
 */
export function largestWindRatio(
  site: Wind,
  rated: Wind,
  levels: readonly Level[],
  windStructure: WindStructure,
): number {
  let largest = 0;
  for (const { z } of levels) {
    const here = windOnDragArea(site, z) / windOnDragArea(rated, z);
    largest = Math.max(largest, here * coefficientRise(site, rated, z, windStructure));
  }
  return largest;
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
 * @returns the factor [-], 1 or more
 */
export function coefficientRise(site: Wind, rated: Wind, z: number, windStructure: WindStructure): number {
  const fallen = (wind: Wind, { rule, width }: TriedTube) => {
    const { byFlow } = wind.forceCoefficient(rule, 'capacity', 'face');
    return byFlow.at(wind.flowPerSpeed(z) * wind.conditions.speed * width) / byFlow.at(0);
  };
  return TRIED[windStructure.kind].reduce((most, tube) => Math.max(most, fallen(site, tube) / fallen(rated, tube)), 1);
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
