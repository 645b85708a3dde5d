/** More than turning typed figures from one unit into another and dividing them can lose, as a share. @source derived */
const ROUNDING = 1e-10;

/**
 * Whether a value is at least a limit of a standard. Round figures that meet the limit exactly meet it in every unit.
 *
 * a ≥ b·(1 − 10⁻¹⁰)
 *
 * @param value what is compared, 0 or more [-]
 * @param limit of the standard, 0 or more, in the same unit [-]
 * @example atLeast((50 * 0.3048) / (250 * 0.3048), 0.2) // true
 * @source derived
 */
export function atLeast(value: number, limit: number): boolean {
  return value >= limit * (1 - ROUNDING);
}

/**
 * Whether a value is at most a limit of a standard. Round figures that meet the limit exactly meet it in every unit.
 *
 * a ≤ b·(1 + 10⁻¹⁰)
 *
 * @param value what is compared, 0 or more [-]
 * @param limit of the standard, 0 or more, in the same unit [-]
 * @example atMost(0.1 + 0.2, 0.3) // true
 * @source derived
 */
export function atMost(value: number, limit: number): boolean {
  return atLeast(limit, value);
}
