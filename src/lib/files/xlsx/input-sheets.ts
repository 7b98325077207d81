/** The workbook's inputs as sheets, one for each table, and where each cell of the document went. */
import type { Field } from '#lib/workbook/field.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { cellReader } from '../cell-reader.ts';
import { cellText } from '../cell-text.ts';
import { columnsOf, headerOf, rowsOf, settingColumns, settings, tableIds, tableTitles } from '../tables.ts';
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
      return { kind: 'number', value: Number(value), look: 'input' };
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
  const cellAt = (path: string, field: Field, place: { sheet: string; row: number; column: number }) => {
    if (!addresses.has(path)) addresses.set(path, cellAddress(place.sheet, place));
    return inputCell(valueAt(path), field, workbook);
  };
  const sheets = tableIds.map((table): Sheet => {
    const name = tableTitles[table];
    if (table === 'settings')
      return {
        name,
        frozenRows: 1,
        widthsCh: [14, 34, 26, 60],
        rows: [
          [...settingColumns.map((column) => heading(column.header)), heading('What it is')],
          ...settings.map(({ path, section, field }, index): (SheetCell | null)[] => [
            { kind: 'text', text: section },
            { kind: 'text', text: headerOf(field, workbook.currency) },
            cellAt(path, field, { sheet: name, row: index + 1, column: 2 }),
            { kind: 'text', text: field.words, look: 'note' }
          ])
        ]
      };
    const columns = columnsOf(table, workbook.currency);
    return {
      name,
      frozenRows: 1,
      widthsCh: columns.map(({ header, field }) =>
        field?.kind === 'text' ? 32 : Math.max(10, header.length + 2)
      ),
      rows: [
        columns.map((column) => heading(column.header)),
        ...rowsOf(table, workbook).map((row, index) =>
          columns.map(({ key, field }, column): SheetCell | null => {
            const path = row.pathOf(key);
            if (path === null || field === null) return { kind: 'text', text: row.id };
            return cellAt(path, field, { sheet: name, row: index + 1, column });
          })
        )
      ]
    };
  });
  return { sheets, addresses };
}
