/** Figures of one row and one unit, money aside, are written with one number of decimals, so that their digits line up. */
import { expect, test } from './browser.ts';

for (const sheet of ['payback', 'comparison', 'evidence'])
  test(`digits of a row line up on ${sheet}`, async ({ page }) => {
    await page.goto(`./${sheet}/`);
    await expect(page.getByTestId('payback')).toBeVisible();
    if (sheet === 'evidence')
      await expect(page.getByText('measurements lie within the tolerance')).toBeVisible();
    const rows = await page
      .locator('main tbody tr')
      .evaluateAll((all) =>
        all.map((row) =>
          [...row.querySelectorAll('td [data-figure]')].map((figure) => figure.textContent.trim())
        )
      );
    const unlike = rows.filter((texts) => {
      const written = texts
        // A time is in months or in years; money goes by its size, whole from a thousand up.
        .filter((text) => /\d/.test(text) && !/year|month|€/.test(text))
        .map((text) => ({
          unit: text.replace(/^[−-]/, '').replace(/[\d.,]+/, '#'),
          decimals: /\.(\d+)/.exec(text)?.[1]?.length ?? 0
        }));
      return written.some(({ unit, decimals }) =>
        written.some((other) => other.unit === unit && other.decimals !== decimals)
      );
    });
    expect(rows.length).toBeGreaterThan(10);
    expect(unlike).toEqual([]);
  });
