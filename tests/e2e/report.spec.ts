/** The report: one page that answers the question, for the scenario in the bottom line, and prints as one page. */
import type { Locator, Page } from '@playwright/test';
import { expect, test } from './browser.ts';

async function drawAndComeBack(page: Page): Promise<Locator> {
  await page.getByRole('link', { name: 'Uncertainty' }).first().click();
  const draws = page.getByLabel('Draws', { exact: true });
  await draws.fill('200');
  await draws.press('Enter');
  await page.getByRole('button', { name: 'Run 200 draws' }).click();
  await expect(page.locator('[data-result]')).toBeVisible({ timeout: 60_000 });
  await page.getByRole('link', { name: 'Report' }).click();
  await expect(page.getByText(/^nine draws of ten: €/)).toBeVisible();
  return draws;
}

test('the page answers for the chosen scenario, with ranges once the draws are made', async ({ page }) => {
  await page.goto('./report/');
  const question = page.locator('main').getByRole('heading', { level: 2 }).first();
  await expect(question).toContainText('Closed-circuit ventilator A');
  const saving = page.locator('main dl').getByRole('button', { name: /^Money, a year/ });
  await expect(saving).toBeVisible();
  await expect(page.getByText('as entered; no range was drawn')).toHaveCount(3);
  expect(await saving.textContent()).toBe(
    await page
      .getByRole('contentinfo', { name: 'Bottom line' })
      .getByRole('button', { name: /^Yearly saving/ })
      .textContent()
  );

  await page.getByRole('combobox', { name: 'Scenario' }).selectOption('Low flow, same machines');
  await expect(question).toHaveText(
    'Should the department go over to “Low flow, same machines” with the machines that it has?'
  );

  const draws = await drawAndComeBack(page);

  // An edit makes them void.
  await page.goBack();
  await draws.fill('300');
  await draws.press('Enter');
  await page.goForward();
  await expect(page.getByText('as entered; no range was drawn')).toHaveCount(3);
});

for (const [format, isDrawn] of [
  ['A4', false],
  ['A4', true],
  ['Letter', false],
  ['Letter', true]
] as const)
  test(`what the meeting needs prints on one page of ${format}, ${isDrawn ? 'with' : 'without'} draws`, async ({
    page
  }) => {
    await page.goto('./report/');
    if (isDrawn) await drawAndComeBack(page);
    await expect(page.getByText('measurements lie within the tolerance')).toBeVisible();
    await expect(page.getByText(/published figures of set/)).toBeVisible();
    await page.emulateMedia({ media: 'print' });
    const mm = 96 / 25.4;
    const [width, height] = format === 'A4' ? [210, 297] : [215.9, 279.4];
    // The page less its margins, as the style sheet sets them.
    await page.setViewportSize({ width: Math.floor((width - 32) * mm), height: 1200 });
    await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
    await expect(page.locator('.one-page canvas.on-paper')).toBeVisible();
    const end = await page.evaluate(() => {
      const top = document.querySelector('main')?.getBoundingClientRect().top ?? 0;
      return (document.querySelector('.one-page')?.getBoundingClientRect().bottom ?? Infinity) - top;
    });
    expect(end).toBeLessThan((height - 38) * mm);
    const isCut = () =>
      page.locator('main table').evaluateAll((tables) =>
        tables.some((table) => {
          const isAcross = table.closest('.paper-across') !== null;
          return isAcross === innerWidth > 800 && table.getBoundingClientRect().right > innerWidth + 1;
        })
      );
    expect(await isCut()).toBe(false);
    // What stands across the paper has its long side.
    await page.setViewportSize({ width: Math.floor((height - 32) * mm), height: 1200 });
    expect(await isCut()).toBe(false);
  });

test('without a scenario it says what to do', async ({ page }) => {
  await page.goto('./report/');
  await page.getByRole('button', { name: 'Start empty' }).click();
  await expect(page.getByText('There is nothing to report yet')).toBeVisible();
});
