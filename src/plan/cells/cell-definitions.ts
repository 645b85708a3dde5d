import { STAND_IN_METHOD, siteMethodsWith } from '../../methods/index.ts';
import { FIELDS_OF_SHAPE, type ShapeName } from '../schema/shape-schema.ts';

/** One parameter of a cell's address: text that goes into the small plan document which the cell is read from. */
export interface CellParameter {
  /** Where it goes, as JSON pointers; none where the reader of cells turns it into something else first. */
  readonly at: readonly string[];
  readonly says: string;
  readonly required: boolean;
  /** It may be a list, a value a row. */
  readonly list: boolean;
}

export interface CellDefinition {
  readonly title: string;
  /** What the number is. */
  readonly gives: string;
  readonly example: string;
  readonly parameters: Readonly<Record<string, CellParameter>>;
}

export const CELL_IDS = [
  'pressure',
  'force',
  'area',
  'speed',
  'rating',
  'allowed-area',
  'mast-moment',
  'bundle-width',
  'chance',
  'lower-at',
  'station',
] as const;
export type CellId = (typeof CELL_IDS)[number];

/** What the cell of a station can give. */
export const STATION_GIVES = ['ratio', 'verdict', 'holdsTo', 'roomLeft', 'says'] as const;
export type StationGives = (typeof STATION_GIVES)[number];

/** Shapes whose fields are flat, so that they fit into an address. */
export const FLAT_SHAPES = [
  'stated',
  'tube',
  'plate',
  'dish',
  'lattice',
  'pole',
] as const satisfies readonly ShapeName[];

const parameter = (says: string, ...at: readonly string[]): CellParameter => ({
  at,
  says,
  required: false,
  list: true,
});
const required = (says: string, ...at: readonly string[]): CellParameter => ({
  ...parameter(says, ...at),
  required: true,
});

const structure = parameter('lattice or pole, for the direction factor; lattice when not given');
const kd = parameter('The direction factor, which must be that of a lattice or of a pole by the method');

const BY_TERRAIN = siteMethodsWith(({ ground }) => ground.field === 'terrain');

/** The wind of a site; what is required is up to the cell. */
const SITE = {
  method: parameter('What the local code adopts for towers: asce7-16, tia222-h, …', '/method'),
  speed: parameter('Design wind speed [us mph, si m/s]', '/site/wind/speed'),
  basis: parameter("Type of speed; that of the method's own maps when not given", '/site/wind/basis'),
  exposure: parameter('Ground upwind: B, C, D', '/site/exposure'),
  terrain: parameter(`Ground upwind for ${BY_TERRAIN}: 0, I, II, III, IV`, '/site/terrain'),
  riskCategory: parameter('I, II, III, IV; II when not given', '/site/riskCategory'),
  groundElevation: parameter('Height of the ground above the sea [us ft, si m]', '/site/groundElevation'),
  topographicFactor: parameter('A topographic factor the county gives', '/site/topographicFactor'),
} as const;

const WIND = {
  ...SITE,
  method: { ...SITE.method, required: true },
  speed: { ...SITE.speed, required: true },
} as const;

const RATING = {
  area: required('The rated area [us ft², si m²]', '/ratings/0/area'),
  areaKind: parameter('Type of the rated area; unknown when not given', '/ratings/0/areaKind'),
  speed: required('The speed it is stated for [us mph, si m/s]', '/ratings/0/wind/speed'),
  basis: parameter("Type of speed; that of the method's own maps when not given", '/ratings/0/wind/basis'),
  method: parameter('The standard it is stated by; every one that fits when not given', '/ratings/0/wind/method'),
  exposure: parameter(
    'Exposure it is stated for: B, C, D; when not given, the one that gives the lowest capacity',
    '/ratings/0/wind/exposure',
  ),
  terrain: parameter(`The same for ${BY_TERRAIN}: 0, I, II, III, IV`, '/ratings/0/wind/terrain'),
  riskCategory: parameter(
    'Class it is stated for; when not given, the one that gives the lowest capacity',
    '/ratings/0/wind/riskCategory',
  ),
  year: parameter('Year of the data sheet', '/ratings/0/wind/year'),
  height: required('Height above ground at which the area is stated [us ft, si m]', '/ratings/0/height', '/top'),
  top: parameter('Top of the tower above ground; the height when not given [us ft, si m]', '/top'),
  structure: parameter('lattice or pole: what the tower is; lattice when not given'),
} as const;

const FIELDS_OF_LOAD: Readonly<Record<string, CellParameter>> = Object.fromEntries(
  [...new Set(FLAT_SHAPES.flatMap((shape) => FIELDS_OF_SHAPE[shape]))]
    .filter((field) => field !== 'icedArea' && field !== 'length')
    .map((field) => [field, parameter(`As the field ${field} of a load`, `/loads/0/${field}`)]),
);

