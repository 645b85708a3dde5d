/** The kinds of quantity the domain speaks of; each has one SI unit inside and one unit per display system. */
export type Dimension =
  | 'one'
  | 'length'
  | 'diameter'
  | 'area'
  | 'second-moment'
  | 'section-area'
  | 'section-modulus'
  | 'speed'
  | 'pressure'
  | 'force'
  | 'weight'
  | 'weight-per-length'
  | 'density'
  | 'moment'
  | 'stress'
  | 'angle'
  | 'frequency'
  | 'period'
  | 'flow-number'
  | 'drag-number'
  | 'pressure-constant'
  | 'stiffness'
  | 'force-per-length'
  | 'soil-pressure'
  | 'soil-pressure-per-depth'
  | 'force-per-weight';

export type UnitSystem = 'us' | 'si';

export interface DisplayUnit<Label extends string = string> {
  /** As people write it. */
  readonly label: Label;
  /** As the independent evaluator reads it. */
  readonly evaluates: string;
  /** SI value of one such unit. */
  readonly inSi: number;
}

/** Exact by definition unless noted. @source nist-sp811 */
export const FOOT = 0.3048;
export const INCH = 0.0254;
export const MILE_PER_HOUR = 0.44704;
/** Standard gravity [m/s²]. @source nist-sp811 */
export const GRAVITY = 9.80665;
export const POUND = 0.45359237;
export const POUND_FORCE = POUND * GRAVITY;
export const POUND_PER_SQUARE_FOOT = POUND_FORCE / FOOT ** 2;
export const SQUARE_FOOT = FOOT ** 2;
export const KNOT = 1852 / 3600;

const unit = <Label extends string>(label: Label, evaluates: string, inSi: number): DisplayUnit<Label> => ({
  label,
  evaluates,
  inSi,
});
const one = unit('', '', 1);
const degree = unit('°', 'deg', Math.PI / 180);
const hertz = unit('Hz', 'Hz', 1);
const second = unit('s', 's', 1);

export const DISPLAY_UNITS = {
  us: {
    one,
    length: unit('ft', 'ft', FOOT),
    diameter: unit('in', 'in', INCH),
    area: unit('ft²', 'ft^2', SQUARE_FOOT),
    'second-moment': unit('in⁴', 'in^4', INCH ** 4),
    'section-area': unit('in²', 'in^2', INCH ** 2),
    'section-modulus': unit('in³', 'in^3', INCH ** 3),
    speed: unit('mph', 'mph', MILE_PER_HOUR),
    pressure: unit('psf', 'psf', POUND_PER_SQUARE_FOOT),
    force: unit('lbf', 'lbf', POUND_FORCE),
    weight: unit('lb', 'lbm', POUND),
    'weight-per-length': unit('lb/ft', 'lbm/ft', POUND / FOOT),
    density: unit('lb/ft³', 'lbm/ft^3', POUND / FOOT ** 3),
    moment: unit('lbf·ft', 'lbf ft', POUND_FORCE * FOOT),
    stress: unit('ksi', 'ksi', (1000 * POUND_FORCE) / INCH ** 2),
    angle: degree,
    frequency: hertz,
    period: second,
    'flow-number': unit('mph·ft', 'mph ft', MILE_PER_HOUR * FOOT),
    'drag-number': unit('ft·√psf', 'ft psf^0.5', FOOT * Math.sqrt(POUND_PER_SQUARE_FOOT)),
    'pressure-constant': unit('psf/mph²', 'psf / mph^2', POUND_PER_SQUARE_FOOT / MILE_PER_HOUR ** 2),
    stiffness: unit('lbf/ft', 'lbf/ft', POUND_FORCE / FOOT),
    'force-per-length': unit('lbf/ft', 'lbf/ft', POUND_FORCE / FOOT),
    'soil-pressure': unit('psf', 'psf', POUND_PER_SQUARE_FOOT),
    'soil-pressure-per-depth': unit('psf/ft', 'psf / ft', POUND_PER_SQUARE_FOOT / FOOT),
    'force-per-weight': unit('lbf/lb', 'lbf / lbm', GRAVITY),
  },
  si: {
    one,
    length: unit('m', 'm', 1),
    diameter: unit('mm', 'mm', 0.001),
    area: unit('m²', 'm^2', 1),
    'second-moment': unit('mm⁴', 'mm^4', 0.001 ** 4),
    'section-area': unit('mm²', 'mm^2', 0.001 ** 2),
    'section-modulus': unit('mm³', 'mm^3', 0.001 ** 3),
    speed: unit('m/s', 'm/s', 1),
    pressure: unit('Pa', 'Pa', 1),
    force: unit('N', 'N', 1),
    weight: unit('kg', 'kg', 1),
    'weight-per-length': unit('kg/m', 'kg/m', 1),
    density: unit('kg/m³', 'kg/m^3', 1),
    moment: unit('N·m', 'N m', 1),
    stress: unit('MPa', 'MPa', 1e6),
    angle: degree,
    frequency: hertz,
    period: second,
    'flow-number': unit('m²/s', 'm^2/s', 1),
    'drag-number': unit('m·√Pa', 'm Pa^0.5', 1),
    'pressure-constant': unit('Pa/(m/s)²', 'Pa s^2 / m^2', 1),
    stiffness: unit('N/m', 'N/m', 1),
    'force-per-length': unit('N/m', 'N/m', 1),
    'soil-pressure': unit('kPa', 'kPa', 1000),
    'soil-pressure-per-depth': unit('kPa/m', 'kPa / m', 1000),
    'force-per-weight': unit('N/kg', 'N / kg', 1),
  },
} as const satisfies Readonly<Record<UnitSystem, Readonly<Record<Dimension, DisplayUnit>>>>;

export type UnitLabel = (typeof DISPLAY_UNITS)[UnitSystem][Dimension]['label'];

/** Every unit that a reader may see. */
export const UNIT_LABELS: readonly UnitLabel[] = [
  ...new Set(Object.values(DISPLAY_UNITS).flatMap((units) => Object.values(units).map(({ label }) => label))),
];

/**
 * The number a reader sees for an SI value.
 *
 * value / (SI value of the display unit)
 *
 * @param value the quantity in SI [-]
 * @returns the quantity in the display unit [-]
 * @example displayValue(0.3048, 'length', 'us') // 1
 * @source nist-sp811
 */
export function displayValue(value: number, dimension: Dimension, system: UnitSystem): number {
  return value / DISPLAY_UNITS[system][dimension].inSi;
}
