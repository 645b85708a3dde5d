/**
 * A list of zeros to add up in. A plain list filled by a plain loop: short typed arrays, and `fill`, cost more than all
 * that is done with them.
 *
 * @param length how many [-]
 * @returns the list [-]
 * @example zeros(3) // [0, 0, 0]
 */
export function zeros(length: number): number[] {
  const list = new Array<number>(length);
  for (let index = 0; index < length; index += 1) list[index] = 0;
  return list;
}
