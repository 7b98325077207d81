/** A whole workbook by its tables: what goes out as files and comes into another workbook is the same workbook. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readCsv } from '#lib/files/read/csv-in.ts';
import { writeTableCsv } from '#lib/files/write/csv-out.ts';
import { previewAll, tableOrder } from '#lib/files/import/preview-all.ts';
import type { ReadTable } from '#lib/files/read/read-table.ts';
import type { TableId } from '#lib/files/tables/tables.ts';
import { tableIds, tableTitles } from '#lib/files/tables/tables.ts';
import { readXlsxTables } from '#lib/files/read/xlsx-in.ts';
import { inputSheets } from '#lib/files/xlsx/input-sheets.ts';
import { writeSheets } from '#lib/files/xlsx/write-sheets.ts';
import { blankWorkbook } from '#lib/workbook/blank.ts';
import { parseWorkbook } from '#lib/workbook/parse-workbook.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { randomWorkbook } from '../fixtures/random-workbook.ts';

/** Takes every table in place of the one that is there. */
function takenOver(
  tables: Readonly<Partial<Record<TableId, ReadTable>>>,
  into: Workbook,
  locale: string
): Workbook {
  const named = Object.entries(tables).map(([table, read]) => ({
    name: tableTitles[table as TableId],
    table: read
  }));
  const { workbook, passedOver } = previewAll(into, named, { locale });
  expect(passedOver).toEqual([]);
  expect(parseWorkbook(workbook).kind).toBe('workbook');
  return workbook;
}

/** A file of headings alone is refused, so lists that may be empty are not so here; nor is what no table holds. */
const full = randomWorkbook({ rows: 4 })
  .filter(({ caseMix, monitorPrices }) => caseMix.length > 0 && monitorPrices.length > 0)
  .map((workbook): Workbook => ({ ...workbook, keptTexts: {} }));

/** The workbook with amounts of money in their shortest form: 12.50 and 12.5 are the same amount. */
const withShortAmounts = (workbook: Workbook): unknown =>
  JSON.parse(JSON.stringify(workbook), (key, value: unknown) =>
    typeof value === 'string' && !['name', 'title', 'reason', 'text'].includes(key)
      ? value.replace(/^(-?\d+)(?:\.0*|(\.\d*[1-9])0*)$/, '$1$2')
      : value
  );

test('every table is among them', () => {
  expect([...tableOrder].sort()).toEqual([...tableIds].sort());
});

test('as CSV, into an empty workbook', () => {
  fc.assert(
    fc.property(full, fc.constantFrom('en-GB', 'de-DE', 'fr-FR', 'ar-EG'), (workbook, locale) => {
      const tables: Partial<Record<TableId, ReadTable>> = {};
      for (const table of tableIds) {
        const read = readCsv(writeTableCsv(table, workbook, locale));
        if (read.kind === 'table') tables[table] = read.table;
      }
      // Prices are in the currency of the workbook that takes them, so that is set first.
      const start = { ...blankWorkbook(), currency: workbook.currency };
      expect(withShortAmounts(takenOver(tables, start, locale))).toEqual(withShortAmounts(workbook));
    }),
    { numRuns: 60, endOnFailure: true }
  );
});

test('as a spreadsheet, into an empty workbook', async () => {
  await fc.assert(
    fc.asyncProperty(full, async (workbook) => {
      const read = await readXlsxTables(
        await writeSheets(
          inputSheets(workbook).sheets(() => false),
          { title: workbook.title }
        ),
        'en-GB'
      );
      if (read.kind === 'refused') throw new Error(read.sentence);
      const tables: Partial<Record<TableId, ReadTable>> = {};
      for (const table of tableIds) {
        const sheet = read.sheets.find(({ name }) => name === tableTitles[table]);
        if (sheet?.table != null) tables[table] = sheet.table;
      }
      const start = { ...blankWorkbook(), currency: workbook.currency };
      expect(withShortAmounts(takenOver(tables, start, 'en-GB'))).toEqual(withShortAmounts(workbook));
    }),
    { numRuns: 40, endOnFailure: true }
  );
});
