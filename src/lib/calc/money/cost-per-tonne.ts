/** What it costs to avoid a tonne of emissions; below 0 where money is saved as well. */
import { formula } from '../working/formula.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import { annuity } from './annuity.ts';
import { Decimal } from './decimal.ts';
import type { YearFactors } from './time-factors.ts';

export const emissionsAvoidedInAverageYear = formula<
  { avoidedKg: number; shares: readonly number[]; discounts: readonly Decimal[] },
  number
>({
  id: 'money.emissions-avoided-average-year',
  yields: 'Emissions avoided in an average year',
  words:
    'What a full year avoids, times the share of the machines in use, averaged over the years with the same weights as the money.',
  expression: 'm * sum(k .* d) / sum(d)',
  inputs: {
    avoidedKg: { symbol: 'm', unit: 'kg', words: 'CO2e avoided in a full year' },
    shares: { symbol: 'k', unit: '1', words: 'share of the machines in use, year by year' },
    discounts: { symbol: 'd', unit: '1', words: 'discount factors, year by year' }
  },
  unit: 'kg',
  source: 'definition',
  compute: ({ avoidedKg, shares, discounts }) => {
    const weights = discounts.reduce((sum, next) => sum.plus(next), new Decimal(0));
    const weighted = discounts.reduce(
      (sum, next, k) => sum.plus(next.times(shares[k] as number)),
      new Decimal(0)
    );
    return weighted.div(weights).times(avoidedKg).toNumber();
  }
});

export const costPerTonneFormula = formula<{ yearlyValue: Decimal; avoidedKg: number }, Decimal>({
  id: 'money.cost-per-tonne-avoided',
  yields: 'Cost per tonne avoided',
  words:
    'The net present value as the same amount each year, over the tonnes avoided in a year, with the sign of a cost: below 0 it saves money and carbon.',
  expression: '-a / (m / 1000)',
  inputs: {
    yearlyValue: { symbol: 'a', unit: 'currency', words: 'net present value as the same amount each year' },
    avoidedKg: { symbol: 'm', unit: 'kg', words: 'CO2e avoided in an average year' }
  },
  unit: 'currency/tonne',
  source: 'definition',
  compute: ({ yearlyValue, avoidedKg }) =>
    new Decimal(0).minus(yearlyValue.div(new Decimal(avoidedKg).div(1000)))
});

/**
 * Cost per tonne avoided = −(annuity of NPV) / tonnes avoided per year; null where nothing is avoided, as the quotient
 * would then mean nothing. While machines are bought year by year, the tonnes grow with them.
 *
 * The net present value holds all lines, a shadow carbon price included where one is set: set it to 0 to compare the
 * figure with a carbon price.
 */
export function costPerTonneAvoided(
  r: Reckoner,
  {
    netPresentValue,
    avoidedKg,
    shareInUse,
    factors
  }: {
    netPresentValue: Quantity<Decimal>;
    avoidedKg: Quantity;
    shareInUse: readonly Quantity[];
    factors: readonly YearFactors[];
  }
): Quantity<Decimal> | null {
  const average = r.apply(emissionsAvoidedInAverageYear, {
    avoidedKg,
    shares: shareInUse.slice(1),
    discounts: factors.slice(1).map(({ discount }) => discount)
  });
  if (!(r.value(average) > 0)) return null;
  const yearlyValue = annuity(r, { presentValue: netPresentValue, factors });
  return r.apply(costPerTonneFormula, { yearlyValue, avoidedKg: average });
}
