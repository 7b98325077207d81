import { fileKind } from './file-kind.ts';

export type DecodedText = { readonly text: string } | { readonly sentence: string };

/**
 * The text of a file in UTF-8, its byte order mark taken off; or a sentence that says what the file is instead, or on
 * which line it stops being UTF-8. Nothing is replaced or dropped.
 */
export function decodeUtf8(bytes: Uint8Array): DecodedText {
  const kind = fileKind(bytes);
  if (kind !== null) return { sentence: `The file is ${kind}.` };
  if (utf16Of(bytes) !== null) return { sentence: 'The file is in UTF-16: save it again as UTF-8.' };
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes) };
  } catch {
    const readable = new TextDecoder('utf-8').decode(bytes);
    const line = readable.slice(0, readable.indexOf('\uFFFD')).split('\n').length;
    return {
      sentence: `The file is not in UTF-8: line ${line} has bytes that are no letters in it. Save it again as UTF-8.`
    };
  }
}

/** The encoding that a byte order mark of UTF-16 names (spreadsheet programs call it “Unicode text”); null without one. */
export function utf16Of(bytes: Uint8Array | null): 'utf-16le' | 'utf-16be' | null {
  if (bytes?.[0] === 0xff && bytes[1] === 0xfe) return 'utf-16le';
  return bytes?.[0] === 0xfe && bytes[1] === 0xff ? 'utf-16be' : null;
}