/** Every cell with its parameters; where they go is where the plan has such a field. */
export const CELLS: Readonly<Record<CellId, CellDefinition>> = {
  pressure: {
    title: 'Velocity pressure at a height',
    gives: "The pressure at the method's level [us psf, si Pa]",
    example: 'method=asce7-16&exposure=C&speed=105&height=50',
    parameters: {
      ...WIND,
      height: required('Height above ground [us ft, si m]', '/heights/0'),
      structure,
      kd,
    },
  },
  force: {
    title: 'Wind force on an area at a height',
    gives: 'The force at the allowable level, on what does not sway [us lbf, si N]',
    example: 'method=asce7-16&exposure=C&speed=105&height=50&area=10',
    parameters: {
      ...WIND,
      height: required('Height above ground [us ft, si m]', '/loads/0/height', '/tower/top'),
      area: required('The area [us ft², si m²]', '/loads/0/area'),
      areaKind: parameter('Type of area: effective when not given, drag included', '/loads/0/areaKind'),
      top: parameter(
        'Top of the tower above ground, for the gust factor; the height when not given [us ft, si m]',
        '/tower/top',
      ),
      structure,
      kd,
    },
  },
  area: {
    title: 'Effective projected area of a shape',
    gives: 'The area at its worst heading [us ft², si m²]',
    example: 'shape=tube&diameter=2&length=20',
    parameters: {
      shape: parameter(`${FLAT_SHAPES.join(', ')}; stated when not given`, '/loads/0/shape'),
      ...FIELDS_OF_LOAD,
      length: parameter('Length of the tube, lattice or pole [us ft, si m]'),
      count: parameter('How many alike', '/loads/0/count'),
      height: parameter(
        'Height above ground, needed where a speed is given: 50, or 40 to 60 [us ft, si m]',
        '/loads/0/height',
      ),
      ...SITE,
      method: parameter(`Whose coefficients; ${STAND_IN_METHOD} when neither it nor a speed is given`, '/method'),
      speed: parameter(
        'Design wind speed; without it the coefficients are those of slow wind [us mph, si m/s]',
        '/site/wind/speed',
      ),
    },
  },
  speed: {
    title: 'A wind speed in another basis',
    gives: 'The speed [us mph, si m/s]',
    example: 'speed=85&from=gust3-nominal&to=fastest-mile',
    parameters: {
      speed: required('The speed [us mph, si m/s]', '/site/wind/speed'),
      from: required('Type of speed given', '/site/wind/basis'),
      to: required('Type of speed wanted; of means the larger ratio, as for a site', '/ratings/0/wind/basis'),
    },
  },
  rating: {
    title: 'An area rating as a force',
    gives: 'Lowest force over all readings, allowable level [us lbf, si N]',
    example: 'area=18&speed=100&method=tia222-g&exposure=B&riskCategory=II&height=48',
    parameters: RATING,
  },
  'allowed-area': {
    title: 'An area rating as an area in another wind',
    gives: 'Effective area of equal force, lowest over all readings [us ft², si m²]',
    example:
      'area=18&speed=100&method=tia222-g&exposure=B&riskCategory=II&height=48&toMethod=asce7-16&toSpeed=105&toExposure=C',
    parameters: {
      ...RATING,
      toSpeed: required('The speed of the other wind [us mph, si m/s]', '/to/wind/speed'),
      toBasis: parameter(
        "Type of that speed; without toMethod the rating's, with it that of the method's own maps",
        '/to/wind/basis',
      ),
      toMethod: parameter("Its standard; the rating's when not given", '/to/wind/method'),
      toExposure: parameter("Its ground; the rating's when not given", '/to/wind/exposure'),
      toTerrain: parameter(`Its ground by ${BY_TERRAIN}; the rating's when not given`, '/to/wind/terrain'),
      toRiskCategory: parameter("Its class; the rating's when not given", '/to/wind/riskCategory'),
      toHeight: parameter("Height there; the rating's when not given [us ft, si m]", '/to/height'),
    },
  },
  'mast-moment': {
    title: 'Allowable bending moment of a one-tube mast',
    gives: 'The moment at the allowable level [us lbf·ft, si N·m]',
    example: 'outside=2&wall=0.25&yield=46',
    parameters: {
      outside: required('Outside diameter [us in, si mm]', '/mast/outside'),
      wall: required('Wall [us in, si mm]', '/mast/wall'),
      yield: required('Yield strength; never assumed [us ksi, si MPa]', '/mast/yield'),
      material: parameter('steel when not given', '/mast/material'),
      ultimate: parameter('Ultimate strength; for aluminium [us ksi, si MPa]', '/mast/ultimate'),
    },
  },
  'bundle-width': {
    title: 'Width of a round bundle of alike cables',
    gives: 'The width [us in, si mm]',
    example: 'count=5&diameter=0.405',
    parameters: {
      count: required('How many cables, 1 to 19', '/cables/0/count'),
      diameter: required('Outside diameter of one [us in, si mm]', '/cables/0/diameter'),
    },
  },
  chance: {
    title: 'Chance of a wind',
    gives: 'The chance that the years reach the speed, at the high end of its band, a share of 1',
    example: 'speed=90&returnPeriods=10:76;50:92;100:98',
    parameters: {
      speed: required('The speed [us mph, si m/s]', '/site/wind/speed'),
      returnPeriods: {
        ...required(
          'Years and speed of a chart, 10:76;50:92;100:98, of the same kind of speed',
          '/site/climate/returnPeriods',
        ),
        list: false,
      },
      years: parameter('For how many years; 1 when not given', '/wanted/years'),
    },
  },
  'lower-at': {
    title: 'Forecast gust at which to lower',
    gives: 'The gust [us mph, si m/s]; where dead load counts little and no coefficient changes on the way',
    example: 'holdsTo=89',
    parameters: {
      holdsTo: required('Actual gust to which the weakest check holds [us mph, si m/s]', '/site/wind/speed'),
      margin: parameter('Share of the capacity to keep; 0.1 when not given', '/wanted/margin'),
      forecastError: parameter('Allowance for the error of a forecast; 0.1 when not given', '/wanted/forecastError'),
    },
  },
  station: {
    title: 'The tower of the smallest useful plan',
    gives:
      'demand/capacity ratio; or its verdict; or the actual gust it holds to [us mph, si m/s]; or the effective area it has left at its top [us ft², si m²]; or the sentence',
    example:
      'method=asce7-16&speed=105&exposure=C&support=free&top=48&faces=3&width=18&members=round&frequency=2&ratedArea=18&ratedSpeed=100&ratedMethod=tia222-g&ratedTop=48&area=5.5&above=2&cables=3&cableDiameter=0.405&give=ratio',
    parameters: {
      ...WIND,
      support: required('free, guyed, bracketed, roof', '/tower/support'),
      top: required('Top of the tower above ground [us ft, si m]', '/tower/top'),
      shape: parameter('lattice or pole; lattice when not given and there is a width', '/tower/shape'),
      faces: parameter('lattice: 3 or 4', '/tower/faces'),
      width: parameter('Width of a face, or across a pole; 18, or 12 to 24 [us in, si mm]', '/tower/width'),
      members: parameter('lattice: round or flat', '/tower/members'),
      sides: parameter('pole: number of sides, 0 is round', '/tower/sides'),
      frequency: parameter(
        'How often it sways in a second: 10 divided by the seconds of ten swings [Hz]',
        '/tower/frequency',
      ),
      area: parameter('Area of the load [us ft², si m²]', '/loads/0/area'),
      areaKind: parameter('Type of that area; unknown when not given', '/loads/0/areaKind'),
      above: parameter('Its height above the top [us ft, si m]', '/loads/0/above'),
      on: parameter('tower: it sits on the tower itself, and no mast counts', '/loads/0/on'),
      cables: parameter('How many cables; 0 says that there are none', '/cables/0/count'),
      cableDiameter: parameter('Outside diameter of one [us in, si mm]', '/cables/0/diameter'),
      ratedArea: parameter('The rated area [us ft², si m²]', '/ratings/0/area'),
      ratedTop: parameter('Height of the top it is stated for [us ft, si m]', '/ratings/0/top'),
      ratedAreaKind: parameter('Type of that area; unknown when not given', '/ratings/0/areaKind'),
      ratedSpeed: parameter('The speed it is stated for [us mph, si m/s]', '/ratings/0/wind/speed'),
      ratedBasis: parameter('Type of that speed', '/ratings/0/wind/basis'),
      ratedMethod: parameter('The standard it is stated by', '/ratings/0/wind/method'),
      ratedExposure: parameter('Ground it is stated for: B, C, D', '/ratings/0/wind/exposure'),
      ratedTerrain: parameter(`The same for ${BY_TERRAIN}: 0, I, II, III, IV`, '/ratings/0/wind/terrain'),
      ratedRiskCategory: parameter('Class it is stated for', '/ratings/0/wind/riskCategory'),
      ratedYear: parameter('Year of the data sheet', '/ratings/0/wind/year'),
      margin: parameter('Share of the capacity to keep; 0.1 when not given', '/wanted/margin'),
      give: { ...required(`What to give: ${STATION_GIVES.join(', ')}`), list: false },
    },
  },
};

/** What version 0.1.0 called parameters of an address, and one choice; they are still read. */
export const RENAMED_PARAMETERS = { returns: 'returnPeriods', forecast: 'forecastError' } as const;
export const RENAMED_GIVE = { use: 'ratio' } as const satisfies Readonly<Record<string, StationGives>>;

/** Parameters of the address itself, alike for every cell. */
export const FORM_PARAMETERS = {
  units: { says: 'Units of plain numbers and of the answer; us when not given', choices: ['us', 'si'] },
  as: { says: 'Form of the answer, before the accept header', choices: ['text', 'csv'] },
  decimal: { says: 'Decimal sign, read and written; point when not given', choices: ['point', 'comma'] },
  strict: { says: '1: a fault is a problem with a failing status; 0 when not given', choices: ['0', '1'] },
} as const;
