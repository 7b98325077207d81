/**
 * The estimate with a cell changed: what break-even questions and uncertainty runs evaluate, thousands of times. Nothing
 * is modelled here; each answer comes out of the whole calculation, of which only what is asked for is done.
 */
import type { CaseGiven } from '../case/conditions.ts';
import { twinOf } from '../attribution/levers.ts';
import { Step } from '../attribution/step.ts';
import type { CaseUse } from '../case/case-result.ts';
import { useOfCase } from '../case/estimate-case.ts';
import type { CaseMemo } from '../known-cases/case-memo.ts';
import { readCell, writeCell } from '../cell-path.ts';
import type { EstimateInput, Scenario } from '../input.ts';
import { Decimal, text } from '../money/decimal.ts';
import { lowestSumFrom } from '../money/payback.ts';
import { timeFactors } from '../money/time-factors.ts';
import { askedScenarios } from '../reckoning/asked-scenarios.ts';
import type { Against } from '../reckoning/against.ts';
import { reckonWith } from '../reckoning/reckoning.ts';
import { plain } from '../working/plain.ts';

const plainUse = (given: CaseGiven): CaseUse => useOfCase(plain, given);

/**
 * The estimate of an input, with no more of its cases than its sums need.
 * @param memo keeps the cases, so that only those whose figures changed are solved again
 */
export const reckonUse = (input: EstimateInput, memo: CaseMemo<CaseUse>) =>
  reckonWith(plain, input, (sources) => memo.result(sources, plainUse));

/** Thrown where a changed cell leaves the calculation without an answer, as a flow that the core refuses. */
export class NoAnswerError extends Error {
  constructor(sentence: string) {
    super(sentence);
    this.name = 'NoAnswerError';
  }
}

/** The number in a cell, money included; null where it holds none. */
export function numberAt(document: unknown, path: string): number | null {
  const value = readCell(document, path);
  const number = typeof value === 'string' && value !== '' ? Number(value) : value;
  return typeof number === 'number' && Number.isFinite(number) ? number : null;
}

/**
 * Puts numbers into a cell, of a document or of any other like it: as decimal text where the cell holds money, else as
 * they are.
 */
export function numberWriter<T>(document: T, path: string): (document: T, value: number) => T {
  const isMoney = typeof readCell(document, path) === 'string';
  return (to, value) => writeCell(to, path, isMoney ? text(new Decimal(value)) : value);
}

/** The document with a number in a cell. */
export const withNumber = <T>(document: T, path: string, value: number): T =>
  numberWriter(document, path)(document, value);

/**
 * A scenario against today, of an input that may be unsound because a cell was changed.
 * @param memo keeps the results of cases, so that only rows whose figures changed are solved again.
 * @throws NoAnswerError where a case could not be computed: its row would be missing from every total.
 */
export function againstToday(input: EstimateInput, scenarioId: string, memo: CaseMemo<CaseUse>): Against {
  return againstIn(input, memo, (against) => against(scenarioIn(input, scenarioId)));
}

/** What a scenario is compared with: today's practice, or its twin on today's machines. */
export type ComparedWith = 'today' | 'twin';

/**
 * The step from a scenario's twin on today's machines to the scenario, of an input that may be unsound.
 * @throws NoAnswerError as `againstToday`, and where the scenario changes no machine.
 */
export function againstTwin(input: EstimateInput, scenarioId: string, memo: CaseMemo<CaseUse>): Step {
  const scenario = scenarioIn(input, scenarioId);
  const twin = twinOf(input, scenario);
  if (twin === null)
    throw new NoAnswerError(
      `“${scenario.name}” stays on today’s machines, so it has no twin without a machine.`
    );
  return againstIn(
    input,
    memo,
    (against) =>
      new Step(plain, {
        from: against(twin.scenario),
        to: against(scenario),
        factors: timeFactors(plain, input.accounting)
      })
  );
}

/** A scenario against today, or against its twin. */
export const comparison = (
  input: EstimateInput,
  { scenarioId, comparedWith }: { scenarioId: string; comparedWith: ComparedWith },
  memo: CaseMemo<CaseUse>
): Against | Step =>
  comparedWith === 'today' ? againstToday(input, scenarioId, memo) : againstTwin(input, scenarioId, memo);

function scenarioIn(input: EstimateInput, scenarioId: string): Scenario {
  const scenario = input.scenarios.find(({ id }) => id === scenarioId);
  if (scenario === undefined) throw new NoAnswerError(`There is no scenario “${scenarioId}”.`);
  return scenario;
}

function againstIn<T>(
  input: EstimateInput,
  memo: CaseMemo<CaseUse>,
  read: (against: (scenario: Scenario) => Against) => T
): T {
  const reckoning = askedScenarios(reckonUse(input, memo));
  const result = read(reckoning.against);
  const [failed] = reckoning.failed();
  if (failed !== undefined) throw new NoAnswerError(failed.sentence);
  return result;
}

/**
 * The lowest cumulative net cash flow from the payback limit to the end of the appraisal: 0 exactly where the payback
 * equals the limit, below 0 where it is past it or does not last.
 * @param discounted whether flows are discounted first, for a discounted payback.
 */
export function standingFromLimit(
  against: Against | Step,
  { paybackLimitYears, discounted }: { paybackLimitYears: number; discounted: boolean }
): number {
  const years = discounted ? against.sumsForDiscountedPayback : against.sumsForPayback;
  const bare = years.map(({ sum, evenly }) => ({ sum: plain.value(sum), evenly: plain.value(evenly) }));
  return lowestSumFrom(bare, paybackLimitYears).toNumber();
}
