/** A purchase for a part of the theatres, and a second group of them, typed as a user does it, and what is then said. */
import type { Page } from '@playwright/test';
import { departmentWorkbook } from '../fixtures/department.ts';
import { expect, test } from './browser.ts';
import { bottomFigure, gridCell } from './grid-cell.ts';
import { goTo, openWorkbook } from './open-workbook.ts';

const department = departmentWorkbook();
test.beforeEach(async ({ page }) => {
  await openWorkbook(page, department);
});

const typeInto = async (
  page: Page,
  cell: { grid: string; row: string; column: string },
  text: string
): Promise<void> => {
  await (await gridCell(page, cell)).click();
  await page.keyboard.type(text);
  await page.keyboard.press('Enter');
};
const saving = (page: Page) => bottomFigure(page, 'closed.againstBaseline.yearlySaving');
const amountOf = (page: Page) => async () =>
  Number((await saving(page).textContent())?.replace(/[^\d]/g, ''));

test('two machines for four theatres save less than four, and it is said where they are typed', async ({
  page
}) => {
  await goTo(page, 'scenarios', department);
  await expect(saving(page)).toHaveText(/^saves €[\d,]+$/);
  const ofFour = await amountOf(page)();
  await typeInto(page, { grid: 'Machines that come', row: 'Closed-circuit A', column: 'Theatres' }, '2');
  await expect.poll(amountOf(page)).toBeLessThan(ofFour);
  const said = page.getByText(/brings 2 machines to 4 theatres: “.*” stays in the other 2/);
  for (const sheet of ['Scenarios', 'Theatres', 'Comparison', 'Report']) {
    await page.getByRole('link', { name: sheet, exact: true }).click();
    await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
    await expect(said).toBeVisible();
  }
});

test('more theatres than there are stay in their cell with a sentence', async ({ page }) => {
  await goTo(page, 'scenarios', department);
  const cell = { grid: 'Machines that come', row: 'Closed-circuit A', column: 'Theatres' };
  const before = await saving(page).textContent();
  await typeInto(page, cell, '5');
  await expect(await gridCell(page, cell)).toHaveAttribute('aria-invalid', 'true');
  await (await gridCell(page, cell)).click();
  await expect(page.getByText('Theatres: 5 was given; “Theatres” has 4.').first()).toBeVisible();
  await expect(saving(page)).toHaveText(before ?? '');
});

test('a second group of theatres is one click, and cases are then done where it is said', async ({
  page
}) => {
  await goTo(page, 'theatres', department);
  await expect(page.getByRole('grid', { name: 'Where cases are done' })).toHaveCount(0);
  const before = await amountOf(page)();
  await page.getByRole('button', { name: 'Add theatres with another machine or room' }).click();
  // The machines come to the first group alone, so a fifth of the cases is done without them.
  await expect.poll(amountOf(page)).toBeLessThan(before);
  await typeInto(
    page,
    { grid: 'Where cases are done', row: 'Laparoscopic cholecystectomy', column: 'Theatres' },
    '100'
  );
  const spread = await amountOf(page)();
  expect(spread).toBeLessThan(before);
  await page.getByRole('link', { name: 'Scenarios', exact: true }).click();
  await page.getByRole('button', { name: 'Closed-circuit A', exact: true }).click();
  await expect.poll(amountOf(page)).toBeGreaterThan(spread);
});

test('a lease takes the place of the purchase, and what is paid at the start falls', async ({ page }) => {
  await goTo(page, 'scenarios', department);
  await page.getByText('How they are paid for').click();
  const one = page.getByRole('region', { name: /^Closed-circuit A: / });
  await one.getByRole('combobox').first().selectOption({ label: 'Lease or rental' });
  await one.getByRole('textbox', { name: /^Payment/ }).fill('5000');
  await page.keyboard.press('Enter');
  await page.getByRole('link', { name: 'Report', exact: true }).click();
  await expect(page.getByText(/Should the department take on 4/)).toBeVisible();
  // Beside the same machines bought, by the cost of a year of service.
  await page.getByRole('link', { name: 'Payback', exact: true }).click();
  const ways = page.getByRole('region', { name: /^Ways to pay: 4 × Closed-circuit ventilator A/ });
  await expect(ways.getByRole('row')).toHaveCount(3);
  await ways.locator('[data-figure="closed.waysToPay.0.asEntered.equivalentAnnualCost"]').click();
  await expect(page.getByTestId('working-value')).toBeVisible();
});
