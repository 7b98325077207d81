/** From which value of one input on the investment pays for itself within the limit. */
import { solve } from './solve.ts';

export type BreakEven =
  /** At `value` the payback equals the limit; the investment pays in time above it, or below it. */
  | { readonly kind: 'found'; readonly value: number; readonly pays: 'above' | 'below' }
  /** It pays in time at every value of the range. */
  | { readonly kind: 'always' }
  /** No value in the range does. */
  | { readonly kind: 'never' };

/**
 * The value of one input in [low, high] at which the payback equals the limit.
 *
 * `of` gives, for a value of the input, the cumulative net cash flow at the limit (`cumulativeAt`, discounted for a
 * discounted payback), out of the real estimate. It is 0 exactly where the payback equals the limit, and unlike the
 * payback itself it exists where nothing is ever paid back. Where the sum turns more than once, as with replacements,
 * it says whether the sum stands at 0 or above at the limit. With several such values the lowest is given.
 *
 * @throws UnsolvableError as `solve`.
 */
export function breakEven({
  of,
  low,
  high
}: {
  of: (value: number) => number;
  low: number;
  high: number;
}): BreakEven {
  const solution = solve({ of, low, high });
  if (solution.kind === 'always-positive') return { kind: 'always' };
  if (solution.kind === 'always-negative') return { kind: 'never' };
  const [atLow, atHigh] = [of(low), of(high)];
  if (atLow === 0 && atHigh === 0) return { kind: 'always' };
  return {
    kind: 'found',
    value: solution.value,
    pays: atLow < 0 || (atLow === 0 && atHigh > 0) ? 'above' : 'below'
  };
}
