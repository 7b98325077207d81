/** Sorting, filtering and hiding columns of a sheet: what is looked at, and what stays in force. */
import { wholeWorkbook } from '../fixtures/whole-workbook.ts';
import { expect, test } from './browser.ts';
import { gridCell } from './grid-cell.ts';
import { goTo, openWorkbook } from './open-workbook.ts';

const whole = wholeWorkbook();
const [first] = whole.caseMix;
if (first === undefined) throw new Error('The fixture has a case.');
/** Many rows, so that the grid draws some of them alone. */
const workbook = {
  ...whole,
  title: 'Eighty groups',
  caseMix: Array.from({ length: 80 }, (_, at) => ({
    ...first,
    id: `group-${at}`,
    name: `${at % 2 === 0 ? 'Eye' : 'Knee'} ${String(at).padStart(2, '0')}`,
    casesPerYear: 80 - at
  }))
};

test('a filter hides rows that still count, a sort is one step of undo, and hidden columns come back', async ({
  page
}) => {
  await openWorkbook(page, workbook);
  await goTo(page, 'case-mix', workbook);
  const bottomLine = page.getByRole('contentinfo', { name: 'Bottom line' });
  const figures = await bottomLine.innerText();
  const cell = (row: string, column: string) => gridCell(page, { grid: 'Case mix', row, column });
  await (await cell('Eye 00', 'Case group')).click();

  await page.keyboard.press('Alt+Shift+F');
  await page.getByLabel('Text of condition 1').fill('knee');
  await expect(page.getByText('40 of 80 rows shown; all count in the figures.')).toHaveCount(2);
  const names = page
    .getByRole('grid', { name: 'Case mix' })
    .locator('tbody tr[aria-rowindex] td:first-of-type');
  await expect(names.first()).toContainText('Knee 01');
  expect(await bottomLine.innerText()).toBe(figures);
  await expect(page.getByText(/^\s*80 case groups/)).toBeVisible();

  await (await cell('Knee 03', 'Cases')).click();
  await page.keyboard.press('Alt+Shift+S');
  await expect(names.first()).toContainText('Knee 79');
  expect(await bottomLine.innerText()).toBe(figures);
  await page.keyboard.press('Alt+Shift+H');
  await expect(page.getByRole('columnheader', { name: /^Cases/ })).toHaveCount(0);

  await page.getByRole('button', { name: 'Show all rows and columns' }).click();
  await expect(page.getByRole('columnheader', { name: /^Cases/ })).toHaveCount(1);
  await page.keyboard.press('Control+Home');
  await expect(names.first()).toContainText('Knee 79');
  await page.keyboard.press('Control+z');
  await expect(names.first()).toContainText('Eye 00');
});
