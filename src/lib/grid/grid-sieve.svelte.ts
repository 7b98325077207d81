/**
 * Which rows and columns are looked at. The parts of the grid are given these alone, so that cursor, copy, paste and fill
 * know nothing of what is hidden; what they do is told to the caller with the rows' own numbers. What is hidden counts in
 * every figure as before, and keeps its values.
 */
import { defaultLocale } from '#lib/numbers/locale-marks.ts';
import { counted } from './counted.ts';
import type { GridProps } from './grid-props.ts';
import type { GridAction, GridColumn, GridRow } from './grid-types.ts';
import { idSet } from './id-set.ts';
import type { Place } from './moves.ts';
import type { Block } from './selection.ts';
import { rowsThatFit, type FilterCondition } from './row-filter.ts';

export class GridSieve {
  /** What the grid is given, hidden rows and columns too. */
  readonly whole: GridProps;
  /** The same with the rows and columns that are looked at. */
  readonly given: GridProps;

  conditions = $state.raw<readonly FilterCondition[]>([]);
  /** By their ids, as the conditions found them when they were set: a row that is edited or added stays where it is seen. */
  #hiddenRows = $state.raw(idSet());
  #hiddenColumns = $state.raw(idSet());

  constructor(whole: GridProps) {
    this.whole = whole;
    const rows = { get: () => this.#rows };
    const columns = { get: () => this.#columns };
    const onaction = { value: (action: GridAction) => whole.onaction(this.#inWhole(action)) };
    // All else is read from what the grid is given, when it is needed.
    this.given = Object.create(whole, { rows, columns, onaction }) as GridProps;
  }

  /** Numbers of the rows that are looked at; null where all are. */
  readonly #rowsAt = $derived.by((): readonly number[] | null => {
    const hidden = this.#hiddenRows;
    if (hidden.size === 0) return null;
    const at = this.whole.rows.flatMap(({ id }, index) => (hidden.has(id) ? [] : [index]));
    return at.length === this.whole.rows.length ? null : at;
  });
  readonly #columnsAt = $derived.by((): readonly number[] | null => {
    const hidden = this.#hiddenColumns;
    const at = this.whole.columns.flatMap(({ key }, index) => (hidden.has(key) ? [] : [index]));
    return at.length === this.whole.columns.length ? null : at;
  });

