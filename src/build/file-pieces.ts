/** A file of the disk in pieces, so that its size does not matter. */
import { closeSync, openSync, readSync } from "node:fs";

const PIECE = 1 << 20;

/** Content from the start, at most a megabyte at a time; a piece holds until the next one is asked for. */
export function* filePieces(path: string): Generator<Uint8Array> {
  const file = openSync(path, "r");
  try {
    const piece = Buffer.alloc(PIECE);
    for (let read = readSync(file, piece); read > 0; read = readSync(file, piece)) yield piece.subarray(0, read);
  } finally {
    closeSync(file);
  }
}
