import type { Workbook } from '#lib/workbook/workbook.ts';
import type { ImportPreview, ImportRequest } from './import-request.ts';
import { tableTitles } from '../tables/tables.ts';

/** Tables of which a workbook needs at least one row. */
const neverEmpty: ReadonlySet<string> = new Set(['flowPlans', 'machines', 'scenarios', 'absorbents']);

/**
 * `previewImport` for a file that holds headings only, where it changes nothing, with a note that says why; null where
 * it is to empty the table.
 */
export function importNoRows(
  workbook: Workbook,
  { table, mapping, mode }: ImportRequest
): ImportPreview | null {
  const title = tableTitles[table];
  const unchanged = (note: string): ImportPreview => ({
    workbook,
    added: 0,
    changed: 0,
    unchanged: 0,
    removed: [],
    empties: false,
    refusedCells: [],
    refusedRows: [],
    notes: [note]
  });
  if (table === 'settings')
    return unchanged('The table has headings and no rows below them, so every setting stays as it is.');
  if (mode === 'append')
    return unchanged(
      `The table has headings and no rows below them, so there is nothing to add. To empty ${title}, let the rows take the place of those that stand there.`
    );
  if (mapping.every((column) => column === null))
    return unchanged(
      `The table has no rows, and none of its headings is one of ${title}, so it is not taken for an empty ${title}.`
    );
  if (neverEmpty.has(table))
    return unchanged(
      `The table has headings and no rows below them, and a workbook needs at least one row of ${title}: give the file those that are to stay.`
    );
  return null;
}
