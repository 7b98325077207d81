import fc from 'fast-check';
import Papa from 'papaparse';
import { expect, test } from 'vitest';
import { csvRows } from '#lib/files/case-log/csv-rows.ts';
import { CaseLogError, groupCases } from '#lib/files/case-log/group-cases.ts';
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

test('a log with words and dates of every kind loses no case without a reason', () => {
  const dates = [
    '1.2.2025',
    '31/12/2025',
    '2025-02-30',
    '13/13/2025',
    '01-MAR-25',
    '45678',
    '2052-01-01',
    '',
    'soon'
  ];
  const words = [
    'TIVA',
    'GA',
    'GA + epidural',
    'spinal',
    'LMA',
    'hypnosis',
    'balanced (propofol, sevo)',
    'none',
    ''
  ];
  const agents = ['Sevo', 'desflurane', 'iso', 'Propofol', 'xenon', 'no sevoflurane', '', ...nastyNames];
  const row = fc.tuple(
    fc.constantFrom(...dates),
    fc.constantFrom('Knee', 'Hip', ' ', ...nastyNames),
    fc.oneof(
      fc.constantFrom('1h15', '75 min', '', 'long', '-3'),
      fc.integer({ min: -5, max: 2000 }).map(String)
    ),
    fc.constantFrom(...agents),
    fc.constantFrom(...words)
  );
  fc.assert(
    fc.property(fc.array(row, { maxLength: 40 }), fc.constantFrom(1, 5), (rows, fewestCases) => {
      const grouper = groupCases({
        columns: { date: 0, minutes: 2, agent: 3, technique: 4 },
        groupBy: [1],
        locale: 'en-GB',
        dateOrder: 'day-month-year',
        durationsIn: 'min',
        daysCovered: null,
        fewestCases
      });
      rows.forEach((cells, index) => grouper.add(cells, index + 2));
      try {
        const { rowsRead, casesTaken, leftOut, groups, checks } = grouper.finish();
        expect(casesTaken + leftOut.reduce((sum, { count }) => sum + count, 0)).toBe(rowsRead);
        expect(rowsRead).toBe(rows.filter((cells) => cells.some((cell) => cell.trim() !== '')).length);
        expect(groups.reduce((sum, { cases }) => sum + cases, 0)).toBe(casesTaken);
        expect(checks.repeated.count).toBeLessThan(Math.max(1, rowsRead));
      } catch (error) {
        // Of none that can be taken, the sentence counts them by reason.
        if (!(error instanceof CaseLogError)) throw error;
      }
    }),
    { numRuns: 400 }
  );
});
