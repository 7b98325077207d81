/** The habits of a spreadsheet, in a real browser on the case mix. */
import type { Locator, Page } from '@playwright/test';
import { expect, test } from './browser.ts';
import { gridCell } from './grid-cell.ts';

const cell = (page: Page, row: string, column: string): Promise<Locator> =>
  gridCell(page, { grid: 'Case mix', row, column });

/** The cell with the cursor, by its place. */
const place = async (page: Page): Promise<string> =>
  page.evaluate(() => {
    const at = document.activeElement?.closest('[role=gridcell]');
    return `${at?.closest('tr')?.getAttribute('data-row')},${at?.getAttribute('data-column')}`;
  });
const text = (page: Page, row: number, column: number): Promise<string> =>
  page
    .getByRole('grid', { name: 'Case mix' })
    .locator(`tr[data-row="${row}"] [role=gridcell][data-column="${column}"]`)
    .evaluate((each) => each.textContent.replace('*', '').trim());

test.beforeEach(async ({ page }) => {
  await page.goto('./case-mix/');
  await (await cell(page, 'Laparoscopic cholecystectomy', 'Cases')).click();
});

test('arrows, Tab, Home, End and their kin move the cursor', async ({ page }) => {
  const moves: readonly (readonly [string, string])[] = [
    ['ArrowDown', '1,1'],
    ['ArrowRight', '1,2'],
    ['Tab', '1,3'],
    ['Shift+Tab', '1,2'],
    ['Home', '1,0'],
    ['Control+End', '12,15'],
    ['Control+Home', '0,0']
  ];
  for (const [key, expected] of moves) {
    await page.keyboard.press(key);
    await expect.poll(() => place(page), key).toBe(expected);
  }
});

test('Enter opens the cell, and Enter again takes its text and moves down', async ({ page }) => {
  await page.keyboard.press('Enter');
  expect(await place(page)).toBe('0,1');
  await page.keyboard.press('Enter');
  await expect.poll(() => place(page)).toBe('1,1');
});

test('Tab leaves the grid after its last cell', async ({ page }) => {
  await page.keyboard.press('Control+End');
  await page.keyboard.press('Tab');
  await expect(page.getByRole('button', { name: 'Add a case group' })).toBeFocused();
});

test('F2 edits in place, Escape restores, typing replaces', async ({ page }) => {
  await page.keyboard.press('F2');
  await page.keyboard.type('9');
  await page.keyboard.press('Escape');
  expect(await text(page, 0, 1)).toBe('420');
  await page.keyboard.press('F2');
  await page.keyboard.type('9');
  await page.keyboard.press('Enter');
  await expect.poll(() => text(page, 0, 1)).toBe('4,209');
  await page.keyboard.press('ArrowUp');
  await page.keyboard.type('7');
  await page.keyboard.press('Enter');
  await expect.poll(() => text(page, 0, 1)).toBe('7');
});

test('a block is filled down and to the right, as one step of undo', async ({ page }) => {
  await page.keyboard.press('Shift+ArrowDown');
  await page.keyboard.press('Shift+ArrowDown');
  await page.keyboard.press('Control+d');
  await expect.poll(() => text(page, 2, 1)).toBe('420');
  await page.keyboard.press('Control+z');
  await expect.poll(() => text(page, 2, 1)).toBe('190');
});

test('a block is copied as tab-separated text and pasted where the cursor stands', async ({
  page,
  context
}) => {
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  await page.keyboard.press('Shift+ArrowRight');
  await page.keyboard.press('Shift+ArrowDown');
  await page.keyboard.press('Control+c');
  expect(await page.evaluate(() => navigator.clipboard.readText())).toBe('420\t75\n260\t80');
  await (await cell(page, 'Breast surgery', 'Cases')).click();
  await page.keyboard.press('Control+v');
  await expect.poll(() => text(page, 7, 1)).toBe('420');
  await expect.poll(() => text(page, 8, 2)).toBe('80');
});

test('Delete clears to “not given” where that is allowed, and is refused with a sentence where it is not', async ({
  page
}) => {
  const measured = await cell(page, 'Breast surgery', 'Measured');
  await measured.click();
  await page.keyboard.type('30');
  await page.keyboard.press('Enter');
  await expect(measured).toContainText('30');
  await measured.click();
  await page.keyboard.press('Delete');
  await expect(measured).toContainText('estimated');
  const cases = await cell(page, 'Breast surgery', 'Cases');
  await cases.click();
  await page.keyboard.press('Delete');
  await expect(cases).toHaveAttribute('aria-invalid', 'true');
});

test('a choice is found by the first letters of its label', async ({ page }) => {
  const agent = await cell(page, 'Breast surgery', 'Agent');
  await agent.click();
  await page.keyboard.type('iso');
  await page.keyboard.press('Enter');
  await expect(agent).toContainText('Isoflurane');
});

