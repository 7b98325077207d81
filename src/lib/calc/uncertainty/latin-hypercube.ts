/**
 * Latin hypercube sampling: of n draws, each input has exactly one in every n-th of its distribution, in an order of its
 * own. M. D. McKay, R. J. Beckman, W. J. Conover, Technometrics 21 (1979), 239.
 */
import { generator } from './generator.ts';

/**
 * The shares of one input for all draws: in each of the n equal parts of [0, 1) exactly one, at a random place within it.
 * Depends on the seed, the number of draws and the input's number only, so any part of the draws can be run anywhere.
 */
export function latinShares({
  seed,
  draws,
  dimension
}: {
  seed: number;
  draws: number;
  dimension: number;
}): Float64Array {
  const { nextBelow, nextUniform } = generator({ seed, stream: dimension });
  const part = Uint32Array.from({ length: draws }, (_, k) => k);
  // Fisher and Yates.
  for (let k = draws - 1; k > 0; k -= 1) {
    const other = nextBelow(k + 1);
    const kept = part[k] as number;
    part[k] = part[other] as number;
    part[other] = kept;
  }
  return Float64Array.from(part, (k) => (k + nextUniform()) / draws);
}
