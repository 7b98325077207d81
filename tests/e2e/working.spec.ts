import type { Page } from '@playwright/test';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { departmentWorkbook } from '../fixtures/department.ts';
import { expect, test } from './browser.ts';
import { openWorkbook } from './open-workbook.ts';

const panel = '[data-testid="working"]';
const value = '[data-testid="working-value"]';

interface Opened {
  /** The figure as the sheet shows it. */
  readonly shown: string;
  /** The value at the root of its working; null where no working came up. */
  readonly root: string | null;
  /** Whether the panel says that the figure was rounded so that parts add up to their total. */
  readonly saysRounding: boolean;
}

/** A department of which a figure turns the answer, and that is charged for capital and taxed. */
function chargedDepartment(): Workbook {
  const department = departmentWorkbook();
  return {
    ...department,
    accounting: { ...department.accounting, capitalChargePercent: 3.5, taxPercent: 20 }
  };
}

/** Shows the table of each chart, and waits for what is computed after the sheet is there. */
async function showAll(page: Page, sheet: string): Promise<void> {
  if (sheet === 'payback') await openWorkbook(page, chargedDepartment());
  await page.goto(`./${sheet}/`);
  await page.getByTestId('payback').waitFor();
  if (sheet === 'uncertainty') {
    await page.getByRole('button', { name: /^Run/ }).click();
    await page.locator('[data-result]').waitFor({ timeout: 300_000 });
  }
  if (sheet === 'payback') await page.getByText('Turns at').waitFor({ timeout: 300_000 });
  if (sheet === 'evidence' || sheet === 'report')
    await page.getByText('measurements lie within the tolerance').waitFor();
  const show = page.getByRole('button', { name: /^Show (table|unchanged)$/ });
  while ((await show.count()) > 0) await show.first().click();
}

/** Opens the working of each figure of the sheet that is a button, in the charts' tables and the bottom line too. */
function openAll(page: Page): Promise<readonly Opened[]> {
  return page.evaluate(
    async ([panelAt, valueAt]) => {
      const frame = () => new Promise((done) => requestAnimationFrame(done));
      const buttons = [
        ...document.querySelectorAll<HTMLElement>('main button.ask, footer button.ask')
      ].filter((button) => button.closest(panelAt) === null && button.closest('details') === null);
      const opened: { shown: string; root: string | null; saysRounding: boolean }[] = [];
      for (const button of buttons) {
        button.click();
        let root: string | null = null;
        for (let tries = 0; tries < 20 && root === null; tries++) {
          await frame();
          root = document.querySelector<HTMLElement>(valueAt)?.dataset['value'] ?? null;
        }
        opened.push({
          shown: button.textContent.trim(),
          root,
          saysRounding: /rounded the other way/.test(document.querySelector(panelAt)?.textContent ?? '')
        });
        document.querySelector<HTMLElement>(`${panelAt} header button`)?.click();
        for (let tries = 0; tries < 20 && document.querySelector(panelAt) !== null; tries++) await frame();
      }
      return opened;
    },
    [panel, value] as const
  );
}

/** Whether a root value is what is shown: rounded, in tonnes for kg or litres for mL, its sign put into words. */
function agree({ shown, root, saysRounding }: Opened): boolean {
  if (root === null) return false;
  if (root === 'null') return /^(–|none|nothing avoided|nothing to pay back|not |never )/.test(shown);
  if (/less than a week/.test(shown)) return Math.abs(Number(root)) < 0.5 / 52;
  const digits = /\d[\d,]*(\.\d+)?/.exec(shown);
  if (digits === null) return Number(root) === 0;
  const number = Number(digits[0].replaceAll(',', ''));
  if (shown.startsWith('over ')) return Number(root) > number;
  const decimals = digits[1] === undefined ? 0 : digits[1].length - 1;
  // Months and weeks of a year's parts.
  const time = /months?$/.test(shown) ? [12] : /weeks?$/.test(shown) ? [365.25 / 7] : [];
  return [1, 1 / 1000, ...time].some((factor) => {
    const exact = Math.abs(Number(root)) * factor;
    return (
      Math.abs(number - exact) <= Math.max((saysRounding ? 1 : 0.5001) * 10 ** -decimals, 0.0051 * exact)
    );
  });
}

/**
 * Columns of numbers that are not computed: where along the axis a row stands, the number of a point, what others
 * published, ends of a range.
 */
