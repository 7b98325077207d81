import Papa from 'papaparse';
import { cellsNotInForce } from '#lib/workbook/not-in-force.ts';
import { formatForEditing } from '#lib/numbers/format-number.ts';
import { localeMarks } from '#lib/numbers/locale-marks.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { cellReader } from '#lib/workbook/cell-reader.ts';
import { cellText } from '../tables/cell-text.ts';
import { fileName } from './file-name.ts';
import { guardFormula } from './formula-guard.ts';
import { notInForceHeader } from '../tables/added-headers.ts';
import type { TableCell } from '../tables/table-cells.ts';
import { tableCells } from '../tables/table-cells.ts';
import type { TableId } from '../tables/tables.ts';
import { tableColumns, tableTitles } from '../tables/tables.ts';

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

/** The name under which a table is saved; of a long title the end goes. That of invented figures says so. */
export function tableFileName({ title, invented }: Workbook, table: TableId): string {
  return fileName(title, ` – ${tableTitles[table]}${invented ? ', invented figures' : ''}.csv`);
}

/**
 * A table's cells as texts, its headings first. A cell has the value in force; where a text that stands in one is not in
 * force, a last column says so in the row.
 */
function tableTexts(table: TableId, workbook: Workbook, locale: string): readonly (readonly string[])[] {
  const valueAt = cellReader(workbook);
  const textOf = (cell: TableCell): string => {
    switch (cell.kind) {
      case 'text':
        return guardFormula(cell.text);
      case 'number':
        return formatForEditing(cell.value, { locale });
      case 'attached':
        return cell.field.write(valueAt(cell.path), { workbook, locale });
      case 'cell': {
        const text = cellText(valueAt(cell.path), { field: cell.field, workbook, locale });
        // Names can be anything and a choice may be one; numbers keep their minus sign.
        return cell.field.kind === 'text' || cell.field.kind === 'choice' ? guardFormula(text) : text;
      }
    }
  };
  const cells = tableCells(table, workbook);
  const sentences = new Map(cellsNotInForce(workbook, locale).map(({ path, sentence }) => [path, sentence]));
  const saidOf = (row: readonly TableCell[]): string =>
    row.flatMap((cell) => ('path' in cell ? (sentences.get(cell.path) ?? []) : [])).join(' ');
  const isSaid = sentences.size > 0 && cells.some((row) => saidOf(row) !== '');
  return [
    [
      ...tableColumns(table, workbook.currency).map((column) => column.header),
      ...(isSaid ? [notInForceHeader] : [])
    ],
    ...cells.map((row) => [...row.map(textOf), ...(isSaid ? [guardFormula(saidOf(row))] : [])])
  ];
}
