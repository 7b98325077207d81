import Papa from 'papaparse';
import { localeMarks } from '#lib/numbers/locale-marks.ts';
import type { Field } from '#lib/workbook/field.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { cellReader } from './cell-reader.ts';
import { cellText } from './cell-text.ts';
import { fileName } from './file-name.ts';
import { guardFormula } from './formula-text.ts';
import type { TableId } from './tables.ts';
import { columnsOf, headerOf, rowsOf, settingColumns, settings, tableTitles } from './tables.ts';

/**
 * A table of the workbook as the bytes of a CSV file (RFC 4180, UTF-8 with a byte order mark, so that spreadsheet
 * programs read its letters right). Numbers are written as the locale writes them; where that is with a decimal comma,
 * cells are separated by semicolons, which such programs expect.
 */
export function writeTableCsv(table: TableId, workbook: Workbook, locale: string): Uint8Array {
  return writeCsv(tableTexts(table, workbook, locale), locale);
}

/** Rows of texts as the bytes of a CSV file, in the same way. Numbers among them are the caller’s to format. */
export function writeCsv(rows: readonly (readonly string[])[], locale: string): Uint8Array {
  const delimiter = localeMarks(locale).decimal === ',' ? ';' : ',';
  const csv = Papa.unparse(rows as string[][], { delimiter, newline: '\r\n' });
  return new TextEncoder().encode(`\uFEFF${csv}\r\n`);
}

/** The name under which a table is saved. */
export function tableFileName(title: string, table: TableId): string {
  return fileName(`${title} – ${tableTitles[table]}`, '.csv');
}

/** A table's cells as texts, its headings first. */
function tableTexts(table: TableId, workbook: Workbook, locale: string): readonly (readonly string[])[] {
  const valueAt = cellReader(workbook);
  const textAt = (path: string, field: Field): string => {
    const text = cellText(valueAt(path), { field, workbook, locale });
    // Names can be anything and a choice may be one; numbers keep their minus sign.
    return field.kind === 'text' || field.kind === 'choice' ? guardFormula(text) : text;
  };
  if (table === 'settings')
    return [
      settingColumns.map((column) => column.header),
      ...settings.map(({ path, section, field }) => [
        section,
        headerOf(field, workbook.currency),
        textAt(path, field)
      ])
    ];
  const columns = columnsOf(table, workbook.currency);
  return [
    columns.map((column) => column.header),
    ...rowsOf(table, workbook).map((row) =>
      columns.map(({ key, field }) => {
        const path = row.pathOf(key);
        return path === null || field === null ? row.id : textAt(path, field);
      })
    )
  ];
}
