import type { CaseResult, CaseUse } from '../case/case-result.ts';
import type { CaseGiven, CaseSources } from '../case/conditions.ts';
import { circumstancesText, givenOf, rowText } from '../case/conditions.ts';

/** What the largest workbook holds. */
const casesOfLargestWorkbook = 100_000;

/** By everything but the row, then by the row: most of a scenario's rows share a shelf. */
type Shelves<C> = Map<string, Map<string, C>>;

/**
 * Results of cases, kept by all that they depend on, so that an edit computes only what it changes and alike cases are
 * computed once. Holds plain results only, all of them of one kind: whole ones, or what what-if runs need of them.
 *
 * Two generations: when the younger is full it becomes the older, and what is asked for again moves on into the new
 * younger one. So at least the last `limit` cases are kept, and at most twice as many, however long a run goes on.
 */
export class CaseMemo<in out C extends CaseUse = CaseResult> {
  #young: Shelves<C> = new Map();
  #old: Shelves<C> = new Map();
  #size = 0;
  readonly #limit: number;
  #last: { readonly sources: CaseSources; readonly text: string } | null = null;
  /** Cases that were computed, not found, since the memo was made. */
  computed = 0;

  constructor(limit = casesOfLargestWorkbook) {
    this.#limit = limit;
  }

  result(sources: CaseSources, compute: (given: CaseGiven) => C): C {
    let result = this.#find(sources);
    if (result === undefined) {
      result = compute(givenOf(sources));
      this.computed++;
      this.add(sources, result);
    }
    return result;
  }

  has(sources: CaseSources): boolean {
    return this.#find(sources) !== undefined;
  }

  /** Takes in a result that was computed elsewhere. */
  add(sources: CaseSources, result: C): void {
    this.#put(this.#circumstancesOf(sources), rowText(sources.row), result);
  }

  #find(sources: CaseSources): C | undefined {
    const circumstances = this.#circumstancesOf(sources);
    const row = rowText(sources.row);
    const found = this.#young.get(circumstances)?.get(row);
    if (found !== undefined) return found;
    const older = this.#old.get(circumstances)?.get(row);
    if (older !== undefined) this.#put(circumstances, row, older);
    return older;
  }

  #put(circumstances: string, row: string, result: C): void {
    if (this.#size >= this.#limit) {
      this.#old = this.#young;
      this.#young = new Map();
      this.#size = 0;
    }
    let shelf = this.#young.get(circumstances);
    if (shelf === undefined) this.#young.set(circumstances, (shelf = new Map<string, C>()));
    this.#size -= shelf.size;
    shelf.set(row, result);
    this.#size += shelf.size;
  }

  /** The text is the same as long as the entries are, as they are from row to row. */
  #circumstancesOf(sources: CaseSources): string {
    const last = this.#last;
    if (
      last !== null &&
      last.sources.plan === sources.plan &&
      last.sources.machine === sources.machine &&
      last.sources.agent === sources.agent &&
      last.sources.absorbent === sources.absorbent &&
      last.sources.site === sources.site &&
      last.sources.accounting === sources.accounting &&
      last.sources.reference === sources.reference
    )
      return last.text;
    const text = circumstancesText(sources);
    this.#last = { sources, text };
    return text;
  }
}
