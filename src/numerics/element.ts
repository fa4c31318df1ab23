/**
 * The element of a list that must be there.
 *
 * @param list   any list, or string
 * @param index  from 0; -1 is the last
 * @throws RangeError where the list has no such element: a fault of the program, told in place of a figure made of nothing
 */
export function nth<T>(list: ArrayLike<T>, index: number): T {
  const value = list[index < 0 ? list.length + index : index];
  if (value === undefined) throw new RangeError(`no element ${index} in a list of ${list.length}`);
  return value;
}

/**
 * The value of a key that must be there.
 *
 * @throws RangeError where the map has no such key: a fault of the program
 */
export function keyed<K, V>(map: ReadonlyMap<K, V>, key: K): V {
  const value = map.get(key);
  if (value === undefined) throw new RangeError(`nothing known of ${String(key)}`);
  return value;
}

/**
 * The same of a Float64Array: of one kind of list, so that inner loops stay as fast as without the look.
 *
 * @throws RangeError where the list has no such element: a fault of the program
 */
export function cell(list: Float64Array, index: number): number {
  const value = list[index];
  if (value === undefined) throw new RangeError(`no element ${index} in a list of ${list.length}`);
  return value;
}

/**
 * The first element that fits, of which there must be one.
 *
 * @throws RangeError where none fits: a fault of the program
 */
export function first<T>(list: readonly T[], fits: (element: T) => boolean): T {
  const found = list.find(fits);
  if (found === undefined) throw new RangeError(`none of a list of ${list.length} fits`);
  return found;
}

/**
 * What must be known here.
 *
 * @throws RangeError where it is not: a fault of the program
 */
export function given<T>(value: T | null | undefined): T {
  if (value === null || value === undefined) throw new RangeError('a value that must be known is not');
  return value;
}
