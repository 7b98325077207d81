import Papa from 'papaparse';
import { longestCellText, tooLongForCell } from '#lib/workbook/cell-text-limits.ts';
import { decodeUtf8, utf16Of } from './decode-utf8.ts';
import { unguardFormula } from '../write/formula-guard.ts';
import type { ReadTable, TextRow } from './read-table.ts';
import { tableLimits, tableOf } from './read-table.ts';
import { withoutSeparatorLine } from './separator-line.ts';

export type ReadCsv =
  | { readonly kind: 'table'; readonly table: ReadTable; readonly delimiter: string }
  /** `offer`: the file can be read in this older encoding, if the user says so. */
  | { readonly kind: 'refused'; readonly sentence: string; readonly offer?: 'windows-1252' };

export interface CsvOptions {
  /** `windows-1252` only after the file was refused as UTF-8 and the user agreed. */
  readonly encoding?: 'utf-8' | 'windows-1252';
  /** False where the first line already holds values. */
  readonly headings?: boolean;
}

/**
 * The table in a CSV file: delimiter (comma, semicolon, tab or bar) and line ends are found out, quotes and line breaks
 * in cells understood. Never throws.
 */
export function readCsv(
  bytes: Uint8Array,
  { encoding = 'utf-8', headings = true }: CsvOptions = {}
): ReadCsv {
  if (bytes.length > tableLimits.bytes)
    return refused(
      `The file has ${(bytes.length / 1e6).toFixed(1)} MB; a table has at most ${tableLimits.bytes / 1e6} MB. A log of single cases can be imported as a case log.`
    );
  const decoded = decode(bytes, encoding);
  if ('kind' in decoded) return decoded;
  const { text, delimiter: named } = withoutSeparatorLine(decoded.text);
  if (text.trim() === '') return refused('The file is empty.');
  if (text.includes('\0')) return refused('The file is not text: it has zero bytes in it.');

  const lines: TextRow[] = [];
  let breaks = named === undefined ? 0 : 1;
  let width = 0;
  const delimiter = named ?? guessDelimiter(text);
  let sentence: string | null = null;
  const parser: Papa.ParseConfig<string[]> & {
    step: (result: Papa.ParseStepResult<string[]>, parser: Papa.Parser) => void;
  } = {
    delimiter,
    step: ({ data, errors }, running) => {
      const line = lines.length + breaks + 1;
      const unclosed = errors.find((error) => error.code === 'MissingQuotes');
      if (unclosed !== undefined)
        sentence = `From line ${line} on a quotation mark is never closed, so the file is cut off or damaged.`;
      else if (data.length > tableLimits.columns)
        sentence = `Line ${line} has ${data.length} columns; a table has at most ${tableLimits.columns}.`;
      else if (data.some((cell) => cell.length > longestCellText))
        sentence = `Line ${line} has a cell that is too long: ${data.map(tooLongForCell).find((fault) => fault !== null)}.`;
      else if (lines.length > tableLimits.rows)
        sentence = `The file has more than ${tableLimits.rows} rows, more than any grid takes. A log of single cases can be imported as a case log.`;
      else if (
        headings &&
        lines.length > 0 &&
        data.length > width &&
        data.slice(width).some((cell) => cell.trim() !== '')
      )
        sentence = `Line ${line} has ${data.length} cells, but there are ${width} headings.`;
      if (sentence !== null) return running.abort();
      if (lines.length === 0 || !headings) width = Math.max(width, data.length);
      lines.push({ line, texts: data.map(unguardFormula) });
      for (const cell of data) breaks += cell.match(/\r\n|\r|\n/g)?.length ?? 0;
    }
  };
  Papa.parse<string[]>(text, parser);
  if (sentence !== null) return refused(sentence);

  const table = tableOf(lines, { headings });
  return 'sentence' in table ? refused(table.sentence) : { kind: 'table', table, delimiter };
}

const refused = (sentence: string): ReadCsv => ({ kind: 'refused', sentence });

/**
 * The delimiter that cuts the first line into the most cells, and the next ones most evenly. The parser's own guess
 * takes decimal commas for delimiters.
 */
export function guessDelimiter(text: string): string {
  const cut = (delimiter: string) => {
    const { data } = Papa.parse<string[]>(text, { delimiter, preview: 20, skipEmptyLines: 'greedy' });
    const cells = data.map((row) => row.length);
    return { delimiter, inFirst: cells[0] ?? 0, unevenness: Math.max(...cells) - Math.min(...cells) };
  };
  // Where two cut alike, the comma is the decimal mark.
  const [best] = [';', '\t', '|', ',']
    .map(cut)
    .sort((a, b) => b.inFirst - a.inFirst || a.unevenness - b.unevenness);
  return best?.delimiter ?? ',';
}

function decode(bytes: Uint8Array, encoding: 'utf-8' | 'windows-1252'): { readonly text: string } | ReadCsv {
  if (encoding === 'windows-1252') return { text: new TextDecoder('windows-1252').decode(bytes) };
  const utf16 = utf16Of(bytes);
  if (utf16 !== null) return { text: new TextDecoder(utf16).decode(bytes) };
  const decoded = decodeUtf8(bytes);
  if ('text' in decoded) return decoded;
  const isText = !bytes.includes(0) && decoded.sentence.includes('UTF-8');
  return {
    kind: 'refused',
    sentence: decoded.sentence,
    ...(isText ? { offer: 'windows-1252' as const } : {})
  };
}
