/**
 * Text of a user's that a spreadsheet program would take for a formula. In a CSV file nothing says “this is text”, so an
 * apostrophe is put before it, as is common practice (no source), and taken off again on the way in.
 */
// Signs that begin a formula, their full-width twins, and control characters that a program may skip before one.
const beginsFormula = /^'*[=+\-@\uff1d\uff0b\uff0d\uff20\p{Cc}]/u;
const wasGuarded = /^'+[=+\-@\uff1d\uff0b\uff0d\uff20\p{Cc}]/u;

/** The text with an apostrophe before it, where it would else be taken for a formula (or for a text so guarded). */
export function guardFormula(text: string): string {
  return beginsFormula.test(text) ? `'${text}` : text;
}

/** The text as it was before `guardFormula`; any other text as it is. */
export function unguardFormula(text: string): string {
  return wasGuarded.test(text) ? text.slice(1) : text;
}
