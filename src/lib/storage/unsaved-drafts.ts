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

export interface UnsavedDrafts {
  /** Keeps a draft, one for each workbook; where the browser takes none, nothing more can be done. */
  keep(draft: UnsavedDraft): void;
  drop(id: string | null): void;
  /** The drafts that are kept; whatever else stands under their names is passed over. */
  all(): readonly UnsavedDraft[];
}

const prefix = 'vapour-ledger unsaved ';
const keyOf = (id: string | null): string => prefix + (id ?? 'new');

/** @param storage the browser's plain storage, asked for each time: where it is refused, asking throws. */
export function unsavedDrafts(storage: () => Storage): UnsavedDrafts {
  return {
    keep(draft) {
      try {
        storage().setItem(keyOf(draft.id), JSON.stringify(draft));
      } catch {
        // No room, or no storage at all: the save that is under way may still succeed.
      }
    },
    drop(id) {
      try {
        storage().removeItem(keyOf(id));
      } catch {
        // Then there is none.
      }
    },
    all() {
      try {
        const kept = storage();
        const keys = Array.from({ length: kept.length }, (_, index) => kept.key(index) ?? '');
        return keys.filter((key) => key.startsWith(prefix)).flatMap((key) => draftIn(kept.getItem(key)));
      } catch {
        return [];
      }
    }
  };
}

/** The draft that a text holds, or none. */
function draftIn(kept: string | null): UnsavedDraft[] {
  try {
    const { id, revision, text } = JSON.parse(kept ?? 'null') as Partial<UnsavedDraft>;
    const isDraft =
      (id === null || typeof id === 'string') &&
      (revision === null || typeof revision === 'number') &&
      typeof text === 'string';
    return isDraft ? [{ id, revision, text }] : [];
  } catch {
    return [];
  }
}
