/** Machines that are paid for as they are used: lease, rental and managed service, as outlays by year. */
import type { Payment } from '../input.ts';
import { formula } from '../working/formula.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import { Decimal, amount } from './decimal.ts';
import { MoneyInputError } from './money-input-error.ts';
import { sumOfAmounts } from './sum-of-amounts.ts';

/** How units are paid for that are not bought. */
export type PaymentTerms = Pick<
  Payment,
  'perUnitPerYear' | 'growthPercent' | 'inAdvance' | 'termYears' | 'atEnd' | 'endPricePerUnit'
>;

/** What is paid in one year, year 0 being the day of the decision. */
export interface PaidInYear {
  readonly year: number;
  readonly payments: Quantity<Decimal>;
  /** For machines bought at the end of the term. */
  readonly endPrice: Quantity<Decimal>;
}

export interface PaymentPlan {
  /** Year 0 first, up to the end of the appraisal. */
  readonly years: readonly PaidInYear[];
  /**
   * The year at whose end the machines go back, so that the theatres need others from then on; null where they stay to
   * the end of the appraisal.
   */
  readonly returnedAtEndOfYear: number | null;
}

export const paymentOfYear = formula<
  { units: number; perUnit: Decimal; growthPercent: number; yearsOn: number },
  Decimal
>({
  id: 'money.payment-of-year',
  yields: 'Payments for machines in this year',
  words: 'Units, times the payment for one, which grows from the first payment on.',
  expression: 'n * p * (1 + g / 100)^k',
  inputs: {
    units: { symbol: 'n', unit: '1', words: 'units' },
    perUnit: { symbol: 'p', unit: 'currency', words: 'first payment of a year for one unit' },
    growthPercent: { symbol: 'g', unit: '%', words: 'growth of the payment per year' },
    yearsOn: { symbol: 'k', unit: '1', words: 'years since the first payment' }
  },
  unit: 'currency',
  source: 'definition',
  compute: ({ units, perUnit, growthPercent, yearsOn }) =>
    perUnit.times(units).times(new Decimal(growthPercent).div(100).plus(1).pow(yearsOn))
});

export const endPriceOfUnits = formula<{ units: number; endPrice: Decimal }, Decimal>({
  id: 'money.end-price-of-units',
  yields: 'Price of machines at the end of their term',
  words: 'Units, times the price of one at the end of the term.',
  expression: 'n * p',
  inputs: {
    units: { symbol: 'n', unit: '1', words: 'units' },
    endPrice: { symbol: 'p', unit: 'currency', words: 'price of one at the end of the term' }
  },
  unit: 'currency',
  source: 'definition',
  compute: ({ units, endPrice }) => endPrice.times(units)
});

/**
 * What units cost that are paid for from the end of `startYear` on, within the years 0 … `horizonYears`.
 *
 * - Payment k (0 … term − 1) is units · perUnitPerYear · (1 + g)^k. It serves the year startYear + k + 1, and falls at
 *   that year's start (in advance: year startYear + k) or at its end (year startYear + k + 1).
 * - After the term: `return`, nothing more; `buy`, the end price at the end of the term; `renew`, payments go on, growing
 *   on.
 * - What falls at the end of the appraisal or later and serves no year of it is left out: a payment in advance, or a
 *   machine bought there.
 *
 * @param path of the cells of the terms, e.g. `['scenarios', 'closed', 'moves', '0', 'payment']`
 * @throws MoneyInputError where the term is not of 1 or more whole years, or the growth not above −100 %.
 */
export function paymentPlan(
  r: Reckoner,
  {
    units,
    terms,
    path,
    startYear,
    horizonYears
  }: {
    units: Quantity;
    terms: PaymentTerms;
    path: readonly string[];
    startYear: number;
    horizonYears: number;
  }
): PaymentPlan {
  const { termYears, growthPercent, inAdvance, atEnd } = terms;
  if (!Number.isInteger(termYears) || termYears < 1)
    throw new MoneyInputError(
      [...path, 'termYears'].join('.'),
      `A term of ${termYears} years: 1 or more whole years are needed.`
    );
  if (!(growthPercent > -100))
    throw new MoneyInputError(
      [...path, 'growthPercent'].join('.'),
      `A growth of ${growthPercent} % a year: more than −100 % is needed.`
    );
  const perUnit = r.cell(amount(terms.perUnitPerYear), 'currency', ...path, 'perUnitPerYear');
  const growth = r.cell(growthPercent, '%', ...path, 'growthPercent');
  const endOfTerm = startYear + termYears;
  const endsWithin = endOfTerm < horizonYears;
  const lastServed = atEnd === 'renew' ? horizonYears : Math.min(endOfTerm, horizonYears);
  const nothing = r.assumption(new Decimal(0), 'currency', 'Nothing of this kind falls in this year.');

  const years = Array.from({ length: horizonYears + 1 }, (_, year): PaidInYear => {
    const served = inAdvance ? year + 1 : year;
    const isPaid = served > startYear && served <= lastServed;
    const isBought = atEnd === 'buy' && endsWithin && year === endOfTerm;
    return {
      year,
      payments: isPaid
        ? r.apply(paymentOfYear, {
            units,
            perUnit,
            growthPercent: growth,
            yearsOn: r.assumption(
              served - startYear - 1,
              '1',
              `Payment ${served - startYear} since the machines came, for year ${served}, ${inAdvance ? 'at its start' : 'at its end'}.`
            )
          })
        : nothing,
      endPrice: isBought
        ? r.apply(endPriceOfUnits, {
            units,
            endPrice: r.cell(amount(terms.endPricePerUnit), 'currency', ...path, 'endPricePerUnit')
          })
        : nothing
    };
  });
  return { years, returnedAtEndOfYear: atEnd === 'return' && endsWithin ? endOfTerm : null };
}

/** All that a plan costs in each year. */
export const flowsOfPlan = (r: Reckoner, { years }: PaymentPlan): Quantity<Decimal>[] =>
  years.map(({ payments, endPrice }) => r.apply(sumOfAmounts, { amounts: [payments, endPrice] }));
