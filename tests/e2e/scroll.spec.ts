/** One scroll bar: a sheet opens at its top and takes keys at once, and going back returns to the place. */
import type { Page } from '@playwright/test';
import { departmentWorkbook } from '../fixtures/department.ts';
import { expect, test } from './browser.ts';
import { openWorkbook } from './open-workbook.ts';

const sheets = ['flow-plans', 'scenarios'] as const;

async function open(page: Page, sheet: string): Promise<void> {
  await page.goto(`./${sheet}/`);
  await expect(page.getByTestId('payback').first()).toBeVisible();
}

const scrolled = (page: Page) => page.evaluate(() => Math.round(scrollY));

for (const sheet of sheets)
  for (const [width, height] of [
    [1440, 900],
    [390, 844]
  ] as const)
    test(`${sheet} scrolls as one page without a void below it, ${width} px wide`, async ({ page }) => {
      await page.setViewportSize({ width, height });
      await open(page, sheet);
      const found = await page.evaluate(() => {
        const scrollers = [...document.querySelectorAll<HTMLElement>('.desk, .page, main')].filter((each) =>
          /auto|scroll/.test(getComputedStyle(each).overflowY)
        );
        const bottom = document.querySelector('.desk')?.getBoundingClientRect().bottom ?? 0;
        return {
          scrollers: scrollers.length,
          below: document.documentElement.scrollHeight - Math.round(bottom + scrollY)
        };
      });
      expect(found).toEqual({ scrollers: 0, below: 0 });
    });

test('PageDown and End scroll a sheet that was just opened', async ({ page }) => {
  await page.setViewportSize({ width: 1440, height: 900 });
  await open(page, 'payback');
  await page.keyboard.press('PageDown');
  await expect.poll(() => scrolled(page)).toBeGreaterThan(300);
  await page.getByRole('link', { name: 'Evidence' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Evidence' })).toBeInViewport();
  await expect.poll(() => scrolled(page)).toBe(0);
  await page.keyboard.press('End');
  await expect.poll(() => scrolled(page)).toBeGreaterThan(2000);
});

test('a new sheet opens at its top, and going back returns to the place', async ({ page }) => {
  await page.setViewportSize({ width: 1440, height: 900 });
  await openWorkbook(page, departmentWorkbook());
  await open(page, 'payback');
  // The last that fills the sheet.
  await expect(page.getByText('Turns at')).toBeVisible({ timeout: 60_000 });
  await page.mouse.move(700, 500);
  await page.mouse.wheel(0, 1500);
  await expect.poll(() => scrolled(page)).toBe(1500);
  await page.getByRole('link', { name: 'Comparison' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Comparison' })).toBeInViewport();
  await expect.poll(() => scrolled(page)).toBe(0);
  await page.goBack();
  await expect(page.getByRole('heading', { level: 1, name: 'Payback' })).toBeAttached();
  await expect.poll(() => scrolled(page)).toBe(1500);
});

test('what takes the focus by keyboard is never under a bar', async ({ page }) => {
  await page.setViewportSize({ width: 1024, height: 600 });
  await open(page, 'comparison');
  await page.locator('main [data-figure]').first().focus();
  for (let step = 0; step < 40; step++) {
    await page.keyboard.press('Tab');
    const covered = await page.evaluate(() => {
      const focused = document.activeElement;
      if (!(focused instanceof HTMLElement) || focused.closest('main') === null) return null;
      const { left, top, width, bottom } = focused.getBoundingClientRect();
      // Of a table that is longer than the window, the middle of what is in sight of it.
      const middle = (Math.max(top, 0) + Math.min(bottom, innerHeight)) / 2;
      const above = document.elementFromPoint(left + width / 2, middle);
      return above !== null && (focused.contains(above) || above.contains(focused))
        ? null
        : focused.textContent;
    });
    expect(covered).toBeNull();
  }
});

for (const [width, height] of [
  [1440, 900],
  [1024, 768],
  [390, 844]
] as const)
  test(`the working makes room for the figure that was asked about, ${width} px wide`, async ({ page }) => {
    await page.setViewportSize({ width, height });
    await open(page, 'comparison');
    const figure = page.locator('main table tr:nth-child(3) [data-figure]').last();
    await figure.focus();
    await page.keyboard.press('Enter');
    await expect(page.getByTestId('working')).toBeVisible();
    await expect
      .poll(() =>
        figure.evaluate((button) => {
          const { left, top, width: wide, height: high } = button.getBoundingClientRect();
          return button.contains(document.elementFromPoint(left + wide / 2, top + high / 2));
        })
      )
      .toBe(true);
  });
