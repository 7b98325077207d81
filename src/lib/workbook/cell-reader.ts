import { readCell } from '#lib/calc/cell-path.ts';
import { entryKey } from './edit-rows.ts';
import type { Workbook } from './workbook.ts';

/** Reads many cells of one workbook: each list is searched through once, not once for each of its cells. */
export function cellReader(workbook: Workbook): (path: string) => unknown {
  const byKey = new Map<string, ReadonlyMap<string, object>>();
  return (path) => {
    const [list = '', key = '', ...rest] = path.split('.');
    const entries: unknown = workbook[list as keyof Workbook];
    if (!Array.isArray(entries)) return readCell(workbook, path);
    const known =
      byKey.get(list) ?? new Map((entries as readonly object[]).map((entry) => [entryKey(entry), entry]));
    byKey.set(list, known);
    const entry = known.get(key);
    return rest.length === 0 ? entry : readCell(entry, rest.join('.'));
  };
}
