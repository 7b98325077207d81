import { describe, expect, test } from 'vitest';
import { betaDistribution, completeBeta } from '#lib/calc/uncertainty/beta-distribution.ts';
import { DistributionError, pert, triangular } from '#lib/calc/uncertainty/distributions.ts';
import type { Quantile } from '#lib/calc/uncertainty/distributions.ts';

/** Integral over [from, to] by Gauss and Legendre's rule with five points in each of `parts` parts. */
function integral(of: (x: number) => number, from: number, to: number, parts = 2000): number {
  const nodes = [
    [0, 128 / 225],
    [Math.sqrt(5 - 2 * Math.sqrt(10 / 7)) / 3, (322 + 13 * Math.sqrt(70)) / 900],
    [Math.sqrt(5 + 2 * Math.sqrt(10 / 7)) / 3, (322 - 13 * Math.sqrt(70)) / 900]
  ] as const;
  const half = (to - from) / parts / 2;
  let sum = 0;
  for (let part = 0; part < parts; part += 1) {
    const middle = from + (2 * part + 1) * half;
    for (const [node, weight] of nodes)
      sum += weight * (node === 0 ? of(middle) : of(middle - node * half) + of(middle + node * half));
  }
  return sum * half;
}

const factorial = (n: number): number => (n <= 1 ? 1 : n * factorial(n - 1));
const shapes = [1, 1.0001, 1.3, 2, 2.5, 2.999999, 3, 3.7, 4.9, 5];

describe('the beta distribution with a + b = 6', () => {
  test.each([1, 2, 3, 4, 5])('has B(%i, 6 − a) as by factorials', (a) => {
    const wanted = (factorial(a - 1) * factorial(5 - a)) / factorial(5);
    expect(Math.abs(completeBeta(a) - wanted)).toBeLessThanOrEqual(1e-15);
  });

  test('has B(1/2, 11/2) = 63 π / 256', () => {
    expect(completeBeta(0.5)).toBeCloseTo((63 * Math.PI) / 256, 14);
  });

  test.each(shapes)('with a = %d: share below as by integration of the density, and 1 in all', (a) => {
    const { density, shareBelow } = betaDistribution(a);
    // With x = t² the root-like start of the density is smooth.
    const by = (x: number): number => integral((t) => 2 * t * density(t * t), 0, Math.sqrt(x));
    for (const x of [0.001, 0.05, 0.3, 0.5, 0.75, 0.99])
      expect(Math.abs(shareBelow(x) - by(x))).toBeLessThan(1e-12);
    // The two halves, each from its own end: at the far one the density's slope may be without bound.
    const mirrored = betaDistribution(6 - a).density;
    const all = by(0.5) + integral((t) => 2 * t * mirrored(t * t), 0, Math.sqrt(0.5));
    expect(Math.abs(all - 1)).toBeLessThan(1e-10);
    expect([shareBelow(0), shareBelow(1)]).toEqual([0, 1]);
  });

  test.each(shapes)('with a = %d: mirrors that with 6 − a', (a) => {
    const [one, other] = [betaDistribution(a), betaDistribution(6 - a)];
    for (const x of [0.01, 0.2, 0.6])
      expect(Math.abs(one.shareBelow(x) + other.shareBelow(1 - x) - 1)).toBeLessThan(1e-14);
  });
});

const mean = (quantile: Quantile): number => integral(quantile, 0, 1, 20_000);
const variance = (quantile: Quantile): number => {
  const middle = mean(quantile);
  return integral((share) => (quantile(share) - middle) ** 2, 0, 1, 20_000);
};

describe('PERT', () => {
  test.each([
    [0, 3, 10],
    [60, 75, 95],
    [-5, -5, 20],
    [2, 8, 8],
    [0.001, 0.0011, 0.0012]
  ])('from %d by %d to %d has the mean and the variance of its definition', (low, mode, high) => {
    const quantile = pert({ low, mode, high });
    const [middle, width] = [(low + 4 * mode + high) / 6, high - low];
    expect(Math.abs(mean(quantile) - middle)).toBeLessThan(1e-6 * width);
    expect(Math.abs(variance(quantile) - ((middle - low) * (high - middle)) / 7)).toBeLessThan(
      1e-6 * width ** 2
    );
  });

  test.each(shapes)('quantile and share below undo each other, with a = %d', (a) => {
    const quantile = pert({ low: 0, mode: (a - 1) / 4, high: 1 });
    const { shareBelow } = betaDistribution(a);
    for (const share of [1e-9, 1e-4, 0.01, 0.25, 0.5, 0.75, 0.99, 0.9999, 1 - 1e-9])
      expect(Math.abs(shareBelow(quantile(share)) - share)).toBeLessThan(1e-14);
  });

  test('rises, and begins and ends with its range', () => {
    const quantile = pert({ low: 10, mode: 11, high: 30 });
    let before = -Infinity;
    for (let k = 0; k <= 1000; k += 1) {
      const value = quantile(k / 1000);
      expect(value).toBeGreaterThan(before);
      before = value;
    }
    expect([quantile(0), quantile(1)]).toEqual([10, 30]);
  });

  test('has by hand: with the mode at the low end, 1 − (1 − x)⁵ lies below x', () => {
    const quantile = pert({ low: 0, mode: 0, high: 1 });
    for (const share of [0.1, 0.5, 0.9]) expect(quantile(share)).toBeCloseTo(1 - (1 - share) ** 0.2, 13);
  });
});

describe('triangular', () => {
  test.each([
    [0, 3, 10],
    [1, 1, 4],
    [1, 4, 4]
  ])('from %d by %d to %d has the mean and the variance of its definition', (low, mode, high) => {
    const quantile = triangular({ low, mode, high });
    expect(Math.abs(mean(quantile) - (low + mode + high) / 3)).toBeLessThan(1e-6);
    const wanted = (low ** 2 + mode ** 2 + high ** 2 - low * mode - low * high - mode * high) / 18;
    expect(Math.abs(variance(quantile) - wanted)).toBeLessThan(1e-5);
    expect([quantile(0), quantile((mode - low) / (high - low)), quantile(1)]).toEqual([low, mode, high]);
  });
});

describe.each([
  ['PERT', pert],
  ['triangular', triangular]
])('%s', (_, make) => {
  test('without width is the value itself', () => {
    const quantile = make({ low: 0.1, mode: 0.1, high: 0.1 });
    for (const share of [0, 0.3, 1]) expect(quantile(share)).toBe(0.1);
  });

  test('refuses what is no range, with what was given', () => {
    const failing = (low: number, mode: number, high: number) => () => make({ low, mode, high });
    expect(failing(9, 8, 7)).toThrow(DistributionError);
    expect(failing(9, 8, 7)).toThrow('Low 9 is above high 7');
    expect(failing(1, 8, 7)).toThrow('The value 8 lies outside its range from 1 to 7');
    expect(failing(1, 0, 7)).toThrow('The value 0 lies outside');
    expect(failing(NaN, 0, 7)).toThrow('The low value is NaN');
    expect(failing(0, 0, Infinity)).toThrow('The high value is Infinity');
  });
});
