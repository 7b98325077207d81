import { describe, expect, test } from 'vitest';
import { importColumns, previewImport } from '#lib/files/import/preview-import.ts';
import { suggestTable } from '#lib/files/import/suggest-table.ts';
import { readCsv } from '#lib/files/read/csv-in.ts';
import type { TableId } from '#lib/files/tables/tables.ts';
import { writeTableCsv } from '#lib/files/write/csv-out.ts';
import { blankWorkbook } from '#lib/workbook/blank.ts';
import { mapColumns } from '#lib/workbook/match-headings.ts';
import type { SourceNote } from '#lib/workbook/source-note.ts';
import { withSourceNote } from '#lib/workbook/source-notes.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';

const price = 'agents.sevoflurane.bottlePrice';
const invoice: SourceNote = { text: '=1+cmd|x', date: '2026-03-01', grade: 'invoiced' };
const file: SourceNote = { text: 'From the file prices.csv', date: '2026-04-01', grade: null };

function taken(table: TableId, csv: string | Uint8Array, workbook: Workbook = blankWorkbook()) {
  const read = readCsv(typeof csv === 'string' ? new TextEncoder().encode(csv) : csv);
  if (read.kind === 'refused') throw new Error(read.sentence);
  expect(suggestTable({ name: '', headers: read.table.headers }, workbook)).toBe(table);
  const mapping = mapColumns(read.table.headers, importColumns(table, workbook));
  return previewImport(workbook, {
    table,
    file: read.table,
    mapping,
    mode: 'replace',
    locale: 'en-GB',
    source: file
  });
}

test('a file of prices says where they come from, of those alone that it changes', () => {
  const before = withSourceNote(blankWorkbook(), 'agents.isoflurane.bottlePrice', invoice);
  const { workbook } = taken(
    'agents',
    'Agent,Bottle (mL),Bottle price,Unusable\nSevoflurane,250,118,0\nIsoflurane,250,0,0\nDesflurane,240,0,0\n',
    before
  );
  expect(workbook.notes).toEqual({ [price]: file, 'agents.isoflurane.bottlePrice': invoice });
});

test('a new row says it of each number that the file gives, and of no start value', () => {
  const { workbook } = taken('caseMix', 'Case group,Cases,Minutes\nHernia,120,60\n');
  const id = workbook.caseMix[0]?.id ?? '';
  expect(Object.keys(workbook.notes ?? {}).sort()).toEqual([
    `caseMix.${id}.casesPerYear`,
    `caseMix.${id}.minutes`
  ]);
});

describe('notes as a table', () => {
  const noted = withSourceNote(blankWorkbook(), price, invoice);

  test('come back as they went, whatever they look like', () => {
    const { workbook, added } = taken('notes', writeTableCsv('notes', noted, 'en-GB'));
    expect([workbook.notes, added]).toEqual([{ [price]: invoice }, 1]);
  });

  test('unchanged change nothing', () => {
    const { workbook, unchanged } = taken('notes', writeTableCsv('notes', noted, 'en-GB'), noted);
    expect([workbook, unchanged]).toEqual([noted, 1]);
  });

  test.each([
    ['agents.sevoflurane.colour,Invoiced,,x', 'is not a cell'],
    ['caseMix.gone.minutes,Invoiced,,x', 'is no cell of this workbook'],
    [`${price},Sure,,x`, 'Grade: “Sure” was given'],
    [`${price},,1 March,x`, 'Date: “1 March” was given'],
    [`${price},,,`, 'nothing was given']
  ])('a row that cannot be taken is refused with a sentence: %.40s', (row, sentence) => {
    const { refusedRows, workbook } = taken('notes', `Cell,Grade,Date,Note\n${row}\n`);
    expect(workbook.notes ?? {}).toEqual({});
    expect(refusedRows).toMatchObject([{ line: 2, sentence: expect.stringContaining(sentence) }]);
  });
});
