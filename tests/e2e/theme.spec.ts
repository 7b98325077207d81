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
