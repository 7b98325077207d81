import type { Workbook } from '#lib/workbook/workbook.ts';
import { keepUnchanged } from '#lib/files/import/keep-unchanged.ts';
import type { ImportPreview, ImportRequest } from '#lib/files/import/import-request.ts';
import { previewImport } from '#lib/files/import/preview-import.ts';
import type { PreviewTask } from './preview-import-worker.ts';
import type { WorkerOutcome } from './run-in-worker.ts';
import { runInWorker } from './run-in-worker.ts';

/** Rows of file and case mix together that are compared on the page, within a frame or two. */
const rowsAtOnce = 300;

const openWorker = (): Worker =>
  new Worker(new URL('./preview-import-worker.ts', import.meta.url), { type: 'module' });

/**
 * `previewImport` without holding up the page: of a small table at once, of a large one in a worker, which a signal
 * ends. What the import leaves alone stays the very same object as in the workbook given.
 */
export async function previewAside(
  workbook: Workbook,
  request: ImportRequest,
  { signal, open = openWorker }: { signal: AbortSignal; open?: () => Worker }
): Promise<WorkerOutcome<ImportPreview>> {
  if (request.file.rows.length + workbook.caseMix.length <= rowsAtOnce)
    return { kind: 'result', result: previewImport(workbook, request) };
  const outcome = await runInWorker<PreviewTask, ImportPreview>(open, { workbook, request }, { signal });
  if (outcome.kind !== 'result') return outcome;
  const { result } = outcome;
  return { kind: 'result', result: { ...result, workbook: keepUnchanged(workbook, result.workbook) } };
}
