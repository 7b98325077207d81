import { expect, test } from 'vitest';
import type { CsvOptions } from '#lib/files/read/csv-in.ts';
import { readCsv } from '#lib/files/read/csv-in.ts';
import { tableLimits } from '#lib/files/read/read-table.ts';

const bytes = (text: string) => new TextEncoder().encode(text);
const read = (text: string, options?: CsvOptions) => {
  const result = readCsv(bytes(text), options);
  if (result.kind === 'refused') throw new Error(result.sentence);
  return result;
};
const refusal = (given: Uint8Array | string, options?: CsvOptions) => {
  const result = readCsv(typeof given === 'string' ? bytes(given) : given, options);
  return result.kind === 'refused' ? result : null;
};

test.each([
  ['a,b\n1,2\n3,4', ','],
  ['a;b\r\n1,5;2,5\r\n3,5;4,5', ';'],
  ['a\tb\n1,000\t2', '\t'],
  ['a|b\n"x|y"|2', '|'],
  ['Price (EUR per bottle);Electricity, emissions\n1;2', ';'],
  ['one column\nof names, some with commas', ';']
])('in %j cells are cut at %j', (text, delimiter) => {
  expect(read(text).delimiter).toBe(delimiter);
});

test('quotes, line breaks in cells, byte order mark and lines are understood', () => {
  const { table } = read('\uFEFFname,minutes\n"a ""b"", c\nd",60\n\n=1+1,70\n');
  expect(table).toEqual({
    headers: ['name', 'minutes'],
    rows: [
      { line: 2, texts: ['a "b", c\nd', '60'] },
      { line: 5, texts: ['=1+1', '70'] }
    ]
  });
});

test('short rows are filled up, empty rows passed over, and cells beyond the headings refused', () => {
  expect(read('a,b,c\n1\n,,\n4,5,6').table.rows.map((row) => row.texts)).toEqual([
    ['1', '', ''],
    ['4', '5', '6']
  ]);
  expect(read('a,b\n1,2,,').table.rows[0]?.texts).toEqual(['1', '2']);
  expect(refusal('a,b\n1,2\n1,2,3')?.sentence).toBe('Line 3 has 3 cells, but there are 2 headings.');
});

test('columns without a heading, and files without headings, get numbers', () => {
  expect(read('name,,c\n1,2,3').table.headers).toEqual(['name', 'Column 2', 'c']);
  const { table } = read('hernia,60\nbreast,80,x', { headings: false });
  expect(table.headers).toEqual(['Column 1', 'Column 2', 'Column 3']);
  expect(table.rows.map((row) => row.line)).toEqual([1, 2]);
});

test('two columns of one name are refused, whatever their capitals', () => {
  expect(refusal('Minutes,age,minutes\n1,2,3')?.sentence).toBe(
    'Columns 1 and 3 are both called “minutes”: give each a heading of its own.'
  );
});

test('a file of 100 000 columns is refused at once', () => {
  const columns = Array.from({ length: 100_000 }, (_, index) => `c${index}`).join(',');
  expect(refusal(`${columns}\n${columns}`)?.sentence).toBe(
    'Line 1 has 100000 columns; a table has at most 500.'
  );
});

test('too many rows, and a file over the limit, are refused with what to do instead', () => {
  expect(refusal(`a\n${'1\n'.repeat(tableLimits.rows + 1)}`)?.sentence).toMatch(
    /more than 20000 rows.*case log/
  );
  expect(refusal(new Uint8Array(tableLimits.bytes + 1))?.sentence).toMatch(/20\.0 MB.*case log/);
});

test('text that is not UTF-8 is refused, and the older encoding offered', () => {
  const latin = Uint8Array.from([...'nom\nop\u00e9r\u00e9'].map((letter) => letter.charCodeAt(0)));
  const first = refusal(latin);
  expect(first?.offer).toBe('windows-1252');
  expect(first?.sentence).toMatch(/^The file is not in UTF-8: line 2 /);
  const second = readCsv(latin, { encoding: 'windows-1252' });
  expect(second.kind === 'table' && second.table.rows[0]?.texts).toEqual(['opéré']);
});

test('UTF-16 with its mark is read', () => {
  const text = '\uFEFFa\tb\r\n1\té';
  const utf16 = new Uint8Array(new Uint16Array([...text].map((letter) => letter.charCodeAt(0))).buffer);
  const result = readCsv(utf16);
  expect(result.kind === 'table' && result.table.rows[0]?.texts).toEqual(['1', 'é']);
});

test('headings alone are a table without rows', () => {
  expect(readCsv(bytes('a,b\n'))).toMatchObject({ kind: 'table', table: { headers: ['a', 'b'], rows: [] } });
});

test.each([
  [Uint8Array.of(0x50, 0x4b, 3, 4, 20, 0), 'The file is a spreadsheet (XLSX) or another ZIP archive.'],
  [bytes('a,b\n1,\0'), 'The file is not text: it has zero bytes in it.'],
  [bytes(''), 'The file is empty.'],
  [
    bytes('a,b\n1,2\n3,"4\n5'),
    'From line 3 on a quotation mark is never closed, so the file is cut off or damaged.'
  ]
])('%# a wrong or damaged file is told what is wrong', (given, sentence) => {
  expect(refusal(given)).toEqual({ kind: 'refused', sentence });
});
