import type { Quantity } from '../answer/index.ts';
import { DISPLAY_UNITS, type Dimension, displayValue, type UnitSystem } from '../foundation/index.ts';

/** An SI value as a number with the reader's unit, at full precision; of nothing, nothing. */
export function quantity(value: number, dimension: Dimension, system: UnitSystem): Quantity;
export function quantity(value: number | undefined, dimension: Dimension, system: UnitSystem): Quantity | undefined;
export function quantity(value: number | undefined, dimension: Dimension, system: UnitSystem): Quantity | undefined {
  if (value === undefined) return undefined;
  return { value: displayValue(value, dimension, system), unit: DISPLAY_UNITS[system][dimension].label };
}
