/**
 * A small OpenEXR writer: one part, scan lines, FLOAT or HALF channels, no compression or ZIP. Bytes out; the same picture
 * always gives the same bytes.
 *
 * @source OpenEXR, OpenEXRFileLayout.rst (layout) and internal_zip.c (what is done to the bytes before they are deflated)
 */
import { promisify } from "node:util";
import { deflate, type ZlibOptions } from "node:zlib";

export interface ExrChannel {
  readonly name: string;
  /** Row by row from the top left of the data window; `Uint16Array` holds the bits of half floats. */
  readonly values: Float32Array | Uint16Array;
}

/** Pixels, both ends included. */
export interface ExrBox {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export type ExrValue =
  | { readonly type: "string"; readonly value: string }
  | { readonly type: "float"; readonly value: number }
  | { readonly type: "int"; readonly value: number }
  | { readonly type: "v2f"; readonly value: readonly [number, number] }
  | { readonly type: "rational"; readonly value: { readonly num: number; readonly denom: number } }
  /** The two words of a SMPTE time code in the packing of 60 Hz television. */
  | { readonly type: "timecode"; readonly value: readonly [number, number] };

export type ExrAttributes = Readonly<Record<string, ExrValue>>;

export interface ExrPicture {
  readonly dataWindow: ExrBox;
  readonly displayWindow: ExrBox;
  readonly channels: readonly ExrChannel[];
  readonly compression: "none" | "zip";
  readonly pixelAspectRatio?: number;
  /** Beside those that every file has. Names have at most 31 bytes. */
  readonly attributes?: ExrAttributes;
}

const deflateBytes = promisify<Buffer, ZlibOptions, Buffer>(deflate);

const MAGIC = 20000630;
const VERSION = 2;
const CODES = { none: 0, zip: 3 } as const;
const LINES = { none: 1, zip: 16 } as const;
/** Fixed, so that the bytes do not change with a default. A block comes back in one piece. */
const ZLIB = { level: 4, memLevel: 8, chunkSize: 64 * 1024 } as const;
const MOST_NAME_BYTES = 31;
/** Blocks at work at a time: the threads that Node deflates on, and one that waits. */
const SIDE_BY_SIDE = 5;

/** The file. Attributes and channels are written in the order of their names, as the format's own library does. */
export async function exrBytes(picture: ExrPicture): Promise<Uint8Array> {
  const { dataWindow, compression } = picture;
  const channels = [...picture.channels].sort((a, b) => (a.name < b.name ? -1 : 1));
  const height = dataWindow.bottom - dataWindow.top + 1;
  const header = Buffer.concat([int(MAGIC), int(VERSION), ...headerParts(picture, channels), Buffer.of(0)]);
  const lines = LINES[compression];
  const done = await blocksOf(picture, channels, Math.ceil(height / lines));
  const table = Buffer.alloc(8 * done.length);
  let at = header.length + table.length;
  const parts = done.flatMap((block, i) => {
    table.writeBigUInt64LE(BigInt(at), 8 * i);
    at += 8 + block.length;
    return [int(dataWindow.top + i * lines), int(block.length), block];
  });
  return Buffer.concat([header, table, ...parts], at);
}

/** The blocks from the top, a few deflated side by side; each of these has memory that it uses again for its next block. */
async function blocksOf(picture: ExrPicture, channels: readonly ExrChannel[], count: number): Promise<readonly Buffer[]> {
  const { compression, dataWindow } = picture;
  const height = dataWindow.bottom - dataWindow.top + 1;
  const lines = LINES[compression];
  const blocks: Buffer[] = [];
  let next = 0;
  const work = async () => {
    const room = Buffer.alloc(lines * lineBytes(picture, channels));
    const sorted = Buffer.alloc(room.length);
    for (let i = next++; i < count; i = next++) {
      const pixels = pixelBytes(picture, channels, i * lines, Math.min(lines, height - i * lines), room);
      blocks[i] = compression === "zip" ? await zipped(pixels, sorted.subarray(0, pixels.length)) : Buffer.from(pixels);
    }
  };
  await Promise.all(Array.from({ length: Math.min(SIDE_BY_SIDE, count) }, work));
  return blocks;
}

function lineBytes({ dataWindow }: ExrPicture, channels: readonly ExrChannel[]): number {
  return (dataWindow.right - dataWindow.left + 1) * channels.reduce((sum, c) => sum + c.values.BYTES_PER_ELEMENT, 0);
}

function headerParts(picture: ExrPicture, channels: readonly ExrChannel[]): Buffer[] {
  const own = Object.entries(picture.attributes ?? {}).map(([name, value]) => [name, value.type, valueBytes(value)] as const);
  const always = [
    ["channels", "chlist", Buffer.concat([...channels.map(channelBytes), Buffer.of(0)])],
    ["compression", "compression", Buffer.of(CODES[picture.compression])],
    ["dataWindow", "box2i", boxBytes(picture.dataWindow)],
    ["displayWindow", "box2i", boxBytes(picture.displayWindow)],
    ["lineOrder", "lineOrder", Buffer.of(0)],
    ["pixelAspectRatio", "float", float(picture.pixelAspectRatio ?? 1)],
    ["screenWindowCenter", "v2f", Buffer.concat([float(0), float(0)])],
    ["screenWindowWidth", "float", float(1)],
  ] as const;
  return [...always, ...own]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([name, type, value]) => Buffer.concat([nameBytes(name), nameBytes(type), int(value.length), value]));
}