const notComputed =
  /^(Year|Point|Time, min|Limit, years|Published.*|Model − published, %|Looked at|What you can do)$/;

/** Numbers in tables that open no working, with the heading of their column. */
function withoutWorking(page: Page): Promise<readonly string[]> {
  return page.evaluate((pattern) => {
    const isKnown = new RegExp(pattern);
    return (
      [...document.querySelectorAll<HTMLTableCellElement>('main td.number, main td[data-band]')]
        // What was entered or published is told as such, and comes from nowhere else.
        .filter((cell) => cell.closest('[role="grid"], [data-given]') === null && /\d/.test(cell.textContent))
        .filter((cell) => cell.querySelector('button.ask, input') === null)
        .map((cell) => {
          const heads = cell.closest('table')?.querySelectorAll('thead th') ?? [];
          return `${heads[cell.cellIndex]?.textContent.trim() ?? ''}: ${cell.textContent.trim()}`;
        })
        .filter((found) => !isKnown.test(found.slice(0, found.lastIndexOf(':'))))
    );
  }, notComputed.source);
}

for (const [sheet, least] of [
  ['comparison', 150],
  ['payback', 200],
  ['flow-plans', 100],
  ['monitoring', 15],
  ['theatre-air', 60],
  ['emissions', 60],
  ['case', 150],
  ['uncertainty', 200],
  ['evidence', 100],
  ['report', 50]
] as const)
  test(`every figure on ${sheet} and in the bottom line has a working that ends in what is shown`, async ({
    page
  }) => {
    test.setTimeout(600_000);
    await showAll(page, sheet);
    const opened = await openAll(page);
    expect(opened.length).toBeGreaterThanOrEqual(least);
    expect(opened.filter(({ root }) => root === null)).toEqual([]);
    expect(opened.filter((one) => !agree(one))).toEqual([]);
    expect(await withoutWorking(page)).toEqual([]);
  });

for (const sheet of ['case-mix', 'prices'])
  test(`every computed cell of the grid on ${sheet} has a working that ends in what is shown`, async ({
    page
  }) => {
    test.setTimeout(300_000);
    await page.goto(`./${sheet}/`);
    await page.getByTestId('payback').waitFor();
    const cells = await page.locator('td[data-state="computed"]').all();
    expect(cells.length).toBeGreaterThan(1);
    for (const cell of cells) {
      const shown = ((await cell.textContent()) ?? '').trim();
      await cell.click();
      await page.keyboard.press('Enter');
      const root = await page.locator(value).getAttribute('data-value');
      expect(agree({ shown, root, saysRounding: false }), `${shown} against ${root}`).toBe(true);
      await page.keyboard.press('Escape');
      await expect(page.locator(panel)).toHaveCount(0);
    }
  });

test('goes from the bottom line down to a cell by keyboard, to the cell itself, and back', async ({
  page
}) => {
  await page.goto('./comparison/');
  const figure = page.locator('[data-figure="today.perYear.cost.total"]').last();
  await figure.focus();
  await page.keyboard.press('Enter');
  const aside = page.locator(panel);
  await expect(aside.getByRole('heading').first()).toBeFocused();
  await expect(aside).toContainText('Cost of a year');

  // Down the first input of each step, until a cell or a source is reached.
  for (let depth = 0; depth < 20; depth++) {
    const kind = await page.locator(value).getAttribute('data-kind');
    if (kind === 'cell' || kind === 'constant') break;
    await aside.locator('table button.ask').first().press('Enter');
    await expect(aside.getByRole('heading').first()).toBeFocused();
  }
  await page.keyboard.press('Backspace');
  await aside.getByRole('button', { name: 'Back' }).press('Enter');
  await page.keyboard.press('Escape');
  await expect(aside).toHaveCount(0);
  await expect(figure).toBeFocused();
});

test('jumps to the cell that a figure rests on, with the cursor on it', async ({ page }) => {
  await page.goto('./case-mix/');
  await page.locator('td[data-state="computed"]').first().click();
  await page.keyboard.press('Enter');
  const aside = page.locator(panel);
  await aside.locator('table button.ask').first().click();
  await aside
    .getByRole('button', { name: /^Flow plans, .*Minutes|^Case mix, .*Minutes/ })
    .first()
    .click();
  await aside.getByRole('button', { name: 'Go to the cell' }).click();
  await expect(page).toHaveURL(/\?cell=/);
  const cell = new URL(page.url()).searchParams.get('cell') ?? '';
  expect(cell).toMatch(/minutes$/);
  await expect(page.locator('[role="gridcell"] input:focus')).toHaveValue('10');
});

