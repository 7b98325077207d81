/** What is selected: always one block, with the cell that has the cursor somewhere in it. Pure. */
import { clampPlace, type Extent, type Place } from './moves.ts';

/** Rows and columns from `top` and `left` to `bottom` and `right`, all included. */
export interface Block {
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
}

export interface Selection {
  /** The cell with the cursor. */
  readonly active: Place;
  readonly block: Block;
}

export function blockBetween(one: Place, other: Place): Block {
  return {
    top: Math.min(one.row, other.row),
    left: Math.min(one.column, other.column),
    bottom: Math.max(one.row, other.row),
    right: Math.max(one.column, other.column)
  };
}

export function onePlace(place: Place): Selection {
  return { active: place, block: blockBetween(place, place) };
}

export function holds(block: Block, { row, column }: Place): boolean {
  return row >= block.top && row <= block.bottom && column >= block.left && column <= block.right;
}

export function isOneCell({ top, left, bottom, right }: Block): boolean {
  return top === bottom && left === right;
}

/** The corner that Shift with an arrow moves: the one across from the cursor. */
export function movingCorner({ active, block }: Selection): Place {
  return {
    row: active.row === block.bottom ? block.top : block.bottom,
    column: active.column === block.right ? block.left : block.right
  };
}

/** Stretches the selection from the cursor to `corner`; the cursor stays. */
export function stretched({ active }: Selection, corner: Place): Selection {
  return { active, block: blockBetween(active, corner) };
}

/** Whole rows, from one to the other; the cursor on the first named. */
export function wholeRows(
  { from, to }: { readonly from: number; readonly to: number },
  extent: Extent
): Selection {
  return {
    active: { row: from, column: 0 },
    block: blockBetween({ row: from, column: 0 }, { row: to, column: extent.columns - 1 })
  };
}

/** Whole columns, from one to the other; the cursor on the first named. */
export function wholeColumns(
  { from, to }: { readonly from: number; readonly to: number },
  extent: Extent
): Selection {
  return {
    active: { row: 0, column: from },
    block: blockBetween({ row: 0, column: from }, { row: Math.max(0, extent.rows - 1), column: to })
  };
}

/** Everything, the cursor where it was. */
export function everything(active: Place, { rows, columns }: Extent): Selection {
  return {
    active,
    block: { top: 0, left: 0, bottom: Math.max(0, rows - 1), right: Math.max(0, columns - 1) }
  };
}

export function coversWholeRows({ left, right }: Block, { columns }: Extent): boolean {
  return left === 0 && right === columns - 1;
}

/** The selection cut back to a grid that may have shrunk. */
export function clampSelection({ active, block }: Selection, extent: Extent): Selection {
  const first = clampPlace({ row: block.top, column: block.left }, extent);
  const last = clampPlace({ row: block.bottom, column: block.right }, extent);
  return { active: clampPlace(active, extent), block: blockBetween(first, last) };
}

/** Enter and Tab inside a block go round in it: down its columns, or along its rows; Shift turns them back. */
export function roundInside(
  block: Block,
  { row, column }: Place,
  wish: { readonly along: 'rows' | 'columns'; readonly back: boolean }
): Place {
  const rows = block.bottom - block.top + 1;
  const columns = block.right - block.left + 1;
  const across = wish.along === 'rows' ? columns : rows;
  const at =
    wish.along === 'rows'
      ? (row - block.top) * columns + column - block.left
      : (column - block.left) * rows + row - block.top;
  const next = (at + (wish.back ? -1 : 1) + rows * columns) % (rows * columns);
  const major = Math.floor(next / across);
  const minor = next % across;
  return wish.along === 'rows'
    ? { row: block.top + major, column: block.left + minor }
    : { row: block.top + minor, column: block.left + major };
}

export function rowsOf({ top, bottom }: Block): number[] {
  return Array.from({ length: bottom - top + 1 }, (_, index) => top + index);
}

/** All cells of the block, in reading order. */
export function placesOf(block: Block): Place[] {
  const places: Place[] = [];
  for (let row = block.top; row <= block.bottom; row += 1) {
    for (let column = block.left; column <= block.right; column += 1) places.push({ row, column });
  }
  return places;
}
