/** A table as it was read from a file, before anything is made of it. */
export interface ReadTable {
  /** One for each column; where a heading is empty, `Column 3`. */
  readonly headers: readonly string[];
  readonly rows: readonly TextRow[];
}

/** A row of texts, as many as there are headings, and the line of the file (or row of the sheet) at which it begins. */
export interface TextRow {
  readonly line: number;
  readonly texts: readonly string[];
}

/** The most that a table from a file may hold. */
export const tableLimits = { bytes: 20_000_000, columns: 500, rows: 20_000 } as const;

/**
 * Rows of texts as a table: headings from the first one (or made up, without `headings`), empty rows left out, short
 * ones filled up. Headings alone are a table too: an empty one. Two columns
 * of one name, whatever its capitals, are refused, as nobody could tell them apart.
 */
export function tableOf(
  lines: readonly TextRow[],
  { headings }: { readonly headings: boolean }
): ReadTable | { readonly sentence: string } {
  const first = headings ? lines[0] : undefined;
  const width = headings
    ? (first?.texts.length ?? 0)
    : Math.max(0, ...lines.map((line) => line.texts.length));
  const headers = Array.from(
    { length: width },
    (_, index) => first?.texts[index]?.trim() || `Column ${index + 1}`
  );
  const twice = firstRepeated(headers);
  if (twice !== null)
    return {
      sentence: `Columns ${twice.first + 1} and ${twice.second + 1} are both called “${headers[twice.second]}”: give each a heading of its own.`
    };
  const rows = lines
    .slice(headings ? 1 : 0)
    .filter(({ texts }) => texts.some((cell) => cell.trim() !== ''))
    .map(({ line, texts }) => ({ line, texts: headers.map((_, index) => texts[index] ?? '') }));
  return { headers, rows };
}

/** The first two places at which a list has the same heading; null where none. */
export function firstRepeated(headers: readonly string[]): { first: number; second: number } | null {
  const seen = new Map<string, number>();
  for (const [second, header] of headers.entries()) {
    const folded = header.toLocaleLowerCase('en-GB');
    const first = seen.get(folded);
    if (first !== undefined) return { first, second };
    seen.set(folded, second);
  }
  return null;
}
