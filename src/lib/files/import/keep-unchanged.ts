import { entryKey } from '#lib/workbook/edit-rows.ts';

/**
 * `after` with the parts that are equal in `before` taken from there, so that a copy which came back from a worker
 * shares with the original all that was left alone. Entries of a list are met by their keys, others by their places.
 */
export function keepUnchanged<T>(before: T, after: T): T {
  return shared(before, after) as T;
}

function shared(before: unknown, after: unknown): unknown {
  if (Object.is(before, after)) return before;
  if (typeof before !== 'object' || typeof after !== 'object' || before === null || after === null)
    return after;
  if (Array.isArray(before) !== Array.isArray(after)) return after;
  return Array.isArray(before)
    ? sharedList(before as readonly unknown[], after as readonly unknown[])
    : sharedRecord(before as Readonly<Record<string, unknown>>, after as Readonly<Record<string, unknown>>);
}

function sharedList(before: readonly unknown[], after: readonly unknown[]): readonly unknown[] {
  const keyOf = (entry: unknown): string =>
    typeof entry === 'object' && entry !== null ? entryKey(entry) : '';
  const byKey = new Map(before.map((entry) => [keyOf(entry), entry]));
  const list = after.map((entry, place) => {
    const key = keyOf(entry);
    return shared(key === '' ? before[place] : byKey.get(key), entry);
  });
  const isSame = list.length === before.length && list.every((entry, place) => entry === before[place]);
  return isSame ? before : list;
}

function sharedRecord(
  before: Readonly<Record<string, unknown>>,
  after: Readonly<Record<string, unknown>>
): Readonly<Record<string, unknown>> {
  const keys = Object.keys(after);
  const known = Object.keys(before);
  const record = Object.fromEntries(keys.map((key) => [key, shared(before[key], after[key])]));
  const isSame =
    keys.length === known.length &&
    keys.every((key, place) => key === known[place] && record[key] === before[key]);
  return isSame ? before : record;
}
