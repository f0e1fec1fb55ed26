/** Bytes that are read a stretch at a time, so that a file need not be in memory as a whole. */
export interface ByteSource {
  readonly size: number;
  /** How many bytes are best read at a time; `STRETCH_BYTES` where it is not said. */
  readonly stretch?: number;
  /** The bytes from `at` on, `length` of them; fewer only at the end. What they are must not change between two calls. */
  read(at: number, length: number): Uint8Array;
}

/** Bytes that are in memory already. */
export function memorySource(bytes: Uint8Array, stretch = STRETCH_BYTES): ByteSource {
  return { size: bytes.length, stretch, read: (at, length) => bytes.subarray(at, at + length) };
}

/** How much is read at a time. Small enough that each of a day's logs may hold on to its last stretch. */
export const STRETCH_BYTES = 524_288;

/** Gives a source's bytes from `from` on, one stretch after the other. */
export function eachStretch(source: ByteSource, take: (bytes: Uint8Array) => void, from = 0): void {
  for (let at = from; at < source.size; ) {
    const bytes = source.read(at, source.stretch ?? STRETCH_BYTES);
    if (bytes.length === 0) return;
    take(bytes);
    at += bytes.length;
  }
}
