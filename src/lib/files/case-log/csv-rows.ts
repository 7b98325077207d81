import Papa from 'papaparse';
import { guessDelimiter } from '../read/csv-in.ts';

/** Thrown where a stream stops being CSV text; the sentence is for the user. */
export class UnreadableLogError extends Error {
  constructor(sentence: string) {
    super(sentence);
    this.name = 'UnreadableLogError';
  }
}

export interface CsvBatch {
  readonly rows: readonly (readonly string[])[];
  /** Line of the file at which each row begins. */
  readonly lines: readonly number[];
  /** Bytes of the file read so far. */
  readonly bytesRead: number;
}

/** The longest row that is taken for one, in characters: a quotation mark that is never closed swallows the rest. */
const longestRow = 1_000_000;

/**
 * The rows of a CSV file as it streams by, headings and all, a batch for each piece of the stream: what has passed is
 * forgotten. Delimiter and line ends are found out from the first piece.
 * @throws UnreadableLogError for bytes that are no text in the encoding, and for a quotation mark never closed
 */
export async function* csvRows(
  pieces: AsyncIterable<Uint8Array>,
  encoding: 'utf-8' | 'windows-1252'
): AsyncGenerator<CsvBatch> {
  const decoder = new TextDecoder(encoding, { fatal: true });
  let parser: Papa.Parser | null = null;
  let rest = '';
  let line = 1;
  let bytesRead = 0;

  const decode = (piece: Uint8Array | null): string => {
    try {
      return piece === null ? decoder.decode() : decoder.decode(piece, { stream: true });
    } catch {
      throw new UnreadableLogError(
        `The file is not in UTF-8: after line ${line} there are bytes that are no letters in it. Save it again as UTF-8, or read it as an older Western file (Windows-1252).`
      );
    }
  };

  function parse(text: string, isLast: boolean): CsvBatch {
    parser ??= new Papa.Parser(dialectOf(text));
    const { data, errors, meta } = parser.parse(text, 0, !isLast) as Papa.ParseResult<string[]>;
    if (isLast && errors.some((error) => error.code === 'MissingQuotes'))
      throw new UnreadableLogError('A quotation mark is never closed, so the file is cut off or damaged.');
    rest = isLast ? '' : text.slice(meta.cursor);
    if (rest.length > longestRow)
      throw new UnreadableLogError(
        `From line ${line + data.length} on a quotation mark is never closed, or a row is longer than ${longestRow} characters.`
      );
    const quoted = text.includes('"');
    const lines = data.map((row) => {
      const at = line++;
      if (quoted) for (const cell of row) line += cell.match(/\r\n|\r|\n/g)?.length ?? 0;
      return at;
    });
    return { rows: data, lines, bytesRead };
  }

  for await (const piece of pieces) {
    bytesRead += piece.length;
    const text = rest + decode(piece);
    if (text.includes('\0')) throw new UnreadableLogError('The file is not text: it has zero bytes in it.');
    yield parse(text, false);
  }
  const last = rest + decode(null);
  if (last !== '') yield parse(last, true);
}

function dialectOf(text: string): { delimiter: string; newline: '\r\n' | '\n' | '\r' } {
  const unquoted = text.slice(0, 100_000).replace(/"[^"]*"/g, '');
  const newline = (/\r\n|\n|\r/.exec(unquoted)?.[0] ?? '\n') as '\r\n' | '\n' | '\r';
  return { delimiter: guessDelimiter(text.slice(0, 100_000)), newline };
}
