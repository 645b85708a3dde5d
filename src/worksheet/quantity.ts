import { DISPLAY_UNITS, type Dimension, displayValue, type UnitSystem } from '../foundation/index.ts';

/** A number with the unit a reader sees. */
export interface Quantity {
  readonly value: number;
  readonly unit: string;
}

/** An SI value as a number with the reader's unit, at full precision. */
export function quantity(value: number, dimension: Dimension, system: UnitSystem): Quantity {
  return { value: displayValue(value, dimension, system), unit: DISPLAY_UNITS[system][dimension].label };
}