test('units and percent typed with a number are read', async ({ page }) => {
  const minutes = await cell(page, 'Breast surgery', 'Minutes');
  await minutes.click();
  await page.keyboard.type('1h15');
  await page.keyboard.press('Enter');
  await expect(minutes).toContainText('75');
  const oxygen = await cell(page, 'Breast surgery', 'Inspired oxygen');
  await oxygen.click();
  await page.keyboard.type('50 %');
  await page.keyboard.press('Enter');
  await expect(oxygen).toContainText('50');
});

test('rows are duplicated, moved, inserted and deleted by keyboard', async ({ page }) => {
  await page.keyboard.press('Alt+Shift+KeyD');
  await expect.poll(() => text(page, 1, 0)).toBe('Laparoscopic cholecystectomy (copy)');
  await page.keyboard.press('Control+z');
  await expect.poll(() => text(page, 1, 0)).toBe('Laparoscopic hernia repair');
  await (await cell(page, 'Laparoscopic cholecystectomy', 'Cases')).click();
  await page.keyboard.press('Alt+Shift+ArrowDown');
  await expect.poll(() => text(page, 1, 0)).toBe('Laparoscopic cholecystectomy');
  await page.keyboard.press('Alt+Enter');
  await expect.poll(() => text(page, 2, 0)).toBe('New case group');
  await (await cell(page, 'New case group', 'Cases')).click();
  await page.keyboard.press('Alt+Shift+Delete');
  await expect.poll(() => text(page, 2, 0)).toBe('Laparoscopic appendicectomy');
});

test('a click on a heading selects the column, on a row’s head the row', async ({ page }) => {
  const grid = page.getByRole('grid', { name: 'Case mix' });
  await grid.locator('[data-header="2"] .title').click();
  await expect(grid.locator('[role=gridcell][aria-selected=true]')).toHaveCount(13);
  await grid.locator('[data-row-header="3"] .ordinal').click();
  await expect(grid.locator('tr[data-row="3"] [role=gridcell][aria-selected=true]')).toHaveCount(16);
});

test('a cell is given a range from its menu, carries a mark, and says so', async ({ page }) => {
  const weight = await cell(page, 'Breast surgery', 'Weight');
  await weight.click();
  await page.keyboard.press('Shift+F10');
  await page.getByRole('menuitem', { name: 'Give this cell a range' }).click();
  const dialog = page.getByRole('dialog', { name: 'Range of a cell' });
  await expect(dialog).toContainText('Breast surgery');
  await dialog.getByLabel('Low').fill('60');
  await dialog.getByLabel('High').fill('50');
  await page.keyboard.press('Enter');
  await expect(dialog.getByRole('alert')).toBeVisible();
  await dialog.getByLabel('High').fill('95');
  await page.keyboard.press('Enter');
  await expect(dialog.getByRole('alert')).toBeHidden();
  await page.keyboard.press('Escape');
  await expect(weight.getByRole('textbox')).toBeFocused();
  await expect(weight.getByRole('textbox')).toHaveAccessibleDescription(/Range 60 to 95/);
  await expect(weight).toHaveClass(/ranged/);
  await page.keyboard.press('Control+z');
  await expect(weight).not.toHaveClass(/ranged/);
});

test('a setting is given a range', async ({ page }) => {
  await page.goto('./prices/');
  await page.getByRole('button', { name: 'Range of Electricity', exact: true }).click();
  const dialog = page.getByRole('dialog', { name: 'Range of a cell' });
  await dialog.getByRole('button', { name: 'A fifth below and above' }).click();
  await dialog.getByRole('button', { name: 'Close' }).click();
  await expect(page.getByRole('button', { name: 'Range of Electricity', exact: true })).toHaveText(
    'Change the range'
  );
});

test('a column is made wider by its edge and by keys, fitted, and keeps its width until it is reset', async ({
  page
}) => {
  const header = page.getByRole('columnheader', { name: 'Weight' });
  const edge = header.locator('[data-width]');
  const width = async (): Promise<number> => (await header.boundingBox())?.width ?? 0;
  const first = await width();
  const box = await edge.boundingBox();
  if (box === null) throw new Error('the edge is not in sight');
  await page.mouse.move(box.x + 3, box.y + 10);
  await page.mouse.down();
  await page.mouse.move(box.x + 83, box.y + 10, { steps: 4 });
  await page.mouse.up();
  await expect.poll(width).toBeGreaterThan(first + 60);
  const dragged = await width();
  await page.reload();
  await (await cell(page, 'Breast surgery', 'Weight')).click();
  expect(Math.abs((await width()) - dragged)).toBeLessThan(2);
  await page.keyboard.press('Alt+Shift+ArrowRight');
  await expect.poll(width).toBeGreaterThan(dragged);
  await edge.dblclick();
  await expect.poll(width).toBeLessThan(dragged);
  await page.keyboard.press('Shift+F10');
  await page.getByRole('menuitem', { name: 'Reset column width' }).click();
  await expect.poll(width).toBe(first);
  await page.reload();
  await (await cell(page, 'Breast surgery', 'Weight')).click();
  expect(await width()).toBe(first);
});

