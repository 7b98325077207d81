/**
 * Text of a user's that a spreadsheet program would take for a formula. In a CSV file nothing says “this is text”, so an
 * apostrophe is put before it, as is common practice (no source), and taken off again on the way in. A program that
 * splits at another sign than the file’s begins cells in the middle of a text, so every part of one is looked at.
 */
// Signs that begin a formula, with their full-width twins, after blanks and control characters that a program may skip.
const beginsFormula = /^'*[\s\p{Cc}\u200b-\u200d\u2060\ufeff]*[=+\-@\uff1d\uff0b\uff0d\uff20]/u;
const wasGuarded = /^'+[\s\p{Cc}\u200b-\u200d\u2060\ufeff]*[=+\-@\uff1d\uff0b\uff0d\uff20]/u;

// A control character at the start is guarded whatever follows: programs differ in what they skip.
const beginsOddly = /^'*\p{Cc}/u;
const wasGuardedOddly = /^'+\p{Cc}/u;

/** Where some program may split a text into cells: the delimiters of tables, and line ends. */
const delimiters = /([;,\t|\r\n])/;

const inParts = (text: string, change: (part: string) => string): string =>
  text.split(delimiters).map(change).join('');

/** The text with an apostrophe before each part that would else be taken for a formula (or for a text so guarded). */
export function guardFormula(text: string): string {
  const guarded = inParts(text, (part) => (beginsFormula.test(part) ? `'${part}` : part));
  return beginsOddly.test(guarded) ? `'${guarded}` : guarded;
}

/** The text as it was before `guardFormula`; any other text as it is. */
export function unguardFormula(text: string): string {
  if (!text.includes("'")) return text;
  return inParts(wasGuardedOddly.test(text) ? text.slice(1) : text, (part) =>
    wasGuarded.test(part) ? part.slice(1) : part
  );
}
