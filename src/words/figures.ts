import { DISPLAY_UNITS, type Dimension, displayValue, MILE_PER_HOUR, type UnitSystem } from '../foundation/index.ts';
import { figures } from './plain-figures.mjs';

/** An SI value in words: figures and unit. */
export function inWords(value: number, dimension: Dimension, system: UnitSystem, significant = 3): string {
  const unit = DISPLAY_UNITS[system][dimension].label;
  const number = figures(displayValue(value, dimension, system), significant);
  return unit === '' ? number : `${number} ${unit}`;
}

/** What is needed at least, in words: three figures that are not less than the SI value. */
export function atLeastInWords(value: number, dimension: Dimension, system: UnitSystem): string {
  const shown = displayValue(value, dimension, system);
  if (!(shown > 0) || !Number.isFinite(shown)) return inWords(value, dimension, system);
  const step = 10 ** (Math.floor(Math.log10(shown)) - 2);
  const up = Math.ceil(shown / step - 1e-9) * step;
  const unit = DISPLAY_UNITS[system][dimension].label;
  return `${figures(up)} ${unit}`;
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
