/** A cell's text has a longest length, whichever way it comes in, and what is stored or saved can be opened again. */
import { describe, expect, test } from 'vitest';
import { readCsv } from '#lib/files/read/csv-in.ts';
import { workbookFileLimit, readWorkbookFile, writeWorkbookFile } from '#lib/files/read/workbook-file.ts';
import { workbookStore } from '#lib/storage/workbook-store.ts';
import { readXlsxTables } from '#lib/files/read/xlsx-in.ts';
import { writeSheets } from '#lib/files/xlsx/write-sheets.ts';
import { zipSize } from '#lib/files/read/zip-size.ts';
import { fileOf, workbookFrom } from '#lib/state/workbook-files.ts';
import { longestCellText, mostKeptText } from '#lib/workbook/cell-text-limits.ts';
import { demoWorkbook } from '#lib/workbook/demo.ts';
import { editCells, keptSentences } from '#lib/workbook/edit-cells.ts';
import { parseWorkbook } from '#lib/workbook/parse-workbook.ts';
import { checkShape } from '#lib/workbook/workbook.ts';
import { memoryShelf } from '../../fixtures/memory-shelf.ts';

const demo = demoWorkbook();
const longest = 'x'.repeat(longestCellText);
const path = 'caseMix.lap-chole.minutes';

describe('typed or pasted', () => {
  test('the longest text is kept in its cell', () => {
    const { workbook, refused } = editCells(demo, [{ path, text: longest }], 'en-GB');
    expect([workbook.keptTexts[path], refused.length]).toEqual([longest, 1]);
    expect(parseWorkbook(workbook).kind).toBe('workbook');
  });

  test('a longer one is left out, with a sentence, and the rest goes in', () => {
    const { workbook, refused } = editCells(
      demo,
      [
        { path, text: `${longest}x` },
        { path: 'caseMix.lap-chole.ageYears', text: '61' }
      ],
      'en-GB'
    );
    expect(workbook.keptTexts).toEqual({});
    expect(workbook.caseMix[0]).toMatchObject({ minutes: demo.caseMix[0]?.minutes, ageYears: 61 });
    expect(refused.map(({ sentence }) => sentence)).toEqual([
      'Minutes: 10\u202f001 characters were given; a cell takes at most 10\u202f000, so the text is left out.'
    ]);
  });

  test('texts that cannot be read are kept up to a number of letters, and the last ones say so', () => {
    const texts = demo.caseMix.flatMap(({ id }) =>
      [
        'minutes',
        'ageYears',
        'weightKg',
        'casesPerYear',
        'targetMac',
        'nitrousOxidePercent',
        'measuredMlPerCase',
        'agent',
        'technique'
      ].map((field) => ({ path: `caseMix.${id}.${field}`, text: longest }))
    );
    expect(texts.length * longest.length).toBeGreaterThan(mostKeptText);
    const { workbook, refused } = editCells(demo, texts, 'en-GB');
    const kept = Object.values(workbook.keptTexts).join('').length;
    expect(kept).toBe(mostKeptText);
    expect(refused).toHaveLength(texts.length);
    expect(refused.filter(({ sentence }) => sentence.includes('keeps no more texts'))).toHaveLength(
      texts.length - mostKeptText / longest.length
    );
    expect(readWorkbookFile(writeWorkbookFile(workbook)).kind).toBe('workbook');
    expect(Object.keys(keptSentences(workbook, 'en-GB'))).toHaveLength(mostKeptText / longest.length);
  });
});

test.each([
  ['keptTexts', { [path]: `${longest}x` }],
  ['overrides', [{ constant: 'c', value: 1, unit: 'kg', reason: `${longest}x` }]],
  ['referenceSet', `${longest}x`]
])('in a workbook’s file, in %s, it is refused', (key, value) => {
  const shaped = checkShape({ ...demo, [key]: value });
  expect('issues' in shaped && shaped.issues.map(({ sentence }) => sentence)).toEqual([
    'Text: 10\u202f001 characters were given; a cell takes at most 10\u202f000.'
  ]);
});

