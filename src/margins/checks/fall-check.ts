import type { Trace } from '../../foundation/index.ts';
import { type FallComparison, fallDistances } from '../../structure/index.ts';
import { halvesOf } from '../reach.ts';
import type { TowerModel } from '../tower-model.ts';
import type { Check } from './check.ts';

/**
 * Whether everything falls clear of lines and border, where the plan gives their distances. A building is no limit but a
 * caution: most towers stand beside one.
 *
 * h_tip + half an element or boom + 10 ft against the distance
 *
 * @param model the tower [-]
 * @returns a check for each distance [-]
 * @source common-practice
 */
export function fallsCompared(model: TowerModel): readonly Check[] {
  return fallComparisons(model)
    .filter(({ to }) => to !== 'building')
    .map(checkOf);
}

/**
 * Whether what falls may reach each of the places whose distance the plan gives.
 *
 * d_w = h_tip + half an element or boom + 10 ft
 *
 * @param model the tower [-]
 * @param trace the working, or nothing [-]
 * @returns a comparison for each [-]
 * @source common-practice
 */
export function fallComparisons(model: TowerModel, trace?: Trace): readonly FallComparison[] {
  const { station, site } = model.input;
  const { powerLine, propertyLine, building } = site.distances ?? {};
  const tip = station.loads.reduce((most, load) => Math.max(most, load.high), station.mast?.tip ?? station.tower.top);
  const half = Math.max(
    0,
    ...station.loads.map((load) => {
      const { halfBoom, halfElement } = halvesOf(load);
      return Math.max(halfBoom, halfElement);
    }),
  );
  const targets = [
    { to: 'power-line', distance: powerLine },
    { to: 'property-line', distance: propertyLine },
    { to: 'building', distance: building },
  ] as const;
  const given = targets.flatMap(({ to, distance }) => (distance === undefined ? [] : [{ to, distance }]));
  return fallDistances(tip, half, given, trace);
}

function checkOf(comparison: FallComparison): Check {
  const { ratio } = comparison;
  // A rule of thumb for keeping clear has no margin to thin: it is met or not.
  return {
    id: `fall:${comparison.to}`,
    kind: 'fall',
    towards: comparison.to,
    verdict: ratio > 1 ? 'over' : 'within',
    needs: [],
    result: {
      ratio,
      of: 'distance',
      demand: comparison.wanted,
      capacity: comparison.distance,
      ratioRange: [ratio, ratio],
      headings: {},
    },
  };
}
