/** What clicks and taps do: they open, edit and bring up the menu. Selecting is in `grid-pointer.svelte.ts`. */
import { numberAbove, placeOf } from './cell-under.ts';
import type { GridCommands } from './grid-commands.svelte.ts';
import type { GridParts } from './grid-parts.ts';
import type { GridPointer } from './grid-pointer.svelte.ts';
import { holds } from './selection.ts';

export class GridClicks {
  readonly #parts: GridParts;
  readonly #commands: GridCommands;
  readonly #pointer: GridPointer;

  constructor(parts: GridParts, commands: GridCommands, pointer: GridPointer) {
    this.#parts = parts;
    this.#commands = commands;
    this.#pointer = pointer;
  }

  /** The grid places the focus itself; the field under edit and the buttons keep their own ways. */
  mousedown(event: MouseEvent): void {
    const target = event.target as Element;
    if (!this.#parts.focus.isEditing(target) && target.closest('button') === null) event.preventDefault();
  }

  click(event: MouseEvent): void {
    const { session, focus } = this.#parts;
    const target = event.target as Element;
    const toOpen = numberAbove(target, 'data-open');
    if (toOpen !== null) return this.#commands.open(toOpen);
    const row = numberAbove(target, 'data-menu');
    if (row !== null) {
      // What ends a drag is no wish for the menu.
      if (this.#pointer.endsDrag()) return;
      const { top, bottom } = session.cursor.block;
      if (row < top || row > bottom) session.cursor.go({ row, column: session.cursor.active.column });
      return this.#commands.openMenu(() => target.closest('[data-menu]'));
    }
    if (target.closest('[data-drop]') !== null) return void focus.edit();
    if (this.#pointer.byTouch && !focus.isEditing(target)) this.#tap(target);
  }

  /** The first tap selects, a second on the same cell edits. */
  #tap(target: Element): void {
    const { session, focus } = this.#parts;
    const { active } = session.cursor;
    const place = placeOf(target);
    const again =
      place !== null &&
      place.row === active.row &&
      place.column === active.column &&
      document.activeElement === focus.field &&
      session.edit === null;
    if (!again) this.#pointer.press(target);
    else if (session.canEdit(place)) focus.editByTouch();
    else this.#commands.ask();
  }

  double(event: MouseEvent): void {
    const { given, session, widths, focus } = this.#parts;
    const target = event.target as Element;
    const column = given.columns[numberAbove(target, 'data-width') ?? -1];
    if (column !== undefined) return widths.fit(column);
    if (placeOf(target) === null || session.edit !== null) return;
    if (session.canEdit(session.cursor.active)) void focus.edit();
    else this.#commands.ask();
  }

  contextmenu(event: MouseEvent): void {
    const { session, focus } = this.#parts;
    const { cursor } = session;
    const target = event.target as Element;
    if (focus.isEditing(target)) return;
    const row = numberAbove(target, 'data-row-header');
    const place = placeOf(target) ?? (row === null ? null : { row, column: cursor.active.column });
    if (place === null) return;
    event.preventDefault();
    session.commitEdit();
    const inRows = row !== null && row >= cursor.block.top && row <= cursor.block.bottom;
    if (!holds(cursor.block, place) && !inRows) cursor.go(place);
    const at = new DOMRect(event.clientX, event.clientY, 0, 0);
    this.#commands.openMenu(() => at);
  }
}
