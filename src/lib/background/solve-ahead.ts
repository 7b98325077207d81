/** Has the cases of a workbook solved in workers and puts them into a memo, where the estimate then finds them. */
import type { CaseMemo } from '#lib/calc/known-cases/case-memo.ts';
import { casesLacking, keepCases } from '#lib/calc/reckoning/cases-ahead.ts';
import type { CaseSources } from '#lib/calc/case/conditions.ts';
import { givenOf } from '#lib/calc/case/conditions.ts';
import type { EstimateInput } from '#lib/calc/input.ts';
import type { PackedCases } from '#lib/calc/known-cases/packed-cases.ts';
import { unpackCases } from '#lib/calc/known-cases/packed-cases.ts';
import type { OfReference } from '#lib/workbook/core-input.ts';
import { openOnPage } from './cases-on-page.ts';
import type { CasesTask, CasesWorker } from './cases-worker.ts';

export const openCasesWorker = (): CasesWorker =>
  new Worker(new URL('./cases-worker.ts', import.meta.url), { type: 'module' });

/** So few that the page does not feel their return, so many that handing over costs nothing. */
const casesAtOnce = 500;

export interface AheadTask {
  readonly reference: OfReference;
  /** The input whose cases are solved. */
  readonly input: EstimateInput;
  readonly cases: readonly CaseSources[];
  readonly memo: CaseMemo;
}

export interface AheadRun {
  /** Fulfilled when all are solved; never settles once cancelled. */
  readonly solved: Promise<void>;
  /** Ends the work at once. */
  readonly cancel: () => void;
}

/**
 * Where workers cannot be started, or one of them fails, what is left is solved on the page, in pieces.
 * @param onProgress told the number of cases solved so far.
 */
export function solveAhead(
  task: AheadTask,
  {
    workers,
    openWorker,
    onProgress
  }: { workers: number; openWorker: () => CasesWorker; onProgress: (done: number) => void }
): AheadRun {
  let isCancelled = false;
  let run = shareOut(task, { workers, openWorker, onProgress });
  const solved = run.solved.catch(() => {
    if (isCancelled) return new Promise<void>(() => undefined);
    const left = casesLacking(task.input, task.memo);
    const before = task.cases.length - left.length;
    run = shareOut(
      { ...task, cases: left },
      { workers: 1, openWorker: openOnPage, onProgress: (done) => onProgress(before + done) }
    );
    return run.solved;
  });
  return {
    solved,
    cancel: () => {
      isCancelled = true;
      run.cancel();
    }
  };
}

/** Shares the cases out among workers; `solved` is rejected where one cannot be started or fails. */
function shareOut(
  { reference, cases, memo }: AheadTask,
  {
    workers,
    openWorker,
    onProgress
  }: { workers: number; openWorker: () => CasesWorker; onProgress: (done: number) => void }
): AheadRun {
  const crew: CasesWorker[] = [];
  const cancel = (): void => crew.forEach((worker) => worker.terminate());
  const solved = new Promise<void>((resolve, reject) => {
    if (cases.length === 0) return resolve();
    // A throw in here rejects: a policy of the page may forbid workers, and an old browser has none of this kind.
    while (crew.length < Math.max(1, workers)) crew.push(openWorker());
    let next = 0;
    let done = 0;
    for (const worker of crew) {
      let inHand: readonly CaseSources[] = [];
      const handOut = (): void => {
        inHand = cases.slice(next, next + casesAtOnce);
        next += inHand.length;
        if (inHand.length === 0) return;
        const given = inHand.map((sources) => {
          const { conditions, cells } = givenOf(sources);
          return { conditions, cells };
        });
        worker.postMessage({ cases: given } satisfies CasesTask);
      };
      worker.onmessage = ({ data }: MessageEvent<PackedCases>) => {
        keepCases(memo, { cases: inHand, results: unpackCases(data) });
        done += inHand.length;
        onProgress(done);
        if (done === cases.length) resolve();
        else handOut();
      };
      worker.onerror = (event) => {
        (event as ErrorEvent).preventDefault();
        reject(new Error('A worker that solves cases stopped.'));
      };
      const { referenceSet, overrides } = reference;
      worker.postMessage({ reference: { referenceSet, overrides } } satisfies CasesTask);
      handOut();
    }
  }).finally(cancel);
  return { solved, cancel };
}
