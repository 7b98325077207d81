/** The document is never lost: autosave, reload in the middle of typing, storage refused, two tabs, list and versions. */
import type { Page } from '@playwright/test';
import { expect, test } from './browser.ts';
import { gridCell, todaysCost } from './grid-cell.ts';

const saved = (page: Page) => expect(page.getByTestId('save-state')).toHaveText('Saved in this browser');

async function setCases(page: Page, row: string, cases: string): Promise<void> {
  await (await gridCell(page, { grid: 'Case mix', row, column: 'Cases' })).click();
  await page.keyboard.type(cases);
  await page.keyboard.press('Enter');
}

test('a reload in the middle of typing loses at most the cell being typed', async ({ page }) => {
  await page.goto('./case-mix/');
  await setCases(page, 'Breast surgery', '900');
  await saved(page);
  const before = await todaysCost(page).textContent();
  await (await gridCell(page, { grid: 'Case mix', row: 'Fracture fixation', column: 'Cases' })).click();
  await page.keyboard.type('77');
  await page.reload();
  await expect(todaysCost(page)).toHaveText(before ?? '');
  await expect(
    await gridCell(page, { grid: 'Case mix', row: 'Breast surgery', column: 'Cases' })
  ).toContainText('900');
});

test('after a reload each step is undone and done again', async ({ page }) => {
  await page.goto('./case-mix/');
  const cases = () => gridCell(page, { grid: 'Case mix', row: 'Breast surgery', column: 'Cases' });
  const before = (await (await cases()).textContent())?.trim() ?? '';
  await setCases(page, 'Breast surgery', '900');
  await setCases(page, 'Breast surgery', '901');
  await saved(page);
  await page.reload();
  await page.getByRole('button', { name: 'Undo', exact: true }).click();
  await expect(await cases()).toContainText('900');
  await saved(page);
  await page.reload();
  await page.getByRole('button', { name: 'Undo', exact: true }).click();
  await expect(await cases()).toContainText(before);
  await page.getByRole('button', { name: 'Redo', exact: true }).click();
  await page.getByRole('button', { name: 'Redo', exact: true }).click();
  await expect(await cases()).toContainText('901');
});

test('until the workbook that was open last is back, nothing is there to be changed', async ({ page }) => {
  await page.goto('./case-mix/');
  await setCases(page, 'Breast surgery', '900');
  await saved(page);
  // The browser's database takes its time.
  await page.addInitScript(() => {
    const released = new Promise<void>((resolve) => Object.assign(globalThis, { openStore: resolve }));
    const listen = EventTarget.prototype.addEventListener;
    IDBOpenDBRequest.prototype.addEventListener = function (kind: string, listener: unknown) {
      const later = (event: Event) =>
        void released.then(() => (listener as (event: Event) => void).call(this, event));
      listen.call(this, kind, kind === 'success' ? later : (listener as EventListener));
    };
  });
  await page.reload();
  await expect(page.getByText('Opening the workbook that was open last.')).toBeVisible();
  await expect(page.getByRole('grid')).toHaveCount(0);
  await expect(page.getByRole('textbox')).toHaveCount(0);
  await expect(page.getByRole('button')).toHaveCount(0);
  await page.evaluate(() => (globalThis as unknown as { openStore: () => void }).openStore());
  await expect(
    await gridCell(page, { grid: 'Case mix', row: 'Breast surgery', column: 'Cases' })
  ).toContainText('900');
  await expect(page.getByText('Opening the workbook')).toHaveCount(0);
});

test('where the browser refuses to keep data the user is told, and goes on working', async ({ page }) => {
  await page.addInitScript(() => {
    Object.defineProperty(globalThis, 'indexedDB', {
      value: {
        open() {
          throw new DOMException('refused', 'SecurityError');
        }
      }
    });
  });
  await page.goto('./case-mix/');
  const before = await todaysCost(page).textContent();
  await setCases(page, 'Breast surgery', '900');
  await expect(page.getByText(/does not let this page keep data/)).toBeVisible();
  await expect(page.getByTestId('save-state')).toHaveText('Not saved');
  await expect(todaysCost(page)).not.toHaveText(before ?? '');
});

test('a second tab reads along, and takes over when asked', async ({ page, context }) => {
  await page.goto('./case-mix/');
  await setCases(page, 'Breast surgery', '900');
  await saved(page);
  const second = await context.newPage();
  await second.goto('./case-mix/');
  await expect(second.getByText(/open for writing in another tab/)).toBeVisible();
  // What the second tab tries to change stays as it was.
  await setCases(second, 'Breast surgery', '901');
  await expect(
    await gridCell(second, { grid: 'Case mix', row: 'Breast surgery', column: 'Cases' })
  ).toContainText('900');
  // What the first tab saves is shown in the second.
  await setCases(page, 'Breast surgery', '950');
  await expect(
    await gridCell(second, { grid: 'Case mix', row: 'Breast surgery', column: 'Cases' })
  ).toContainText('950');
  await second.getByRole('button', { name: /Edit it here/ }).click();
  await expect(page.getByText(/open for writing in another tab/)).toBeVisible();
  await setCases(second, 'Breast surgery', '960');
  await saved(second);
  await expect(
    await gridCell(page, { grid: 'Case mix', row: 'Breast surgery', column: 'Cases' })
  ).toContainText('960');
});

