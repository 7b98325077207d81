import { formula } from '../working/formula.ts';
import { Decimal } from './decimal.ts';

const zero = new Decimal(0);

/** Adds up; nothing is 0. */
export function addUp(amounts: readonly Decimal[]): Decimal {
  let sum = zero;
  // Many lines of a ledger are 0, and an addition is dear.
  for (const next of amounts) if (!next.isZero()) sum = sum === zero ? next : sum.plus(next);
  return sum;
}

/** What is left; where nothing is taken off, the amount as it is, which gives the same digits sooner. */
export const less = (amount: Decimal, off: Decimal): Decimal => (off.isZero() ? amount : amount.minus(off));

/** The sum of any number of amounts under a name of its own; of none, 0. */
export const sumCalled = (id: string, yields: string) =>
  formula<{ amounts: readonly Decimal[] }, Decimal>({
    id,
    yields,
    words: 'All amounts added up.',
    expression: 'sum(a)',
    inputs: { amounts: { symbol: 'a', unit: 'currency', words: 'the amounts' } },
    unit: 'currency',
    source: 'definition',
    compute: ({ amounts }) => addUp(amounts)
  });

export const sumOfAmounts = sumCalled('money.sum-of-amounts', 'Sum');
