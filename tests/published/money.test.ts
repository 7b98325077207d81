/**
 * Money against worked examples from outside: OpenStax, Principles of Finance (2022), chapter 16 (payback, net present
 * value, internal rate of return, discounted payback), and the discount factors of the rate in HM Treasury's Green Book.
 */
import { describe, expect, test } from 'vitest';
import { Decimal } from '#lib/calc/money/decimal.ts';
import { internalRates } from '#lib/calc/money/internal-rate.ts';
import { netPresentValue } from '#lib/calc/money/net-present-value.ts';
import { payback } from '#lib/calc/money/payback.ts';
import { timeFactors } from '#lib/calc/money/time-factors.ts';
import { plain } from '#lib/calc/working/plain.ts';
import { accounting, sumsOf } from '../unit/calc/money/business-case.ts';

const npvAt = (flows: number[], ratePercent: number): Decimal =>
  plain.value(netPresentValue(plain, sumsOf(plain, { flows, ratePercent }).discounted));
const ratesOf = (flows: number[]) => internalRates(plain, sumsOf(plain, { flows, ratePercent: 0 }).flows);

describe('OpenStax, Principles of Finance, chapter 16', () => {
  const machine = [-16000, 2000, 4000, 5000, 5000, 5000];
  const longer = [-16000, 2000, 4000, 5000, 5000, 5000, 5000];
  const rising = [-30000, ...Array.from({ length: 7 }, (_, k) => 6000 + 2000 * k)];

  test('fin-1: simple payback is 4.0 years, exactly', () => {
    expect(
      plain.value(payback(plain, sumsOf(plain, { flows: machine, ratePercent: 0 }).forPayback))
    ).toBe(4);
  });

  test('fin-2: NPV 2 835.62 at 9 %, to the cent as printed', () => {
    expect(npvAt(longer, 9).toFixed(2)).toBe('2835.62');
  });

  test('fin-2: IRR 14.09 %, to the digits printed', () => {
    const rates = ratesOf(longer);
    expect(rates.kind).toBe('one');
    expect(plain.value(rates.ratePercent)?.toFixed(2)).toBe('14.09');
  });

  test('fin-2: discounted payback 5.05 years, to the digits printed', () => {
    const { forDiscountedPayback } = sumsOf(plain, { flows: longer, ratePercent: 9 });
    expect(plain.value(payback(plain, forDiscountedPayback))?.toFixed(2)).toBe('5.05');
  });

  test('fin-3: NPV 26 946.90 at 9 %, to the cent as printed', () => {
    expect(npvAt(rising, 9).toFixed(2)).toBe('26946.90');
  });

  test('fin-3: IRR 27.7 %, to the digits printed', () => {
    expect(plain.value(ratesOf(rising).ratePercent)?.toFixed(1)).toBe('27.7');
  });

  test('fin-4: −350, 950, −620 has two rates, 9.180 % and 62.249 %, and none is put forward', () => {
    const rates = ratesOf([-350, 950, -620]);
    expect(rates.kind).toBe('several');
    expect(plain.value(rates.ratePercent)).toBeNull();
    expect(rates.allPercent.map((rate) => rate.toFixed(3))).toEqual(['9.180', '62.249']);
  });
});

test('fin-5: discount factors at 3.5 %, the Green Book’s rate, in years 1, 5 and 10: half a unit of the fourth decimal', () => {
  const factors = timeFactors(plain, { ...accounting, discountRatePercent: 3.5, appraisalYears: 10 });
  const at = (year: number): number =>
    plain.value((factors[year] as (typeof factors)[number]).discount).toNumber();
  expect(Math.abs(at(1) - 0.9662)).toBeLessThan(0.00005);
  expect(Math.abs(at(5) - 0.842)).toBeLessThan(0.00005);
  expect(Math.abs(at(10) - 0.7089)).toBeLessThan(0.00005);
});
