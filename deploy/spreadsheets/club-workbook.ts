import writeXlsxFile, { type CellObject, type SheetData } from 'write-excel-file/node';
import { STATIONS } from './club-stations.ts';
import { withFixedClock } from './fixed-clock.ts';

const INK = '#2b2620';
const PALE = '#f3eee2';
const LINE = '#b9ae98';

/** What all formulas of the workbook go by stands once, on its first sheet. */
const SERVICE = 'Service!$B$3';
const UNITS = 'Service!$B$4';
const SIGN = 'Service!$B$5';
const SIGN_WORD = 'Service!$B$6';

const TOP = { alignVertical: 'top' } as const;

/** Rows do not grow by formulas that have no value yet: those that wrap have their height given [pt]. */
const HEAD_HEIGHT = { stations: 40, tables: 28 } as const;
const STATION_HEIGHT = 54;

const text = (value: string, style: Partial<CellObject> = {}): CellObject => ({ value, type: String, ...style });
const formula = (value: string, style: Partial<CellObject> = {}): CellObject => ({ value, type: 'Formula', ...style });
/** What a user may write into; an empty one is an answer too. */
const given = (value: string | number | undefined): CellObject => ({
  ...(value === undefined ? {} : { value, type: typeof value === 'number' ? Number : String }),
  backgroundColor: PALE,
  align: 'left',
  ...TOP,
});

const head = (cell: CellObject, sheet: keyof typeof HEAD_HEIGHT): CellObject => ({
  ...cell,
  fontWeight: 'bold',
  wrap: true,
  alignVertical: 'bottom',
  height: HEAD_HEIGHT[sheet],
  bottomBorderStyle: 'thin',
  bottomBorderColor: LINE,
});
const parameterName = (name: string): CellObject => text(name, { textColor: '#7a6f5c', fontStyle: 'italic' });

/** 0 is A, 26 is AA. */
function columnName(index: number): string {
  const last = String.fromCharCode(65 + (index % 26));
  return index < 26 ? last : `${columnName(Math.floor(index / 26) - 1)}${last}`;
}

/** A head, its unit after the setting. */
function headOf(says: string, sheet: keyof typeof HEAD_HEIGHT, units?: readonly [us: string, si: string]): CellObject {
  if (units === undefined) return head(text(says), sheet);
  return head(formula(`"${says}, "&IF(${UNITS}="si","${units[1]}","${units[0]}")`), sheet);
}

const asked = (cell: string, query: string, rest = '') =>
  `_xlfn.WEBSERVICE(${SERVICE}&"/v1/cells/${cell}?units="&${UNITS}&"&decimal="&${SIGN_WORD}&${query}${rest})`;

/** The part of an address that one cell gives; nothing where the cell is empty, which ENCODEURL may not be given. */
const queryPart = (column: string, namesRow: number, row: number) =>
  `IF(${column}${row}="","","&"&${column}$${namesRow}&"="&_xlfn.ENCODEURL(${column}${row}))`;

/** An answer as a number where it is one; words stay words, and a failed call stays a fault. */
const numberIn = (answer: string) => `IFERROR(_xlfn.NUMBERVALUE(${answer},${SIGN},IF(${SIGN}=",",".",",")),${answer})`;

const LENGTH = ['ft', 'm'] as const;
const ACROSS = ['in', 'mm'] as const;
const AREA = ['ft²', 'm²'] as const;
const SPEED = ['mph', 'm/s'] as const;
const FORCE = ['lbf', 'N'] as const;

interface Field {
  readonly name: string;
  readonly says: string;
  readonly units?: readonly [us: string, si: string];
  readonly width?: number;
}

