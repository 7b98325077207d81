import { ByCase } from './by-case.ts';
import type { CaseGiven } from '../case/case-given.ts';
import type { CaseResult, CaseUse } from '../case/case-result.ts';

/** Twice what the largest workbook holds. */
const sizeLimit = 200_000;

/**
 * Results of cases, kept over edits, so that an edit computes only what it changes and alike cases are computed once.
 * Holds plain results only, all of them of one kind: whole ones, or what what-if runs need of them.
 */
export class CaseMemo<in out C extends CaseUse = CaseResult> {
  readonly #results = new ByCase<C>(sizeLimit);
  /** Cases that were computed, not found, since the memo was made. */
  computed = 0;

  result(given: CaseGiven, compute: (given: CaseGiven) => C): C {
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
  add(given: CaseGiven, result: C): void {
    this.#results.set(given, result);
  }
}
