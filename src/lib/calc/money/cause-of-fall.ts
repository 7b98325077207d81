/** Why a cumulative cash flow that stood at 0 or above fell below it again. */
import type { FallCause } from '../estimate-types.ts';
import { Decimal } from './decimal.ts';
import type { OutlayKind } from './investment.ts';

/** What the outlays of a kind count as; null: they bring money in. */
const causeOf: Readonly<Record<OutlayKind, FallCause | null>> = {
  purchase: 'later-purchase',
  installation: 'later-purchase',
  oneOff: 'later-purchase',
  monitors: 'later-purchase',
  replacement: 'replacement',
  payments: 'payment',
  tradeIn: null,
  avoided: null,
  residual: null
};

/** A year beyond today's practice. */
export interface FallingYear {
  /** What comes in evenly over the year; below 0 it costs. */
  readonly evenly: Decimal;
  /** What falls at the year's end, by kind, beyond today's practice. */
  readonly outlays: Readonly<Record<OutlayKind, Decimal>>;
}

/**
 * What took most off the sum between two times, in years: its yearly cost, or the outlays of a kind.
 *
 * A year's yearly cost counts by the part of the year that lies between the two; an outlay counts where the end of its
 * year lies after the first and not after the second.
 */
export function causeOfFall(
  years: readonly FallingYear[],
  { fromYears, untilYears }: { fromYears: number; untilYears: number }
): FallCause {
  const taken = new Map<FallCause, Decimal>();
  const take = (cause: FallCause, amount: Decimal): void => {
    if (amount.gt(0)) taken.set(cause, (taken.get(cause) ?? new Decimal(0)).plus(amount));
  };
  years.forEach(({ evenly, outlays }, year) => {
    const part = Math.min(untilYears, year) - Math.max(fromYears, year - 1);
    if (part > 0) take('yearly-cost', evenly.times(-part));
    if (year > fromYears && year <= untilYears)
      for (const [kind, amount] of Object.entries(outlays) as [OutlayKind, Decimal][]) {
        const cause = causeOf[kind];
        if (cause !== null) take(cause, amount);
      }
  });
  let [cause, most]: [FallCause, Decimal] = ['yearly-cost', new Decimal(0)];
  for (const [each, amount] of taken) if (amount.gt(most)) [cause, most] = [each, amount];
  return cause;
}