const STATION_FIELDS: readonly Field[] = [
  { name: 'method', says: 'Standard for the site' },
  { name: 'speed', says: 'Design wind', units: SPEED },
  { name: 'exposure', says: 'Ground upwind' },
  { name: 'support', says: 'Support' },
  { name: 'top', says: 'Top of the tower', units: LENGTH, width: 11 },
  { name: 'faces', says: 'Faces' },
  { name: 'width', says: 'Width of a face', units: ACROSS },
  { name: 'members', says: 'Members' },
  { name: 'area', says: 'Area of the load', units: AREA },
  { name: 'areaKind', says: 'Type of that area' },
  { name: 'above', says: 'Above the top', units: LENGTH },
  { name: 'cables', says: 'Lines' },
  { name: 'cableDiameter', says: 'Across one line', units: ACROSS, width: 14 },
  { name: 'ratedArea', says: 'Rated area', units: AREA },
  { name: 'ratedAreaKind', says: 'Type of that area', width: 14 },
  { name: 'ratedTop', says: 'Rated for a top at', units: LENGTH, width: 12 },
  { name: 'ratedSpeed', says: 'Rated wind', units: SPEED },
  { name: 'ratedBasis', says: 'Type of that speed', width: 14 },
  { name: 'ratedMethod', says: 'Rated by', width: 12 },
  { name: 'ratedExposure', says: 'Rated for ground', width: 13 },
  { name: 'ratedRiskCategory', says: 'Rated for class', width: 16 },
];

const STATION_ANSWERS = [
  { give: 'ratio', says: 'Ratio of the tower', format: '0.000' },
  { give: 'verdict', says: 'Verdict' },
  { give: 'holdsTo', says: 'Holds to, actual gust', units: SPEED, format: '0.0' },
  { give: 'roomLeft', says: 'Room left at the top', units: AREA, format: '0.00' },
  { give: 'says', says: 'In words' },
] as const;

const NAMES_ROW = 2;
const FIRST_STATION_ROW = 4;

const title = (says: string): CellObject =>
  text(says, { fontWeight: 'bold', fontSize: 16, height: 26, textColor: INK });

function serviceSheet(service: string): SheetData {
  const words = [
    'Nothing shows on the other sheets until this program may fetch outside data: allow it when asked.',
    'An answer that begins with a question mark says what does not fit. "open" says that data is missing or that no rating covers the load.',
    'An empty cell is an answer too: it means not known, never a guess.',
    'All stations are invented: put your own in their place. Copy a row to add one.',
    'A station here is its tower alone. What each answer leaves out, the mast, the footing and the cautions stand in the whole answer of the service.',
    'This compares the numbers entered with the ratings entered; the local building code and a licensed engineer decide.',
  ];
  return [
    [title('Club stations')],
    [],
    [text('Service'), given(service), text('Its address, no slash at the end.')],
    [text('Units'), given('us'), text('us or si. Every number of the other sheets must follow.')],
    [text('Decimal sign'), formula('MID(0.5&"",2,1)'), text('Of this program; it finds it by itself.')],
    [text('sent as'), formula('IF(B5=",","comma","point")')],
    [],
    ...words.map((says) => [text(says)]),
  ];
}

function stationsSheet(): SheetData {
  const firstField = 1 + STATION_ANSWERS.length;
  const query = firstField + STATION_FIELDS.length;
  const field = (index: number) => columnName(firstField + index);
  const answered = (index: number) => columnName(query + 1 + index);

  const rows: SheetData = [
    [title('Stations')],
    [
      parameterName('name in the address'),
      ...STATION_ANSWERS.map(({ give }) => parameterName(give)),
      ...STATION_FIELDS.map(({ name }) => parameterName(name)),
    ],
    [
      headOf('Station', 'stations'),
      ...STATION_ANSWERS.map((answer) => headOf(answer.says, 'stations', 'units' in answer ? answer.units : undefined)),
      ...STATION_FIELDS.map(({ says, units }) => headOf(says, 'stations', units)),
      headOf('What is asked', 'stations'),
      ...STATION_ANSWERS.map(({ give }) => headOf(`${give}, as answered`, 'stations')),
    ],
  ];
  for (const [index, station] of STATIONS.entries()) {
    const row = FIRST_STATION_ROW + index;
    rows.push([
      given(station.name),
      ...STATION_ANSWERS.map((answer, at) => {
        const cell = `${answered(at)}${row}`;
        return 'format' in answer
          ? formula(numberIn(cell), {
              format: answer.format,
              align: 'left',
              wrap: true,
              height: STATION_HEIGHT,
              ...TOP,
            })
          : formula(cell, { wrap: true, ...TOP });
      }),
      ...STATION_FIELDS.map(({ name }) => given(station[name])),
      formula(STATION_FIELDS.map((_, at) => queryPart(field(at), NAMES_ROW, row)).join('&')),
      ...STATION_ANSWERS.map(({ give }) =>
        formula(asked('station', `$${columnName(query)}${row}`, `&"&give=${give}"`)),
      ),
    ]);
  }
  return rows;
}

