import { departmentWorkbook } from '../fixtures/department.ts';
import { expect, test } from './browser.ts';
import { goTo, openWorkbook } from './open-workbook.ts';

test.beforeEach(async ({ page }) => {
  await page.goto('./payback/');
  await expect(page.getByRole('heading', { name: 'What would have to change' })).toBeVisible();
});

const payback = /^Payback, Closed-circuit A, price .*: 5(\.0)?\syears\. Where/;

test('a break-even price is taken over as a scenario that pays at the limit, and undone in one step', async ({
  page
}) => {
  const answer = page.locator('[data-answer="price"]');
  await expect(answer).toContainText('or less it has paid for itself within 5', { timeout: 30_000 });
  await answer.getByRole('button', { name: 'Take over as a new scenario' }).click();
  await expect(page.getByText('was added beside “Closed-circuit A”')).toBeVisible();
  await expect(page.getByRole('button', { name: payback })).toBeVisible();
  await page.getByRole('button', { name: 'Undo', exact: true }).first().click();
  await expect(page.getByRole('button', { name: payback })).toHaveCount(0);
});

test('every question is answered, and the figures that turn the answer are listed', async ({ page }) => {
  const department = departmentWorkbook();
  await openWorkbook(page, department);
  await goTo(page, 'payback', department);
  for (const subject of ['price', 'flow', 'adoption', 'cases', 'agent-price'])
    await expect(page.locator(`[data-answer="${subject}"]`)).not.toBeEmpty({ timeout: 30_000 });
  const turning = page.getByRole('region', { name: 'Figures that turn the answer by themselves' });
  await expect(turning.getByRole('row').nth(1)).toBeVisible({ timeout: 60_000 });
});

test('a scenario that buys no machine is told why no price is asked for', async ({ page }) => {
  await page.getByRole('combobox', { name: 'Scenario' }).selectOption({ label: 'Low flow, same machines' });
  await expect(page.locator('[data-answer="price"]')).toContainText('buys no machine', { timeout: 30_000 });
});
