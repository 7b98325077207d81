/** Every sheet against the axe rules, in light and dark, and by keyboard. */
import AxeBuilder from '@axe-core/playwright';
import { expect, test } from './browser.ts';

const sheets = [
  'case-mix',
  'flow-plans',
  'prices',
  'machines',
  'scenarios',
  'comparison',
  'emissions',
  'payback',
  'uncertainty',
  'monitoring',
  'evidence',
  'report',
  'workbooks'
];

for (const scheme of ['light', 'dark'] as const)
  for (const sheet of sheets)
    test(`${sheet} breaks no rule of access, ${scheme}`, async ({ page }) => {
      await page.emulateMedia({ colorScheme: scheme, reducedMotion: 'reduce' });
      await page.goto(`./${sheet}/`);
      await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
      const { violations } = await new AxeBuilder({ page }).analyze();
      expect(
        violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.html).join(' | ')}`)
      ).toEqual([]);
    });

test('the keyboard skips to the sheet, asks a figure and comes back to it', async ({ page }) => {
  await page.goto('./comparison/');
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  await page.keyboard.press('Tab');
  await expect(page.getByRole('link', { name: 'Skip to the sheet' })).toBeFocused();
  const figure = page.locator('main [data-figure]').first();
  await figure.focus();
  await page.keyboard.press('Enter');
  const panel = page.getByRole('complementary', { name: 'Where does this come from?' });
  await expect(panel).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(panel).toBeHidden();
  await expect(figure).toBeFocused();
});
