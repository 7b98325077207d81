/** Figures of the user's own in place of published ones: put in, and taken out. */
import type { Override } from '#lib/calc/reference/reference-set.ts';
import { constantRangesFollowing } from '#lib/workbook/ranged-constants.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';

/** The workbook with this figure in force; one for the same constant gives way. `checkOverride` has passed it before. */
export function withOverride(workbook: Workbook, override: Override): Workbook {
  const others = workbook.overrides.filter(({ constant }) => constant !== override.constant);
  return constantRangesFollowing(workbook, { ...workbook, overrides: [...others, override] });
}

/** The workbook with the published figures of these constants back in force; of all where none is named. */
export function withoutOverrides(workbook: Workbook, constants?: readonly string[]): Workbook {
  const overrides = workbook.overrides.filter(
    ({ constant }) => constants !== undefined && !constants.includes(constant)
  );
  return overrides.length === workbook.overrides.length
    ? workbook
    : constantRangesFollowing(workbook, { ...workbook, overrides });
}
