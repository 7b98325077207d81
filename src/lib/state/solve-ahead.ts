/** Has the cases of a workbook solved in workers and puts them into a memo, where the estimate then finds them. */
import type { CaseMemo } from '#lib/calc/case-memo.ts';
import type { CasePlace } from '#lib/calc/cases-ahead.ts';
import { keepCases } from '#lib/calc/cases-ahead.ts';
import type { EstimateInput } from '#lib/calc/input.ts';
import type { PackedCases } from '#lib/calc/packed-cases.ts';
import { unpackCases } from '#lib/calc/packed-cases.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import type { CasesTask } from './cases-worker.ts';

/** What is used of a worker. */
export type CasesWorker = Pick<Worker, 'postMessage' | 'onmessage' | 'onerror' | 'terminate'>;

export const openCasesWorker = (): CasesWorker =>
  new Worker(new URL('./cases-worker.ts', import.meta.url), { type: 'module' });

/** So few that the page does not feel their return, so many that handing over costs nothing. */
const casesAtOnce = 500;

export interface AheadTask {
  readonly workbook: Workbook;
  /** The input that the workbook gives. */
  readonly input: EstimateInput;
  readonly places: readonly CasePlace[];
  readonly memo: CaseMemo;
}

export interface AheadRun {
  /** Fulfilled when all are solved, rejected when a worker fails; never settles once cancelled. */
  readonly solved: Promise<void>;
  /** Ends all workers at once. */
  readonly cancel: () => void;
}

/** @param onProgress told the number of cases solved so far. */
export function solveAhead(
  { workbook, input, places, memo }: AheadTask,
  {
    workers,
    openWorker,
    onProgress
  }: { workers: number; openWorker: () => CasesWorker; onProgress: (done: number) => void }
): AheadRun {
  const crew = Array.from({ length: Math.max(1, workers) }, openWorker);
  const cancel = (): void => crew.forEach((worker) => worker.terminate());
  const solved = new Promise<void>((resolve, reject) => {
    let next = 0;
    let done = 0;
    for (const worker of crew) {
      let inHand: readonly CasePlace[] = [];
      const handOut = (): void => {
        inHand = places.slice(next, next + casesAtOnce);
        next += inHand.length;
        if (inHand.length > 0) worker.postMessage({ places: inHand } satisfies CasesTask);
      };
      worker.onmessage = ({ data }: MessageEvent<PackedCases>) => {
        keepCases(input, memo, { places: inHand, results: unpackCases(data) });
        done += inHand.length;
        onProgress(done);
        if (done === places.length) resolve();
        else handOut();
      };
      worker.onerror = (event) => {
        (event as ErrorEvent).preventDefault();
        reject(new Error('A worker that solves cases stopped.'));
      };
      worker.postMessage({ workbook } satisfies CasesTask);
      handOut();
    }
  }).finally(cancel);
  return { solved, cancel };
}
