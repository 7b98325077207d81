/** What it costs to avoid a tonne of emissions; below 0 where money is saved as well. */
import { formula } from '../working/formula.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import { annuity, annuityFactor } from './annuity.ts';
import { Decimal } from './decimal.ts';
import { noFigure } from './no-figure.ts';
import { addUp } from './sum-of-amounts.ts';
import type { YearFactors } from './time-factors.ts';

export const weightOfYear = formula<{ share: number; discount: Decimal }, Decimal>({
  id: 'money.weight-of-year',
  yields: 'Weight of the year',
  words: 'The share of the machines in use, times the discount factor.',
  expression: 'k * d',
  inputs: {
    share: { symbol: 'k', unit: '1', words: 'share of the machines in use' },
    discount: { symbol: 'd', unit: '1', words: 'discount factor' }
  },
  unit: '1',
  source: 'definition',
  compute: ({ share, discount }) => discount.times(share)
});

export const avoidedInAverageYear = formula<{
  avoidedKg: number;
  weights: readonly Decimal[];
  annuityFactor: Decimal;
}>({
  id: 'money.avoided-in-average-year',
  yields: 'Emissions avoided in an average year',
  words:
    'What a full year avoids, by the share of the machines in use, averaged over the years with the same weights as the money.',
  expression: 'm * sum(w) / A',
  inputs: {
    avoidedKg: { symbol: 'm', unit: 'kg CO2e', words: 'emissions avoided in a full year' },
    weights: { symbol: 'w', unit: '1', words: 'share in use times discount factor, year by year' },
    annuityFactor: { symbol: 'A', unit: '1', words: 'annuity factor' }
  },
  unit: 'kg CO2e',
  source: 'definition',
  compute: ({ avoidedKg, weights, annuityFactor: factor }) =>
    addUp(weights).div(factor).times(avoidedKg).toNumber()
});

export const costPerTonneFormula = formula<{ yearlyValue: Decimal; avoidedKg: number }, Decimal>({
  id: 'money.cost-per-tonne-avoided',
  yields: 'Cost per tonne avoided',
  words:
    'The net present value as the same amount each year, over the tonnes avoided in a year, with the sign of a cost: below 0 it saves money and carbon.',
  expression: '-a / (m / 1000)',
  inputs: {
    yearlyValue: { symbol: 'a', unit: 'currency', words: 'net present value as the same amount each year' },
    avoidedKg: { symbol: 'm', unit: 'kg CO2e', words: 'emissions avoided in an average year' }
  },
  unit: 'currency/(tonne CO2e)',
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
): Quantity<Decimal | null> {
  const average = r.apply(avoidedInAverageYear, {
    avoidedKg,
    weights: factors
      .slice(1)
      .map(({ year, discount }) => r.apply(weightOfYear, { share: shareInUse[year] as Quantity, discount })),
    annuityFactor: annuityFactor(r, factors)
  });
  if (r.value(average) > 0) {
    const yearlyValue = annuity(r, { presentValue: netPresentValue, factors });
    return r.apply(costPerTonneFormula, { yearlyValue, avoidedKg: average });
  }
  return noFigure(
    r,
    {
      id: 'money.no-cost-per-tonne',
      yields: 'Cost per tonne avoided',
      words: 'No emissions are avoided, so there is no cost for a tonne of them.',
      unit: 'currency/(tonne CO2e)'
    },
    { average }
  );
}
