/** What a label restricts stands, with its counts, wherever the figures of such a scenario are read; never as advice. */
import { expect, test } from './browser.ts';

const sentence =
  /“.+” runs sevoflurane below 1 L\/min, which the US label does not recommend, in \d+ case groups/;

for (const sheet of ['case-mix', 'comparison', 'payback', 'monitoring', 'report'])
  test(`${sheet} says which cases run below the flow of the sevoflurane label, on paper too`, async ({
    page
  }) => {
    await page.goto(`./${sheet}/`);
    const caution = page.getByRole('note').filter({ hasText: sentence }).first();
    await expect(caution).toContainText('Caution:');
    await expect(caution).toContainText('local policy decide');
    await expect(page.getByText(/flow caution[^.]*: recommended/i)).toHaveCount(0);
    await page.emulateMedia({ media: 'print' });
    await expect(caution).toBeVisible();
  });

test('the report tells it on its first page, and the bottom line everywhere', async ({ page }) => {
  await page.goto('./report/');
  await expect(page.locator('.one-page').getByRole('note').filter({ hasText: sentence })).toBeVisible();
  await expect(
    page.getByRole('contentinfo', { name: 'Bottom line' }).getByRole('link', { name: 'caution', exact: true })
  ).toBeVisible();
});

test('a mark in the case mix has its key below the grid, on paper too', async ({ page }) => {
  await page.goto('./case-mix/');
  const key = page.locator('dl', { hasText: 'a note goes with this figure' });
  await expect(key.getByText('*', { exact: true })).toBeVisible();
  await page.emulateMedia({ media: 'print' });
  await expect(key).toBeVisible();
});
