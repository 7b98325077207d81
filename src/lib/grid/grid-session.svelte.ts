/**
 * What the grid remembers between two keys: the selection, the edit under way, the block about to be filled. It turns
 * commands into moves and into the one action that the caller is told of. It knows no elements: the component does.
 */
import { planPaste, textToCells, cellsToText, type PlacedText } from './clipboard.ts';
import { draggedFill, fillDown, fillOver, fillRight, type Fill } from './fill.ts';
import type { CellWrite, GridAction, GridCell, GridColumn, GridOption, GridRow } from './grid-types.ts';
import type { Command, RowCommand } from './keys.ts';
import { matchingOptions } from './matching-options.ts';
import { clampPlace, moved, tabbed, type Extent, type Move, type Place } from './moves.ts';
import {
  clampSelection,
  coversWholeRows,
  everything,
  isOneCell,
  movingCorner,
  onePlace,
  placesOf,
  roundInside,
  rowsOf,
  stretched,
  wholeColumns,
  wholeRows,
  type Block,
  type Selection
} from './selection.ts';

/** What the grid is given, read anew each time. */
export interface GridSource {
  readonly columns: readonly GridColumn[];
  readonly rows: readonly GridRow[];
  readonly canGrow: boolean;
  readonly canReorder: boolean;
  /** Tells the caller; a sentence that comes back says why nothing, or not all, was done. */
  readonly onaction: (action: GridAction) => string | void;
}

export interface Edit {
  readonly text: string;
  /** The cell's text before. */
  readonly before: string;
  /** Begun by typing over the cell: arrows then end the edit. */
  readonly typedOver: boolean;
  /** For a choice: whether its list is open, and the option that is lit; -1 for none. */
  readonly listOpen: boolean;
  readonly option: number;
  /** Typed in, or an option chosen by hand; an edit without either changes nothing. */
  readonly touched: boolean;
}

const yesNo: readonly GridOption[] = [
  { id: 'yes', label: 'yes' },
  { id: 'no', label: 'no' }
];

export function optionsOf(column: GridColumn): readonly GridOption[] {
  return column.options ?? (column.kind === 'flag' ? yesNo : []);
}

export function isListed(column: GridColumn | undefined): boolean {
  return column?.kind === 'choice' || column?.kind === 'flag';
}

const counted = (count: number, one: string, many = `${one}s`): string =>
  `${count} ${count === 1 ? one : many}`;

export class GridSession {
  readonly #source: GridSource;
  #wanted = $state.raw<Selection>(onePlace({ row: 0, column: 0 }));
  /** The column in which a run of Tabs began; Enter goes back to it. */
  #tabbedFrom: number | null = null;

  edit = $state.raw<Edit | null>(null);
  /** Where the fill handle has been dragged to. */
  fillTarget = $state.raw<Block | null>(null);
  /** The row before or after which the rows being dragged would be put; null where they would stay. */
  dropRow = $state<number | null>(null);
  /** What an assistive technology is to say. */
  told = $state('');

  constructor(source: GridSource) {
    this.#source = source;
  }

