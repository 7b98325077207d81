/** Ranges of cells: what the user holds possible, given, changed and taken away. */
import { writeCell } from '#lib/calc/cell-path.ts';
import type { Range } from '#lib/calc/input.ts';
import { rangeFault } from './range-fault.ts';
import { rangedFieldAt } from './ranged-field.ts';
import { readText } from './read-text.ts';
import type { Workbook } from './workbook.ts';

/** Why a range was not taken, and which end is to be corrected. */
export interface RangeRefused {
  readonly sentence: string;
  readonly end: 'low' | 'high' | 'both';
}

export type RangeChanged = { readonly workbook: Workbook } | RangeRefused;

/**
 * A cell's range read from two texts, as the cell itself would be: by the locale, with units, within the field's own
 * limits. Low is at most high, and the cell's value lies between them.
 */
export function readRange(
  workbook: Workbook,
  path: string,
  { low, high, locale }: { low: string; high: string; locale: string }
): { readonly range: Range } | RangeRefused {
  const field = rangedFieldAt(workbook, path);
  if (field?.kind !== 'number' && field?.kind !== 'money')
    return { sentence: `“${path}” is not a cell with a number, so it cannot have a range.`, end: 'both' };
  const range: Record<'low' | 'high', number> = { low: NaN, high: NaN };
  for (const end of ['low', 'high'] as const) {
    const text = { low, high }[end];
    const read = readText(text, { field, workbook, locale });
    if ('sentence' in read) return { sentence: `${end === 'low' ? 'Low' : 'High'}: ${read.sentence}`, end };
    if (read.value === null)
      return {
        sentence: `${end === 'low' ? 'Low' : 'High'}: nothing was given; a range needs both ends.`,
        end
      };
    range[end] = Number(read.value);
  }
  const fault = rangeFault(workbook, path, range, locale);
  return fault === null ? { range } : { sentence: fault, end: 'both' };
}

/** Gives a cell the range that two texts tell. */
export function setRange(
  workbook: Workbook,
  path: string,
  texts: { low: string; high: string; locale: string }
): RangeChanged {
  const read = readRange(workbook, path, texts);
  return 'sentence' in read ? read : withRange(workbook, path, read.range, texts.locale);
}

/** Gives a cell this range, or says why it cannot have it, with numbers by `locale`. */
export function withRange(workbook: Workbook, path: string, range: Range, locale: string): RangeChanged {
  const known = workbook.ranges[path];
  if (known?.low === range.low && known.high === range.high) return { workbook };
  const fault = rangeFault(workbook, path, range, locale);
  if (fault !== null) return { sentence: fault, end: 'both' };
  return { workbook: { ...workbook, ranges: { ...workbook.ranges, [path]: range } } };
}

/** Takes a cell's range away. */
export function withoutRange(workbook: Workbook, path: string): Workbook {
  const { [path]: _, ...ranges } = workbook.ranges;
  return writeCell(workbook, 'ranges', ranges);
}
