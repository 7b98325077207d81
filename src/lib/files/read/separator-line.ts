/**
 * The line `sep=;` with which some spreadsheet programs let a CSV file say its delimiter: common practice, no source.
 * @returns the text without it, and the delimiter where there was one
 */
export function withoutSeparatorLine(text: string): { readonly text: string; readonly delimiter?: string } {
  const found = /^\uFEFF?sep=([;,|\t])(?:\r\n|\r|\n)/i.exec(text);
  return found === null ? { text } : { text: text.slice(found[0].length), delimiter: found[1] as string };
}
