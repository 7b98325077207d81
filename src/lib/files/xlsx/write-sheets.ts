/** The one place that writes XLSX bytes: the library behind it can change here. */
import type { Cell, CellStyle, SheetChart as WrittenChart, WriteSheet } from 'hucre/xlsx';
import { writeXlsx } from 'hucre/xlsx';
import { withZipTexts } from '../read/zip-entries.ts';
import { ownParts } from './own-parts.ts';
import type { CellLook, Sheet, SheetCell, SheetChart } from './sheet.ts';
import { quotedSheet } from './sheet.ts';

/** A font that every system has, or one of the same widths. */
const font = { name: 'Arial', size: 10 };
const lineHeightPt = 13.5;

const filled = (rgb: string) => ({ type: 'pattern', pattern: 'solid', fgColor: { rgb } }) as const;
const tint = filled('FFF6F1E4');
const grey = filled('FFEFEDEA');
const greyInk = { ...font, color: { rgb: 'FF6B6459' } };
const alarm = { fill: filled('FFC0392B'), font: { ...font, bold: true, color: { rgb: 'FFFFFFFF' } } };
const open = { locked: false } as const;

// Amounts keep all their decimals, so that they stand one below the other.
const looks: Readonly<Record<CellLook | 'plain', CellStyle>> = {
  plain: { alignment: { vertical: 'top' } },
  title: { font: { ...font, bold: true, size: 13 } },
  heading: {
    font: { ...font, bold: true },
    border: { bottom: { style: 'thin' } },
    alignment: { wrapText: true, vertical: 'top' }
  },
  input: { fill: tint, alignment: { vertical: 'top' }, protection: open },
  price: { fill: tint, numFmt: '#,##0.00##', alignment: { vertical: 'top' }, protection: open },
  fixed: { fill: grey, font: greyInk, alignment: { vertical: 'top' } },
  'fixed-price': { fill: grey, font: greyInk, numFmt: '#,##0.00##', alignment: { vertical: 'top' } },
  amount: { numFmt: '#,##0.000', alignment: { vertical: 'top' } },
  money: { numFmt: '#,##0.00', alignment: { vertical: 'top' } },
  note: { font: greyInk, alignment: { wrapText: true, vertical: 'top' } }
};

/** Where a cell stands, as far as its style hangs on that. */
interface Standing {
  /** In the first column, where words need no space before them. */
  readonly isFirst: boolean;
  /** In a row of totals. */
  readonly isTotal: boolean;
  /** Above a column of numbers, which are set to the right. */
  readonly isOverNumbers: boolean;
}

const styles = new Map<string, CellStyle>();

function styleOf(cell: SheetCell, { isFirst, isTotal, isOverNumbers }: Standing): CellStyle {
  const look = cell.look ?? 'plain';
  const isText = cell.kind === 'text';
  const key = [look, isText, isFirst, isTotal, isOverNumbers].join();
  const known = styles.get(key);
  if (known !== undefined) return known;
  const base = looks[look];
  const style: CellStyle = {
    ...base,
    ...(isTotal ? { font: { ...(base.font ?? font), bold: true }, border: { top: { style: 'thin' } } } : {}),
    alignment: {
      ...base.alignment,
      ...(isOverNumbers
        ? { horizontal: 'right' }
        : isText && !isFirst
          ? { horizontal: 'left', indent: 1 }
          : {})
    }
  };
  styles.set(key, style);
  return style;
}

/** The bytes of a spreadsheet file. Texts stay texts whatever they begin with: only a `formula` cell is one. */
export async function writeSheets(
  sheets: readonly Sheet[],
  { title, invented = false }: { readonly title: string; readonly invented?: boolean }
): Promise<Uint8Array> {
  // A page head holds at most 255 characters, and an ampersand begins a code there; two of them are one.
  const head =
    `${title.slice(0, 90)}${invented ? ' · invented figures, evidence for nothing' : ''}`.replaceAll(
      '&',
      '&&'
    );
  const bytes = await writeXlsx({
    sheets: sheets.map((sheet) => ({
      ...writtenSheet(sheet),
      headerFooter: { oddHeader: escaped(`&L${head}&R&A`), oddFooter: '&R&P / &N' }
    })),
    namedRanges: [
      ...sheets.flatMap(printTitles),
      ...sheets.flatMap(({ names = [] }) => names.map(({ name, address }) => ({ name, range: address })))
    ],
    properties: { title: escaped(title) },
    defaultFont: font
  });
  return withZipTexts(bytes, ownParts(font.name));
}

