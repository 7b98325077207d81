/** A workbook whose cases are too many for the page's own thread: they are estimated in the background. */
import { execFile } from 'node:child_process';
import { readFile, writeFile } from 'node:fs/promises';
import { promisify } from 'node:util';
import type { Page } from '@playwright/test';
import { expect, test } from './browser.ts';
import { gridCell, todaysCost } from './grid-cell.ts';

// Both cores are at work for a minute and more; on a busy computer it takes longer, and nothing here is about how long.
test.setTimeout(600_000);

const batch = promisify(execFile);
const rows = 1500;

/** The invented hospital with many rows, no two alike, and three more closed scenarios on plans of their own. */
async function largeWorkbook(): Promise<Record<string, unknown>> {
  const demo = JSON.parse(await readFile('static/examples/invented-hospital.json', 'utf8'));
  const [row] = demo.caseMix;
  const plan = demo.flowPlans.find(({ id }: { id: string }) => id === 'closed');
  const scenario = demo.scenarios.find(({ id }: { id: string }) => id === 'closed');
  const more = [1, 2, 3];
  return {
    ...demo,
    title: 'Many rows',
    ranges: {},
    caseMix: Array.from({ length: rows }, (_, index) => ({
      ...row,
      id: `row-${index}`,
      name: `Group ${index}`,
      minutes: 40 + index / 8
    })),
    flowPlans: [...demo.flowPlans, ...more.map((n) => ({ ...plan, id: `closed-${n}`, name: `Closed ${n}` }))],
    scenarios: [
      ...demo.scenarios,
      ...more.map((n) => ({
        ...scenario,
        id: `closed-${n}`,
        name: `Closed ${n}`,
        plans: { 'm-closed': `closed-${n}` }
      }))
    ]
  };
}

/** Today's yearly cost as the batch command prints it, in whole units of money. */
async function costByBatch(file: string): Promise<number> {
  const { stdout } = await batch('node', ['scripts/batch.mjs', file], { maxBuffer: 1 << 28 });
  const { scenarios } = JSON.parse(stdout);
  return Math.round(Number(scenarios[0].perYear.cost.total));
}

const shownCost = async (page: Page): Promise<number> =>
  Number((await todaysCost(page).textContent())?.replace(/[^0-9.]/g, ''));

const settled = (page: Page) =>
  expect(page.getByRole('contentinfo', { name: 'Bottom line' })).toHaveAttribute('aria-busy', 'false');

/** Whether the bottom line has been busy since: it may be for less than a look takes. */
async function watchBusy(page: Page): Promise<() => Promise<boolean>> {
  const line = await page.getByRole('contentinfo', { name: 'Bottom line' }).elementHandle();
  const seen = await page.evaluateHandle((element) => {
    const state = { busy: false };
    new MutationObserver(() => {
      state.busy ||= element?.getAttribute('aria-busy') === 'true';
    }).observe(element as Element, { attributes: true });
    return state;
  }, line);
  return () => seen.evaluate(({ busy }) => busy);
}

test('a large workbook opens, and a change to every case of it, without holding up the page', async ({
  page
}, info) => {
  const workbook = await largeWorkbook();
  const file = info.outputPath('large.json');
  await writeFile(file, JSON.stringify(workbook));
  await page.goto('./machines/');
  await page.getByLabel('Open a workbook from a file').setInputFiles(file);
  await expect(page.getByText('Many rows').first()).toBeVisible();
  await settled(page);
  expect(await shownCost(page)).toBe(await costByBatch(file));

  const wasBusy = await watchBusy(page);
  // All cases anew: while they are estimated the next cells take what is typed.
  const temperature = page.getByRole('textbox', { name: 'Theatre temperature' });
  await temperature.fill('27');
  await temperature.press('Enter');
  const pressure = page.getByRole('textbox', { name: 'Ambient pressure' });
  await pressure.fill('90');
  await pressure.press('Enter');
  await expect(pressure).toHaveValue('90');
  await settled(page);
  expect(await wasBusy()).toBe(true);
  const edited = info.outputPath('edited.json');
  await writeFile(
    edited,
    JSON.stringify({
      ...workbook,
      site: { ...(workbook['site'] as object), theatreTemperatureC: 27, ambientPressureKPa: 90 }
    })
  );
  expect(await shownCost(page)).toBe(await costByBatch(edited));
});

test('an edit of one row of it follows at once', async ({ page }, info) => {
  const file = info.outputPath('large.json');
  await writeFile(file, JSON.stringify(await largeWorkbook()));
  await page.goto('./case-mix/');
  await page.getByLabel('Open a workbook from a file').setInputFiles(file);
  await settled(page);
  const before = await shownCost(page);
  await (await gridCell(page, { grid: 'Case mix', row: 'Group 3', column: 'Minutes' })).first().click();
  await page.keyboard.type('300');
  await page.keyboard.press('Enter');
  await settled(page);
  await expect.poll(() => shownCost(page)).toBeGreaterThan(before);
});
