/** Pasting as people paste: with headings, from programs that put text or a table of HTML on the clipboard. */
import type { Page } from '@playwright/test';
import { expect, test } from './browser.ts';
import { gridCell } from './grid-cell.ts';

/** Made by hand after what spreadsheet programs put on the clipboard (common practice, no source). */
const rows = [
  ['Procedure', 'Cases', 'Duration (min)', 'Age', 'Weight', 'Technique', 'Agent'],
  ['Knee replacement', '120', '90', '68', '82', 'Spinal', ''],
  ['Thyroid', '130', '110', '51', '71', 'TIVA', 'Propofol'],
  ['Appendix', '60', '55', '3', '15', 'GA', 'sevo']
];
const asText = (end: string): string => rows.map((row) => row.join('\t')).join(end) + end;
const asTable = `<html><body><table>${rows
  .map((row) => `<tr>${row.map((cell) => `<td>${cell}</td>`).join('')}</tr>`)
  .join('\n')}</table></body></html>`;

async function paste(page: Page, forms: Readonly<Record<string, string>>): Promise<void> {
  await page.evaluate((given) => {
    const data = new DataTransfer();
    for (const [kind, text] of Object.entries(given)) data.setData(kind, text);
    document.activeElement?.dispatchEvent(
      new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true })
    );
  }, forms);
}

async function emptyCaseMix(page: Page): Promise<void> {
  await page.goto('./case-mix/');
  await page.getByRole('button', { name: 'Start empty' }).click();
  await page.getByRole('group', { name: 'Case mix' }).focus();
}

for (const [program, forms] of [
  ['lines end with CR and LF, beside a table', { 'text/plain': asText('\r\n'), 'text/html': asTable }],
  ['lines end with LF', { 'text/plain': asText('\n') }],
  ['a table alone', { 'text/html': asTable }]
] as const)
  test(`a list with headings lands in its columns (${program})`, async ({ page }) => {
    await emptyCaseMix(page);
    await paste(page, forms);
    const cell = (row: string, column: string) => gridCell(page, { grid: 'Case mix', row, column });
    await expect(await cell('Appendix', 'Age')).toHaveText('3');
    await expect(await cell('Appendix', 'Weight')).toHaveText('15');
    await expect(await cell('Appendix', 'Agent')).toContainText('Sevoflurane');
    await expect(await cell('Thyroid', 'Technique')).toContainText('Intravenous');
    await expect(await cell('Knee replacement', 'Technique')).toContainText('Regional');
    await expect(page.getByText(/^\s*3 case groups, 310 cases/)).toBeVisible();
    await expect(page.getByText('not in force')).toHaveCount(0);
    await page.getByRole('button', { name: 'Undo', exact: true }).first().click();
    await expect(page.getByText(/^\s*0 case groups/)).toBeVisible();
  });

test('columns in another order are shown before anything is pasted', async ({ page }) => {
  await emptyCaseMix(page);
  await paste(page, { 'text/plain': 'Cases\tSurgeon\tProcedure\n120\tX\tKnee' });
  const dialog = page.getByRole('dialog', { name: 'Columns met by their headings' });
  await expect(dialog.getByRole('row', { name: /Surgeon/ })).toContainText('nowhere: it is no column here');
  await dialog.getByRole('button', { name: 'Paste into these columns' }).click();
  await expect(await gridCell(page, { grid: 'Case mix', row: 'Knee', column: 'Cases' })).toHaveText('120');
});

test('a number that could be thousands is asked about once', async ({ page }) => {
  await page.goto('./case-mix/');
  await (await gridCell(page, { grid: 'Case mix', row: 'Breast surgery', column: 'Cases' })).click();
  await paste(page, { 'text/plain': '1.200\n1.500' });
  const dialog = page.getByRole('dialog', { name: 'Thousands or decimals?' });
  await expect(dialog).toContainText('and one more like it');
  await dialog.getByRole('button', { name: 'Thousands: 1200' }).click();
  await expect(
    await gridCell(page, { grid: 'Case mix', row: 'Breast surgery', column: 'Cases' })
  ).toContainText('1,200');
});