/**
 * The rows that are printed again on each page. The library has a setting for them, but writes the sheet's name bare;
 * the format wants one with a blank or another sign in quotation marks (ECMA-376, part 1, 18.17.2.3).
 */
const printTitles = ({ name, frozenRows }: Sheet) =>
  frozenRows > 0
    ? [{ name: '_xlnm.Print_Titles', range: `${quotedSheet(name)}!$1:$${frozenRows}`, scope: name }]
    : [];

function writtenSheet({
  name,
  widthsCh,
  frozenRows,
  frozenColumns = 0,
  totals,
  rows,
  locked,
  alerts = [],
  charts = []
}: Sheet): WriteSheet {
  const cells = new Map<string, Partial<Cell>>();
  const isNumber = (cell: SheetCell | null | undefined) =>
    cell?.kind === 'number' || cell?.kind === 'formula';
  const firstBelow = (row: number, column: number) =>
    rows.slice(row + 1, row + 20).find((below) => below[column] != null)?.[column];
  rows.forEach((row, rowIndex) =>
    row.forEach((cell, column) => {
      if (cell === null) return;
      const style = styleOf(cell, {
        isFirst: column === 0,
        isTotal: totals?.has(rowIndex) === true,
        isOverNumbers: cell.look === 'heading' && isNumber(firstBelow(rowIndex, column))
      });
      cells.set(`${rowIndex},${column}`, { ...contentOf(cell), style });
    })
  );
  return {
    name,
    columns: widthsCh.map((width) => ({ width: Math.min(width, 100) })),
    cells,
    rowDefs: new Map(
      rows.flatMap((row, index) => wrappedHeight(row, widthsCh).map((height) => [index, { height }]))
    ),
    ...(locked === true ? { protection: lockedSheet } : {}),
    ...(charts.length === 0 ? {} : { charts: charts.map(writtenChart) }),
    ...(alerts.length === 0
      ? {}
      : {
          conditionalRules: alerts.map(({ cells: range, when }, index) => ({
            type: 'expression' as const,
            priority: index + 1,
            formula: when,
            range,
            style: alarm
          }))
        }),
    pageSetup: {
      paperSize: 'a4',
      orientation: 'landscape',
      fitToPage: true,
      fitToWidth: 1,
      fitToHeight: 0
    },
    ...(frozenRows + frozenColumns > 0 ? { freezePane: { rows: frozenRows, columns: frozenColumns } } : {})
  };
}

const writtenChart = ({ kind, title, unit, categories, series, from, to }: SheetChart): WrittenChart => ({
  type: kind === 'lines' ? 'line' : 'column',
  ...(kind === 'lines' ? {} : { barGrouping: 'stacked' as const }),
  title: escaped(title),
  series: series.map(({ name, values }) => ({ name: escaped(name), values, categories, smooth: false })),
  axes: {
    // Below all that is drawn, where the amounts go below 0.
    x: { tickLblPos: 'low' },
    y: { title: escaped(unit), numberFormat: { formatCode: '#,##0', sourceLinked: false } }
  },
  anchor: { from: { row: from.row, col: from.column }, to: { row: to.row, col: to.column } }
});

/** Without a password: whoever checks the file may unlock it, and widths and heights are the reader’s anyway. */
const lockedSheet = { sheet: true, formatColumns: true, formatRows: true } as const;

/** The height of a row whose words are wrapped, in points; none where one line is enough. */
function wrappedHeight(row: readonly (SheetCell | null)[], widthsCh: readonly number[]): readonly number[] {
  const lines = row.map((cell, column) =>
    cell?.kind === 'text' && (cell.look === 'note' || cell.look === 'heading')
      ? linesOf(cell.text, Math.max(1, (widthsCh[column] ?? 10) - 1))
      : 1
  );
  const most = Math.max(1, ...lines);
  return most > 1 ? [most * lineHeightPt] : [];
}

/** How many lines words take in a column of so many characters; none is broken. */
function linesOf(text: string, widthCh: number): number {
  let lines = 1;
  let used = 0;
  for (const word of text.split(/\s+/)) {
    const needed = used === 0 ? word.length : used + 1 + word.length;
    if (needed > widthCh && used > 0) {
      lines++;
      used = word.length;
    } else used = needed;
  }
  return lines;
}

const valueOf = (cell: Exclude<SheetCell, { kind: 'formula' }>): string | number | boolean =>
  cell.kind === 'text' ? escaped(cell.text) : cell.value;

const contentOf = (cell: SheetCell): Partial<Cell> =>
  cell.kind === 'formula'
    ? { formula: cell.formula, formulaResult: cell.result, type: 'formula' }
    : { value: valueOf(cell) };

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
