/** Where the cursor goes. Pure: a place and a wish in, a place out. */

/** A cell, counted from 0; the header is not counted. */
export interface Place {
  readonly row: number;
  readonly column: number;
}

export interface Extent {
  readonly rows: number;
  readonly columns: number;
}

type Way = 'up' | 'down' | 'left' | 'right';

export type Move =
  Way | `edge-${Way}` | 'row-start' | 'row-end' | 'grid-start' | 'grid-end' | 'page-up' | 'page-down';

export interface Surroundings {
  readonly extent: Extent;
  /** Rows that are in sight at once. */
  readonly pageRows: number;
  /** Whether a cell shows anything; decides where an edge is. */
  readonly filled: (place: Place) => boolean;
}

/** The place within the grid that is nearest to `place`; row 0, column 0 in an empty grid. */
export function clampPlace(place: Place, { rows, columns }: Extent): Place {
  return {
    row: Math.max(0, Math.min(place.row, rows - 1)),
    column: Math.max(0, Math.min(place.column, columns - 1))
  };
}

/** Where `move` leads from `place`; never out of the grid. */
export function moved(place: Place, move: Move, { extent, pageRows, filled }: Surroundings): Place {
  const to = (row: number, column: number): Place => clampPlace({ row, column }, extent);
  const { row, column } = place;
  switch (move) {
    case 'up':
      return to(row - 1, column);
    case 'down':
      return to(row + 1, column);
    case 'left':
      return to(row, column - 1);
    case 'right':
      return to(row, column + 1);
    case 'row-start':
      return to(row, 0);
    case 'row-end':
      return to(row, extent.columns - 1);
    case 'grid-start':
      return to(0, 0);
    case 'grid-end':
      return to(extent.rows - 1, extent.columns - 1);
    case 'page-up':
      return to(row - pageRows, column);
    case 'page-down':
      return to(row + pageRows, column);
    case 'edge-up':
      return toEdge(place, { row: -1, column: 0 }, extent, filled);
    case 'edge-down':
      return toEdge(place, { row: 1, column: 0 }, extent, filled);
    case 'edge-left':
      return toEdge(place, { row: 0, column: -1 }, extent, filled);
    case 'edge-right':
      return toEdge(place, { row: 0, column: 1 }, extent, filled);
  }
}

/** To the last filled cell of this run; from its end, or from an empty cell, to the next filled one, or to the border. */
function toEdge(start: Place, by: Place, extent: Extent, filled: (place: Place) => boolean): Place {
  const inside = ({ row, column }: Place): boolean =>
    row >= 0 && column >= 0 && row < extent.rows && column < extent.columns;
  const after = ({ row, column }: Place): Place => ({ row: row + by.row, column: column + by.column });
  let place = start;
  let next = after(place);
  const alongRun = inside(next) && filled(place) && filled(next);
  while (inside(next)) {
    if (alongRun && !filled(next)) break;
    place = next;
    next = after(place);
    if (!alongRun && filled(place)) break;
  }
  return place;
}

/** The next cell in reading order, or the one before; null past either end: there the focus leaves the grid. */
export function tabbed(place: Place, back: boolean, { rows, columns }: Extent): Place | null {
  const at = place.row * columns + place.column + (back ? -1 : 1);
  return at < 0 || at >= rows * columns ? null : { row: Math.floor(at / columns), column: at % columns };
}
