/**
 * Repeatable random numbers: xoshiro128**, D. Blackman and S. Vigna, Scrambled linear pseudorandom number generators, ACM
 * Transactions on Mathematical Software 47 (2021), 36; the state is filled by mixing the seed and the stream's number.
 * Each stream is a sequence of its own, so that what one input draws does not depend on how many others there are.
 */

export interface Generator {
  /** The next whole number from 0 to 2³² − 1. */
  next32(): number;
  /** The next number in [0, 1), in steps of 2⁻⁵³. */
  nextUniform(): number;
  /** The next whole number from 0 to `count` − 1, each equally likely; `count` from 1 to 2³². */
  nextBelow(count: number): number;
}

/** The generator with this state of four 32-bit numbers, not all 0. */
export function generatorWithState(state: readonly [number, number, number, number]): Generator {
  let [s0, s1, s2, s3] = state;
  const next32 = (): number => {
    const result = Math.imul(rotated(Math.imul(s1, 5), 7), 9) >>> 0;
    const shifted = s1 << 9;
    s2 ^= s0;
    s3 ^= s1;
    s1 ^= s2;
    s0 ^= s3;
    s2 ^= shifted;
    s3 = rotated(s3, 11);
    return result;
  };
  return {
    next32,
    nextUniform: () => ((next32() >>> 5) * 2 ** 26 + (next32() >>> 6)) / 2 ** 53,
    nextBelow: (count) => {
      // What lies beyond the last whole multiple of `count` would favour the small numbers: it is drawn again.
      const limit = Math.floor(2 ** 32 / count) * count;
      for (;;) {
        const drawn = next32();
        if (drawn < limit) return drawn % count;
      }
    }
  };
}

/**
 * The generator of one stream under a seed.
 * @throws RangeError unless seed and stream are whole numbers from 0 to 2⁵³ − 1.
 */
export function generator({ seed, stream }: { seed: number; stream: number }): Generator {
  for (const given of [seed, stream])
    if (!Number.isSafeInteger(given) || given < 0)
      throw new RangeError(`A seed of ${given}: a whole number from 0 to 9 007 199 254 740 991 is needed.`);
  let mixed = 0;
  for (const part of [seed, Math.floor(seed / 2 ** 32), stream, Math.floor(stream / 2 ** 32)])
    mixed = scrambled((mixed + 0x9e3779b9) ^ part);
  const word = (k: number): number => scrambled(mixed + Math.imul(k, 0x9e3779b9));
  // A state of only zeros would stay there; one bit keeps it off.
  return generatorWithState([word(1), word(2), word(3), word(4) | 1]);
}

const rotated = (x: number, by: number): number => (x << by) | (x >>> (32 - by));

/** A one-to-one mixing of 32 bits: the finaliser of MurmurHash3 (A. Appleby, public domain). From memory. */
function scrambled(given: number): number {
  let x = given;
  x = Math.imul(x ^ (x >>> 16), 0x85ebca6b);
  x = Math.imul(x ^ (x >>> 13), 0xc2b2ae35);
  return x ^ (x >>> 16);
}
