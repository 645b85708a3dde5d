import { type FallCheck, fallDistances, halfElementFrom } from '../../structure/index.ts';
import type { TowerModel } from '../tower-model.ts';
import type { Link } from './link.ts';

/**
 * Whether everything falls clear of lines, border and house, where the plan gives their distances.
 *
 * h_tip + half an element + 10 ft against the distance
 *
 * @param model the tower [-]
 * @returns a link for each distance [-]
 * @source common-practice
 */
export function fallLinks(model: TowerModel): readonly Link[] {
  const { station, site } = model.inquiry;
  const { distances } = site;
  if (!distances) return [];
  const tip = station.loads.reduce((most, load) => Math.max(most, load.high), station.mast?.tip ?? station.tower.top);
  const half = Math.max(
    0,
    ...station.loads.map((load) => {
      const { reach, boom = 0 } = load;
      if (reach !== undefined) return reach >= boom / 2 ? halfElementFrom(reach, boom) : reach;
      return longestAcross(load.shape) / 2;
    }),
  );
  const targets = [
    { to: 'power-line', distance: distances.powerLine },
    { to: 'property-line', distance: distances.propertyLine },
  ] as const;
  const given = targets.flatMap(({ to, distance }) => (distance === undefined ? [] : [{ to, distance }]));
  return fallDistances(tip, half, given).map((check) => linkOf(check));
}

function longestAcross(shape: TowerModel['inquiry']['station']['loads'][number]['shape']): number {
  if (shape.kind === 'tube') return shape.along === 'upright' ? 0 : shape.length;
  if (shape.kind !== 'tubes') return 0;
  return Math.max(
    0,
    ...shape.rows.map((row) =>
      row.along === 'upright' ? 0 : row.pieces.reduce((sum, piece) => sum + piece.length, 0),
    ),
  );
}

function linkOf(check: FallCheck): Link {
  const { use } = check;
  // A rule of thumb for keeping clear has no margin to thin: it is met or not.
  return {
    id: `fall:${check.to}`,
    kind: 'fall',
    verdict: use > 1 ? 'over' : 'within',
    needs: [],
    result: {
      use,
      of: 'distance',
      demand: check.wanted,
      capacity: check.distance,
      useRange: [use, use],
      headings: {},
    },
  };
}
