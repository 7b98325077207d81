/** A grid of 2,000 rows, of which only those in sight are drawn. */
import type { Page } from '@playwright/test';
import { writeWorkbookFile } from '../../src/lib/files/read/workbook-file.ts';
import { demoWorkbook } from '../../src/lib/workbook/demo.ts';
import { expect, test } from './browser.ts';
import { gridCell } from './grid-cell.ts';

/** The demo's case groups over and over, each with its number. */
async function openWith(page: Page, rows: number): Promise<void> {
  const demo = demoWorkbook();
  const caseMix = Array.from({ length: rows }, (_, index) => {
    const row = demo.caseMix[index % demo.caseMix.length];
    if (row === undefined) throw new Error('The demo has no case group.');
    return index < demo.caseMix.length ? row : { ...row, id: `more-${index}`, name: `Group ${index}` };
  });
  await page.goto('./case-mix/');
  await (await gridCell(page, { grid: 'Case mix', row: 'Breast surgery', column: 'Cases' })).click();
  await page.getByLabel('Open a workbook from a file').setInputFiles({
    name: 'long.json',
    mimeType: 'application/json',
    buffer: Buffer.from(writeWorkbookFile({ ...demo, caseMix }))
  });
  await expect(page.getByText(`${rows.toLocaleString('en-GB')} case groups`)).toBeVisible();
  await page.getByRole('grid').locator('tr[data-row="0"] [data-column="1"]').click();
}

const focusedRow = (page: Page) =>
  page.evaluate(() => document.activeElement?.closest('tr')?.getAttribute('data-row'));

test('few rows are drawn, all are counted, and the cursor reaches the last', async ({ page }) => {
  await openWith(page, 2000);
  const grid = page.getByRole('grid', { name: 'Case mix' });
  await expect(grid).toHaveAttribute('aria-rowcount', '2001');
  expect(await grid.locator('tbody tr[data-row]').count()).toBeLessThan(80);
  await page.keyboard.press('Control+End');
  await expect.poll(() => focusedRow(page)).toBe('1999');
  await page.keyboard.press('PageUp');
  await expect.poll(async () => Number(await focusedRow(page))).toBeLessThan(1999);
  await expect(page.locator(':focus')).toBeInViewport();
});

test('an edit under way outlives a scroll far away', async ({ page }) => {
  await openWith(page, 2000);
  await page.keyboard.type('12');
  await page.mouse.wheel(0, 20_000);
  await expect(
    page.locator('tr[data-row="600"], tr[data-row="640"], tr[data-row="660"]').first()
  ).toBeVisible();
  await page.keyboard.type('34');
  await page.keyboard.press('Enter');
  await page.keyboard.press('Control+Home');
  await expect(page.locator('tr[data-row="0"] [data-column="1"]')).toContainText('1,234');
});

test('a page step takes nothing of the cell before along', async ({ page }) => {
  await openWith(page, 2000);
  await page.keyboard.type('many');
  await page.keyboard.press('Enter');
  await page.keyboard.press('ArrowUp');
  const field = page.locator('input:focus');
  await expect(field).toHaveAttribute('aria-invalid', 'true');
  await expect(field).toHaveAccessibleDescription(/Not taken/);
  await expect(field).toHaveAccessibleName(/Cases.*Laparoscopic cholecystectomy/s);
  const before = await field.elementHandle();

  await page.keyboard.press('PageDown');
  await expect.poll(async () => Number(await focusedRow(page))).toBeGreaterThan(5);
  // A field of its own, so that an assistive technology hears of a new focus.
  expect(await before?.evaluate((old) => old !== document.activeElement && !old.isConnected)).toBe(true);
  await expect(field).not.toHaveAttribute('aria-invalid');
  await expect(field).toHaveAccessibleDescription('');
  const row = Number(await focusedRow(page));
  const cell = page.locator(`tr[data-row="${row}"] [data-column="1"]`);
  await expect(cell).toHaveText(await field.inputValue());
  await expect(cell).not.toHaveAttribute('aria-invalid');
  await expect(page.locator('td[aria-selected=true]')).toHaveCount(1);

  // An edit ends with the step and stays with its own cell.
  await page.keyboard.type('77');
  await page.keyboard.press('PageUp');
  await expect.poll(() => focusedRow(page)).toBe('0');
  await expect(field).toHaveValue('many');
  await expect(field).toHaveAttribute('aria-invalid', 'true');
  await expect(page.locator('td[data-place=editing]')).toHaveCount(0);
  await expect(cell).toHaveText('77');
});

