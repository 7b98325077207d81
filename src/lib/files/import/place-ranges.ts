import type { Range } from '#lib/calc/input.ts';
import { readRange } from '#lib/workbook/edit-ranges.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import type { ImportRequest, RefusedCell } from './import-request.ts';
import type { TextRow } from '../read/read-table.ts';

/** The range that a file gives for a cell: two texts in one row. */
export interface RangeTexts {
  readonly path: string;
  readonly line: number;
  readonly low: string;
  readonly high: string;
  readonly column: string;
}

/** The ranges that the rows of a file give for the entries that they go to. */
export function rangesIn(
  { file, mapping }: ImportRequest,
  met: readonly { readonly row: TextRow; readonly key: string }[]
): readonly RangeTexts[] {
  const keys = new Set(
    mapping.flatMap((key) => (key?.includes('.') === true ? [key.split('.')[0] as string] : []))
  );
  return [...keys].flatMap((key) => {
    const [low, high] = [mapping.indexOf(`${key}.low`), mapping.indexOf(`${key}.high`)];
    return met.flatMap(({ row, key: id }): RangeTexts[] => {
      const texts = { low: (row.texts[low] ?? '').trim(), high: (row.texts[high] ?? '').trim() };
      if (texts.low === '' && texts.high === '') return [];
      return [
        {
          path: `caseMix.${id}.${key}`,
          line: row.line,
          ...texts,
          column: file.headers[Math.max(low, high)] ?? ''
        }
      ];
    });
  });
}

/** The workbook without the ranges that will be given anew: an old one must not refuse the new value. */
export function withoutRanges(workbook: Workbook, ranges: readonly RangeTexts[]): Workbook {
  const going = new Set(ranges.map(({ path }) => path));
  if (!Object.keys(workbook.ranges).some((path) => going.has(path))) return workbook;
  return {
    ...workbook,
    ranges: Object.fromEntries(Object.entries(workbook.ranges).filter(([path]) => !going.has(path)))
  };
}

/** Puts ranges in place where the cell can have them; the others are refused with a sentence. */
export function placeRanges(
  workbook: Workbook,
  ranges: readonly RangeTexts[],
  locale: string
): { readonly workbook: Workbook; readonly refusedCells: readonly RefusedCell[] } {
  const refusedCells: RefusedCell[] = [];
  const placed: Record<string, Range> = {};
  for (const { path, line, low, high, column } of ranges) {
    const read = readRange(workbook, path, { low, high, locale });
    if ('range' in read) placed[path] = read.range;
    else refusedCells.push({ line, column, text: `${low} to ${high}`, sentence: read.sentence });
  }
  return {
    workbook: ranges.length === 0 ? workbook : { ...workbook, ranges: { ...workbook.ranges, ...placed } },
    refusedCells
  };
}
