/** Two workbooks side by side; a table offered to Open; another currency. */
import { readFileSync } from 'node:fs';
import { expect, test } from './browser.ts';

test('a file is compared with the open workbook, difference by difference', async ({ page }) => {
  await page.goto('./workbooks/');
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save', exact: true }).click()
  ]);
  const saved = JSON.parse(readFileSync((await download.path()) ?? '', 'utf8')) as {
    agents: { agent: string; bottlePrice: string }[];
    accounting: { paybackLimitYears: number };
    ranges: object;
  };
  const agent = saved.agents.find((each) => each.agent === 'sevoflurane');
  if (agent === undefined) throw new Error('The workbook has no sevoflurane.');
  agent.bottlePrice = '999.00';
  // A range would have to hold the new price.
  saved.ranges = {};
  saved.accounting.paybackLimitYears = 7;
  await page.getByLabel('Compare the open workbook with a file').setInputFiles({
    name: 'other.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify(saved))
  });
  await expect(page.getByTestId('compared')).toContainText(
    '2 differences from the file other.json; 1 of them by themselves move'
  );
  const row = page.locator('[data-difference="agents.sevoflurane.bottlePrice"]');
  await expect(row).toContainText('999.00');
  await row.getByRole('button', { name: /^Net present value with/ }).click();
  await expect(page.getByTestId('working')).toContainText('as in the file other.json');
  await expect(page.locator('[data-difference="accounting.paybackLimitYears"]')).toContainText('the same');
});

test('a table offered to Open leads to Files, and nothing is opened', async ({ page }) => {
  await page.goto('./case-mix/');
  await page.getByLabel('Open a workbook from a file').setInputFiles({
    name: 'cases.csv',
    mimeType: 'text/csv',
    buffer: Buffer.from('Case group,Cases\nHernia,12\n')
  });
  await expect(page.getByText('“cases.csv” is a table, not a workbook')).toBeVisible();
  await page.getByRole('button', { name: 'Go to Files' }).click();
  await expect(page.getByRole('heading', { name: 'Files', level: 1 })).toBeVisible();
});

test('another currency asks what becomes of the amounts', async ({ page }) => {
  await page.goto('./prices/');
  const currency = page.locator('[data-cell="currency"] input, input[data-cell="currency"]').first();
  await currency.fill('GBP');
  await currency.press('Enter');
  const dialog = page.getByRole('dialog', { name: 'Prices from EUR to GBP' });
  await dialog.getByRole('button', { name: 'Convert them' }).click();
  await expect(dialog.getByRole('alert')).toContainText('a number above 0');
  await dialog.getByLabel('GBP for 1 EUR').fill('0.5');
  await dialog.getByRole('button', { name: 'Convert them' }).click();
  await expect(page.getByText('Prices are in GBP now; their amounts were multiplied by 0.5.')).toBeVisible();
});
