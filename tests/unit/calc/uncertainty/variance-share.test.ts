import { expect, test } from 'vitest';
import { drawsInOrder, varianceShare } from '#lib/calc/uncertainty/variance-share.ts';
import { seededRandom } from '../../../fixtures/circle-cases.ts';

const random = seededRandom(11);
const draws = 4000;
const list = (of: (draw: number) => number) => Float64Array.from({ length: draws }, (_, draw) => of(draw));
const drawnA = list(() => random());
const drawnB = list(() => random());
const a = drawsInOrder(drawnA);
const b = drawsInOrder(drawnB);

test('of a sum of independent inputs each has its part of the variance', () => {
  const sum = list((draw) => 2 * drawnA[draw]! + drawnB[draw]!);
  expect(varianceShare(sum, a)).toBeCloseTo(0.8, 1);
  expect(varianceShare(sum, b)).toBeCloseTo(0.2, 1);
});

test('draws are put in order of their values, equal ones as they came', () => {
  expect(drawsInOrder(Float64Array.of(3, 1, 2, 1))).toEqual([1, 3, 2, 0]);
});

test('an input that a figure rests on alone has all of it, another nothing beyond chance', () => {
  expect(varianceShare(drawnA, a)).toBeGreaterThan(0.99);
  expect(varianceShare(drawnA, b)).toBeLessThan(0.01);
});

test('what two inputs make together only is neither’s', () => {
  const product = list((draw) => (drawnA[draw]! - 0.5) * (drawnB[draw]! - 0.5));
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
      list((draw) => (draw % 3 === 0 ? NaN : draw % 3 === 1 ? Infinity : drawnA[draw]!)),
      a
    )
  ).toBeGreaterThan(0.98);
  expect(varianceShare(Float64Array.of(1, 2), [0, 1])).toBe(0);
});
