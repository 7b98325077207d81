import { expect, test } from './browser.ts';

test.beforeEach(async ({ page }) => {
  await page.goto('./uncertainty/');
  await expect(page.getByRole('heading', { name: 'Uncertainty', level: 1 })).toBeVisible();
});

test('a run can be cancelled; a shorter one gives bands, and goes stale with an edit', async ({ page }) => {
  await page.getByRole('button', { name: 'Run 10,000 draws' }).click();
  await expect(page.getByRole('progressbar', { name: 'Draws made' })).toBeVisible();
  await page.getByRole('button', { name: 'Cancel' }).click();
  await expect(page.getByText(/Cancelled after .* of 10,000 draws/)).toBeVisible();
  await expect(page.locator('[data-result]')).toHaveCount(0);

  const draws = page.getByLabel('Draws', { exact: true });
  await draws.fill('300');
  await draws.press('Enter');
  await page.getByRole('button', { name: 'Run 300 draws' }).click();
  await expect(page.locator('[data-result]')).toContainText('has paid for itself within 5', {
    timeout: 50_000
  });
  const band = (edge: string) => page.locator(`[data-band="closed.npv.${edge}"]`);
  const first = await band('middle').textContent();
  expect(first).toMatch(/€[\d,]+/);

  // The same seed gives the same bands.
  await page.getByRole('button', { name: 'Run 300 draws again' }).click();
  await expect(page.getByRole('button', { name: 'Cancel' })).toHaveCount(0, { timeout: 50_000 });
  expect(await band('middle').textContent()).toBe(first);

  const stale = page.getByText('The workbook has changed since these draws were made');
  await expect(stale).toHaveCount(0);
  await page.getByRole('button', { name: /^Delete the range of Prices, sevoflurane/ }).click();
  await expect(stale).toBeVisible();
  await page.getByRole('button', { name: 'Undo', exact: true }).click();
  await expect(stale).toHaveCount(0);
});

test('a range whose low is above its high, or that leaves its value out, is refused with a sentence', async ({
  page
}) => {
  const range = page.getByRole('group', { name: 'Range of Prices, sevoflurane: Bottle price' });
  const low = range.getByLabel('Low');
  await low.fill('150');
  await low.press('Enter');
  await expect(range.getByRole('alert')).toContainText('low is at most high');
  await expect(low).toHaveValue('150');
  await low.fill('120');
  await low.press('Enter');
  await expect(range.getByRole('alert')).toContainText('it has to hold the cell’s own value, 118');
  await low.fill('90');
  await low.press('Enter');
  await expect(range.getByRole('alert')).toHaveCount(0);
});

test('a cell is found by a part of its name and given a range', async ({ page }) => {
  const cell = page.getByLabel('Give another cell a range');
  await cell.fill('Breast surgery');
  await page.getByRole('button', { name: 'Add a range' }).click();
  await expect(page.getByRole('alert')).toContainText('choose one from the list');
  await cell.fill('Case mix, Breast surgery: Minutes');
  await page.getByRole('button', { name: 'Add a range' }).click();
  const range = page.getByRole('group', { name: 'Range of Case mix, Breast surgery: Minutes' });
  await expect(range.getByLabel('Low')).toHaveValue('68');
  await expect(range.getByLabel('High')).toHaveValue('102');
});
