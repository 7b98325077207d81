/** Takes a workbook from the reference set that it names to another, and says what changes by it. */
import { checkOverride } from '#lib/calc/reference/plausible-ranges.ts';
import type { ReferenceSet } from '#lib/calc/reference/reference-set.ts';
import { findReferenceSet, newestReferenceSet } from '#lib/calc/reference/reference-sets.ts';
import { constantRangesFollowing } from './ranged-constants.ts';
import type { Workbook } from './workbook.ts';

export interface Moved {
  readonly workbook: Workbook;
  /** One sentence for each change, for the user to read before it is made; empty where nothing changes. */
  readonly changes: readonly string[];
}

/**
 * The workbook with another reference set in place of its own. Values of the user's choosing stay where the new set
 * takes them; one that it does not take is left out, and said so with its value and reason.
 * @param known every set of this version; a set that is not among them cannot be compared, which is said as well.
 */
export function moveToReferenceSet(
  workbook: Workbook,
  to: ReferenceSet = newestReferenceSet,
  known: (id: string) => ReferenceSet | null = findReferenceSet
): Moved {
  if (workbook.referenceSet === to.id) return { workbook, changes: [] };
  const from = known(workbook.referenceSet);
  const judged = workbook.overrides.map((override) => ({ override, refused: checkOverride(to, override) }));
  return {
    workbook: constantRangesFollowing(workbook, {
      ...workbook,
      referenceSet: to.id,
      overrides: judged.filter(({ refused }) => refused === null).map(({ override }) => override)
    }),
    changes: [
      ...(from === null
        ? [
            `Reference set ${workbook.referenceSet} is not in this version, so its values cannot be compared: every published figure is now that of ${to.id}, and results may differ from those that the file was saved with.`
          ]
        : changesBetween(from, to)),
      ...judged.flatMap(({ override: { constant, value, unit, reason }, refused }) =>
        refused === null
          ? []
          : [`Your own figure ${value} ${unit} for ${constant} (“${reason}”) is left out. ${refused}`]
      )
    ]
  };
}

/** What differs between two sets, constant by constant, in sentences. */
export function changesBetween(from: ReferenceSet, to: ReferenceSet): readonly string[] {
  const ids = [...new Set([...from.constants.keys(), ...to.constants.keys()])];
  return ids.flatMap((id) => {
    const before = from.constants.get(id);
    const after = to.constants.get(id);
    if (before === undefined)
      return after === undefined ? [] : [`${after.name}: new, ${after.value} ${after.unit}.`];
    if (after === undefined)
      return [`${before.name}: ${before.value} ${before.unit} is no longer in the set.`];
    if (before.value === after.value && before.unit === after.unit) return [];
    return [`${after.name}: ${before.value} ${before.unit} becomes ${after.value} ${after.unit}.`];
  });
}
