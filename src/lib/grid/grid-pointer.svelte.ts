/** A pointer pressed and dragged: it selects, fills, moves rows and sets widths. What a click does is in `grid-clicks.ts`. */
import { numberAbove, placeOf, placeUnder, type Point } from './cell-under.ts';
import type { GridParts } from './grid-parts.ts';
import { PointerDrag, type Drag } from './pointer-drag.ts';

export class GridPointer {
  readonly #parts: GridParts;
  readonly #drag: PointerDrag;
  /** A row taken hold of has been dragged away from where it was. */
  #draggedRows = false;

  /** A finger has tapped: the keyboard on the screen stays away until a cell is edited. */
  byTouch = $state(false);

  constructor(parts: GridParts) {
    this.#parts = parts;
    this.#drag = new PointerDrag(
      () => parts.view.ground,
      (drag, pointer) => this.#dragTo(drag, pointer)
    );
  }

  down(event: PointerEvent): void {
    const { given, focus } = this.#parts;
    this.byTouch = event.pointerType === 'touch';
    const target = event.target as Element;
    if (event.button !== 0 || focus.isEditing(target)) return;
    const edge = target.closest('[data-width]');
    if (edge !== null) return this.#takeEdge(event, edge);
    const rowToMove = given.canReorder === true ? numberAbove(target, 'data-menu') : null;
    if (rowToMove !== null) return this.#takeRow(rowToMove, event);
    if (target.closest('button, [data-drop]') !== null) return;
    // Under a finger the handle stretches the selection; the menu fills.
    if (target.closest('[data-handle]') !== null)
      return this.#drag.start({ kind: this.byTouch ? 'cells' : 'fill' }, event);
    // A finger that moves scrolls; what it taps arrives as a click.
    if (this.byTouch) return;
    const started = this.press(target, event.shiftKey);
    if (started !== null) this.#drag.start(started, event);
  }

  /** Selects what was pressed; the drag that may follow, or null where nothing can be selected. */
  press(target: Element, shift = false): Drag | null {
    const { session, focus } = this.#parts;
    const { cursor } = session;
    const place = placeOf(target);
    const row = numberAbove(target, 'data-row-header');
    const column = numberAbove(target, 'data-header');
    if (place === null && row === null && column === null && target.closest('[data-corner]') === null)
      return null;
    session.commitEdit();
    let drag: Drag = { kind: 'cells' };
    if (place !== null) {
      if (shift) cursor.stretchTo(place);
      else cursor.go(place);
    } else if (row !== null) {
      const from = shift ? cursor.active.row : row;
      cursor.selectRows(from, row);
      drag = { kind: 'rows', from };
    } else if (column !== null) {
      const from = shift ? cursor.active.column : column;
      cursor.selectColumns(from, column);
      drag = { kind: 'columns', from };
    } else cursor.selectAll();
    void focus.take();
    return drag;
  }

  /** A button that opens a menu, and that moves the row where it is dragged. */
  #takeRow(row: number, event: PointerEvent): void {
    this.#parts.session.commitEdit();
    this.#drag.start({ kind: 'move-rows', row, startY: event.clientY }, event);
    this.#draggedRows = false;
  }

  #takeEdge(event: PointerEvent, edge: Element): void {
    const { given, widths } = this.#parts;
    const column = given.columns[numberAbove(edge, 'data-width') ?? -1];
    const header = edge.closest('th');
    if (column === undefined || header === null) return;
    const startCh = widths.inCh(column);
    const paddingPx = 1.125 * Number.parseFloat(getComputedStyle(document.documentElement).fontSize);
    const pxPerCh = Math.max(4, (header.getBoundingClientRect().width - paddingPx) / startCh);
    this.#drag.start({ kind: 'width', key: column.key, startX: event.clientX, startCh, pxPerCh }, event);
  }

  move(event: PointerEvent): void {
    this.#drag.move(event);
  }

  #dragTo(drag: Drag, pointer: Point): void {
    const { session, widths, view } = this.#parts;
    if (drag.kind === 'width')
      return widths.set(drag, drag.startCh + (pointer.x - drag.startX) / drag.pxPerCh);
    const place = view.ground === null ? null : placeUnder(pointer, view.ground);
    if (place === null) return;
    if (drag.kind === 'move-rows') {
      if (!this.#draggedRows && Math.abs(pointer.y - drag.startY) < 5) return;
      if (!this.#draggedRows) session.takeRow(drag.row);
      this.#draggedRows = true;
      return session.dragRowsTo(place.row);
    }
    if (drag.kind === 'rows') session.cursor.selectRows(drag.from, place.row);
    else if (drag.kind === 'columns') session.cursor.selectColumns(drag.from, place.column);
    else if (drag.kind === 'fill') session.dragFill(place);
    else session.cursor.stretchTo(place);
  }

  up(): void {
    const { session, focus } = this.#parts;
    const ended = this.#drag.end()?.kind;
    if (ended === 'fill') session.dropFill();
    else if (ended === 'move-rows' && this.#draggedRows) session.dropRows();
    else return;
    void focus.take();
  }

  cancel(): void {
    const { session } = this.#parts;
    this.#drag.end();
    session.fillTarget = null;
    session.dropRow = null;
  }

  /** Whether the click that has come ends a drag of rows; asked once. */
  endsDrag(): boolean {
    const ends = this.#draggedRows;
    this.#draggedRows = false;
    return ends;
  }
}
