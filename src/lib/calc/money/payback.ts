/** When an investment has paid for itself. */
import { formula } from '../working/formula.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import type { Decimal } from './decimal.ts';
import { byYear } from './no-figure.ts';

export interface Payback {
  /** Years from the decision; null where the sum does not turn within the appraisal. */
  readonly years: Quantity<number | null>;
  /** True where the sum falls below 0 again later, as when machines are replaced. */
  readonly fallsBelowAgain: boolean;
}

export const timeOfTurn = formula<{ before: number; after: number; sumBefore: Decimal; sumAfter: Decimal }>({
  id: 'money.time-of-turn',
  yields: 'Payback',
  words: 'The year’s flow is taken to come in evenly: where between two year ends the sum reaches 0.',
  expression: 't_0 + (t_1 - t_0) * K_0 / (K_0 - K_1)',
  inputs: {
    before: { symbol: 't_0', unit: 'year', words: 'last year end with the sum below 0' },
    after: { symbol: 't_1', unit: 'year', words: 'first year end with the sum at 0 or above' },
    sumBefore: {
      symbol: 'K_0',
      unit: 'currency',
      words: 'cumulative cash flow at the former',
      testRange: [-10, -0.1]
    },
    sumAfter: { symbol: 'K_1', unit: 'currency', words: 'cumulative cash flow at the latter' }
  },
  unit: 'year',
  source: 'OpenStax, Principles of Finance (2022), chapter 16: payback',
  compute: ({ before, after, sumBefore, sumAfter }) =>
    sumBefore
      .div(sumBefore.minus(sumAfter))
      .times(after - before)
      .plus(before)
      .toNumber()
});

/**
 * The payback of a cumulative cash flow (discounted or not), years 0 … T.
 *
 * It is the first time after the sum has been below 0 at which it reaches 0, interpolated within the year; 0 where the
 * sum is never below 0 (nothing is at stake); null where it does not turn by year T. A sum that turns and later falls
 * below 0 again is flagged.
 */
export function payback(r: Reckoner, cumulative: readonly Quantity<Decimal>[]): Payback {
  const below = cumulative.map((sum) => r.value(sum)).map((sum) => sum.isNegative() && !sum.isZero());
  const fall = below.indexOf(true);
  const turn = fall < 0 ? -1 : below.indexOf(false, fall);
  if (turn < 0) return { years: withoutTurn(r, cumulative, fall < 0 ? 0 : null), fallsBelowAgain: false };
  return {
    years: r.apply(timeOfTurn, {
      before: r.assumption(turn - 1, 'year', `Year ${turn - 1}, the last with the sum below 0.`),
      after: r.assumption(turn, 'year', `Year ${turn}, the first with the sum at 0 or above.`),
      sumBefore: cumulative[turn - 1] as Quantity<Decimal>,
      sumAfter: cumulative[turn] as Quantity<Decimal>
    }),
    fallsBelowAgain: below.indexOf(true, turn) >= 0
  };
}

function withoutTurn(
  r: Reckoner,
  cumulative: readonly Quantity<Decimal>[],
  years: 0 | null
): Quantity<number | null> {
  return r.result<number | null>(years, byYear(cumulative), () => ({
    id: 'money.payback-without-turn',
    yields: 'Payback',
    words:
      years === 0
        ? 'The cumulative cash flow is never below 0: there is nothing to be paid back.'
        : 'The cumulative cash flow does not come back to 0 within the appraisal: there is no payback.',
    unit: 'year',
    source: 'definition',
    report: []
  }));
}

/**
 * The cumulative cash flow at any time within the appraisal, interpolated within the year: 0 exactly at a payback, and
 * so what is solved for when a payback is asked for. Beyond the appraisal the last year end stands.
 */
export function cumulativeAt(cumulative: readonly Decimal[], years: number): Decimal {
  const last = cumulative.length - 1;
  const before = Math.min(Math.max(Math.floor(years), 0), last);
  const from = cumulative[before];
  if (from === undefined) throw new RangeError('A cash flow needs at least one year.');
  const to = cumulative[Math.min(before + 1, last)] as Decimal;
  return from.plus(to.minus(from).times(Math.min(Math.max(years - before, 0), 1)));
}
