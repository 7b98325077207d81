import { expect, test } from 'vitest';
import { varianceShare } from '#lib/calc/uncertainty/variance-share.ts';
import { seededRandom } from '../../../fixtures/circle-cases.ts';

const random = seededRandom(11);
const draws = 4000;
const list = (of: (draw: number) => number) => Float64Array.from({ length: draws }, (_, draw) => of(draw));
const a = list(() => random());
const b = list(() => random());

test('of a sum of independent inputs each has its part of the variance', () => {
  const sum = list((draw) => 2 * a[draw]! + b[draw]!);
  expect(varianceShare(sum, a)).toBeCloseTo(0.8, 1);
  expect(varianceShare(sum, b)).toBeCloseTo(0.2, 1);
});

test('an input that a figure rests on alone has all of it, another nothing beyond chance', () => {
  expect(varianceShare(a, a)).toBeGreaterThan(0.99);
  expect(varianceShare(a, b)).toBeLessThan(0.01);
});

test('what two inputs make together only is neither’s', () => {
  const product = list((draw) => (a[draw]! - 0.5) * (b[draw]! - 0.5));
  expect(varianceShare(product, a)).toBeLessThan(0.02);
});

test('a figure that does not vary, or is no number in some draws, has a share all the same', () => {
  expect(
    varianceShare(
      list(() => 3),
      a
    )
  ).toBe(0);
  expect(
    varianceShare(
      list((draw) => (draw % 3 === 0 ? NaN : draw % 3 === 1 ? Infinity : a[draw]!)),
      a
    )
  ).toBeGreaterThan(0.98);
  expect(varianceShare(Float64Array.of(1, 2), Float64Array.of(1, 2))).toBe(0);
});
