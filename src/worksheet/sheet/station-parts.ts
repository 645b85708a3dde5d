import type { Assessment } from '../../margins/index.ts';
import type { Section } from '../../structure/index.ts';
import { figures, inWords, listed, RATED_WORDS, SUPPORT_WORDS, sentence } from '../../words/index.ts';
import { type AnswerSheetGiven, cautionsFor, planWords } from './given.ts';
import { paragraph, plain, printed, RECKONED, small, strong, table } from './printed.ts';
import type { Block, SheetPart } from './sheet.ts';
import {
  foundationWords,
  mastWords,
  metalWords,
  ownRatedWindWords,
  ratingWords,
  sectionWords,
} from './structure-words.ts';

type FactRows = Extract<Block, { kind: 'facts' }>['rows'];

/** The tower as it stands, its clearances, and its ratings. */
export function structurePart(given: AnswerSheetGiven): SheetPart {
  const { document, assessment } = given;
  const { input } = assessment;
  const { tower } = input.station;
  const { units } = input.station;
  const long = (value: number) => inWords(value, 'length', units, RECKONED);
  const { heights, turningCircles } = document;
  const rows: FactRows = [
    { label: 'Support', words: plain(SUPPORT_WORDS[tower.support], 'given'), ...heldNote(given) },
    {
      label: 'Tower',
      words: plain(
        `top at ${printed(heights.tower)}${tower.foot === 0 ? '' : `, base at ${long(tower.foot)}`}, ${sectionsSay(input)}`,
        'given',
      ),
    },
    { label: 'Overall height', words: plain(printed(heights.overall), 'built'), note: 'above the ground' },
    {
      label: 'Mast',
      words: plain(input.station.mast ? mastWords(input.station.mast, units) : 'none given', 'given'),
      ...(heights.mast === undefined ? {} : { note: `its tip at ${printed(heights.mast)}` }),
    },
    ...(tower.hingeHeight === undefined
      ? []
      : [{ label: 'Hinge', words: plain(`at ${long(tower.hingeHeight)}${counterpoiseWords(input)}`, 'given') }]),
    ...(tower.nestedTop === undefined
      ? []
      : [{ label: 'Lowered', words: plain(`top at ${long(tower.nestedTop)}`, 'given') }]),
    { label: 'Footing', words: plain(foundationWords(tower.foundation, units), 'given') },
    ...turningCircles.map(({ name, height, radius }) => ({
      label: `Turning circle, ${name}`,
      words: plain(
        radius === undefined
          ? `not computed at ${printed(height)}; neither boom, elements nor reach given`
          : `radius ${printed(radius)} at ${printed(height)}`,
        'built',
      ),
    })),
    ...distanceFacts(input),
    ...(document.reactions.weight === undefined
      ? [{ label: 'Total weight', words: plain('not computed'), note: 'some weights are not given' }]
      : [
          {
            label: 'Total weight',
            words: plain(printed(document.reactions.weight)),
            note: 'tower and all loads',
          },
        ]),
  ];
  return {
    id: 'structure',
    heading: 'Structure, heights and clearances',
    blocks: [{ kind: 'facts', rows }, sectionsTable(input), ...ratingsTable(given), ...cautionsFor('structure', given)],
  };
}

function heldNote({ assessment }: AnswerSheetGiven): { readonly note?: string } {
  const { tower, units } = assessment.input.station;
  if (tower.held.length === 0) return {};
  const heights = listed(tower.held.map(({ height }) => inWords(height, 'length', units, RECKONED)));
  return { note: `at ${heights}${tower.heldGiven ? '' : ', as in its rating'}` };
}

function counterpoiseWords({ station: { tower, units } }: Assessment['input']): string {
  if (!tower.counterpoise) return '';
  const { mass, below } = tower.counterpoise;
  return `, counterpoise of ${inWords(mass, 'weight', units, RECKONED)} ${inWords(below, 'length', units, RECKONED)} below it`;
}

function sectionsSay({ station: { tower } }: Assessment['input']): string {
  const count = tower.sections.length;
  if (!tower.sectionsGiven) return `checked in ${count} lengths`;
  const slide = tower.telescopes ? ' that slide' : '';
  return `${count} ${count === 1 ? 'section' : 'sections'}${slide}`;
}

function distanceFacts({ site, station }: Assessment['input']): FactRows {
  const { distances } = site;
  const label = { powerLine: 'Power line', propertyLine: 'Property line', building: 'Building' } as const;
  return (['powerLine', 'propertyLine', 'building'] as const).map((what) => {
    const distance = distances?.[what];
    return {
      label: label[what],
      words:
        distance === undefined
          ? plain('not given, not checked')
          : plain(`${inWords(distance, 'length', station.units, RECKONED)} from the base`, 'given'),
    };
  });
}

function sectionsTable({ station: { tower, units } }: Assessment['input']): Block {
  const long = (value: number) => inWords(value, 'length', units, RECKONED);
  return table<Section>(
    'Sections of the tower, from the base up',
    [
      { head: 'section', of: ({ name }) => strong(name) },
      { head: 'from', numeric: true, of: ({ low }) => long(low) },
      { head: 'to', numeric: true, of: ({ high }) => long(high) },
      {
        head: 'shape as given',
        of: (section) =>
          plain([sectionWords(section, units), metalWords(section, units)].filter(Boolean).join('; '), 'given'),
      },
    ],
    tower.sections,
  );
}

