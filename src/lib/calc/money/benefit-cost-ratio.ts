/** What each unit of money invested brings back. */
import { formula } from '../working/formula.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import type { CashFlow } from './cash-flow.ts';
import type { Decimal } from './decimal.ts';
import { noFigure } from './no-figure.ts';
import { presentValue } from './present-value.ts';
import type { YearFactors } from './time-factors.ts';

export const ratioOfSavingsToInvestment = formula<{ savings: Decimal; investments: Decimal }>({
  id: 'money.benefit-cost-ratio',
  yields: 'Benefit-cost ratio',
  words: 'The discounted savings of all years over the discounted investments of all years.',
  expression: 's / I',
  inputs: {
    savings: { symbol: 's', unit: 'currency', words: 'discounted savings' },
    investments: { symbol: 'I', unit: 'currency', words: 'discounted investments' }
  },
  unit: '1',
  source: 'HM Treasury, The Green Book (benefit-cost ratio); definition',
  compute: ({ savings, investments }) => savings.div(investments).toNumber()
});

/** BCR = Σ s_t d_t / Σ I_t d_t; null where the discounted investment is not above 0. Above 1 is NPV above 0. */
export function benefitCostRatio(
  r: Reckoner,
  { flow, factors }: { flow: CashFlow; factors: readonly YearFactors[] }
): Quantity<number | null> {
  const savings = presentValue(r, { flows: flow.years.map(({ saving }) => saving), factors });
  const investments = presentValue(r, { flows: flow.years.map(({ investment }) => investment), factors });
  if (r.value(investments).gt(0)) return r.apply(ratioOfSavingsToInvestment, { savings, investments });
  return noFigure(
    r,
    {
      id: 'money.no-benefit-cost-ratio',
      yields: 'Benefit-cost ratio',
      words: 'Nothing is invested on balance, so there is no ratio to it.',
      unit: '1'
    },
    { investments }
  );
}
