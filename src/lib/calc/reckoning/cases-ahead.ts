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
import { sharesOfCases } from '../fleet/share-of-cases.ts';
import type { Standing } from '../fleet/standing.ts';
import { fleetOf } from '../fleet/standing.ts';
import { baselineOf } from '../baseline-of.ts';
import { sourcesOfCases } from './case-sources.ts';
import { choicesIn } from './scenario-cases.ts';

/** The cases of an input that a memo lacks, each once however often it occurs, in order of scenario, theatres and row. */
export function casesLacking(input: EstimateInput, memo: CaseMemo): CaseSources[] {
  const today = baselineOf(input);
  const sources = sourcesOfCases(input, today);
  const fleet = fleetOf(plain, input, today);
  const shareIn = sharesOfCases<Standing>(plain, input.theatreGroups);
  const listed = new Set<string>();
  const lacking: CaseSources[] = [];
  for (const scenario of input.scenarios)
    for (const { standings } of fleet.periods(scenario))
      for (const standing of standings)
        for (const row of input.caseMix) {
          if (shareIn(standing, row) === 'none') continue;
          const isFollowedByAll = plain.value(standing.adoptionPercent) >= 100;
          const { following, rest } = choicesIn(plain, sources, {
            today,
            scenario,
            row,
            standing,
            isFollowedByAll
          });
          for (const choice of [...following.map(({ one }) => one), ...(rest === null ? [] : [rest])]) {
            const one = sources.sourcesOf(choice);
            if (memo.has(one)) continue;
            const text = `${circumstancesText(one)}|${rowText(one.row)}`;
            if (listed.has(text)) continue;
            listed.add(text);
            lacking.push(one);
          }
        }
  return lacking;
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
