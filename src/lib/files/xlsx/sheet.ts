/** A spreadsheet as this project puts it together, before a library makes bytes of it. */

export type SheetCell =
  | { readonly kind: 'text'; readonly text: string; readonly look?: CellLook }
  | { readonly kind: 'number'; readonly value: number; readonly look?: CellLook }
  | { readonly kind: 'flag'; readonly value: boolean; readonly look?: CellLook }
  /** Without the equals sign; `result` is what the tool computed, shown until the program recalculates. */
  | {
      readonly kind: 'formula';
      readonly formula: string;
      readonly result: number | string;
      readonly look?: CellLook;
    };

/**
 * input, price: results follow from it. fixed, fixed-price: they do not, so that it is locked. note: words for the reader.
 * amount, money: how a result is shown.
 */
export type CellLook =
  'title' | 'heading' | 'input' | 'price' | 'fixed' | 'fixed-price' | 'note' | 'amount' | 'money';

/** A chart that the spreadsheet program draws from cells, and draws anew when they change. */
export interface SheetChart {
  readonly kind: 'lines' | 'stacked-columns';
  readonly title: string;
  /** Of the axis of amounts. */
  readonly unit: string;
  /** Cells under the axis, as a range on their sheet. */
  readonly categories: string;
  readonly series: readonly { readonly name: string; readonly values: string }[];
  /** Its upper left and lower right corner, in cells counted from 0. */
  readonly from: { readonly row: number; readonly column: number };
  readonly to: { readonly row: number; readonly column: number };
}

export interface Sheet {
  readonly name: string;
  readonly widthsCh: readonly number[];
  /** Rows that stay in sight when the sheet is scrolled. */
  readonly frozenRows: number;
  /** Columns that stay in sight; none where left out. */
  readonly frozenColumns?: number;
  /** Rows (counted from 0) that hold totals of what is above them. */
  readonly totals?: ReadonlySet<number>;
  readonly rows: readonly (readonly (SheetCell | null)[])[];
  /** True where only cells from which results follow can be changed, until a reader unlocks the sheet (no password). */
  readonly locked?: true;
  /** Cells (`P1:P9`) that turn red where a formula of the first of them comes true. */
  readonly alerts?: readonly { readonly cells: string; readonly when: string }[];
  readonly charts?: readonly SheetChart[];
  /** Cells that have a name of their own in formulas. */
  readonly names?: readonly { readonly name: string; readonly address: string }[];
}

/** A column's letters: 0 is A, 26 is AA. */
export function columnLetters(column: number): string {
  const rest = Math.floor(column / 26) - 1;
  return (rest >= 0 ? columnLetters(rest) : '') + String.fromCharCode(65 + (column % 26));
}

/** A cell as a formula on any sheet names it; row and column counted from 0. */
export function cellAddress(sheet: string, { row, column }: { row: number; column: number }): string {
  return `${quotedSheet(sheet)}!$${columnLetters(column)}$${row + 1}`;
}

/** A sheet's name as formulas and defined names take it, whatever signs are in it. */
export const quotedSheet = (name: string): string => `'${name.replaceAll("'", "''")}'`;
