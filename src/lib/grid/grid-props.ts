import type { GridAction, GridColumn, GridRow } from './grid-types.ts';

/** What a grid is given. Its parts hold this object and read from it what they need, anew each time. */
export interface GridProps {
  /** What a screen reader calls the grid. */
  readonly label: string;
  readonly columns: readonly GridColumn[];
  readonly rows: readonly GridRow[];
  /** Rows can be inserted, duplicated and deleted, and a paste may add some. */
  readonly canGrow?: boolean;
  /** Rows can be moved. */
  readonly canReorder?: boolean;
  /** Rows can be sorted: put into the order of a column as one step. */
  readonly canSort?: boolean;
  /** Rows are known by ids that stay, so that some may be hidden. */
  readonly canFilter?: boolean;
  /** One action of the user, one step of undo. A sentence that comes back says why it was not, or not all, done. */
  readonly onaction: (action: GridAction) => string | void;
  /**
   * The key of the column that each heading of a pasted block means, each key once, null for none; left out where blocks
   * are never met by heading.
   */
  readonly matchHeadings?: (headings: readonly string[]) => readonly (string | null)[];
  /** Keys of all columns that a heading by itself could mean. */
  readonly headingMeans?: (heading: string) => readonly string[];
  /** “Where does this come from?”, with the cell's path. */
  readonly onask?: (path: string) => void;
  /**
   * The range of a cell with a number, by the cell's path; left out where cells take none. To be told `back` once done:
   * the grid takes the focus again.
   */
  readonly onrange?: (path: string, back: () => void) => void;
  /** The row's own page. */
  readonly onopen?: (rowId: string) => void;
  readonly onundo?: () => void;
  readonly onredo?: () => void;
  readonly rowOpenLabel?: string;
  /** null: rows are added from outside the grid. */
  readonly addRowLabel?: string | null;
  /** What stands in place of rows while there are none. */
  readonly emptyText?: string;
  /** Columns that stay in sight beside the row's header, counted from the first; one where left out, three at most. */
  readonly stickyColumns?: number;
  /** Widths that the user chose, in characters, by column key; the grid keeps them itself where left out. */
  readonly widthsCh?: Readonly<Record<string, number>>;
  readonly onwidths?: (widthsCh: Readonly<Record<string, number>>) => void;
  /** A cell by its path that is to get the cursor and come into sight; a new object asks again. */
  readonly wanted?: { readonly path: string | null };
}
