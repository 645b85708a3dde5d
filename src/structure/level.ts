import type { Section, Station } from './station.ts';

/**
 * A height at which the tower is looked at, just below it. Between the mast's foot and its bearing the tower carries the
 * couple, `couple`; above the bearing nothing of the mast, `clear`; below its foot everything, `plain`.
 */
export interface Level {
  readonly z: number;
  readonly zone: 'clear' | 'couple' | 'plain';
}

/** Spacing of extra levels inside a section that is not known to be uniform [m]. @source derived */
const EXTRA_SPACING = 1;

/**
 * The levels of a station, from the top down: foot, hinge, every section joint, every load and line end on the tower,
 * bearing and mast foot, and closer ones inside sections not known to be uniform.
 *
 * @param further heights at which it is looked at besides [m]
 */
export function levelsOf(station: Station, further: readonly number[] = []): readonly Level[] {
  const { tower, mast } = station;
  const heights = new Set<number>([tower.foot, tower.top]);
  const add = (z: number | undefined) => {
    if (z !== undefined && z > tower.foot && z < tower.top) heights.add(z);
  };
  add(tower.hingeHeight);
  for (const z of further) add(z);
  for (const section of tower.sections) {
    add(section.low);
    add(section.high);
    if (!section.uniform) for (const z of inside(section)) add(z);
  }
  for (const load of station.loads) {
    if (load.on === 'tower') {
      add(load.low);
      add(load.high);
    }
  }
  for (const run of station.cables) {
    add(run.low);
    add(run.high);
  }
  for (const held of tower.held) add(held.height);
  const foot = mast ? (mast.foot ?? tower.top) : undefined;
  const bearing = mast?.bearing;
  add(bearing);
  add(foot);
  const levels: Level[] = [];
  for (const z of [...heights].sort((a, b) => b - a)) {
    if (foot === undefined) levels.push({ z, zone: 'plain' });
    else if (bearing !== undefined && bearing > foot) {
      if (z > bearing) levels.push({ z, zone: 'clear' });
      else if (z >= foot) levels.push({ z, zone: 'couple' });
      if (z <= foot) levels.push({ z, zone: 'plain' });
    } else levels.push({ z, zone: z > foot ? 'clear' : 'plain' });
  }
  return levels;
}

function inside(section: Section): readonly number[] {
  const length = section.high - section.low;
  const pieces = Math.ceil(length / EXTRA_SPACING - 1e-9);
  return Array.from({ length: pieces - 1 }, (_, index) => section.low + (length * (index + 1)) / pieces);
}
