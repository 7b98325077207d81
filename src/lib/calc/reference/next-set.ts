import type { Constant } from './constant.ts';
import { recomputeDerived } from './recompute-derived.ts';
import type { ReferenceSet } from './reference-set.ts';

/** What a new set has of its own; all else it takes over from the older one. */
export interface SetChanges {
  /** Id of the new set, e.g. `2026-2`. */
  readonly id: string;
  /** Date from which it applies, ISO; after the older set's. */
  readonly date: string;
  /** What it does that the older one did not, in a sentence or two. */
  readonly brings?: string;
  /** New records, and records in place of older ones with the same id. */
  readonly records?: readonly Constant[];
  /** Ids of records that it no longer has. */
  readonly without?: readonly string[];
}

/**
 * A new dated set made out of an older one, which stays as it is: a workbook that names the older set keeps its answer.
 * What is derived from a changed constant is computed anew, value and printed value, unless `records` holds another for
 * it. Records that do not change are shared by both sets.
 * @throws Error where the new set would not be sound: without an id or a date of its own, with a record twice or no
 *   change at all, with another unit for an id (the core reads values by id, and knows their unit), or without a record
 *   that another is derived from. A programmer's mistake, as sets are code.
 */
export function nextSet(
  base: ReferenceSet,
  { id, date, brings, records = [], without = [] }: SetChanges
): ReferenceSet {
  const refuse = (reason: string): never => {
    throw new Error(`Set “${id}” cannot be made out of set ${base.id}: ${reason}.`);
  };
  if (id === '' || id === base.id) refuse('it needs an id of its own');
  if (!/^\d{4}-\d{2}-\d{2}$/.test(date) || date <= base.date)
    refuse(`“${date}” was given as its date; it must be after ${base.date}`);
  if (records.length + without.length === 0) refuse('nothing changes');

  const constants = new Map(base.constants);
  for (const gone of without) if (!constants.delete(gone)) refuse(`there is no “${gone}” to leave out`);
  const changed = new Set<string>();
  for (const record of records) {
    const before = base.constants.get(record.id);
    if (changed.has(record.id) || without.includes(record.id)) refuse(`“${record.id}” is given twice`);
    if (before !== undefined && before.unit !== record.unit)
      refuse(`“${record.id}” is in “${before.unit}”, not in “${record.unit}”; another unit needs another id`);
    constants.set(record.id, record);
    changed.add(record.id);
  }
  for (const { id: derived, parents = [] } of constants.values())
    for (const parent of parents)
      if (!constants.has(parent)) refuse(`“${derived}” is derived from “${parent}”, which is left out`);
  recomputeDerived(constants, changed, (derived, value) => ({
    ...derived,
    value,
    printed: value.toFixed(decimalsOf(derived.printed))
  }));
  return { id, date, ...(brings === undefined ? {} : { brings }), constants };
}

/** How many decimals a printed number has, e.g. 3 in `0.594`. */
const decimalsOf = (printed: string): number => /\.(\d+)/.exec(printed)?.[1]?.length ?? 0;
