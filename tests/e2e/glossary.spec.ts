/** The words of the trade: each is explained where a sheet first uses it, by hover, focus and touch. */
import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { glossary, termsOn } from '#lib/sheets/parts/glossary.ts';
import { expect, test } from './browser.ts';

const routes = [...new Set(glossary.flatMap(({ sheets }) => sheets))];

async function open(page: Page, route: string): Promise<void> {
  await page.goto(`.${route}`);
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  // The bands are there once the draws are made; the checks against measurements, once they have run.
  if (route === '/uncertainty/') {
    const draws = page.getByLabel('Draws', { exact: true });
    await draws.fill('200');
    await draws.press('Enter');
    await page.getByRole('button', { name: 'Run 200 draws' }).click();
    await expect(page.locator('[data-result]')).toBeVisible();
  }
  // Some words of Payback stand in the break-even questions, each of which is shown with its answer.
  if (route === '/payback/') await expect(page.getByText('What agent price?')).toBeVisible();
  if (['/evidence/', '/report/'].includes(route))
    await expect(page.getByText('measurements lie within the tolerance')).toBeVisible();
  if (route === '/report/') await expect(page.getByText(/published figures of set/)).toBeVisible();
}

const marksOn = (page: Page) => page.locator('main [data-term]');
const noteOf = (page: Page) => page.locator('main .note[popover]');

for (const route of routes)
  test(`${route} explains each of its words once`, async ({ page }) => {
    await open(page, route);
    await expect(page.locator('[role=grid] [data-term]')).toHaveCount(0);
    const titles = await page
      .locator('main [role=columnheader][title]')
      .evaluateAll((heads) => heads.map((head) => head.getAttribute('title') ?? ''));
    const found = await marksOn(page).evaluateAll((marks) =>
      marks.map((mark) => mark.getAttribute('data-term') ?? '')
    );
    const times = termsOn(route).map(({ term, words }) => ({
      term,
      times:
        found.filter((each) => each === term).length + titles.filter((title) => title.includes(words)).length
    }));
    expect(times).toEqual(termsOn(route).map(({ term }) => ({ term, times: 1 })));

    for (const term of found) {
      const words = glossary.find((entry) => entry.term === term)?.words ?? '';
      const mark = page.locator(`main [data-term="${term}"]`);
      const note = noteOf(page);
      await mark.focus();
      await expect(note).toHaveText(words);
      await expect(note).toBeInViewport({ ratio: 1 });
      await expect(mark).toHaveAccessibleDescription(words);
      await page.keyboard.press('Escape');
      await expect(note).toHaveCount(0);
      await page.keyboard.press('Enter');
      await expect(note).toHaveText(words);
      await mark.blur();
      await expect(note).toHaveCount(0);
      await mark.hover();
      await expect(note).toHaveText(words);
      // The pointer may go on to the note; Escape closes it without the focus.
      await note.hover();
      await expect(note).toHaveText(words);
      await page.keyboard.press('Escape');
      await expect(note).toHaveCount(0);
      await page.mouse.move(0, 0);
    }
  });

for (const scheme of ['light', 'dark'] as const)
  test(`an open note breaks no rule of access, ${scheme}`, async ({ page }) => {
    await page.emulateMedia({ colorScheme: scheme, reducedMotion: 'reduce' });
    await open(page, '/payback/');
    await page.locator('main [data-term="discount rate"]').focus();
    await expect(noteOf(page)).toBeVisible();
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.html).join(' | ')}`)).toEqual(
      []
    );
  });

test('a word in the label of a field is no part of the field', async ({ page }) => {
  await open(page, '/payback/');
  const mark = page.locator('main [data-term="discount rate"]');
  await mark.click();
  await expect(mark).toBeFocused();
  await expect(noteOf(page)).toBeVisible();
  // The field keeps its plain name while the note is open.
  await expect(page.getByRole('textbox', { name: 'Discount rate %', exact: true })).toHaveCount(1);
});

test('on paper no word is marked', async ({ page }) => {
  await open(page, '/payback/');
  const mark = page.locator('main [data-term="payback"]');
  await expect(mark).toHaveCSS('text-decoration-line', 'underline');
  await page.emulateMedia({ media: 'print' });
  await expect(mark).toBeVisible();
  await expect(mark).toHaveCSS('text-decoration-line', 'none');
});

test.describe('by touch', () => {
  test.use({ hasTouch: true, viewport: { width: 420, height: 800 } });
  test('a tap opens the note within the screen, a tap elsewhere closes it', async ({ page }) => {
    await open(page, '/comparison/');
    const mark = page.locator('main [data-term="GWP"]');
    await mark.tap();
    await expect(noteOf(page)).toBeInViewport({ ratio: 1 });
    await page
      .getByRole('heading', { name: 'How emissions and uptake are counted' })
      .tap({ position: { x: 2, y: 2 } });
    await expect(noteOf(page)).toHaveCount(0);
  });
});
