/**
 * What the grid remembers between two keys: the cursor, the edit under way, the block about to be filled. It turns
 * commands into moves and into the one action that the caller is told of. It knows no elements.
 */
import { defaultLocale } from '#lib/numbers/locale-marks.ts';
import {
  begunEdit,
  editedText,
  optionOf,
  optionsFor,
  optionsOf,
  typedInto,
  withOptionLit,
  type Edit
} from './cell-edit.ts';
import { planPaste, textToCells, cellsToText, type PlacedText } from './clipboard.ts';
import { counted } from './counted.ts';
import { draggedFill, fillDown, fillOver, fillRight, type Fill } from './fill.ts';
import { GridCursor } from './grid-cursor.svelte.ts';
import type { GridProps } from './grid-props.ts';
import type { GridSieve } from './grid-sieve.svelte.ts';
import type { HeadedBlock } from './paste-by-heading.ts';
import { headedBlock } from './paste-by-heading.ts';
import type { CellWrite, GridAction, GridCell, GridColumn, GridOption } from './grid-types.ts';
import type { Command, RowCommand } from './keys.ts';
import { clampPlace, type Place } from './moves.ts';
import { rowsSorted, sortInWords, type SortWay } from './row-order.ts';
import { coversWholeRows, isOneCell, placesOf, rowsOf, type Block } from './selection.ts';

type CellWriteKind = Extract<GridAction, { kind: 'write' }>['by'];

const sentence = (clauses: readonly string[]): string => {
  const text = clauses.join('; ');
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
};

const hiddenInWords = ({ rows, columns }: { readonly rows: number; readonly columns: number }): string =>
  [
    ...(rows === 0 ? [] : [counted(rows, 'hidden row')]),
    ...(columns === 0 ? [] : [counted(columns, 'hidden column')])
  ].join(' and ');

export class GridSession {
  readonly #sieve: GridSieve;
  readonly #given: GridProps;
  readonly cursor: GridCursor;

  edit = $state.raw<Edit | null>(null);
  /** Where the fill handle has been dragged to. */
  fillTarget = $state.raw<Block | null>(null);
  /** The row before or after which the rows being dragged would be put; null where they would stay. */
  dropRow = $state<number | null>(null);
  /** A pasted block with headings whose columns are not the grid's, until it is said where it goes. */
  pasted = $state.raw<{ readonly block: HeadedBlock; readonly cells: readonly (readonly string[])[] } | null>(
    null
  );
  #copied: string | null = null;
  /** What an assistive technology is to say. */
  told = $state('');
  /** What is to be seen as well, as nothing else shows it: what a paste could not take, what the browser refused. */
  remark = $state('');

  constructor(sieve: GridSieve) {
    const { given } = sieve;
    this.#sieve = sieve;
    this.#given = given;
    this.cursor = new GridCursor(given, (sentence) => (this.told = sentence));
  }

  readonly activeColumn = $derived.by(
    (): GridColumn | undefined => this.#given.columns[this.cursor.active.column]
  );
  readonly activeCell = $derived.by((): GridCell | undefined => this.cellAt(this.cursor.active));
  /** The options that fit the edit under way. */
  readonly matches = $derived.by((): readonly GridOption[] => optionsFor(this.edit, this.activeColumn));

  cellAt({ row, column }: Place): GridCell | undefined {
    return this.#given.rows[row]?.cells[column];
  }

  /** Whether the user may type here. What does not apply to a row takes pasted texts, since the row may change with them. */
  canEdit(place: Place): boolean {
    const cell = this.cellAt(place);
    const column = this.#given.columns[place.column];
    return (
      cell !== undefined && column?.kind !== 'computed' && cell.state !== 'computed' && cell.state !== 'off'
    );
  }

  // Editing

