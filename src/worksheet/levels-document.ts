import { DISPLAY_UNITS, type Dimension, displayValue, type UnitSystem } from '../foundation/index.ts';
import type { DemandAndCapacity, TowerLevel } from '../margins/index.ts';

/** A level in the reader's units. */
export type LevelRowDocument = TowerLevel;

/** Every level at which the tower is compared, from the top down. */
export interface LevelsDocument {
  readonly units: Readonly<Record<'height' | 'force' | 'moment', string>>;
  readonly rows: readonly LevelRowDocument[];
}

/** The levels of a tower in the reader's units. */
export function levelsDocument(levels: readonly TowerLevel[], system: UnitSystem): LevelsDocument {
  const compared = (
    { demand, capacity, ratio, ratioAtBest }: DemandAndCapacity,
    dimension: Dimension,
  ): DemandAndCapacity => ({
    demand: displayValue(demand, dimension, system),
    ...(capacity === undefined ? {} : { capacity: displayValue(capacity, dimension, system) }),
    ...(ratio === undefined ? {} : { ratio }),
    ...(ratioAtBest === undefined ? {} : { ratioAtBest }),
  });
  return {
    units: {
      height: DISPLAY_UNITS[system].length.label,
      force: DISPLAY_UNITS[system].force.label,
      moment: DISPLAY_UNITS[system].moment.label,
    },
    rows: levels.map(({ height, section, place, shear, torsion, sideways, bending, byWindRatio }) => ({
      height: displayValue(height, 'length', system),
      section,
      place,
      shear: displayValue(shear, 'force', system),
      torsion: displayValue(torsion, 'moment', system),
      sideways: { of: sideways.of, ...compared(sideways, 'force') },
      bending: compared(bending, 'moment'),
      byWindRatio,
    })),
  };
}
