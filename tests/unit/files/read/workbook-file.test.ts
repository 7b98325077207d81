import { expect, test } from 'vitest';
import {
  readWorkbookFile,
  workbookFileLimit,
  workbookFileName,
  writeWorkbookFile
} from '#lib/files/read/workbook-file.ts';
import { demoWorkbook } from '#lib/workbook/demo.ts';

const bytes = (text: string) => new TextEncoder().encode(text);
const json = () => new TextDecoder().decode(writeWorkbookFile(demoWorkbook()));
const sentences = (given: Uint8Array) => {
  const read = readWorkbookFile(given);
  return read.kind === 'refused' ? read.issues.map((issue) => issue.sentence) : [];
};

test('a byte order mark at the start is taken for what it is', () => {
  expect(readWorkbookFile(bytes(`\uFEFF${json()}`)).kind).toBe('workbook');
});

test('a file over the limit is refused before it is read', () => {
  expect(sentences(new Uint8Array(workbookFileLimit + 1))).toEqual([
    'The file has 20.0 MB; a workbook has at most 20 MB.'
  ]);
});

test('a file of another kind is named', () => {
  expect(sentences(Uint8Array.of(0x50, 0x4b, 3, 4, 0))[0]).toBe(
    'The file is a spreadsheet (XLSX) or another ZIP archive. A workbook is a JSON file that this program has saved.'
  );
  expect(sentences(bytes('%PDF-1.7'))[0]).toMatch(/^The file is a PDF\./);
});

test('bytes that are no UTF-8 are refused with their line', () => {
  const broken = bytes('{\n"title": "x"\n}');
  broken[12] = 0xff;
  expect(sentences(broken)[0]).toMatch(/^The file is not in UTF-8: line 2 /);
  expect(sentences(Uint8Array.of(0xff, 0xfe, 0x7b, 0))[0]).toMatch(/UTF-16/);
});

test('an empty file is said to be empty', () => {
  expect(sentences(bytes(' \n'))).toEqual(['The file is empty.']);
});

test.each([
  ['{"a" 1}', 'at line 1, column 6, “1}” was given where a colon is due'],
  ['{"a": 1,}', 'at line 1, column 9, “}” was given where a name in quotation marks is due'],
  ['{\n  "a": [1, 2 3]\n}', 'at line 2, column 14, “3]” was given where a comma or ] is due'],
  ['{"a": 01}', 'at line 1, column 8, “1}” was given where a comma or } is due'],
  ['{"a": NaN}', 'at line 1, column 7, “NaN}” was given where a value is due'],
  ['{"a": 1} {', 'at line 1, column 10, “{” was given where the end of the file is due'],
  ['case,minutes\nhernia,60', 'at line 1, column 1, “case,minutes” was given where a value is due']
])('%j is no JSON, and the place is said', (text, said) => {
  expect(sentences(bytes(text))).toEqual([`The file is not a workbook: ${said}.`]);
});

test('JSON nested beyond reason is refused and does not end the program', () => {
  expect(readWorkbookFile(bytes('['.repeat(200_000) + ']'.repeat(200_000))).kind).toBe('refused');
  expect(sentences(bytes('['.repeat(200_000)))).toEqual(['The file is too deeply nested to be a workbook.']);
});

test('a workbook of a newer version is refused, and the remedy said', () => {
  const future = JSON.stringify({ ...demoWorkbook(), version: 3, theatreChoir: true });
  expect(sentences(bytes(future))).toEqual([
    'Version: 3 was given; this program reads up to version 2. Open the file with a newer release.'
  ]);
});

test('other JSON is refused by its format', () => {
  expect(sentences(bytes('{"format": "something-else"}'))).toEqual([
    'Format: “something-else” was given; allowed is “vapour-ledger-workbook”.'
  ]);
});

test('a file name keeps letters of all scripts and loses what a path would read', () => {
  expect(workbookFileName('Theatre 1/2: “plan” — été 手術')).toBe('Theatre 1 2 “plan” — été 手術.json');
  expect(workbookFileName('..')).toBe('workbook.json');
  expect(workbookFileName('con')).toBe('workbook.json');
  expect(workbookFileName('')).toBe('workbook.json');
});

test.each(['ranges', 'keptTexts'])('a name that would be lost without a word is refused in %s', (key) => {
  const text = JSON.stringify({ ...demoWorkbook(), [key]: { MARK: 'a text' } }).replace('MARK', '__proto__');
  expect(readWorkbookFile(new TextEncoder().encode(text))).toEqual({
    kind: 'refused',
    issues: [
      { path: 'file', sentence: '“__proto__” was given as a name; no field, id or path is called so.' }
    ]
  });
});

test('a title may be any words', () => {
  const text = JSON.stringify({ ...demoWorkbook(), title: 'the “__proto__” hospital' });
  expect(readWorkbookFile(new TextEncoder().encode(text)).kind).toBe('workbook');
});