  readonly extent = $derived.by((): Extent => ({
    rows: this.#source.rows.length,
    columns: this.#source.columns.length
  }));
  readonly selection = $derived.by((): Selection => clampSelection(this.#wanted, this.extent));
  readonly active = $derived.by((): Place => this.selection.active);
  readonly block = $derived.by((): Block => this.selection.block);
  readonly activeColumn = $derived.by((): GridColumn | undefined => this.#source.columns[this.active.column]);
  readonly activeCell = $derived.by((): GridCell | undefined => this.cellAt(this.active));

  /** The options that fit the edit under way. */
  readonly matches = $derived.by((): readonly GridOption[] => {
    const column = this.activeColumn;
    if (this.edit === null || column === undefined || !isListed(column)) return [];
    return matchingOptions(optionsOf(column), this.edit.touched ? this.edit.text : '');
  });

  cellAt({ row, column }: Place): GridCell | undefined {
    return this.#source.rows[row]?.cells[column];
  }

  /** Whether the user may type here. What does not apply to a row takes pasted texts, since the row may change with them. */
  canEdit(place: Place): boolean {
    const cell = this.cellAt(place);
    const column = this.#source.columns[place.column];
    return (
      cell !== undefined && column?.kind !== 'computed' && cell.state !== 'computed' && cell.state !== 'off'
    );
  }

  // Moving and selecting

  go(place: Place): void {
    this.#tabbedFrom = null;
    this.#wanted = onePlace(clampPlace(place, this.extent));
  }

  stretchTo(place: Place): void {
    this.#wanted = stretched(this.selection, clampPlace(place, this.extent));
    this.#tellSelection();
  }

  selectRows(from: number, to: number): void {
    this.#wanted = wholeRows({ from, to }, this.extent);
    this.#tellSelection();
  }

  selectColumns(from: number, to: number): void {
    this.#wanted = wholeColumns({ from, to }, this.extent);
    this.#tellSelection();
  }

  selectAll(): void {
    this.#wanted = everything(this.active, this.extent);
    this.#tellSelection();
  }

  move(move: Move, stretch: boolean, pageRows: number): void {
    const around = {
      extent: this.extent,
      pageRows,
      filled: (place: Place) => (this.cellAt(place)?.text ?? '') !== ''
    };
    if (stretch) this.stretchTo(moved(movingCorner(this.selection), move, around));
    else this.go(moved(this.active, move, around));
  }

  /** Moves on for Tab; false where the focus is to leave the grid. */
  tab(back: boolean): boolean {
    if (!isOneCell(this.block)) return this.#goRound('rows', back);
    const next = tabbed(this.active, back, this.extent);
    if (next === null) return false;
    const from = this.#tabbedFrom ?? this.active.column;
    this.go(next);
    if (!back) this.#tabbedFrom = from;
    return true;
  }

  /** Moves on for Enter after an edit: down, or back to where a run of Tabs began. */
  enter(back: boolean): void {
    if (!isOneCell(this.block)) {
      this.#goRound('columns', back);
      return;
    }
    const column = this.#tabbedFrom ?? this.active.column;
    this.go({ row: this.active.row + (back ? -1 : 1), column });
  }

  #goRound(along: 'rows' | 'columns', back: boolean): true {
    this.#wanted = { active: roundInside(this.block, this.active, { along, back }), block: this.block };
    return true;
  }

  #tellSelection(): void {
    const { top, bottom, left, right } = this.block;
    const rows = bottom - top + 1;
    const columns = right - left + 1;
    if (rows * columns > 1) this.told = `${counted(rows, 'row')} by ${counted(columns, 'column')} selected`;
  }

  // Editing

  /** Opens the active cell. `typed` is what was typed over it; left out, its own text is edited. */
  startEdit({ typed, listOpen }: { readonly typed?: string; readonly listOpen?: boolean } = {}): boolean {
    const column = this.activeColumn;
    const cell = this.activeCell;
    if (column === undefined || cell === undefined || !this.canEdit(this.active)) {
      this.told =
        cell?.message ??
        (cell?.state === 'off' ? 'Does not apply to this row.' : 'Computed; it cannot be typed over.');
      return false;
    }
    const listed = isListed(column);
    const current = optionsOf(column).findIndex(
      ({ id, label }) => label === cell.text || id === cell.editText
    );
    this.edit = {
      text: typed ?? cell.editText,
      before: cell.editText,
      typedOver: typed !== undefined,
      listOpen: listed && (listOpen ?? true),
      option: typed === undefined ? current : 0,
      touched: typed !== undefined
    };
    return true;
  }

  type(text: string): void {
    if (this.edit === null) this.startEdit({ typed: text });
    else this.edit = { ...this.edit, text, touched: true, option: 0, listOpen: isListed(this.activeColumn) };
  }

  lightOption(by: number): void {
    if (this.edit === null || this.matches.length === 0) return;
    const last = this.matches.length - 1;
    const option = Math.max(0, Math.min(last, this.edit.option + by));
    this.edit = { ...this.edit, option, listOpen: true, typedOver: false };
    this.#chosenByHand = true;
  }
  #chosenByHand = false;

  cancelEdit(): void {
    this.edit = null;
    this.#chosenByHand = false;
  }

  /** Ends the edit and writes its text, to the active cell or over the whole selection. */
  commitEdit({
    overBlock = false,
    option
  }: { readonly overBlock?: boolean; readonly option?: GridOption } = {}): void {
    const edit = this.edit;
    if (edit === null) return;
    const text = option?.id ?? this.#editedText(edit);
    const wasTouched = edit.touched || this.#chosenByHand || option !== undefined;
    this.cancelEdit();
    if (overBlock && !isOneCell(this.block)) {
      this.#writeOver('typing', text);
    } else if (wasTouched && text !== edit.before) {
      this.#write('typing', [{ ...this.active, text }]);
    }
  }

  #editedText(edit: Edit): string {
    const lit = this.matches[edit.option];
    const choosing = edit.listOpen && (this.#chosenByHand || (edit.touched && edit.text.trim() !== ''));
    if (choosing && lit !== undefined) return lit.id;
    return edit.text;
  }

  /** Space: a flag turns over; any other kind of cell is typed in. Returns whether it was a flag. */
  toggle(): boolean {
    if (this.activeColumn?.kind !== 'flag') return false;
    const cell = this.activeCell;
    if (cell === undefined || !this.canEdit(this.active)) return true;
    const options = optionsOf(this.activeColumn);
    const at = options.findIndex(({ id, label }) => label === cell.text || id === cell.editText);
    const next = options[at < 0 ? 0 : (at + 1) % options.length];
    if (next !== undefined) this.#write('typing', [{ ...this.active, text: next.id }]);
    return true;
  }

  // Blocks

  clear(): void {
    this.#writeOver('clear', '');
  }

  /** The selected cells as tab-separated text. */
  copied(): string {
    const { top, bottom, left, right } = this.block;
    const { rows } = this.#source;
    this.told = `${counted((bottom - top + 1) * (right - left + 1), 'cell')} copied`;
    return cellsToText(
      rows.slice(top, bottom + 1).map((row) => row.cells.slice(left, right + 1).map((cell) => cell.editText))
    );
  }

  cut(): string {
    const text = this.copied();
    this.#writeOver('cut', '');
    return text;
  }

  paste(text: string): void {
    const { canGrow } = this.#source;
    const cells = textToCells(text);
    const empty = this.extent.rows === 0;
    if (empty && !canGrow) return;
    const plan = planPaste(cells, { selection: this.block, extent: this.extent, canGrow });
    const lost =
      plan.left === 0
        ? []
        : [
            `${counted(plan.left, 'cell')} found no place beyond the last ${canGrow ? 'column' : 'row or column'}`
          ];
    this.#write('paste', plan.writes, lost);
    this.#wanted = { active: { row: plan.block.top, column: plan.block.left }, block: plan.block };
  }

  fill(way: 'down' | 'right'): void {
    this.#fillFrom(way === 'down' ? fillDown(this.block) : fillRight(this.block));
  }

  dragFill(place: Place): void {
    this.fillTarget = draggedFill(this.block, clampPlace(place, this.extent));
  }

  dropFill(): void {
    const target = this.fillTarget;
    this.fillTarget = null;
    if (target === null) return;
    this.#fillFrom(fillOver(this.block, target));
    this.#wanted = { active: this.active, block: target };
  }

  #fillFrom(fills: readonly Fill[]): void {
    this.#write(
      'fill',
      fills.map(({ from, to }) => ({ ...to, text: this.cellAt(from)?.editText ?? '' }))
    );
  }

  #writeOver(by: CellWriteKind, text: string): void {
    this.#write(
      by,
      placesOf(this.block).map((place) => ({ ...place, text }))
    );
  }

  #write(by: CellWriteKind, places: readonly PlacedText[], remarks: readonly string[] = []): void {
    const { columns, rows } = this.#source;
    const cells: CellWrite[] = [];
    let computed = 0;
    for (const { row, column, text } of places) {
      const key = columns[column];
      const cell = rows[row]?.cells[column];
      if (key === undefined || key.kind === 'computed' || cell?.state === 'computed') computed += 1;
      else if (by !== 'clear' || cell === undefined || cell.editText !== '')
        cells.push({ row, column: key.key, text });
    }
    if (cells.length === 0) {
      this.told = computed > 0 ? 'Computed cells cannot be changed.' : '';
      return;
    }
    const refused = this.#source.onaction({ kind: 'write', by, cells });
    if (typeof refused === 'string') this.told = refused;
    else
      this.#tellWritten(by, cells, [
        ...remarks,
        ...(computed > 0 ? [`${counted(computed, 'computed cell')} left alone`] : [])
      ]);
  }

  #tellWritten(by: CellWriteKind, cells: readonly CellWrite[], remarks: readonly string[]): void {
    const columnOf = Object.fromEntries(this.#source.columns.map((column, at) => [column.key, at]));
    const kept = cells
      .map(({ row, column }) => this.cellAt({ row, column: columnOf[column] ?? -1 }))
      .filter((cell) => cell?.state === 'kept');
    if (cells.length === 1 && kept.length === 1) {
      this.told = `Not taken, and kept as typed. ${kept[0]?.message ?? ''}`;
      return;
    }
    const verb = { typing: 'written', paste: 'pasted', fill: 'filled', clear: 'cleared', cut: 'cut' }[by];
    const done = cells.length > 1 || by !== 'typing' ? [`${counted(cells.length, 'cell')} ${verb}`] : [];
    const bad =
      kept.length > 0 ? [`${counted(kept.length, 'cell')} could not be read and kept as given`] : [];
    this.told = [...done, ...bad, ...remarks].join('; ');
  }

  // Rows

  /** Whether the command is on offer for the selected rows. */
  canDo(command: RowCommand): boolean {
    const { canGrow, canReorder } = this.#source;
    const { rows } = this.extent;
    if (command === 'move-up') return canReorder && rows > 0 && this.block.top > 0;
    if (command === 'move-down') return canReorder && rows > 0 && this.block.bottom < rows - 1;
    return canGrow && (rows > 0 || command === 'insert-below' || command === 'insert-above');
  }

  doToRows(command: RowCommand): void {
    if (!this.canDo(command)) return;
    const { top, bottom } = this.block;
    const rows = rowsOf(this.block);
    const whole = coversWholeRows(this.block, this.extent);
    const count = whole ? rows.length : 1;
    switch (command) {
      case 'insert-above':
        this.#insert(top, count);
        break;
      case 'insert-below':
        this.#insert(this.extent.rows === 0 ? 0 : bottom + 1, count);
        break;
      case 'duplicate':
        if (this.#act({ kind: 'duplicate-rows', rows }, `${counted(rows.length, 'row')} duplicated`)) {
          this.#shiftBy(rows.length);
        }
        break;
      case 'delete-rows':
        if (this.#act({ kind: 'delete-rows', rows }, `${counted(rows.length, 'row')} deleted`)) {
          this.#wanted = onePlace({ row: top, column: this.active.column });
        }
        break;
      case 'move-up':
      case 'move-down':
        this.#moveBy(command === 'move-up' ? -1 : 1);
        break;
    }
  }

  /** Takes hold of a row to drag it: the rows selected with it come along. */
  takeRow(row: number): void {
    if (row < this.block.top || row > this.block.bottom) this.go({ row, column: this.active.column });
  }

  /** Drags the rows taken to another row: they are to stand before it, or after it where it lies below them. */
  dragRowsTo(row: number): void {
    const { top, bottom } = this.block;
    this.dropRow = row < top || row > bottom ? row : null;
  }

  dropRows(): void {
    const row = this.dropRow;
    this.dropRow = null;
    if (row === null) return;
    const { top, bottom } = this.block;
    this.#moveBy(row < top ? row - top : row - bottom);
  }

  #moveBy(by: number): void {
    const done = `Moved ${by < 0 ? 'up' : 'down'}${Math.abs(by) === 1 ? '' : ` by ${Math.abs(by)} rows`}`;
    if (this.#act({ kind: 'move-rows', rows: rowsOf(this.block), by }, done)) this.#shiftBy(by);
  }

  /** A row at the end, with the cursor on its first cell. */
  addRow(): void {
    this.#insert(this.extent.rows, 1);
  }

  #insert(at: number, count: number): void {
    if (this.#act({ kind: 'insert-rows', at, count }, `${counted(count, 'row')} inserted`)) {
      this.#tabbedFrom = null;
      this.#wanted = onePlace({ row: at, column: 0 });
    }
  }

  #act(action: GridAction, done: string): boolean {
    const refused = this.#source.onaction(action);
    this.told = refused ?? done;
    return typeof refused !== 'string';
  }

  #shiftBy(by: number): void {
    const { active, block } = this.#wanted;
    this.#wanted = {
      active: { row: active.row + by, column: active.column },
      block: { ...block, top: block.top + by, bottom: block.bottom + by }
    };
  }

  /** Obeys a command that needs no element; false where the component has to, or the browser may. */
  obey(command: Command, pageRows: number): boolean {
    switch (command.kind) {
      case 'move':
        this.move(command.move, command.stretch, pageRows);
        return true;
      case 'tab':
        return this.tab(command.back);
      case 'select-all':
        this.selectAll();
        return true;
      case 'select-rows':
        this.selectRows(this.block.top, this.block.bottom);
        return true;
      case 'select-columns':
        this.selectColumns(this.block.left, this.block.right);
        return true;
      case 'collapse':
        // With nothing to let go of, Escape is for what lies around the grid.
        if (isOneCell(this.block)) return false;
        this.go(this.active);
        return true;
      case 'clear':
        this.clear();
        return true;
      case 'fill-down':
        this.fill('down');
        return true;
      case 'fill-right':
        this.fill('right');
        return true;
      case 'toggle':
        return this.toggle();
      case 'row':
        this.doToRows(command.row);
        return true;
      default:
        return false;
    }
  }
}

type CellWriteKind = Extract<GridAction, { kind: 'write' }>['by'];
