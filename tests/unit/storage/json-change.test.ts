import { describe, expect, test } from 'vitest';
import { changeBetween, changed } from '#lib/storage/json-change.ts';

const rows = Array.from({ length: 5 }, (_, at) => ({ id: `row ${at}`, minutes: at, name: 'x'.repeat(50) }));

describe('a change is small', () => {
  test.each([
    [
      'of a cell',
      { rows: rows.map((row, at) => (at === 3 ? { ...row, minutes: 9 } : row)) },
      { in: { rows: { each: { 3: { in: { minutes: { to: 9 } } } } } } }
    ],
    [
      'of a row that came',
      { rows: rows.toSpliced(2, 0, { id: 'new', minutes: 1, name: '' }) },
      { in: { rows: { at: 2, out: 0, put: [{ id: 'new', minutes: 1, name: '' }] } } }
    ],
    ['of rows that went', { rows: rows.toSpliced(1, 2) }, { in: { rows: { at: 1, out: 2, put: [] } } }],
    ['of another order', { rows: [...rows].reverse() }, { in: { rows: { order: [4, 3, 2, 1, 0] } } }],
    ['of a list that came and one that went', { others: [] }, { in: { others: { to: [] } }, gone: ['rows'] }]
  ])('%s', (_, after, change) => {
    const before = { rows };
    expect(changeBetween(before, after)).toEqual(change);
    expect(changed(before, change)).toEqual(after);
  });

  test('none where all is alike, whether it is the same or a copy', () => {
    expect(changeBetween({ rows }, { rows: structuredClone(rows) })).toBeNull();
    // A member that is undefined is not in a file.
    expect(changeBetween({ rows, more: undefined }, { rows })).toBeNull();
  });
});

test.each([
  ['an object', [1], { in: {} }],
  ['a list', {}, { each: {} }],
  ['a longer list', [1], { each: { 4: { to: 1 } } }],
  ['a list of another length', [1, 2, 3], { order: [1, 0] }],
  ['an order with a place twice', [1, 2], { order: [0, 0] }],
  ['an order of other places', [1, 2], { order: [0, 7] }],
  ['a list that reaches farther', [1], { at: 1, out: 3, put: [] }],
  ['nothing at all', [1], {}]
])('a change of %s is refused where that is not there', (_, value, change) => {
  expect(() => changed(value, change as Parameters<typeof changed>[1])).toThrow();
});
