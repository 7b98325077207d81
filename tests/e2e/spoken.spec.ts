/** What a screen reader is told, and what forced colours leave to be seen. */
import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { expect, test } from './browser.ts';
import { gridCell } from './grid-cell.ts';

/** Gathers what live regions say from here on. */
async function listen(page: Page): Promise<() => Promise<readonly string[]>> {
  await page.evaluate(() => {
    const said: string[] = [];
    Object.assign(globalThis, { said });
    const last = new Map<Element, string>();
    new MutationObserver((changes) => {
      const regions = new Set(
        changes.flatMap(({ target }) => {
          const element = target instanceof Element ? target : target.parentElement;
          return element?.closest('[role=status], [role=alert], [aria-live]') ?? [];
        })
      );
      for (const region of regions) {
        const text = (region.textContent ?? '').replaceAll(/\s+/g, ' ').trim();
        if (text !== '' && last.get(region) !== text) said.push(text);
        last.set(region, text);
      }
    }).observe(document.body, { subtree: true, childList: true, characterData: true });
  });
  return () => page.evaluate(() => (globalThis as unknown as { said: string[] }).said);
}

test('a cell is called by its column and its row, once', async ({ page }) => {
  await page.goto('./case-mix/');
  await (await gridCell(page, { grid: 'Case mix', row: 'Breast surgery', column: 'Minutes' })).click();
  await expect(page.locator('[role="gridcell"] input:focus')).toHaveAccessibleName(
    /^Minutes min Breast surgery$/
  );
});

test('an edit is followed by its result in one sentence, and by nothing about saving', async ({ page }) => {
  await page.goto('./case-mix/');
  await (await gridCell(page, { grid: 'Case mix', row: 'Breast surgery', column: 'Cases' })).click();
  const said = await listen(page);
  await page.keyboard.type('900');
  await page.keyboard.press('Enter');
  await expect(page.getByTestId('save-state')).toHaveText('Saved in this browser');
  await expect.poll(said).toHaveLength(1);
  expect((await said())[0]).toMatch(
    /^Closed-circuit A saves €[\d,]+ and avoids [\d.]+ t CO₂e a year; payback [\d.]+ years\. Today costs €[\d,]+ a year\.$/
  );
});

test('another scenario is told with what it does', async ({ page }) => {
  await page.goto('./comparison/');
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  const said = await listen(page);
  await page.getByLabel('Scenario', { exact: true }).selectOption('Low flow, same machines');
  await expect.poll(said).toEqual([expect.stringMatching(/^Low flow, same machines saves €/)]);
});

test('a refused value is told once', async ({ page }) => {
  await page.goto('./case-mix/');
  await (await gridCell(page, { grid: 'Case mix', row: 'Breast surgery', column: 'Cases' })).click();
  const said = await listen(page);
  await page.keyboard.type('lots');
  await page.keyboard.press('Enter');
  await expect(page.getByText(/“lots” is not a number/).first()).toBeVisible();
  await expect.poll(said).toHaveLength(1);
  expect((await said())[0]).toContain('“lots”');
});

test('with forced colours a chart keeps its paper and the colours of its series', async ({ page }) => {
  await page.emulateMedia({ forcedColors: 'active', colorScheme: 'dark' });
  await page.goto('./comparison/');
  const canvas = page.getByRole('figure', { name: 'Yearly cost by line' }).locator('canvas.filled');
  await canvas.scrollIntoViewIfNeeded();
  await expect(canvas).toBeVisible();
  const colours = await canvas.evaluate((element) => {
    const { width, height } = element as HTMLCanvasElement;
    const pixels = (element as HTMLCanvasElement).getContext('2d')?.getImageData(0, 0, width, height).data;
    const counts = new Map<string, number>();
    for (let at = 0; pixels !== undefined && at < pixels.length; at += 4) {
      if (pixels[at + 3] !== 255) continue;
      const colour = [pixels[at], pixels[at + 1], pixels[at + 2]].join();
      counts.set(colour, (counts.get(colour) ?? 0) + 1);
    }
    return [...counts].filter(([, count]) => count > 400).length;
  });
  // Agents, service, absorbent and gases at least, beside what is written.
  expect(colours).toBeGreaterThanOrEqual(4);
});

for (const sheet of ['comparison', 'payback', 'machines', 'evidence'])
  test(`what is pressed on ${sheet} is large enough or stands apart`, async ({ page }) => {
    // As tall as the sheet: what a bar covers in part is scrolled out from under it.
    await page.setViewportSize({ width: 1440, height: 8000 });
    await page.goto(`./${sheet}/`);
    await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
    if (sheet === 'evidence') await page.locator('main details summary').first().click();
    const { violations } = await new AxeBuilder({ page }).withRules(['target-size']).analyze();
    expect(violations.flatMap(({ nodes }) => nodes.map(({ html }) => html))).toEqual([]);
  });
