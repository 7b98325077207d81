/** Formulas that tell whether cells hold what they held when the file was saved. */

/** A spreadsheet takes texts of 255 signs in a formula. */
const longestLiteral = 120;

/**
 * The first signs of a text that every program compares alike: Latin letters and common marks. Others are counted as one
 * or as two, and a line break may be written in more than one way.
 */
const comparable = (text: string): string =>
  (/^[\x20-\x7e\u00a1-\u024f\u2013\u2014\u2018-\u201d\u2026\u2080-\u2089]*/u.exec(text)?.[0] ?? '').slice(
    0,
    longestLiteral
  );

/**
 * 1 where a cell no longer holds a value, 0 where it does, as a formula without its equals sign.
 * @param cell its address on the same sheet
 * @param value as it was saved; '' for an empty cell
 */
export function differsFormula(cell: string, value: number | string | boolean): string {
  if (typeof value === 'number') return `(${cell}<>${value < 0 ? `(${value})` : value})`;
  if (value === '') return `(${cell}<>"")`;
  const text = String(value);
  const start = comparable(text);
  // A text such as #REF! is an error to some programs, which would make one of the formula as well.
  if (text.startsWith('#')) return '0';
  if (start === '') return `(${cell}="")`;
  const literal = `"${start.replaceAll('"', '""')}"`;
  return start === text
    ? `(1-EXACT(${cell},${literal}))`
    : `(1-EXACT(LEFT(${cell},${start.length}),${literal}))`;
}

/** How many of some cells differ, as a formula; 0 where there are none. */
export const countOfDiffering = (differing: readonly string[]): string =>
  differing.length === 0 ? '0' : `0+${differing.join('+')}`;
