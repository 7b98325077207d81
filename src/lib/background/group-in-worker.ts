import type { Watch } from './run-in-worker.ts';
import { runInWorker } from './run-in-worker.ts';
import type { CaseLogTask } from './case-log-worker.ts';
import type { CaseLogRun, ReadCaseLog } from '#lib/files/case-log/read-case-log.ts';

/** Groups a log in a worker; once cancelled, the result is `cancelled`. */
export async function groupInWorker(file: Blob, run: CaseLogRun, watch: Watch = {}): Promise<ReadCaseLog> {
  const open = () => new Worker(new URL('./case-log-worker.ts', import.meta.url), { type: 'module' });
  const outcome = await runInWorker<CaseLogTask, ReadCaseLog>(open, { file, run }, watch);
  switch (outcome.kind) {
    case 'result':
      return outcome.result;
    case 'cancelled':
      return outcome;
    case 'failed':
      return { kind: 'refused', sentence: `The file could not be grouped. ${outcome.sentence}` };
  }
}
