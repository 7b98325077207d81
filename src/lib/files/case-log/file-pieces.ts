import type { LogPieces } from './open-case-log.ts';

/** Bytes that are read at a time: enough to be quick, little enough to be forgotten. */
const pieceBytes = 1 << 20;

/** A file as pieces, read one after the other when they are asked for. */
export function filePieces(file: Blob): LogPieces {
  return async function* () {
    for (let start = 0; start < file.size; start += pieceBytes)
      yield new Uint8Array(await file.slice(start, start + pieceBytes).arrayBuffer());
  };
}
