/** Parts of a whole, against games whose answers stand outside. Which were printed and which computed is said with each. */
import { describe, expect, test } from 'vitest';
import { partsOfGame } from '../fixtures/game.ts';

const within = (found: readonly number[], wanted: readonly number[], tolerance: number): void => {
  expect(found).toHaveLength(wanted.length);
  found.forEach((part, place) =>
    expect(Math.abs(part - (wanted[place] as number)), `part ${place}`).toBeLessThanOrEqual(tolerance)
  );
};

describe('the Shapley value', () => {
  test('attr-1: the glove game gives 1/6, 1/6, 2/3 (printed in an encyclopaedia’s article on the value)', () => {
    const worth = new Set([0b101, 0b110, 0b111]);
    within(
      partsOfGame(3, (set) => (worth.has(set) ? 1 : 0)),
      [1 / 6, 1 / 6, 2 / 3],
      1e-9
    );
  });

  test('attr-3: in an additive game each gets its own, 1, 2 and 3 (a public mathematics collection; 2 and 3 computed)', () => {
    within(
      partsOfGame(3, (set) => (set & 1) + 2 * ((set >> 1) & 1) + 3 * ((set >> 2) & 1)),
      [1, 2, 3],
      1e-9
    );
  });

  const from = [10, 5, 4];
  const to = [12, 4, 2];
  const product = (set: number): number =>
    from.reduce((all, before, place) => all * ((set >> place) & 1 ? (to[place] as number) : before), 1);

  test('attr-4: a product of three that changes from 200 to 96 (computed over the six orders)', () => {
    const parts = partsOfGame(3, product);
    within(parts, [27.333, -32.667, -98.667], 0.001);
    expect(Math.abs(parts.reduce((sum, part) => sum + part, 0) + 104)).toBeLessThan(1e-9);
  });

  test('attr-5: the log-mean decomposition of the same change gives the same picture, within 6 %', () => {
    // Ang BW, Energy Policy 2005;33:867, eq. 5: another way to take a product apart, which the tool does not use.
    const logMean = (a: number, b: number): number => (a === b ? a : (a - b) / Math.log(a / b));
    const weight = logMean(96, 200);
    const decomposed = from.map((before, place) => weight * Math.log((to[place] as number) / before));
    within(decomposed, [25.834, -31.618, -98.216], 0.001);
    partsOfGame(3, product).forEach((part, place) =>
      expect(Math.abs(part / (decomposed[place] as number) - 1)).toBeLessThan(0.06)
    );
  });
});
