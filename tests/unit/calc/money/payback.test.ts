import { describe, expect, test } from 'vitest';
import { Decimal } from '#lib/calc/money/decimal.ts';
import { cumulativeAt, payback } from '#lib/calc/money/payback.ts';
import { plain } from '#lib/calc/working/plain.ts';
import { sumsOf } from './business-case.ts';

const paybackOf = (flows: number[]) => {
  const found = payback(plain, sumsOf(plain, { flows, ratePercent: 0 }).cumulative);
  return [plain.value(found.years), found.fallsBelowAgain];
};

describe('payback', () => {
  test.each([
    ['within a year', [-100, 40, 80], 1.75, false],
    ['at a year end', [-100, 40, 60, 60], 2, false],
    ['never', [-100, 40, 50], null, false],
    ['with nothing at stake', [0, 10, 10], 0, false],
    ['with nothing at all', [0, 0, 0], 0, false],
    ['of a scenario that only costs more', [0, -10, -10], null, false],
    ['of a purchase in a later year', [0, -100, 50, 100], 2.5, false],
    ['of money first, then the purchase', [50, -100, 100], 1.5, false],
    ['that does not last', [-100, 150, -80, 100], 100 / 150, true]
  ] as const)('%s', (_, flows, years, again) => {
    expect(paybackOf([...flows])).toEqual([years, again]);
  });
});

test('the cumulative cash flow is read between year ends, and stands after the last', () => {
  const sums = [-100, -60, 20].map((sum) => new Decimal(sum));
  const at = (years: number): number => cumulativeAt(sums, years).toNumber();
  expect([at(0), at(0.5), at(1), at(1.75), at(2), at(9)]).toEqual([-100, -80, -60, 0, 20, 20]);
});
