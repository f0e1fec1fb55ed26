/** Reads back what the writer makes, by the published layout: header attributes as bytes, and the planes. */
import { inflateSync } from "node:zlib";

export interface ReadExr {
  readonly attributes: ReadonlyMap<string, { readonly type: string; readonly bytes: Buffer }>;
  readonly planes: ReadonlyMap<string, Float32Array>;
  readonly window: { readonly left: number; readonly top: number; readonly right: number; readonly bottom: number };
}

export function readExr(file: Uint8Array): ReadExr {
  const bytes = Buffer.from(file);
  const attributes = new Map<string, { type: string; bytes: Buffer }>();
  let at = 8;
  const text = (): string => {
    const end = bytes.indexOf(0, at);
    const found = bytes.toString("utf8", at, end);
    at = end + 1;
    return found;
  };
  while (bytes[at] !== 0) {
    const name = text();
    const type = text();
    const size = bytes.readInt32LE(at);
    attributes.set(name, { type, bytes: bytes.subarray(at + 4, at + 4 + size) });
    at += 4 + size;
  }
  at++;
  const box = attributes.get("dataWindow")!.bytes;
  const [left, top, right, bottom] = [0, 4, 8, 12].map((i) => box.readInt32LE(i)) as [number, number, number, number];
  const width = right - left + 1;
  const height = bottom - top + 1;
  const names = channelNames(attributes.get("channels")!.bytes);
  const planes = new Map(names.map((name) => [name, new Float32Array(width * height)]));
  for (let block = 0; block < Math.ceil(height / 16); block++) {
    const from = Number(bytes.readBigUInt64LE(at + 8 * block));
    const first = bytes.readInt32LE(from) - top;
    const size = bytes.readInt32LE(from + 4);
    const rows = Math.min(16, height - first);
    const raw = rows * width * names.length * 4;
    const data = bytes.subarray(from + 8, from + 8 + size);
    const pixels = size < raw ? undone(inflateSync(data)) : data;
    const values = new DataView(pixels.buffer, pixels.byteOffset, pixels.length);
    names.forEach((name, c) => {
      const plane = planes.get(name)!;
      for (let line = 0; line < rows; line++) {
        const start = (line * names.length + c) * width;
        for (let i = 0; i < width; i++) plane[(first + line) * width + i] = values.getFloat32(4 * (start + i), true);
      }
    });
  }
  return { attributes, planes, window: { left, top, right, bottom } };
}

function channelNames(bytes: Buffer): string[] {
  const names: string[] = [];
  for (let at = 0; bytes[at] !== 0; ) {
    const end = bytes.indexOf(0, at);
    names.push(bytes.toString("utf8", at, end));
    at = end + 1 + 16;
  }
  return names;
}

/** internal_zip.c: d[i] = (t[i] - t[i-1] + 128) mod 256 over the even bytes, then the odd ones. */
function undone(bytes: Buffer): Buffer {
  for (let i = 1; i < bytes.length; i++) bytes[i] = (bytes[i]! + bytes[i - 1]! - 128) & 255;
  const half = (bytes.length + 1) >> 1;
  const pixels = Buffer.alloc(bytes.length);
  for (let i = 0; i < bytes.length; i++) pixels[i] = bytes[(i & 1) === 0 ? i >> 1 : half + (i >> 1)]!;
  return pixels;
}
