/**
 * Makes a function of an object that works out its value once an object, for as long as the object is there.
 *
 * @param work  depends on the object and on nothing that changes
 */
export function oncePer<Key extends object, Value>(work: (key: Key) => Value): (key: Key) => Value {
  const known = new WeakMap<Key, { readonly value: Value }>();
  return (key) => {
    const found = known.get(key) ?? { value: work(key) };
    known.set(key, found);
    return found.value;
  };
}

/** The same of a word or a number. */
export function onceEach<Key extends string | number, Value>(work: (key: Key) => Value): (key: Key) => Value {
  const known = new Map<Key, { readonly value: Value }>();
  return (key) => {
    const found = known.get(key) ?? { value: work(key) };
    known.set(key, found);
    return found.value;
  };
}
