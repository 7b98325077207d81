/** Tables of the workbook as files, and files as tables: loaded when first used, as most visits need none. */
import type { ColumnMapping } from '#lib/workbook/match-headings.ts';
import type { SourceNote } from '#lib/workbook/source-note.ts';
import type { ImportMode, ImportPreview } from '#lib/files/import/import-request.ts';
import type { ReadTable } from '#lib/files/read/read-table.ts';
import type { AllPreview } from '#lib/files/import/preview-all.ts';
import type { NamedTable, TablesOfFile } from '#lib/files/read/read-tables.ts';
import type { Watch, WorkerOutcome } from '#lib/background/run-in-worker.ts';
import type { TableColumn, TableId } from '#lib/files/tables/tables.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';

/** A file that can be kept. */
export interface OfferedFile {
  readonly name: string;
  readonly content: Blob;
}

/** One table as CSV. */
export async function tableCsv(table: TableId, workbook: Workbook, locale: string): Promise<OfferedFile> {
  const { tableFileName, writeTableCsv } = await import('#lib/files/write/csv-out.ts');
  const bytes = writeTableCsv(table, workbook, locale) as Uint8Array<ArrayBuffer>;
  return {
    name: tableFileName(workbook, table),
    content: new Blob([bytes], { type: 'text/csv;charset=utf-8' })
  };
}

/** Reads a CSV or spreadsheet file that the user chose, in a worker; null once it was cancelled. */
export async function tablesFrom(
  file: File,
  { locale, encoding, signal }: { locale: string; encoding?: 'utf-8' | 'windows-1252'; signal: AbortSignal }
): Promise<TablesOfFile | null> {
  const { readTablesInWorker } = await import('#lib/background/read-tables-in-worker.ts');
  return readTablesInWorker(
    { file, name: file.name, locale, ...(encoding === undefined ? {} : { encoding }) },
    signal
  );
}

/** What an import is asked to do. */
export interface ImportWish {
  readonly table: TableId;
  readonly file: ReadTable;
  readonly mapping: ColumnMapping;
  readonly mode: ImportMode;
  readonly locale: string;
  readonly source?: SourceNote;
}

/** The tool that shows what an import would do before anything is changed. */
export interface Importer {
  readonly columns: (table: TableId, workbook: Workbook) => readonly TableColumn[];
  /** The table that a file most likely is, by its name and headings. */
  readonly suggest: (
    file: { readonly name: string; readonly headers: readonly string[] },
    workbook: Workbook
  ) => TableId;
  readonly map: (headers: readonly string[], columns: readonly TableColumn[]) => ColumnMapping;
  /** Why headings that look like one of the columns fill none, in a sentence each. */
  readonly unmet: (
    headers: readonly string[],
    columns: readonly TableColumn[],
    mapping: ColumnMapping
  ) => readonly string[];
  /** What the import would do; of a large table it is worked out in a worker, which the signal ends. */
  readonly preview: (
    workbook: Workbook,
    wish: ImportWish,
    watch: { readonly signal: AbortSignal }
  ) => Promise<WorkerOutcome<ImportPreview>>;
  /** What taking all tables of a file over would do, each in the place of the one of its name. */
  readonly previewAll: (
    workbook: Workbook,
    tables: readonly NamedTable[],
    how: { readonly locale: string; readonly source?: SourceNote }
  ) => AllPreview;
  /** How the numbers of these rows are written: the user's way, unless they can only be read in another. */
  readonly localeOf: (rows: readonly (readonly string[])[], locale: string) => string;
}

export async function importer(): Promise<Importer> {
  const [
    { importColumns },
    { mapColumns, unmetHeadings },
    { numberLocale },
    { previewAside },
    { suggestTable },
    all
  ] = await Promise.all([
    import('#lib/files/import/preview-import.ts'),
    import('#lib/workbook/match-headings.ts'),
    import('#lib/files/read/number-locale.ts'),
    import('#lib/background/preview-aside.ts'),
    import('#lib/files/import/suggest-table.ts'),
    import('#lib/files/import/preview-all.ts')
  ]);
  return {
    columns: importColumns,
    suggest: suggestTable,
    map: mapColumns,
    unmet: unmetHeadings,
    preview: previewAside,
    previewAll: all.previewAll,
    localeOf: numberLocale
  };
}

/**
 * The whole workbook as a spreadsheet with live formulas, written in a worker; null once it was cancelled.
 * @throws Error with a sentence where it cannot be written
 */
export async function workbookXlsx(workbook: Workbook, watch: Watch): Promise<OfferedFile | null> {
  const [{ fileName }, { runInWorker }] = await Promise.all([
    import('#lib/files/write/file-name.ts'),
    import('#lib/background/run-in-worker.ts')
  ]);
  const open = () =>
    new Worker(new URL('../background/spreadsheet-worker.ts', import.meta.url), { type: 'module' });
  const outcome = await runInWorker<Workbook, Uint8Array<ArrayBuffer>>(open, workbook, watch);
  if (outcome.kind === 'cancelled') return null;
  if (outcome.kind === 'failed') throw new Error(outcome.sentence);
  return {
    name: fileName(workbook.title, '.xlsx'),
    content: new Blob([outcome.result], {
      type: 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet'
    })
  };
}
