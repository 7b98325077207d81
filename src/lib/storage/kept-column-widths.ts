/**
 * Widths of columns that the user chose, kept on this device: how a grid is looked at, and no part of a workbook. A
 * browser that refuses its storage keeps them until the page is closed.
 */

/** Characters by column key, by the name of the grid. */
export type ColumnWidths = Readonly<Record<string, Readonly<Record<string, number>>>>;

const key = 'vapour-ledger.column-widths';

/** What is kept; what cannot be read, or was written by something else, counts as nothing. */
export function keptColumnWidths(): ColumnWidths {
  try {
    return widthsIn(JSON.parse(localStorage.getItem(key) ?? '{}'));
  } catch {
    return {};
  }
}

export function keepColumnWidths(widths: ColumnWidths): void {
  try {
    localStorage.setItem(key, JSON.stringify(widths));
  } catch {
    // Refused or full: nothing of the user's work is lost.
  }
}

function widthsIn(read: unknown): ColumnWidths {
  return mapped(read, (grid) =>
    mapped(grid, (ch) => (typeof ch === 'number' && ch >= 1 && ch <= 200 ? ch : undefined))
  );
}

/** The entries of an object whose values can be made something of. */
function mapped<T>(read: unknown, make: (value: unknown) => T | undefined): Record<string, T> {
  if (typeof read !== 'object' || read === null || Array.isArray(read)) return {};
  return Object.fromEntries(
    Object.entries(read).flatMap(([name, value]) => {
      const made = make(value);
      return made === undefined ? [] : [[name, made]];
    })
  );
}
