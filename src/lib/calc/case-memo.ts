import { ByCase } from './by-case.ts';
import type { CaseGiven } from './case/case-given.ts';
import type { CaseResult } from './case/case-result.ts';

/** Twice what the largest workbook holds. */
const sizeLimit = 200_000;

/**
 * Results of cases, kept over edits, so that an edit computes only what it changes and alike cases are computed once.
 * Holds plain results only.
 */
export class CaseMemo {
  readonly #results = new ByCase<CaseResult>(sizeLimit);
  /** Cases that were computed, not found, since the memo was made. */
  computed = 0;

  result(given: CaseGiven, compute: (given: CaseGiven) => CaseResult): CaseResult {
    let result = this.#results.get(given);
    if (result === undefined) {
      result = compute(given);
      this.computed++;
      this.#results.set(given, result);
    }
    return result;
  }

  has(given: CaseGiven): boolean {
    return this.#results.get(given) !== undefined;
  }

  /** Takes in a result that was computed elsewhere. */
  add(given: CaseGiven, result: CaseResult): void {
    this.#results.set(given, result);
  }
}
