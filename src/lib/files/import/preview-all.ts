/** All tables of a file at once, as of a spreadsheet that was saved here: each in the place of the one of its name. */
import { foldHeader, mapColumns } from '#lib/workbook/match-headings.ts';
import type { SourceNote } from '#lib/workbook/source-note.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import type { NamedTable } from '../read/read-tables.ts';
import type { TableId } from '../tables/tables.ts';
import { tableTitles } from '../tables/tables.ts';
import type { RefusedCell, RefusedRow } from './import-request.ts';
import { importColumns, previewImport } from './preview-import.ts';

/** What others refer to comes first; ranges and notes of cells come last. */
export const tableOrder: readonly TableId[] = [
  'agents',
  'absorbents',
  'settings',
  'machines',
  'flowPlans',
  'scenarios',
  'theatreGroups',
  'caseMix',
  'moves',
  'plansByCase',
  'avoidedPurchases',
  'monitorPrices',
  'ownFigures',
  'ranges',
  'notes'
];

export interface AllPreview {
  /** The workbook as it would be. */
  readonly workbook: Workbook;
  /** The tables that were met, in the order in which they were taken. */
  readonly met: readonly TableId[];
  /** Sheets that are no table of a workbook. */
  readonly passedOver: readonly string[];
  readonly refused: readonly { readonly table: TableId; readonly line: number; readonly sentence: string }[];
}

/** The table that a sheet is, by its name alone; null where it is none. */
const tableNamed = (name: string): TableId | null =>
  tableOrder.find((table) => foldHeader(tableTitles[table]) === foldHeader(name)) ?? null;

/**
 * What taking all of them over would do. They are gone through twice, the second time backwards: what is in use goes only
 * once nothing refers to it. The workbook given is not touched.
 */
export function previewAll(
  before: Workbook,
  tables: readonly NamedTable[],
  { locale, source }: { readonly locale: string; readonly source?: SourceNote }
): AllPreview {
  const byTable = new Map<TableId, NamedTable>();
  const passedOver: string[] = [];
  for (const each of tables) {
    const table = tableNamed(each.name);
    if (table === null || byTable.has(table)) passedOver.push(each.name);
    else byTable.set(table, each);
  }
  const met = tableOrder.filter((table) => byTable.has(table));
  const refused = new Map<TableId, readonly (RefusedCell | RefusedRow)[]>();
  let workbook = before;
  for (const table of [...met, ...[...met].reverse()]) {
    const file = byTable.get(table)?.table;
    if (file === undefined) continue;
    const mapping = mapColumns(file.headers, importColumns(table, workbook));
    const preview = previewImport(workbook, {
      table,
      file,
      mapping,
      mode: 'replace',
      locale,
      ...(source === undefined ? {} : { source })
    });
    workbook = preview.workbook;
    // What is refused the second time as well is refused for good.
    refused.set(table, [...preview.refusedRows, ...preview.refusedCells]);
  }
  return {
    workbook,
    met,
    passedOver,
    refused: [...refused].flatMap(([table, lines]) =>
      lines.map(({ line, sentence }) => ({ table, line, sentence }))
    )
  };
}
