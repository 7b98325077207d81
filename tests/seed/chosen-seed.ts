/** The seed of all random examples, so that a run finds what the last one found. */
export const usualSeed = 20260101;

const smallest = -(2 ** 31);
const largest = 2 ** 31 - 1;

/**
 * The seed that a run of the tests is asked to use.
 * @param wanted what the environment variable `SEED` holds: nothing for the usual one, `random` for any, or a seed
 *   that an earlier run has printed, a whole number of 32 bits.
 * @param draw gives a number from 0 to below 1.
 * @throws RangeError for anything else, with what is allowed.
 */
export function chosenSeed(wanted: string | undefined, draw: () => number = Math.random): number {
  if (wanted === undefined || wanted === '') return usualSeed;
  if (wanted === 'random') return Math.floor(draw() * (largest + 1));
  const seed = Number(wanted);
  if (/^-?\d+$/.test(wanted) && seed >= smallest && seed <= largest) return seed;
  throw new RangeError(
    `SEED is ${JSON.stringify(wanted)}; allowed is “random” or a whole number from ${smallest} to ${largest}.`
  );
}
