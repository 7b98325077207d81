/** Keeps what a function returned for each key. */
export function kept<K, V>(make: (key: K) => V): (key: K) => V {
  const known = new Map<K, V>();
  return (key) => {
    let value = known.get(key);
    if (value === undefined && !known.has(key)) {
      value = make(key);
      known.set(key, value);
    }
    return value as V;
  };
}

/** Computes a value when it is first asked for, and keeps it. */
export function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | undefined;
  return () => (made ??= { value: make() }).value;
}
