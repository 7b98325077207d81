/** A drag that begins in the grid: over cells, headers, the fill handle or the edge of a column. */
import type { Point } from './cell-under.ts';

export type Drag =
  | { readonly kind: 'cells' | 'fill' }
  | { readonly kind: 'rows' | 'columns'; readonly from: number }
  | { readonly kind: 'move-rows'; readonly row: number; readonly startY: number }
  | {
      readonly kind: 'width';
      readonly key: string;
      readonly startX: number;
      readonly startCh: number;
      readonly pxPerCh: number;
    };

export interface DragGround {
  readonly scroller: HTMLElement;
  /** Height of the sticky header, which no cell lies under. */
  readonly headerPx: number;
}

/**
 * Follows one drag, and scrolls the grid while the pointer is held beyond its edge: the farther out, the faster.
 * `ondrag` is called for each move of the pointer and each such scroll.
 */
export class PointerDrag {
  readonly #ground: () => DragGround | null;
  readonly #ondrag: (drag: Drag, pointer: Point) => void;
  #drag: Drag | null = null;
  #pointer: Point = { x: 0, y: 0 };

  constructor(ground: () => DragGround | null, ondrag: (drag: Drag, pointer: Point) => void) {
    this.#ground = ground;
    this.#ondrag = ondrag;
  }

  start(drag: Drag, event: PointerEvent): void {
    this.#drag = drag;
    this.#pointer = { x: event.clientX, y: event.clientY };
    if (drag.kind !== 'width') requestAnimationFrame(() => this.#scrollBeyondEdge());
    event.preventDefault();
  }

  move(event: PointerEvent): void {
    if (this.#drag === null) return;
    this.#pointer = { x: event.clientX, y: event.clientY };
    this.#ondrag(this.#drag, this.#pointer);
  }

  /** Ends the drag; what it was, or null where there was none. */
  end(): Drag | null {
    const drag = this.#drag;
    this.#drag = null;
    return drag;
  }

  #scrollBeyondEdge(): void {
    const ground = this.#ground();
    if (this.#drag === null || ground === null) return;
    const box = ground.scroller.getBoundingClientRect();
    const down = speed(this.#pointer.y, { low: box.top + ground.headerPx, high: box.bottom - 12 });
    const along = speed(this.#pointer.x, { low: box.left + 12, high: box.right - 12 });
    if (down !== 0 || along !== 0) {
      ground.scroller.scrollBy(along, down);
      this.#ondrag(this.#drag, this.#pointer);
    }
    requestAnimationFrame(() => this.#scrollBeyondEdge());
  }
}

/** Pixels to scroll in this frame: a third of the way beyond the edge, 24 at most. */
function speed(at: number, { low, high }: { readonly low: number; readonly high: number }): number {
  const beyond = at < low ? at - low : Math.max(0, at - high);
  return Math.max(-24, Math.min(24, beyond / 3));
}
