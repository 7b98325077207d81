/**
 * What a ZIP archive unpacks to, found by unpacking it and throwing the result away: what an archive says of itself can
 * be wrong, and a few kilobytes can unpack to gigabytes, or to one text of millions of letters.
 */
import { zipEntries } from './zip-entries.ts';

export type ZipSize =
  | { readonly kind: 'size'; readonly bytes: number }
  | { readonly kind: 'over-limit' }
  /** A file of marked-up text (XML) in it has a longer text between two of its marks than is allowed. */
  | { readonly kind: 'long-text' }
  | { readonly kind: 'damaged' };

export interface ZipLimits {
  /** Of all that is unpacked. */
  readonly bytes: number;
  /** Of a text between two marks, where a file in the archive is XML. */
  readonly textBytes: number;
}

/** Unpacks an archive piece by piece, and stops as soon as more came out than is allowed. */
export async function zipSize(archive: Uint8Array, limits: ZipLimits): Promise<ZipSize> {
  try {
    let bytes = 0;
    for (const entry of zipEntries(archive)) {
      const packed = archive.subarray(entry.start, entry.start + entry.packedBytes);
      const pieces = entry.packed ? unpacked(packed) : [packed];
      let text: { readonly bytes: number } | null = null;
      for await (const piece of pieces) {
        bytes += piece.length;
        if (bytes > limits.bytes) return { kind: 'over-limit' };
        // A file is XML where its first sign, after a byte order mark, is a mark.
        text ??= piece.subarray(0, 4).includes(mark) ? { bytes: 0 } : { bytes: -Infinity };
        text = longestText(piece, text.bytes, limits.textBytes);
        if (text === null) return { kind: 'long-text' };
      }
    }
    return { kind: 'size', bytes };
  } catch {
    return { kind: 'damaged' };
  }
}

async function* unpacked(packed: Uint8Array): AsyncGenerator<Uint8Array> {
  const reader = new Blob([packed as Uint8Array<ArrayBuffer>])
    .stream()
    .pipeThrough(new DecompressionStream('deflate-raw'))
    .getReader();
  try {
    for (;;) {
      const { done, value } = await reader.read();
      if (done) return;
      yield value;
    }
  } finally {
    // Whoever stops early needs no more of it.
    await reader.cancel();
  }
}

/** The sign `<`, with which every mark of XML begins. */
const mark = 0x3c;

/**
 * Follows the text since the last mark through a piece.
 * @param before its bytes so far
 * @returns its bytes at the end of the piece; null where it became longer than `most` before
 */
function longestText(piece: Uint8Array, before: number, most: number): { readonly bytes: number } | null {
  if (before === -Infinity) return { bytes: before };
  let from = -before;
  for (;;) {
    const at = piece.indexOf(mark, Math.max(0, from));
    if ((at < 0 ? piece.length : at) - from > most) return null;
    if (at < 0) return { bytes: piece.length - from };
    from = at + 1;
  }
}
