import { type Trace, under } from '../../foundation/index.ts';
import { type FallComparison, fallDistances } from '../../structure/index.ts';
import type { TowerModel } from '../model.ts';
import { halvesOf } from '../reach.ts';
import { type Check, settled } from './check.ts';
import type { CheckKind } from './check-kind.ts';

/** Whether everything falls clear of lines and border. A building is no limit but a caution: most towers stand beside one. */
export const fallKind: CheckKind<'fall'> = {
  kind: 'fall',
  part: 'fall',
  assess: ({ model }) =>
    fallComparisons(model)
      .filter(({ to }) => to !== 'building')
      .map(checkOf),
  explain: ({ model }, _, trace) => {
    under(trace, 'fall distance', () => fallComparisons(model, trace));
  },
  loadedBy: 'fall',
  room: undefined,
};

/**
 * Whether what falls may reach each of the places whose distance the plan gives.
 *
 * d_w = h_tip + half an element or boom + 10 ft
 *
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

/** Where the plan gives each distance. */
const PLACES = {
  'power-line': '/site/distances/powerLine',
  'property-line': '/site/distances/propertyLine',
  building: '/site/distances/building',
} as const satisfies Record<FallComparison['to'], string>;

function checkOf({ to, ratio, wanted, distance }: FallComparison): Check {
  const of = { id: `fall:${to}`, kind: 'fall', at: PLACES[to], towards: to } as const;
  const result = settled({ ratio, of: 'distance', demand: wanted, capacity: distance });
  // A rule of thumb for keeping clear has no margin to wear down: it is met or not.
  return { ...of, verdict: ratio > 1 ? 'over' : 'within', needs: [], result };
}
