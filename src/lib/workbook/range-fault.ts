import { readCell } from '#lib/calc/cell-path.ts';
import type { Range } from '#lib/calc/input.ts';
import { constantIdOf } from '#lib/calc/reference/ranged-constant.ts';
import { quotedNumber } from '#lib/numbers/quoted-number.ts';
import { isTooNearZero, nearZeroSentence, refuse } from './field.ts';
import { fieldAt } from './field-at.ts';
import { isSetting } from './numeric-cells.ts';
import { constantFault, rangedConstantAt } from './ranged-constants.ts';
import type { Workbook } from './workbook.ts';

/**
 * Why a cell cannot have a range, as a sentence; null where it can: a number, both ends ones that the cell could hold.
 * @param locale as for `refuse`
 */
export function rangeFault(
  workbook: Workbook,
  path: string,
  { low, high }: Range,
  locale?: string
): string | null {
  const written = (value: number): string => quotedNumber(value, locale);
  const published = rangedConstantAt(workbook, path);
  if (constantIdOf(path) !== null) {
    const fault = constantFault(workbook, path);
    // A set that is not known here says nothing of its figures.
    if (fault !== null || published === null) return fault;
  }
  const value = published?.value ?? readCell(workbook, path);
  const mode =
    typeof value === 'number' ? value : typeof value === 'string' && value !== '' ? Number(value) : NaN;
  const field = published?.field ?? fieldAt(path);
  if (!Number.isFinite(mode) || (field?.kind !== 'number' && field?.kind !== 'money'))
    return `“${path}” is not a cell with a number, so it cannot have a range.`;
  if (isSetting(path))
    return `${field.title} is how the calculation is set, not something that is not known, so it cannot have a range.`;
  for (const end of [low, high]) {
    // Of an amount of money the sign alone is asked: a range is drawn from, not paid, so its decimals do not matter.
    const refused =
      field.kind === 'number'
        ? refuse(field, end, locale)
        : end < 0 && field.signed !== true
          ? refuse(field, String(end), locale)
          : null;
    if (refused !== null) return `Range: ${refused}`;
    if (isTooNearZero(end))
      return `Range: ${field.title}: ${written(end)} was given. ${nearZeroSentence(locale)}`;
  }
  if (low > high)
    return `Range: low ${written(low)} and high ${written(high)} were given; low is at most high.`;
  if (mode < low || mode > high)
    return `Range: ${written(low)} to ${written(high)} was given; it has to hold the cell’s own value, ${written(mode)}: change the one or the other.`;
  return null;
}
