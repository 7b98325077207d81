/** Published figures that have a range, as cells have: where it stands, which may have one, and a set with one drawn. */
import type { Constant } from './constant.ts';
import { derivations } from './derivations.ts';
import { recomputeDerived } from './recompute-derived.ts';
import type { ReferenceSet } from './reference-set.ts';

const room = 'constants.';

/** Where a constant's range stands among those of cells. */
export const constantPath = (id: string): string => `${room}${id}`;

/** The constant whose range stands there; null where it is that of a cell. */
export const constantIdOf = (path: string): string | null =>
  path.startsWith(room) ? path.slice(room.length) : null;

/** Ids of all that is computed from a constant, itself among them. */
export function followingFrom(id: string): ReadonlySet<string> {
  const found = new Set([id]);
  for (const { yields, from } of derivations)
    if (Object.values(from).some((parent) => found.has(parent))) found.add(yields);
  return found;
}

/** Why a constant can have no range, as a sentence; null where it can. */
export function noRangeBecause({ id, name, unusedBecause }: Constant): string | null {
  const derived = derivations.find(({ yields }) => yields === id);
  if (derived !== undefined)
    return `${name} is computed from ${Object.values(derived.from).join(', ')}, so it has the range that these give it.`;
  return unusedBecause === undefined ? null : `${name} acts in no figure, so it can have no range.`;
}

/**
 * The set with another value for a constant, as a draw puts it in, and with what is computed from it.
 * @param isSameForCases whether no case reads any of them: results of cases are then those of the set given
 * @throws Error where the set has no such constant
 */
export function withDrawn(
  set: ReferenceSet,
  {
    id,
    value,
    isSameForCases
  }: { readonly id: string; readonly value: number; readonly isSameForCases: boolean }
): ReferenceSet {
  const published = set.constants.get(id);
  if (published === undefined) throw new Error(`Reference set ${set.id} has no constant “${id}”.`);
  const constants = new Map(set.constants);
  constants.set(id, {
    ...published,
    value,
    override: {
      publishedValue: published.override?.publishedValue ?? published.value,
      reason: 'A value within its range, as a draw or an end of it.'
    }
  });
  recomputeDerived(constants, new Set([id]), (derived, renewed) =>
    // A figure of the user's own for what is computed stays.
    derived.override !== undefined && derived.override.follows !== true
      ? derived
      : { ...derived, value: renewed }
  );
  const { casesAs: _, ...rest } = set;
  return { ...rest, constants, ...(isSameForCases ? { casesAs: set.casesAs ?? set } : {}) };
}
