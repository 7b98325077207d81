/** What a grid is told and what it tells: texts in, texts out. It knows nothing of workbooks or anaesthesia. */

export interface GridOption {
  readonly id: string;
  readonly label: string;
}

export interface GridColumn {
  readonly key: string;
  readonly title: string;
  /** Shown once, under the title; left out for texts and pure numbers. */
  readonly unit?: string;
  /** One sentence on what the column is, and what it takes. */
  readonly words: string;
  readonly kind: 'text' | 'number' | 'choice' | 'flag' | 'computed';
  /** True where a computed column holds names and not numbers: set like texts. */
  readonly names?: true;
  /** For `choice`; a `flag` is offered yes and no. */
  readonly options?: readonly GridOption[];
  /** Width in characters, as a start; the user may change it. */
  readonly widthCh: number;
}

/**
 * given: typed by the user. default: left empty, a stated default acts. computed: not editable. kept: text that could
 * not be read, kept as typed, with a sentence. off: does not apply to this row.
 */
export type GridCellState = 'given' | 'default' | 'computed' | 'kept' | 'off';

export interface GridCell {
  /** As displayed. */
  readonly text: string;
  /** As offered for editing and put on the clipboard: full precision. */
  readonly editText: string;
  readonly state: GridCellState;
  /** A sentence on what is wrong, or what a reader must know. */
  readonly message?: string;
  /** `error` for a kept text, `note` for a remark (a range, an override, a warning). */
  readonly tone?: 'error' | 'note';
  /** Carries a range, which the message tells. */
  readonly ranged?: true;
  /** Where the figure lives, for “where does this come from?”; left out where there is nothing to ask. */
  readonly path?: string;
}

export interface GridRow {
  readonly id: string;
  /** What a screen reader calls the row. */
  readonly label: string;
  /** One for each column, in their order. */
  readonly cells: readonly GridCell[];
  /** False where it is known, without a look at the cells, that none is in the state `kept`. */
  readonly mayHaveKept?: boolean;
}

/**
 * A cell to be written. `row` may lie at or past the number of rows: the grid is to grow. An empty text clears. What was
 * picked from a list comes as the option's id; what was typed or pasted comes as it is, an id, a label or neither.
 */
export interface CellWrite {
  readonly row: number;
  readonly column: string;
  readonly text: string;
}

/**
 * One action of the user: one step of undo. Rows are counted from 0 and named in ascending order; copies go below the
 * last row named.
 */
export type GridAction =
  | {
      readonly kind: 'write';
      readonly by: 'typing' | 'paste' | 'fill' | 'clear' | 'cut' | 'replace';
      readonly cells: readonly CellWrite[];
      /** The texts are the grid's own, as they were copied in it: read as they were written. */
      readonly own?: true;
    }
  | { readonly kind: 'insert-rows'; readonly at: number; readonly count: number }
  | { readonly kind: 'delete-rows'; readonly rows: readonly number[] }
  | { readonly kind: 'duplicate-rows'; readonly rows: readonly number[] }
  | { readonly kind: 'move-rows'; readonly rows: readonly number[]; readonly by: number }
  /** All rows, each once, in the order that they are to have. */
  | { readonly kind: 'order-rows'; readonly order: readonly number[] };
