/** The workbook's inputs as sheets, one for each table, and where each cell of the document went. */
import type { Field } from '#lib/workbook/field.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { cellReader } from '#lib/workbook/cell-reader.ts';
import { cellText } from '../tables/cell-text.ts';
import type { TableCell } from '../tables/table-cells.ts';
import { tableCells } from '../tables/table-cells.ts';
import { settings, tableColumns, tableIds, tableTitles } from '../tables/tables.ts';
import type { Sheet, SheetCell } from './sheet.ts';
import { cellAddress } from './sheet.ts';

export interface InputSheets {
  readonly sheets: readonly Sheet[];
  /** Address by cell path, e.g. `caseMix.lap-chole.minutes`. */
  readonly addresses: ReadonlyMap<string, string>;
}

/** The way in which texts are written where a sheet holds words: choices and lists, no numbers. */
const wordsLocale = 'en-GB';

function inputCell(value: unknown, field: Field, workbook: Workbook): SheetCell | null {
  if (value === null || value === undefined) return { kind: 'text', text: '', look: 'input' };
  switch (field.kind) {
    case 'number':
      return { kind: 'number', value: value as number, look: 'input' };
    case 'money':
      return { kind: 'number', value: Number(value), look: 'price' };
    case 'flag':
      return { kind: 'text', text: value === true ? 'Yes' : 'No', look: 'input' };
    default:
      return { kind: 'text', text: cellText(value, { field, workbook, locale: wordsLocale }), look: 'input' };
  }
}

const heading = (text: string): SheetCell => ({ kind: 'text', text, look: 'heading' });

/** One sheet for each table: headings first, then the rows, as in the CSV files. */
export function inputSheets(workbook: Workbook): InputSheets {
  const addresses = new Map<string, string>();
  const valueAt = cellReader(workbook);
  const cellOf = (cell: TableCell, place: { sheet: string; row: number; column: number }) => {
    switch (cell.kind) {
      case 'text':
        return { kind: 'text', text: cell.text } as const;
      case 'number':
        return {
          kind: 'number',
          value: Number(cell.value),
          look: typeof cell.value === 'string' ? 'price' : 'input'
        } as const;
      case 'attached': {
        const text = cell.field.write(valueAt(cell.path), { workbook, locale: wordsLocale });
        return { kind: 'text', text, look: 'input' } as const;
      }
      case 'cell':
        if (!addresses.has(cell.path)) addresses.set(cell.path, cellAddress(place.sheet, place));
        return inputCell(valueAt(cell.path), cell.field, workbook);
    }
  };
  const sheets = tableIds.map((table): Sheet => {
    const name = tableTitles[table];
    const columns = tableColumns(table, workbook.currency);
    const rows = tableCells(table, workbook).map((row, index): (SheetCell | null)[] =>
      row.map((cell, column) => cellOf(cell, { sheet: name, row: index + 1, column }))
    );
    const headings = columns.map((column) => heading(column.header));
    if (table === 'settings')
      return {
        name,
        frozenRows: 1,
        widthsCh: [14, 48, 38, 64],
        rows: [
          [...headings, heading('What it is')],
          ...rows.map((row, index): (SheetCell | null)[] => [
            ...row,
            { kind: 'text', text: settings[index]?.field.words ?? '', look: 'note' }
          ])
        ]
      };
    return {
      name,
      frozenRows: 1,
      frozenColumns: 1,
      widthsCh: headings.map((head, column) => widthOf([head, ...rows.map((row) => row[column] ?? null)])),
      rows: [headings, ...rows]
    };
  });
  return { sheets, addresses };
}

/** As wide as its longest words, within reason; a long heading may take two lines. */
function widthOf([head, ...cells]: readonly (SheetCell | null)[]): number {
  const length = (cell: SheetCell | null | undefined) => (cell?.kind === 'text' ? cell.text.length : 0);
  const longest = cells.reduce((most, cell) => Math.max(most, length(cell)), 0);
  return Math.min(40, Math.max(11, Math.ceil(length(head) / 2) + 3, longest + 2));
}
