/** The one place that reads XLSX bytes: the library behind it can change here. */
import type { CellValue } from 'hucre/xlsx';
import { readXlsx } from 'hucre/xlsx';

export interface SheetValues {
  readonly name: string;
  readonly rows: readonly (readonly CellValue[])[];
}

/**
 * The values of every sheet that is shown, of formulas the stored results, up to a number of rows and columns.
 * @throws Error of the library where the file is no such spreadsheet, damaged, or locked with a password
 */
export async function readSheets(
  bytes: Uint8Array,
  { rows, lastCell }: { readonly rows: number; readonly lastCell: string }
): Promise<readonly SheetValues[]> {
  const workbook = await readXlsx(bytes, {
    maxRows: rows,
    range: `A1:${lastCell}`,
    sheets: ({ hidden, veryHidden }) => hidden !== true && veryHidden !== true
  });
  return workbook.sheets.map((sheet) => ({ name: sheet.name, rows: sheet.rows }));
}
