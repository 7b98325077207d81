/** What is shown is what is in force: a cell that was not taken is named wherever figures leave the cells. */
import { readFile } from 'node:fs/promises';
import type { Page } from '@playwright/test';
import { expect, test } from './browser.ts';
import { gridCell } from './grid-cell.ts';

const sheets = [
  ...['case-mix', 'flow-plans', 'prices', 'machines', 'scenarios', 'comparison', 'payback', 'uncertainty'],
  ...['monitoring', 'evidence', 'report', 'files', 'workbooks']
];

async function refuseAPrice(page: Page): Promise<void> {
  await page.goto('./prices/');
  await (await gridCell(page, { grid: 'Agents', row: 'Sevoflurane', column: 'Bottle price' })).click();
  await page.keyboard.type('dear');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('link', { name: '1 cell is not in force' })).toBeVisible();
}

test('on every sheet, in the bottom line, on paper and in the files', async ({ page }) => {
  await refuseAPrice(page);
  const named = /^Prices, sevoflurane: Bottle price: “dear” is not .* 118\.00 stays in force\.$/;
  for (const sheet of sheets) {
    await page.goto(`./${sheet}/`);
    await expect(page.getByRole('contentinfo', { name: 'Bottom line' })).toContainText(
      '1 cell is not in force'
    );
    await expect(
      page.getByRole('region', { name: 'Cells that are not in force' }).getByRole('listitem')
    ).toHaveText(named);
  }
  const short = page.getByText(
    '1 cell is not in force: Prices, sevoflurane: Bottle price (“dear”; 118.00 counts).'
  );
  await page.goto('./report/');
  await expect(short.filter({ visible: true })).toHaveCount(1);
  await page.emulateMedia({ media: 'print' });
  await expect(short.filter({ visible: true })).toHaveCount(1);
  await page.emulateMedia({ media: 'screen' });

  await page.goto('./files/');
  const [csv] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: /^Agents/ }).click()
  ]);
  expect(await readFile(await csv.path(), 'utf8')).toMatch(/Not in force[^]*“dear”/);

  await page.goto('./comparison/');
  const [chart] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: /CSV/ }).first().click()
  ]);
  expect(await readFile(await chart.path(), 'utf8')).toContain('1 cell is not in force');
});

test('the link leads to the cell, and all is quiet again once it is mended', async ({ page }) => {
  await refuseAPrice(page);
  await page.goto('./payback/');
  await page
    .getByRole('region', { name: 'Cells that are not in force' })
    .getByRole('link', { name: 'Prices, sevoflurane' })
    .click();
  await expect(
    await gridCell(page, { grid: 'Agents', row: 'Sevoflurane', column: 'Bottle price' })
  ).toBeVisible();
  await page.keyboard.type('150');
  await page.keyboard.press('Enter');
  await expect(page.getByText('is not in force')).toHaveCount(0);
  await expect(page.getByText(/^The range of Prices, sevoflurane: Bottle price moved/)).toBeVisible();
});

test('warming potentials without the chosen horizon are offered with one that there is', async ({ page }) => {
  await page.goto('./comparison/');
  const horizon = page.getByLabel('Horizon');
  await horizon.selectOption({ label: '20 years' });
  const potentials = page.getByLabel('Warming potentials', { exact: true });
  await potentials.selectOption({ label: 'Literature 2012' });
  await expect(potentials).toHaveValue('IPCC AR6 (2021)');
  await page.getByRole('button', { name: 'Take Literature 2012 over 100 years' }).click();
  await expect(potentials).toHaveValue('Literature 2012');
  await expect(horizon).toHaveValue('100 years');
});
