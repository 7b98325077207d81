/** Why not intravenous? A share of a case group that changes its technique, priced and typed as a user does it. */
import type { Page } from '@playwright/test';
import { departmentWorkbook } from '../fixtures/department.ts';
import { expect, test } from './browser.ts';
import { bottomFigure, gridCell } from './grid-cell.ts';
import { goTo, openWorkbook } from './open-workbook.ts';

const department = departmentWorkbook();
test.beforeEach(async ({ page }) => {
  await openWorkbook(page, department);
});

const share = {
  grid: 'Technique instead',
  row: 'Laparoscopic cholecystectomy',
  column: 'Closed-circuit A: intravenous'
};
const typeShare = async (page: Page, text: string): Promise<void> => {
  await (await gridCell(page, share)).click();
  await page.keyboard.type(text);
  await page.keyboard.press('Enter');
};

test('cases that become intravenous are said to be free until they are priced, and then cost', async ({
  page
}) => {
  const saving = bottomFigure(page, 'closed.againstBaseline.yearlySaving');
  const amount = async () => Number((await saving.textContent())?.replace(/[^\d]/g, ''));
  await goTo(page, 'scenarios', department);
  await expect(saving).toHaveText(/^saves €[\d,]+$/);
  await typeShare(page, '40');
  await page.getByRole('link', { name: 'Comparison', exact: true }).click();
  await expect(
    page.getByText('makes cases intravenous, and intravenous anaesthesia has no price yet')
  ).toBeVisible();
  const unpriced = await amount();

  await page.getByRole('link', { name: 'Prices', exact: true }).click();
  const lines = page.getByRole('textbox', { name: 'Lines and syringes' });
  await lines.fill('25');
  await lines.press('Enter');
  await expect.poll(amount).toBeLessThan(unpriced);
  await page.getByRole('link', { name: 'Comparison', exact: true }).click();
  await expect(page.getByText('has no price yet')).toHaveCount(0);
  await expect(
    page
      .getByRole('cell', { name: 'Intravenous and regional drugs' })
      .or(page.getByRole('rowheader', { name: 'Intravenous and regional drugs' }))
      .first()
  ).toBeVisible();

  await page.getByRole('link', { name: 'Payback', exact: true }).click();
  await expect(page.getByText('Another technique').first()).toBeVisible();
});

test('more than all cases are refused in the cell, and the figure in force is kept', async ({ page }) => {
  await goTo(page, 'scenarios', department);
  const saving = bottomFigure(page, 'closed.againstBaseline.yearlySaving');
  await expect(saving).toHaveText(/^saves €[\d,]+$/);
  const before = await saving.textContent();
  await typeShare(page, '120');
  await expect(await gridCell(page, share)).toHaveAttribute('aria-invalid', 'true');
  await expect(saving).toHaveText(before ?? '');
});

test('nothing can be typed for today, nor a technique that a group has already', async ({ page }) => {
  await goTo(page, 'scenarios', department);
  const grid = page.getByRole('grid', { name: 'Technique instead' });
  await expect(grid.getByRole('columnheader', { name: /^Today/ })).toHaveCount(0);
  const cell = await gridCell(page, { ...share, row: 'intravenous' });
  await cell.click();
  await page.keyboard.type('10');
  await page.keyboard.press('Enter');
  await expect(cell).toHaveText('');
});
