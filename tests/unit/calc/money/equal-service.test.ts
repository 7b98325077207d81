import { expect, test } from 'vitest';
import { compareOverEqualService, repeatedChain } from '#lib/calc/money/equal-service.ts';
import { plain } from '#lib/calc/working/plain.ts';
import { moneyOf, textsOf } from './business-case.ts';

const at = (ratePercent: number) => plain.cell(ratePercent, '%', 'given', 'rate');
const way = (id: string, ...flows: readonly number[]) => ({ id, flows: flows.map(moneyOf) });

test('a chain repeats a life, the end of one falling together with the start of the next', () => {
  const flows = [100, 5, -20].map(moneyOf);
  expect(textsOf(repeatedChain(plain, { flows, lives: 3 }))).toEqual([
    '100',
    '5',
    '80',
    '5',
    '80',
    '5',
    '-20'
  ]);
  expect(textsOf(repeatedChain(plain, { flows, lives: 1 }))).toEqual(['100', '5', '-20']);
});

test('lives of 4 and 6 years are chained to 12, at a rate of 0 by plain sums', () => {
  const [short, long] = compareOverEqualService(plain, {
    ways: [way('short', 400, 0, 0, 0, 0), way('long', 540, 0, 0, 0, 0, 0, 60)],
    ratePercent: at(0)
  });
  expect([short?.chainYears, short?.lifeYears, long?.lifeYears]).toEqual([12, 4, 6]);
  expect(plain.value(short!.equivalentAnnualCost).toNumber()).toBe(100);
  expect(plain.value(long!.equivalentAnnualCost).toNumber()).toBe(100);
  expect(textsOf([short!.chainPresentValue, long!.chainPresentValue])).toEqual(['1200', '1200']);
});

test('a way without a life, and lives that end together too late, are refused', () => {
  const compare =
    (...ways: ReturnType<typeof way>[]) =>
    () =>
      compareOverEqualService(plain, { ways, ratePercent: at(3) });
  expect(compare(way('none', 5))).toThrow('a life of at least one year');
  const life = (years: number) => way('w', ...Array.from({ length: years + 1 }, () => 1));
  expect(compare(life(29), life(31))).toThrow('end together only after 899');
});