test('a refused storage takes no width away before the page is left', async ({ page }) => {
  await page.addInitScript(() =>
    Object.defineProperty(window, 'localStorage', {
      get() {
        throw new DOMException('refused', 'SecurityError');
      }
    })
  );
  await page.reload();
  await (await cell(page, 'Breast surgery', 'Weight')).click();
  const header = page.getByRole('columnheader', { name: 'Weight' });
  const before = (await header.boundingBox())?.width ?? 0;
  await page.keyboard.press('Alt+Shift+ArrowRight');
  await expect.poll(async () => (await header.boundingBox())?.width).toBeGreaterThan(before);
});

test('a row is dragged by its handle, and a click on the handle still opens the menu', async ({ page }) => {
  const grip = (row: number) => page.locator(`[data-menu="${row}"]`).first();
  const [from, to] = [await grip(0).boundingBox(), await grip(3).boundingBox()];
  if (from === null || to === null) throw new Error('the rows are not in sight');
  await page.mouse.move(from.x + 8, from.y + 8);
  await page.mouse.down();
  await page.mouse.move(to.x + 8, to.y + 10, { steps: 6 });
  await expect(page.locator('tr[data-drop-at=after]')).toHaveCount(1);
  await page.mouse.up();
  await expect.poll(() => text(page, 3, 0)).toBe('Laparoscopic cholecystectomy');
  expect(await text(page, 0, 0)).toBe('Laparoscopic hernia repair');
  await expect(page.getByRole('menu')).toBeHidden();
  await page.keyboard.press('Control+z');
  await expect.poll(() => text(page, 0, 0)).toBe('Laparoscopic cholecystectomy');
  await grip(0).click();
  await expect(page.getByRole('menuitem', { name: 'Delete row' })).toBeVisible();
});

test('two hundred steps are undone and done again, across sheets', async ({ page }) => {
  for (let step = 0; step < 100; step += 1) {
    await page.keyboard.type(String(500 + step));
    await page.keyboard.press('Enter');
    await page.keyboard.press('ArrowUp');
  }
  await expect.poll(() => text(page, 0, 1)).toBe('599');
  await page.getByRole('link', { name: 'Machines' }).click();
  const life = await gridCell(page, { grid: 'Machines', row: 'Closed-circuit', column: 'Price' });
  await life.click();
  for (let step = 0; step < 100; step += 1) {
    await page.keyboard.type(String(30000 + step));
    await page.keyboard.press('Enter');
    await page.keyboard.press('ArrowUp');
  }
  await expect(life).toContainText('30,099');
  for (let step = 0; step < 200; step += 1) await page.keyboard.press('Control+z');
  await expect(life).not.toContainText('30,0');
  await page.getByRole('link', { name: 'Case mix' }).click();
  await expect.poll(() => text(page, 0, 1)).toBe('420');
  await (await cell(page, 'Laparoscopic cholecystectomy', 'Cases')).click();
  for (let step = 0; step < 100; step += 1) await page.keyboard.press('Control+y');
  await expect.poll(() => text(page, 0, 1)).toBe('599');
});

test('the tables of scenarios keep bad texts, take labels, and empty again', async ({ page }) => {
  await page.goto('./scenarios/');
  const other = await gridCell(page, { grid: 'Agent given instead', row: 'Isoflurane', column: 'Low flow' });
  await other.click();
  await page.keyboard.insertText('wxyz');
  await page.keyboard.press('Enter');
  await expect(other).toHaveAttribute('aria-invalid', 'true');
  await expect(other).toContainText('wxyz');
  await other.click();
  await page.keyboard.type('sevo');
  await page.keyboard.press('Enter');
  await expect(other).toContainText('Sevoflurane');
  await other.click();
  await page.keyboard.press('Delete');
  await expect(other).toContainText('no change');
  const plan = await gridCell(page, {
    grid: 'Plans of single case groups',
    row: 'Breast surgery',
    column: 'Low flow'
  });
  await plan.click();
  await page.keyboard.insertText('none of these');
  await page.keyboard.press('Enter');
  await expect(plan).toHaveAttribute('aria-invalid', 'true');
});

for (const { locale, typed, shown } of [
  { locale: 'de-DE', typed: '1.234,5', shown: '1.234,5' },
  { locale: 'fr-FR', typed: '1\u202f234,5', shown: '1\u202f234,5' },
  { locale: 'fr-FR', typed: '1\u00a0234,5', shown: '1\u202f234,5' }
]) {
  test.describe(`in ${locale}`, () => {
    test.use({ locale });
    test(`${JSON.stringify(typed)} is read`, async ({ page }) => {
      const cases = await cell(page, 'Breast surgery', 'Cases');
      await cases.click();
      await page.keyboard.insertText(typed);
      await page.keyboard.press('Enter');
      await expect(cases).toHaveText(shown);
    });
  });
}
