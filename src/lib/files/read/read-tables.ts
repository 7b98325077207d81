import { readCsv } from './csv-in.ts';
import type { ReadTable } from './read-table.ts';
import { readXlsxTables } from './xlsx-in.ts';

/** A file's tables, each with a name; or why there are none. `offer` names an older encoding that may fit. */
export type TablesOfFile =
  | { readonly kind: 'tables'; readonly tables: readonly NamedTable[] }
  | { readonly kind: 'refused'; readonly sentence: string; readonly offer?: 'windows-1252' };

export interface NamedTable {
  readonly name: string;
  readonly table: ReadTable;
}

export interface TablesWanted {
  readonly file: Blob;
  readonly name: string;
  readonly locale: string;
  readonly encoding?: 'utf-8' | 'windows-1252';
}

/** Reads a CSV or spreadsheet file; what is no table in it, a sheet of notes for example, is passed over. */
export async function readTables({ file, name, locale, encoding }: TablesWanted): Promise<TablesOfFile> {
  const bytes = new Uint8Array(await file.arrayBuffer());
  if (/\.xlsx$/i.test(name) || (bytes[0] === 0x50 && bytes[1] === 0x4b)) {
    const read = await readXlsxTables(bytes, locale);
    if (read.kind === 'refused') return read;
    const tables = read.sheets.flatMap((sheet) =>
      sheet.table === null ? [] : [{ name: sheet.name, table: sheet.table }]
    );
    const [first] = read.sheets;
    return tables.length > 0
      ? { kind: 'tables', tables }
      : {
          kind: 'refused',
          sentence:
            `No sheet of this file holds a table with headings in its first row. ${first === undefined ? '' : `“${first.name}”: ${first.sentence ?? ''}`}`.trim()
        };
  }
  const read = readCsv(bytes, encoding === undefined ? {} : { encoding });
  return read.kind === 'refused' ? read : { kind: 'tables', tables: [{ name, table: read.table }] };
}
