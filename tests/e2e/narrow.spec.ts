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

test('monitoring says first what is in place, and gives the reasons room for words', async ({ page }) => {
  await open(page, 'monitoring');
  const table = page.getByRole('table').first();
  const inPlace = await table.getByRole('columnheader', { name: 'In place?' }).boundingBox();
  expect((inPlace?.x ?? NaN) + (inPlace?.width ?? NaN)).toBeLessThan(390);
  const reasons = table.getByRole('columnheader', { name: 'Asked for because of' });
  expect((await reasons.boundingBox())?.width).toBeGreaterThan(200);
});

for (const [sheet, what] of [
  ['payback', '[aria-label="Figures of each scenario against today"]'],
  ['case-mix', '.scroller']
] as const)
  test(`a dotted edge tells on ${sheet} that there is more aside, until it has been scrolled to`, async ({
    page
  }) => {
    await open(page, sheet);
    const scrolled = page.locator(what).first();
    const edge = () => scrolled.evaluate((each) => getComputedStyle(each).borderInlineEndColor);
    const nothing = 'rgba(0, 0, 0, 0)';
    await expect.poll(edge).not.toBe(nothing);
    await scrolled.evaluate((each) => each.scrollTo({ left: each.scrollWidth }));
    await expect.poll(edge).toBe(nothing);
    // Where all is in sight there is nothing to tell of.
    await page.setViewportSize({ width: 3000, height: 844 });
    await expect.poll(edge).toBe(nothing);
  });
