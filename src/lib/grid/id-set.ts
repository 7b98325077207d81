/** A set that is replaced whole at each change, and never written into: the state that holds it tells of the change. */
export const idSet = (ids: Iterable<string> = []): ReadonlySet<string> => new Set(ids);
