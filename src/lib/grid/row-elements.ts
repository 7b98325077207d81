/**
 * Which element shows which drawn row. While a long grid scrolls its elements are used again: writing other texts into a
 * row costs less than making one. Pure.
 */
export interface RowElement {
  readonly row: number;
  /** Stays with the element. */
  readonly key: number;
}

/**
 * Hands the elements of the rows drawn before to the rows to be drawn now. A row that stays keeps its element, so that
 * the focus and an edit stay where they are; what leaves at one end enters at the other.
 */
export function rowElements(before: readonly RowElement[], rows: readonly number[]): RowElement[] {
  const keyBefore = new Map(before.map(({ row, key }) => [row, key]));
  const stay = new Set(rows);
  const free = before.filter(({ row }) => !stay.has(row)).map(({ key }) => key);
  let unused = 1 + Math.max(-1, ...keyBefore.values());
  return rows.map((row) => ({ row, key: keyBefore.get(row) ?? free.shift() ?? unused++ }));
}
