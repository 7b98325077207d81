/**
 * What a file is by its first bytes, in words for a person: whoever picks the wrong file is told what it is. Null where
 * it may be plain text.
 */
export function fileKind(bytes: Uint8Array): string | null {
  const starts = (...signature: readonly number[]) => signature.every((byte, at) => bytes[at] === byte);
  if (starts(0x50, 0x4b, 0x03, 0x04) || starts(0x50, 0x4b, 0x05, 0x06))
    return 'a spreadsheet (XLSX) or another ZIP archive';
  if (starts(0xd0, 0xcf, 0x11, 0xe0))
    return 'an old spreadsheet or text document (XLS, DOC), or one with a password';
  if (starts(0x25, 0x50, 0x44, 0x46)) return 'a PDF';
  if (starts(0x1f, 0x8b)) return 'a compressed file (GZIP)';
  if (starts(0x37, 0x7a, 0xbc, 0xaf)) return 'a compressed file (7z)';
  if (starts(0x52, 0x61, 0x72, 0x21)) return 'a compressed file (RAR)';
  if (starts(0x89, 0x50, 0x4e, 0x47) || starts(0xff, 0xd8, 0xff) || starts(0x47, 0x49, 0x46, 0x38))
    return 'a picture';
  if (starts(0x50, 0x41, 0x52, 0x31)) return 'a Parquet file';
  if (starts(0x53, 0x51, 0x4c, 0x69, 0x74, 0x65)) return 'a database (SQLite)';
  return null;
}
