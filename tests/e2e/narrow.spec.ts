/** On a phone: the bars give way to the sheet, and a grid keeps the names of its rows in sight. */
import type { Page } from '@playwright/test';
import { expect, test } from './browser.ts';

test.use({ viewport: { width: 390, height: 844 } });

async function open(page: Page, sheet: string): Promise<void> {
  await page.goto(`./${sheet}/`);
  await expect(page.getByTestId('payback')).toBeVisible();
}

test('what stays in sight of the bars leaves the sheet nine tenths of the page', async ({ page }) => {
  await open(page, 'comparison');
  await page.mouse.move(200, 400);
  await page.mouse.wheel(0, 600);
  await expect.poll(() => page.evaluate(() => scrollY)).toBeGreaterThan(500);
  const bottomLine = await page.getByRole('contentinfo', { name: 'Bottom line' }).boundingBox();
  expect(bottomLine?.height).toBeLessThanOrEqual(84);
  // Nothing else stays.
  const heading = page.getByRole('heading', { level: 1 });
  await expect(heading).not.toBeInViewport();
  await expect(page.getByRole('button', { name: 'Undo' })).not.toBeInViewport();
});

test('what the chosen scenario does is in the bottom line without scrolling aside', async ({ page }) => {
  await open(page, 'comparison');
  for (const figure of ['yearlySaving', 'co2eAvoidedKg', 'simplePaybackYears'])
    await expect(
      page.getByRole('contentinfo', { name: 'Bottom line' }).locator(`[data-figure$="${figure}"]`)
    ).toBeInViewport({ ratio: 1 });
});

test('a grid scrolled aside keeps the names of its rows, and leaves its columns most of the width', async ({
  page
}) => {
  await open(page, 'case-mix');
  const grid = page.getByRole('grid', { name: 'Case mix' });
  const scroller = page.locator('.scroller').first();
  await scroller.evaluate((each) => each.scrollTo({ left: 700 }));
  await expect.poll(() => scroller.evaluate((each) => each.scrollLeft)).toBe(700);
  const name = grid.locator('[data-row="2"] [data-column="0"]');
  const box = await name.boundingBox();
  const around = await scroller.boundingBox();
  expect(box?.x).toBeCloseTo(around?.x ?? NaN, 0);
  expect((around?.width ?? 0) - (box?.width ?? 0)).toBeGreaterThan(200);
  // Long names are read whole, on a few lines.
  const cut = await grid
    .locator('[data-column="0"]')
    .evaluateAll((cells) =>
      cells
        .filter(
          (cell) => cell.scrollHeight > cell.clientHeight + 1 || cell.scrollWidth > cell.clientWidth + 1
        )
        .map((cell) => cell.textContent)
    );
  expect(cut).toEqual([]);
});

for (const [sheet, label] of [
  ['payback', 'Figures of each scenario against today'],
  ['comparison', 'All options against today']
] as const)
  test(`what names a row on ${sheet} has room for a few words, and stays while figures scroll`, async ({
    page
  }) => {
    await open(page, sheet);
    const table = page.getByRole('region', { name: label });
    const heads = table.locator('tbody th');
    const lines = await heads.evaluateAll((cells) =>
      cells.map((cell) => ({
        words: cell.textContent.trim().split(/\s+/).length,
        lines: Math.floor(cell.clientHeight / parseFloat(getComputedStyle(cell).lineHeight))
      }))
    );
    expect(lines.length).toBeGreaterThan(5);
    expect(lines.filter((each) => each.words > 3 && each.lines >= each.words)).toEqual([]);
    const before = await heads.first().boundingBox();
    await table.evaluate((each) => each.scrollTo({ left: 150 }));
    await expect.poll(() => table.evaluate((each) => each.scrollLeft)).toBe(150);
    expect((await heads.first().boundingBox())?.x).toBeCloseTo(before?.x ?? NaN, 0);
  });
