/** The part of the grid that is in sight: which rows are drawn, and by which elements. */
import type { GridCursor } from './grid-cursor.svelte.ts';
import type { GridProps } from './grid-props.ts';
import { rowElements, type RowElement } from './row-elements.ts';
import { rowsAndGaps, rowsInSight, type RowOrGap } from './row-window.ts';

/** A grid of no more rows draws them all. */
const unwindowedRows = 60;

export class GridView {
  readonly #given: Pick<GridProps, 'rows'>;
  readonly #cursor: GridCursor;

  /** What scrolls, with its height and the height of the header, which stays. */
  scroller = $state<HTMLElement>();
  heightPx = $state(0);
  headerPx = $state(0);
  #scrolledPx = $state(0);
  #rowPx = $state(30);
  /** Paper takes all rows. */
  printing = $state(false);

  constructor(given: Pick<GridProps, 'rows'>, cursor: GridCursor) {
    this.#given = given;
    this.#cursor = cursor;
    $effect(() => {
      // Text zoom and themes change the height of a row; one drawn row tells for all.
      void this.heightPx;
      const row = this.scroller?.querySelector('tbody tr[aria-rowindex]');
      const px = row?.getBoundingClientRect().height ?? 0;
      if (px > 0) this.#rowPx = px;
    });
  }

  /** Whether some rows are left out. */
  readonly isWindowed = $derived.by(() => this.#given.rows.length > unwindowedRows && !this.printing);
  /** How far PageUp and PageDown go. */
  readonly pageRows = $derived.by(() =>
    Math.max(1, Math.floor((this.heightPx - this.headerPx) / this.#rowPx) - 1)
  );

  #elements: readonly RowElement[] = [];
  /** The rows drawn and the gaps between them, each with the key of its element. */
  readonly drawn = $derived.by((): readonly (RowOrGap & { readonly key: string })[] => {
    const count = this.#given.rows.length;
    const span = this.isWindowed
      ? rowsInSight({ scrolledPx: this.#scrolledPx, heightPx: this.heightPx || 600, rowPx: this.#rowPx })
      : { start: 0, end: count };
    const items = rowsAndGaps({ count, ...span, pinned: this.#cursor.active.row });
    const rows = items.flatMap((item) => (item.kind === 'row' ? [item.row] : []));
    this.#elements = rowElements(this.#elements, rows);
    const keys = this.#elements.values();
    return items.map((item) => ({
      ...item,
      key: item.kind === 'row' ? `row ${keys.next().value?.key}` : gapKey(item, count)
    }));
  });

  /** Where pointers find cells. */
  get ground(): { readonly scroller: HTMLElement; readonly headerPx: number } | null {
    const { scroller, headerPx } = this;
    return scroller === undefined ? null : { scroller, headerPx };
  }

  gapPx({ rows }: { readonly rows: number }): number {
    return rows * this.#rowPx;
  }

  scrolled(): void {
    this.#scrolledPx = this.scroller?.scrollTop ?? 0;
  }

  /**
   * Scrolls to the row with the cursor before anything is drawn, so that it and the rows around it are drawn once. A
   * short grid needs none of it.
   */
  scrollToCursor(): void {
    if (this.scroller === undefined || !this.isWindowed) return;
    const topPx = this.#cursor.active.row * this.#rowPx;
    const lowestPx = topPx + this.#rowPx - (this.heightPx - this.headerPx);
    if (this.#scrolledPx <= topPx && this.#scrolledPx >= lowestPx) return;
    this.scroller.scrollTop = this.#scrolledPx > topPx ? topPx : lowestPx;
    this.scrolled();
  }
}

/** At most one gap lies above what is drawn, one below, and one beside the row with the cursor. */
function gapKey({ from, rows }: { readonly from: number; readonly rows: number }, count: number): string {
  if (from === 0) return 'gap above';
  return from + rows === count ? 'gap below' : 'gap between';
}