function channelBytes({ name, values }: ExrChannel): Buffer {
  const type = values instanceof Uint16Array ? 1 : 2;
  // no perceptual hint, three bytes of padding, every pixel sampled
  return Buffer.concat([nameBytes(name), int(type), Buffer.alloc(4), int(1), int(1)]);
}

function valueBytes({ type, value }: ExrValue): Buffer {
  if (type === "string") return Buffer.from(value.normalize("NFC"), "utf8");
  if (type === "float") return float(value);
  if (type === "int") return int(value);
  if (type === "v2f") return Buffer.concat([float(value[0]), float(value[1])]);
  if (type === "rational") return Buffer.concat([int(value.num), unsigned(value.denom)]);
  return Buffer.concat([unsigned(value[0]), unsigned(value[1])]);
}

/** The rows of a block, put into `room`: line by line, in a line channel by channel, in a channel pixel by pixel. */
function pixelBytes(picture: ExrPicture, channels: readonly ExrChannel[], row: number, rows: number, room: Buffer): Buffer {
  const width = picture.dataWindow.right - picture.dataWindow.left + 1;
  const bytes = room.subarray(0, rows * lineBytes(picture, channels));
  let at = 0;
  for (let line = row; line < row + rows; line++) {
    for (const { values } of channels) {
      const part = values.subarray(line * width, (line + 1) * width);
      if (LITTLE_ENDIAN) bytes.set(new Uint8Array(part.buffer, part.byteOffset, part.byteLength), at);
      else putSwapped(part, bytes, at);
      at += part.byteLength;
    }
  }
  return bytes;
}

const LITTLE_ENDIAN = new Uint8Array(new Uint16Array([1]).buffer)[0] === 1;

function putSwapped(part: Float32Array | Uint16Array, bytes: Buffer, at: number): void {
  part.forEach((value, i) => {
    if (part instanceof Uint16Array) bytes.writeUInt16LE(value, at + 2 * i);
    else bytes.writeFloatLE(value, at + 4 * i);
  });
}

/**
 * Bytes at even places, then those at odd ones; each as the difference from the one before plus 128; deflated unless that grows.
 * `sorted` is as long as `pixels` and starts where a 32-bit word may.
 */
async function zipped(pixels: Buffer, sorted: Buffer): Promise<Buffer> {
  if (LITTLE_ENDIAN && pixels.length % 8 === 0) sortWords(words(pixels), words(sorted));
  else sortBytes(pixels, sorted);
  const deflated = await deflateBytes(sorted, ZLIB);
  return deflated.length < pixels.length ? deflated : Buffer.from(pixels);
}

function sortBytes(pixels: Buffer, sorted: Buffer): void {
  const half = (pixels.length + 1) >> 1;
  const pairs = pixels.length >> 1;
  // the first byte stands as it is, which is the difference from 128
  let even = 128;
  let odd = pixels[2 * half - 2] as number;
  for (let i = 0; i < pairs; i++) {
    const first = pixels[2 * i] as number;
    const second = pixels[2 * i + 1] as number;
    sorted[i] = first - even + 128;
    sorted[half + i] = second - odd + 128;
    even = first;
    odd = second;
  }
  if (half > pairs) sorted[pairs] = (pixels[2 * pairs] as number) - even + 128;
}

/** What `sortBytes` does, four bytes of each half at a time; for whole pairs of words. */
function sortWords(pixels: Uint32Array, sorted: Uint32Array): void {
  const half = pixels.length >> 1;
  let even = 128 << 24;
  // the last byte of the first half is at the last even place
  let odd = ((pixels[2 * half - 1] as number) << 8) & 0xff000000;
  for (let i = 0; i < half; i++) {
    const first = pixels[2 * i] as number;
    const second = pixels[2 * i + 1] as number;
    const evens = (first & 0xff) | ((first >>> 8) & 0xff00) | ((second & 0xff) << 16) | ((second << 8) & 0xff000000);
    const odds = ((first >>> 8) & 0xff) | ((first >>> 16) & 0xff00) | ((second << 8) & 0xff0000) | (second & 0xff000000);
    sorted[i] = differences(evens, (evens << 8) | (even >>> 24));
    sorted[half + i] = differences(odds, (odds << 8) | (odd >>> 24));
    even = evens;
    odd = odds;
  }
}

/** Byte by byte `a - b + 128`: the high bits are held apart, so that no byte borrows from the next. */
function differences(a: number, b: number): number {
  return ((a | HIGH_BITS) - (b & ~HIGH_BITS)) ^ ((a ^ b) & HIGH_BITS);
}

const HIGH_BITS = 0x80808080 | 0;

function words(bytes: Buffer): Uint32Array {
  return new Uint32Array(bytes.buffer, bytes.byteOffset, bytes.length >> 2);
}

function boxBytes({ left, top, right, bottom }: ExrBox): Buffer {
  return Buffer.concat([int(left), int(top), int(right), int(bottom)]);
}

function nameBytes(name: string): Buffer {
  const bytes = Buffer.from(`${name}\0`, "utf8");
  if (bytes.length - 1 > MOST_NAME_BYTES) throw new RangeError(`"${name}" is longer than ${MOST_NAME_BYTES} bytes`);
  return bytes;
}

function int(value: number): Buffer {
  const bytes = Buffer.alloc(4);
  bytes.writeInt32LE(value);
  return bytes;
}

function unsigned(value: number): Buffer {
  const bytes = Buffer.alloc(4);
  bytes.writeUInt32LE(value);
  return bytes;
}

function float(value: number): Buffer {
  const bytes = Buffer.alloc(4);
  bytes.writeFloatLE(value);
  return bytes;
}
