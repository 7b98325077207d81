import { expect, test } from 'vitest';
import type { GridColumn, GridRow } from '#lib/grid/grid-types.ts';
import { rowsSorted, sortInWords } from '#lib/grid/row-order.ts';

const columns: readonly GridColumn[] = [
  { key: 'name', title: 'Name', words: '', kind: 'text', widthCh: 9 },
  { key: 'cases', title: 'Cases', words: '', kind: 'number', widthCh: 9 }
];
const rows: readonly GridRow[] = [
  ['hernia', '90'],
  ['Knee', ''],
  ['eye', '9'],
  ['Ähnlich', 'many'],
  ['hernia', '9']
].map((texts, index) => ({
  id: String(index),
  label: '',
  cells: texts.map((text) => ({ text, editText: text, state: 'given' }))
}));
const sorted = (key: string, way: 'up' | 'down', locale = 'en-GB') =>
  rowsSorted({ columns, rows }, { key, way, locale });

test('numbers go by size; what is no number follows, empty cells are last, either way', () => {
  expect(sorted('cases', 'up')).toEqual([2, 4, 0, 3, 1]);
  expect(sorted('cases', 'down')).toEqual([0, 2, 4, 3, 1]);
});

test('texts go by the alphabet of the language, capitals or not; rows alike stay as they stand', () => {
  expect(sorted('name', 'up')).toEqual([3, 2, 0, 4, 1]);
  expect(sorted('name', 'down')).toEqual([1, 0, 4, 2, 3]);
  // In Swedish the letter stands at the end of the alphabet.
  expect(sorted('name', 'up', 'sv-SE')).toEqual([2, 0, 4, 1, 3]);
});

test('a column that is not there leaves the rows alone', () => {
  expect(sorted('gone', 'up')).toEqual([0, 1, 2, 3, 4]);
});

test('the order has a name that fits what the column holds', () => {
  const [name, cases] = columns as [GridColumn, GridColumn];
  expect([sortInWords(name, 'up'), sortInWords(cases, 'down')]).toEqual(['A to Z', 'largest first']);
  expect(sortInWords({ ...cases, kind: 'computed', names: true }, 'down')).toBe('Z to A');
});
