import { expect, test } from 'vitest';
import type { Accounting } from '#lib/calc/input.ts';
import { text } from '#lib/calc/money/decimal.ts';
import { MoneyInputError } from '#lib/calc/money/money-input-error.ts';
import { timeFactors } from '#lib/calc/money/time-factors.ts';
import { plain } from '#lib/calc/working/plain.ts';
import { accounting } from './business-case.ts';

test('discount from the first year, grow from the second, and leave out what does not grow', () => {
  const factors = timeFactors(plain, {
    ...accounting,
    appraisalYears: 3,
    discountRatePercent: 25,
    agentGrowthPercent: 10,
    carbonGrowthPercent: -50
  });
  expect(factors.map(({ discount }) => text(plain.value(discount)))).toEqual(['1', '0.8', '0.64', '0.512']);
  const levels = (line: 'agents' | 'carbon'): (string | null)[] =>
    factors.map(({ growth }) => (growth[line] === undefined ? null : text(plain.value(growth[line]))));
  expect(levels('agents')).toEqual([null, '1', '1.1', '1.21']);
  expect(levels('carbon')).toEqual([null, '1', '0.5', '0.25']);
  expect(factors.some(({ growth }) => 'service' in growth)).toBe(false);
});

test.each<[keyof Accounting, number]>([
  ['appraisalYears', 0],
  ['appraisalYears', 61],
  ['appraisalYears', 2.5],
  ['discountRatePercent', -100],
  ['agentGrowthPercent', -101]
])('%s of %d is refused at its cell', (cell, value) => {
  try {
    timeFactors(plain, { ...accounting, [cell]: value });
  } catch (error) {
    expect(error).toBeInstanceOf(MoneyInputError);
    expect((error as MoneyInputError).path).toBe(`accounting.${cell}`);
    expect((error as MoneyInputError).message).toContain(String(value));
    return;
  }
  throw new Error('It was not refused.');
});
