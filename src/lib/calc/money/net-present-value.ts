/** What all flows together are worth on the day of the decision. */
import { formula } from '../working/formula.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import type { Decimal } from './decimal.ts';
import { addUp } from './sum-of-amounts.ts';

export const netPresentValueFormula = formula<{ discounted: readonly Decimal[] }, Decimal>({
  id: 'money.net-present-value',
  yields: 'Net present value',
  words: 'The discounted cash flows of all years added up, that of year 0 in full.',
  expression: 'sum(D)',
  inputs: { discounted: { symbol: 'D', unit: 'currency', words: 'discounted cash flows, year by year' } },
  unit: 'currency',
  source: 'OpenStax, Principles of Finance (2022), chapter 16: net present value',
  compute: ({ discounted }) => addUp(discounted)
});

/** NPV = Σ C_t / (1 + i)^t over the years 0 … T, from the discounted flows. */
export function netPresentValue(r: Reckoner, discounted: readonly Quantity<Decimal>[]): Quantity<Decimal> {
  return r.apply(netPresentValueFormula, { discounted });
}
