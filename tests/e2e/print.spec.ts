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

test('nothing of the bottom line is printed, and each page says whose figures it has', async ({ page }) => {
  await page.goto('./machines/');
  const line = page.getByRole('contentinfo', { name: 'Bottom line' });
  await expect(line).toBeVisible();
  await page.emulateMedia({ media: 'print' });
  await expect(page.locator('footer[aria-label="Bottom line"]')).toBeHidden();
  await expect(
    page.getByText('The machines in use and the ones that could come in their place')
  ).toBeHidden();
  const boxes = await page.evaluate(() =>
    document.adoptedStyleSheets
      .flatMap(({ cssRules }) => [...cssRules].map(({ cssText }) => cssText))
      .join('')
  );
  expect(boxes).toContain('Invented hospital, invented prices · Machines');
  expect(boxes).toContain('Planning support, not clinical guidance');
  expect(boxes).toContain('counter(pages)');
});

test('nothing that is only told stands below a sheet, where it could take a page of its own', async ({
  page
}) => {
  await page.goto('./payback/');
  await expect(page.getByTestId('payback')).toBeVisible();
  await page.emulateMedia({ media: 'print' });
  const below = await page.evaluate(() => {
    const end = document.querySelector('main')?.getBoundingClientRect().bottom ?? 0;
    return [...document.querySelectorAll('.page > *, .page > * *')]
      .filter((each) => each.checkVisibility() && each.getBoundingClientRect().bottom > end + 1)
      .map((each) => each.outerHTML.slice(0, 80));
  });
  expect(below).toEqual([]);
});

test('Evidence prints each figure with its source, and its widest tables across', async ({ page }) => {
  await page.goto('./evidence/');
  const figures = page.locator('main details summary');
  await expect(figures.first()).toBeVisible();
  await expect(page.getByText('measurements lie within the tolerance')).toBeVisible();
  await page.emulateMedia({ media: 'print' });
  const count = await figures.count();
  expect(count).toBeGreaterThan(150);
  const sources = await page
    .locator('main details summary .cited')
    .evaluateAll((cited) => cited.map((each) => (each.checkVisibility() ? each.textContent.trim() : '')));
  expect(sources.filter((source) => source.length > 5)).toHaveLength(count);
  await expect(page.getByRole('search')).toBeHidden();
  await expect(page.locator('main .areas')).toHaveCSS('page', 'wide');
  // A4 across, less the margins.
  await page.setViewportSize({ width: Math.floor(((297 - 32) / 25.4) * 96), height: 700 });
  const cut = await page
    .locator('main .areas table')
    .evaluateAll(
      (tables) =>
        tables.filter(({ scrollWidth, parentElement }) => scrollWidth > (parentElement?.clientWidth ?? 0) + 1)
          .length
    );
  expect(cut).toBe(0);
});

test('Payback prints its years across the paper, so that nothing shrinks to make room for them', async ({
  page
}) => {
  await page.goto('./payback/');
  await expect(page.getByTestId('payback')).toBeVisible();
  await page.emulateMedia({ media: 'print' });
  await expect(page.locator('main .paper-across')).toHaveCSS('page', 'wide');
  const widerThan = (paperMm: number, where: string) =>
    page
      .locator(where)
      .evaluateAll(
        (tables, widthPx) =>
          tables
            .filter(({ scrollWidth }) => scrollWidth > widthPx)
            .map((table) => table.closest('[aria-label]')?.getAttribute('aria-label')),
        ((paperMm - 32) / 25.4) * 96 + 1
      );
  await page.setViewportSize({ width: Math.floor(((297 - 32) / 25.4) * 96), height: 700 });
  expect(await widerThan(297, 'main .paper-across table')).toEqual([]);
  await page.setViewportSize({ width: Math.floor(((210 - 32) / 25.4) * 96), height: 900 });
  expect(await widerThan(210, 'main :not(.paper-across) > .table-scroll > table')).toEqual([]);
});

test('in the report a figure and the words right of it stand apart', async ({ page }) => {
  await page.goto('./report/');
  await expect(page.getByRole('region', { name: 'Case mix' })).toBeVisible();
  await page.emulateMedia({ media: 'print' });
  const gaps = await page.locator('main td.number + td:not(.number)').evaluateAll((cells) =>
    cells.map((cell) => {
      const before = cell.previousElementSibling;
      const room = before === null ? 0 : parseFloat(getComputedStyle(before).paddingRight);
      return room + parseFloat(getComputedStyle(cell).paddingLeft);
    })
  );
  expect(gaps.length).toBeGreaterThan(10);
  expect(Math.min(...gaps)).toBeGreaterThanOrEqual(12);
});
