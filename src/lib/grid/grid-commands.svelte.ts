/** Carries out what keys and the menu ask for. What needs no element or answer of the page, the session does. */
import { isListed } from './cell-edit.ts';
import type { GridClipboard } from './grid-clipboard.ts';
import type { GridFocus } from './grid-focus.svelte.ts';
import type { GridParts } from './grid-parts.ts';
import type { GridProps } from './grid-props.ts';
import type { GridSieve } from './grid-sieve.svelte.ts';
import type { GridSession } from './grid-session.svelte.ts';
import type { GridView } from './grid-view.svelte.ts';
import type { GridWidths } from './grid-widths.svelte.ts';
import type { Command } from './keys.ts';
import { menuItems, type MenuItem } from './menu-items.ts';
import { likeCell, type FilterCondition } from './row-filter.ts';
import { sortInWords } from './row-order.ts';
import { isOneCell, type Block } from './selection.ts';

const noFilter = 'The rows of this grid are not filtered: there are few, and their order says something.';

/** A search that is open. */
export interface OpenSearch {
  readonly replacing: boolean;
  /** What was selected when it was opened; null where it was a single cell. */
  readonly within: Block | null;
}

export class GridCommands {
  readonly #given: GridProps;
  readonly #sieve: GridSieve;
  readonly #session: GridSession;
  readonly #widths: GridWidths;
  readonly #view: GridView;
  readonly #focus: GridFocus;
  readonly #clipboard: Pick<GridClipboard, 'read' | 'write'>;

  /** What lies over or above the grid: the menu with its place, the list of keys, the search. */
  menu = $state.raw<{ readonly at: () => Element | DOMRect | null } | null>(null);
  keysOpen = $state(false);
  find = $state.raw<OpenSearch | null>(null);
  /** The conditions of the filter are shown, though they may hide nothing. */
  filterOpen = $state(false);

  constructor(
    { sieve, given, session, widths, view, focus }: GridParts,
    clipboard: Pick<GridClipboard, 'read' | 'write'>
  ) {
    this.#clipboard = clipboard;
    this.#sieve = sieve;
    this.#given = given;
    this.#session = session;
    this.#widths = widths;
    this.#view = view;
    this.#focus = focus;
  }

