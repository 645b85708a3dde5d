import { cite, defineFormula, evaluate, type Trace, variable } from '../foundation/index.ts';
import type { Load, Tower } from './station.ts';

/** Of light concrete, so that the cube is large [kg/m³]. @source common-practice */
const LIGHT_CONCRETE = 2000;

export const counterpoiseSide = defineFormula({
  id: 'side-of-counterpoise',
  title: 'Side of a cube of concrete that weighs as much as the counterpoise',
  symbol: 'a',
  unit: 'length',
  expression: '(m / rho)^(1/3)',
  variables: [
    variable('m', 'mass of the counterpoise', 'weight', 1, 5000),
    variable('rho', 'density of light concrete', 'density', LIGHT_CONCRETE, LIGHT_CONCRETE),
  ],
  cite: cite(
    'common-practice',
    'a cube of light concrete; one of the same weight in steel or lead is smaller',
    'common-practice',
  ),
  of: (mass: number, density: number) => Math.cbrt(mass / density),
});

/**
 * The counterpoise of a tilting tower as the wind meets it with the tower upright: a cube of light concrete, larger than one of
 * steel or lead.
 *
 * a = (m/ρ)^(1/3)
 *
 * @returns the cube at its height; undefined where there is none
 * @source common-practice
 */
export function counterpoiseLoad(tower: Tower, trace?: Trace): Load | undefined {
  const { counterpoise, hingeHeight } = tower;
  if (!counterpoise || hingeHeight === undefined || counterpoise.mass === 0) return undefined;
  const { mass, below } = counterpoise;
  const side = evaluate(trace, counterpoiseSide, [mass, LIGHT_CONCRETE]);
  const height = hingeHeight - below;
  return {
    name: 'counterpoise',
    at: '/tower/hinge/counterpoise',
    low: height,
    high: height,
    shape: { kind: 'plate', wide: side, tall: side, deep: side },
    count: 1,
    weight: mass,
    turns: false,
    heading: 0,
    on: 'tower',
    offset: 0,
  };
}
