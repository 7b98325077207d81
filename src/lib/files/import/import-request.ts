/** What an import is asked to do with a table from a file, and what it would do: the words of all its parts. */
import type { Workbook } from '#lib/workbook/workbook.ts';
import type { SourceNote } from '#lib/workbook/source-note.ts';
import type { ColumnMapping } from '#lib/workbook/match-headings.ts';
import type { ReadTable } from '../read/read-table.ts';
import type { TableId } from '../tables/tables.ts';

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
  /** Kept as the note of each number that is new in its cell. */
  readonly source?: SourceNote;
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
  /** Keys of the rows that lines of the file went to, where rows have keys. */
  readonly keyOfLine?: ReadonlyMap<number, string>;
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
