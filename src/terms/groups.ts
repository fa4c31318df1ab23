/**
 * A list by a key, each group in the order of the list: looked through once instead of once a key.
 *
 * @param keyOf  the key of an element
 */
export function grouped<T>(list: Iterable<T>, keyOf: (element: T) => string): ReadonlyMap<string, readonly T[]> {
  const groups = new Map<string, T[]>();
  for (const element of list) {
    const own = groups.get(keyOf(element));
    if (own) own.push(element);
    else groups.set(keyOf(element), [element]);
  }
  return groups;
}
