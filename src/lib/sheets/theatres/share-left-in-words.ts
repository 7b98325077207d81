import type { CaseRow } from '#lib/calc/input.ts';
import { formatNumber } from '#lib/numbers/format-number.ts';

/** What an empty cell of a case group's shares stands for, in a grid of so many theatre groups. */
export function shareLeftInWords(
  shares: CaseRow['theatreGroups'],
  groupCount: number,
  locale: string
): string {
  const given = Object.values(shares);
  const left = 100 - given.reduce((sum, share) => sum + share, 0);
  if (given.length > 0 && left <= 0) return 'none';
  return given.length === groupCount - 1 && groupCount > 1
    ? `the other ${formatNumber(left, { locale })}`
    : 'in proportion';
}
