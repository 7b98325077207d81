/** Ranges of cells: what the user holds possible, given, changed and taken away. */
import { writeCell } from '#lib/calc/cell-path.ts';
import type { Range } from '#lib/calc/input.ts';
import { crossChecks } from './cross-checks.ts';
import { fieldAt } from './field-at.ts';
import { readText } from './read-text.ts';
import type { Workbook } from './workbook.ts';

/** The changed workbook, or why it was not changed and which end is to be corrected. */
export type RangeChanged =
  { readonly workbook: Workbook } | { readonly sentence: string; readonly end: 'low' | 'high' | 'both' };

/**
 * Gives a cell a range from two texts, read as the cell itself would be: by the locale, with units, within the field's
 * own limits. Low is at most high, and the cell's value lies between them.
 */
export function setRange(
  workbook: Workbook,
  path: string,
  { low, high, locale }: { low: string; high: string; locale: string }
): RangeChanged {
  const field = fieldAt(path);
  if (field?.kind !== 'number' && field?.kind !== 'money')
    return { sentence: `“${path}” is not a cell with a number, so it cannot have a range.`, end: 'both' };
  const ends: Record<'low' | 'high', number> = { low: NaN, high: NaN };
  for (const end of ['low', 'high'] as const) {
    const text = { low, high }[end];
    const read = readText(text, { field, workbook, locale });
    if ('sentence' in read) return { sentence: `${end === 'low' ? 'Low' : 'High'}: ${read.sentence}`, end };
    if (read.value === null)
      return {
        sentence: `${end === 'low' ? 'Low' : 'High'}: nothing was given; a range needs both ends.`,
        end
      };
    ends[end] = Number(read.value);
  }
  return withRange(workbook, path, ends);
}

/** Gives a cell this range, or says why it cannot have it. */
export function withRange(workbook: Workbook, path: string, range: Range): RangeChanged {
  const known = workbook.ranges[path];
  if (known?.low === range.low && known.high === range.high) return { workbook };
  const changed = { ...workbook, ranges: { ...workbook.ranges, [path]: range } };
  const issue = crossChecks(changed).find((each) => each.path === `ranges.${path}`);
  return issue === undefined ? { workbook: changed } : { sentence: issue.sentence, end: 'both' };
}

/** Takes a cell's range away. */
export function withoutRange(workbook: Workbook, path: string): Workbook {
  const { [path]: _, ...ranges } = workbook.ranges;
  return writeCell(workbook, 'ranges', ranges);
}
