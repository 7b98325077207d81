/** Find and replace, and the clipboard from the menu, in a browser that gives leave and in one that does not. */
import type { Page } from '@playwright/test';
import { expect, test } from './browser.ts';
import { gridCell } from './grid-cell.ts';

const cell = (page: Page, row: string, column: string) => gridCell(page, { grid: 'Case mix', row, column });

async function choose(page: Page, name: string): Promise<void> {
  await page.keyboard.press('Shift+F10');
  await page.getByRole('menuitem', { name, exact: true }).click();
}

test('a text is replaced in all cells as one step of undo, and what cannot be read is said', async ({
  page
}) => {
  await page.goto('./case-mix/');
  await (await cell(page, 'Breast surgery', 'Agent')).click();
  await page.keyboard.press('Control+Space');
  await page.keyboard.press('Control+h');
  await page.getByLabel('Find in this grid').fill('Sevoflurane');
  await page.getByLabel('Replace with').fill('Xenon');
  await page.getByRole('button', { name: 'Replace all' }).click();
  const search = page.getByRole('search');
  await expect(search.getByRole('status')).toHaveText(
    /^(\d+) cells replaced; \1 cells could not be read and kept as given\.$/
  );
  await page.getByLabel('Replace with').press('Escape');
  await expect(page.getByRole('link', { name: /cells are not in force/ })).toBeVisible();
  await page.keyboard.press('Control+z');
  await expect(page.getByText('not in force')).toHaveCount(0);
  await expect(await cell(page, 'Breast surgery', 'Agent')).toContainText('Sevoflurane');
});

test.describe('with leave', () => {
  test.use({ permissions: ['clipboard-read', 'clipboard-write'] });
  test('the menu cuts, copies with headings and pastes', async ({ page }) => {
    await page.goto('./case-mix/');
    await (await cell(page, 'Breast surgery', 'Cases')).click();
    await page.keyboard.press('Shift+ArrowRight');
    await choose(page, 'Copy with headings');
    await expect
      .poll(() => page.evaluate(() => navigator.clipboard.readText()))
      .toBe('Cases (a year)\tMinutes (min)\n240\t85');
    await choose(page, 'Copy');
    await expect.poll(() => page.evaluate(() => navigator.clipboard.readText())).toBe('240\t85');
    await (await cell(page, 'Fracture fixation', 'Cases')).click();
    await choose(page, 'Paste');
    await expect(await cell(page, 'Fracture fixation', 'Minutes')).toContainText('85');
    await page.keyboard.press('Control+z');
    await expect(await cell(page, 'Fracture fixation', 'Minutes')).toContainText('95');
  });
});

test('without leave a sentence names the keys that need none', async ({ page }) => {
  await page.addInitScript(() => {
    const refused = () => Promise.reject(new DOMException('No', 'NotAllowedError'));
    Object.defineProperty(navigator, 'clipboard', { value: { readText: refused, writeText: refused } });
  });
  await page.goto('./case-mix/');
  await (await cell(page, 'Breast surgery', 'Cases')).click();
  await choose(page, 'Paste');
  await expect(page.getByTestId('grid-remark').filter({ visible: true })).toHaveText(
    'The browser did not let this page read the clipboard: press Ctrl+V.'
  );
  await choose(page, 'Cut');
  await expect(page.getByTestId('grid-remark')).toContainText('press Ctrl+X');
  await expect(await cell(page, 'Breast surgery', 'Cases')).toContainText('240');
});