test('workbooks are listed, duplicated, deleted with undo, and old versions restored', async ({ page }) => {
  await page.goto('./case-mix/');
  await setCases(page, 'Breast surgery', '900');
  await saved(page);
  await setCases(page, 'Breast surgery', '950');
  await saved(page);
  await page.getByRole('link', { name: 'Workbooks' }).click();
  const table = page.getByRole('table');
  await expect(table.getByRole('row')).toHaveCount(2);
  await table.getByRole('button', { name: /^Duplicate/ }).click();
  await expect(table.getByRole('row')).toHaveCount(3);
  await table.getByRole('button', { name: /^Delete/ }).click();
  await expect(table.getByRole('row')).toHaveCount(2);
  await page.getByRole('button', { name: 'Undo', exact: true }).last().click();
  await expect(table.getByRole('row')).toHaveCount(3);

  await table.getByRole('button', { name: /^Versions of Invented hospital, invented prices$/ }).click();
  await page
    .getByRole('listitem')
    .filter({ hasText: 'Version 1,' })
    .getByRole('button', { name: 'Restore' })
    .click();
  await page.getByRole('link', { name: 'Case mix' }).click();
  await expect(
    await gridCell(page, { grid: 'Case mix', row: 'Breast surgery', column: 'Cases' })
  ).toContainText('900');
});

test('a block of 200 rows and 8 columns is pasted cell by cell, three bad cells kept', async ({ page }) => {
  await page.goto('./case-mix/');
  await page.getByRole('button', { name: 'Start empty' }).click();
  await page.getByRole('button', { name: 'Add the first row' }).click();
  const first = await gridCell(page, { grid: 'Case mix', row: 'New case group', column: 'Case group' });
  await first.click();
  const rows = Array.from({ length: 200 }, (_, index) => [
    `Group ${index + 1}`,
    index === 3 ? 'many' : String(10 + index),
    index === 50 ? '-5' : '1h15',
    '50',
    index === 120 ? 'heavy' : '70 kg',
    'Volatile',
    'sevo',
    '1'
  ]);
  const text = rows.map((row) => row.join('\t')).join('\n');
  // The block starts at the name, and goes on past the computed columns.
  await page.evaluate((block) => {
    const data = new DataTransfer();
    data.setData('text/plain', block);
    document.activeElement?.dispatchEvent(
      new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true })
    );
  }, text);
  await expect(page.getByText(/200 case groups/)).toBeVisible();
  await expect(page.getByRole('link', { name: '3 cells are not in force' })).toBeVisible();
  await expect(
    page.getByRole('region', { name: 'Cells that are not in force' }).getByText(/^Case mix, Group 4: /)
  ).toBeVisible();
  await page.getByRole('button', { name: 'Undo', exact: true }).first().click();
  await expect(page.getByText(/^\s*1 case groups/)).toBeVisible();
});

test('an edit is saved within a second', async ({ page }) => {
  await page.goto('./case-mix/');
  await setCases(page, 'Breast surgery', '900');
  await saved(page);
  // From the edit to the save as the page itself sees them.
  const waited = page.evaluate(
    () =>
      new Promise<number>((resolve) => {
        let begun = 0;
        const state = document.querySelector('[data-testid=save-state]');
        new MutationObserver(() => {
          const text = state?.textContent.trim() ?? '';
          if (text !== 'Saved in this browser') begun ||= performance.now();
          else if (begun > 0) resolve(performance.now() - begun);
        }).observe(document.body, { subtree: true, childList: true, characterData: true });
      })
  );
  await setCases(page, 'Breast surgery', '905');
  expect(await waited).toBeLessThan(1000);
});

test('a page that is left right after an edit has saved it', async ({ page, context }) => {
  await page.goto('./case-mix/');
  await setCases(page, 'Breast surgery', '900');
  await saved(page);
  await setCases(page, 'Breast surgery', '907');
  await page.goto('about:blank');
  const again = await context.newPage();
  await again.goto('./case-mix/');
  await expect(
    await gridCell(again, { grid: 'Case mix', row: 'Breast surgery', column: 'Cases' })
  ).toContainText('907');
});

test('a page that crashes in the middle of typing loses the cell being typed and no more', async ({
  page,
  context
}) => {
  await page.goto('./case-mix/');
  await setCases(page, 'Breast surgery', '908');
  await saved(page);
  await (await gridCell(page, { grid: 'Case mix', row: 'Fracture fixation', column: 'Cases' })).click();
  await page.keyboard.type('77');
  const crashed = page.waitForEvent('crash');
  const session = await context.newCDPSession(page);
  void session.send('Page.crash').catch(() => undefined);
  await crashed;
  const again = await context.newPage();
  await again.goto('./case-mix/');
  await expect(
    await gridCell(again, { grid: 'Case mix', row: 'Breast surgery', column: 'Cases' })
  ).toContainText('908');
  // The tab that crashed writes no more, so this one may.
  await setCases(again, 'Breast surgery', '909');
  await saved(again);
});

