/** What a ZIP archive says of the files in it, and archives put together anew (APPNOTE.TXT of the format, from memory). */

export const signatures = { local: 0x04034b50, entry: 0x02014b50, end: 0x06054b50 } as const;
/** A length of 32 bits that says “look elsewhere”: archives of that size are beyond every limit here. */
const elsewhere = 0xffffffff;

export interface ZipEntry {
  readonly name: string;
  /** Where its bytes begin in the archive. */
  readonly start: number;
  readonly packedBytes: number;
  /** False where the bytes stand as they are. */
  readonly packed: boolean;
  /** What its bytes come to when they are unpacked, by the archive's own word. */
  readonly bytes: number;
  readonly crc32: number;
}

/** The entries by the directory at the archive's end. Throws RangeError where it is not one, or points outside. */
export function* zipEntries(archive: Uint8Array): Generator<ZipEntry> {
  const view = new DataView(archive.buffer, archive.byteOffset, archive.byteLength);
  const end = directoryEnd(view);
  const entries = view.getUint16(end + 10, true);
  let at = view.getUint32(end + 16, true);
  for (let entry = 0; entry < entries; entry++) {
    if (view.getUint32(at, true) !== signatures.entry) throw new RangeError('no entry');
    const method = view.getUint16(at + 10, true);
    const packedBytes = view.getUint32(at + 20, true);
    const nameBytes = view.getUint16(at + 28, true);
    const local = view.getUint32(at + 42, true);
    if (packedBytes === elsewhere || local === elsewhere || (method !== 0 && method !== 8))
      throw new RangeError('unknown');
    if (view.getUint32(local, true) !== signatures.local) throw new RangeError('no local header');
    const start = local + 30 + view.getUint16(local + 26, true) + view.getUint16(local + 28, true);
    if (start + packedBytes > view.byteLength) throw new RangeError('cut off');
    yield {
      name: new TextDecoder().decode(archive.subarray(at + 46, at + 46 + nameBytes)),
      start,
      packedBytes,
      packed: method === 8,
      bytes: view.getUint32(at + 24, true),
      crc32: view.getUint32(at + 16, true)
    };
    at += 46 + nameBytes + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
  }
}

/** Where the record stands that ends an archive; a comment of up to 65 535 bytes may follow it. */
function directoryEnd(view: DataView): number {
  for (let at = view.byteLength - 22; at >= Math.max(0, view.byteLength - 22 - 0xffff); at--)
    if (view.getUint32(at, true) === signatures.end) return at;
  throw new RangeError('no end');
}

/**
 * The archive put together anew of the entries in its directory, in the same order, with other texts in place of some of
 * its files; the new ones stand there unpacked.
 * @throws Error where it has no file of a name
 */
export function withZipTexts(
  archive: Uint8Array,
  texts: ReadonlyMap<string, string>
): Uint8Array<ArrayBuffer> {
  const entries = [...zipEntries(archive)];
  for (const name of texts.keys())
    if (!entries.some((entry) => entry.name === name)) throw new Error(`The archive has no “${name}”.`);
  const pieces: Uint8Array[] = [];
  const directory: Uint8Array[] = [];
  let at = 0;
  for (const entry of entries) {
    const text = texts.get(entry.name);
    const bytes =
      text === undefined
        ? archive.subarray(entry.start, entry.start + entry.packedBytes)
        : new TextEncoder().encode(text);
    const name = new TextEncoder().encode(entry.name);
    const told = text === undefined ? entry : { packed: false, bytes: bytes.length, crc32: crc32(bytes) };
    const common = commonHeader({ ...told, packedBytes: bytes.length, nameBytes: name.length });
    const local = new Uint8Array([...little(signatures.local, 4), ...common, ...name]);
    directory.push(
      new Uint8Array([
        ...little(signatures.entry, 4),
        ...little(20, 2),
        ...common,
        // No comment, first disk, no attributes.
        ...little(0, 2 + 2 + 2 + 4),
        ...little(at, 4),
        ...name
      ])
    );
    pieces.push(local, bytes);
    at += local.length + bytes.length;
  }
  const directoryBytes = directory.reduce((sum, each) => sum + each.length, 0);
  const end = new Uint8Array([
    ...little(signatures.end, 4),
    ...little(0, 4),
    ...little(entries.length, 2),
    ...little(entries.length, 2),
    ...little(directoryBytes, 4),
    ...little(at, 4),
    ...little(0, 2)
  ]);
  return joined([...pieces, ...directory, end]);
}

/** What the header before a file and its entry in the directory both say. The date is the format's first: none. */
function commonHeader(told: {
  readonly packed: boolean;
  readonly bytes: number;
  readonly packedBytes: number;
  readonly crc32: number;
  readonly nameBytes: number;
}): readonly number[] {
  const namesInUtf8 = 0x0800;
  return [
    ...little(20, 2),
    ...little(namesInUtf8, 2),
    ...little(told.packed ? 8 : 0, 2),
    ...little(0, 2),
    ...little(0x21, 2),
    ...little(told.crc32, 4),
    ...little(told.packedBytes, 4),
    ...little(told.bytes, 4),
    ...little(told.nameBytes, 2),
    ...little(0, 2)
  ];
}

const little = (value: number, bytes: number): readonly number[] =>
  Array.from({ length: bytes }, (_, at) => Math.floor(value / 256 ** at) % 256);

function joined(pieces: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  const whole = new Uint8Array(pieces.reduce((sum, piece) => sum + piece.length, 0));
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}

/** The checksum of the format: CRC-32 with the polynomial 0xEDB88320. */
function crc32(bytes: Uint8Array): number {
  let sum = 0xffffffff;
  for (const byte of bytes) {
    sum ^= byte;
    for (let bit = 0; bit < 8; bit++) sum = sum & 1 ? (sum >>> 1) ^ 0xedb88320 : sum >>> 1;
  }
  return (sum ^ 0xffffffff) >>> 0;
}
