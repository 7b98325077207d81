import type { Page } from '@playwright/test';
import { writeWorkbookFile } from '#lib/files/read/workbook-file.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { expect } from './browser.ts';

/** Opens a workbook from a file, and waits until it is kept, so that a page that is loaded next shows it. */
export async function openWorkbook(page: Page, workbook: Workbook): Promise<void> {
  await page.goto('./theatres/');
  await page.getByLabel('Open a workbook from a file').setInputFiles({
    name: 'workbook.json',
    mimeType: 'application/json',
    buffer: Buffer.from(writeWorkbookFile(workbook))
  });
  await expect(page.getByText(`Opened “${workbook.title}”`)).toBeVisible();
  await expect(page.getByTestId('save-state')).toHaveText('Saved in this browser');
}

/** Goes to a sheet by its address, and waits until it shows the workbook of this title. */
export async function goTo(page: Page, sheet: string, { title }: Pick<Workbook, 'title'>): Promise<void> {
  await page.goto(`./${sheet}/`);
  await expect(page.getByRole('textbox', { name: 'Title of the workbook' })).toHaveValue(title);
}
