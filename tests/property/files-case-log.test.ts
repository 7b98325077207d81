import fc from 'fast-check';
import Papa from 'papaparse';
import { expect, test } from 'vitest';
import { csvRows } from '#lib/files/case-log/csv-rows.ts';
import { nastyNames } from '../fixtures/random-workbook.ts';

test('however a file is cut into pieces, even within a letter, and its lines end, its rows and their lines are the same', async () => {
  const cell = fc.oneof(
    fc.constantFrom(...nastyNames),
    fc.string({ maxLength: 6 }),
    fc.integer().map(String)
  );
  const table = fc.array(fc.array(cell, { minLength: 3, maxLength: 3 }), { minLength: 1, maxLength: 12 });
  await fc.assert(
    fc.asyncProperty(
      table,
      fc.array(fc.constantFrom('\r\n', '\n', '\r'), { minLength: 12, maxLength: 12 }),
      fc.array(fc.nat(40), { maxLength: 30 }),
      async (rows, newlines, cuts) => {
        const given = [['a', 'b', 'c'], ...rows];
        const text = given
          .map((row, index) => Papa.unparse([row], { quotes: true }) + (newlines[index] ?? ''))
          .join('');
        const bytes = new TextEncoder().encode(text);
        async function* pieces() {
          let at = 0;
          for (const length of cuts) {
            // The first piece has to hold the headings, from which delimiter and line ends are told.
            const end = Math.min(bytes.length, at + length + (at === 0 ? 15 : 0));
            yield bytes.slice(at, end);
            at = end;
          }
          yield bytes.slice(at);
        }
        const read: (readonly string[])[] = [];
        const lines: number[] = [];
        for await (const batch of csvRows(pieces(), 'utf-8')) {
          read.push(...batch.rows);
          lines.push(...batch.lines);
        }
        expect(read).toEqual(given.map((row) => row.map((each) => each.replace(/\r\n?/g, '\n'))));
        const breaks = (row: readonly string[]) => row.join('').match(/\r\n|\r|\n/g)?.length ?? 0;
        expect(lines).toEqual(
          given.map((_, index) => given.slice(0, index).reduce((line, row) => line + 1 + breaks(row), 1))
        );
      }
    ),
    { numRuns: 400 }
  );
});
