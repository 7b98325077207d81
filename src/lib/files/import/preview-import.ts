/** A table from a file into the workbook: what would be taken and what not, before anything is changed. */
import type { Workbook } from '#lib/workbook/workbook.ts';
import { importAvoidedPurchases } from './import-avoided-purchases.ts';
import { importList } from './import-list.ts';
import { importMoves } from './import-moves.ts';
import { importNoRows } from './import-no-rows.ts';
import { importNotes } from './import-notes.ts';
import { importOwnFigures } from './import-own-figures.ts';
import { importPlansByCase } from './import-plans-by-case.ts';
import { importPlans } from './import-plans.ts';
import { importRanges } from './import-ranges.ts';
import type { ImportPreview, ImportRequest } from './import-request.ts';
import { importSettings } from './import-settings.ts';
import { rangeColumns } from '../tables/range-columns.ts';
import type { TableColumn, TableId } from '../tables/tables.ts';
import { tableColumns } from '../tables/tables.ts';

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
    case 'moves':
      return importMoves(workbook, request);
    case 'ranges':
      return importRanges(workbook, request);
    case 'notes':
      return importNotes(workbook, request);
    case 'ownFigures':
      return importOwnFigures(workbook, request);
    default:
      return importList(workbook, request, request.table);
  }
}
