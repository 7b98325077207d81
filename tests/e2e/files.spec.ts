/** Files out and in, as a user does it: CSV, spreadsheet, case log, and a workbook from another reference set. */
import { readFile, writeFile } from 'node:fs/promises';
import type { Page } from '@playwright/test';
import { expect, test } from './browser.ts';
import { gridCell, todaysCost } from './grid-cell.ts';

async function saved(page: Page, button: string, file: string): Promise<string> {
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: button, exact: true }).first().click();
  await (await download).saveAs(file);
  return file;
}

test('the case mix as CSV, changed outside and taken in place of itself', async ({ page }, info) => {
  await page.goto('./files/');
  const before = await todaysCost(page).textContent();
  const file = await saved(page, 'Case mix', info.outputPath('case-mix.csv'));
  const csv = await readFile(file, 'utf8');
  expect(csv).toContain('Laparoscopic cholecystectomy,420,75');
  await writeFile(
    file,
    csv.replace('Laparoscopic cholecystectomy,420,75', 'Laparoscopic cholecystectomy,840,75')
  );
  await page.getByLabel('A CSV or XLSX file, headings in its first row').setInputFiles(file);
  await page.getByLabel('The rows').selectOption({ label: 'take the place of those that stand there' });
  await expect(page.getByText(/0 rows would be added, 1 changed/)).toBeVisible();
  await page.getByRole('button', { name: 'Take over' }).click();
  await expect(page.getByText('0 rows added, 1 changed.')).toBeVisible();
  await expect(todaysCost(page)).not.toHaveText(before ?? '');
  await page.getByRole('button', { name: 'Undo', exact: true }).first().click();
  await expect(todaysCost(page)).toHaveText(before ?? '');
});

test('the spreadsheet is written, and its tables are read again', async ({ page }, info) => {
  await page.goto('./files/');
  const file = await saved(page, 'A spreadsheet with live formulas (XLSX)', info.outputPath('workbook.xlsx'));
  expect((await readFile(file)).subarray(0, 2).toString()).toBe('PK');
  await page.getByLabel('A CSV or XLSX file, headings in its first row').setInputFiles(file);
  await expect(page.getByLabel('Sheet of the file')).toBeVisible();
});

test('a file of another kind is refused with a sentence', async ({ page }, info) => {
  await page.goto('./files/');
  const file = info.outputPath('picture.csv');
  await writeFile(file, Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 1]));
  await page.getByLabel('A CSV or XLSX file, headings in its first row').setInputFiles(file);
  await expect(page.locator('main .wrong')).toBeVisible();
});

test('a log of single cases becomes case groups; what identifies somebody is left alone', async ({
  page
}, info) => {
  await page.goto('./files/');
  const file = info.outputPath('log.csv');
  const lines = Array.from({ length: 400 }, (_, index) => {
    const day = String(1 + (index % 28)).padStart(2, '0');
    const month = String(1 + (index % 12)).padStart(2, '0');
    const kind = index % 2 === 0 ? 'Hernia repair' : 'Knee arthroscopy';
    return `2025-${month}-${day},${kind},${60 + (index % 20)},${40 + (index % 30)},${70 + (index % 15)},sevoflurane,Person ${index}`;
  });
  await writeFile(file, ['Date,Procedure,Minutes,Age,Weight,Agent,Patient name', ...lines].join('\n'));
  await page.getByLabel('A log of anaesthetics, as CSV').setInputFiles(file);
  await expect(page.getByText('Left alone, as they may identify somebody')).toBeVisible();
  await page.getByRole('button', { name: 'Group the cases' }).click();
  await expect(page.getByText(/400 of 400 lines went into 2 groups/)).toBeVisible();
  await page.getByRole('button', { name: 'Take over' }).click();
  await page.getByRole('link', { name: 'Case mix', exact: true }).click();
  await expect(
    await gridCell(page, { grid: 'Case mix', row: 'Knee arthroscopy', column: 'Agent' })
  ).toContainText('Sevoflurane');
});

test('a workbook of an unknown reference set opens read-only, and is moved on request', async ({
  page
}, info) => {
  await page.goto('./case-mix/');
  const file = await saved(page, 'Save', info.outputPath('workbook.json'));
  const workbook = JSON.parse(await readFile(file, 'utf8')) as { referenceSet: string };
  await writeFile(file, JSON.stringify({ ...workbook, referenceSet: '2031-4' }));
  await page.getByLabel('Open a workbook from a file').setInputFiles(file);
  await expect(page.getByText(/“2031-4” was given; this version has 2026-1/)).toBeVisible();
  await page.getByRole('link', { name: 'Evidence' }).click();
  await expect(page.getByText(/is not in this version, so its values cannot be compared/)).toBeVisible();
  await page.getByRole('button', { name: 'Move to set 2026-1' }).click();
  await expect(page.getByText(/“2031-4” was given; this version has 2026-1/)).toBeHidden();
});
