/** How the answer to a break-even question came about: the search, and the estimate with the value that it found. */
import type { CaseUse } from '../case/case-result.ts';
import { CaseMemo } from '../known-cases/case-memo.ts';
import { explainer } from '../estimate/explain.ts';
import type { EstimateInput } from '../input.ts';
import type { TurningInput } from '../money/turning-inputs.ts';
import type { ComparedWith } from './changed-cell.ts';
import { comparison, standingFromLimit, withNumber } from './changed-cell.ts';
import type { Answer } from './questions.ts';
import { withAnswer } from './questions.ts';
import type { LeafInstead } from '../working/recorder.ts';
import { recorder, recorderOver, workingOf } from '../working/recorder.ts';
import type { Quantity } from '../working/reckoner.ts';
import type { Working } from '../working/working.ts';

interface Search {
  readonly value: number;
  readonly now: number;
  readonly low: number;
  readonly high: number;
  /** The cell; `caseMix` where all case groups are scaled together. */
  readonly path: string;
  readonly unit: string;
  readonly comparedWith: ComparedWith;
  readonly discounted: boolean;
}

const words =
  'The cell’s values are looked over from one end to the other, each by the whole estimate, for a change of sign of the lowest cumulative cash flow from the payback limit to the end of the appraisal: below 0 it is not paid for by then, or does not stay so. Where the sign changes, the interval is narrowed down to the value at which it turns.';

/** @param unit of the value that was found, e.g. `currency`, `L/min`. */
export function explainAnswer(
  input: EstimateInput,
  { question, value }: Extract<Answer, { kind: 'found' }>,
  { discounted, unit }: { discounted: boolean; unit: string }
): Working {
  const as = { scenario: 'what-if', part: 'what-if' };
  const { document, scenarioId } = withAnswer(input, question, { value, as });
  const [list = '', part = ''] = question.path.split('.');
  // The answer stands in a copy of the scenario and of what it belongs to: leaves are named as the originals are.
  const original = (path: string): string =>
    path
      .replace('scenarios.what-if.', `scenarios.${question.scenarioId}.`)
      .replace(`${list}.what-if.`, `${list}.${part}.`);
  return explainSearch(
    document,
    { ...question, value, unit, discounted },
    { scenarioId, instead: (path) => ({ path: original(path) }) }
  );
}

/** How a cell that turns the answer by itself was found. */
export function explainTurning(
  input: EstimateInput,
  { turnsAt, ...cell }: TurningInput,
  {
    scenarioId,
    comparedWith = 'today',
    discounted,
    unit
  }: { scenarioId: string; comparedWith?: ComparedWith; discounted: boolean; unit: string }
): Working {
  return explainSearch(
    withNumber(input, cell.path, turnsAt),
    { ...cell, comparedWith, value: turnsAt, unit, discounted },
    { scenarioId, instead: () => null }
  );
}

function explainSearch(
  changed: EstimateInput,
  { value, now, low, high, path, unit, comparedWith, discounted }: Search,
  { scenarioId, instead }: { scenarioId: string; instead: (path: string) => LeafInstead | null }
): Working {
  const found = { words: 'The value that was found, in place of the one that stands in the cell.' };
  const isChanged = (at: string): boolean =>
    at === path || (path === 'caseMix' && at.startsWith('caseMix.') && at.endsWith('.casesPerYear'));
  const r = recorderOver((at) => {
    const other = instead(at);
    return isChanged(other !== null && 'path' in other ? other.path : at) ? found : other;
  });
  const payback = discounted ? 'discountedPaybackYears' : 'simplePaybackYears';
  const { paybackLimitYears } = changed.accounting;
  const figures = comparison(changed, { scenarioId, comparedWith }, new CaseMemo<CaseUse>());
  const room = comparedWith === 'today' ? 'againstBaseline' : 'machineAdds';
  const asEntered: Quantity =
    path === 'caseMix'
      ? recorder.assumption(now, unit, 'The cases of all case groups as entered, added up.')
      : recorder.cell(now, unit, path);
  const inputs = {
    'as entered': asEntered,
    'payback limit': recorder.cell(paybackLimitYears, 'year', 'accounting', 'paybackLimitYears'),
    'payback with the value that was found': explainer(
      changed,
      r
    )(`${scenarioId}.${room}.${payback}`) as unknown as Quantity
  };
  const working = recorder.result(value, inputs, () => ({
    id: 'what-if.turning-value',
    yields: 'Value at which the payback meets the limit',
    words,
    unit,
    source: 'definition',
    report: [
      { words: 'lowest value looked at', value: low, unit },
      { words: 'highest value looked at', value: high, unit },
      {
        words:
          'lowest cumulative cash flow from the limit on with the value that was found, 0 where the payback equals it',
        value: standingFromLimit(figures, { paybackLimitYears, discounted }),
        unit: 'currency'
      }
    ]
  }));
  return workingOf(working);
}