for (const [cell, grid] of [
  ['moves.0.theatres', 'Machines that come'],
  ['plans.m-closed', 'Flow plan on each machine'],
  ['agentSwitch.isoflurane', 'Agent given instead'],
  ['capturePercent', 'Capture'],
  ['scavengingPumpHoursPerWeek', 'Scavenging pumps'],
  ['flowPlanByCase.lap-chole', 'Plans of single case groups']
] as const)
  test(`jumps to ${cell} in the table “${grid}” on Scenarios`, async ({ page }) => {
    await page.goto(`./scenarios/?cell=scenarios.closed.${cell}`);
    await expect(page.getByRole('grid', { name: grid }).locator('[role="gridcell"] input:focus')).toHaveCount(
      1
    );
  });

test('copies the working as text', async ({ page, context }) => {
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  await page.goto('./comparison/');
  await page.getByRole('button', { name: 'Show unchanged' }).nth(1).click();
  await page.locator('[data-figure="today.perYear.cost.electricity"]').first().click();
  await page.getByRole('button', { name: 'Copy as text' }).click();
  await expect(page.getByText('Copied, down to the last source.')).toBeVisible();
  const text = await page.evaluate(() => navigator.clipboard.readText());
  expect(text).toContain('cell site.electricityPricePerKWh');
});

test.describe('a published figure', () => {
  test('is replaced by one of the user’s own only with value, unit and reason, and given back in one step', async ({
    page
  }) => {
    await page.goto('./evidence/?constant=sevoflurane.blood-gas');
    const record = page.locator('[id="constant-sevoflurane.blood-gas"]');
    await expect(record.locator('summary')).toBeFocused();
    await expect(record.getByRole('button', { name: 'Liquid agent used' })).toBeVisible();
    await record.getByRole('button', { name: 'Use a figure of your own' }).click();
    const takeOver = record.getByRole('button', { name: 'Take it over' });
    const banner = page.getByRole('region', { name: /Figures of your own/ });

    const before = await page.locator('footer [data-figure$="cost.total"]').textContent();
    for (const [given, says] of [
      [{ Value: 'much', Unit: '1', Reason: 'Ours.' }, /“much”/],
      [{ Value: '0.7', Unit: 'mL', Reason: 'Ours.' }, /the unit “mL” was given/],
      [{ Value: '0.7', Unit: '1', Reason: '  ' }, /a reason is needed/],
      [{ Value: '70', Unit: '1', Reason: 'Ours.' }, /70 was given; allowed is 0.3 to 3/]
    ] as const) {
      for (const [label, text] of Object.entries(given))
        await record.getByLabel(label, { exact: true }).fill(text);
      await takeOver.click();
      await expect(record.getByRole('status')).toContainText(says);
      await expect(banner).toHaveCount(0);
    }

    await record.getByLabel('Value', { exact: true }).fill('1.3');
    await record.getByLabel('Reason', { exact: true }).fill('Measured in our laboratory.');
    await takeOver.click();
    await expect(banner).toContainText('Measured in our laboratory.');
    await expect(banner).toContainText('0.65');
    await expect(page.locator('footer [data-figure$="cost.total"]')).not.toHaveText(before ?? '');

    await page.getByRole('link', { name: 'Comparison' }).click();
    await expect(banner).toContainText('Blood/gas partition coefficient of sevoflurane');
    await banner.getByRole('button', { name: 'Back to the published figure' }).click();
    await expect(banner).toHaveCount(0);
    await expect(page.locator('footer [data-figure$="cost.total"]')).toHaveText(before ?? '');
  });

  test('is found by words of its record, and by how well it is known', async ({ page }) => {
    await page.goto('./evidence/');
    await expect(page.getByRole('main').getByRole('heading', { level: 2 }).first()).toContainText(
      'From memory: the weak floor'
    );
    await page.getByRole('searchbox').fill('desflurane partition');
    const names = page.locator('main details .name');
    await expect(names.first()).toContainText(/desflurane/i);
    expect(await names.count()).toBeLessThan(12);
    await page.getByRole('searchbox').fill('no such thing');
    await page.getByRole('button', { name: 'Show all figures' }).click();
    expect(await names.count()).toBeGreaterThan(150);
  });
});
