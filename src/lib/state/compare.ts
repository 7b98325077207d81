/** What each difference between the open workbook and another does to the answer, one at a time. */
import { estimate } from '#lib/calc/estimate/estimate.ts';
import { explainer } from '#lib/calc/estimate/explain.ts';
import { CaseMemo } from '#lib/calc/known-cases/case-memo.ts';
import { recorder } from '#lib/calc/working/recorder.ts';
import type { Working } from '#lib/calc/working/working.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import type { Difference } from '#lib/workbook/differences.ts';
import { differencesOf, withDifference } from '#lib/workbook/differences.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';

/** The answer of one scenario against today, in the workbook’s currency and kilograms. */
export interface Answer {
  readonly npv: number;
  readonly yearlySaving: number;
  readonly co2eAvoidedKg: number;
}

export type Figure = keyof Answer;

export interface DifferenceWithEffect {
  readonly difference: Difference;
  /** The answer with this difference alone; null where it cannot be taken alone, or the scenario is gone with it. */
  readonly answer: Answer | null;
  /** Why there is no answer; '' where there is one. */
  readonly sentence: string;
  /** How a figure of that answer came about. */
  readonly working: (figure: Figure) => Working;
}

export interface Comparison {
  readonly there: Workbook;
  /** Of the open workbook. */
  readonly answer: Answer | null;
  /** Of the other one; null where it has no such scenario. */
  readonly answerThere: Answer | null;
  readonly differences: readonly DifferenceWithEffect[];
  /** How many more there are, of which none is put in. */
  readonly more: number;
}

/** More are listed by nobody’s patience. */
const mostPutIn = 200;

/** @param breathe waits until the page has drawn, between one difference and the next */
export async function comparison(
  here: Workbook,
  there: Workbook,
  { scenario, breathe }: { readonly scenario: string; readonly breathe: () => Promise<void> }
): Promise<Comparison> {
  const memo = new CaseMemo();
  const answerOf = (workbook: Workbook): Answer | null => {
    const found = estimate(coreInput(workbook), memo).scenarios.find(({ id }) => id === scenario);
    if (found === undefined) return null;
    const { npv, yearlySaving, co2eAvoidedKg } = found.againstBaseline;
    return { npv: Number(npv), yearlySaving: Number(yearlySaving), co2eAvoidedKg };
  };
  const all = differencesOf(here, there);
  const differences: DifferenceWithEffect[] = [];
  for (const difference of all.slice(0, mostPutIn)) {
    await breathe();
    differences.push(effectOf(here, difference));
  }
  return {
    there,
    answer: answerOf(here),
    answerThere: answerOf(there),
    differences,
    more: Math.max(0, all.length - mostPutIn)
  };

  function effectOf(workbook: Workbook, difference: Difference): DifferenceWithEffect {
    const none = (sentence: string): DifferenceWithEffect => ({
      difference,
      answer: null,
      sentence,
      working: () => {
        throw new Error(sentence);
      }
    });
    const changed = withDifference(workbook, difference);
    if ('sentence' in changed) return none(`Not by itself: ${changed.sentence}`);
    try {
      const answer = answerOf(changed.workbook);
      if (answer === null) return none('The scenario that is looked at goes with it.');
      return {
        difference,
        answer,
        sentence: '',
        working: (figure) =>
          explainer(coreInput(changed.workbook), recorder)(`${scenario}.againstBaseline.${figure}`)
      };
    } catch (error) {
      return none(`Not by itself: ${error instanceof Error ? error.message : String(error)}`);
    }
  }
}
