/** A link that carries a workbook: made, looked at, opened; and one that was cut. */
import { expect, test } from './browser.ts';

test('a workbook travels in a link, is shown before it is opened, and a cut link says so', async ({
  page
}) => {
  const asked: string[] = [];
  page.on('request', (request) => asked.push(request.url()));
  await page.goto('./workbooks/');
  await page.getByLabel('Title of the workbook').fill('North theatres');
  await page.getByLabel('Title of the workbook').press('Enter');
  await page.getByRole('button', { name: 'A link that carries the open workbook' }).click();
  const link = await page.getByLabel(/^Whoever has this link/).inputValue();
  expect(link).toContain('/workbooks/#workbook=');

  await page.getByRole('button', { name: 'Start empty' }).click();
  await expect(page.getByLabel('Title of the workbook')).toHaveValue('Untitled workbook');
  await page.goto('about:blank');
  await page.goto(link);
  const came = page.getByRole('region', { name: 'A workbook in a link' });
  await expect(came).toContainText('“North theatres”');
  await expect(came).toContainText('Its figures are invented.');
  await expect(page.getByLabel('Title of the workbook')).not.toHaveValue('North theatres');
  await came.getByRole('button', { name: 'Open it' }).click();
  await expect(page.getByLabel('Title of the workbook')).toHaveValue('North theatres');
  expect(asked.filter((url) => url.includes('workbook='))).toEqual([]);

  await page.goto('about:blank');
  await page.goto(link.slice(0, -20));
  await expect(came).toContainText('The link is cut short or was changed on its way');
  await came.getByRole('button', { name: 'Leave it' }).click();
  await expect(came).toHaveCount(0);
});
