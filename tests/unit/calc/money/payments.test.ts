import { describe, expect, test } from 'vitest';
import { text } from '#lib/calc/money/decimal.ts';
import { partsOfFee } from '#lib/calc/money/managed-service.ts';
import { MoneyInputError } from '#lib/calc/money/money-input-error.ts';
import type { PaymentTerms } from '#lib/calc/money/payments.ts';
import { flowsOfPlan, paymentPlan } from '#lib/calc/money/payments.ts';
import { plain } from '#lib/calc/working/plain.ts';
import { moneyOf, textsOf } from './business-case.ts';

const terms: PaymentTerms = {
  perUnitPerYear: '1000',
  growthPercent: 0,
  inAdvance: true,
  termYears: 3,
  atEnd: 'return',
  endPricePerUnit: '0'
};
const planOf = (
  change: Partial<PaymentTerms>,
  {
    startYear = 0,
    horizonYears = 6,
    units = 2
  }: { startYear?: number; horizonYears?: number; units?: number } = {}
) =>
  paymentPlan(plain, {
    units: plain.cell(units, '1', 'given', 'units'),
    terms: { ...terms, ...change },
    path: ['scenarios', 'lease', 'moves', '0', 'payment'],
    startYear,
    horizonYears
  });
const flows = (...given: Parameters<typeof planOf>): string[] =>
  flowsOfPlan(plain, planOf(...given)).map((flow) => text(plain.value(flow)));

describe('payments for two machines, 1 000 a year each', () => {
  test.each([
    ['in advance fall at the start of each year of the term', {}, {}, [2000, 2000, 2000, 0, 0, 0, 0]],
    ['in arrears at its end', { inAdvance: false }, {}, [0, 2000, 2000, 2000, 0, 0, 0]],
    ['begin when the machines come', { inAdvance: false }, { startYear: 2 }, [0, 0, 0, 2000, 2000, 2000, 0]],
    ['grow from the second on', { growthPercent: 10 }, {}, [2000, 2200, 2420, 0, 0, 0, 0]],
    [
      'go on, and grow on, where the term is renewed',
      { growthPercent: 10, atEnd: 'renew' },
      { horizonYears: 5 },
      [2000, 2200, 2420, 2662, 2928.2, 0]
    ],
    [
      'renewed in arrears are paid to the end of the appraisal',
      { inAdvance: false, atEnd: 'renew' },
      { horizonYears: 4 },
      [0, 2000, 2000, 2000, 2000]
    ],
    [
      'end with the price at which the machines are bought',
      { atEnd: 'buy', endPricePerUnit: '750' },
      {},
      [2000, 2000, 2000, 1500, 0, 0, 0]
    ],
    [
      'in arrears end with both',
      { inAdvance: false, atEnd: 'buy', endPricePerUnit: '750' },
      {},
      [0, 2000, 2000, 3500, 0, 0, 0]
    ],
    [
      'leave out a purchase at the end of the appraisal',
      { atEnd: 'buy', endPricePerUnit: '750' },
      { horizonYears: 3 },
      [2000, 2000, 2000, 0]
    ],
    [
      'leave out what serves no year of the appraisal',
      { termYears: 9 },
      { startYear: 1, horizonYears: 3 },
      [0, 2000, 2000, 0]
    ]
  ] as const)('%s', (_, change, place, wanted) => {
    expect(flows(change, place).map(Number)).toEqual(wanted);
  });

  test('the machines go back at the end of the term, unless they stay or the appraisal ends first', () => {
    expect(planOf({}, { startYear: 1 }).returnedAtEndOfYear).toBe(4);
    expect(planOf({}, { horizonYears: 3 }).returnedAtEndOfYear).toBeNull();
    expect(planOf({ atEnd: 'renew' }).returnedAtEndOfYear).toBeNull();
    expect(planOf({ atEnd: 'buy' }).returnedAtEndOfYear).toBeNull();
  });

  test('no units, no payments', () => {
    expect(
      flows({ atEnd: 'buy', endPricePerUnit: '750' }, { units: 0 }).every((flow) => Number(flow) === 0)
    ).toBe(true);
  });

  test.each([
    [{ termYears: 0 }, 'scenarios.lease.moves.0.payment.termYears', 'A term of 0 years'],
    [{ termYears: 2.5 }, 'scenarios.lease.moves.0.payment.termYears', 'A term of 2.5 years'],
    [{ growthPercent: -100 }, 'scenarios.lease.moves.0.payment.growthPercent', 'A growth of -100 %']
  ] as const)('%j is refused at its cell', (change, path, sentence) => {
    const refused = (): MoneyInputError => {
      try {
        planOf(change);
      } catch (error) {
        if (error instanceof MoneyInputError) return error;
      }
      throw new Error('It was not refused.');
    };
    expect(refused().path).toBe(path);
    expect(refused().message).toContain(sentence);
  });
});

test('the parts of a fee add up to it, and what is left for the machine may be below 0', () => {
  const [firstFee, fee] = planOf({ perUnitPerYear: '9000', growthPercent: 2 }).years.map(
    ({ payments }) => payments
  ) as [ReturnType<typeof moneyOf>, ReturnType<typeof moneyOf>];
  const parts = partsOfFee(plain, {
    fee,
    firstFee,
    service: moneyOf('3600'),
    consumables: moneyOf('2150.5')
  });
  expect(textsOf(Object.values(parts))).toEqual(['12249.5', '3600', '2150.5', '360']);
  expect(textsOf([fee])).toEqual(['18360']);
  const dear = partsOfFee(plain, { fee, firstFee, service: moneyOf('17000'), consumables: moneyOf('2000') });
  expect(textsOf([dear.machine])).toEqual(['-1000']);
});
