/** The edit of one cell, from its first key to the text that comes of it. Pure. */
import type { GridCell, GridColumn, GridOption } from './grid-types.ts';
import { matchingOptions } from './matching-options.ts';

export interface Edit {
  readonly text: string;
  /** The cell's text before. */
  readonly before: string;
  /** Begun by typing over the cell: arrows then end the edit. */
  readonly typedOver: boolean;
  /** For a choice: whether its list is open, and the option that is lit; -1 for none. */
  readonly listOpen: boolean;
  readonly option: number;
  /** An option was lit by hand. */
  readonly chosen: boolean;
  /** Typed in; an edit in which nothing was typed or chosen changes nothing. */
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

/** Which of its column's options the cell holds; -1 for none. */
export function optionOf(column: GridColumn, cell: GridCell): number {
  return optionsOf(column).findIndex(({ id, label }) => label === cell.text || id === cell.editText);
}

/** Opens a cell. `typed` is what was typed over it; left out, its own text is edited. */
export function begunEdit(column: GridColumn, cell: GridCell, typed?: string): Edit {
  return {
    text: typed ?? cell.editText,
    before: cell.editText,
    typedOver: typed !== undefined,
    listOpen: isListed(column),
    option: typed === undefined ? optionOf(column, cell) : 0,
    chosen: false,
    touched: typed !== undefined
  };
}

export function typedInto(edit: Edit, column: GridColumn | undefined, text: string): Edit {
  return { ...edit, text, touched: true, option: 0, listOpen: isListed(column) };
}

/** The options that fit the edit. */
export function optionsFor(edit: Edit | null, column: GridColumn | undefined): readonly GridOption[] {
  if (edit === null || column === undefined || !isListed(column)) return [];
  return matchingOptions(optionsOf(column), edit.touched ? edit.text : '');
}

/** Lights another of the options that fit. */
export function withOptionLit(edit: Edit, by: number, fitting: readonly GridOption[]): Edit {
  if (fitting.length === 0) return edit;
  const option = Math.max(0, Math.min(fitting.length - 1, edit.option + by));
  return { ...edit, option, listOpen: true, typedOver: false, chosen: true };
}

/** What the edit comes to: an option where one was meant, else its text. */
export function editedText(edit: Edit, fitting: readonly GridOption[]): string {
  const lit = fitting[edit.option];
  const choosing = edit.listOpen && (edit.chosen || (edit.touched && edit.text.trim() !== ''));
  return choosing && lit !== undefined ? lit.id : edit.text;
}
