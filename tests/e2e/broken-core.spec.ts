/** A fault of the program's own, forced: it must never show one workbook's figures under the title of another. */
import type { Page } from '@playwright/test';
import { readFile } from 'node:fs/promises';
import { demoWorkbook } from '#lib/workbook/demo.ts';
import { expect, test } from './browser.ts';
import { gridCell, todaysCost } from './grid-cell.ts';

/** While the tab holds the flag, the core breaks wherever it takes a root. */
const breakable = (page: Page) =>
  page.addInitScript(() => {
    const { sqrt } = Math;
    Math.sqrt = (x) => {
      if (sessionStorage.getItem('broken') !== null) throw new TypeError('a forced fault');
      return sqrt(x);
    };
  });
const setBroken = (page: Page, broken: boolean) =>
  page.evaluate((is) => {
    if (is) sessionStorage.setItem('broken', 'yes');
    else sessionStorage.removeItem('broken');
  }, broken);

async function openBroken(page: Page): Promise<void> {
  await page.goto('./comparison/');
  await expect(todaysCost(page)).toBeVisible();
  await setBroken(page, true);
  const demo = demoWorkbook();
  const workbook = {
    ...demo,
    title: 'Broken one',
    caseMix: demo.caseMix.map((row) => ({ ...row, minutes: row.minutes + 1 }))
  };
  await page.getByLabel('Open a workbook from a file').setInputFiles({
    name: 'broken.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify(workbook))
  });
  await expect(page.getByRole('heading', { name: '“Broken one” cannot be shown here' })).toBeVisible();
}

test('names the workbook and shows no figure of it or of the one before, on any sheet', async ({ page }) => {
  await breakable(page);
  await openBroken(page);
  for (const sheet of ['Payback', 'Case mix', 'Comparison']) {
    await page.getByRole('link', { name: sheet, exact: true }).click();
    await expect(page.getByRole('heading', { name: '“Broken one” cannot be shown here' })).toBeVisible();
    await expect(page.locator('[data-figure]')).toHaveCount(0);
  }
  await page.reload();
  await expect(page.getByRole('heading', { name: '“Broken one” cannot be shown here' })).toBeVisible();
  await expect(page.locator('[data-figure]')).toHaveCount(0);
});

test('the workbook can be saved as a file, and the one before brought back with its figures', async ({
  page
}) => {
  await breakable(page);
  await openBroken(page);
  const downloading = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save it as a file' }).click();
  const file = await (await downloading).path();
  expect((JSON.parse(await readFile(file, 'utf8')) as { title: string }).title).toBe('Broken one');
  await setBroken(page, false);
  await page.getByRole('button', { name: 'Back to the one before' }).click();
  await expect(todaysCost(page)).toBeVisible();
  await expect(page.getByRole('heading', { name: 'Comparison', level: 1 })).toBeVisible();
});

test('an edit over which the core breaks can be undone', async ({ page }) => {
  await breakable(page);
  await page.goto('./case-mix/');
  const before = await todaysCost(page).textContent();
  await setBroken(page, true);
  await (await gridCell(page, { grid: 'Case mix', row: 'Breast surgery', column: 'Minutes' })).click();
  await page.keyboard.type('76');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: /cannot be shown here/ })).toBeVisible();
  await expect(page.locator('[data-figure]')).toHaveCount(0);
  await setBroken(page, false);
  await page.getByRole('button', { name: 'Undo the last change' }).click();
  await expect(todaysCost(page)).toHaveText(before ?? '');
});
