/**
 * What turns one plain document into another, as plain data that is small where they differ little: so many steps of an
 * undo history fit where one copy of the document would. Documents that share their parts are compared fast.
 */

type Plain = unknown;

export type JsonChange =
  /** Another value in its place. */
  | { readonly to: Plain }
  /** Some members of an object differ, some are gone. */
  | { readonly in: Readonly<Record<string, JsonChange>>; readonly gone?: readonly string[] }
  /** Some entries of a list differ, by their index. */
  | { readonly each: Readonly<Record<string, JsonChange>> }
  /** From an index on, so many entries of a list are out and others in. */
  | { readonly at: number; readonly out: number; readonly put: readonly Plain[] }
  /** The entries of a list in another order: each place tells where its entry stood. */
  | { readonly order: readonly number[] };

type Members = Readonly<Record<string, Plain>>;

const isObject = (value: Plain): value is Members =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
/** A member that is undefined is not there: a file has none such. */
const membersOf = (value: Members): string[] =>
  Object.keys(value).filter((name) => value[name] !== undefined);

/** The change from one value to another; null where they are alike. */
export function changeBetween(from: Plain, to: Plain): JsonChange | null {
  if (Object.is(from, to)) return null;
  if (Array.isArray(from) && Array.isArray(to)) return changeOfList(from, to);
  if (!isObject(from) || !isObject(to)) return { to };
  const gone = membersOf(from).filter((name) => to[name] === undefined);
  const changes = membersOf(to).flatMap((name): [string, JsonChange][] => {
    const change = changeBetween(from[name], to[name]);
    return change === null ? [] : [[name, change]];
  });
  if (gone.length === 0 && changes.length === 0) return null;
  return { in: Object.fromEntries(changes), ...(gone.length === 0 ? {} : { gone }) };
}

const isAlike = (one: Plain, other: Plain): boolean => changeBetween(one, other) === null;

function changeOfList(from: readonly Plain[], to: readonly Plain[]): JsonChange | null {
  if (from.length !== to.length) {
    const shorter = Math.min(from.length, to.length);
    let start = 0;
    while (start < shorter && isAlike(from[start], to[start])) start++;
    let end = 0;
    while (end < shorter - start && isAlike(from.at(-1 - end), to.at(-1 - end))) end++;
    return { at: start, out: from.length - start - end, put: to.slice(start, to.length - end) };
  }
  const changes = to.flatMap((entry, index): [string, JsonChange][] => {
    const change = changeBetween(from[index], entry);
    return change === null ? [] : [[String(index), change]];
  });
  if (changes.length === 0) return null;
  const stood = new Map(from.map((entry, index) => [entry, index]));
  const order = to.flatMap((entry) => stood.get(entry) ?? []);
  return changes.length > 1 && new Set(order).size === to.length
    ? { order }
    : { each: Object.fromEntries(changes) };
}

/** The value with a change made. Throws where the change is of another value, or no change at all. */
export function changed(value: Plain, change: JsonChange): Plain {
  if ('to' in change) return change.to;
  if ('in' in change) {
    if (!isObject(value)) throw new Error('A change of an object met none.');
    const changes = Object.entries(change.in).map(([name, one]) => [name, changed(value[name], one)]);
    const kept = Object.entries(value).filter(([name]) => change.gone?.includes(name) !== true);
    return Object.fromEntries([...kept, ...changes]) as Members;
  }
  if (!Array.isArray(value)) throw new Error('A change of a list met none.');
  const list: readonly Plain[] = value;
  if ('each' in change) {
    const after = [...list];
    for (const [index, one] of Object.entries(change.each)) {
      const at = Number(index);
      if (!(at in list)) throw new Error('A change of a list is of one with more entries.');
      after[at] = changed(list[at], one);
    }
    return after;
  }
  if ('order' in change) {
    if (change.order.length !== list.length || new Set(change.order).size !== list.length)
      throw new Error('An order is of another list.');
    return change.order.map((index) => {
      if (!(index in list)) throw new Error('An order is of another list.');
      return list[index];
    });
  }
  if (!('at' in change) || !Array.isArray(change.put) || change.at + change.out > list.length)
    throw new Error('A change of a list is of another one.');
  return [...list.slice(0, change.at), ...change.put, ...list.slice(change.at + change.out)];
}
