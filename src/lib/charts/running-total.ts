import { partsThatAddUp } from '#lib/numbers/parts-that-add-up.ts';

/** Sums of the first one, two, three … amounts, exact on their decimal text to a millionth. */
export function runningTotal(amounts: readonly string[]): number[] {
  return amounts.map((_, last) => Number(partsThatAddUp(amounts.slice(0, last + 1), { decimals: 6 }).total));
}