  /** Opens the active cell. `typed` is what was typed over it; left out, its own text is edited. */
  startEdit(typed?: string): boolean {
    const column = this.activeColumn;
    const cell = this.activeCell;
    if (column === undefined || cell === undefined || !this.canEdit(this.cursor.active)) {
      this.told =
        cell?.message ??
        (cell?.state === 'off' ? 'Does not apply to this row.' : 'Computed; it cannot be typed over.');
      return false;
    }
    this.edit = begunEdit(column, cell, typed);
    return true;
  }

  type(text: string): void {
    if (this.edit === null) this.startEdit(text);
    else this.edit = typedInto(this.edit, this.activeColumn, text);
  }

  lightOption(by: number): void {
    if (this.edit !== null) this.edit = withOptionLit(this.edit, by, this.matches);
  }

  cancelEdit(): void {
    this.edit = null;
  }

  /** Ends the edit and writes its text, to the active cell or over the whole selection. */
  commitEdit({
    overBlock = false,
    option
  }: { readonly overBlock?: boolean; readonly option?: GridOption } = {}): void {
    const edit = this.edit;
    if (edit === null) return;
    const text = option?.id ?? editedText(edit, this.matches);
    const wasTouched = edit.touched || edit.chosen || option !== undefined;
    this.edit = null;
    if (overBlock && !isOneCell(this.cursor.block)) {
      this.#writeOver('typing', text);
    } else if (wasTouched && text !== edit.before) {
      this.#write('typing', [{ ...this.cursor.active, text }]);
    }
  }

  /** Space: a flag turns over; any other kind of cell is typed in. Returns whether it was a flag. */
  toggle(): boolean {
    if (this.activeColumn?.kind !== 'flag') return false;
    const cell = this.activeCell;
    if (cell === undefined || !this.canEdit(this.cursor.active)) return true;
    const options = optionsOf(this.activeColumn);
    const at = optionOf(this.activeColumn, cell);
    const next = options[at < 0 ? 0 : (at + 1) % options.length];
    if (next !== undefined) this.#write('typing', [{ ...this.cursor.active, text: next.id }]);
    return true;
  }

  // Blocks

  clear(): void {
    this.#writeOver('clear', '');
  }

