/** Finding a text in the cells of a grid, drawn or not. Pure. */
import type { GridRow } from './grid-types.ts';
import type { Place } from './moves.ts';

/** The cells that show `wanted` somewhere, capitals or not, in reading order; none for an empty text. */
export function placesWith(rows: readonly GridRow[], wanted: string): readonly Place[] {
  const sought = wanted.trim().toLowerCase();
  if (sought === '') return [];
  return rows.flatMap(({ cells }, row) =>
    cells.flatMap(({ text, editText }, column) =>
      // As shown and as edited: 1,234 is found by either of its spellings.
      text.toLowerCase().includes(sought) || editText.toLowerCase().includes(sought) ? [{ row, column }] : []
    )
  );
}

const isAfter = (one: Place, other: Place): boolean =>
  one.row > other.row || (one.row === other.row && one.column > other.column);
const isSame = (one: Place, other: Place): boolean => one.row === other.row && one.column === other.column;

/**
 * Index of the place to go to from `from`: `here` takes the place itself where it is one of them, `next` and `previous`
 * go round at the ends. −1 where there are none.
 */
export function placeToGo(places: readonly Place[], from: Place, way: 'here' | 'next' | 'previous'): number {
  if (places.length === 0) return -1;
  if (way === 'previous') {
    const before = places.findLastIndex((place) => isAfter(from, place));
    return before < 0 ? places.length - 1 : before;
  }
  const at = places.findIndex((place) => isAfter(place, from) || (way === 'here' && isSame(place, from)));
  return Math.max(0, at);
}
