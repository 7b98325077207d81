import type { CaseLogNews, CaseLogTask } from './case-log-worker.ts';
import type { CaseLogRun, ReadCaseLog } from './read-case-log.ts';

/**
 * Groups a log in a worker, so that the page stays quick.
 * @param progress is told the share of the file that was read, 0 to 1
 * @param signal ends the work at once; the result is then `cancelled`
 */
export function groupInWorker(
  file: Blob,
  run: CaseLogRun,
  {
    progress = () => undefined,
    signal
  }: { readonly progress?: (share: number) => void; readonly signal?: AbortSignal } = {}
): Promise<ReadCaseLog> {
  if (signal?.aborted === true) return Promise.resolve({ kind: 'cancelled' });
  const worker = new Worker(new URL('./case-log-worker.ts', import.meta.url), { type: 'module' });
  return new Promise<ReadCaseLog>((resolve) => {
    const refuse = () =>
      resolve({
        kind: 'refused',
        sentence:
          'The file could not be grouped: the browser ended the work, perhaps for want of memory. Close other tabs and choose it again.'
      });
    worker.onmessage = ({ data }: MessageEvent<CaseLogNews>) => {
      if (data.kind === 'progress') progress(file.size === 0 ? 1 : data.bytesRead / file.size);
      else resolve(data.result);
    };
    worker.onerror = refuse;
    worker.onmessageerror = refuse;
    signal?.addEventListener('abort', () => resolve({ kind: 'cancelled' }), { once: true });
    worker.postMessage({ file, run } satisfies CaseLogTask);
  }).finally(() => worker.terminate());
}
