import { stepsIn, type KeptSteps } from './kept-steps.ts';

/**
 * Work that is not in the database: as a save failed, or as the page was left before it. A database is written to in
 * steps, and a page that goes away takes no second one; the browser's plain storage takes a text at once, and often
 * still has room where the database has none. Each draft has a name of its own, so that none takes another's place.
 */
export interface UnsavedDraft {
  readonly name: string;
  /** Of the stored workbook; null where it was not stored yet. */
  readonly id: string | null;
  /** The revision that it was made from. */
  readonly revision: number | null;
  /** ISO 8601. */
  readonly keptAt: string;
  /** The workbook's file. */
  readonly text: string;
  /** The steps of undo that lead to it; null where there was no room for them. */
  readonly steps: KeptSteps | null;
}

export interface UnsavedDrafts {
  /** Keeps a draft in place of the one of the same name. Returns false where the browser does not take it. */
  keep(draft: UnsavedDraft): boolean;
  drop(name: string): void;
  /** The drafts that are kept, the newest first; whatever else stands under their names is passed over. */
  all(): readonly UnsavedDraft[];
}

const prefix = 'vapour-ledger unsaved ';

/** @param storage the browser's plain storage, asked for each time: where it is refused, asking throws. */
export function unsavedDrafts(storage: () => Storage): UnsavedDrafts {
  return {
    keep({ name, ...draft }) {
      // The work goes before the way back.
      for (const kept of draft.steps === null ? [draft] : [draft, { ...draft, steps: null }])
        try {
          storage().setItem(prefix + name, JSON.stringify(kept));
          return true;
        } catch {
          // No room, or none is given.
        }
      return false;
    },
    drop(name) {
      try {
        storage().removeItem(prefix + name);
      } catch {
        // Then there is none.
      }
    },
    all() {
      try {
        const kept = storage();
        return Array.from({ length: kept.length }, (_, index) => kept.key(index) ?? '')
          .filter((key) => key.startsWith(prefix))
          .flatMap((key) => draftIn(key.slice(prefix.length), kept.getItem(key)))
          .sort((a, b) => b.keptAt.localeCompare(a.keptAt));
      } catch {
        return [];
      }
    }
  };
}

/** The draft that a text holds, or none. Those of earlier releases have no time, and no steps. */
function draftIn(name: string, kept: string | null): UnsavedDraft[] {
  try {
    const { id, revision, keptAt = '', text, steps } = JSON.parse(kept ?? 'null') as Partial<UnsavedDraft>;
    const isDraft =
      (id === null || typeof id === 'string') &&
      (revision === null || typeof revision === 'number') &&
      typeof keptAt === 'string' &&
      typeof text === 'string';
    return isDraft ? [{ name, id, revision, keptAt, text, steps: stepsIn(steps) }] : [];
  } catch {
    return [];
  }
}
