import Papa from 'papaparse';
import { guessDelimiter } from '../read/csv-in.ts';
import { utf16Of } from '../read/decode-utf8.ts';
import { withoutSeparatorLine } from '../read/separator-line.ts';

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
 * forgotten. The delimiter, and UTF-16 by its byte order mark, are found out from the first piece. Line ends may be of
 * every kind, and mixed, as in a file put together from two; those within a cell come as `\n`.
 * @throws UnreadableLogError for bytes that are no text in the encoding, and for a quotation mark never closed
 */
export async function* csvRows(
  pieces: AsyncIterable<Uint8Array>,
  encoding: 'utf-8' | 'windows-1252'
): AsyncGenerator<CsvBatch> {
  let decoder: TextDecoder | null = null;
  let endsInReturn = false;
  let parser: Papa.Parser | null = null;
  let rest = '';
  let line = 1;
  let bytesRead = 0;

  const decode = (piece: Uint8Array | null): string => {
    decoder ??= new TextDecoder(utf16Of(piece) ?? encoding, { fatal: true });
    try {
      const text = piece === null ? decoder.decode() : decoder.decode(piece, { stream: true });
      const whole = endsInReturn ? `\r${text}` : text;
      // What follows a carriage return says whether the two are one line end.
      endsInReturn = piece !== null && whole.endsWith('\r');
      const known = endsInReturn ? whole.slice(0, -1) : whole;
      return known.includes('\r') ? known.replace(/\r\n?/g, '\n') : known;
    } catch {
      if (decoder.encoding.startsWith('utf-16'))
        throw new UnreadableLogError(
          `The file begins as UTF-16, but after line ${line} there are bytes that are no letters in it. Save it again as UTF-8.`
        );
      throw new UnreadableLogError(
        `The file is not in UTF-8: after line ${line} there are bytes that are no letters in it. Save it again as UTF-8, or read it as an older Western file (Windows-1252).`
      );
    }
  };

  function parse(given: string, isLast: boolean): CsvBatch {
    const { text, delimiter } = parser === null ? withoutSeparatorLine(given) : { text: given };
    if (text !== given) line++;
    parser ??= new Papa.Parser({
      delimiter: delimiter ?? guessDelimiter(text.slice(0, 100_000)),
      newline: '\n'
    });
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
      if (quoted) for (const cell of row) line += cell.match(/\n/g)?.length ?? 0;
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
  const last = (rest + decode(null)).replace(/\n$/, '');
  if (last !== '') yield parse(last, true);
}
