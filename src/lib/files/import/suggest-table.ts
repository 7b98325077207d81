import type { Workbook } from '#lib/workbook/workbook.ts';
import { foldHeader, mapColumns } from '#lib/workbook/match-headings.ts';
import { importColumns } from './preview-import.ts';
import type { TableId } from '../tables/tables.ts';
import { tableIds, tableTitles } from '../tables/tables.ts';

/** The table that a file's own most likely is: the one of its name, else the one that knows most of its headings. */
export function suggestTable(
  { name, headers }: { readonly name: string; readonly headers: readonly string[] },
  workbook: Workbook
): TableId {
  const named = tableIds.find((table) => foldHeader(tableTitles[table]) === foldHeader(name));
  if (named !== undefined) return named;
  const known = (table: TableId) =>
    mapColumns(headers, importColumns(table, workbook)).filter((key) => key !== null).length;
  // Of two that know as many, the one with fewer columns of its own fits better.
  const unfilled = (table: TableId) => importColumns(table, workbook).length - known(table);
  const [best] = [...tableIds].sort((a, b) => known(b) - known(a) || unfilled(a) - unfilled(b));
  return best !== undefined && known(best) > 0 ? best : 'caseMix';
}
