/** Handed out by a hospital's own server without encryption, where browsers keep some of what they can to themselves. */
import { expect, test } from './browser.ts';
import { gridCell } from './grid-cell.ts';

test('without encryption, an edit is saved and comes back', async ({ context, baseURL }) => {
  const host = 'http://theatres.example/';
  const page = await context.newPage();
  // The same files under a name that no browser takes for this computer.
  await page.route(`${host}**`, async (route) => {
    const response = await route.fetch({
      url: route
        .request()
        .url()
        .replace(host, baseURL ?? '')
    });
    await route.fulfill({ response });
  });
  await page.goto(`${host}case-mix/`);
  expect(await page.evaluate(() => [isSecureContext, 'randomUUID' in crypto, 'locks' in navigator])).toEqual([
    false,
    false,
    false
  ]);
  await (await gridCell(page, { grid: 'Case mix', row: 'Breast surgery', column: 'Cases' })).click();
  await page.keyboard.type('901');
  await page.keyboard.press('Enter');
  await expect(page.getByTestId('save-state')).toHaveText('Saved in this browser');
  await page.reload();
  await expect(
    await gridCell(page, { grid: 'Case mix', row: 'Breast surgery', column: 'Cases' })
  ).toContainText('901');
});