  readonly #columns = $derived.by((): readonly GridColumn[] => picked(this.whole.columns, this.#columnsAt));
  readonly #rows = $derived.by((): readonly GridRow[] => {
    const rows = picked(this.whole.rows, this.#rowsAt);
    const at = this.#columnsAt;
    return at === null ? rows : rows.map((row) => withCellsAt(row, at));
  });

  /** Titles of the columns that are hidden. */
  readonly columnsAside = $derived.by((): readonly GridColumn[] =>
    this.whole.columns.filter(({ key }) => this.#hiddenColumns.has(key))
  );
  readonly hidesRows = $derived.by((): boolean => this.#rowsAt !== null);
  readonly hidesAny = $derived.by((): boolean => this.hidesRows || this.#columnsAt !== null);

  /** How much is looked at, in a sentence; '' where all is. */
  readonly inWords = $derived.by((): string => {
    const { rows } = this.whole;
    const aside = this.columnsAside;
    return [
      ...(this.#rowsAt === null
        ? []
        : [`${this.#rowsAt.length} of ${counted(rows.length, 'row')} shown; all count in the figures.`]),
      ...(aside.length === 0
        ? []
        : [
            `${counted(aside.length, 'column')} not shown: ${aside.map(({ title }) => title).join(', ')}; ${aside.length === 1 ? 'it keeps its' : 'they keep their'} values.`
          ])
    ].join(' ');
  });

  /** A row's number in the whole list. */
  ordinal(row: number): number {
    return this.#rowsAt?.[row] ?? row;
  }

  /** How many rows and columns are hidden between those of a block of what is looked at. */
  hiddenWithin({ top, bottom, left, right }: Block): { readonly rows: number; readonly columns: number } {
    const between = (at: readonly number[] | null, from: number, to: number): number =>
      at === null
        ? 0
        : (at[Math.min(to, at.length - 1)] ?? from) - (at[from] ?? to) - (Math.min(to, at.length - 1) - from);
    return {
      rows: between(this.#rowsAt, top, bottom),
      columns: between(this.#columnsAt, left, right)
    };
  }

  filter(conditions: readonly FilterCondition[]): void {
    this.conditions = conditions;
    const fit = rowsThatFit(this.whole, conditions, defaultLocale());
    this.#hiddenRows = idSet(this.whole.rows.flatMap(({ id }, index) => (fit[index] === true ? [] : [id])));
  }

  /** Hides columns, but never the last one. Returns whether it did. */
  hideColumns(keys: readonly string[]): boolean {
    const hidden = idSet([...this.#hiddenColumns, ...keys]);
    if (this.whole.columns.every(({ key }) => hidden.has(key))) return false;
    this.#hiddenColumns = hidden;
    return true;
  }

  showAll(): void {
    this.conditions = [];
    this.#hiddenRows = idSet();
    this.#hiddenColumns = idSet();
  }

  /** Where a cell of the whole grid stands among what is looked at; its row and column are shown for it. */
  reveal({ row, column }: Place): Place {
    const id = this.whole.rows[row]?.id;
    const key = this.whole.columns[column]?.key;
    if (id !== undefined && this.#hiddenRows.has(id)) this.#hiddenRows = without(this.#hiddenRows, id);
    if (key !== undefined && this.#hiddenColumns.has(key))
      this.#hiddenColumns = without(this.#hiddenColumns, key);
    return {
      row: this.#rowsAt?.indexOf(row) ?? row,
      column: this.#columnsAt?.indexOf(column) ?? column
    };
  }

  /** An action on what is looked at, told of the whole. */
  #inWhole(action: GridAction): GridAction {
    const at = this.#rowsAt;
    if (at === null || action.kind === 'order-rows') return action;
    const number = (row: number): number => at[row] ?? this.whole.rows.length + row - at.length;
    switch (action.kind) {
      case 'write':
        return { ...action, cells: action.cells.map((cell) => ({ ...cell, row: number(cell.row) })) };
      case 'insert-rows':
        // Below the row above, where there is one; what is hidden between two rows stays below the new ones.
        return {
          ...action,
          at: action.at === 0 || action.at >= at.length ? number(action.at) : number(action.at - 1) + 1
        };
      case 'delete-rows':
      case 'duplicate-rows':
        return { ...action, rows: action.rows.map(number) };
      case 'move-rows': {
        const rows = action.rows.map(number);
        const [first = 0] = rows;
        const [top = 0] = action.rows;
        // Up: before the row that stands there. Down: after it, with those that move taken out.
        const to =
          action.by < 0
            ? number(Math.max(0, top + action.by))
            : number(Math.min(at.length - 1, top + action.rows.length - 1 + action.by)) + 1 - rows.length;
        return { ...action, rows, by: to - first };
      }
    }
  }
}

const picked = <T>(all: readonly T[], at: readonly number[] | null): readonly T[] =>
  at === null ? all : at.flatMap((index) => all[index] ?? []);

const without = (set: ReadonlySet<string>, gone: string): ReadonlySet<string> =>
  idSet([...set].filter((each) => each !== gone));

/** A row with some of its cells, made when they are first looked at. */
function withCellsAt(row: GridRow, at: readonly number[]): GridRow {
  let cells: GridRow['cells'] | null = null;
  return {
    id: row.id,
    label: row.label,
    ...(row.mayHaveKept === undefined ? {} : { mayHaveKept: row.mayHaveKept }),
    get cells() {
      return (cells ??= picked(row.cells, at));
    }
  };
}
