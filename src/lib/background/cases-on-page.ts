import type { CaseResult } from '#lib/calc/case/case-result.ts';
import { packCases } from '#lib/calc/known-cases/packed-cases.ts';
import { solveCases } from '#lib/calc/reckoning/cases-ahead.ts';
import type { ReferenceSet } from '#lib/calc/reference/reference-set.ts';
import { referenceOf } from '#lib/workbook/core-input.ts';
import type { CasesPort, CasesTask } from './cases-worker.ts';

/** How long cases are solved before the page has its turn. */
const pieceMs = 20;

/**
 * What stands in for a worker where the browser starts none: it does the same on the page, a few cases at a time, so
 * that the page stays usable meanwhile.
 */
export function openOnPage(): CasesPort {
  let reference: ReferenceSet | null = null;
  let ended = false;
  const solve = async (set: ReferenceSet, { cases }: Extract<CasesTask, { cases: unknown }>) => {
    const results: (CaseResult | null)[] = [];
    while (results.length < cases.length) {
      await new Promise((resolve) => setTimeout(resolve));
      if (ended) return;
      const until = performance.now() + pieceMs;
      do {
        const piece = cases.slice(results.length, results.length + 5);
        results.push(...solveCases(piece.map((given) => ({ ...given, reference: set }))));
      } while (results.length < cases.length && performance.now() < until);
    }
    port.onreply(packCases(results));
  };
  const port: CasesPort = {
    post: (task) => {
      if ('reference' in task) reference = referenceOf(task.reference);
      else if (reference !== null) void solve(reference, task);
    },
    onreply: () => undefined,
    onfail: () => undefined,
    close: () => {
      ended = true;
    }
  };
  return port;
}
