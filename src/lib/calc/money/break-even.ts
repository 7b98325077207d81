/** From which value of one input on the investment pays for itself within the limit. */
import { solve } from './solve.ts';

export type BreakEven =
  /** At `value` the payback equals the limit; the investment pays in time above it, or below it. */
  | { readonly kind: 'found'; readonly value: number; readonly pays: 'above' | 'below' }
  /** It pays in time at every value of the range. */
  | { readonly kind: 'always' }
  /** No value in the range does. */
  | { readonly kind: 'never' }
  /** Nothing is invested and nothing saved at either end of the range: there is nothing to pay back. */
  | { readonly kind: 'nothing' };

/**
 * The value of one input in [low, high] at which the payback equals the limit.
 *
 * `of` gives, for a value of the input, the lowest cumulative net cash flow from the limit to the end of the appraisal
 * (`lowestSumFrom`, discounted for a discounted payback), out of the real estimate. It is 0 exactly where the payback
 * equals the limit, and unlike the payback itself it exists where nothing is ever paid back. With several such values
 * the lowest is given.
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
  if (atLow === 0 && atHigh === 0) return { kind: 'nothing' };
  return {
    kind: 'found',
    value: solution.value,
    pays: atLow < 0 || (atLow === 0 && atHigh > 0) ? 'above' : 'below'
  };
}
