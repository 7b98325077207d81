/**
 * Solving cases ahead of the estimate that needs them: a page finds out which ones a memo lacks, has them solved
 * elsewhere, and puts the results into the memo; the estimate then finds what it would have computed.
 */
import type { CaseResult } from '../case/case-result.ts';
import type { CaseGiven, CaseSources } from '../case/conditions.ts';
import { circumstancesText, rowText } from '../case/conditions.ts';
import { estimateCase } from '../case/estimate-case.ts';
import type { EstimateInput } from '../input.ts';
import type { CaseMemo } from '../known-cases/case-memo.ts';
import { plain } from '../working/plain.ts';
import { sourcesOfCases } from './case-sources.ts';

/** The cases of an input that a memo lacks, each once however often it occurs, in order of scenario and row. */
export function casesLacking(input: EstimateInput, memo: CaseMemo): CaseSources[] {
  const { sourcesOf } = sourcesOfCases(input);
  const listed = new Set<string>();
  return input.scenarios.flatMap((scenario) =>
    input.caseMix.flatMap((row) => {
      const sources = sourcesOf(scenario, row);
      if (memo.has(sources)) return [];
      const text = `${circumstancesText(sources)}|${rowText(row)}`;
      if (listed.has(text)) return [];
      listed.add(text);
      return [sources];
    })
  );
}

/** Results of cases; null where one cannot be computed, for which the estimate gives the reason. */
export function solveCases(cases: readonly CaseGiven[]): (CaseResult | null)[] {
  return cases.map((given) => {
    try {
      return estimateCase(plain, given);
    } catch {
      return null;
    }
  });
}

/** Puts results into a memo, each for its case. */
export function keepCases(
  memo: CaseMemo,
  { cases, results }: { cases: readonly CaseSources[]; results: readonly (CaseResult | null)[] }
): void {
  cases.forEach((sources, index) => {
    const result = results[index];
    if (result) memo.add(sources, result);
  });
}
