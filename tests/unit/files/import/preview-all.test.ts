import { expect, test } from 'vitest';
import { previewAll } from '#lib/files/import/preview-all.ts';
import { readCsv } from '#lib/files/read/csv-in.ts';
import type { NamedTable } from '#lib/files/read/read-tables.ts';
import { tableIds, tableTitles } from '#lib/files/tables/tables.ts';
import { writeTableCsv } from '#lib/files/write/csv-out.ts';
import { writeCell } from '#lib/calc/cell-path.ts';
import { wholeWorkbook } from '../../../fixtures/whole-workbook.ts';

const workbook = wholeWorkbook();
const price = 'agents.sevoflurane.bottlePrice';
const changed = writeCell(workbook, price, '150.00');
const tablesOf = (of: typeof workbook): readonly NamedTable[] =>
  tableIds.flatMap((table) => {
    const read = readCsv(writeTableCsv(table, of, 'en-GB'));
    return read.kind === 'table' && read.table.rows.length > 0
      ? [{ name: tableTitles[table], table: read.table }]
      : [];
  });

test('all sheets of a file that was saved here change nothing', () => {
  const {
    workbook: after,
    passedOver,
    refused
  } = previewAll(workbook, tablesOf(workbook), { locale: 'en-GB' });
  expect([after, passedOver, refused]).toEqual([workbook, [], []]);
});

test('each takes the place of the table of its name; others are passed over and named', () => {
  const extra: NamedTable = {
    name: 'Our remarks',
    table: { headers: ['x'], rows: [{ line: 2, texts: ['1'] }] }
  };
  const {
    workbook: after,
    met,
    passedOver
  } = previewAll(workbook, [...tablesOf(changed), extra], { locale: 'en-GB' });
  expect(after).toEqual(changed);
  expect([met.includes('agents'), passedOver]).toEqual([true, ['Our remarks']]);
});

test('a cell that cannot be taken is told with its table and line', () => {
  const tables = tablesOf(workbook).map((each) =>
    each.name === tableTitles.agents
      ? {
          ...each,
          table: {
            ...each.table,
            rows: each.table.rows.map((row, index) =>
              index === 0 ? { ...row, texts: row.texts.map((text, at) => (at === 1 ? 'a lot' : text)) } : row
            )
          }
        }
      : each
  );
  const { refused } = previewAll(workbook, tables, { locale: 'en-GB' });
  expect(refused).toEqual([{ table: 'agents', line: 2, sentence: expect.stringContaining('“a lot”') }]);
});