test('rows around those in sight are drawn once a page step has come to rest', async ({ page }) => {
  await openWith(page, 2000);
  for (let step = 0; step < 5; step += 1) await page.keyboard.press('PageDown');
  const drawn = page.getByRole('grid', { name: 'Case mix' }).locator('tbody tr[data-row]');
  const last = Number(await focusedRow(page));
  await expect(page.locator(`tr[data-row="${last + 5}"]`)).toBeAttached();
  await expect(page.locator('.scroller.paging')).toHaveCount(0);
  // Each row once, in order, with the texts of its own.
  const rows = await drawn.evaluateAll((all) => all.map((each) => Number(each.getAttribute('data-row'))));
  expect(rows).toEqual(rows.toSorted((a, b) => a - b));
  expect(new Set(rows).size).toBe(rows.length);
  for (const row of rows) {
    const named = page.locator(`tr[data-row="${row}"]`);
    await expect(named.locator('[data-column="0"]')).toHaveText(`Group ${row}`);
    await expect(named.getByRole('rowheader')).toContainText(`Group ${row}`);
  }
});

test('a text is found in rows that are not drawn, forwards and backwards', async ({ page }) => {
  await openWith(page, 2000);
  await page.keyboard.press('Shift+F10');
  await page.getByRole('menuitem', { name: 'Find in this grid' }).click();
  await expect(page.getByLabel('Find in this grid')).toBeFocused();
  await page.keyboard.press('Escape');
  await page.keyboard.press('Control+f');
  const field = page.getByLabel('Find in this grid');
  await expect(field).toBeFocused();
  await field.fill('group 1999');
  await expect(page.getByText('1 of 1', { exact: true })).toBeVisible();
  await expect(page.getByRole('rowheader', { name: 'Group 1999' })).toBeInViewport();
  await field.fill('breast');
  await expect(page.getByText('1 of 1', { exact: true })).toBeVisible();
  await field.fill('group 100');
  await expect(page.getByText('1 of 11', { exact: true })).toBeVisible();
  await page.keyboard.press('Enter');
  await expect(page.getByText('2 of 11', { exact: true })).toBeVisible();
  await page.keyboard.press('Shift+Enter');
  await page.keyboard.press('Shift+Enter');
  await expect(page.getByText('11 of 11', { exact: true })).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(field).toBeHidden();
  await expect.poll(() => focusedRow(page)).toBe('1009');
});

test('paper takes all rows and all columns', async ({ page }) => {
  await openWith(page, 200);
  const rows = page.getByRole('grid', { name: 'Case mix' }).locator('tbody tr[data-row]');
  expect(await rows.count()).toBeLessThan(80);
  const printed = await page.evaluate(() => {
    window.dispatchEvent(new Event('beforeprint'));
    const all = document.querySelectorAll('tbody tr[data-row]').length;
    window.dispatchEvent(new Event('afterprint'));
    return all;
  });
  expect(printed).toBe(200);
  await page.emulateMedia({ media: 'print' });
  await page.setViewportSize({ width: 700, height: 900 });
  const { right, last } = await page.evaluate(() => ({
    right: document.querySelector('main')?.getBoundingClientRect().right ?? 0,
    last: document.querySelector('thead th:last-child')?.getBoundingClientRect().right ?? Infinity
  }));
  expect(last).toBeLessThanOrEqual(right + 1);
  await page.emulateMedia({ media: 'screen' });
  await expect.poll(() => rows.count()).toBeLessThan(80);
});
