import type { EstimateInput } from '#lib/calc/input.ts';
import type { ReferenceSet } from '#lib/calc/reference/reference-set.ts';
import { withOverrides } from '#lib/calc/reference/reference-set.ts';
import { findReferenceSet, newestReferenceSet } from '#lib/calc/reference/reference-sets.ts';
import { rowsInForce } from './rows-in-force.ts';
import type { Workbook } from './workbook.ts';

const known = new WeakMap<object, { readonly set: ReferenceSet; readonly result: ReferenceSet }>();

/** The set with the workbook's overrides in place; the same object for the same overrides, as results are kept by it. */
function overridden(set: ReferenceSet, overrides: Workbook['overrides']): ReferenceSet {
  const before = known.get(overrides);
  if (before?.set === set) return before.result;
  const result = withOverrides(set, overrides);
  known.set(overrides, { set, result });
  return result;
}

/** What names the constants that a workbook rests on. */
export type OfReference = Pick<Workbook, 'referenceSet' | 'overrides'>;

/**
 * The set that a workbook names, with the user's overrides in place; the newest one where this version does not have it.
 */
export const referenceOf = ({ referenceSet, overrides }: OfReference): ReferenceSet =>
  overridden(findReferenceSet(referenceSet) ?? newestReferenceSet, overrides);

/**
 * What the core takes, from a workbook: the figures of its rows in force as they are, with the reference set and the
 * user's overrides in place of the set's name. A workbook that names a set which this version does not have is computed with the newest one:
 * `parseWorkbook` has told the caller, who shows it read-only and says so.
 */
export function coreInput(workbook: Workbook): EstimateInput {
  return { ...rowsInForce(workbook), reference: referenceOf(workbook) };
}
