import { expect, test } from './browser.ts';

test('the app opens', async ({ page }) => {
  await page.goto('./');
  await expect(page).toHaveTitle(/Vapour Ledger/);
});

test('an address without a page says so', async ({ page }) => {
  const response = await page.request.get('./no-such-sheet/');
  expect(response.status()).toBe(404);
  expect(await response.text()).toContain('There is no such page');
});
