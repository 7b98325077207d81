import { formula } from '../working/formula.ts';
import { Decimal } from './decimal.ts';

/** Adds up; nothing is 0. */
export const addUp = (amounts: readonly Decimal[]): Decimal =>
  amounts.reduce((sum, next) => sum.plus(next), new Decimal(0));

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
