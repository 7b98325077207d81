/** Amounts over several years, turned into the same amount for each year. */
import { formula } from '../working/formula.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import type { Decimal } from './decimal.ts';
import { addUp } from './sum-of-amounts.ts';
import type { YearFactors } from './time-factors.ts';

export const annuityFactorFormula = formula<{ discounts: readonly Decimal[] }, Decimal>({
  id: 'money.annuity-factor',
  yields: 'Annuity factor',
  words:
    'What one unit of money a year is worth on the day of the decision: the discount factors of all years from 1 on.',
  expression: 'sum(d)',
  inputs: { discounts: { symbol: 'd', unit: '1', words: 'discount factors of the years 1 to the last' } },
  unit: '1',
  source: 'definition',
  compute: ({ discounts }) => addUp(discounts)
});

export const annuityFormula = formula<{ presentValue: Decimal; annuityFactor: Decimal }, Decimal>({
  id: 'money.annuity',
  yields: 'The same each year',
  words: 'The present value over the annuity factor: the yearly amount that is worth as much.',
  expression: 'N / A',
  inputs: {
    presentValue: { symbol: 'N', unit: 'currency', words: 'present value' },
    annuityFactor: { symbol: 'A', unit: '1', words: 'annuity factor' }
  },
  unit: 'currency',
  source: 'definition',
  compute: ({ presentValue, annuityFactor }) => presentValue.div(annuityFactor)
});

/**
 * Annuity factor Σ_{t=1}^{T} (1 + i)^−t, which is (1 − (1 + i)^−T) / i for i ≠ 0 and T for i = 0.
 * @throws RangeError where the appraisal has no year after year 0.
 */
export function annuityFactor(
  r: Reckoner,
  factors: readonly Pick<YearFactors, 'discount'>[]
): Quantity<Decimal> {
  if (factors.length < 2) throw new RangeError('An annuity needs an appraisal of at least one year.');
  return r.apply(annuityFactorFormula, { discounts: factors.slice(1).map(({ discount }) => discount) });
}

/** The amount paid at the end of each year 1 … T that is worth the present value. */
export function annuity(
  r: Reckoner,
  {
    presentValue,
    factors
  }: { presentValue: Quantity<Decimal>; factors: readonly Pick<YearFactors, 'discount'>[] }
): Quantity<Decimal> {
  return r.apply(annuityFormula, { presentValue, annuityFactor: annuityFactor(r, factors) });
}