  /** The selected cells as tab-separated text, under the titles of their columns where these are wanted. */
  copied(withHeadings = false): string {
    const { top, bottom, left, right } = this.cursor.block;
    const { columns, rows } = this.#given;
    const hidden = hiddenInWords(this.#sieve.hiddenWithin(this.cursor.block));
    const count = counted((bottom - top + 1) * (right - left + 1), 'cell');
    const copied = rows.slice(top, bottom + 1);
    const kept = copied.flatMap(({ label, cells }) =>
      cells
        .slice(left, right + 1)
        .flatMap(({ state }, at) =>
          state === 'kept' ? [`${label}, ${columns[left + at]?.title ?? ''}`] : []
        )
    );
    const remarks = [
      ...(hidden === '' ? [] : [`${hidden} left out`]),
      ...(kept.length === 0
        ? []
        : [
            `${counted(kept.length, 'cell')} copied as typed, though not in force: ${kept.slice(0, 3).join('; ')}${kept.length > 3 ? ` and ${kept.length - 3} more` : ''}`
          ])
    ];
    this.told = [`${count} copied${withHeadings ? ' with headings' : ''}`, ...remarks].join('; ');
    this.remark = kept.length === 0 ? '' : sentence(remarks);
    const cells = copied.map((row) => row.cells.slice(left, right + 1).map((cell) => cell.editText));
    if (!withHeadings) return (this.#copied = cellsToText(cells));
    const headings = columns
      .slice(left, right + 1)
      .map(({ title, unit = '' }) => (unit === '' ? title : `${title} (${unit})`));
    return cellsToText([headings, ...cells]);
  }

  /** Says, to be seen as well, why something was not done. */
  refuse(sentence: string): void {
    this.told = sentence;
    this.remark = sentence;
  }

  cut(): string {
    const text = this.copied();
    this.clearCut(this.cursor.block);
    return text;
  }

  /** Clears what was cut, which may no longer be what is selected. */
  clearCut(block: Block): void {
    this.#writeOver('cut', '', block);
  }

  /**
   * Puts a block into the cells. One with headings goes to the columns that they name: at once where these stand side by
   * side in the grid's order, else once the user has seen which go where (`pasted`).
   */
  paste(text: string): void {
    const { canGrow = false, columns, matchHeadings, headingMeans } = this.#given;
    const cells = textToCells(text);
    if (this.cursor.extent.rows === 0 && !canGrow) return;
    const isOwn = text.replaceAll('\r\n', '\n') === this.#copied;
    const block =
      isOwn || matchHeadings === undefined
        ? null
        : headedBlock(cells, {
            columns,
            hidden: this.#sieve.columnsAside,
            match: matchHeadings,
            ...(headingMeans === undefined ? {} : { means: headingMeans }),
            from: this.cursor.block.left
          });
    if (block === null) this.#pasteInOrder(cells, isOwn);
    else if (block.isInOrder) this.#pasteByHeading(block);
    else this.pasted = { block, cells };
  }

  /** What is to become of the block that waits: into the columns that its headings name, as it stands, or nothing. */
  decidePaste(how: 'by-heading' | 'as-it-stands' | 'not'): void {
    const waiting = this.pasted;
    this.pasted = null;
    if (waiting === null) return;
    if (how === 'by-heading') this.#pasteByHeading(waiting.block);
    else if (how === 'as-it-stands') this.#pasteInOrder(waiting.cells, false);
    else this.told = 'Nothing was pasted.';
  }

  #pasteByHeading({ columns, rows }: HeadedBlock): void {
    const { canGrow = false } = this.#given;
    const { top } = this.cursor.block;
    const room = canGrow ? Infinity : this.cursor.extent.rows - top;
    const places = rows.slice(0, room).flatMap((texts, down) =>
      texts.flatMap((text, at) => {
        const column = columns[at]?.column ?? null;
        return column === null ? [] : [{ row: top + down, column, text }];
      })
    );
    const lost = rows.length > room ? [`${counted(rows.length - room, 'row')} found no place`] : [];
    const skipped = columns.filter(({ column, heading }) => column === null && heading.trim() !== '').length;
    this.#write('paste', places, [
      'columns met by their headings',
      ...(skipped > 0 ? [`${counted(skipped, 'column')} not taken`] : []),
      ...lost
    ]);
    const taken = columns.flatMap(({ column }) => column ?? []);
    this.cursor.select({
      top,
      bottom: top + Math.min(rows.length, room) - 1,
      left: Math.min(...taken),
      right: Math.max(...taken)
    });
  }

  #pasteInOrder(cells: readonly (readonly string[])[], isOwn: boolean): void {
    const { canGrow = false, columns } = this.#given;
    const plan = planPaste(cells, {
      selection: this.cursor.block,
      extent: this.cursor.extent,
      canGrow,
      passedOver: isOwn ? [] : columns.flatMap(({ kind }, index) => (kind === 'computed' ? [index] : []))
    });
    const lost =
      plan.left === 0
        ? []
        : [
            `${counted(plan.left, 'cell')} found no place beyond the last ${canGrow ? 'column' : 'row or column'}`
          ];
    const hidden = hiddenInWords(this.#sieve.hiddenWithin(plan.block));
    this.#write('paste', plan.writes, [...lost, ...(hidden === '' ? [] : [`${hidden} passed over`])], isOwn);
    this.cursor.select(plan.block);
  }

  /** Writes what a text was replaced by, all at once. Returns what is to be said of it. */
  replace(places: readonly PlacedText[]): string {
    this.#write('replace', places);
    return this.told;
  }

  fill(way: 'down' | 'right'): void {
    this.#fillFrom(way === 'down' ? fillDown(this.cursor.block) : fillRight(this.cursor.block));
  }

  dragFill(place: Place): void {
    this.fillTarget = draggedFill(this.cursor.block, clampPlace(place, this.cursor.extent));
  }

  dropFill(): void {
    const target = this.fillTarget;
    this.fillTarget = null;
    if (target === null) return;
    this.#fillFrom(fillOver(this.cursor.block, target));
    this.cursor.select(target, this.cursor.active);
  }

  #fillFrom(fills: readonly Fill[]): void {
    this.#write(
      'fill',
      fills.map(({ from, to }) => ({ ...to, text: this.cellAt(from)?.editText ?? '' }))
    );
  }

  #writeOver(by: CellWriteKind, text: string, block: Block = this.cursor.block): void {
    this.#write(
      by,
      placesOf(block).map((place) => ({ ...place, text }))
    );
  }

  #write(
    by: CellWriteKind,
    places: readonly PlacedText[],
    remarks: readonly string[] = [],
    isOwn = by === 'fill'
  ): void {
    const { columns, rows } = this.#given;
    const cells: CellWrite[] = [];
    this.remark = remarks.length === 0 ? '' : sentence(remarks);
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
    const refused = this.#given.onaction({ kind: 'write', by, cells, ...(isOwn ? { own: true } : {}) });
    if (typeof refused === 'string') this.told = refused;
    else
      this.#tellWritten(by, cells, [
        ...remarks,
        ...(computed > 0 ? [`${counted(computed, 'computed cell')} left alone`] : [])
      ]);
  }

  #tellWritten(by: CellWriteKind, cells: readonly CellWrite[], remarks: readonly string[]): void {
    const columnOf = Object.fromEntries(this.#given.columns.map((column, at) => [column.key, at]));
    const kept = cells
      .map(({ row, column }) => this.cellAt({ row, column: columnOf[column] ?? -1 }))
      .filter((cell) => cell?.state === 'kept');
    if (cells.length === 1 && kept.length === 1) {
      this.told = `Not taken, and kept as typed. ${kept[0]?.message ?? ''}`;
      return;
    }
    const verb = {
      typing: 'written',
      paste: 'pasted',
      fill: 'filled',
      clear: 'cleared',
      cut: 'cut',
      replace: 'replaced'
    }[by];
    const done = cells.length > 1 || by !== 'typing' ? [`${counted(cells.length, 'cell')} ${verb}`] : [];
    const bad =
      kept.length > 0 ? [`${counted(kept.length, 'cell')} could not be read and kept as given`] : [];
    this.told = [...done, ...bad, ...remarks].join('; ');
  }

  // Rows

  /** Whether the command is on offer for the selected rows. */
  canDo(command: RowCommand): boolean {
    const { canGrow = false, canReorder = false } = this.#given;
    const { rows } = this.cursor.extent;
    if (command === 'move-up') return canReorder && rows > 0 && this.cursor.block.top > 0;
    if (command === 'move-down') return canReorder && rows > 0 && this.cursor.block.bottom < rows - 1;
    return canGrow && (rows > 0 || command === 'insert-below' || command === 'insert-above');
  }

  doToRows(command: RowCommand): void {
    if (!this.canDo(command)) return;
    const { top, bottom } = this.cursor.block;
    const rows = rowsOf(this.cursor.block);
    const whole = coversWholeRows(this.cursor.block, this.cursor.extent);
    const count = whole ? rows.length : 1;
    switch (command) {
      case 'insert-above':
        this.#insert(top, count);
        break;
      case 'insert-below':
        this.#insert(this.cursor.extent.rows === 0 ? 0 : bottom + 1, count);
        break;
      case 'duplicate':
        if (this.#act({ kind: 'duplicate-rows', rows }, `${counted(rows.length, 'row')} duplicated`)) {
          this.cursor.shiftBy(rows.length);
        }
        break;
      case 'delete-rows':
        if (this.#act({ kind: 'delete-rows', rows }, `${counted(rows.length, 'row')} deleted`)) {
          this.cursor.go({ row: top, column: this.cursor.active.column });
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
    if (row < this.cursor.block.top || row > this.cursor.block.bottom)
      this.cursor.go({ row, column: this.cursor.active.column });
  }

  /** Drags the rows taken to another row: they are to stand before it, or after it where it lies below them. */
  dragRowsTo(row: number): void {
    const { top, bottom } = this.cursor.block;
    this.dropRow = row < top || row > bottom ? row : null;
  }

  dropRows(): void {
    const row = this.dropRow;
    this.dropRow = null;
    if (row === null) return;
    const { top, bottom } = this.cursor.block;
    this.#moveBy(row < top ? row - top : row - bottom);
  }

  #moveBy(by: number): void {
    const done = `Moved ${by < 0 ? 'up' : 'down'}${Math.abs(by) === 1 ? '' : ` by ${Math.abs(by)} rows`}`;
    if (this.#act({ kind: 'move-rows', rows: rowsOf(this.cursor.block), by }, done)) this.cursor.shiftBy(by);
  }

  /**
   * Puts all rows into the order of the cursor's column; the cursor goes along with its row.
   * @param way `turn`: upwards, or downwards where they are in that order already
   */
  sort(way: SortWay | 'turn'): void {
    const column = this.activeColumn;
    if (this.#given.canSort !== true || column === undefined) {
      this.told = 'The rows of this grid are not sorted: their order says something.';
      return;
    }
    const { whole } = this.#sieve;
    const sorted = (to: SortWay): readonly number[] =>
      rowsSorted(whole, { key: column.key, way: to, locale: defaultLocale() });
    const stands = (order: readonly number[]): boolean => order.every((row, at) => row === at);
    const upward = sorted('up');
    const turned = way === 'turn' ? (stands(upward) ? 'down' : 'up') : way;
    const order = turned === 'up' ? upward : sorted('down');
    const inWords = `by ${column.title}, ${sortInWords(column, turned)}`;
    if (stands(order)) {
      this.told = `The rows are in the order ${inWords}.`;
      return;
    }
    const { row, column: at } = this.cursor.active;
    const id = this.#given.rows[row]?.id;
    if (!this.#act({ kind: 'order-rows', order }, `Sorted ${inWords}.`)) return;
    this.cursor.go({
      row: Math.max(
        0,
        this.#given.rows.findIndex((each) => each.id === id)
      ),
      column: at
    });
  }

  /** A row at the end, with the cursor on its first cell. */
  addRow(): void {
    this.#insert(this.cursor.extent.rows, 1);
  }

  #insert(at: number, count: number): void {
    if (this.#act({ kind: 'insert-rows', at, count }, `${counted(count, 'row')} inserted`)) {
      this.cursor.goToNewRow(at);
    }
  }

  #act(action: GridAction, done: string): boolean {
    const refused = this.#given.onaction(action);
    this.told = refused ?? done;
    return typeof refused !== 'string';
  }

  /** Obeys a command that needs no element; false where the component has to, or the browser may. */
  obey(command: Command, pageRows: number): boolean {
    switch (command.kind) {
      case 'move':
        this.cursor.move(command.move, {
          stretch: command.stretch,
          pageRows,
          filled: (place) => (this.cellAt(place)?.text ?? '') !== ''
        });
        return true;
      case 'tab':
        return this.cursor.tab(command.back);
      case 'select-all':
        this.cursor.selectAll();
        return true;
      case 'select-rows':
        this.cursor.selectRows(this.cursor.block.top, this.cursor.block.bottom);
        return true;
      case 'select-columns':
        this.cursor.selectColumns(this.cursor.block.left, this.cursor.block.right);
        return true;
      case 'collapse':
        // With nothing to let go of, Escape is for what lies around the grid.
        if (isOneCell(this.cursor.block)) return false;
        this.cursor.go(this.cursor.active);
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
      case 'sort':
        this.sort(command.way);
        return true;
      default:
        return false;
    }
  }
}
