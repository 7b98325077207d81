/** A range never refuses its own cell's new value: it goes along with it. */
import type { Range } from '#lib/calc/input.ts';
import { readCell } from '#lib/calc/cell-path.ts';
import { formatFull } from '#lib/numbers/format-number.ts';
import { cellName } from './cell-name.ts';
import { numericCellAt } from './numeric-cells.ts';
import { rangeAround } from './range-around.ts';
import type { Workbook } from './workbook.ts';

/** What became of a range as its cell got another value: where it lies now; null where the cell was emptied. */
export interface RangeFollowed {
  readonly path: string;
  readonly range: Range | null;
}

/** The workbook after an edit of these cells with their ranges gone along, and what became of those that changed. */
export function rangesFollowing(
  before: Workbook,
  after: Workbook,
  paths: readonly string[]
): { readonly workbook: Workbook; readonly followed: readonly RangeFollowed[] } {
  const ranges: Record<string, Range> = { ...after.ranges };
  const followed = paths.flatMap((path): RangeFollowed[] => {
    const range = after.ranges[path];
    if (range === undefined) return [];
    const now = numericCellAt(after, path);
    if (now === null) {
      delete ranges[path];
      return [{ path, range: null }];
    }
    const around = rangeAround(now.field, range, {
      from: Number(readCell(before, path)),
      to: now.value
    });
    if (around === range) return [];
    ranges[path] = around;
    return [{ path, range: around }];
  });
  return { workbook: followed.length === 0 ? after : { ...after, ranges }, followed };
}

/** What became of a range, as a sentence with the cell that it belongs to. */
export function rangeFollowedInWords(
  workbook: Workbook,
  { path, range }: RangeFollowed,
  locale: string
): string {
  const name = cellName(workbook, path);
  return range === null
    ? `${name} is empty now, so its range is gone.`
    : `The range of ${name} moved with the value: it is ${formatFull(range.low, { locale })} to ${formatFull(range.high, { locale })} now.`;
}
