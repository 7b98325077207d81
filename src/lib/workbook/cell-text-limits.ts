/**
 * How much text a cell may hold, whichever way it comes in: typed, pasted, or from a file. The longest name has 200
 * characters and spreadsheet programs take some 32 000 in a cell (from memory); a longer text is a file gone wrong, and
 * millions of letters in one cell bring a browser down.
 */
export const longestCellText = 10_000;

/** Texts that could not be read, all together: a workbook keeps them, and its file has to stay one that can be opened. */
export const mostKeptText = 1_000_000;

/** Why a text is too long for a cell, as the end of a sentence; null where it is not. */
export function tooLongForCell(text: string): string | null {
  return text.length > longestCellText
    ? `${grouped(text.length)} characters were given; a cell takes at most ${grouped(longestCellText)}`
    : null;
}

const grouped = (count: number): string => String(count).replace(/(?<=\d)(?=(\d{3})+$)/g, '\u202f');
