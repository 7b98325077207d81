/** Where the cursor is and what is selected, and how keys and pointers move both. */
import { counted } from './counted.ts';
import type { GridProps } from './grid-props.ts';
import { clampPlace, moved, tabbed, type Extent, type Move, type Place } from './moves.ts';
import {
  clampSelection,
  everything,
  isOneCell,
  movingCorner,
  onePlace,
  roundInside,
  stretched,
  wholeColumns,
  wholeRows,
  type Block,
  type Selection
} from './selection.ts';

export class GridCursor {
  readonly #given: Pick<GridProps, 'columns' | 'rows'>;
  readonly #tell: (sentence: string) => void;
  #wanted = $state.raw<Selection>(onePlace({ row: 0, column: 0 }));
  /** The column in which a run of Tabs began; Enter goes back to it. */
  #tabbedFrom: number | null = null;

  /** @param tell says a sentence to an assistive technology */
  constructor(given: Pick<GridProps, 'columns' | 'rows'>, tell: (sentence: string) => void) {
    this.#given = given;
    this.#tell = tell;
  }

  readonly extent = $derived.by((): Extent => ({
    rows: this.#given.rows.length,
    columns: this.#given.columns.length
  }));
  readonly selection = $derived.by((): Selection => clampSelection(this.#wanted, this.extent));
  readonly active = $derived.by((): Place => this.selection.active);
  readonly block = $derived.by((): Block => this.selection.block);

  go(place: Place): void {
    this.#tabbedFrom = null;
    this.#wanted = onePlace(clampPlace(place, this.extent));
  }

  /** The first cell of a row that may not have come yet. */
  goToNewRow(row: number): void {
    this.#tabbedFrom = null;
    this.#wanted = onePlace({ row, column: 0 });
  }

  /** Selects a block that may lie beyond the grid until its new rows have come. */
  select(block: Block, active: Place = { row: block.top, column: block.left }): void {
    this.#wanted = { active, block };
  }

  /** Goes along with rows that have moved. */
  shiftBy(rows: number): void {
    const { active, block } = this.#wanted;
    this.select(
      { ...block, top: block.top + rows, bottom: block.bottom + rows },
      { row: active.row + rows, column: active.column }
    );
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

  /** Moves on, or stretches the selection. `filled` tells which cells hold a text. */
  move(
    move: Move,
    {
      stretch,
      pageRows,
      filled
    }: { readonly stretch: boolean; readonly pageRows: number; readonly filled: (place: Place) => boolean }
  ): void {
    const around = { extent: this.extent, pageRows, filled };
    if (stretch) this.stretchTo(moved(movingCorner(this.selection), move, around));
    else this.go(moved(this.active, move, around));
  }

  /** Moves on for Tab; false where the focus is to leave the grid. */
  tab(back: boolean): boolean {
    if (!isOneCell(this.block)) {
      this.#goRound('rows', back);
      return true;
    }
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

  #goRound(along: 'rows' | 'columns', back: boolean): void {
    this.select(this.block, roundInside(this.block, this.active, { along, back }));
  }

  #tellSelection(): void {
    const { top, bottom, left, right } = this.block;
    const rows = bottom - top + 1;
    const columns = right - left + 1;
    if (rows * columns > 1) this.#tell(`${counted(rows, 'row')} by ${counted(columns, 'column')} selected`);
  }
}
