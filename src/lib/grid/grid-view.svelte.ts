/** The part of the grid that is in sight: which rows are drawn, and by which elements. */
import type { GridCursor } from './grid-cursor.svelte.ts';
import type { GridProps } from './grid-props.ts';
import { rowElements, type RowElement } from './row-elements.ts';
import { rowsAndGaps, rowsInSight, type RowOrGap } from './row-window.ts';

/** A grid of no more rows draws them all. */
const unwindowedRows = 60;
/** A held key comes again sooner. */
const pagingRestMs = 300;

export class GridView {
  readonly #given: Pick<GridProps, 'rows'>;
  readonly #cursor: GridCursor;

  /** What scrolls, with its height and the height of the header, which stays. */
  scroller = $state<HTMLElement>();
  heightPx = $state(0);
  headerPx = $state(0);
  #scrolledPx = $state(0);
  #rowPx = $state(30);
  #scrolledAsidePx = $state(0);
  /**
   * The cursor goes on by the page: no row is drawn around those in sight, since it would be gone at the next step. They
   * follow once the key is let go, or the user scrolls.
   */
  isPaging = $state(false);
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
    $effect(() => {
      if (!this.isPaging) return;
      void this.#scrolledPx;
      const rest = setTimeout(() => (this.isPaging = false), pagingRestMs);
      return () => clearTimeout(rest);
    });
  }

  /** Whether some rows are left out. */
  readonly isWindowed = $derived.by(() => this.#given.rows.length > unwindowedRows && !this.printing);
  /** The height in which rows are seen; a guess until it is known. */
  readonly #sightPx = $derived.by(() => (this.heightPx === 0 ? 600 : this.heightPx - this.headerPx));
  /** How far PageUp and PageDown go. */
  readonly pageRows = $derived.by(() => Math.max(1, Math.floor(this.#sightPx / this.#rowPx) - 1));
  /** How far the columns that stay are from where they began; told only while nothing moves aside. */
  readonly asidePx = $derived.by(() => (this.isPaging ? this.#scrolledAsidePx : null));

  #elements: readonly RowElement[] = [];
  /** The rows drawn and the gaps between them, each with the key of its element. */
  readonly drawn = $derived.by((): readonly (RowOrGap & { readonly key: string })[] => {
    const count = this.#given.rows.length;
    const span = this.isWindowed
      ? rowsInSight({
          scrolledPx: this.#scrolledPx,
          heightPx: this.#sightPx,
          rowPx: this.#rowPx,
          paging: this.isPaging
        })
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

  /** The scroll area has moved: a little after the grid has scrolled itself, farther where the user scrolls. */
  scrolled(): void {
    const { scrollTop = 0, scrollLeft = 0 } = this.scroller ?? {};
    const byUser =
      Math.abs(scrollTop - this.#scrolledPx) > this.#rowPx || scrollLeft !== this.#scrolledAsidePx;
    if (byUser) this.isPaging = false;
    this.#scrolledPx = scrollTop;
    this.#scrolledAsidePx = scrollLeft;
  }

  /**
   * Scrolls to the row with the cursor before anything is drawn, so that it and the rows around it are drawn once. A
   * short grid needs none of it.
   */
  scrollToCursor(): void {
    if (this.scroller === undefined || !this.isWindowed) return;
    const topPx = this.#cursor.active.row * this.#rowPx;
    const lowestPx = topPx + this.#rowPx - this.#sightPx;
    if (this.#scrolledPx <= topPx && this.#scrolledPx >= lowestPx) return;
    const aimPx = this.#scrolledPx > topPx ? topPx : lowestPx;
    this.isPaging = Math.abs(aimPx - this.#scrolledPx) > this.#sightPx / 2;
    this.scroller.scrollTop = aimPx;
    this.#scrolledPx = this.scroller.scrollTop;
  }
}

/** At most one gap lies above what is drawn, one below, and one beside the row with the cursor. */
function gapKey({ from, rows }: { readonly from: number; readonly rows: number }, count: number): string {
  if (from === 0) return 'gap above';
  return from + rows === count ? 'gap below' : 'gap between';
}
