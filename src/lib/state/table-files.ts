/** Tables of the workbook as files, and files as tables: loaded when first used, as most visits need none. */
import type { ColumnMapping } from '#lib/files/column-mapping.ts';
import type { ImportMode, ImportPreview } from '#lib/files/import-table.ts';
import type { ReadTable } from '#lib/files/read-table.ts';
import type { TableColumn, TableId } from '#lib/files/tables.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';

/** A file that can be kept. */
export interface OfferedFile {
  readonly name: string;
  readonly content: Blob;
}

/** One table as CSV. */
export async function tableCsv(table: TableId, workbook: Workbook, locale: string): Promise<OfferedFile> {
  const { tableFileName, writeTableCsv } = await import('#lib/files/csv-out.ts');
  const bytes = writeTableCsv(table, workbook, locale) as Uint8Array<ArrayBuffer>;
  return {
    name: tableFileName(workbook.title, table),
    content: new Blob([bytes], { type: 'text/csv;charset=utf-8' })
  };
}

/** A file's tables, each with a name; or why there are none. `offer` names an older encoding that may fit. */
export type TablesOfFile =
  | {
      readonly kind: 'tables';
      readonly tables: readonly { readonly name: string; readonly table: ReadTable }[];
    }
  | { readonly kind: 'refused'; readonly sentence: string; readonly offer?: 'windows-1252' };

/** Reads a CSV or spreadsheet file that the user chose. */
export async function tablesFrom(
  file: File,
  { locale, encoding }: { locale: string; encoding?: 'utf-8' | 'windows-1252' }
): Promise<TablesOfFile> {
  const bytes = new Uint8Array(await file.arrayBuffer());
  if (/\.xlsx$/i.test(file.name) || (bytes[0] === 0x50 && bytes[1] === 0x4b)) {
    const { readXlsxTables } = await import('#lib/files/xlsx-in.ts');
    const read = await readXlsxTables(bytes, locale);
    if (read.kind === 'refused') return read;
    const tables = read.sheets.flatMap(({ name, table }) => (table === null ? [] : [{ name, table }]));
    return tables.length > 0
      ? { kind: 'tables', tables }
      : { kind: 'refused', sentence: 'No sheet of this file holds a table with headings in its first row.' };
  }
  const { readCsv } = await import('#lib/files/csv-in.ts');
  const read = readCsv(bytes, encoding === undefined ? {} : { encoding });
  return read.kind === 'refused'
    ? read
    : { kind: 'tables', tables: [{ name: file.name, table: read.table }] };
}

/** What an import is asked to do. */
export interface ImportWish {
  readonly table: TableId;
  readonly file: ReadTable;
  readonly mapping: ColumnMapping;
  readonly mode: ImportMode;
  readonly locale: string;
}

/** The tool that shows what an import would do before anything is changed. */
export interface Importer {
  readonly columns: (table: TableId, workbook: Workbook) => readonly TableColumn[];
  readonly map: (headers: readonly string[], columns: readonly TableColumn[]) => ColumnMapping;
  readonly preview: (workbook: Workbook, wish: ImportWish) => ImportPreview;
  /** How the numbers of these rows are written: the user's way, unless they can only be read in another. */
  readonly localeOf: (rows: readonly (readonly string[])[], locale: string) => string;
}

export async function importer(): Promise<Importer> {
  const [{ importColumns, previewImport }, { mapColumns }, { numberLocale }] = await Promise.all([
    import('#lib/files/import-table.ts'),
    import('#lib/files/column-mapping.ts'),
    import('#lib/files/number-locale.ts')
  ]);
  return { columns: importColumns, map: mapColumns, preview: previewImport, localeOf: numberLocale };
}

/** The whole workbook as a spreadsheet with live formulas. Large workbooks take some seconds. */
export async function workbookXlsx(workbook: Workbook): Promise<OfferedFile> {
  const [
    { writeWorkbookXlsx, xlsxFileName },
    { reckon },
    { recorder, workingOf },
    { citation },
    { coreInput }
  ] = await Promise.all([
    import('#lib/files/xlsx-out.ts'),
    import('#lib/calc/reckoning.ts'),
    import('#lib/calc/working/recorder.ts'),
    import('#lib/calc/working/citation.ts'),
    import('#lib/workbook/core-input.ts')
  ]);
  const reckoning = reckon(recorder, coreInput(workbook));
  const bytes = await writeWorkbookXlsx({ workbook, reckoning, workingOf, citation });
  return {
    name: xlsxFileName(workbook.title),
    content: new Blob([bytes as Uint8Array<ArrayBuffer>], {
      type: 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet'
    })
  };
}
