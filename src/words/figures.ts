import { DISPLAY_UNITS, type Dimension, displayValue, MILE_PER_HOUR, type UnitSystem } from '../foundation/index.ts';

/** A number to so many significant figures, with commas for thousands and a real minus, never in powers of ten. */
export function figures(value: number, significant = 3): string {
  if (!Number.isFinite(value)) return 'beyond measure';
  if (value === 0) return '0';
  const magnitude = Math.floor(Math.log10(Math.abs(value)));
  const decimals = Math.max(0, significant - 1 - magnitude);
  const [whole = '', fraction = ''] = Math.abs(value).toFixed(Math.min(decimals, 12)).split('.');
  const told = fraction.replace(/0+$/, '');
  const grouped = whole.replace(/\B(?=(\d{3})+$)/g, ',');
  return `${value < 0 ? '−' : ''}${grouped}${told === '' ? '' : `.${told}`}`;
}

/** A ratio: three figures, from 1 up two decimals of them; more where they would hide that it is not 1. */
export function ratioFigures(ratio: number): string {
  if (!Number.isFinite(ratio)) return 'open';
  if (ratio < 1) {
    const text = ratio.toPrecision(3);
    return Number(text) >= 1 ? ratio.toFixed(4) : Number(text).toString();
  }
  if (ratio >= 10) return figures(ratio);
  const text = ratio.toFixed(2);
  return text === '1.00' && ratio > 1 ? ratio.toFixed(3) : text;
}

/** An SI value in words: figures and unit. */
export function inWords(value: number, dimension: Dimension, system: UnitSystem, significant = 3): string {
  const unit = DISPLAY_UNITS[system][dimension].label;
  const number = figures(displayValue(value, dimension, system), significant);
  return unit === '' ? number : `${number} ${unit}`;
}

/** Of a stronger gust a figure only pretends to know something: the strongest tornadoes have about this [m/s]. */
const BEYOND_WEATHER = 300 * MILE_PER_HOUR;

/** A gust that something holds to, in words: a bound where it is beyond what weather does. */
export function heldGustInWords(gust: number, system: UnitSystem): string {
  return gust > BEYOND_WEATHER
    ? `more than ${inWords(BEYOND_WEATHER, 'speed', system)}`
    : inWords(gust, 'speed', system);
}

/** The height that every speed of a map or a station is told at. */
export function standardHeight(system: UnitSystem): string {
  return system === 'us' ? '33 ft (10 m)' : '10 m';
}

/** A list in words: "a, b and c". */
export function listed(words: readonly string[]): string {
  if (words.length <= 1) return words[0] ?? '';
  return `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}

/** The first letter made large. */
export function sentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
