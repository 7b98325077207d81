/** The main job, as a user does it: see the demo's results, change a cell, save, open again, ask the batch command. */
import { execFile } from 'node:child_process';
import { readFile, writeFile } from 'node:fs/promises';
import { promisify } from 'node:util';
import type { Page } from '@playwright/test';
import { expect, test } from './browser.ts';
import { bottomFigure, gridCell, todaysCost } from './grid-cell.ts';

const run = promisify(execFile);

const payback = (page: Page) => bottomFigure(page, 'closed.againstBaseline.simplePaybackYears');

test('the demo shows its results at once', async ({ page }) => {
  await page.goto('./');
  await expect(page.getByRole('heading', { level: 1, name: 'Case mix' })).toBeVisible();
  await expect(page.getByText('an invented hospital with invented prices')).toBeVisible();
  await expect(todaysCost(page)).toHaveText(/^€[\d,]+$/);
  await expect(bottomFigure(page, 'closed.againstBaseline.yearlySaving')).toHaveText(/^saves €[\d,]+$/);
  await expect(bottomFigure(page, 'closed.againstBaseline.co2eAvoidedKg')).toHaveText(/^avoids [\d.]+.t/);
  await expect(payback(page)).toHaveText(/^[\d.]+.years$/);
});

test('an edit by keyboard alone changes the bottom line, and undo takes it back', async ({ page }) => {
  await page.goto('./case-mix/');
  const before = await todaysCost(page).textContent();
  await (
    await gridCell(page, { grid: 'Case mix', row: 'Laparoscopic cholecystectomy', column: 'Case group' })
  ).click();
  await page.keyboard.press('ArrowRight');
  await page.keyboard.type('840');
  await page.keyboard.press('Enter');
  await expect(todaysCost(page)).not.toHaveText(before ?? '');
  const after = await todaysCost(page).textContent();
  await page.keyboard.press('Control+z');
  await expect(todaysCost(page)).toHaveText(before ?? '');
  await page.keyboard.press('Control+y');
  await expect(todaysCost(page)).toHaveText(after ?? '');
});

test('a lower maintenance flow today lowers what today costs', async ({ page }) => {
  await page.goto('./flow-plans/');
  const amount = async () => Number((await todaysCost(page).textContent())?.replace(/[^\d]/g, ''));
  const before = await amount();
  await (
    await gridCell(page, { grid: 'Phases of Usual practice', row: 'Maintenance', column: 'Fresh gas flow' })
  ).click();
  // The demo holds a range for this cell, so the new value has to lie within it.
  await page.keyboard.type('1500 mL/min');
  await page.keyboard.press('Enter');
  await expect.poll(amount).toBeLessThan(before);
});

test('what cannot be read stays in its cell with a sentence, and nothing else changes', async ({ page }) => {
  await page.goto('./case-mix/');
  const before = await todaysCost(page).textContent();
  const minutes = await gridCell(page, {
    grid: 'Case mix',
    row: 'Open abdominal surgery',
    column: 'Minutes'
  });
  await minutes.click();
  await page.keyboard.type('lots');
  await page.keyboard.press('Enter');
  await expect(minutes).toHaveAttribute('aria-invalid', 'true');
  await expect(minutes).toContainText('lots');
  await minutes.click();
  await expect(page.getByText(/“lots” is not a number/).first()).toBeVisible();
  await expect(todaysCost(page)).toHaveText(before ?? '');
});

test('save, reload and open give the same totals', async ({ page }, info) => {
  await page.goto('./case-mix/');
  await (await gridCell(page, { grid: 'Case mix', row: 'Fracture fixation', column: 'Cases' })).click();
  await page.keyboard.type('500');
  await page.keyboard.press('Enter');
  const edited = await todaysCost(page).textContent();
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save', exact: true }).click();
  const file = info.outputPath('workbook.json');
  await (await download).saveAs(file);

  await page.getByRole('button', { name: 'Demo' }).click();
  await expect(todaysCost(page)).not.toHaveText(edited ?? '');
  await page.getByLabel('Open a workbook from a file').setInputFiles(file);
  await expect(todaysCost(page)).toHaveText(edited ?? '');
  await expect(page.getByTestId('save-state')).toHaveText('Saved in this browser');

  await page.reload();
  await expect(todaysCost(page)).toHaveText(edited ?? '');
});

test('a file that does not parse is refused with its sentences, and the open workbook stays', async ({
  page
}, info) => {
  await page.goto('./case-mix/');
  const before = await todaysCost(page).textContent();
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save', exact: true }).click();
  const file = info.outputPath('workbook.json');
  await (await download).saveAs(file);
  const workbook = JSON.parse(await readFile(file, 'utf8')) as { gases: { oxygenPerM3: string } };
  workbook.gases.oxygenPerM3 = '-3';
  await writeFile(file, JSON.stringify(workbook));
  await page.getByLabel('Open a workbook from a file').setInputFiles(file);
  const dialog = page.getByRole('dialog', { name: /was not opened/ });
  await expect(dialog).toContainText('gases.oxygenPerM3');
  await expect(dialog).toContainText('“-3” was given; allowed is an amount of money of 0 or more');
  await dialog.getByRole('button', { name: 'Close' }).click();
  await expect(todaysCost(page)).toHaveText(before ?? '');
});

test('the payback shown equals the batch command’s', async ({ page }, info) => {
  await page.goto('./payback/');
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save', exact: true }).click();
  const file = info.outputPath('workbook.json');
  await (await download).saveAs(file);
  const { stdout } = await run(process.execPath, ['scripts/batch.mjs', file], { maxBuffer: 50_000_000 });
  const estimate = JSON.parse(stdout) as {
    scenarios: { id: string; againstBaseline: { simplePaybackYears: number } }[];
  };
  const years =
    estimate.scenarios.find(({ id }) => id === 'closed')?.againstBaseline.simplePaybackYears ?? NaN;
  await payback(page).click();
  await expect(page.getByTestId('working-value')).toHaveAttribute('data-value', String(years));
});

test('every sheet opens, in light and dark, with a heading and without a fault', async ({ page }) => {
  const sheets = [
    'theatres',
    'case-mix',
    'flow-plans',
    'prices',
    'machines',
    'scenarios',
    'comparison',
    'emissions',
    'payback',
    'uncertainty',
    'monitoring',
    'theatre-air',
    'evidence',
    'report',
    'workbooks'
  ];
  for (const scheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme: scheme });
    for (const sheet of sheets) {
      await page.goto(`./${sheet}/`);
      await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
      await expect(todaysCost(page)).toBeVisible();
    }
  }
});
