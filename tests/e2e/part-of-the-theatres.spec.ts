/** A purchase for a part of the theatres, typed as a user does it, and what each sheet then says. */
import { expect, test } from './browser.ts';
import { bottomFigure, gridCell } from './grid-cell.ts';

test('two machines for four theatres save less than four, and it is said where they are typed', async ({
  page
}) => {
  await page.goto('./machines/');
  const saving = bottomFigure(page, 'closed.againstBaseline.yearlySaving');
  await expect(saving).toHaveText(/^saves €[\d,]+$/);
  const amount = async () => Number((await saving.textContent())?.replace(/[^\d]/g, ''));
  const ofFour = await amount();
  await (
    await gridCell(page, { grid: 'Machines', row: 'Closed-circuit ventilator A', column: 'Units' })
  ).click();
  await page.keyboard.type('2');
  await page.keyboard.press('Enter');
  await expect.poll(amount).toBeLessThan(ofFour);
  const said = page.getByText(/brings 2 machines to 4 theatres: “.*” stays in the other 2/);
  await expect(said).toBeVisible();
  for (const sheet of ['Scenarios', 'Comparison', 'Report']) {
    await page.getByRole('link', { name: sheet, exact: true }).click();
    await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
    await expect(said).toBeVisible();
  }
});
