import {
  type AreaKind,
  constantCoefficient,
  type DragRule,
  dishCoefficient,
  groupOrSingly,
  ROUND_SHARE_C,
} from '../areas/index.ts';
import { cite, defineFormula, evaluate, type Trace, type UnitSystem, variable } from '../foundation/index.ts';
import { PRESSURE_CONSTANT } from '../wind/index.ts';
import type { Bound, PartCoefficient } from './method.ts';

/** Least and most an area of a kind not stated may hide; the most with slender flats among its members. @source derived */
export const UNKNOWN_AREA = { least: 1, most: 1.8, mostWithSlenderFlats: 2 } as const;

interface Slender {
  readonly round: number;
  readonly flat: number;
}

export const flatPlateFactor = defineFormula({
  id: 'flat-plate-to-effective',
  title: 'From an area counted as a flat plate (tubes at two thirds) to the effective area of its tubes',
  symbol: 'k_A',
  unit: 'one',
  expression: 'C_r / (2/3)',
  variables: [variable('C_r', 'coefficient of a slender round member', 'one', 0.6, 1.2)],
  cite: cite('rs222-c', 'reading of its flat-plate areas', 'derived'),
  of: (round: number) => round / ROUND_SHARE_C,
});

/**
 * What a load's stated area is multiplied by to become effective.
 *
 * effective 1; projected × slender coefficient; flat-plate × C_r/(2/3), with slender flats 2.0; unknown 1 to the largest
 *
 * @param slenderFlats whether slender flats are among its members
 * @returns the factor [-]
 * @example statedAreaFactor('unknown', false, { round: 1.2, flat: 2 }, 'unfavourable') // 1.8
 */
export function statedAreaFactor(kind: AreaKind, slenderFlats: boolean, slender: Slender, reading: Bound): number {
  switch (kind) {
    case 'effective':
      return 1;
    case 'projected-round':
      return slender.round;
    case 'projected-flat':
      return slender.flat;
    case 'flat-plate':
      return slenderFlats ? UNKNOWN_AREA.mostWithSlenderFlats : flatPlateFactor.of(slender.round);
    case 'unknown':
      if (reading === 'favourable') return UNKNOWN_AREA.least;
      return slenderFlats ? UNKNOWN_AREA.mostWithSlenderFlats : UNKNOWN_AREA.most;
  }
}

export const areaOfForce = defineFormula({
  id: 'area-of-stated-force',
  title: 'Effective area of a stated force at a speed',
  symbol: 'A_e',
  unit: 'area',
  expression: 'F / (c * V^2)',
  variables: [
    variable('F', 'stated force', 'force', 1, 1e5),
    variable('c', 'half the density of air', 'pressure-constant', 0.6, 0.62),
    variable('V', 'stated speed', 'speed', 5, 180),
  ],
  cite: cite(
    'derived',
    'velocity pressure without factors; the data sheet states no formula. A least pressure acts on this area',
    'derived',
  ),
  of: (force: number, constant: number, speed: number) => force / (constant * speed * speed),
});

/** Rules for which every method has a coefficient of its own. */
export type MethodRule = Extract<DragRule, { readonly of: 'round' | 'flat' | 'lattice' | 'pole' }>;

/**
 * The force coefficient of a rule: stated areas, drag areas and dishes are the same by every method.
 *
 * @param units whose constant turns a stated force into an area
 */
export function coefficientOf(
  rule: DragRule,
  units: UnitSystem,
  own: (rule: MethodRule) => PartCoefficient,
): PartCoefficient {
  switch (rule.of) {
    // What a stated area is multiplied by is a reading, taken where the readings are known.
    case 'stated':
    case 'drag-area':
    case 'wire-pull':
      return { byFlow: constantCoefficient(1) };
    case 'stated-force': {
      const inputs: [number, number, number] = [rule.force, PRESSURE_CONSTANT[units], rule.wind];
      return {
        byFlow: constantCoefficient(areaOfForce.of(...inputs), (trace) => evaluate(trace, areaOfForce, inputs)),
      };
    }
    case 'group': {
      const { byFlow, diameter = rule.diameter } = own({ of: 'round', aspect: rule.aspect, diameter: rule.diameter });
      const smaller = (one: number, trace?: Trace) =>
        evaluate(trace, groupOrSingly, [rule.coefficient, rule.singly, one]);
      const at = (flow: number, trace?: Trace) => smaller(byFlow.at(flow, trace), trace);
      return { byFlow: { slow: smaller(byFlow.slow), limit: byFlow.limit, at }, diameter };
    }
    case 'dish':
      return {
        byFlow: constantCoefficient(dishCoefficient.of(rule.solidity), (trace) =>
          evaluate(trace, dishCoefficient, [rule.solidity]),
        ),
      };
    default:
      return own(rule);
  }
}
