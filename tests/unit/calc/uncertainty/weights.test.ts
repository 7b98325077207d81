import { describe, expect, test } from 'vitest';
import { fewestCarrying, sharesOf, widthOf } from '#lib/calc/uncertainty/weights.ts';

test('a swing is as wide as its answers lie apart, and has no width where fewer than two are known', () => {
  expect(widthOf([-50, 100])).toBe(150);
  expect(widthOf([3, 9, 5])).toBe(6);
  expect(widthOf([7])).toBe(0);
  expect(widthOf([7, NaN])).toBe(0);
  expect(widthOf([])).toBe(0);
});

test('shares make up the whole, or are 0 where nothing swings', () => {
  expect(sharesOf([30, 10, 0, 60])).toEqual([0.3, 0.1, 0, 0.6]);
  expect(sharesOf([0, 0])).toEqual([0, 0]);
  expect(sharesOf([])).toEqual([]);
});

describe('the fewest that carry a part', () => {
  test('are the largest, and no more than are needed', () => {
    expect(fewestCarrying([0.3, 0.1, 0, 0.6], 0.8)).toEqual([3, 0]);
    expect(fewestCarrying([0.3, 0.1, 0, 0.6], 0.6)).toEqual([3]);
    expect(fewestCarrying([0.2, 0.2, 0.2, 0.2, 0.2], 0.8)).toHaveLength(4);
  });

  test('are never those without a share, even for all of it', () => {
    expect(fewestCarrying([0.3, 0.1, 0, 0.6], 1)).toEqual([3, 0, 1]);
    expect(fewestCarrying([0, 0], 0.8)).toEqual([]);
  });
});
