import { expect, test } from 'vitest';
import { rowElements } from '#lib/grid/row-elements.ts';

const from = (start: number, count: number) => Array.from({ length: count }, (_, index) => start + index);

test('a row that stays keeps its element; what leaves at one end enters at the other', () => {
  const before = rowElements([], from(0, 6));
  expect(before.map(({ key }) => key)).toEqual([0, 1, 2, 3, 4, 5]);
  expect(rowElements(before, from(2, 6)).map(({ key }) => key)).toEqual([2, 3, 4, 5, 0, 1]);
});

test('a row that is drawn apart from the others keeps its element too', () => {
  const before = rowElements([], from(0, 5));
  const after = rowElements(before, [3, ...from(40, 5)]);
  expect(after[0]).toEqual({ row: 3, key: 3 });
  expect(new Set(after.map(({ key }) => key)).size).toBe(6);
});

test('elements are made where there are too few, and no two rows share one', () => {
  const grown = rowElements(rowElements([], from(10, 3)), from(8, 9));
  expect(new Set(grown.map(({ key }) => key)).size).toBe(9);
  expect(rowElements(grown, []).length).toBe(0);
});
