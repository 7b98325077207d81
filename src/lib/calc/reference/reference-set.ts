import type { Constant } from './constant.ts';
import { recomputeDerived } from './recompute-derived.ts';

/**
 * A dated set of constants: a workbook names the one that it was made with, so that an old file keeps its old answer.
 */
export interface ReferenceSet {
  /** E.g. `2026-1`. */
  readonly id: string;
  /** Date from which it applies, ISO. */
  readonly date: string;
  /** What it does that the one before did not, for a reader; the first has none. */
  readonly brings?: string;
  readonly constants: ReadonlyMap<string, Constant>;
  /** Of a set with drawn values: one that is the same in all that a case reads. */
  readonly casesAs?: ReferenceSet;
}

/** A constant of the user's choosing in place of the published one. */
export interface Override {
  readonly constant: string;
  readonly value: number;
  readonly unit: string;
  readonly reason: string;
}

/**
 * The constant with this id.
 * @throws Error where the set has none: a programmer's mistake, as ids come from code, never from a user.
 */
export function take(set: ReferenceSet, id: string): Constant {
  const found = set.constants.get(id);
  if (found === undefined) throw new Error(`Reference set ${set.id} has no constant “${id}”.`);
  return found;
}

/**
 * The set with the user's values in place; the published value and the reason stay on the record. What is computed
 * from an overridden constant is computed anew and says so, unless the user overrode it too.
 * @throws Error where an override names no constant of the set.
 */
export function withOverrides(set: ReferenceSet, overrides: readonly Override[]): ReferenceSet {
  if (overrides.length === 0) return set;
  const constants = new Map(set.constants);
  for (const { constant: id, value, reason } of overrides) {
    const published = take(set, id);
    constants.set(id, { ...published, value, override: { publishedValue: published.value, reason } });
  }
  recomputeDerived(
    constants,
    new Set(overrides.map(({ constant }) => constant)),
    (published, value, causes) => ({
      ...published,
      value,
      override: {
        publishedValue: published.value,
        reason: `Follows from another value for ${causes.join(', ')}.`,
        follows: true
      }
    })
  );
  return { ...set, constants };
}
