/**
 * Money against worked examples from outside: OpenStax, Principles of Finance (2022), chapter 16 (payback, net present
 * value, internal rate of return, discounted payback), the discount factors of the rate in HM Treasury's Green
 * Book, lease or buy and unequal lives from a printed examination workbook (work not identified, recomputed), and a lease
 * liability of HMRC's Business Leasing Manual.
 */
import { describe, expect, test } from 'vitest';
import { Decimal } from '#lib/calc/money/decimal.ts';
import { compareOverEqualService } from '#lib/calc/money/equal-service.ts';
import { internalRates } from '#lib/calc/money/internal-rate.ts';
import { netPresentValue } from '#lib/calc/money/net-present-value.ts';
import { payback } from '#lib/calc/money/payback.ts';
import { flowsOfPlan, paymentPlan } from '#lib/calc/money/payments.ts';
import { presentValue } from '#lib/calc/money/present-value.ts';
import { discountFactors, timeFactors } from '#lib/calc/money/time-factors.ts';
import { plain } from '#lib/calc/working/plain.ts';
import { accounting, moneyOf, sumsOf } from '../unit/calc/money/business-case.ts';

const npvAt = (flows: number[], ratePercent: number): Decimal =>
  plain.value(netPresentValue(plain, sumsOf(plain, { flows, ratePercent }).discounted));
const ratesOf = (flows: number[]) => internalRates(plain, sumsOf(plain, { flows, ratePercent: 0 }).flows);

describe('OpenStax, Principles of Finance, chapter 16', () => {
  const machine = [-16000, 2000, 4000, 5000, 5000, 5000];
  const longer = [-16000, 2000, 4000, 5000, 5000, 5000, 5000];
  const rising = [-30000, ...Array.from({ length: 7 }, (_, k) => 6000 + 2000 * k)];

  test('fin-1: simple payback is 4.0 years, exactly', () => {
    expect(plain.value(payback(plain, sumsOf(plain, { flows: machine, ratePercent: 0 }).forPayback))).toBe(4);
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

describe('lease or buy', () => {
  const at = (ratePercent: number) => plain.cell(ratePercent, '%', 'given', 'rate');
  const pv = (flows: readonly number[], ratePercent: number): number =>
    plain
      .value(
        presentValue(plain, {
          flows: flows.map(moneyOf),
          factors: discountFactors(plain, { ratePercent: at(ratePercent), years: flows.length - 1 })
        })
      )
      .toNumber();
  const lease = (perUnitPerYear: string, termYears: number, inAdvance: boolean) =>
    flowsOfPlan(
      plain,
      paymentPlan(plain, {
        units: plain.cell(1, '1', 'given', 'units'),
        terms: {
          perUnitPerYear,
          growthPercent: 0,
          inAdvance,
          termYears,
          atEnd: 'return',
          endPricePerUnit: '0'
        },
        path: ['given'],
        startYear: 0,
        horizonYears: termYears
      })
    ).map((flow) => plain.value(flow).toNumber());
  const bought = [28_000, ...Array.from({ length: 9 }, () => 0), -3000];

  test('lease-1: buying 26 842, leasing 25 684, relief 7 429, leasing better by 8 587: 2 of money, as factors were cut to three places', () => {
    const [buying, leasing] = [pv(bought, 10), pv(lease('3800', 10, true), 10)];
    // Relief of 35 % comes a year after the year that it is for.
    const relief = pv([0, 0, ...Array.from({ length: 10 }, () => 0.35 * 3800)], 10);
    expect(Math.abs(buying - 26_842)).toBeLessThanOrEqual(2);
    expect(Math.abs(leasing - 25_684)).toBeLessThanOrEqual(2);
    expect(Math.abs(relief - 7429)).toBeLessThanOrEqual(2);
    expect(Math.abs(buying - (leasing - relief) - 8587)).toBeLessThanOrEqual(2);
  });

  test('lease-2: without tax leasing is better by 1 159: 1 of money', () => {
    expect(Math.abs(pv(bought, 10) - pv(lease('3800', 10, true), 10) - 1159)).toBeLessThanOrEqual(1);
  });

  test('eac-1: 179.63 and 168.42 a year over 2 and 3 years at 11 %: 0.02, as the printed ones were cut', () => {
    const [first, second] = compareOverEqualService(plain, {
      ways: [
        { id: 'two years', flows: [85, 130, 130].map(moneyOf) },
        { id: 'three years', flows: [155, 105, 105, 105].map(moneyOf) }
      ],
      ratePercent: at(11)
    }).map(({ equivalentAnnualCost }) => plain.value(equivalentAnnualCost).toNumber());
    expect(Math.abs((first ?? NaN) - 179.63)).toBeLessThanOrEqual(0.02);
    expect(Math.abs((second ?? NaN) - 168.42)).toBeLessThanOrEqual(0.02);
  });

  test('lease-3: HMRC Business Leasing Manual BLM18010, liability 710 782 and interest 35 539, 32 316, 28 932: 1 of money', () => {
    // Payments of 100 000 at each year's end; what is still owed is what is left of them, discounted.
    const owed = [9, 8, 7].map((left) => pv(lease('100000', left, false), 5));
    expect(Math.abs((owed[0] ?? NaN) - 710_782)).toBeLessThanOrEqual(1);
    expect(Math.abs((owed[0] ?? NaN) + 100_000 + 9998 + 20_000 - 840_780)).toBeLessThanOrEqual(1);
    [35_539, 32_316, 28_932].forEach((interest, year) =>
      expect(Math.abs(0.05 * (owed[year] ?? NaN) - interest)).toBeLessThanOrEqual(1)
    );
  });

  test('fin-6: discount factors of years 1, 5, 10 at 1.5 to 5 %: half a unit of the fourth decimal', () => {
    for (const [rate, ...printed] of [
      [1.5, 0.9852, 0.9283, 0.8617],
      [2.5, 0.9756, 0.8839, 0.7812],
      [3, 0.9709, 0.8626, 0.7441],
      [4, 0.9615, 0.8219, 0.6756],
      [5, 0.9524, 0.7835, 0.6139]
    ] as const)
      printed.forEach((factor, index) => {
        const year = [1, 5, 10][index] ?? NaN;
        const flows = Array.from({ length: year + 1 }, (_, at) => (at === year ? 1 : 0));
        expect(Math.abs(pv(flows, rate) - factor)).toBeLessThanOrEqual(0.00005);
      });
  });
});
