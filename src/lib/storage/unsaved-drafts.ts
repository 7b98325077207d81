/**
 * What was not saved yet when a page was left. A database is written to in steps, and a page that goes away takes no
 * second one; the browser's plain storage takes a text at once. The next visit puts it where it belongs.
 */
export interface UnsavedDraft {
  /** Of the stored workbook; null where it was not stored yet. */
  readonly id: string | null;
  /** The revision that it was made from. */
  readonly revision: number | null;
  /** The workbook's file. */
  readonly text: string;
}

const prefix = 'vapour-ledger unsaved ';
const keyOf = (id: string | null): string => prefix + (id ?? 'new');

/** Keeps a draft, one for each workbook; where the browser takes none, nothing more can be done. */
export function keepDraft(draft: UnsavedDraft): void {
  try {
    localStorage.setItem(keyOf(draft.id), JSON.stringify(draft));
  } catch {
    // No room, or no storage at all: the save that is under way may still succeed.
  }
}

export function dropDraft(id: string | null): void {
  try {
    localStorage.removeItem(keyOf(id));
  } catch {
    // Then there is none.
  }
}

/** The drafts that are kept; whatever else stands under their names is passed over. */
export function keptDrafts(): readonly UnsavedDraft[] {
  try {
    return Object.keys(localStorage)
      .filter((key) => key.startsWith(prefix))
      .flatMap((key) => {
        const { id, revision, text } = JSON.parse(
          localStorage.getItem(key) ?? 'null'
        ) as Partial<UnsavedDraft>;
        const isDraft =
          (id === null || typeof id === 'string') &&
          (revision === null || typeof revision === 'number') &&
          typeof text === 'string';
        return isDraft ? [{ id, revision, text }] : [];
      });
  } catch {
    return [];
  }
}
