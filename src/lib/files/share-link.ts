/**
 * A small workbook in the fragment of a link, the part behind `#` that a browser never sends to a server: packed
 * (deflate), as letters that a link takes, with a checksum by which a link cut short or changed on its way is known.
 */
import type { ParsedWorkbook } from '#lib/workbook/parse-workbook.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { readWorkbookFile, tooLargeForWorkbook, writeWorkbookFile } from './read/workbook-file.ts';

const prefix = '#workbook=';
/** What mail programs and messengers carry as a link at most differs; from memory, no source. */
const longestFragment = 30_000;
/** What a fragment may unpack to: a few thousand letters can unpack to gigabytes. */
const mostBytes = 2_000_000;

/** Whether a fragment claims to carry a workbook. */
export const carriesWorkbook = (fragment: string): boolean => fragment.startsWith(prefix);

/** The fragment that carries a workbook; or why it does not fit into a link. */
export async function fragmentOf(
  workbook: Workbook
): Promise<{ readonly fragment: string } | { readonly sentence: string }> {
  const json = JSON.stringify(JSON.parse(new TextDecoder().decode(writeWorkbookFile(workbook))));
  const packed = await collected(
    throughStream(new TextEncoder().encode(json), new CompressionStream('deflate-raw'))
  );
  const letters = packed === null ? '' : toLetters(packed);
  const fragment = `${prefix}${checksum(letters)}.${letters}`;
  return packed === null || fragment.length > longestFragment
    ? { sentence: 'This workbook is too large for a link: save it as a file and send that.' }
    : { fragment };
}

/** The workbook that a fragment carries, checked as one from a file is; a cut or forged one is refused. Never throws. */
export async function workbookOfFragment(fragment: string): Promise<ParsedWorkbook> {
  const [, sum, letters] = /^#workbook=([0-9a-f]{8})\.([\w-]+)$/.exec(fragment) ?? [];
  if (sum === undefined || letters === undefined || checksum(letters) !== sum)
    return refused(
      'The link is cut short or was changed on its way, so nothing was opened. Ask for it again, or for the workbook’s file.'
    );
  try {
    const bytes = await collected(
      throughStream(fromLetters(letters), new DecompressionStream('deflate-raw'))
    );
    if (bytes === null)
      return refused('What the link carries is too large for a link, so nothing was opened.');
    const tooLarge = tooLargeForWorkbook(bytes.length);
    return tooLarge === null ? readWorkbookFile(bytes) : refused(tooLarge);
  } catch {
    return refused('The link carries no workbook, so nothing was opened.');
  }
}

const refused = (sentence: string): ParsedWorkbook => ({
  kind: 'refused',
  issues: [{ path: 'link', sentence }]
});

const throughStream = (bytes: Uint8Array, stream: CompressionStream | DecompressionStream) =>
  new Blob([bytes as Uint8Array<ArrayBuffer>]).stream().pipeThrough(stream);

/** All that a stream gives; null, and no more of it, once that is too much. */
async function collected(stream: ReadableStream<Uint8Array>): Promise<Uint8Array | null> {
  const reader = stream.getReader();
  const pieces: Uint8Array[] = [];
  let length = 0;
  for (;;) {
    const { done, value } = await reader.read();
    if (done) break;
    length += value.length;
    if (length > mostBytes) {
      await reader.cancel();
      return null;
    }
    pieces.push(value);
  }
  const all = new Uint8Array(length);
  let at = 0;
  for (const piece of pieces) {
    all.set(piece, at);
    at += piece.length;
  }
  return all;
}

/** Base64 with the signs that a link takes (RFC 4648, section 5), without padding. */
function toLetters(bytes: Uint8Array): string {
  let binary = '';
  for (const byte of bytes) binary += String.fromCharCode(byte);
  return btoa(binary).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '');
}

const fromLetters = (letters: string): Uint8Array =>
  Uint8Array.from(atob(letters.replaceAll('-', '+').replaceAll('_', '/')), (sign) => sign.charCodeAt(0));

/** FNV-1a of 32 bits: against accidents, not against a forger, whose workbook is checked as any other is. */
function checksum(text: string): string {
  let hash = 0x811c9dc5;
  for (let at = 0; at < text.length; at++) hash = Math.imul(hash ^ text.charCodeAt(at), 0x01000193);
  return (hash >>> 0).toString(16).padStart(8, '0');
}
