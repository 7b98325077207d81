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

export const beyondThoseBefore = formula<{ now: number; before: number }>({
  id: 'money.theatres-beyond-those-before',
  yields: 'Theatres that lack it because of the scenario',
  words:
    'Theatres that lack it now less those that need and lack it today already, or have been given it since; never below 0.',
  expression: 'max(0, s - b)',
  inputs: {
    now: { symbol: 's', unit: '1', words: 'theatres that lack it under the scenario' },
    before: { symbol: 'b', unit: '1', words: 'theatres that lacked it before' }
  },
  unit: '1',
  source: 'definition',
  compute: ({ now, before }) => Math.max(0, now - before)
});

export const mostLacking = formula<{ before: number; now: number }>({
  id: 'money.most-theatres-lacking',
  yields: 'Theatres that have lacked it so far',
  words: 'The most theatres that have lacked it in any year so far.',
  expression: 'max(b, s)',
  inputs: {
    before: { symbol: 'b', unit: '1', words: 'theatres that lacked it before' },
    now: { symbol: 's', unit: '1', words: 'theatres that lack it now' }
  },
  unit: '1',
  source: 'definition',
  compute: ({ before, now }) => Math.max(before, now)
});

/** A required monitor with the theatres that lack it, from some year on and before it. */
export interface MissingMonitor {
  readonly item: string;
  readonly theatresMissing: Quantity;
  /** null: it was not required, or lacking nowhere. */
  readonly missingBefore: Quantity | null;
  readonly unitPrice: string;
}

/** What it costs to give a monitor to theatres that lack it. */
export function costOfGap(
  r: Reckoner,
  { item, theatres, unitPrice }: { item: string; theatres: Quantity; unitPrice: string }
): Quantity<Decimal> {
  return r.apply(costOfMonitor, {
    theatres,
    unitPrice: r.cell(amount(unitPrice), 'currency', 'monitorPrices', item, 'unitPrice')
  });
}

/**
 * Cost of the monitors that a scenario makes necessary from some year on: for each item the theatres that lack it beyond
 * those that lacked it before, times its price. What is owed today is owed whatever is decided, so it counts for no scenario, and a
 * machine that brings a missing monitor with it is not credited for that.
 */
export function monitorCost(r: Reckoner, missing: readonly MissingMonitor[]): Quantity<Decimal> {
  const notBefore = r.assumption(0, '1', 'It was not required before, or lacking in no theatre.');
  return r.apply(sumOfAmounts, {
    amounts: missing.map(({ item, theatresMissing, missingBefore, unitPrice }) =>
      costOfGap(r, {
        item,
        unitPrice,
        theatres: r.apply(beyondThoseBefore, { now: theatresMissing, before: missingBefore ?? notBefore })
      })
    )
  });
}
