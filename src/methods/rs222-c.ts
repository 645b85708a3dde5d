import { constantLaw, latticeLawC, poleLawC, ROUND_SHARE_C } from '../areas/index.ts';
import { cite, defineFormula, evaluate, type UnitSystem, variable } from '../foundation/index.ts';
import {
  EXPOSURES,
  FASTEST_MILE_OFFSET,
  FLAT_PLATE_CONSTANT,
  flatPlatePressureC,
  nominalFromFastestMile,
  PRESSURE_CONSTANT,
} from '../wind/index.ts';
import { lawOf, type MethodRule } from './common-laws.ts';
import type { Law, Method, Wind, WindConditions } from './method.ts';

const LEVEL = 0.75;

export const dragAreaShareC = defineFormula({
  id: 'drag-area-rs222-c',
  title: 'Least pressure of RS-222-C on a stated drag area, over its flat-plate pressure',
  symbol: 'C_A',
  unit: 'one',
  expression: '0.8 * c / c_C',
  variables: [
    variable('c', 'half the density of air', 'pressure-constant', 0.6, 0.62),
    variable('c_C', '0.004 psf/mph²', 'pressure-constant', 0.95, 0.96),
  ],
  cite: cite(
    'derived',
    'a drag area holds its coefficients already; the least its faces and two thirds give',
    'derived',
  ),
  of: (air: number, flatPlate: number) => (0.8 * air) / flatPlate,
});

function wind(conditions: WindConditions): Wind {
  return {
    method: 'rs222-c',
    conditions,
    level: conditions.actual ? 1 : LEVEL,
    directionFactor: 1,
    forceDirectionFactor: 1,
    importance: 1,
    elevationFactor: 1,
    pressure: (_z, trace) => evaluate(trace, flatPlatePressureC, [FLAT_PLATE_CONSTANT, conditions.speed]),
    pressurePerSpeedSquared: () => FLAT_PLATE_CONSTANT,
    exposureCoefficient: () => 1,
    topographicFactor: () => 1,
    gustVaries: false,
    gustEffect: () => 1,
    flowPerSpeed: () => 0,
    flow: () => 0,
    law: (rule) => (rule.of === 'drag-area' ? dragAreaLaw(conditions.units) : lawOf(rule, conditions.units, law)),
    leastPressure: 0,
  };
}

function law(rule: MethodRule): Law {
  switch (rule.of) {
    case 'round':
      return { law: constantLaw(ROUND_SHARE_C) };
    case 'flat':
      return { law: constantLaw(1) };
    case 'lattice':
      return { law: latticeLawC(rule.face) };
    case 'pole':
      return { law: poleLawC() };
  }
}

function dragAreaLaw(units: UnitSystem): Law {
  const inputs: [number, number] = [PRESSURE_CONSTANT[units], FLAT_PLATE_CONSTANT];
  return { law: constantLaw(dragAreaShareC.of(...inputs), (trace) => evaluate(trace, dragAreaShareC, inputs)) };
}

/** EIA RS-222-C, for ratings only: one pressure at every height, no gust factor. */
export const rs222C: Method = {
  id: 'rs222-c',
  title: 'EIA RS-222-C',
  basis: 'fastest-mile',
  level: LEVEL,
  levelCite: cite('rs222-c', 'stresses raised by one third for wind', 'memory'),
  nominal: 1,
  since: 1976,
  known: 'memory',
  exposureMatters: false,
  grounds: EXPOSURES,
  classMatters: false,
  slender: { round: ROUND_SHARE_C, flat: 1, compactFlat: 1 },
  wind,
  actualGust: (speed, trace) => evaluate(trace, nominalFromFastestMile, [speed, FASTEST_MILE_OFFSET]),
};
