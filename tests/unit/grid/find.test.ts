import { expect, test } from 'vitest';
import { placesWith, placeToGo } from '#lib/grid/find.ts';
import type { GridRow } from '#lib/grid/grid-types.ts';

const rows: readonly GridRow[] = [
  ['Hernia repair', '1,234'],
  ['Knee', '75'],
  ['hernia, child', '12']
].map((texts, index) => ({
  id: String(index),
  label: texts[0] ?? '',
  cells: texts.map((text) => ({ text, editText: text.replace(',', ''), state: 'given' }))
}));

test('cells are found by a part of their text, capitals or not, in reading order', () => {
  expect(placesWith(rows, ' HERNIA ')).toEqual([
    { row: 0, column: 0 },
    { row: 2, column: 0 }
  ]);
  expect(placesWith(rows, '1,2')).toEqual([{ row: 0, column: 1 }]);
  expect(placesWith(rows, '1234')).toEqual([{ row: 0, column: 1 }]);
  expect(placesWith(rows, '')).toEqual([]);
  expect(placesWith(rows, 'hip')).toEqual([]);
});

test('the next and the previous one go round at the ends', () => {
  const places = placesWith(rows, 'hernia');
  expect(placeToGo(places, { row: 0, column: 0 }, 'here')).toBe(0);
  expect(placeToGo(places, { row: 0, column: 0 }, 'next')).toBe(1);
  expect(placeToGo(places, { row: 2, column: 0 }, 'next')).toBe(0);
  expect(placeToGo(places, { row: 0, column: 0 }, 'previous')).toBe(1);
  expect(placeToGo(places, { row: 1, column: 1 }, 'previous')).toBe(0);
  expect(placeToGo([], { row: 1, column: 1 }, 'next')).toBe(-1);
});