describe('in a CSV file', () => {
  const read = (cell: string) => readCsv(new TextEncoder().encode(`Name,Minutes\nKnee,60\n"${cell}",70\n`));

  test('it is refused with its line', () => {
    expect(read(longest).kind).toBe('table');
    expect(read(`${longest}x`)).toEqual({
      kind: 'refused',
      sentence:
        'Line 3 has a cell that is too long: 10\u202f001 characters were given; a cell takes at most 10\u202f000.'
    });
  });

  test('also where it is made of line breaks', () => {
    expect(read('\n'.repeat(2_000_000))).toMatchObject({ kind: 'refused' });
  });
});

describe('in a spreadsheet', () => {
  const bytesWith = (text: string) =>
    writeSheets(
      [
        {
          name: 'Mix',
          frozenRows: 0,
          widthsCh: [],
          rows: [[{ kind: 'text', text: 'Name' }], [{ kind: 'text', text }]]
        }
      ],
      { title: 't' }
    );

  test('the longest is read, a longer one refused with its row', async () => {
    const fine = await readXlsxTables(await bytesWith('😀'.repeat(longestCellText / 2)), 'en-GB');
    expect(fine.kind === 'sheets' && fine.sheets[0]?.sentence).toBeNull();
    const read = await readXlsxTables(await bytesWith(`${longest}x`), 'en-GB');
    expect(read.kind === 'sheets' && read.sheets[0]).toMatchObject({
      table: null,
      sentence:
        'Row 2 has a cell that is too long: 10\u202f001 characters were given; a cell takes at most 10\u202f000.'
    });
  });

  test('a giant one in a small file is met while the file is unpacked, and the file not opened', async () => {
    const bytes = await bytesWith('x'.repeat(5_000_000));
    expect(bytes.length).toBeLessThan(20_000);
    expect(await readXlsxTables(bytes, 'en-GB')).toEqual({
      kind: 'refused',
      sentence:
        'A cell of the file has more than 10000 characters, more than any cell takes, so it was not opened.'
    });
  });

  test('texts are followed across the pieces that come out, and end at a mark', async () => {
    const bytes = await bytesWith('x'.repeat(300_000));
    const limits = { bytes: 1e9, textBytes: 300_050 };
    expect((await zipSize(bytes, limits)).kind).toBe('size');
    expect((await zipSize(bytes, { ...limits, textBytes: 300_000 })).kind).toBe('long-text');
  });
});

describe('a workbook that would be larger than a file that can be opened', () => {
  const huge = {
    ...demo,
    keptTexts: Object.fromEntries(
      Array.from({ length: 2100 }, (_, index) => [`caseMix.row-${index}.minutes`, longest])
    )
  };
  const sentence =
    /^The last changes are not saved\. The file has 2\d\.\d MB; a workbook has at most 20 MB\./;

  test('is not stored, and the last good version stays', async () => {
    expect(writeWorkbookFile(huge).length).toBeGreaterThan(workbookFileLimit);
    const shelf = memoryShelf();
    const store = workbookStore({ openShelf: () => Promise.resolve(shelf), newId: () => 'a' });
    const created = await store.create(demo);
    if (created.kind === 'failed') throw new Error(created.sentence);
    const saved = await store.save('a', huge, created.value.revision);
    expect(saved.kind === 'failed' && saved.sentence).toMatch(sentence);
    const opened = await store.open('a');
    expect(opened.kind === 'done' && opened.value.parsed.kind).toBe('workbook');
  });

  test('is no file to keep either', () => {
    expect(fileOf(huge)).toHaveProperty('sentence');
    expect(fileOf(demo)).toHaveProperty('content');
  });
});

describe('a file that is chosen to be opened', () => {
  const file = (change: object) => Object.assign(new File(['{}'], 'a.json'), change);

  test('but cannot be read says so', async () => {
    const refused = await workbookFrom(
      file({ arrayBuffer: () => Promise.reject(new DOMException('gone', 'NotReadableError')) })
    );
    expect(refused.kind === 'refused' && refused.issues[0]?.sentence).toMatch(/^The file cannot be read: /);
  });

  test('and is far too large is refused before it is read', async () => {
    const large = file({ arrayBuffer: () => Promise.reject(new Error('was read')) });
    Object.defineProperty(large, 'size', { value: 2.5e9 });
    const refused = await workbookFrom(large);
    expect(refused.kind === 'refused' && refused.issues[0]?.sentence).toBe(
      'The file has 2500.0 MB; a workbook has at most 20 MB.'
    );
  });
});
