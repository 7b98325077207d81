/**
 * What a ZIP archive unpacks to, found by unpacking it and throwing the result away: what an archive says of itself can
 * be wrong, and a few kilobytes can unpack to gigabytes.
 */
export type ZipSize =
  | { readonly kind: 'size'; readonly bytes: number }
  | { readonly kind: 'over-limit' }
  | { readonly kind: 'damaged' };

const endSignature = 0x06054b50;
const entrySignature = 0x02014b50;
const localSignature = 0x04034b50;
/** A length of 32 bits that says “look elsewhere”: archives of that size are beyond every limit here. */
const elsewhere = 0xffffffff;

/** Unpacks an archive piece by piece, and stops as soon as more than `limit` bytes came out. */
export async function zipSize(archive: Uint8Array, limit: number): Promise<ZipSize> {
  const view = new DataView(archive.buffer, archive.byteOffset, archive.byteLength);
  try {
    let bytes = 0;
    for (const entry of entriesOf(view)) {
      const packed = archive.subarray(entry.start, entry.start + entry.packedBytes);
      bytes += entry.packed ? await unpackedBytes(packed, limit - bytes) : packed.length;
      if (bytes > limit) return { kind: 'over-limit' };
    }
    return { kind: 'size', bytes };
  } catch {
    return { kind: 'damaged' };
  }
}

interface ZipEntry {
  readonly start: number;
  readonly packedBytes: number;
  readonly packed: boolean;
}

/** The entries by the directory at the archive's end. Throws where it is not one, or points outside. */
function* entriesOf(view: DataView): Generator<ZipEntry> {
  const end = directoryEnd(view);
  const entries = view.getUint16(end + 10, true);
  let at = view.getUint32(end + 16, true);
  for (let entry = 0; entry < entries; entry++) {
    if (view.getUint32(at, true) !== entrySignature) throw new RangeError('no entry');
    const method = view.getUint16(at + 10, true);
    const packedBytes = view.getUint32(at + 20, true);
    const local = view.getUint32(at + 42, true);
    if (packedBytes === elsewhere || local === elsewhere || (method !== 0 && method !== 8))
      throw new RangeError('unknown');
    if (view.getUint32(local, true) !== localSignature) throw new RangeError('no local header');
    const start = local + 30 + view.getUint16(local + 26, true) + view.getUint16(local + 28, true);
    if (start + packedBytes > view.byteLength) throw new RangeError('cut off');
    yield { start, packedBytes, packed: method === 8 };
    at += 46 + view.getUint16(at + 28, true) + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
  }
}

/** Where the record stands that ends an archive; a comment of up to 65 535 bytes may follow it. */
function directoryEnd(view: DataView): number {
  for (let at = view.byteLength - 22; at >= Math.max(0, view.byteLength - 22 - 0xffff); at--)
    if (view.getUint32(at, true) === endSignature) return at;
  throw new RangeError('no end');
}

async function unpackedBytes(packed: Uint8Array, limit: number): Promise<number> {
  const inflated = new Blob([packed as Uint8Array<ArrayBuffer>])
    .stream()
    .pipeThrough(new DecompressionStream('deflate-raw'));
  const reader = inflated.getReader();
  let bytes = 0;
  for (;;) {
    const { done, value } = await reader.read();
    if (done) return bytes;
    bytes += value.length;
    if (bytes > limit) {
      await reader.cancel();
      return bytes;
    }
  }
}
