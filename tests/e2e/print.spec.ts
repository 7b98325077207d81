/** Sheets on paper: what belongs together stays on one page, and controls become text. */
import { expect, test } from './browser.ts';

test('no heading or note is left without its table, and no table with a lone row', async ({ page }) => {
  await page.goto('./monitoring/');
  await expect(page.getByRole('table').first()).toBeVisible();
  await page.emulateMedia({ media: 'print' });
  const breaks = (selector: string, side: 'breakAfter' | 'breakBefore') =>
    page
      .locator(selector)
      .evaluateAll((elements, key) => elements.map((element) => getComputedStyle(element)[key]), side);
  for (const [selector, side] of [
    ['main h2', 'breakAfter'],
    ['main h2 + p.note', 'breakAfter'],
    ['main tbody tr:first-child', 'breakAfter'],
    ['main tbody tr:last-child', 'breakBefore']
  ] as const) {
    const found = await breaks(selector, side);
    expect(found.length, selector).toBeGreaterThan(1);
    expect(new Set(found), selector).toEqual(new Set(['avoid']));
  }
});

test('what was entered stands as text, what was left folded is left out', async ({ page }) => {
  await page.goto('./comparison/');
  const horizon = page.getByLabel('Horizon');
  await expect(horizon).toBeVisible();
  const folded = page.getByText('Reporting class of each line');
  await expect(folded).toBeVisible();
  await page.emulateMedia({ media: 'print' });
  await expect(horizon).toHaveCSS('appearance', 'none');
  await expect(folded).toBeHidden();
  await page.goto('./machines/');
  await expect(page.locator('main input[type=checkbox]').first()).not.toHaveCSS('appearance', 'none');
});
