import { describe, expect, it } from 'vitest';
import Papa from 'papaparse';
import fc from 'fast-check';
import type { ChartTable } from '#lib/charts/chart-data.ts';
import { tableCsv } from '#lib/charts/table-csv.ts';

function table(rows: readonly (readonly [string, number | string | null])[]): ChartTable {
  return {
    columns: [
      { title: 'Scenario', numeric: false },
      { title: 'Saving, EUR', numeric: true }
    ],
    rows: rows.map(([name, value]) => ({
      cells: [
        { text: name, value: name },
        { text: 'as shown', value }
      ]
    }))
  };
}

describe('a table as CSV', () => {
  it('has the full figures, not those shown', () => {
    expect(tableCsv(table([['Today', 1234.5678]]))).toBe('Scenario,"Saving, EUR"\r\nToday,1234.5678\r\n');
  });

  it('says of invented figures in every row that they are', () => {
    expect(
      tableCsv(
        table([
          ['Today', 1],
          ['Closed', 2]
        ]),
        { invented: true }
      )
    ).toBe('Scenario,"Saving, EUR",Figures\r\nToday,1,invented\r\nClosed,2,invented\r\n');
  });

  it('leaves a cell empty where there is nothing', () => {
    expect(tableCsv(table([['Today', null]]))).toContain('\r\nToday,\r\n');
  });

  it.each(['=1+1', '+1+1', '-1+1', '@sum', '\tx', '\rx', '=HYPERLINK("http://x")'])(
    'takes the sting out of %j',
    (name) => {
      const line = tableCsv(table([[name, 1]])).split('Saving, EUR"\r\n')[1] ?? '';
      expect(line.replace(/^"/, '')).toMatch(/^'/);
    }
  );

  it('keeps negative numbers numbers, also as decimal text', () => {
    expect(tableCsv(table([['a', -12.5]]))).toContain('a,-12.5\r\n');
    expect(tableCsv(table([['a', '-2500.00']]))).toContain('a,-2500.00\r\n');
  });

  it('trusts no text in a column of numbers that only begins like one', () => {
    expect(tableCsv(table([['a', '-2+cmd|x']]))).toContain("a,'-2+cmd|x\r\n");
  });

  it('reads back cell by cell, whatever the names', () => {
    const name = fc.string({ unit: 'grapheme' }).filter((text) => !/^[=+\-@\t\r]/.test(text));
    fc.assert(
      fc.property(fc.array(fc.tuple(name, fc.double({ noNaN: true, noDefaultInfinity: true }))), (rows) => {
        const { data } = Papa.parse<string[]>(tableCsv(table(rows)), { delimiter: ',', newline: '\r\n' });
        // The text ends with a line break, so the reader sees one empty line after it.
        expect(data.slice(1, -1)).toEqual(rows.map(([text, value]) => [text, String(value)]));
      })
    );
  });
});
