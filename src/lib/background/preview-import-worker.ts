/** Works out what an import would do, off the page's thread. */
import type { Workbook } from '#lib/workbook/workbook.ts';
import type { ImportPreview, ImportRequest } from '#lib/files/import/import-request.ts';
import { previewImport } from '#lib/files/import/preview-import.ts';
import { workOn } from './run-in-worker.ts';

export interface PreviewTask {
  readonly workbook: Workbook;
  readonly request: ImportRequest;
}

workOn<PreviewTask, ImportPreview>(({ workbook, request }) =>
  Promise.resolve(previewImport(workbook, request))
);
