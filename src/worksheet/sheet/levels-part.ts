import type { LevelAnswer, LevelsAnswer } from '../../answer/index.ts';
import { ratioFigures } from '../../words/index.ts';
import type { AnswerSheetGiven } from './given.ts';
import { plain, printed, printedNumber, RECKONED, small, strong } from './printed.ts';
import type { Block, SheetPart, Words } from './sheet.ts';

const NONE = '–';

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
  const number = (value: number) => plain(printedNumber(value, RECKONED));
  const compared = ({ demand, capacity, ratio }: LevelAnswer['bending']): readonly Words[] => [
    number(demand),
    capacity === undefined ? plain(NONE) : number(capacity),
    ratio === undefined ? plain(NONE) : strong(ratioFigures(ratio)),
  ];
  return [
    {
      kind: 'table',
      caption: 'Demand and rated capacity at each level checked, from the top down',
      columns: [
        { head: 'height', numeric: true },
        { head: 'section' },
        { head: 'where' },
        ...(braced ? [{ head: 'shear', unit: units.force, numeric: true }] : []),
        ...(twisted ? [{ head: 'twist', unit: units.moment, numeric: true }] : []),
        { head: `demand, ${sideways}`, unit: units.force, numeric: true },
        { head: 'capacity', unit: units.force, numeric: true },
        { head: 'ratio', numeric: true },
        { head: 'demand, bending', unit: units.moment, numeric: true },
        { head: 'capacity', unit: units.moment, numeric: true },
        { head: 'ratio', numeric: true },
      ],
      rows: rows.map((row) => [
        plain(printed({ value: row.height, unit: units.height }, RECKONED)),
        plain(row.section),
        plain(PLACES[row.place]),
        ...(braced ? [number(row.shear)] : []),
        ...(twisted ? [number(row.torsion)] : []),
        ...compared(row.sideways),
        ...compared(row.bending),
      ]),
    },
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
