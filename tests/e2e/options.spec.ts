/** Who earns the saving: the same figures on Comparison, Payback and the report as in the estimate. */
import { execFile } from 'node:child_process';
import { promisify } from 'node:util';
import type { Page } from '@playwright/test';
import { departmentWorkbook } from '../fixtures/department.ts';
import { expect, test } from './browser.ts';
import { goTo, openWorkbook } from './open-workbook.ts';

const department = departmentWorkbook();
test.beforeEach(async ({ page }) => {
  await openWorkbook(page, department);
});

const run = promisify(execFile);

interface Adds {
  readonly yearlySaving: string;
  readonly co2eAvoidedKg: number;
  readonly investment: string;
  readonly npv: string;
}

async function estimateOf(page: Page, file: string): Promise<Adds> {
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save', exact: true }).click();
  await (await download).saveAs(file);
  const { stdout } = await run(process.execPath, ['scripts/batch.mjs', file], { maxBuffer: 50_000_000 });
  const { scenarios } = JSON.parse(stdout) as { scenarios: { id: string; machineAdds: Adds | null }[] };
  const adds = scenarios.find(({ id }) => id === 'closed')?.machineAdds;
  if (adds === null || adds === undefined) throw new Error('The estimate has nothing that the machine adds.');
  return adds;
}

const euros = (amount: string): string => `€${Math.round(Math.abs(Number(amount))).toLocaleString('en-GB')}`;

test('the report says what the machine adds, as the estimate has it', async ({ page }, info) => {
  await goTo(page, 'report', department);
  const said = page.locator('.one-page [data-machine-adds]');
  const adds = await estimateOf(page, info.outputPath('workbook.json'));
  expect(Number(adds.yearlySaving)).toBeGreaterThan(0);
  expect(Number(adds.npv)).toBeLessThan(0);
  await expect(said).toContainText(`The machine itself saves ${euros(adds.yearlySaving)} and avoids`);
  await expect(said).toContainText(`for ${euros(adds.investment)} more`);
  await expect(said).toContainText(`the net present value is ${euros(adds.npv)} lower`);
  await expect(page.locator('[data-opening-answer]')).toContainText(
    `Not for the money alone: against today’s practice it pays for itself within the limit of 5\u00a0years, but the machine does not earn that; the same agents and plan on today’s machines are worth ${euros(adds.npv)} more over 10\u00a0years.`
  );
  await expect(said).toContainText('Another agent alone, on today’s machines and flows,');
  await expect(said).toContainText('No scenario touches the nitrous oxide lost from the supply');

  const options = page.getByRole('region', { name: 'All options against today' });
  await expect(options.getByRole('row')).toHaveCount(7);
  await expect(options.getByRole('row').nth(1)).toContainText('Today');
});

test('the figure in the table of Payback opens a working that ends in the estimate’s', async ({
  page
}, info) => {
  await goTo(page, 'payback', department);
  const { yearlySaving } = await estimateOf(page, info.outputPath('workbook.json'));
  await page
    .getByRole('region', { name: /^What the machine adds/ })
    .locator('[data-figure="closed.machineAdds.yearlySaving"]')
    .first()
    .click();
  const value = await page.getByTestId('working-value').getAttribute('data-value');
  expect(Number(value)).toBeCloseTo(Number(yearlySaving), 6);
});

test('Comparison opens with its answer, and folds what is the same for all', async ({ page }) => {
  await goTo(page, 'comparison', department);
  await expect(page.locator('[data-answer-first]')).toContainText(
    'Closed-circuit A without the machine has the highest net present value of all options'
  );
  const unchanged = page.locator('[data-figure="today.perYear.cost.electricity"]');
  const table = page.getByRole('region', { name: 'A year of each scenario' });
  await expect(table.getByText('Money, EUR')).toBeVisible();
  await expect(unchanged).toHaveCount(0);
  await table.getByRole('button', { name: 'Show unchanged' }).nth(1).click();
  await expect(unchanged).toBeVisible();
});

test('one click makes the twin a scenario, marked as made by the tool, and undo takes it out', async ({
  page
}) => {
  await goTo(page, 'comparison', department);
  const name = 'Closed-circuit A without the machine (made by the tool)';
  const column = page
    .getByRole('region', { name: 'A year of each scenario' })
    .getByRole('columnheader', { name });
  const keep = page
    .getByRole('row', { name: /^Closed-circuit A without the machine/ })
    .getByRole('button', { name: 'Make it a scenario' });
  await keep.click();
  await expect(page.getByText(`“${name}” was added to the scenarios.`)).toBeVisible();
  await expect(column).toBeVisible();
  // It stands in the table as a scenario now, and no longer as a twin.
  await expect(keep).toHaveCount(0);
  await page.getByRole('button', { name: 'Undo', exact: true }).first().click();
  await expect(column).toHaveCount(0);
  await expect(keep).toBeVisible();
});

