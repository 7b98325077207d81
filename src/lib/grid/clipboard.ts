/**
 * Cells to tab-separated text and back, and where pasted cells land. Pure.
 *
 * The form is the one that spreadsheet programs put on the clipboard (common practice, no source): tabs between cells,
 * line breaks between rows, a cell that holds either in double quotes with its own quotes doubled.
 */
import type { Extent } from './moves.ts';
import { isOneCell, type Block } from './selection.ts';

// A program that is pasted into takes these for the begin of a formula, and some formulas run something.
const beginsFormula = /^'*[\s\p{Cc}\u200b-\u200d\u2060\ufeff]*[=+\-@\uff1d\uff0b\uff0d\uff20]/u;
const isNumber = /^[+-][\d.,\s'\u2019]+%?$/;

/** With an apostrophe before what would be taken for a formula: text stays text. It is taken off on the way in. */
const guarded = (cell: string): string =>
  beginsFormula.test(cell) && !isNumber.test(cell) ? `'${cell}` : cell;
const unguarded = (cell: string): string =>
  cell.startsWith("'") && beginsFormula.test(cell) ? cell.slice(1) : cell;

export function cellsToText(cells: readonly (readonly string[])[]): string {
  const rows = cells.map((row) => row.map((cell) => quoted(guarded(cell))).join('\t'));
  // A last row of one empty cell would read as the end of the row before it.
  const end = rows.length > 1 && rows.at(-1) === '' ? '\n' : '';
  return rows.join('\n') + end;
}

function quoted(cell: string): string {
  return /[\t\n\r]|^"/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}

/**
 * Reads what `cellsToText` and spreadsheet programs write. A quote is a quote only where it opens a cell and another
 * closes that cell: `5" tube` and `"open` stay as they are. One line break at the end belongs to the last row. Rows come
 * as long as they are; an empty text is one empty cell.
 */
export function textToCells(text: string): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  let at = 0;
  for (;;) {
    const cell = quotedCellAt(text, at) ?? plainCellAt(text, at);
    row.push(unguarded(cell.text));
    at = cell.end;
    if (text[at] === '\t') {
      at += 1;
      continue;
    }
    rows.push(row);
    if (text.startsWith('\r\n', at)) at += 2;
    else at += 1;
    if (at >= text.length) return rows;
    row = [];
  }
}

interface CellSpan {
  readonly text: string;
  readonly end: number;
}

const cellEnd = /[\t\r\n]/g;

function plainCellAt(text: string, at: number): CellSpan {
  cellEnd.lastIndex = at;
  const end = cellEnd.exec(text)?.index ?? text.length;
  return { text: text.slice(at, end), end };
}

function quotedCellAt(text: string, at: number): CellSpan | null {
  if (text[at] !== '"') return null;
  let close = at + 1;
  for (;;) {
    close = text.indexOf('"', close);
    if (close < 0) return null;
    if (text[close + 1] !== '"') break;
    close += 2;
  }
  const next = text[close + 1];
  if (next !== undefined && next !== '\t' && next !== '\n' && next !== '\r') return null;
  return { text: text.slice(at + 1, close).replaceAll('""', '"'), end: close + 1 };
}

export interface PlacedText {
  readonly row: number;
  readonly column: number;
  readonly text: string;
}

export interface PastePlan {
  readonly writes: readonly PlacedText[];
  /** What the pasted cells cover; it may reach below the last row. */
  readonly block: Block;
  /** Cells that found no place, to the right of the last column or below the last row of a grid that cannot grow. */
  readonly left: number;
}

/**
 * Where pasted cells land: one cell fills the whole selection; a block that fits the selection a whole number of times
 * both ways is repeated over it; any other lands with its first cell on the selection's first. Short rows leave the
 * cells beside them alone.
 * @param passedOver columns that take nothing: a block from elsewhere knows nothing of what a grid computes between its
 * columns, and goes on in the next
 */
export function planPaste(
  cells: readonly (readonly string[])[],
  {
    selection,
    extent,
    canGrow,
    passedOver = []
  }: {
    readonly selection: Block;
    readonly extent: Extent;
    readonly canGrow: boolean;
    readonly passedOver?: readonly number[];
  }
): PastePlan {
  const height = cells.length;
  const width = Math.max(0, ...cells.map((row) => row.length));
  const selectedRows = selection.bottom - selection.top + 1;
  const into = Array.from({ length: extent.columns - selection.left }, (_, at) => selection.left + at).filter(
    (column) => !passedOver.includes(column)
  );
  const selectedColumns = into.filter((column) => column <= selection.right).length;
  const repeats =
    !isOneCell(selection) &&
    height > 0 &&
    width > 0 &&
    selectedRows % height === 0 &&
    selectedColumns % width === 0;
  const rows = repeats ? selectedRows : height;
  const columns = repeats ? selectedColumns : width;

  const writes: PlacedText[] = [];
  let left = 0;
  for (let down = 0; down < rows; down += 1) {
    const source = cells[down % height] ?? [];
    for (let along = 0; along < columns; along += 1) {
      const text = source[along % width];
      if (text === undefined) continue;
      const row = selection.top + down;
      const column = into[along];
      if (column === undefined || (row >= extent.rows && !canGrow)) left += 1;
      else writes.push({ row, column, text });
    }
  }
  const lastRow = canGrow ? Number.POSITIVE_INFINITY : extent.rows - 1;
  return {
    writes,
    block: {
      top: selection.top,
      left: selection.left,
      bottom: Math.min(selection.top + Math.max(rows, 1) - 1, lastRow),
      right: into[Math.max(columns, 1) - 1] ?? extent.columns - 1
    },
    left
  };
}
