import { createRequire } from 'node:module';
import type { UnitSystem } from '../../foundation/index.ts';
import type { PlanDimension } from './plan-dimension.ts';

/** The unit library's prebuilt bundle, loaded when the first text with a unit is met and not before. */
let library: { unit(value: number, name: string): { toNumber(name: string): number } } | undefined;

interface UnitEntry {
  /** As the unit library reads it. */
  readonly evaluates: string;
  /** How many of those one such unit is; exact by definition. */
  readonly times: number;
}

const SI_UNITS: Readonly<Record<PlanDimension, string>> = {
  length: 'm',
  diameter: 'm',
  area: 'm^2',
  speed: 'm/s',
  force: 'N',
  weight: 'kg',
  'weight-per-length': 'kg/m',
  moment: 'N m',
  stress: 'N/m^2',
  'soil-pressure': 'N/m^2',
  'soil-pressure-per-depth': 'N/m^3',
  density: 'kg/m^3',
  angle: 'rad',
  frequency: 'Hz',
  share: '',
};

/** Names people write (lower case, without blanks, dots and dashes), what the library calls it, how many of those. */
type Names = readonly (readonly [names: string, evaluates: string, times?: number])[];

const LENGTHS: Names = [
  ["ft foot feet '", 'ft'],
  ['in inch inches "', 'in'],
  ['yd yard yards', 'yd'],
  ['mi mile miles', 'mi'],
  ['mm millimetre millimetres millimeter millimeters', 'mm'],
  ['cm centimetre centimetres centimeter centimeters', 'cm'],
  ['m metre metres meter meters', 'm'],
  ['km kilometre kilometres kilometer kilometers', 'km'],
];

const NAMES: Readonly<Record<PlanDimension, Names>> = {
  length: LENGTHS,
  diameter: LENGTHS,
  area: [
    ['ft^2 ft2 sqft squarefoot squarefeet', 'ft^2'],
    ['in^2 in2 sqin squareinch squareinches', 'in^2'],
    ['m^2 m2 sqm squaremetre squaremetres squaremeter squaremeters', 'm^2'],
    ['dm^2 dm2', 'm^2', 0.01],
    ['cm^2 cm2', 'cm^2'],
    ['mm^2 mm2', 'mm^2'],
  ],
  speed: [
    ['mph mi/h mile/hour miles/hour milesanhour', 'mi/h'],
    ['km/h kmh kph', 'km/h'],
    ['m/s metres/second meters/second', 'm/s'],
    ['kt kts kn knot knots', 'm/h', 1852],
    ['ft/s fps', 'ft/s'],
  ],
  force: [
    ['lbf lb lbs pound pounds', 'lbf'],
    ['kip kips', 'lbf', 1000],
    ['n newton newtons', 'N'],
    ['dan', 'N', 10],
    ['kn kilonewton kilonewtons', 'kN'],
    ['kgf kp', 'kgf'],
  ],
  weight: [
    ['lb lbs lbm pound pounds', 'lbm'],
    ['oz ounce ounces', 'oz'],
    ['g gram grams', 'g'],
    ['kg kilogram kilograms', 'kg'],
    ['t tonne tonnes', 'tonne'],
  ],
  'weight-per-length': [
    ['lb/ft lbs/ft lbm/ft', 'lbm/ft'],
    ['oz/ft', 'oz/ft'],
    ['kg/m', 'kg/m'],
    ['g/m', 'g/m'],
    ['kg/km', 'kg/km'],
  ],
  moment: [
    ['lbfft ftlbf ftlb ftlbs lbft lbsft', 'lbf ft'],
    ['lbfin inlbf inlb inlbs lbin lbsin', 'lbf in'],
    ['kipft ftkip ftkips kipsft', 'lbf ft', 1000],
    ['nm', 'N m'],
    ['knm', 'kN m'],
    ['ncm', 'N cm'],
    ['kgfm kgm mkg', 'kgf m'],
    ['kgfcm kgcm', 'kgf cm'],
  ],
  stress: [
    ['ksi kip/in^2', 'lbf/in^2', 1000],
    ['psi lbf/in^2 lb/in^2', 'lbf/in^2'],
    ['mpa n/mm^2 n/mm2', 'MPa'],
    ['gpa', 'GPa'],
  ],
  'soil-pressure': [
    ['psf lbf/ft^2 lb/ft^2 lb/sqft lb/ft2', 'lbf/ft^2'],
    ['ksf', 'lbf/ft^2', 1000],
    ['kpa kn/m^2 kn/m2', 'kPa'],
    ['mpa mn/m^2', 'MPa'],
  ],
  'soil-pressure-per-depth': [
    ['psf/ft lbf/ft^3 lb/ft^3 lb/ft3 pcf', 'lbf/ft^3'],
    ['kpa/m kn/m^3 kn/m3', 'kPa/m'],
    ['mpa/m mn/m^3', 'MPa/m'],
  ],
  density: [
    ['lb/ft^3 lbs/ft^3 lb/ft3 lbs/ft3 lb/ft³ pcf', 'lb/ft^3'],
    ['kg/m^3 kg/m3 kg/m³', 'kg/m^3'],
    ['t/m^3 t/m3 t/m³', 'kg/m^3', 1000],
  ],
  angle: [['deg degree degrees °', 'deg']],
  frequency: [['hz hertz', 'Hz']],
  share: [['% percent', '', 0.01]],
};