test('where there is no room left the user is told, and what was typed is saved once there is', async ({
  page
}) => {
  await page.addInitScript(() => {
    const put = IDBObjectStore.prototype.put;
    IDBObjectStore.prototype.put = function (...given: Parameters<typeof put>) {
      if (sessionStorage.getItem('no room') !== null)
        throw new DOMException('There is no room.', 'QuotaExceededError');
      return put.apply(this, given);
    };
  });
  await page.goto('./case-mix/');
  await setCases(page, 'Breast surgery', '900');
  await saved(page);
  await page.evaluate(() => sessionStorage.setItem('no room', 'yes'));
  await setCases(page, 'Breast surgery', '910');
  await expect(page.getByText(/has no room left/)).toBeVisible();
  await expect(page.getByTestId('save-state')).toHaveText('Not saved');
  await page.evaluate(() => sessionStorage.removeItem('no room'));
  await setCases(page, 'Fracture fixation', '111');
  await saved(page);
  await expect(page.getByText(/has no room left/)).toBeHidden();
  await page.reload();
  await expect(
    await gridCell(page, { grid: 'Case mix', row: 'Breast surgery', column: 'Cases' })
  ).toContainText('910');
});

test('so has one that was never saved before', async ({ page, context }) => {
  await page.goto('./case-mix/');
  await setCases(page, 'Breast surgery', '906');
  await page.goto('about:blank');
  const again = await context.newPage();
  await again.goto('./case-mix/');
  await expect(
    await gridCell(again, { grid: 'Case mix', row: 'Breast surgery', column: 'Cases' })
  ).toContainText('906');
  await again.getByRole('link', { name: 'Workbooks' }).click();
  await expect(again.getByRole('table').getByRole('row')).toHaveCount(2);
});

test('the scenario that was chosen is still the one spoken of after a reload', async ({ page }) => {
  await page.goto('./case-mix/');
  await setCases(page, 'Breast surgery', '900');
  await saved(page);
  const scenario = page.getByRole('combobox', { name: 'Scenario' });
  await scenario.selectOption({ label: 'Low flow, same machines' });
  await page.reload();
  await expect(scenario.locator('option:checked')).toHaveText('Low flow, same machines');
  await page.getByRole('link', { name: 'Report' }).click();
  await expect(page.getByRole('main')).toContainText('Low flow, same machines');
});

test('what is not saved is asked about, is there after a reload, and is saved once the bin was emptied', async ({
  page
}) => {
  await page.addInitScript(() => {
    const put = IDBObjectStore.prototype.put;
    IDBObjectStore.prototype.put = function (...given: Parameters<typeof put>) {
      if (sessionStorage.getItem('no room') !== null)
        throw new DOMException('There is no room.', 'QuotaExceededError');
      return put.apply(this, given);
    };
    // Room comes of removing a workbook for good.
    const remove = IDBObjectStore.prototype.delete;
    IDBObjectStore.prototype.delete = function (...given: Parameters<typeof remove>) {
      sessionStorage.removeItem('no room');
      return remove.apply(this, given);
    };
  });
  await page.goto('./case-mix/');
  await setCases(page, 'Breast surgery', '900');
  await saved(page);
  await page.getByRole('link', { name: 'Workbooks' }).click();
  const table = page.getByRole('table');
  await table.getByRole('button', { name: /^Duplicate/ }).click();
  await table.getByRole('button', { name: /^Delete/ }).click();
  await expect(page.getByRole('heading', { name: 'Bin' })).toBeVisible();

  await page.evaluate(() => sessionStorage.setItem('no room', 'yes'));
  await page.getByRole('link', { name: 'Case mix' }).click();
  await setCases(page, 'Breast surgery', '902');
  await expect(page.getByTestId('save-state')).toHaveText('Not saved');
  const questions: string[] = [];
  page.on('dialog', (dialog) => {
    questions.push(dialog.type());
    void dialog.accept();
  });
  await page.reload();
  expect(questions).toEqual(['beforeunload']);
  await expect(
    await gridCell(page, { grid: 'Case mix', row: 'Breast surgery', column: 'Cases' })
  ).toContainText('902');
  await expect(page.getByTestId('save-state')).toHaveText('Not saved');

  await page.getByRole('button', { name: 'Demo', exact: true }).click();
  await page.getByRole('button', { name: 'Back to the one before' }).click();
  await expect(
    await gridCell(page, { grid: 'Case mix', row: 'Breast surgery', column: 'Cases' })
  ).toContainText('902');

  await page.getByRole('link', { name: 'Workbooks' }).click();
  await page.getByRole('button', { name: 'Empty the bin…' }).click();
  await page.getByRole('button', { name: 'Empty the bin', exact: true }).click();
  await saved(page);
});
