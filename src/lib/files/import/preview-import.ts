/** A table from a file into the workbook: what would be taken and what not, before anything is changed. */
import type { Workbook } from '#lib/workbook/workbook.ts';
import type { ColumnMapping } from './column-mapping.ts';
import type { ReadTable } from '../read/read-table.ts';
import { importAvoidedPurchases } from './import-avoided-purchases.ts';
import { importList } from './import-list.ts';
import { importNoRows } from './import-no-rows.ts';
import { importOwnFigures } from './import-own-figures.ts';
import { importPlansByCase } from './import-plans-by-case.ts';
import { importPlans } from './import-plans.ts';
import { importRanges } from './import-ranges.ts';
import { importSettings } from './import-settings.ts';
import { rangeColumns } from '../tables/range-columns.ts';
import type { TableColumn, TableId } from '../tables/tables.ts';
import { tableColumns } from '../tables/tables.ts';

/** `append` adds rows below; `replace` makes the table what the file says, meeting rows by id or else by name. */
export type ImportMode = 'append' | 'replace';

export interface ImportRequest {
  readonly table: TableId;
  readonly file: ReadTable;
  readonly mapping: ColumnMapping;
  /** Without meaning for `settings`, which stand there already. */
  readonly mode: ImportMode;
  /** How numbers are written in the file. */
  readonly locale: string;
}

export interface ImportPreview {
  /** The workbook as it would be; nothing is changed until it is put in place of the open one. */
  readonly workbook: Workbook;
  readonly added: number;
  readonly changed: number;
  readonly unchanged: number;
  /** Names of rows that leave, with `replace`. */
  readonly removed: readonly string[];
  /** True where rows leave and none is left in the table. */
  readonly empties: boolean;
  readonly refusedCells: readonly RefusedCell[];
  readonly refusedRows: readonly RefusedRow[];
  /** What else a reader must know: columns left out, columns that get start values, rows that have to stay. */
  readonly notes: readonly string[];
}

/** A cell that is not taken: it stays in the grid as text with its sentence, while a valid value is in force. */
export interface RefusedCell {
  readonly line: number;
  /** The file's heading. */
  readonly column: string;
  readonly text: string;
  readonly sentence: string;
}

/** A row that is not taken at all. */
export interface RefusedRow {
  readonly line: number;
  readonly sentence: string;
}

/** The columns into which a file's columns can be mapped, for the user to choose from. */
export function importColumns(table: TableId, workbook: Workbook): readonly TableColumn[] {
  const columns = tableColumns(table, workbook.currency);
  return table === 'caseMix' ? [...columns, ...rangeColumns(workbook.currency)] : columns;
}

/** What an import would do. The workbook given is not touched, and texts that do not fit never get lost. */
export function previewImport(workbook: Workbook, request: ImportRequest): ImportPreview {
  const unchanged = request.file.rows.length === 0 ? importNoRows(workbook, request) : null;
  if (unchanged !== null) return unchanged;
  switch (request.table) {
    case 'settings':
      return importSettings(workbook, request);
    case 'flowPlans':
      return importPlans(workbook, request);
    case 'plansByCase':
      return importPlansByCase(workbook, request);
    case 'avoidedPurchases':
      return importAvoidedPurchases(workbook, request);
    case 'ranges':
      return importRanges(workbook, request);
    case 'ownFigures':
      return importOwnFigures(workbook, request);
    default:
      return importList(workbook, request, request.table);
  }
}
