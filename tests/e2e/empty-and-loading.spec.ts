/** What is seen where there are no figures: an empty workbook, a page that is still on its way, a browser without scripts. */
import { expect, test } from './browser.ts';

for (const [sheet, sentence] of [
  ['comparison', 'There is nothing to compare yet'],
  ['payback', 'There is nothing to pay back yet'],
  ['uncertainty', 'There is nothing to draw from yet'],
  ['report', 'There is nothing to report yet']
] as const)
  test(`${sheet} of an empty workbook says what to fill in first, and shows no row of zeros`, async ({
    page
  }) => {
    await page.goto(`./${sheet}/`);
    await page.getByRole('button', { name: 'Start empty' }).click();
    const steps = page.getByRole('region', { name: 'What to fill in first' });
    await expect(steps).toContainText(sentence);
    await expect(page.locator('main table')).toHaveCount(0);
    await expect(page.locator('main figure')).toHaveCount(0);
    await steps.getByRole('link', { name: 'Case mix' }).click();
    await expect(page.getByRole('heading', { level: 1, name: 'Case mix' })).toBeVisible();
  });

test('monitoring of an empty workbook does not say that everything is in place', async ({ page }) => {
  await page.goto('./monitoring/');
  await page.getByRole('button', { name: 'Start empty' }).click();
  await expect(page.getByText('Nothing is asked for yet')).toBeVisible();
  await expect(page.getByText('is in place.')).toHaveCount(0);
});

test('while the scripts are on their way the page says so, and then makes room', async ({ page }) => {
  let release = () => {};
  const released = new Promise<void>((resolve) => (release = resolve));
  await page.route(/\.js$/, async (route) => {
    await released;
    await route.continue();
  });
  await page.goto('./payback/', { waitUntil: 'commit' });
  await expect(page.getByText('The page is on its way.')).toBeVisible();
  release();
  await expect(page.getByRole('heading', { level: 1, name: 'Payback' })).toBeVisible();
  await expect(page.locator('#loading')).toHaveCount(0);
});

test.describe('without scripts', () => {
  test.use({ javaScriptEnabled: false });
  test('the page says what it needs', async ({ page }) => {
    await page.goto('./payback/');
    await expect(page.locator('noscript p', { hasText: 'needs JavaScript' })).toBeVisible();
    await expect(page.getByText('The page is on its way.')).toBeHidden();
  });
});
