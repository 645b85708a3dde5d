import type { LevelAnswer, LevelsAnswer } from '../../answer/index.ts';
import { figures, ratioFigures } from '../../words/index.ts';
import type { AnswerSheetGiven } from './given.ts';
import { type ColumnOf, orNone, printed, RECKONED, small, strong, table } from './printed.ts';
import type { Block, SheetPart } from './sheet.ts';

const PLACES: Readonly<Record<LevelAnswer['place'], string>> = {
  base: 'base of the tower',
  joint: 'its lower joint',
  section: 'within it',
  'top-couple': 'couple of the mast at the top',
};

/** Every level at which the tower is compared, so that an engineer sees the ratio of the others. */
export function levelsPart({ document }: AnswerSheetGiven): SheetPart {
  return {
    id: 'levels',
    heading: 'Tower, level by level',
    blocks:
      document.levels.rows.length === 0 ? [small('No level of the tower is compared.')] : blocksOf(document.levels),
  };
}

function blocksOf({ units, rows }: LevelsAnswer): readonly Block[] {
  const twisted = rows.some(({ torsion }) => torsion > 0);
  const braced = rows.some(({ sideways }) => sideways.of === 'braces');
  const sideways = braced ? 'shear or braces' : 'shear';
  const number = (value: number) => figures(value, RECKONED);
  type Compared = 'sideways' | 'bending';
  const compared = (of: Compared, head: string, unit: string): readonly ColumnOf<LevelAnswer>[] => [
    { head, unit, numeric: true, of: (row) => number(row[of].demand) },
    { head: 'capacity', unit, numeric: true, of: (row) => orNone(row[of].capacity, number) },
    { head: 'ratio', numeric: true, of: (row) => orNone(row[of].ratio, (ratio) => strong(ratioFigures(ratio))) },
  ];
  const shear: ColumnOf<LevelAnswer> = {
    head: 'shear',
    unit: units.force,
    numeric: true,
    of: (row) => number(row.shear),
  };
  const twist: ColumnOf<LevelAnswer> = {
    head: 'twist',
    unit: units.moment,
    numeric: true,
    of: (row) => number(row.torsion),
  };
  return [
    table<LevelAnswer>(
      'Demand and rated capacity at each level checked, from the top down',
      [
        { head: 'height', numeric: true, of: ({ height }) => printed({ value: height, unit: units.height }, RECKONED) },
        { head: 'section', of: ({ section }) => section },
        { head: 'where', of: ({ place }) => PLACES[place] },
        ...(braced ? [shear] : []),
        ...(twisted ? [twist] : []),
        ...compared('sideways', `demand, ${sideways}`, units.force),
        ...compared('bending', 'demand, bending', units.moment),
      ],
      rows,
    ),
    small(
      [
        'Allowable level, each at its worst heading and reading. The lower end of a uniform section governs the whole section.',
        ...(braced
          ? [
              'In the braces: shear, less the part that sloping legs take, plus the twist on each face. It can exceed the shear.',
            ]
          : []),
        ...(rows.some(({ byWindRatio }) => byWindRatio)
          ? ['Where the wind on the tower itself is unknown, the ratio is at least site wind over rated wind.']
          : []),
      ].join(' '),
    ),
  ];
}
