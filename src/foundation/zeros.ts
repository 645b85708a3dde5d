/**
 * A list of zeros to add up in. A plain list: short typed arrays cost more to make than all that is done with them.
 *
 * @param length how many [-]
 * @returns the list [-]
 * @example zeros(3) // [0, 0, 0]
 * @source derived
 */
export function zeros(length: number): number[] {
  return new Array<number>(length).fill(0);
}
