/**
 * Which element shows which drawn row. Elements are used again while a long grid scrolls: to write other texts into a
 * row costs a tenth of making one. Pure.
 */
export interface RowElement {
  readonly row: number;
  /** Stays with the element. */
  readonly key: number;
}

/**
 * Hands the elements of the rows drawn before to the rows to be drawn now, both in ascending order. After a short scroll
 * the rows that stay keep theirs, and what left at one end enters at the other. After a leap every element stays where it
 * is and shows another row; moving them would cost more. The row with the cursor keeps its element: it has the focus.
 */
export function rowElements(
  before: readonly RowElement[],
  rows: readonly number[],
  cursorRow: number
): RowElement[] {
  const keyBefore = new Map(before.map(({ row, key }) => [row, key]));
  const staying = rows.filter((row) => keyBefore.has(row));
  const isLeap = staying.length < (2 / 3) * rows.length;
  const keeps = new Set(isLeap ? staying.filter((row) => row === cursorRow) : staying);
  const free = before.filter(({ row }) => !keeps.has(row)).map(({ key }) => key);
  let unused = 1 + Math.max(-1, ...keyBefore.values());
  return rows.map((row) => ({
    row,
    key: (keeps.has(row) ? keyBefore.get(row) : free.shift()) ?? unused++
  }));
}
