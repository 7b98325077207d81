import { expect, it } from 'vitest';
import { movedTo } from '#lib/sheets/parts/moved-to.ts';

it('moves an entry to the place named, in either direction, and leaves the list given as it was', () => {
  const list = ['a', 'b', 'c', 'd'];
  expect(movedTo(list, { from: 0, to: 2 })).toEqual(['b', 'c', 'a', 'd']);
  expect(movedTo(list, { from: 3, to: 1 })).toEqual(['a', 'd', 'b', 'c']);
  expect(movedTo(list, { from: 1, to: 1 })).toEqual(list);
  expect(list).toEqual(['a', 'b', 'c', 'd']);
});
