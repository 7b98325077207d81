/**
 * Every way on which figures leave the cells, walked one after the other with a cell that is not in force: each counts it
 * and says by name which it is.
 */
import { execFile } from 'node:child_process';
import { mkdtemp, readFile, readdir } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import type { Page } from '@playwright/test';
import { readXlsxTables } from '#lib/files/read/xlsx-in.ts';
import { editCells } from '#lib/workbook/edit-cells.ts';
import { wholeWorkbook } from '../fixtures/whole-workbook.ts';
import { expect, test } from './browser.ts';
import { gridCell } from './grid-cell.ts';
import { goTo, openWorkbook } from './open-workbook.ts';

const whole = wholeWorkbook();
const agent = whole.agents[0];
if (agent === undefined) throw new Error('The fixture has an agent.');
const path = `agents.${agent.agent}.bottlePrice`;
const workbook = editCells({ ...whole, title: 'One refused' }, [{ path, text: 'dear' }], 'en-GB').workbook;

const count = '1 cell is not in force';
/** As it is named in a line. */
const inShort = new RegExp(`${count}: Prices, ${agent.agent}: Bottle price \\(“dear”; [\\d.]+ counts\\)`);
/** As it is named in a list, with the reason. */
const inFull = new RegExp(`Prices, ${agent.agent}: Bottle price: “dear” .* stays in force\\.`);

async function download(page: Page, name: string | RegExp): Promise<string> {
  const [file] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name }).first().click()
  ]);
  return file.path();
}
const text = async (from: Promise<string>): Promise<string> => readFile(await from, 'utf8');

test.beforeEach(({ page }) => openWorkbook(page, workbook));

test('every sheet: a list at its end, the bottom line leads to it, and paper says so', async ({ page }) => {
  const sheets = [
    ...['theatres', 'case-mix', 'flow-plans', 'prices', 'machines', 'scenarios', 'comparison', 'payback'],
    ...['uncertainty', 'monitoring', 'evidence', 'report', 'files', 'workbooks'],
    `case/?row=${whole.caseMix[0]?.id}`
  ];
  for (const sheet of sheets) {
    await page.goto(`./${sheet}${sheet.includes('?') ? '' : '/'}`);
    const list = page.getByRole('region', { name: 'Cells that are not in force' });
    await expect(list, sheet).toContainText(count);
    await expect(list.getByRole('listitem'), sheet).toHaveText(inFull);
    await expect(page.getByRole('contentinfo', { name: 'Bottom line' }), sheet).toContainText(count);
    await page.emulateMedia({ media: 'print' });
    await expect(page.getByText(inShort).filter({ visible: true }), `${sheet} on paper`).toHaveCount(1);
    await page.emulateMedia({ media: 'screen' });
  }
});

test('the report names it beside its answer', async ({ page }) => {
  await goTo(page, 'report', workbook);
  await expect(page.getByRole('note').filter({ hasText: count })).toHaveText(inShort);
});

test('a table and a chart as CSV', async ({ page }) => {
  await goTo(page, 'files', workbook);
  const table = await text(download(page, /^Agents/));
  expect(table).toContain('Not in force');
  expect(table).toMatch(inFull);
  await goTo(page, 'comparison', workbook);
  expect(await text(download(page, /CSV/))).toMatch(inShort);
});

test('the spreadsheet, on its first sheet', async ({ page }) => {
  await goTo(page, 'files', workbook);
  const bytes = await readFile(await download(page, /spreadsheet/i));
  const read = await readXlsxTables(bytes, 'en-GB');
  if (read.kind !== 'sheets') throw new Error('The spreadsheet was not read.');
  const first = JSON.stringify(read.sheets[0]?.table);
  expect(first).toContain(count);
  expect(first).toMatch(inFull);
});

test('the workbook’s file and, from it, the batch command with all that it writes', async ({ page }) => {
  await goTo(page, 'case-mix', workbook);
  const file = await download(page, 'Save');
  expect(JSON.parse(await readFile(file, 'utf8'))).toMatchObject({ keptTexts: { [path]: 'dear' } });

  const folder = await mkdtemp(join(tmpdir(), 'ways-out-'));
  const batch = (...args: string[]) =>
    promisify(execFile)(process.execPath, ['scripts/batch.mjs', ...args, file]);
  const { stdout, stderr } = await batch('--csv', folder, '--xlsx', folder);
  const line = JSON.parse(stdout) as { warnings: string[]; notInForce: object[] };
  expect(line.warnings[0]).toMatch(inShort);
  expect(line.notInForce).toMatchObject([{ path, text: 'dear', sentence: expect.stringMatching(inFull) }]);
  expect(stderr).toMatch(inFull);
  const names = await readdir(folder);
  const csv = names.find((name) => name.includes('Agents')) ?? '';
  expect(await readFile(join(folder, csv), 'utf8')).toMatch(inFull);
  const xlsx = names.find((name) => name.endsWith('.xlsx')) ?? '';
  const read = await readXlsxTables(await readFile(join(folder, xlsx)), 'en-GB');
  expect(JSON.stringify(read.kind === 'sheets' ? read.sheets[0]?.table : null)).toMatch(inFull);
  expect((await batch('--working', 'today.perYear.cost.total')).stdout).toMatch(inShort);
});

test('a link, before it is opened', async ({ page }) => {
  await goTo(page, 'workbooks', workbook);
  await page.getByRole('button', { name: 'A link that carries the open workbook' }).click();
  const link = await page.getByLabel(/^Whoever has this link/).inputValue();
  await page.goto('about:blank');
  await page.goto(link);
  await expect(page.getByRole('region', { name: 'A workbook in a link' })).toContainText(inShort);
});

test('a comparison of two workbooks', async ({ page }) => {
  await goTo(page, 'workbooks', workbook);
  await page.getByLabel('Compare the open workbook with a file').setInputFiles({
    name: 'other.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify(whole))
  });
  await expect(page.getByRole('region', { name: 'Side by side' })).toContainText(inShort);
});

test('a copy of cells', async ({ page }) => {
  await goTo(page, 'prices', workbook);
  await (await gridCell(page, { grid: 'Agents', row: 'dear', column: 'Bottle price' })).click();
  await page.keyboard.press('Control+c');
  await expect(page.getByTestId('grid-remark').filter({ visible: true })).toHaveText(
    /^1 cell copied as typed, though not in force: .*, Bottle price\.$/
  );
});
