import { offerDownload } from '#lib/charts/offer-download.ts';
import { desk } from '#lib/state/app.ts';
import { fileOf } from '#lib/state/workbook-files.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';

/** Hands a workbook to the user as a file, or says why it would be one that cannot be opened again. */
export function saveAsFile(workbook: Workbook): void {
  const file = fileOf(workbook);
  if ('sentence' in file) desk.message = { tone: 'error', sentence: file.sentence };
  else offerDownload(file.content, file.name);
}
