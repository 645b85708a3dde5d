import type { DemandAndCapacity } from '../../margins/index.ts';
import type { LevelRowDocument, LevelsDocument } from '../levels-document.ts';
import { ratioFigures } from '../quantity.ts';
import type { AnswerSheetGiven } from './given.ts';
import { plain, printed, printedNumber, RECKONED, small, strong } from './printed.ts';
import type { Block, SheetPart, Words } from './sheet.ts';

const NONE = '–';

const PLACES: Readonly<Record<LevelRowDocument['place'], string>> = {
  foot: 'foot of the tower',
  joint: 'its lower joint',
  section: 'within it',
  'top-couple': 'couple of the mast',
};

/** Every level at which the tower is compared, so that an engineer sees what the others take. */
export function levelsPart({ document }: AnswerSheetGiven): SheetPart {
  return {
    id: 'levels',
    heading: 'Tower, level by level',
    blocks:
      document.levels.rows.length === 0 ? [small('Nothing of the tower is compared.')] : blocksOf(document.levels),
  };
}

function blocksOf({ units, rows }: LevelsDocument): readonly Block[] {
  const twisted = rows.some(({ torsion }) => torsion > 0);
  const braced = rows.some(({ sideways }) => sideways.of === 'braces');
  const sideways = braced ? 'in shear or braces' : 'in shear';
  const number = (value: number) => plain(printedNumber(value, RECKONED));
  const compared = ({ demand, capacity, ratio }: DemandAndCapacity): readonly Words[] => [
    number(demand),
    capacity === undefined ? plain(NONE) : number(capacity),
    ratio === undefined ? plain(NONE) : strong(ratioFigures(ratio)),
  ];
  return [
    {
      kind: 'table',
      caption: 'What is asked of the tower and what its rating shows at every level compared, from the top down',
      columns: [
        { head: 'height', numeric: true },
        { head: 'section' },
        { head: 'where' },
        ...(braced ? [{ head: 'shear', unit: units.force, numeric: true }] : []),
        ...(twisted ? [{ head: 'twist', unit: units.moment, numeric: true }] : []),
        { head: `asked ${sideways}`, unit: units.force, numeric: true },
        { head: 'shown', unit: units.force, numeric: true },
        { head: 'use', numeric: true },
        { head: 'asked in bending', unit: units.moment, numeric: true },
        { head: 'shown', unit: units.moment, numeric: true },
        { head: 'use', numeric: true },
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
        'Allowable level, each at the heading and the reading that are worst for it. Within a uniform section its lower end speaks for all of it.',
        ...(braced
          ? [
              'In the braces: shear, less what sloping legs carry of it, with the twist spread over the faces; it may be more than the shear.',
            ]
          : []),
        ...(rows.some(({ byWindRatio }) => byWindRatio)
          ? ['Where the wind on the tower itself is not known, the use is no less than your wind over the rated one.']
          : []),
      ].join(' '),
    ),
  ];
}
