import { readXlsx } from 'hucre';
import { expect, test } from 'vitest';
import type { Estimate } from '#lib/calc/estimate-types.ts';
import { runBatch } from '#lib/batch/run-batch.ts';
import { tableIds } from '#lib/files/tables/tables.ts';
import { writeWorkbookFile } from '#lib/files/read/workbook-file.ts';
import { readXlsxTables } from '#lib/files/read/xlsx-in.ts';
import { demoWorkbook } from '#lib/workbook/demo.ts';

test('two workbooks of one title get files of their own; one that cannot be read stops no other', async () => {
  const demo = writeWorkbookFile(demoWorkbook());
  const inputs: Readonly<Record<string, Uint8Array>> = {
    'north.json': demo,
    'cut.json': demo.slice(0, 500),
    'future.json': new TextEncoder().encode('{"format":"vapour-ledger-workbook","version":99}'),
    'south.json': demo
  };
  const written = new Map<string, Uint8Array>();
  const out: string[] = [];
  const errors: string[] = [];
  const status = await runBatch(['--xlsx', 'x', '--csv', 'c', ...Object.keys(inputs)], {
    readFile: (path) => Promise.resolve(inputs[path] as Uint8Array),
    writeFile: (path, bytes) => Promise.resolve(void written.set(path, bytes)),
    out: (line) => void out.push(line),
    error: (line) => void errors.push(line)
  });
  expect(status).toBe(2);
  expect(out).toHaveLength(2);
  expect(errors[0]).toMatch(/^cut\.json: .*cut off/);
  expect(errors[1]).toMatch(/^future\.json: .*99/);
  const names = [...written.keys()];
  expect(names.filter((name) => name.endsWith('.xlsx'))).toEqual([
    'x/Invented hospital, invented prices.xlsx',
    'x/Invented hospital, invented prices 2.xlsx'
  ]);
  expect(names.filter((name) => name.startsWith('c/'))).toHaveLength(2 * tableIds.length);
  const read = await readXlsxTables(
    written.get(names.find((name) => name.endsWith('.xlsx')) ?? '') as Uint8Array,
    'en-GB'
  );
  if (read.kind !== 'sheets') throw new Error('The spreadsheet could not be read.');
  expect(read.sheets.map(({ name }) => name)).toContain('Cash flow');
  // The demo is invented: the line, the names of the tables and every printed page of the spreadsheet say so.
  expect(JSON.parse(out[0] as string)).toMatchObject({ invented: true });
  for (const name of names.filter((each) => each.startsWith('c/')))
    expect(name).toContain('invented figures');
  const { sheets } = await readXlsx(written.get('x/Invented hospital, invented prices.xlsx') as Uint8Array);
  expect(sheets.length).toBeGreaterThan(10);
  for (const { name, headerFooter } of sheets)
    expect(headerFooter?.oddHeader, name).toContain('Invented hospital, invented prices · invented figures');
  // What a label restricts reaches whoever reads the line or the spreadsheet, as a caution.
  const cautions = (JSON.parse(out[0] as string) as Estimate).cautions;
  expect(cautions.length).toBeGreaterThan(0);
  for (const name of ['Read me', 'Results']) {
    const table = JSON.stringify(read.sheets.find((sheet) => sheet.name === name)?.table);
    for (const { sentence } of cautions) expect(table, name).toContain(`Caution: ${sentence}`);
  }
});
