import type { Range } from '#lib/calc/input.ts';
import { readNumber } from '#lib/numbers/read-number.ts';
import { crossChecks } from '#lib/workbook/cross-checks.ts';
import { isConstantPath } from '#lib/workbook/ranged-constants.ts';
import { rangedFieldAt } from '#lib/workbook/ranged-field.ts';
import { quoted } from '#lib/workbook/field.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { cellReader } from '#lib/workbook/cell-reader.ts';
import { importKeyed } from './import-keyed.ts';
import type { ImportPreview, ImportRequest } from './import-request.ts';
import { entryNameReader } from '../tables/table-cells.ts';

/** `previewImport` for what the user holds possible for single cells. */
export function importRanges(workbook: Workbook, request: ImportRequest): ImportPreview {
  const { locale } = request;
  const valueAt = cellReader(workbook);
  const entryOf = entryNameReader(workbook);
  const nameOf = (path: string) =>
    [entryOf(path), rangedFieldAt(workbook, path)?.title ?? path].filter(Boolean).join(': ');
  return importKeyed<Range>(workbook, request, {
    before: new Map(Object.entries(workbook.ranges)),
    nameOf,
    read: (textOf) => {
      const path = textOf('cell');
      const field = rangedFieldAt(workbook, path);
      if (
        (field?.kind !== 'number' && field?.kind !== 'money') ||
        (!isConstantPath(path) && valueAt(path) === undefined)
      )
        return { sentence: `${quoted(path)} is not a cell with a number, so it cannot have a range.` };
      const unit = field.kind === 'number' ? field.unit : '';
      const [low, high] = [textOf('low'), textOf('high')].map((text) => readNumber(text, { unit, locale }));
      if (low === undefined || high === undefined || 'sentence' in low || 'sentence' in high)
        return {
          sentence: `Range of ${nameOf(path)}: ${quoted(textOf('low'))} to ${quoted(textOf('high'))} was given; allowed are two numbers.`
        };
      return { key: path, name: nameOf(path), value: { low: low.value, high: high.value } };
    },
    isSame: (a, b) => a.low === b.low && a.high === b.high,
    put: (ranges) => {
      const whole = { ...workbook, ranges: Object.fromEntries(ranges) };
      const refused = new Map(
        crossChecks(whole, locale).flatMap(({ path, sentence }) =>
          path.startsWith('ranges.') ? [[path.slice('ranges.'.length), sentence] as const] : []
        )
      );
      const kept = [...ranges].filter(([path]) => !refused.has(path));
      return { workbook: { ...workbook, ranges: Object.fromEntries(kept) }, refused };
    }
  });
}
