/**
 * Where workbooks are put away, as little as the store needs of it: so that the browser's database and a test's memory
 * serve alike. Every method may reject with the platform's own error.
 */
export interface Shelf {
  heads(): Promise<readonly WorkbookHead[]>;
  head(id: string): Promise<WorkbookHead | undefined>;
  text(id: string, revision: number): Promise<string | undefined>;
  steps(id: string): Promise<string | undefined>;
  /**
   * Puts a head in place, and texts with it, all or nothing. Resolves to false, with nothing changed, where the head on
   * the shelf is no longer at the expected revision (null: not there): somebody else was faster.
   */
  put(change: ShelfChange): Promise<boolean>;
  /** Takes a workbook off with all its versions. */
  remove(id: string): Promise<void>;
}

export interface ShelfChange {
  readonly head: WorkbookHead;
  readonly expected: number | null;
  readonly text: { readonly revision: number; readonly text: string } | null;
  readonly dropped: readonly number[];
  /** The text of the steps of undo in place of the one that is there, null for none; left out, it stays. */
  readonly steps?: string | null;
}

/** What is known of a workbook without reading it. Times are ISO 8601. */
export interface WorkbookHead {
  readonly id: string;
  readonly title: string;
  readonly savedAt: string;
  /** Counts saves; the newest version. */
  readonly revision: number;
  /** Versions that can be opened, the newest last. */
  readonly versions: readonly VersionHead[];
  /** When it was put into the bin; null: it is not there. */
  readonly deletedAt: string | null;
}

export interface VersionHead {
  readonly revision: number;
  readonly savedAt: string;
  readonly title: string;
}
