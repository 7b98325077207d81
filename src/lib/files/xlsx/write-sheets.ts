/** The one place that writes XLSX bytes: the library behind it can change here. */
import type { Cell, CellStyle, WriteSheet } from 'hucre/xlsx';
import { writeXlsx } from 'hucre/xlsx';
import type { CellLook, Sheet, SheetCell } from './sheet.ts';

/** A font that every system has, or one of the same widths. */
const font = { name: 'Arial', size: 10 };
const lineHeightPt = 13.5;

const looks: Readonly<Record<CellLook, CellStyle>> = {
  title: { font: { ...font, bold: true, size: 13 } },
  heading: {
    font: { ...font, bold: true },
    border: { bottom: { style: 'thin' } },
    alignment: { wrapText: true, vertical: 'top' }
  },
  input: { fill: { type: 'pattern', pattern: 'solid', fgColor: { rgb: 'FFF6F1E4' } } },
  amount: { numFmt: '#,##0.###' },
  money: { numFmt: '#,##0.00' },
  note: { font: { ...font, color: { rgb: 'FF6B6459' } }, alignment: { wrapText: true, vertical: 'top' } }
};

/** The bytes of a spreadsheet file. Texts stay texts whatever they begin with: only a `formula` cell is one. */
export async function writeSheets(
  sheets: readonly Sheet[],
  { title }: { readonly title: string }
): Promise<Uint8Array> {
  return writeXlsx({
    sheets: sheets.map(writtenSheet),
    properties: { title: escaped(title) },
    defaultFont: font
  });
}

function writtenSheet({ name, widthsCh, frozenRows, rows }: Sheet): WriteSheet {
  const cells = new Map<string, Partial<Cell>>();
  rows.forEach((row, rowIndex) =>
    row.forEach((cell, column) => {
      if (cell !== null) cells.set(`${rowIndex},${column}`, writtenCell(cell));
    })
  );
  return {
    name,
    columns: widthsCh.map((width) => ({ width: Math.min(width, 100) })),
    cells,
    rowDefs: new Map(
      rows.flatMap((row, index) => wrappedHeight(row, widthsCh).map((height) => [index, { height }]))
    ),
    pageSetup: {
      orientation: 'landscape',
      fitToPage: true,
      fitToWidth: 1,
      fitToHeight: 0,
      ...(frozenRows > 0 ? { printTitlesRow: `$1:$${frozenRows}` } : {})
    },
    ...(frozenRows > 0 ? { freezePane: { rows: frozenRows } } : {})
  };
}

/** The height of a row whose words are wrapped, in points; none where one line is enough. */
function wrappedHeight(row: readonly (SheetCell | null)[], widthsCh: readonly number[]): readonly number[] {
  const lines = row.map((cell, column) =>
    cell?.kind === 'text' && (cell.look === 'note' || cell.look === 'heading')
      ? Math.ceil(cell.text.length / Math.max(1, widthsCh[column] ?? 10))
      : 1
  );
  const most = Math.max(1, ...lines);
  return most > 1 ? [most * lineHeightPt] : [];
}

const valueOf = (cell: Exclude<SheetCell, { kind: 'formula' }>): string | number | boolean =>
  cell.kind === 'text' ? escaped(cell.text) : cell.value;

function writtenCell(cell: SheetCell): Partial<Cell> {
  const style = cell.look === undefined ? {} : { style: looks[cell.look] };
  if (cell.kind === 'formula')
    return { formula: cell.formula, formulaResult: cell.result, type: 'formula', ...style };
  return { value: valueOf(cell), ...style };
}

/**
 * XML has no place for control characters, and drops a carriage return: the format writes them as `_x000D_`, and so has
 * to write a text that looks like that otherwise too (ECMA-376, part 1, ST_Xstring).
 */
export function escaped(text: string): string {
  return text
    .replace(/_(?=x[0-9A-Fa-f]{4}_)/g, '_x005F_')
    .replace(
      /[^\P{Cc}\t\n]|[\ufffe\uffff]/gu,
      (sign) => `_x${sign.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}_`
    );
}
