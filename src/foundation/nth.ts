/**
 * What stands at a place of a list that is known to have it.
 *
 * @param place its place, 0 the first [-]
 * @throws RangeError where the list has no such place
 * @example nth([3, 5], 1) // 5
 */
export function nth<T>(list: ArrayLike<T>, place: number): T {
  const found = list[place];
  if (found === undefined) throw new RangeError(`a list of ${list.length} has no place ${place}`);
  return found;
}
