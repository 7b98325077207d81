/**
 * Solving cases ahead of the estimate that needs them: a page finds out which ones a memo lacks, has them solved
 * elsewhere, and puts the results into the memo; the estimate then finds what it would have computed.
 */
import type { CaseResult } from '../case/case-result.ts';
import { estimateCase } from '../case/estimate-case.ts';
import { ByCase } from '../known-cases/by-case.ts';
import { caseGivens } from './case-givens.ts';
import type { CaseMemo } from '../known-cases/case-memo.ts';
import type { EstimateInput } from '../input.ts';
import { plain } from '../working/plain.ts';

/** A case by the places of its scenario and its row in the input. */
export interface CasePlace {
  readonly scenario: number;
  readonly row: number;
}

/** The cases of an input that a memo lacks, each once however often it occurs, in order of scenario and row. */
export function casesLacking(input: EstimateInput, memo: CaseMemo): CasePlace[] {
  const { givenOf } = caseGivens(input);
  const listed = new ByCase<true>();
  const places: CasePlace[] = [];
  input.scenarios.forEach((scenario, scenarioIndex) =>
    input.caseMix.forEach((row, rowIndex) => {
      const given = givenOf(scenario, row);
      if (memo.has(given) || listed.get(given)) return;
      listed.set(given, true);
      places.push({ scenario: scenarioIndex, row: rowIndex });
    })
  );
  return places;
}

/** Results at the given places; null where the case cannot be estimated, for which the estimate gives the reason. */
export function solveCases(input: EstimateInput, places: readonly CasePlace[]): (CaseResult | null)[] {
  const { givenOf } = caseGivens(input);
  return places.map(({ scenario, row }) => {
    try {
      return estimateCase(plain, givenOf(input.scenarios[scenario]!, input.caseMix[row]!));
    } catch {
      return null;
    }
  });
}

/** Puts results into a memo, each at its place in the input. */
export function keepCases(
  input: EstimateInput,
  memo: CaseMemo,
  solved: { readonly places: readonly CasePlace[]; readonly results: readonly (CaseResult | null)[] }
): void {
  const { givenOf } = caseGivens(input);
  solved.places.forEach(({ scenario, row }, index) => {
    const result = solved.results[index];
    if (result) memo.add(givenOf(input.scenarios[scenario]!, input.caseMix[row]!), result);
  });
}
