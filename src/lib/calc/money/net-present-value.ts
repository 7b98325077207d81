/** What all flows together are worth on the day of the decision. */
import { formula } from '../working/formula.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import type { CashFlow } from './cash-flow.ts';
import { Decimal } from './decimal.ts';

export const netPresentValueFormula = formula<{ discounted: readonly Decimal[] }, Decimal>({
  id: 'money.net-present-value',
  yields: 'Net present value',
  words: 'The discounted cash flows of all years added up, that of year 0 in full.',
  expression: 'sum(D)',
  inputs: { discounted: { symbol: 'D', unit: 'currency', words: 'discounted cash flows, year by year' } },
  unit: 'currency',
  source: 'OpenStax, Principles of Finance (2022), chapter 16: net present value',
  compute: ({ discounted }) => discounted.reduce((sum, next) => sum.plus(next), new Decimal(0))
});

/** NPV = Σ C_t / (1 + i)^t over the years 0 … T. */
export function netPresentValue(r: Reckoner, { years }: CashFlow): Quantity<Decimal> {
  return r.apply(netPresentValueFormula, { discounted: years.map(({ discounted }) => discounted) });
}
