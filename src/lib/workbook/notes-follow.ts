/** What becomes of the source notes of cells that are written: a new value brings its own, and the old one's goes. */
import { cellReader } from './cell-reader.ts';
import { fieldAt } from './field-at.ts';
import type { SourceNote } from './source-note.ts';
import type { Workbook } from './workbook.ts';

/** A cell that was written. */
export interface WrittenCell {
  readonly path: string;
  /** Where the text comes from, if it brought that along. */
  readonly source?: SourceNote;
  /** The arithmetic that the value was computed from, as it was typed. */
  readonly computedFrom?: string;
}

/**
 * The workbook after an edit with the notes of its cells. Only a number or an amount that is new in its cell brings a
 * note; a cell that holds what it held before keeps its own.
 * @param before the workbook before the edit, without rows that were added for it
 * @returns with it the cells whose note spoke of the value before and is gone
 */
export function notesFollowing(
  before: Workbook,
  after: Workbook,
  cells: readonly WrittenCell[]
): { readonly workbook: Workbook; readonly gone: readonly string[] } {
  const notes: Record<string, SourceNote> = { ...after.notes };
  const gone: string[] = [];
  let isChanged = false;
  const [valueBefore, valueAfter] = [cellReader(before), cellReader(after)];
  for (const { path, source, computedFrom } of cells) {
    const value = valueAfter(path);
    if (value === valueBefore(path)) continue;
    const kind = fieldAt(path)?.kind;
    const note =
      (kind !== 'number' && kind !== 'money') || value === null
        ? undefined
        : computedFrom === undefined
          ? source
          : withArithmetic(computedFrom, source);
    if (note !== undefined) notes[path] = note;
    else if (Object.hasOwn(notes, path)) {
      delete notes[path];
      gone.push(path);
    } else continue;
    isChanged = true;
  }
  return { workbook: isChanged ? { ...after, notes } : after, gone };
}

const withArithmetic = (arithmetic: string, source?: SourceNote): SourceNote => ({
  text: [`Computed from ${arithmetic}`, source?.text ?? ''].filter((part) => part !== '').join('. '),
  date: source?.date ?? null,
  grade: source?.grade ?? null
});
