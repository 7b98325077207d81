/** What each unit of money invested brings back. */
import { formula } from '../working/formula.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import type { CashFlow } from './cash-flow.ts';
import { Decimal } from './decimal.ts';
import type { YearFactors } from './time-factors.ts';

export const ratioOfSavingsToInvestment = formula<
  { savings: readonly Decimal[]; investments: readonly Decimal[]; discounts: readonly Decimal[] },
  number | null
>({
  id: 'money.benefit-cost-ratio',
  yields: 'Benefit-cost ratio',
  words:
    'The discounted savings of all years over the discounted investments of all years; there is none where nothing is invested on balance.',
  // Null where nothing is invested has no written form.
  expression: null,
  inputs: {
    savings: { symbol: 's', unit: 'currency', words: 'savings, year by year' },
    investments: { symbol: 'I', unit: 'currency', words: 'investments, year by year' },
    discounts: { symbol: 'd', unit: '1', words: 'discount factors, year by year' }
  },
  unit: '1',
  source: 'HM Treasury, The Green Book (benefit-cost ratio); definition',
  compute: ({ savings, investments, discounts }) => {
    const invested = presentValue(investments, discounts);
    return invested.gt(0) ? presentValue(savings, discounts).div(invested).toNumber() : null;
  }
});

const presentValue = (flows: readonly Decimal[], discounts: readonly Decimal[]): Decimal =>
  flows.reduce((sum, flow, year) => sum.plus(flow.times(discounts[year] as Decimal)), new Decimal(0));

/** BCR = Σ s_t d_t / Σ I_t d_t; null where the discounted investment is not above 0. Above 1 is NPV above 0. */
export function benefitCostRatio(
  r: Reckoner,
  { flow, factors }: { flow: CashFlow; factors: readonly YearFactors[] }
): Quantity<number | null> {
  return r.apply(ratioOfSavingsToInvestment, {
    savings: flow.years.map(({ saving }) => saving),
    investments: flow.years.map(({ investment }) => investment),
    discounts: factors.map(({ discount }) => discount)
  });
}