function ratingsTable(given: AnswerSheetGiven): readonly Block[] {
  const { ratings, station } = given.assessment.input;
  const own = station.loads.flatMap(({ name, at, ratedWind }) => (ratedWind ? [{ name, at, ratedWind }] : []));
  if (ratings.length + own.length === 0) return [paragraph('No rating of any part is given.')];
  const plan = planWords(given);
  const indexOf = (at: string) => Number(at.split('/').at(-1));
  const from = (source: string | undefined) => plain(source ?? 'source not given', 'given');
  return [
    {
      kind: 'table',
      caption: 'Manufacturers’ ratings, as entered',
      columns: [{ head: 'of' }, { head: 'states' }, { head: 'wind' }, { head: 'source' }],
      rows: [
        ...ratings.map((rating) => {
          const { states, wind } = ratingWords(rating, station.units);
          return [
            strong(RATED_WORDS[rating.of]),
            plain(states, 'given'),
            plain(wind, 'wind'),
            from(plan.ratings?.[indexOf(rating.at)]?.source),
          ];
        }),
        ...own.map(({ name, at, ratedWind }) => [
          strong(name),
          plain('rated wind', 'given'),
          plain(ownRatedWindWords(ratedWind, station.units), 'wind'),
          from(plan.loads?.[indexOf(at)]?.source),
        ]),
      ],
    },
  ];
}

/** Everything the wind touches. */
export function windLoadsPart(given: AnswerSheetGiven): SheetPart {
  const { windLoads, reactions, design } = given.document;
  const { units, rows, total, heading, direction } = windLoads;
  const number = (value: number) => figures(value, RECKONED);
  const blank = plain('');
  return {
    id: 'wind-loads',
    heading: 'Wind loads',
    blocks: [
      {
        ...table<(typeof rows)[number]>(
          'Wind loads by item, allowable level',
          [
            { head: 'item', of: ({ name }) => strong(name) },
            { head: 'from', unit: units.height, numeric: true, of: ({ low }) => number(low) },
            { head: 'to', unit: units.height, numeric: true, of: ({ high }) => number(high) },
            { head: 'effective area, front', unit: units.area, numeric: true, of: ({ front }) => number(front) },
            { head: 'effective area, side', unit: units.area, numeric: true, of: ({ side }) => number(side) },
            { head: 'coefficient', numeric: true, of: ({ coefficient }) => figures(coefficient) },
            { head: 'area to the wind', unit: units.area, numeric: true, of: ({ facing }) => number(facing) },
            { head: 'pressure', unit: units.pressure, numeric: true, voice: 'wind', of: (row) => number(row.pressure) },
            { head: 'gust effect', numeric: true, of: ({ gustEffect }) => figures(gustEffect) },
            { head: 'force', unit: units.force, numeric: true, voice: 'wind', of: ({ force }) => number(force) },
            { head: 'moment at base', unit: units.moment, numeric: true, of: (row) => number(row.momentAtBase) },
            { head: 'moment at top', unit: units.moment, numeric: true, of: (row) => number(row.momentAtTop) },
          ],
          rows,
        ),
        totals: [
          [
            strong('total'),
            ...Array.from({ length: 8 }, () => blank),
            { text: number(total.force), voice: 'wind', strong: true },
            strong(number(total.momentAtBase)),
            strong(number(total.momentAtTop)),
          ],
        ],
      },
      small(
        [
          `Force = ${figures(design.level)} × pressure × gust effect${design.directionFactorInForce === 1 ? '' : ` × direction factor ${figures(design.directionFactorInForce)}`} × area to the wind.`,
          headingSays(heading),
          ...given.assessment.input.station.cables.flatMap(({ name, count, laid, inRows }) =>
            laid === 'ladder' && inRows
              ? [
                  `${sentence(name)}: ${inRows.rows} rows of ${Math.ceil(count / inRows.rows)}, on the out-to-out width with 1.5 or singly, whichever is less.`,
                ]
              : [],
          ),
          ...(direction === undefined
            ? []
            : [
                `The wind is on ${direction === 'face' ? 'a face' : 'a corner'} of the tower, which gives the largest moment at its base. Where the other direction governs a check of the tower, its figures differ.`,
              ]),
          ...(reactions.supportedAbove ? ['Moments are computed as a cantilever fixed at the base.'] : []),
        ]
          .filter((each) => each !== '')
          .join(' '),
      ),
      ...cautionsFor('wind-loads', given),
    ],
  };
}

function headingSays({ fixed, turning }: AnswerSheetGiven['document']['windLoads']['heading']): string {
  const said = [
    ...(fixed === undefined
      ? []
      : [
          `the wind from ${printed(fixed)} or ${printed({ value: fixed.value + 180, unit: fixed.unit })} clockwise from north`,
        ]),
    ...(turning === undefined ? [] : [`rotating loads at ${printed(turning)} to the wind`]),
  ];
  return said.length === 0 ? '' : `At the worst heading: ${listed(said)}.`;
}
