/**
 * The value kept under a key, made when first asked for.
 *
 * @example remember(new Map([['a', 1]]), 'a', () => 2) // 1
 */
export function remember<K, V>(kept: Map<K, V>, key: K, make: () => V): V {
  const found = kept.get(key);
  if (found !== undefined) return found;
  const made = make();
  kept.set(key, made);
  return made;
}
