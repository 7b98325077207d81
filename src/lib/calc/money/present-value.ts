/** What flows of several years are worth on the day of the decision. */
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import type { Decimal } from './decimal.ts';
import { sumCalled } from './sum-of-amounts.ts';
import { discountedFlows } from './sums-over-years.ts';
import type { YearFactors } from './time-factors.ts';

export const presentValueFormula = sumCalled('money.present-value', 'Present value');

/**
 * Present value Σ F_t (1 + i)^−t of the flows F_0 … F_n, year 0 in full.
 * @throws Error where a flow has no discount factor.
 */
export const presentValue = (
  r: Reckoner,
  {
    flows,
    factors
  }: { flows: readonly Quantity<Decimal>[]; factors: readonly Pick<YearFactors, 'discount'>[] }
): Quantity<Decimal> => r.apply(presentValueFormula, { amounts: discountedFlows(r, { flows, factors }) });
