/**
 * What each of several changes earns when they are made together. A change's part is what it adds to those made before
 * it, averaged over all orders in which they can be made (L. S. Shapley, A value for n-person games, in Contributions to
 * the Theory of Games II (1953), 307; from memory). The parts add up to the whole, the order in which changes are listed
 * does not matter, and a change that adds nothing to any others has the part 0.
 */
import { Decimal } from '../money/decimal.ts';
import { formula } from '../working/formula.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';

export const mostChanges = 8;

/** A set of changes to which one more is added, and in how many of all orders just these come before it. */
interface Addition {
  readonly before: number;
  readonly orders: number;
}

const source =
  'Shapley LS, A value for n-person games, Contributions to the Theory of Games II (1953), 307 (from memory)';
const words =
  'What the change adds to each set of the others, times the number of orders in which just these come before it, over the number of all orders.';

export const shareOfChange = formula<{
  orders: readonly number[];
  gains: readonly number[];
  allOrders: number;
}>({
  id: 'attribution.share-of-change',
  yields: 'What this change earns',
  words,
  expression: 'dot(k, g) / N',
  inputs: {
    orders: { symbol: 'k', unit: '1', words: 'orders in which just these come before it' },
    gains: { symbol: 'g', unit: 'kg CO2e', words: 'what the change adds to them' },
    allOrders: { symbol: 'N', unit: '1', words: 'orders in all' }
  },
  unit: 'kg CO2e',
  source,
  compute: ({ orders, gains, allOrders }) =>
    gains.reduce((sum, gain, place) => sum + gain * (orders[place] ?? 0), 0) / allOrders
});

export const amountOfChange = formula<
  { orders: readonly number[]; gains: readonly Decimal[]; allOrders: number },
  Decimal
>({
  id: 'attribution.amount-of-change',
  yields: 'What this change earns',
  words,
  expression: 'dot(k, g) / N',
  inputs: {
    orders: { symbol: 'k', unit: '1', words: 'orders in which just these come before it' },
    gains: { symbol: 'g', unit: 'currency', words: 'what the change adds to them' },
    allOrders: { symbol: 'N', unit: '1', words: 'orders in all' }
  },
  unit: 'currency',
  source,
  compute: ({ orders, gains, allOrders }) =>
    gains
      .reduce((sum, gain, place) => sum.plus(gain.times(orders[place] ?? 0)), new Decimal(0))
      .div(allOrders)
});

/**
 * The parts of n changes, exact over all 2^n sets.
 * @param gainOf the value of the set with the change, less that without it; bit k of a set is change k.
 * @param count n, from 0 to 8.
 * @throws RangeError for more changes, whose sets would be too many.
 */
export function shapleyParts(
  r: Reckoner,
  { count, gainOf }: { count: number; gainOf: (change: number, before: number) => Quantity }
): Quantity[] {
  return parts(r, count, (change, { orders, allOrders, before }) =>
    r.apply(shareOfChange, { orders, gains: before.map((set) => gainOf(change, set)), allOrders })
  );
}

/** As `shapleyParts`, of amounts of money. */
export function shapleyAmounts(
  r: Reckoner,
  { count, gainOf }: { count: number; gainOf: (change: number, before: number) => Quantity<Decimal> }
): Quantity<Decimal>[] {
  return parts(r, count, (change, { orders, allOrders, before }) =>
    r.apply(amountOfChange, { orders, gains: before.map((set) => gainOf(change, set)), allOrders })
  );
}

interface Weighed {
  readonly before: readonly number[];
  readonly orders: readonly Quantity[];
  readonly allOrders: Quantity;
}

function parts<T>(r: Reckoner, count: number, partOf: (change: number, weighed: Weighed) => T): T[] {
  if (!Number.isInteger(count) || count < 0 || count > mostChanges)
    throw new RangeError(`${count} changes: whole numbers from 0 to ${mostChanges} are allowed.`);
  const allOrders = r.assumption(factorial(count), '1', 'All orders in which the changes can be made.');
  return Array.from({ length: count }, (_, change) => {
    const additions = additionsOf(change, count);
    return partOf(change, {
      before: additions.map(({ before }) => before),
      orders: additions.map(({ orders }) =>
        r.assumption(orders, '1', 'Orders in which just these changes come before it.')
      ),
      allOrders
    });
  });
}

function additionsOf(change: number, count: number): Addition[] {
  const additions: Addition[] = [];
  for (let before = 0; before < 2 ** count; before += 1) {
    if ((before & (1 << change)) !== 0) continue;
    const size = sizeOf(before);
    additions.push({ before, orders: factorial(size) * factorial(count - size - 1) });
  }
  return additions;
}

const sizeOf = (set: number): number => (set === 0 ? 0 : (set & 1) + sizeOf(set >> 1));
const factorial = (n: number): number => (n < 2 ? 1 : n * factorial(n - 1));
