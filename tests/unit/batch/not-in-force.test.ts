/** A cell whose text is not in force is named in every file and line that the batch command writes. */
import { expect, test } from 'vitest';
import { runBatch } from '#lib/batch/run-batch.ts';
import { writeWorkbookFile } from '#lib/files/read/workbook-file.ts';
import { readXlsxTables } from '#lib/files/read/xlsx-in.ts';
import { demoWorkbook } from '#lib/workbook/demo.ts';
import { editCells } from '#lib/workbook/edit-cells.ts';
import { insertRows } from '#lib/workbook/edit-rows.ts';

const demo = demoWorkbook();
const grown = insertRows(demo, { list: 'caseMix', at: demo.caseMix.length, count: 1 });
if ('sentence' in grown) throw new Error(grown.sentence);
const id = grown.workbook.caseMix.at(-1)!.id;
const refused = editCells(
  grown.workbook,
  [
    { path: 'agents.sevoflurane.bottlePrice', text: 'dear' },
    { path: `caseMix.${id}.name`, text: 'Thyroid' },
    { path: `caseMix.${id}.casesPerYear`, text: '130' },
    { path: `caseMix.${id}.technique`, text: 'hypnosis' }
  ],
  'en-GB',
  demo
).workbook;

async function run(args: readonly string[], workbook = refused) {
  const out: string[] = [];
  const errors: string[] = [];
  const files = new Map<string, Uint8Array>();
  const status = await runBatch([...args, 'w.json'], {
    readFile: () => Promise.resolve(writeWorkbookFile(workbook)),
    writeFile: (path, bytes) => Promise.resolve(void files.set(path, bytes)),
    out: (line) => void out.push(line),
    error: (line) => void errors.push(line)
  });
  return { status, out, errors, files };
}

test('the estimate lists them, its warnings count and name them, and standard error has a line for each', async () => {
  const { status, out, errors } = await run([]);
  expect(status).toBe(0);
  const line = JSON.parse(out[0]!) as { notInForce: unknown; warnings: string[] };
  expect(line.notInForce).toEqual([
    {
      path: 'agents.sevoflurane.bottlePrice',
      text: 'dear',
      inForce: '118.00',
      sentence: expect.stringMatching(/^Prices, sevoflurane: .*“dear”.* 118\.00 stays in force\.$/)
    },
    {
      path: `caseMix.${id}.technique`,
      text: 'hypnosis',
      inForce: '',
      sentence: expect.stringMatching(
        /^Case mix, Thyroid: .*“hypnosis”.* The row is left out of every figure/
      )
    }
  ]);
  expect(line.warnings[0]).toMatch(
    /^2 cells are not in force: Prices, sevoflurane: Bottle price \(“dear”; 118\.00/
  );
  expect(errors).toHaveLength(2);
  expect(errors[0]).toMatch(/^w\.json: agents\.sevoflurane\.bottlePrice: not in force: Prices, sevoflurane/);
});

test('nothing is said where all is in force', async () => {
  const { out, errors, files } = await run(['--csv', 'c'], demo);
  expect(errors).toEqual([]);
  expect(JSON.parse(out[0]!)).toMatchObject({ notInForce: [] });
  for (const bytes of files.values()) expect(new TextDecoder().decode(bytes)).not.toContain('Not in force');
});

test('a working ends with them', async () => {
  const { out } = await run(['--working', 'today.perYear.cost.total']);
  expect(out[0]).toMatch(
    /\n2 cells are not in force: .*Case mix, Thyroid: Technique \(“hypnosis”; the row is left out\)\.$/
  );
});

test('a table as CSV has a last column for the rows where they stand', async () => {
  const { files } = await run(['--csv', 'c']);
  const csv = (title: string): string[] =>
    new TextDecoder()
      .decode([...files].find(([name]) => name.includes(title))![1])
      .trim()
      .split('\r\n');
  const mix = csv('Case mix');
  expect(mix[0]).toMatch(/,Not in force$/);
  expect(mix.at(-1)).toMatch(/,"Case mix, Thyroid: Technique: .*left out/);
  expect(csv('Agents').join('\n')).toMatch(/“dear”.* 118\.00 stays in force/);
  expect(csv('Machines')[0]).not.toContain('Not in force');
});

test('a spreadsheet names them on its first sheet, and the row that takes part in nothing is on no other', async () => {
  const { files } = await run(['--xlsx', 'x']);
  const read = await readXlsxTables([...files.values()][0]!, 'en-GB');
  if (read.kind !== 'sheets') throw new Error('The spreadsheet could not be read.');
  const textOf = (name: string): string =>
    JSON.stringify(read.sheets.find((sheet) => sheet.name === name)?.table);
  expect(textOf('Read me')).toMatch(/2 cells are not in force/);
  expect(textOf('Read me')).toMatch(/Not in force: Prices, sevoflurane: .*“dear”/);
  expect(textOf('Read me')).toMatch(/Not in force: Case mix, Thyroid: .*“hypnosis”/);
  for (const { name } of read.sheets)
    if (name !== 'Read me') expect(textOf(name), name).not.toContain('Thyroid');
});
