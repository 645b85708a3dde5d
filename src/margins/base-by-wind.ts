import type { WindDirection } from '../areas/index.ts';
import { nth } from '../foundation/index.ts';
import { governed } from './capacity.ts';
import type { Comparison } from './comparisons.ts';
import type { Demand, TowerModel } from './model.ts';
import { isBraced, weightMoment } from './tower-model.ts';

/** One comparison at the base of a tower, in the wind on a face or on a corner. */
export interface BaseInWind {
  readonly of: 'moment' | 'shear' | 'braces';
  readonly direction: WindDirection;
  /** Of this, moment of the weight aloft and off the axis [N·m]; 0 of a shear. */
  readonly ofWeight: number;
  /** [N or N·m] */
  readonly demand: number;
  readonly capacity: number;
  readonly ratio: number;
}

/**
 * The comparisons at the base of a tower for every direction in which the wind may meet it, what is open at its unfavourable end.
 *
 * u = demand/capacity
 *
 * @param demand of the design wind at the unfavourable end
 * @returns those of one direction together; none where it meets the tower alike from all sides
 * @source derived
 */
export function baseByWind(model: TowerModel, demand: Demand): readonly BaseInWind[] {
  const { scenarios, comparisons, levels } = model;
  const directions = [...new Set(scenarios.map(({ direction }) => direction))];
  if (directions.length < 2) return [];
  const { foot } = model.input.station.tower;
  const atBase = ({ check, level }: Comparison) => check === 'tower' && Math.abs(nth(levels, level).z - foot) < 1e-6;
  return directions.flatMap((direction) =>
    comparisons.flatMap((comparison, index): BaseInWind[] => {
      if (!atBase(comparison)) return [];
      const here = scenarios.flatMap((scenario, number) => {
        if (scenario.direction !== direction) return [];
        const asked = nth(demand.scenarios, number);
        const sum = nth(asked.wind, index) + nth(demand.dead, index);
        const { ratio, capacity } = governed(model, model.proven, index, number, 'unfavourable', sum);
        const twist = nth(asked.appurtenances.torsion, comparison.level);
        const of = isBraced(model, comparison, twist) ? ('braces' as const) : comparison.of;
        return [{ of, direction, demand: sum, capacity, ratio }];
      });
      const worst = here.reduce((most, each) => (each.ratio > most.ratio ? each : most), nth(here, 0));
      if (!Number.isFinite(worst.ratio)) return [];
      return [{ ...worst, ofWeight: comparison.of === 'moment' ? weightMoment(model, comparison) : 0 }];
    }),
  );
}
