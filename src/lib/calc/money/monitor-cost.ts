/** What the monitors cost that a scenario needs and the theatres lack. */
import { formula } from '../working/formula.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import { Decimal, amount } from './decimal.ts';
import { sumOfAmounts } from './sum-of-amounts.ts';

export const costOfMonitor = formula<{ theatres: number; unitPrice: Decimal }, Decimal>({
  id: 'money.cost-of-monitor',
  yields: 'Cost of a monitor that is missing',
  words: 'Theatres without it, times the price of one.',
  expression: 'n * p',
  inputs: {
    theatres: { symbol: 'n', unit: '1', words: 'theatres without it' },
    unitPrice: { symbol: 'p', unit: 'currency', words: 'price of one' }
  },
  unit: 'currency',
  source: 'definition',
  compute: ({ theatres, unitPrice }) => unitPrice.times(theatres)
});

/** A required monitor with the theatres that lack it, under the scenario and under today's practice. */
export interface MissingMonitor {
  readonly item: string;
  readonly theatresMissing: number;
  readonly missingToday: number;
  readonly unitPrice: string;
}

/**
 * Cost of the monitors that a scenario makes necessary: for each item the theatres that lack it beyond those that lack
 * it today already, times its price. What is owed today is owed whatever is decided, so it counts for no scenario, and a
 * machine that brings a missing monitor with it is not credited for that.
 */
export function monitorCost(r: Reckoner, missing: readonly MissingMonitor[]): Quantity<Decimal> {
  return r.apply(sumOfAmounts, {
    amounts: missing.map(({ item, theatresMissing, missingToday, unitPrice }) =>
      r.apply(costOfMonitor, {
        theatres: r.assumption(
          Math.max(0, theatresMissing - missingToday),
          '1',
          `Theatres that need ${item} under this scenario (${theatresMissing} lack it) beyond those that need it today already (${missingToday} lack it).`
        ),
        unitPrice: r.cell(amount(unitPrice), 'currency', 'monitors', item, 'unitPrice')
      })
    )
  });
}
