/** Where a figure comes from: written where the figure is asked for, filled by arithmetic, told by weight and in the report. */
import { expect, test } from './browser.ts';
import { gridCell } from './grid-cell.ts';

test('a note is written in the working of a cell, follows its value, and goes into the report', async ({
  page
}) => {
  await page.goto('./prices/');
  const cell = await gridCell(page, { grid: 'Agents', row: 'Sevoflurane', column: 'Bottle price' });
  await cell.click();
  await page.keyboard.type('=30*4');
  await page.keyboard.press('Enter');
  await expect(cell).toContainText('120');

  await page.goto('./uncertainty/');
  const asked = page.getByRole('button', { name: /^Prices, sevoflurane: Bottle price, as entered/ });
  await asked.click();
  const note = page.getByRole('group', { name: 'Where Prices, sevoflurane: Bottle price comes from' });
  await expect(note.getByLabel('Where from')).toHaveValue('Computed from =30*4');
  await note.getByLabel('Where from').fill('Tender of the region');
  await note.getByLabel('Date').fill('2026-03-01');
  await note.getByLabel('Grade').selectOption('Invoiced');

  const draws = page.getByLabel('Draws', { exact: true });
  await draws.fill('300');
  await draws.press('Enter');
  await page.getByRole('button', { name: 'Run 300 draws' }).click();
  const weights = page.getByTestId('weights');
  await expect(weights).toContainText('of what is not known of the answer', { timeout: 50_000 });
  const row = weights.getByRole('row', { name: /^Prices, sevoflurane: Bottle price/ });
  await expect(row).toContainText('Invoiced');
  await expect(row).toContainText('1 March 2026: Tender of the region');
  await row.getByRole('button', { name: /^Weight of/ }).click();
  await expect(page.getByTestId('working')).toContainText('as a share of the swings of all');
  await note.waitFor({ state: 'detached' });
  await expect(page.getByText('The workbook has changed since')).toHaveCount(0);

  await page.goto('./report/');
  const table = page.getByRole('table').filter({ hasText: 'Tender of the region' });
  await expect(table).toContainText('Invoiced');

  await page.goto('./prices/');
  await cell.click();
  await page.keyboard.type('150');
  await page.keyboard.press('Enter');
  await expect(
    page.getByText('The note of Prices, sevoflurane: Bottle price told of the earlier value and is gone.')
  ).toBeVisible();
});