interface Table {
  readonly cell: string;
  readonly title: string;
  readonly fields: readonly Field[];
  readonly gives: string;
  readonly units?: readonly [us: string, si: string];
  readonly rows: readonly (readonly (string | number)[])[];
}

const SITE_FIELDS: readonly Field[] = [
  { name: 'method', says: 'Standard' },
  { name: 'exposure', says: 'Ground upwind' },
  { name: 'speed', says: 'Design wind', units: SPEED },
];
const RATING_FIELDS: readonly Field[] = [
  { name: 'area', says: 'Rated area', units: AREA },
  { name: 'speed', says: 'Rated wind', units: SPEED },
  { name: 'method', says: 'Rated by' },
  { name: 'exposure', says: 'For ground' },
  { name: 'riskCategory', says: 'For class' },
  { name: 'height', says: 'At height', units: LENGTH },
];

/** One number each; the columns are the parameters of its address. */
export const TABLES: readonly Table[] = [
  {
    cell: 'pressure',
    title: 'Pressure of the wind by height',
    fields: [...SITE_FIELDS, { name: 'height', says: 'Height', units: LENGTH }],
    gives: 'Pressure',
    units: ['psf', 'Pa'],
    rows: [15, 30, 40, 50, 60, 80, 100].map((height) => ['asce7-16', 'C', 105, height]),
  },
  {
    cell: 'force',
    title: 'Force on an area at a height, allowable level',
    fields: [
      ...SITE_FIELDS,
      { name: 'height', says: 'Height', units: LENGTH },
      { name: 'area', says: 'Effective area', units: AREA },
    ],
    gives: 'Force',
    units: FORCE,
    rows: [['asce7-16', 'C', 105, 50, 10]],
  },
  {
    cell: 'mast-moment',
    title: 'Bending a mast of one tube is allowed',
    fields: [
      { name: 'outside', says: 'Outside', units: ACROSS },
      { name: 'wall', says: 'Wall', units: ACROSS },
      { name: 'yield', says: 'Yield', units: ['ksi', 'MPa'] },
    ],
    gives: 'Moment',
    units: ['lbf·ft', 'N·m'],
    rows: [
      [2, 0.25, 46],
      [2, 0.12, 46],
      [1.9, 0.145, 35],
    ],
  },
  {
    cell: 'bundle-width',
    title: 'Width of a round bundle of alike lines',
    fields: [
      { name: 'count', says: 'Lines' },
      { name: 'diameter', says: 'Across one', units: ACROSS },
    ],
    gives: 'Width',
    units: ACROSS,
    rows: [
      [3, 0.405],
      [5, 0.405],
    ],
  },
  {
    cell: 'speed',
    title: 'A wind speed in another kind of speed',
    fields: [
      { name: 'speed', says: 'Speed', units: SPEED },
      { name: 'from', says: 'Which it is' },
      { name: 'to', says: 'Which is wanted' },
    ],
    gives: 'Speed',
    units: SPEED,
    rows: [
      [85, 'gust3-nominal', 'fastest-mile'],
      [105, 'gust3-strength', 'gust3-nominal'],
    ],
  },
  {
    cell: 'rating',
    title: 'An area rating as a force, allowable level',
    fields: RATING_FIELDS,
    gives: 'Force',
    units: FORCE,
    rows: [[18, 100, 'tia222-g', 'B', 'II', 48]],
  },
  {
    cell: 'allowed-area',
    title: 'An area rating as an area of equal force in another wind',
    fields: [
      ...RATING_FIELDS,
      { name: 'toMethod', says: 'There by' },
      { name: 'toSpeed', says: 'Wind there', units: SPEED },
      { name: 'toExposure', says: 'Ground there' },
    ],
    gives: 'Area',
    units: AREA,
    rows: [[18, 100, 'tia222-g', 'B', 'II', 48, 'asce7-16', 105, 'C']],
  },
  {
    cell: 'chance',
    title: 'Chance of a wind, by the winds a chart gives for years',
    fields: [
      { name: 'speed', says: 'Speed', units: SPEED },
      { name: 'years', says: 'In years' },
      { name: 'returns', says: 'Years and speeds' },
    ],
    gives: 'Chance, a share of 1',
    rows: [[90, 1, '10:76;50:92;100:98']],
  },
  {
    cell: 'lower-at',
    title: 'Forecast gust at which to lower',
    fields: [
      { name: 'holdsTo', says: 'Holds to, actual gust', units: SPEED },
      { name: 'margin', says: 'Margin wanted' },
      { name: 'forecast', says: 'Forecast may err' },
    ],
    gives: 'Lower at',
    units: SPEED,
    rows: [[89, 0.2, 0.1]],
  },
  {
    cell: 'pressure',
    title: 'What a fault looks like: words that begin with a question mark',
    fields: [...SITE_FIELDS, { name: 'height', says: 'Height', units: LENGTH }],
    gives: 'Pressure',
    units: ['psf', 'Pa'],
    rows: [['asce7-16', 'C', 1200, 50]],
  },
];

