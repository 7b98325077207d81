import type { CaseResult } from '#lib/calc/case/case-result.ts';
import { solveCases } from '#lib/calc/reckoning/cases-ahead.ts';
import { packCases } from '#lib/calc/known-cases/packed-cases.ts';
import type { EstimateInput } from '#lib/calc/input.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import type { CasesTask, CasesWorker } from './cases-worker.ts';

/** How long cases are solved before the page has its turn. */
const pieceMs = 20;

/**
 * What stands in for a worker where the browser starts none: it does the same on the page, a few cases at a time, so
 * that the page stays usable meanwhile.
 */
export function openOnPage(): CasesWorker {
  let input: EstimateInput | null = null;
  let ended = false;
  const solve = async (of: EstimateInput, places: Extract<CasesTask, { places: unknown }>['places']) => {
    const results: (CaseResult | null)[] = [];
    while (results.length < places.length) {
      await new Promise((resolve) => setTimeout(resolve));
      if (ended) return;
      const until = performance.now() + pieceMs;
      do results.push(...solveCases(of, places.slice(results.length, results.length + 5)));
      while (results.length < places.length && performance.now() < until);
    }
    const message = new MessageEvent('message', { data: packCases(results) });
    self.onmessage?.call(self as Worker, message);
  };
  const self: CasesWorker = {
    onmessage: null,
    onerror: null,
    postMessage: (task: CasesTask) => {
      if ('workbook' in task) input = coreInput(task.workbook);
      else if (input !== null) void solve(input, task.places);
    },
    terminate: () => {
      ended = true;
    }
  };
  return self;
}
