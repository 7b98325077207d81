/** Where the figures of cells come from, in the user's words; no figure rests on it. */
import { readCell } from '#lib/calc/cell-path.ts';
import type { ChoiceField } from './field.ts';
import { quoted } from './field.ts';
import { fieldAt } from './field-at.ts';
import { readText } from './read-text.ts';
import type { SourceGrade, SourceNote } from './source-note.ts';
import { sourceGrades, sourceNoteFault } from './source-note.ts';
import type { Workbook } from './workbook.ts';

export const gradeField: ChoiceField = {
  kind: 'choice',
  title: 'Grade',
  words: 'How well the figure is known.',
  options: sourceGrades.map((id) => ({ id, label: id.charAt(0).toUpperCase() + id.slice(1) })),
  optional: true,
  empty: 'no grade'
};

/** A grade as it is shown; “no grade” where none was given. */
export const gradeInWords = (grade: SourceGrade | null): string =>
  grade === null ? 'no grade' : grade.charAt(0).toUpperCase() + grade.slice(1);

/**
 * A note from three texts, as they stand in a form or a file; null where all are empty.
 * @returns the note, or a sentence that names the first text that cannot be taken
 */
export function readSourceNote(
  texts: { readonly text: string; readonly date: string; readonly grade: string },
  workbook: Workbook
): { readonly note: SourceNote | null } | { readonly sentence: string } {
  const grade = readText(texts.grade, { field: gradeField, workbook, locale: 'en-GB' });
  if ('sentence' in grade) return grade;
  const note: SourceNote = {
    text: texts.text.trim(),
    date: texts.date.trim() === '' ? null : texts.date.trim(),
    grade: grade.value as SourceGrade | null
  };
  if (note.text === '' && note.date === null && note.grade === null) return { note: null };
  const fault = sourceNoteFault(note);
  return fault === null ? { note } : { sentence: fault };
}

/** Why no note can stand at a path, as a sentence; null where one can. */
export const placeFault = (path: string): string | null =>
  fieldAt(path) === undefined ? `${quoted(path)} is not a cell, so it cannot have a note.` : null;

export const sourceNoteOf = (workbook: Workbook, path: string): SourceNote | null =>
  Object.hasOwn(workbook.notes ?? {}, path) ? (workbook.notes?.[path] ?? null) : null;

/** The workbook with a cell's note in place; null takes it away. */
export function withSourceNote(workbook: Workbook, path: string, note: SourceNote | null): Workbook {
  const { [path]: before, ...others } = workbook.notes ?? {};
  if (note === null) return before === undefined ? workbook : { ...workbook, notes: others };
  const isSame = before?.text === note.text && before.date === note.date && before.grade === note.grade;
  return isSame ? workbook : { ...workbook, notes: { ...workbook.notes, [path]: note } };
}

/** Notes of cells that stand in the workbook, in the order in which they were given. */
export const standingNotes = (workbook: Workbook): readonly (readonly [path: string, note: SourceNote])[] =>
  Object.entries(workbook.notes ?? {}).filter(([path]) => readCell(workbook, path) !== undefined);

/** The day on which a moment falls where the reader is, as notes hold it. */
export const dayOf = (moment: Date): string =>
  [moment.getFullYear(), moment.getMonth() + 1, moment.getDate()]
    .map((part, at) => String(part).padStart(at === 0 ? 4 : 2, '0'))
    .join('-');

/** A day as it is written where the reader is. */
export const dayInWords = (date: string, locale: string): string =>
  new Intl.DateTimeFormat(locale, { dateStyle: 'long', timeZone: 'UTC' }).format(
    new Date(`${date}T00:00:00Z`)
  );

/** A note in one line: grade, day and text, as far as they are given. */
export function sourceNoteInWords({ text, date, grade }: SourceNote, locale: string): string {
  const head = [
    ...(grade === null ? [] : [gradeInWords(grade)]),
    ...(date === null ? [] : [dayInWords(date, locale)])
  ].join(', ');
  return [head, text].filter((part) => part !== '').join(': ');
}