/** Where each answer of the second sheet stands. */
export interface TableCell {
  readonly address: string;
  readonly table: Table;
  readonly values: readonly (string | number)[];
}

function tablesSheet(): { readonly data: SheetData; readonly cells: readonly TableCell[] } {
  const data: SheetData = [
    [title('Single numbers')],
    [
      text(
        'Each answer stands in column A, beside what is asked; service, units and decimal sign are those of the first sheet.',
      ),
    ],
  ];
  const cells: TableCell[] = [];
  for (const table of TABLES) {
    data.push([], [text(table.title, { fontWeight: 'bold' })]);
    data.push([parameterName(table.cell), ...table.fields.map(({ name }) => parameterName(name))]);
    const namesRow = data.length;
    data.push([
      headOf(table.gives, 'tables', table.units),
      ...table.fields.map(({ says, units }) => headOf(says, 'tables', units)),
    ]);
    for (const values of table.rows) {
      const row = data.length + 1;
      const query = table.fields.map((_, at) => queryPart(columnName(at + 1), namesRow, row)).join('&');
      data.push([formula(numberIn(asked(table.cell, query)), { align: 'left' }), ...values.map(given)]);
      cells.push({ address: `A${row}`, table, values });
    }
  }
  return { data, cells };
}

/** The answers of the second sheet, by their place. */
export const tableCells = (): readonly TableCell[] => tablesSheet().cells;

/** Places of a station's answers in the first sheet, by what they give. */
export function stationCells(index: number): Readonly<Record<(typeof STATION_ANSWERS)[number]['give'], string>> {
  const places = STATION_ANSWERS.map(({ give }, at) => [give, `${columnName(at + 1)}${FIRST_STATION_ROW + index}`]);
  return Object.fromEntries(places) as Record<(typeof STATION_ANSWERS)[number]['give'], string>;
}

/**
 * The sample workbook (.xlsx): formulas without values, which the program asks for when it is opened. The address is
 * that where the service listens when nobody says otherwise.
 */
export async function clubWorkbook(service = 'http://127.0.0.1:8080'): Promise<Uint8Array> {
  const written = writeXlsxFile(
    [
      { sheet: 'Service', data: serviceSheet(service), columns: [{ width: 16 }, { width: 34 }, { width: 60 }] },
      {
        sheet: 'Stations',
        data: stationsSheet(),
        orientation: 'landscape',
        stickyRowsCount: FIRST_STATION_ROW - 1,
        stickyColumnsCount: 1,
        columns: [
          { width: 28 },
          { width: 13 },
          { width: 18 },
          { width: 13 },
          { width: 13 },
          { width: 66 },
          ...STATION_FIELDS.map(({ width }) => ({ width: width ?? 11 })),
          { width: 20 },
          ...STATION_ANSWERS.map(() => ({ width: 14 })),
        ],
      },
      {
        sheet: 'Single numbers',
        data: tablesSheet().data,
        orientation: 'landscape',
        columns: [{ width: 24 }, ...Array.from({ length: 9 }, () => ({ width: 15 }))],
      },
    ],
    { fontFamily: 'Arial', fontSize: 10 },
  );
  return withFixedClock(await written.toBuffer());
}
