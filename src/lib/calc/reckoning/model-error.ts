/**
 * The model's own error, put on its figures: what patients take up and what is spilled, each by one factor for all cases
 * alike. An uncertainty run draws the two; an estimate has neither.
 */
import type { CaseUse } from '../case/case-result.ts';
import type { CaseSources } from '../case/conditions.ts';
import type { ModelErrorFactors } from '../input.ts';
import { formula } from '../working/formula.ts';
import type { Reckoner } from '../working/reckoner.ts';

const scaled = (id: string, yields: string, what: string) =>
  formula<{ modelMl: number; factor: number }>({
    id,
    yields,
    words: `${what} by the model, times the factor on it`,
    expression: 'm * f',
    inputs: {
      modelMl: { symbol: 'm', unit: 'mL', words: `${what} by the model` },
      factor: { symbol: 'f', unit: '1', words: 'factor for the model’s own error' }
    },
    unit: 'mL',
    source: 'definition',
    compute: ({ modelMl, factor }) => modelMl * factor
  });
const takenUpWithError = scaled('case.taken-up-with-error', 'Taken up, with the model’s error', 'taken up');
const spilledWithError = scaled('case.spilled-with-error', 'Spilled, with the model’s error', 'spilled');
const liquidOfParts = formula<{ takenUpMl: number; spilledMl: number; leftMl: number }>({
  id: 'case.liquid-with-error',
  yields: 'Liquid agent used, with the model’s error',
  words: 'taken up, spilled and left in circuit and lung, added up',
  expression: 'u + s + l',
  inputs: {
    takenUpMl: { symbol: 'u', unit: 'mL', words: 'taken up' },
    spilledMl: { symbol: 's', unit: 'mL', words: 'spilled' },
    leftMl: { symbol: 'l', unit: 'mL', words: 'left in circuit and lung' }
  },
  unit: 'mL',
  source: 'definition',
  compute: ({ takenUpMl, spilledMl, leftMl }) => takenUpMl + spilledMl + leftMl
});

/**
 * The model's figures of a case, with its error where factors are given. A measured use is carried over by mass balance
 * afterwards, and stays what was measured. Gases and absorbent are not touched.
 */
export function withModelError<C extends CaseUse>(
  r: Reckoner,
  factors: ModelErrorFactors | undefined,
  modelled: (sources: CaseSources) => C
): (sources: CaseSources) => C {
  if (factors === undefined) return modelled;
  const factorOn = (what: string, factor: number) =>
    r.assumption(factor, '1', `Factor on what is ${what}, for the model’s own error.`);
  return (sources) => {
    const model = modelled(sources);
    if (model.method === 'none') return model;
    const takenUpMl = r.apply(takenUpWithError, {
      modelMl: model.takenUpMl,
      factor: factorOn('taken up', factors.uptakeFactor)
    });
    const spilledMl = r.apply(spilledWithError, {
      modelMl: model.spilledMl,
      factor: factorOn('spilled', factors.spillFactor)
    });
    const { leftMl } = model;
    return {
      ...model,
      takenUpMl,
      spilledMl,
      liquidMl: r.apply(liquidOfParts, { takenUpMl, spilledMl, leftMl })
    };
  };
}
