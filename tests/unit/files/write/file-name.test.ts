import { describe, expect, test } from 'vitest';
import { blankWorkbook } from '#lib/workbook/blank.ts';
import { tableFileName } from '#lib/files/write/csv-out.ts';
import { fileName } from '#lib/files/write/file-name.ts';
import { tableIds } from '#lib/files/tables/tables.ts';

const bytes = (text: string) => new TextEncoder().encode(text).length;

describe('the name of a file', () => {
  test.each([
    ['North: “theatres” 1/2', 'North “theatres” 1 2.csv'],
    ['../../etc/passwd', 'etc passwd.csv'],
    ['CON', 'workbook.csv'],
    ['con.txt', 'workbook.csv'],
    ['console', 'console.csv'],
    [' . ', 'workbook.csv']
  ])('of “%s” is %s', (title, name) => {
    expect(fileName(title, '.csv')).toBe(name);
  });

  test.each(['𠮷'.repeat(200), 'é'.repeat(200), 'x'.repeat(200), '👩‍⚕️'.repeat(60)])(
    'is no longer than a folder takes, with room for a number (%#)',
    (title) => {
      const name = fileName(title, '.csv');
      expect(bytes(name)).toBeLessThanOrEqual(240);
      expect(name.isWellFormed()).toBe(true);
      expect(name.endsWith('.csv')).toBe(true);
    }
  );
});

test.each(['x'.repeat(80), '𠮷'.repeat(80), 'A title of usual length'])(
  'every table of a workbook has a name of its own, however long the title (%#)',
  (title) => {
    const names = tableIds.map((table) => tableFileName({ ...blankWorkbook(), title }, table));
    expect(new Set(names).size).toBe(tableIds.length);
    for (const name of names) {
      expect(name).toMatch(/ – [A-Z][a-z ]+\.csv$/);
      expect(bytes(name)).toBeLessThanOrEqual(240);
    }
  }
);
