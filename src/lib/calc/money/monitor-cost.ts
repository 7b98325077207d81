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

export const beyondThoseOfToday = formula<{ scenario: number; today: number }>({
  id: 'money.theatres-beyond-today',
  yields: 'Theatres that lack it because of the scenario',
  words:
    'Theatres that lack it under the scenario less those that need and lack it today already; never below 0.',
  expression: 'max(0, s - b)',
  inputs: {
    scenario: { symbol: 's', unit: '1', words: 'theatres that lack it under the scenario' },
    today: { symbol: 'b', unit: '1', words: 'theatres that need and lack it today' }
  },
  unit: '1',
  source: 'definition',
  compute: ({ scenario, today }) => Math.max(0, scenario - today)
});

/** A required monitor with the theatres that lack it, under the scenario and under today's practice. */
export interface MissingMonitor {
  readonly item: string;
  readonly theatresMissing: Quantity;
  /** null: today's practice does not require it. */
  readonly missingToday: Quantity | null;
  readonly unitPrice: string;
}

/** What it costs to give a monitor to theatres that lack it. */
export function costOfGap(
  r: Reckoner,
  { item, theatres, unitPrice }: { item: string; theatres: Quantity; unitPrice: string }
): Quantity<Decimal> {
  return r.apply(costOfMonitor, {
    theatres,
    unitPrice: r.cell(amount(unitPrice), 'currency', 'monitors', item, 'unitPrice')
  });
}

/**
 * Cost of the monitors that a scenario makes necessary: for each item the theatres that lack it beyond those that lack
 * it today already, times its price. What is owed today is owed whatever is decided, so it counts for no scenario, and a
 * machine that brings a missing monitor with it is not credited for that.
 */
export function monitorCost(r: Reckoner, missing: readonly MissingMonitor[]): Quantity<Decimal> {
  const notToday = r.assumption(0, '1', 'Today’s practice does not require it, or lacks it in no theatre.');
  return r.apply(sumOfAmounts, {
    amounts: missing.map(({ item, theatresMissing, missingToday, unitPrice }) =>
      costOfGap(r, {
        item,
        unitPrice,
        theatres: r.apply(beyondThoseOfToday, { scenario: theatresMissing, today: missingToday ?? notToday })
      })
    )
  });
}
