import { closeSync, fstatSync, openSync, readSync } from "node:fs";
import type { ByteSource } from "../csv/byte-source.ts";

/**
 * A file that is read a stretch at a time. It is opened for each stretch, so that a day's logs do not hold a thousand files open.
 * Throws when it cannot be opened, and when it is no longer the file that it was when its reading began.
 */
export function fileSource(path: string): ByteSource {
  const first = opened(path, (fd) => {
    // A folder can be opened, and not read.
    stretch(fd, 0, 1);
    return stateOf(fd);
  });
  return {
    size: first.size,
    read: (at, length) =>
      opened(path, (fd) => {
        const state = stateOf(fd);
        if (state.size !== first.size || state.changed !== first.changed) {
          throw new Error(`${path} was written to while it was being read. Run the command again when the copy is complete.`);
        }
        return stretch(fd, at, Math.max(0, Math.min(length, first.size - at)));
      }),
  };
}

function stretch(fd: number, at: number, length: number): Uint8Array {
  const bytes = Buffer.allocUnsafeSlow(length);
  let filled = 0;
  while (filled < length) {
    const count = readSync(fd, bytes, filled, length - filled, at + filled);
    if (count === 0) break;
    filled += count;
  }
  return bytes.subarray(0, filled);
}

function stateOf(fd: number): { readonly size: number; readonly changed: number } {
  const { size, mtimeMs } = fstatSync(fd);
  return { size, changed: mtimeMs };
}

function opened<T>(path: string, use: (fd: number) => T): T {
  const fd = openSync(path, "r");
  try {
    return use(fd);
  } finally {
    closeSync(fd);
  }
}
