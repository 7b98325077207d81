/** Tables from a spreadsheet file, to be imported as those of a CSV file are. To be loaded when it is asked for. */
import { formatForEditing } from '#lib/numbers/format-number.ts';
import { longestCellText, tooLongForCell } from '#lib/workbook/cell-text-limits.ts';
import { fileKind } from './file-kind.ts';
import type { ReadTable, TextRow } from './read-table.ts';
import { tableLimits, tableOf } from './read-table.ts';
import { columnLetters } from '../xlsx/sheet.ts';
import type { SheetValues } from '../xlsx/read-sheets.ts';
import { readSheets } from '../xlsx/read-sheets.ts';
import { withZipTexts } from './zip-entries.ts';
import { zipSize } from './zip-size.ts';

export type ReadXlsx =
  | { readonly kind: 'sheets'; readonly sheets: readonly ReadSheet[] }
  | { readonly kind: 'refused'; readonly sentence: string };

/** A sheet with its table, or the sentence that says why it holds none. */
export interface ReadSheet {
  readonly name: string;
  readonly table: ReadTable | null;
  readonly sentence: string | null;
}

/** The most that a spreadsheet may unpack to, in bytes. */
export const unpackedLimit = 100_000_000;

/** A cell's text in the file: a letter takes up to 10 bytes (`&#x1F600;`), and its mark some before it. */
const mostTextBytes = longestCellText * 10 + 1000;

const refused = (sentence: string): ReadXlsx => ({ kind: 'refused', sentence });

/**
 * The tables of a spreadsheet file, one for each sheet that is shown, with headings in the first row. Numbers become
 * texts as the locale writes them, to be read again in the same way. Never throws.
 */
export async function readXlsxTables(bytes: Uint8Array, locale: string): Promise<ReadXlsx> {
  if (bytes.length > tableLimits.bytes)
    return refused(
      `The file has ${(bytes.length / 1e6).toFixed(1)} MB; a spreadsheet has at most ${tableLimits.bytes / 1e6} MB.`
    );
  if (bytes.length === 0) return refused('The file is empty.');
  const kind = fileKind(bytes);
  if (kind === null || !kind.includes('XLSX'))
    return refused(
      `The file is ${kind ?? 'no spreadsheet'}. A spreadsheet has to be saved as XLSX, or each table as CSV.`
    );
  const size = await zipSize(bytes, { bytes: unpackedLimit, textBytes: mostTextBytes });
  if (size.kind === 'long-text')
    return refused(
      `A cell of the file has more than ${longestCellText} characters, more than any cell takes, so it was not opened.`
    );
  if (size.kind === 'over-limit')
    return refused(
      `The file unpacks to more than ${unpackedLimit / 1e6} MB, more than can be read here, so it was not opened. The workbook’s own file (JSON) holds the same.`
    );
  if (size.kind === 'damaged') return refused('The file is cut off or damaged: fetch or save it again.');
  let sheets: readonly SheetValues[];
  try {
    // Put together anew of what was measured: a crafted archive leads one reader to one directory and the next to another.
    sheets = await readSheets(withZipTexts(bytes, new Map()), {
      // One more than is allowed, so that too many are noticed.
      rows: tableLimits.rows + 2,
      lastCell: `${columnLetters(tableLimits.columns)}${tableLimits.rows + 2}`
    });
  } catch (error) {
    return refused(
      error instanceof Error && error.name === 'EncryptedFileError'
        ? 'The file is locked with a password: save it without one.'
        : 'The file is a ZIP archive, but no spreadsheet in it can be read. Save it again as XLSX.'
    );
  }
  if (sheets.length === 0) return refused('The file has no sheet that is shown.');
  return { kind: 'sheets', sheets: sheets.map((sheet) => readSheet(sheet, locale)) };
}

function readSheet({ name, rows }: SheetValues, locale: string): ReadSheet {
  const without = (sentence: string): ReadSheet => ({ name, table: null, sentence });
  const lines = rows.map((row, index): TextRow => ({
    line: index + 1,
    texts: trimmed(row.map((value) => textOf(value, locale)))
  }));
  for (const { line, texts } of lines) {
    const tooLong = texts.find((text) => text.length > longestCellText);
    if (tooLong !== undefined)
      return without(`Row ${line} has a cell that is too long: ${tooLongForCell(tooLong)}.`);
  }
  const [first, ...rest] = lines.filter(({ texts }) => texts.length > 0);
  if (first === undefined) return without('The sheet is empty.');
  const widest = Math.max(first.texts.length, ...rest.map(({ texts }) => texts.length));
  if (widest > tableLimits.columns)
    return without(`The sheet has more than ${tableLimits.columns} columns, more than any grid takes.`);
  if (rest.length > tableLimits.rows)
    return without(`The sheet has more than ${tableLimits.rows} rows, more than any grid takes.`);
  const beyond = rest.find(({ texts }) => texts.length > first.texts.length);
  if (beyond !== undefined)
    return without(
      `Row ${beyond.line} has ${beyond.texts.length} cells, but there are ${first.texts.length} headings in row ${first.line}.`
    );
  const table = tableOf([first, ...rest], { headings: true });
  return 'sentence' in table ? without(table.sentence) : { name, table, sentence: null };
}

/** A row without the empty cells at its end. */
function trimmed(texts: readonly string[]): readonly string[] {
  return texts.slice(0, texts.findLastIndex((text) => text.trim() !== '') + 1);
}

function textOf(value: unknown, locale: string): string {
  if (value === null || value === undefined) return '';
  if (typeof value === 'number') return formatForEditing(value, { locale });
  if (typeof value === 'boolean') return value ? 'Yes' : 'No';
  if (value instanceof Date) return value.toISOString().slice(0, 10);
  return String(value);
}
