import fc from 'fast-check';
import { describe, expect, inject, test } from 'vitest';
import { chosenSeed, usualSeed } from '../../seed/chosen-seed.ts';

describe('the seed of random examples', () => {
  test.each([
    [undefined, usualSeed],
    ['', usualSeed],
    ['7', 7],
    ['-2147483648', -2147483648],
    ['2147483647', 2147483647]
  ])('SEED %j gives %i', (wanted, seed) => {
    expect(chosenSeed(wanted)).toBe(seed);
  });

  test('SEED random draws one that can be given again', () => {
    for (const [share, seed] of [
      [0, 0],
      [0.5, 2 ** 30],
      [1 - 2 ** -53, 2 ** 31 - 1]
    ] as const) {
      expect(chosenSeed('random', () => share)).toBe(seed);
      expect(chosenSeed(String(seed))).toBe(seed);
    }
  });

  test.each(['seven', '1.5', ' 7', '1e3', '2147483648', '-2147483649'])('SEED %j is refused', (wanted) => {
    expect(() => chosenSeed(wanted)).toThrow(
      `SEED is ${JSON.stringify(wanted)}; allowed is “random” or a whole number from -2147483648 to 2147483647.`
    );
  });

  test('is what properties and samples draw with, so that the same examples come again', () => {
    const drawn = (): number[] => {
      const numbers: number[] = [];
      fc.assert(fc.property(fc.integer(), (number) => void numbers.push(number)));
      return [...numbers, ...fc.sample(fc.integer(), 20)];
    };
    expect(fc.readConfigureGlobal().seed).toBe(inject('seed'));
    expect(new Set(drawn()).size).toBeGreaterThan(20);
    expect(drawn()).toEqual(drawn());
  });
});
