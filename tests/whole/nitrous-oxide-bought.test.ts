/** Nitrous oxide that was bought against what today's cases use. */
import { expect, test } from 'vitest';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { wholeWorkbook } from '../fixtures/whole-workbook.ts';

const base = wholeWorkbook();
const told = (nitrousOxideBoughtKgPerYear: number | null) => {
  const whole = estimate(coreInput(wholeWorkbook({ gases: { ...base.gases, nitrousOxideBoughtKgPerYear } })));
  return {
    usedKg: whole.scenarios[0]?.perYear.nitrousOxideKg ?? NaN,
    lostKg: whole.scenarios[0]?.ledger.find(({ kind }) => kind === 'nitrousOxideLost')?.activity,
    sentences: whole.warnings.filter((sentence) => sentence.startsWith('Today’s cases use'))
  };
};

test('less bought than used is said, with the ratio and likely causes, and nothing is counted as lost', () => {
  const { usedKg } = told(null);
  const { sentences, lostKg } = told(usedKg / 2);
  expect(lostKg).toBe(0);
  expect(sentences).toEqual([expect.stringMatching(/200 % of what was bought.*Usual causes/)]);
});

test('nothing bought is said without a ratio', () => {
  expect(told(0).sentences).toEqual([expect.not.stringContaining('%')]);
});

test('as much bought as used, more, or not given is not said', () => {
  const { usedKg } = told(null);
  for (const bought of [usedKg, 2 * usedKg, null]) expect(told(bought).sentences).toEqual([]);
  expect(told(null).lostKg).toBeNull();
});
