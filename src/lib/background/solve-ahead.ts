/** Has the cases of a workbook solved in workers and puts them into a memo, where the estimate then finds them. */
import type { CaseMemo } from '#lib/calc/known-cases/case-memo.ts';
import { casesLacking, keepCases } from '#lib/calc/reckoning/cases-ahead.ts';
import type { CaseSources } from '#lib/calc/case/conditions.ts';
import { givenOf } from '#lib/calc/case/conditions.ts';
import type { EstimateInput } from '#lib/calc/input.ts';
import { unpackCases } from '#lib/calc/known-cases/packed-cases.ts';
import type { OfReference } from '#lib/workbook/core-input.ts';
import { openOnPage } from './cases-on-page.ts';
import type { CasesPort } from './cases-worker.ts';
import { openPort } from './worker-port.ts';

export const openCasesPort = (): CasesPort =>
  openPort(() => new Worker(new URL('./cases-worker.ts', import.meta.url), { type: 'module' }));

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
    openPort,
    onProgress
  }: { workers: number; openPort: () => CasesPort; onProgress: (done: number) => void }
): AheadRun {
  let isCancelled = false;
  let run = shareOut(task, { workers, openPort, onProgress });
  const solved = run.solved.catch(() => {
    if (isCancelled) return new Promise<void>(() => undefined);
    const left = casesLacking(task.input, task.memo);
    const before = task.cases.length - left.length;
    run = shareOut(
      { ...task, cases: left },
      { workers: 1, openPort: openOnPage, onProgress: (done) => onProgress(before + done) }
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
    openPort,
    onProgress
  }: { workers: number; openPort: () => CasesPort; onProgress: (done: number) => void }
): AheadRun {
  const crew: CasesPort[] = [];
  const cancel = (): void => crew.forEach((port) => port.close());
  const solved = new Promise<void>((resolve, reject) => {
    if (cases.length === 0) return resolve();
    while (crew.length < Math.max(1, workers)) crew.push(openPort());
    let next = 0;
    let done = 0;
    for (const port of crew) {
      let inHand: readonly CaseSources[] = [];
      const handOut = (): void => {
        inHand = cases.slice(next, next + casesAtOnce);
        next += inHand.length;
        if (inHand.length === 0) return;
        const given = inHand.map((sources) => {
          const { conditions, cells } = givenOf(sources);
          return { conditions, cells };
        });
        port.post({ cases: given });
      };
      port.onreply = (packed) => {
        keepCases(memo, { cases: inHand, results: unpackCases(packed) });
        done += inHand.length;
        onProgress(done);
        if (done === cases.length) resolve();
        else handOut();
      };
      port.onfail = (sentence) => reject(new Error(sentence));
      const { referenceSet, overrides } = reference;
      port.post({ reference: { referenceSet, overrides } });
      handOut();
    }
  }).finally(cancel);
  return { solved, cancel };
}
