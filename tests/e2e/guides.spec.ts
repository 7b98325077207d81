/** A record that says it is shown as a guide beside a cell is shown there; a cell that acts on nothing says so. */
import { newestReferenceSet } from '#lib/calc/reference/reference-sets.ts';
import { expect, test } from './browser.ts';

const guides = [...newestReferenceSet.constants.values()].filter(({ guideFor }) => guideFor !== undefined);
const guidesOf = (part: string) => guides.filter(({ guideFor }) => guideFor?.startsWith(`${part}.`));

/** A grid tells the guides of a column below it while the cursor is there. */
const grids = [
  ['machines', './machines/'],
  ['absorbents', './prices/'],
  ['scenarios', './scenarios/']
] as const;
/** A single setting has them folded beneath it. */
const settings = [
  ['site', ['./machines/', './prices/']],
  ['gases', ['./prices/']],
  ['accounting', ['./payback/']]
] as const;

test('every guide has its place', () => {
  const known = [...grids, ...settings].flatMap(([part]) => guidesOf(part));
  expect(known).toHaveLength(guides.length);
});

for (const [part, sheet] of grids)
  test(`guides of ${part} stand below the grid`, async ({ page }) => {
    await page.goto(sheet);
    const constants = guidesOf(part);
    for (const cells of new Set(constants.map(({ guideFor }) => guideFor))) {
      const row = { machines: 'm-old', absorbents: 'soda-lime', scenarios: 'today' }[part];
      await page.goto(`${sheet}?cell=${part}.${row}.${cells?.split('.')[1]}`);
      for (const { name, printed } of constants.filter(({ guideFor }) => guideFor === cells))
        await expect(page.locator('.foot .message').filter({ hasText: `${name}: ${printed}` })).toBeVisible();
    }
  });

for (const [part, sheets] of settings)
  test(`guides of ${part} are folded beneath the setting`, async ({ page }) => {
    const found = new Set<string>();
    for (const sheet of sheets) {
      await page.goto(sheet);
      await expect(page.locator('.setting').first()).toBeVisible();
      for (const fold of await page.locator('.setting details').all()) {
        await fold.locator('summary').click();
        for (const { id, name, printed } of guidesOf(part))
          if (await fold.getByText(`${name}: ${printed}`).isVisible()) found.add(id);
      }
    }
    expect([...found].sort()).toEqual(
      guidesOf(part)
        .map(({ id }) => id)
        .sort()
    );
  });

test('room volume, air changes and scavenging say what they are for, and stand in the report', async ({
  page
}) => {
  for (const [title, cell] of [
    ['Room volume', 'roomVolumeM3'],
    ['Air changes', 'airChangesPerH'],
    ['Scavenging', 'scavengingPercent']
  ] as const) {
    await page.goto(`./theatres/?cell=theatreGroups.main.${cell}`);
    await expect(page.locator('.foot .message').filter({ hasText: `${title}:` })).toContainText(
      'Theatre air'
    );
  }
  await page.goto('./report/');
  await expect(page.getByRole('rowheader', { name: 'Theatre temperature' })).toBeVisible();
  for (const title of ['Room volume', 'Air changes', 'Scavenging'])
    await expect(page.locator('main').getByText(title).first()).toBeAttached();
});
