/** The grid under a finger: what it taps, drags and scrolls. */
import type { CDPSession, Page } from '@playwright/test';
import { expect, test } from './browser.ts';

test.use({ hasTouch: true, isMobile: true, viewport: { width: 820, height: 900 } });

const at = (page: Page, row: number, column: number) =>
  page.getByRole('grid', { name: 'Case mix' }).locator(`tr[data-row="${row}"] [data-column="${column}"]`);

async function middleOf(page: Page, selector: string): Promise<{ x: number; y: number }> {
  const box = await page.locator(selector).first().boundingBox();
  if (box === null) throw new Error(`${selector} is not in sight`);
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

interface Point {
  readonly x: number;
  readonly y: number;
}

async function drag(finger: CDPSession, from: Point, to: Point): Promise<void> {
  await finger.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: [from] });
  for (let step = 1; step <= 8; step += 1) {
    const point = { x: from.x + ((to.x - from.x) * step) / 8, y: from.y + ((to.y - from.y) * step) / 8 };
    await finger.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints: [point] });
  }
  await finger.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
}

test.beforeEach(async ({ page }) => {
  await page.goto('./case-mix/');
  await at(page, 1, 1).tap();
  await expect(at(page, 1, 1).getByRole('textbox')).toBeFocused();
});

test('the handle of the cell stretches the selection', async ({ page, context }) => {
  const finger = await context.newCDPSession(page);
  await drag(
    finger,
    await middleOf(page, '[data-handle]'),
    await middleOf(page, 'tr[data-row="4"] [data-column="2"]')
  );
  await expect(page.locator('[role=gridcell][aria-selected=true]')).toHaveCount(8);
  await expect(at(page, 2, 1)).not.toHaveText('260');
});

test('a finger that moves elsewhere scrolls and selects nothing', async ({ page, context }) => {
  const finger = await context.newCDPSession(page);
  const from = await middleOf(page, 'tr[data-row="6"] [data-column="3"]');
  await drag(finger, from, { x: from.x - 250, y: from.y });
  await expect
    .poll(() =>
      page
        .locator('.scroller')
        .first()
        .evaluate((each) => each.scrollLeft)
    )
    .toBeGreaterThan(50);
  await expect(page.locator('[role=gridcell][aria-selected=true]')).toHaveCount(1);
});

test('a row is dragged by its handle', async ({ page, context }) => {
  const first = await at(page, 0, 0).textContent();
  const finger = await context.newCDPSession(page);
  await drag(finger, await middleOf(page, '[data-menu="0"]'), await middleOf(page, '[data-menu="2"]'));
  await expect(at(page, 2, 0)).toHaveText(first ?? '');
  // Within a moment of a drag the browser makes no click of a tap: it takes it for the end of a scroll.
  await expect(async () => {
    await page.locator('[data-menu="2"]').tap();
    await expect(page.getByRole('menuitem', { name: 'Fill down' })).toBeVisible({ timeout: 1000 });
  }).toPass();
});

test('a second tap edits, and the menu fills', async ({ page }) => {
  await at(page, 1, 1).tap();
  await page.keyboard.press('End');
  await page.keyboard.type('0');
  await page.keyboard.press('Enter');
  await expect(at(page, 1, 1)).toContainText('2,600');
});
