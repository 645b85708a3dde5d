import { type LevelAnswer, type LevelsAnswer, told } from '../answer/index.ts';
import { DISPLAY_UNITS, type Dimension, displayValue, type UnitSystem } from '../foundation/index.ts';
import type { DemandAndCapacity, TowerLevel } from '../margins/index.ts';

/** The levels of a tower in the reader's units. */
export function levelsDocument(levels: readonly TowerLevel[], system: UnitSystem): LevelsAnswer {
  const units = DISPLAY_UNITS[system];
  const compared = ({ demand, capacity, ratio, ratioAtBest }: DemandAndCapacity, dimension: Dimension) =>
    told<LevelAnswer['bending']>({
      demand: displayValue(demand, dimension, system),
      capacity: capacity === undefined ? undefined : displayValue(capacity, dimension, system),
      ratio,
      ratioAtBest,
    });
  return {
    units: { height: units.length.label, force: units.force.label, moment: units.moment.label },
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
