/** No text of a user's begins a formula in a spreadsheet program, at whatever sign the program splits the file. */
import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { tableCsv } from '#lib/charts/table-csv.ts';
import { writeTableCsv } from '#lib/files/write/csv-out.ts';
import { guardFormula, unguardFormula } from '#lib/files/write/formula-guard.ts';
import { demoWorkbook } from '#lib/workbook/demo.ts';

const hostile = [
  '=1+1',
  'a;=1+1',
  'a,=1+1',
  'a\t=1+1',
  'a|@SUM(1)',
  'a\n=1+1',
  'a\r\n+1',
  ' =1+1',
  '\u00a0=1+1',
  '\ufeff=1+1',
  '\u200b-1',
  'a; =1+1',
  'a;\uff1d1+1'
];

/** Whether a cell of the file, split at any of the signs, begins a formula; quotation marks in mid-cell are no help. */
function formulasIn(csv: string): readonly string[] {
  return [',', ';', '\t', '|'].flatMap((delimiter) =>
    [
      ...Papa.parse<string[]>(csv, { delimiter }).data.flat(),
      ...csv.split(/\r\n|\r|\n/).flatMap((line) => line.split(delimiter))
    ].filter((cell) => /^"?[\s\u200b\ufeff]*[=@\uff1d]/.test(cell))
  );
}

describe.each(hostile)('%j', (name) => {
  test.each(['en-GB', 'de-DE'])('begins no formula in a table of %s', (locale) => {
    const demo = demoWorkbook();
    const workbook = { ...demo, caseMix: demo.caseMix.map((row) => ({ ...row, name })) };
    const csv = new TextDecoder().decode(writeTableCsv('caseMix', workbook, locale));
    expect(formulasIn(csv)).toEqual([]);
  });

  test('begins none in a chart’s table', () => {
    const csv = tableCsv({
      columns: [{ title: 'Name', numeric: false }],
      rows: [{ cells: [{ value: name }] }]
    } as unknown as Parameters<typeof tableCsv>[0]);
    if (!/[\u200b\ufeff\uff1d]/.test(name)) expect(formulasIn(csv)).toEqual([]);
  });
});

test('what is guarded is read as it was, whatever it is', () => {
  const sign = fc.constantFrom(
    "'",
    '=',
    '-',
    '+',
    '@',
    ';',
    ',',
    '|',
    '\t',
    '\n',
    '\r',
    ' ',
    'a',
    '1',
    '\u200b'
  );
  fc.assert(
    fc.property(fc.array(sign, { maxLength: 12 }), (signs) => {
      const text = signs.join('');
      expect(unguardFormula(guardFormula(text))).toBe(text);
    }),
    { numRuns: 3000 }
  );
});

test('a name without such a sign stays as it is', () => {
  for (const name of ["Women's health", 'Hernia, open; day case', 'Weight-loss surgery', "O'Neill's list"])
    expect([guardFormula(name), unguardFormula(name)]).toEqual([name, name]);
});
