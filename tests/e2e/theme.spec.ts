/** The theme: the system's, or the one that was chosen, from the first paint on. */
import type { Page } from '@playwright/test';
import { expect, test } from './browser.ts';

const paper = (page: Page) => page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor);
const light = 'rgb(250, 248, 244)';
const dark = 'rgb(26, 24, 21)';

test('follows the system until one is chosen, and keeps what was chosen', async ({ page }) => {
  await page.emulateMedia({ colorScheme: 'dark' });
  await page.goto('./comparison/');
  const theme = page.getByLabel('Theme');
  await expect(theme).toHaveValue('system');
  expect(await paper(page)).toBe(dark);
  await theme.selectOption('Light');
  expect(await paper(page)).toBe(light);
  await page.reload();
  await expect(theme).toHaveValue('light');
  expect(await paper(page)).toBe(light);
  await theme.selectOption('As the system');
  expect(await paper(page)).toBe(dark);
  await page.reload();
  await expect(theme).toHaveValue('system');
});

test('holds before anything is drawn', async ({ page }) => {
  await page.emulateMedia({ colorScheme: 'light' });
  await page.addInitScript(() => localStorage.setItem('vapour-ledger.theme', 'dark'));
  // No module ever arrives: what is there, the page itself brought.
  await page.route(/\.js$/, () => undefined);
  await page.goto('./comparison/', { waitUntil: 'domcontentloaded' });
  expect(await paper(page)).toBe(dark);
});

test('in dark, what is printed or saved of a chart is dark on light', async ({ page }) => {
  await page.emulateMedia({ colorScheme: 'dark' });
  await page.goto('./comparison/');
  const figure = page.locator('figure').first();
  await expect(figure.locator('canvas.on-screen')).toBeVisible();
  await page.evaluate(() => {
    const inks: string[] = [];
    Object.assign(globalThis, { inks });
    const { fillText } = CanvasRenderingContext2D.prototype;
    CanvasRenderingContext2D.prototype.fillText = function (text: string, ...place: [number, number]) {
      inks.push(String(this.fillStyle));
      fillText.call(this, text, ...place);
    };
  });
  const light = () =>
    page.evaluate(() => {
      const { inks } = globalThis as unknown as { inks: string[] };
      const all = inks.splice(0);
      return { count: all.length, light: all.filter((ink) => parseInt(ink.slice(1, 3), 16) > 0x80) };
    });
  const saving = page.waitForEvent('download');
  await figure.getByRole('button', { name: 'Save picture (PNG)' }).click();
  await saving;
  const saved = await light();
  expect(saved.count).toBeGreaterThan(5);
  expect(saved.light).toEqual([]);
  await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
  const printed = await light();
  expect(printed.count).toBeGreaterThan(5);
  expect(printed.light).toEqual([]);
});

test('a store that the browser refuses leaves the choice for this visit', async ({ page }) => {
  await page.emulateMedia({ colorScheme: 'light' });
  await page.addInitScript(() => {
    const refuse = (): never => {
      throw new DOMException('refused', 'SecurityError');
    };
    Object.defineProperty(globalThis, 'localStorage', { get: refuse });
  });
  await page.goto('./comparison/');
  await page.getByLabel('Theme').selectOption('Dark');
  expect(await paper(page)).toBe(dark);
});
