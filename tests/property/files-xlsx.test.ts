import fc from 'fast-check';
import { expect, test } from 'vitest';
import { mapColumns } from '#lib/workbook/match-headings.ts';
import { importColumns, previewImport } from '#lib/files/import/preview-import.ts';
import { tableIds, tableTitles } from '#lib/files/tables/tables.ts';
import { readXlsxTables } from '#lib/files/read/xlsx-in.ts';
import { inputSheets } from '#lib/files/xlsx/input-sheets.ts';
import { writeSheets } from '#lib/files/xlsx/write-sheets.ts';
import { nastyNames, randomWorkbook } from '../fixtures/random-workbook.ts';

test('each table written as XLSX and read back in place of itself leaves the workbook as it was', async () => {
  await fc.assert(
    fc.asyncProperty(
      randomWorkbook(),
      fc.constantFrom('en-GB', 'de-DE', 'fr-FR'),
      async (workbook, locale) => {
        const bytes = await writeSheets(
          inputSheets(workbook).sheets(() => false),
          { title: workbook.title }
        );
        const read = await readXlsxTables(bytes, locale);
        if (read.kind === 'refused') throw new Error(read.sentence);
        for (const table of tableIds) {
          const sheet = read.sheets.find(({ name }) => name === tableTitles[table]);
          if (sheet?.table == null) throw new Error(sheet?.sentence ?? `There is no sheet of ${table}.`);
          const mapping = mapColumns(sheet.table.headers, importColumns(table, workbook));
          const preview = previewImport(workbook, {
            table,
            file: sheet.table,
            mapping,
            mode: 'replace',
            locale
          });
          expect(preview).toMatchObject({
            added: 0,
            changed: 0,
            removed: [],
            refusedCells: [],
            refusedRows: []
          });
          expect(preview.workbook).toEqual(workbook);
        }
      }
    ),
    { numRuns: 40 }
  );
});

test('any text written into a cell comes back as it was, and as a text', async () => {
  const text = fc.oneof(
    fc.constantFrom(...nastyNames),
    fc.string({ unit: 'binary', minLength: 1, maxLength: 12 })
  );
  await fc.assert(
    fc.asyncProperty(fc.array(text, { minLength: 1, maxLength: 8 }), async (drawn) => {
      const texts = drawn.map((each) => `${each.toWellFormed()}.`);
      const rows = [['head'], ...texts.map((each) => [each])].map((row) =>
        row.map((each) => ({ kind: 'text', text: each }) as const)
      );
      const bytes = await writeSheets([{ name: 'Texts', frozenRows: 0, widthsCh: [10], rows }], {
        title: 'Texts'
      });
      const read = await readXlsxTables(bytes, 'en-GB');
      expect(read.kind === 'sheets' && read.sheets[0]?.table?.rows.map((row) => row.texts[0])).toEqual(texts);
    }),
    { numRuns: 150 }
  );
});

test('no bytes make the reader throw', async () => {
  const zipLike = fc
    .uint8Array({ maxLength: 400 })
    .map((bytes) => Uint8Array.of(0x50, 0x4b, 3, 4, ...bytes, 0x50, 0x4b, 5, 6, ...bytes.slice(0, 18)));
  await fc.assert(
    fc.asyncProperty(fc.oneof(fc.uint8Array({ maxLength: 300 }), zipLike), async (bytes) => {
      expect((await readXlsxTables(bytes, 'en-GB')).kind).toBe('refused');
    }),
    { numRuns: 300 }
  );
});
