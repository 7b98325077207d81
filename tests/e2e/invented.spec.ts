/** What is invented says so wherever it is shown or taken away, until the department says that the figures are its own. */
import { readFile } from 'node:fs/promises';
import { expect, test } from './browser.ts';

const sheets = [
  'case-mix',
  'case',
  'flow-plans',
  'prices',
  'machines',
  'scenarios',
  'comparison',
  'payback',
  'uncertainty',
  'monitoring',
  'evidence',
  'report',
  'files',
  'workbooks'
];

const pageRules = () =>
  [...document.adoptedStyleSheets]
    .flatMap((sheet) => [...sheet.cssRules].map((rule) => rule.cssText))
    .join('\n');

test('every sheet says it, on screen and on each printed page, whatever the title', async ({ page }) => {
  await page.goto('./case-mix/');
  const title = page.getByLabel('Title of the workbook');
  await title.fill('North Fjord');
  await title.press('Enter');
  await expect(page.getByTestId('save-state')).toHaveText('Saved in this browser');
  for (const sheet of sheets) {
    await page.goto(`./${sheet}/`);
    const mark = page.getByRole('note', { name: 'Invented figures' });
    await expect(mark, sheet).toBeVisible();
    // The workbook that was kept is opened a moment after the page.
    await expect
      .poll(() => page.evaluate(pageRules), { message: sheet })
      .toMatch(/@page.*North Fjord.*invented figures/);
    await page.emulateMedia({ media: 'print' });
    await expect(mark, sheet).toBeVisible();
    await page.emulateMedia({ media: 'screen' });
  }
});

test('a saved picture and saved data of a chart say it', async ({ page }) => {
  await page.goto('./comparison/');
  const figure = page.locator('figure').first();
  await expect(figure.locator('canvas.on-screen')).toBeVisible();
  await page.evaluate(() => {
    const drawn: string[] = [];
    Object.assign(globalThis, { drawn });
    const { fillText } = CanvasRenderingContext2D.prototype;
    CanvasRenderingContext2D.prototype.fillText = function (text: string, ...place: [number, number]) {
      drawn.push(text);
      fillText.call(this, text, ...place);
    };
  });
  const picture = page.waitForEvent('download');
  await figure.getByRole('button', { name: 'Save picture (PNG)' }).click();
  expect((await picture).suggestedFilename()).toMatch(/invented\.png$/);
  expect(await page.evaluate(() => (globalThis as unknown as { drawn: string[] }).drawn.join(' '))).toMatch(
    /Invented hospital, invented prices · .+ · invented figures/
  );
  const data = page.waitForEvent('download');
  await figure.getByRole('button', { name: 'Save data (CSV)' }).click();
  const saved = await data;
  expect(saved.suggestedFilename()).toMatch(/invented\.csv$/);
  const lines = (await readFile(await saved.path(), 'utf8')).trim().split('\r\n');
  expect(lines[0]).toMatch(/,Figures$/);
  for (const line of lines.slice(1)) expect(line).toMatch(/,invented$/);
});

test('the department says that the figures are its own, and can take that back', async ({ page }) => {
  await page.goto('./prices/');
  const mark = page.getByRole('note', { name: 'Invented figures' });
  await mark.getByRole('button', { name: 'These are now our own figures' }).click();
  await expect(mark).toHaveCount(0);
  expect(await page.evaluate(pageRules)).not.toContain('invented figures');
  await page.getByRole('button', { name: 'Undo' }).first().click();
  await expect(mark).toBeVisible();
});

test('once most case numbers and prices are others, it is proposed', async ({ page }) => {
  const demo = JSON.parse(await readFile('static/examples/invented-hospital.json', 'utf8'));
  for (const row of demo.caseMix) {
    row.casesPerYear += 1;
    row.minutes += 1;
  }
  await page.goto('./case-mix/');
  await page.getByLabel('Open a workbook from a file').setInputFiles({
    name: 'own.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify(demo))
  });
  await expect(page.getByText('Most case numbers and prices are no longer the demo’s')).toBeVisible();
});
