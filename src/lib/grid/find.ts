/** Finding a text in the cells of a grid, drawn or not, and putting another in its place. Pure. */
import type { GridRow } from './grid-types.ts';
import type { PlacedText } from './clipboard.ts';
import type { Place } from './moves.ts';
import { holds, type Block } from './selection.ts';

export interface Search {
  readonly text: string;
  /** The text is all that stands in the cell. */
  readonly wholeCell?: boolean;
  /** Cells of this block alone. */
  readonly within?: Block | null;
}

/** The cells that show the text somewhere, capitals or not, in reading order; none for an empty text. */
export function placesWith(
  rows: readonly GridRow[],
  { text: wanted, wholeCell = false, within = null }: Search
): readonly Place[] {
  const sought = wanted.trim().toLowerCase();
  if (sought === '') return [];
  const fits = (text: string): boolean =>
    wholeCell ? text.trim().toLowerCase() === sought : text.toLowerCase().includes(sought);
  return rows.flatMap(({ cells }, row) =>
    cells.flatMap(({ text, editText }, column) =>
      // As shown and as edited: 1,234 is found by either of its spellings.
      (fits(text) || fits(editText)) && (within === null || holds(within, { row, column }))
        ? [{ row, column }]
        : []
    )
  );
}

/**
 * What cells hold once the text in them is replaced, wherever it occurs in a cell, capitals or not. It is replaced in
 * what is edited: a cell whose display alone shows it (a unit, a mark between thousands), and one that cannot be
 * typed in, is left out.
 * @param places cells with the text, as `placesWith` finds them
 */
export function replacedAt(
  rows: readonly GridRow[],
  places: readonly Place[],
  { text: wanted, by }: Pick<Search, 'text'> & { readonly by: string }
): readonly PlacedText[] {
  const sought = new RegExp(wanted.trim().replace(/[\\^$.*+?()[\]{}|]/g, '\\$&'), 'giu');
  return places.flatMap(({ row, column }) => {
    const cell = rows[row]?.cells[column];
    if (cell === undefined || cell.state === 'computed' || cell.state === 'off') return [];
    // Not a pattern: `$&` in the text stays as it stands.
    const text = cell.editText.replace(sought, () => by);
    return text === cell.editText ? [] : [{ row, column, text }];
  });
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
