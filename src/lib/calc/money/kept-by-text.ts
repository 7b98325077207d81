/**
 * Keeps what was made from a text, so that what is asked for thousands of times is made once. A text says all that its
 * value follows from, so a kept one never goes stale; when there are `limit` of them, it starts afresh.
 */
export function keptByText<V>(limit: number): (text: string, make: () => V) => V {
  const values = new Map<string, V>();
  return (text, make) => {
    let value = values.get(text);
    if (value === undefined) {
      value = make();
      if (values.size >= limit) values.clear();
      values.set(text, value);
    }
    return value;
  };
}
