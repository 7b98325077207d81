import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { mapColumns } from '#lib/workbook/match-headings.ts';
import { readCsv } from '#lib/files/read/csv-in.ts';
import { writeCsv, writeTableCsv } from '#lib/files/write/csv-out.ts';
import { guardFormula, unguardFormula } from '#lib/files/write/formula-guard.ts';
import { importColumns, previewImport } from '#lib/files/import/preview-import.ts';
import { tableIds } from '#lib/files/tables/tables.ts';
import { nastyNames, randomWorkbook } from '../fixtures/random-workbook.ts';

const locales = ['en-GB', 'de-DE', 'fr-FR', 'de-CH', 'sv-SE', 'ar-EG', 'hi-IN', 'pl-PL'] as const;
const text = fc.oneof(fc.constantFrom(...nastyNames), fc.string({ unit: 'binary', maxLength: 12 }));

describe.each(tableIds)('the table %s', (table) => {
  test('written as CSV and read back in place of itself, it leaves the workbook as it was', () => {
    fc.assert(
      fc.property(randomWorkbook(), fc.constantFrom(...locales), (workbook, locale) => {
        const read = readCsv(writeTableCsv(table, workbook, locale));
        if (read.kind === 'refused') throw new Error(read.sentence);
        const mapping = mapColumns(read.table.headers, importColumns(table, workbook));
        const preview = previewImport(workbook, {
          table,
          file: read.table,
          mapping,
          mode: 'replace',
          locale
        });
        expect(preview).toMatchObject({
          added: 0,
          changed: 0,
          removed: [],
          refusedCells: [],
          refusedRows: [],
          notes: []
        });
        expect(preview.workbook).toEqual(workbook);
      }),
      { numRuns: 60 }
    );
  });
});

test('any cells written as CSV come back as they were', () => {
  const cells = fc
    .integer({ min: 1, max: 5 })
    .chain((width) =>
      fc.array(fc.array(text, { minLength: width, maxLength: width }), { minLength: 1, maxLength: 6 })
    );
  fc.assert(
    fc.property(cells, fc.constantFrom(...locales), (rows, locale) => {
      const wellFormed = rows.map((row) => row.map((cell) => cell.toWellFormed().replaceAll('\0', '')));
      const headed = [
        wellFormed[0]?.map((_, index) => `h${index}`) ?? [],
        ...wellFormed.map((row) => row.map(guardFormula))
      ];
      const read = readCsv(writeCsv(headed, locale));
      const kept = wellFormed.filter((row) => row.some((cell) => cell.trim() !== ''));
      if (read.kind === 'refused') expect(kept).toEqual([]);
      else expect(read.table.rows.map((row) => row.texts)).toEqual(kept);
    }),
    { numRuns: 500 }
  );
});

test('no text of a user’s begins as a formula does, and each comes back', () => {
  fc.assert(
    fc.property(text, (given) => {
      expect(guardFormula(given)).not.toMatch(/^[=+\-@\p{Cc}]/u);
      expect(unguardFormula(guardFormula(given))).toBe(given);
    }),
    { numRuns: 2000 }
  );
});

test('no bytes make the reader throw', () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 300 }), fc.boolean(), (bytes, headings) => {
      expect(['table', 'refused']).toContain(readCsv(bytes, { headings }).kind);
    }),
    { numRuns: 500 }
  );
});
