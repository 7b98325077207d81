/**
 * What a record holds under an id or a path that came from a user; undefined where it holds nothing there. Every object
 * knows words such as `constructor` from its kind, so `record[id]` would take them for entries.
 */
export function ownEntry<T>(record: Readonly<Partial<Record<string, T>>>, key: string): T | undefined {
  return Object.hasOwn(record, key) ? record[key] : undefined;
}