  /** False where the key is the browser's after all. */
  run(command: Command): boolean {
    const session = this.#session;
    const column = session.activeColumn;
    switch (command.kind) {
      case 'enter':
        if (command.back || !isOneCell(session.cursor.block)) {
          session.cursor.enter(command.back);
          break;
        }
        if (session.canEdit(session.cursor.active)) void this.#focus.edit();
        else this.ask();
        return true;
      case 'edit':
        void this.#focus.edit();
        return true;
      case 'list':
        return this.#openList();
      case 'toggle':
        if (!session.toggle()) return this.#openList();
        break;
      case 'erase':
        if (session.canEdit(session.cursor.active)) void this.#focus.edit('');
        return true;
      case 'undo':
      case 'redo':
        this.#stepBack(command.kind);
        break;
      case 'open':
        this.open(session.cursor.active.row);
        return true;
      case 'ask':
        this.ask();
        return true;
      case 'range':
        this.#askRange();
        return true;
      case 'find':
        // The browser's own search sees all rows of a short grid.
        if (!this.#view.isWindowed) return false;
        this.openFind(false);
        return true;
      case 'replace':
        this.openFind(true);
        return true;
      case 'copy':
      case 'copy-with-headings':
      case 'cut':
        void this.#clipboard.write(command.kind);
        return true;
      case 'paste':
        void this.#clipboard.read();
        return true;
      case 'filter':
        this.openFilter();
        return true;
      case 'like-this':
        this.#onlyLikeThis();
        break;
      case 'hide-columns':
        this.#hideColumns();
        break;
      case 'show-all':
        this.showAll();
        return true;
      case 'menu':
        this.openMenu(() => this.#focus.cell);
        return true;
      case 'fit-column':
        if (column !== undefined) this.#widths.fit(column);
        return true;
      case 'reset-column':
        if (column !== undefined) this.#widths.reset(column);
        return true;
      case 'resize':
        if (column !== undefined) this.#widths.set(column, this.#widths.inCh(column) + command.byCh);
        return true;
      default:
        if (!session.obey(command, this.#view.pageRows)) return false;
    }
    void this.#focus.take();
    return true;
  }

  /** Opens the search; with what was selected, so that it can be kept to that. */
  openFind(replacing: boolean): void {
    const { block } = this.#session.cursor;
    const within = isOneCell(block) ? null : block;
    this.find = { replacing, within };
  }

  // What is looked at

  /** Shows the conditions of the filter, one to begin with. */
  openFilter(): void {
    if (this.#given.canFilter !== true) {
      this.#session.told = noFilter;
      return;
    }
    const { key = '' } = this.#session.activeColumn ?? {};
    if (this.#sieve.conditions.length === 0) this.filterBy([{ column: key, rule: 'contains', text: '' }]);
    this.filterOpen = true;
  }

  /** Shows the rows that fit; the cursor stays on its row where that is one of them. */
  filterBy(conditions: readonly FilterCondition[]): void {
    this.#stayingAtRow(() => this.#sieve.filter(conditions));
    this.#session.told = this.#sieve.inWords;
  }

  showAll(): void {
    this.#stayingAtRow(() => this.#sieve.showAll());
    this.filterOpen = false;
    this.#session.told = 'All rows and columns are shown.';
    void this.#focus.take();
  }

  #onlyLikeThis(): void {
    const { activeCell: cell, activeColumn: column } = this.#session;
    if (this.#given.canFilter !== true) this.#session.told = noFilter;
    else if (cell !== undefined && column !== undefined) {
      const others = this.#sieve.conditions.filter(
        ({ column: key, text, rule }) => key !== column.key && (text.trim() !== '' || rule === 'empty')
      );
      this.filterBy([...others, likeCell(column.key, cell)]);
    }
  }

  #hideColumns(): void {
    const { left, right } = this.#session.cursor.block;
    const keys = this.#given.columns.slice(left, right + 1).map(({ key }) => key);
    const { row, column } = this.#session.cursor.active;
    if (this.#sieve.hideColumns(keys)) this.#session.cursor.go({ row, column: Math.min(left, column) });
    this.#session.told = this.#given.columns.some(({ key }) => keys.includes(key))
      ? 'The last column cannot be hidden.'
      : this.#sieve.inWords;
  }

  #stayingAtRow(change: () => void): void {
    const { cursor } = this.#session;
    const id = this.#given.rows[cursor.active.row]?.id;
    const key = this.#given.columns[cursor.active.column]?.key;
    change();
    const { rows, columns } = this.#given;
    cursor.go({
      row: Math.max(
        0,
        rows.findIndex((row) => row.id === id)
      ),
      column: Math.max(
        0,
        columns.findIndex((column) => column.key === key)
      )
    });
  }

  #openList(): boolean {
    if (!isListed(this.#session.activeColumn)) return false;
    void this.#focus.edit();
    return true;
  }

  #stepBack(way: 'undo' | 'redo'): void {
    const before = this.#given.rows;
    (way === 'undo' ? this.#given.onundo : this.#given.onredo)?.();
    // The step may lie on another sheet, or there may be none.
    if (this.#given.rows !== before) this.#session.told = way === 'undo' ? 'Undone' : 'Redone';
  }

  // What the page answers

  ask(): void {
    const path = this.#session.activeCell?.path;
    if (path !== undefined) this.#given.onask?.(path);
  }

  open(row: number): void {
    const id = this.#given.rows[row]?.id;
    if (id !== undefined) this.#given.onopen?.(id);
  }

  /** Whether the cell with the cursor takes a range, and has one; null where ranges are not for this grid. */
  readonly #rangeState = $derived.by(() => {
    const { activeCell: cell, activeColumn: column } = this.#session;
    if (this.#given.onrange === undefined) return null;
    if (column?.kind !== 'number' || cell?.state !== 'given' || cell.path === undefined) return 'shut';
    return cell.ranged === true ? 'given' : 'none';
  });

  #askRange(): void {
    const path = this.#session.activeCell?.path ?? '';
    if (this.#rangeState === 'none' || this.#rangeState === 'given')
      this.#given.onrange?.(path, () => void this.#focus.take());
    else this.#session.told = 'Only a cell with a number of its own takes a range.';
  }

  // Menu

  openMenu(at: () => Element | DOMRect | null): void {
    this.#session.commitEdit();
    this.menu = { at };
  }

  closeMenu(refocus: boolean): void {
    this.menu = null;
    if (refocus) void this.#focus.take();
  }

  readonly menuGroups = $derived.by(() => {
    const {
      onask,
      onopen,
      rowOpenLabel,
      canGrow = false,
      canReorder = false,
      canSort,
      canFilter
    } = this.#given;
    const { top, bottom, left, right } = this.#session.cursor.block;
    const column = this.#session.activeColumn;
    return menuItems({
      manyRows: top !== bottom,
      manyColumns: left !== right,
      sorts:
        canSort === true && column !== undefined
          ? { up: sortInWords(column, 'up'), down: sortInWords(column, 'down') }
          : null,
      canFilter: canFilter === true,
      hidesAny: this.#sieve.hidesAny,
      range: this.#rangeState,
      takesFindKey: this.#view.isWindowed,
      canAsk: onask !== undefined && this.#session.activeCell?.path !== undefined,
      openLabel: onopen === undefined ? null : (rowOpenLabel ?? 'Open'),
      canGrow,
      canReorder,
      canDo: (command) => this.#session.canDo(command)
    });
  });

  choose({ command }: MenuItem): void {
    // The search and the filter take the focus themselves.
    this.closeMenu(command.kind !== 'find' && command.kind !== 'replace' && command.kind !== 'filter');
    if (command.kind === 'show-keys') this.keysOpen = true;
    else if (command.kind === 'find') this.openFind(false);
    else this.run(command);
  }
}
