import { expect, test } from 'vitest';
import type { GridColumn, GridRow } from '#lib/grid/grid-types.ts';
import { selectionTotals } from '#lib/grid/selection-totals.ts';

const column = (key: string, kind: GridColumn['kind']): GridColumn => ({
  key,
  title: key,
  words: '',
  kind,
  widthCh: 8
});
const columns = [column('name', 'text'), column('cases', 'number'), column('minutes', 'number')];
const rows: readonly GridRow[] = [
  ['Hernia', '120', '60,5'],
  ['Hip', '1200,1', ''],
  ['', 'about 40', '0,2']
].map((texts, index) => ({
  id: String(index),
  label: String(index),
  cells: texts.map((text) => ({ text, editText: text, state: 'given' }))
}));
const totals = (top: number, bottom: number, left: number, right: number): string =>
  selectionTotals({ columns, rows }, { top, bottom, left, right }, 'de-DE');

test('the numbers of one column are counted and added up, and what is none is said', () => {
  expect(totals(0, 1, 1, 1)).toBe('2 numbers: sum 1.320,1, mean 660,05');
  expect(totals(0, 2, 1, 1)).toBe('2 numbers: sum 1.320,1, mean 660,05; 1 more is none');
  expect(totals(0, 2, 2, 2)).toBe('2 numbers: sum 60,7, mean 30,35');
});

test('of words, and over several columns with units of their own, the filled cells are counted', () => {
  expect(totals(0, 2, 0, 0)).toBe('2 filled');
  expect(totals(0, 2, 0, 2)).toBe('7 filled');
});

test('of a single cell nothing is said', () => {
  expect(totals(1, 1, 1, 1)).toBe('');
});