test('the changes stand in the reader’s own order, moved by keyboard or dragged', async ({ page }) => {
  await goTo(page, 'payback', department);
  const section = page.getByRole('region', { name: /^What the machine adds/ });
  const names = section.locator('[data-lever] > span');
  await expect(names).toHaveText(['1. Another agent', '2. Lower flow', '3. The machine itself']);
  const later = section.getByRole('button', { name: 'Move “Another agent” later' });
  await later.focus();
  await page.keyboard.press('Enter');
  await expect(names).toHaveText(['1. Lower flow', '2. Another agent', '3. The machine itself']);
  await expect(later).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(names).toHaveText(['1. Lower flow', '2. The machine itself', '3. Another agent']);
  // At the end it cannot go on: the focus stays with the change that was moved.
  await expect(section.getByRole('button', { name: 'Move “Another agent” earlier' })).toBeFocused();
  await expect(section.getByRole('heading', { name: /the machine, coming second,/ }).first()).toBeVisible();
  await section
    .locator('[data-lever="machine"]')
    .dragTo(section.locator('[data-lever="flow"]'), { targetPosition: { x: 5, y: 5 } });
  await expect(names).toHaveText(['1. The machine itself', '2. Lower flow', '3. Another agent']);
});

test('where the hospital is decides what is said of a restricted agent, on every sheet that shows a saving', async ({
  page
}) => {
  await goTo(page, 'scenarios', department);
  const said = page.locator('[data-restriction="restriction.desflurane.european-union"]');
  await expect(said).toHaveCount(0);
  await page.getByLabel('Where the hospital is').selectOption('European Union');
  await expect(said).toContainText('name on Scenarios the agent');
  await page.getByLabel('Given in place of a restricted agent').selectOption('Sevoflurane');
  await expect(said).toContainText('each saving is shown against lawful practice as well');
  for (const sheet of ['Comparison', 'Payback', 'Report']) {
    await page.getByRole('link', { name: sheet, exact: true }).click();
    await expect(said.first()).toBeVisible();
    const beyond = page.getByRole('region', { name: /beyond what the law asks for$/ });
    await expect(beyond.getByRole('row')).toHaveCount(3);
    await expect(beyond.locator('[data-figure="closed.againstLawful.npv"]')).toBeVisible();
  }
});

test('each option has its certainty once draws are made, and no longer after an edit', async ({ page }) => {
  await goTo(page, 'uncertainty', department);
  await page.getByLabel('Draws', { exact: true }).fill('200');
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: /^Run 200 draws/ }).click();
  await expect(page.locator('[data-result]')).toBeVisible();
  await page.getByRole('link', { name: 'Comparison', exact: true }).click();
  const options = page.getByRole('region', { name: 'All options against today' });
  const share = options.locator('[data-figure="drawn.closed.withoutMachine.npvAboveZero"]');
  await expect(share).toHaveText(/^[\d.]+\s%$/);
  await share.click();
  await expect(page.getByTestId('working-value')).toContainText('%');
  await page.keyboard.press('Escape');
  await page.getByRole('link', { name: 'Payback', exact: true }).click();
  await page.getByLabel(/^Discount rate/).fill('4');
  await page.keyboard.press('Enter');
  await page.getByRole('link', { name: 'Comparison', exact: true }).click();
  await expect(share).toHaveCount(0);
  await expect(page.getByText('the workbook has changed since the draws')).toBeVisible();
});

test('a break-even question may be asked of the machine by itself', async ({ page }) => {
  await goTo(page, 'payback', department);
  const panel = page.getByRole('region', { name: 'What would have to change' });
  const price = panel.locator('[data-answer="price"] [data-figure]');
  const euros = async (): Promise<number> => Number((await price.textContent())?.replaceAll(/[€,]/g, ''));
  await expect(price).toBeVisible({ timeout: 50_000 });
  const ofWhole = await euros();
  await panel.getByLabel(/^Of the machine by itself/).check();
  await expect(panel).toContainText('so that the machine of Closed-circuit A by itself has paid for itself');
  await expect(price).toBeVisible({ timeout: 50_000 });
  await expect.poll(euros).toBeLessThan(ofWhole / 2);
  await price.click();
  await expect(page.getByTestId('working-value')).toBeVisible();
});
