import { expect, test } from 'vitest';
import { placesWith, placeToGo, replacedAt } from '#lib/grid/find.ts';
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
  expect(placesWith(rows, { text: ' HERNIA ' })).toEqual([
    { row: 0, column: 0 },
    { row: 2, column: 0 }
  ]);
  expect(placesWith(rows, { text: '1,2' })).toEqual([{ row: 0, column: 1 }]);
  expect(placesWith(rows, { text: '1234' })).toEqual([{ row: 0, column: 1 }]);
  expect(placesWith(rows, { text: '' })).toEqual([]);
  expect(placesWith(rows, { text: 'hip' })).toEqual([]);
});

test('the next and the previous one go round at the ends', () => {
  const places = placesWith(rows, { text: 'hernia' });
  expect(placeToGo(places, { row: 0, column: 0 }, 'here')).toBe(0);
  expect(placeToGo(places, { row: 0, column: 0 }, 'next')).toBe(1);
  expect(placeToGo(places, { row: 2, column: 0 }, 'next')).toBe(0);
  expect(placeToGo(places, { row: 0, column: 0 }, 'previous')).toBe(1);
  expect(placeToGo(places, { row: 1, column: 1 }, 'previous')).toBe(0);
  expect(placeToGo([], { row: 1, column: 1 }, 'next')).toBe(-1);
});

test('whole cells, or those of a block, can be all that is sought', () => {
  expect(placesWith(rows, { text: 'hernia repair', wholeCell: true })).toEqual([{ row: 0, column: 0 }]);
  expect(placesWith(rows, { text: 'hernia', wholeCell: true })).toEqual([]);
  const within = { top: 1, bottom: 2, left: 0, right: 0 };
  expect(placesWith(rows, { text: 'hernia', within })).toEqual([{ row: 2, column: 0 }]);
});

test('a text is replaced wherever it stands in a cell, capitals or not, and by what was typed letter for letter', () => {
  const all = (text: string, by: string) => replacedAt(rows, placesWith(rows, { text }), { text, by });
  expect(all('HERNIA', '$&.')).toEqual([
    { row: 0, column: 0, text: '$&. repair' },
    { row: 2, column: 0, text: '$&. child' }
  ]);
  expect(all('e', '')).toEqual([
    { row: 0, column: 0, text: 'Hrnia rpair' },
    { row: 1, column: 0, text: 'Kn' },
    { row: 2, column: 0, text: 'hrnia child' }
  ]);
  // A dot is a dot, and no sign for any letter.
  expect(all('.', 'x')).toEqual([]);
});

test('what stands in the display alone is not replaced, nor what cannot be typed in', () => {
  expect(replacedAt(rows, placesWith(rows, { text: '1,2' }), { text: '1,2', by: '9' })).toEqual([]);
  const computed: readonly GridRow[] = [
    {
      id: '0',
      label: '',
      cells: [
        { text: '42', editText: '42', state: 'computed' },
        { text: '42', editText: '42', state: 'off' },
        { text: '4x2', editText: '4x2', state: 'kept' }
      ]
    }
  ];
  expect(replacedAt(computed, placesWith(computed, { text: '4' }), { text: '4', by: '5' })).toEqual([
    { row: 0, column: 2, text: '5x2' }
  ]);
});
