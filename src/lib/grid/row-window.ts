/**
 * Which rows of a long grid are drawn. Pure.
 *
 * The installed list library places its items absolutely, which takes them out of the table's columns; rows of one known
 * height need no more than this: the rows in sight with some around them, and gaps as high as the rows left out. The row
 * with the cursor is always drawn, so that scrolling never takes the focus away.
 */
export type RowOrGap =
  | { readonly kind: 'row'; readonly row: number }
  | { readonly kind: 'gap'; readonly from: number; readonly rows: number };

export interface RowWindow {
  /** Rows in all. */
  readonly count: number;
  /** First row drawn, and the one after the last. */
  readonly start: number;
  readonly end: number;
  /** Drawn wherever it lies. */
  readonly pinned: number;
}

export function rowsAndGaps({ count, start, end, pinned }: RowWindow): RowOrGap[] {
  const from = Math.max(0, Math.min(start, count));
  const to = Math.max(from, Math.min(end, count));
  const spans: [number, number][] = [[from, to]];
  if (pinned >= 0 && pinned < from) spans.unshift([pinned, pinned + 1]);
  if (pinned >= to && pinned < count) spans.push([pinned, pinned + 1]);

  const drawn: RowOrGap[] = [];
  let next = 0;
  for (const [first, after] of spans) {
    if (first > next) drawn.push({ kind: 'gap', from: next, rows: first - next });
    for (let row = first; row < after; row += 1) drawn.push({ kind: 'row', row });
    next = Math.max(next, after);
  }
  if (next < count) drawn.push({ kind: 'gap', from: next, rows: count - next });
  return drawn;
}

/**
 * The rows to draw for a scroll position, in steps of some rows so that small scrolls draw nothing anew. While the grid
 * goes on by the page, none are drawn around those in sight: they would be gone before anybody saw them. Heights in CSS
 * pixels.
 */
export function rowsInSight({
  scrolledPx,
  heightPx,
  rowPx,
  paging = false
}: {
  readonly scrolledPx: number;
  readonly heightPx: number;
  readonly rowPx: number;
  readonly paging?: boolean;
}): { readonly start: number; readonly end: number } {
  const step = paging ? 1 : 4;
  const around = paging ? 0 : 6;
  const first = Math.floor(scrolledPx / rowPx / step) * step;
  return { start: Math.max(0, first - around), end: first + Math.ceil(heightPx / rowPx) + step + around };
}
