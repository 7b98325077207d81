import type { EstimateInput } from '#lib/calc/input.ts';
import { withOverrides } from '#lib/calc/reference/reference-set.ts';
import { findReferenceSet } from '#lib/calc/reference/reference-sets.ts';
import type { Workbook } from './workbook.ts';

/**
 * What the core takes, from a workbook: its figures as they are, with the reference set and the user's overrides in
 * place of the set's name.
 * @throws Error for a reference set that this version does not have; `parseWorkbook` has told the caller by then.
 */
export function coreInput(workbook: Workbook): EstimateInput {
  const set = findReferenceSet(workbook.referenceSet);
  if (set === null) throw new Error(`There is no reference set “${workbook.referenceSet}”.`);
  return { ...workbook, reference: withOverrides(set, workbook.overrides) };
}
