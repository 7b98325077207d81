/** What is said of where one figure comes from. */
import { tooLongForCell } from './cell-text-limits.ts';
import { quoted } from './field.ts';

/** How well a figure is known, the best first. */
export const sourceGrades = ['measured', 'invoiced', 'quoted', 'estimated', 'assumed'] as const;
export type SourceGrade = (typeof sourceGrades)[number];

export interface SourceNote {
  /** '' where date or grade say enough. */
  readonly text: string;
  /** The day it is of, as `2026-03-01`. */
  readonly date: string | null;
  readonly grade: SourceGrade | null;
}

export type SourceNotes = Readonly<Record<string, SourceNote>>;

/** Whether a text is a day of the calendar, as `2026-03-01`. */
const isDay = (text: string): boolean => {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return false;
  const day = new Date(`${text}T00:00:00Z`);
  return !Number.isNaN(day.getTime()) && day.toISOString().startsWith(text);
};

/** Why a value is no source note, as a sentence; null where it is one. */
export function sourceNoteFault(value: unknown): string | null {
  if (typeof value !== 'object' || value === null || Array.isArray(value))
    return `Note: ${quoted(value)} was given; allowed is a text with a date and a grade.`;
  const { text, date, grade, ...others } = value as Record<string, unknown>;
  const [other] = Object.keys(others);
  if (other !== undefined) return `Note: “${other}”: no such field; a note has text, date and grade.`;
  if (typeof text !== 'string') return `Note: ${quoted(text)} was given; allowed is a text.`;
  const tooLong = tooLongForCell(text);
  if (tooLong !== null) return `Note: ${tooLong}.`;
  if (date !== null && date !== undefined && !(typeof date === 'string' && isDay(date)))
    return `Date: ${quoted(date)} was given; allowed is a day such as 2026-03-01.`;
  if (grade !== null && grade !== undefined && !sourceGrades.includes(grade as SourceGrade))
    return `Grade: ${quoted(grade)} was given; allowed is one of ${sourceGrades.join(', ')}.`;
  return text === '' && (date ?? null) === null && (grade ?? null) === null
    ? 'Note: nothing was given; a note has a text, a date or a grade.'
    : null;
}
