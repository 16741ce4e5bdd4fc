/** `make`, worked out once for each object and kept as long as that is: for objects that are never changed. */
export function rememberedOf<Key extends object, T>(make: (key: Key) => T): (key: Key) => T {
  const known = new WeakMap<Key, { readonly value: T }>();
  return (key) => {
    const before = known.get(key);
    if (before !== undefined) return before.value;
    const value = make(key);
    known.set(key, { value });
    return value;
  };
}
