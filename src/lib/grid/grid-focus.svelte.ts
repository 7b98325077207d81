/** The focus: the cell with the cursor holds the one field of the grid, and the field has the focus. */
import { flushSync, tick } from 'svelte';
import { isListed } from './cell-edit.ts';
import { placeOf } from './cell-under.ts';
import type { GridSession } from './grid-session.svelte.ts';
import type { GridView } from './grid-view.svelte.ts';

export class GridFocus {
  readonly #session: GridSession;
  readonly #view: GridView;
  #refocusing = false;

  field = $state<HTMLInputElement | null>(null);

  constructor(session: GridSession, view: GridView) {
    this.#session = session;
    this.#view = view;
  }

  /** The element of the cell with the cursor. */
  get cell(): HTMLElement | null {
    return this.field?.closest('td') ?? null;
  }

  /** Whether something happened in the field while a cell is under edit: it is the field's own then. */
  isEditing(target: EventTarget | null): boolean {
    return target === this.field && this.#session.edit !== null;
  }

  /** Takes the focus, with all the field's text selected so that typing replaces it. */
  async take(): Promise<void> {
    await this.show();
    if (this.field === null) return;
    this.field.focus({ preventScroll: true });
    if (this.#session.edit === null) this.field.select();
  }

  /** Brings the cell with the cursor into sight. */
  async show(): Promise<void> {
    this.#leaveCell();
    this.#view.scrollToCursor();
    await tick();
    this.cell?.scrollIntoView?.({ block: 'nearest', inline: 'nearest' });
  }

  /**
   * Gives the focus up while all is laid out. A field that is taken away with the focus makes the browser lay out all
   * that has changed at that moment, and once more when the rest has.
   */
  #leaveCell(): void {
    const { row, column } = this.#session.cursor.active;
    const left = placeOf(this.cell);
    if (left === null || (left.row === row && left.column === column)) return;
    this.#refocusing = true;
    this.field?.blur();
    this.#refocusing = false;
  }

  /** Opens the cell with the cursor; `typed` over it, else with the caret after its text. */
  async edit(typed?: string): Promise<void> {
    if (!this.#session.startEdit(typed)) return;
    await this.take();
    if (isListed(this.#session.activeColumn)) this.field?.select();
    else this.field?.setSelectionRange(this.field.value.length, this.field.value.length);
  }

  /** The same by a finger: only a field that gains the focus brings up the keyboard on the screen. */
  editByTouch(): void {
    this.#session.startEdit();
    flushSync();
    this.#refocusing = true;
    this.field?.blur();
    this.field?.focus();
    this.#refocusing = false;
  }

  /** An edit ends where the focus leaves `grid`. */
  left(event: FocusEvent, grid: HTMLElement): void {
    if (this.#session.edit === null || this.#refocusing) return;
    const to = event.relatedTarget;
    // Another window may take the focus: the page's own focus then stays where it is, and so does the edit.
    if ((to instanceof Node && grid.contains(to)) || document.activeElement === this.field) return;
    this.#session.commitEdit();
  }
}