const ENTRIES = new Map<PlanDimension, Map<string, UnitEntry>>(
  Object.entries(NAMES).map(([dimension, names]) => [
    dimension as PlanDimension,
    new Map(
      names.flatMap(([written, evaluates, times]) =>
        written.split(' ').map((name) => [name, { evaluates, times: times ?? 1 }] as const),
      ),
    ),
  ]),
);

const factors = new Map<UnitEntry, number>();

/**
 * What one unit, as people write its name, is in SI; only names on our own list are ever handed to the unit library.
 *
 * @returns the SI value of one such unit [-], or undefined when the name is not one for this kind of quantity
 * @example unitInSi('kt', 'speed') // 0.51444444
 * @source nist-sp811
 */
export function unitInSi(written: string, dimension: PlanDimension): number | undefined {
  const entry = entryOf(written, dimension);
  if (entry === undefined) return undefined;
  if (entry.evaluates === '') return entry.times;
  let factor = factors.get(entry);
  if (factor === undefined) {
    library ??= createRequire(import.meta.url)('mathjs/lib/browser/math.js') as NonNullable<typeof library>;
    factor = entry.times * library.unit(1, entry.evaluates).toNumber(SI_UNITS[dimension]);
    factors.set(entry, factor);
  }
  return factor;
}

function entryOf(written: string, dimension: PlanDimension): UnitEntry | undefined {
  const entries = ENTRIES.get(dimension);
  return entries?.get(written) ?? entries?.get(unitKey(written));
}

/** What the library calls units that are written with a decimal point. */
const US_UNITS = /\b(ft|in|yd|mi|lbf|lbm|oz)\b/;
const OF_NEITHER: ReadonlySet<PlanDimension> = new Set<PlanDimension>(['angle', 'frequency', 'share']);

/**
 * The system a unit is of, as people write its name.
 *
 * @returns undefined where it is of neither, or no unit for this kind of quantity
 * @example systemOfUnit('km/h', 'speed') // 'si'
 * @source nist-sp811
 */
export function systemOfUnit(written: string, dimension: PlanDimension): UnitSystem | undefined {
  const entry = entryOf(written, dimension);
  if (entry === undefined || OF_NEITHER.has(dimension)) return undefined;
  return US_UNITS.test(entry.evaluates) ? 'us' : 'si';
}

function unitKey(written: string): string {
  return written
    .toLowerCase()
    .replaceAll(/\s+per\s+/g, '/')
    .replaceAll('²', '^2')
    .replaceAll('³', '^3')
    .replaceAll(/[\s.·⋅*-]+/g, '');
}

const SHOWN: Readonly<Record<PlanDimension, string>> = {
  length: 'ft, in, m, cm, mm',
  diameter: 'in, ft, mm, cm, m',
  area: 'ft², in², m², cm²',
  speed: 'mph, km/h, m/s, kn, ft/s',
  force: 'lbf, kip, N, daN, kN, kgf',
  weight: 'lb, oz, kg, g, t',
  'weight-per-length': 'lb/ft, kg/m, g/m',
  moment: 'lbf·ft, lbf·in, N·m, kN·m',
  stress: 'ksi, psi, MPa, N/mm²',
  'soil-pressure': 'psf, ksf, kPa',
  'soil-pressure-per-depth': 'psf/ft, kPa/m',
  density: 'lb/ft³, kg/m³',
  angle: 'degrees',
  frequency: 'Hz',
  share: '%',
};

/** The units a reader may choose from for a kind of quantity, in one line. */
export function unitsAllowed(dimension: PlanDimension): string {
  return SHOWN[dimension];
}
