/**
 * Reads files in a zip without unpacking it: whoever packed it, stored or deflated, in the old form or the 64-bit one.
 *
 * @source PKWARE application note (APPNOTE.TXT) 4.3.12 central directory, 4.3.14 to 4.3.16 end records, 4.5.3 extra field
 */
import { closeSync, fstatSync, openSync, readSync } from "node:fs";
import { inflateRawSync } from "node:zlib";

export interface ZippedFile {
  /** As the zip has it, with `/`. */
  readonly name: string;
  readonly bytes: number;
  readonly packed: number;
  readonly method: number;
  readonly encrypted: boolean;
  /** Where its local header begins. */
  readonly at: number;
}

/** What stands in the way of reading a zip or a file in it, in words that go on after its name. */
export class ZipProblem extends Error {}

const END = 0x06054b50;
const END_64 = 0x06064b50;
const LOCATOR_64 = 0x07064b50;
const CENTRAL = 0x02014b50;
const LOCAL = 0x04034b50;
const END_BYTES = 22;
const LOCATOR_BYTES = 20;
const CENTRAL_BYTES = 46;
const LOCAL_BYTES = 30;
const MOST_COMMENT = 0xffff;
const FULL_16 = 0xffff;
const FULL_32 = 0xffff_ffff;
const STORED = 0;
const DEFLATED = 8;
const PIECE = 1 << 20;

/** Files of a zip in its own order, folders left out; throws {@link ZipProblem}. */
export function zippedFiles(path: string): readonly ZippedFile[] {
  return withFile(path, (file, size) => {
    const { count, start, length } = directory(file, size);
    const bytes = read(file, start, length);
    const found: ZippedFile[] = [];
    for (let at = 0, i = 0; i < count; i++) {
      if (at + CENTRAL_BYTES > bytes.length || bytes.readUInt32LE(at) !== CENTRAL)
        throw new ZipProblem("has a damaged list of files");
      const [name, extra, comment] = [28, 30, 32].map((field) => bytes.readUInt16LE(at + field)) as [number, number, number];
      const rest = at + CENTRAL_BYTES;
      const entry = entryOf(
        bytes.subarray(at, rest),
        bytes.subarray(rest, rest + name),
        bytes.subarray(rest + name, rest + name + extra),
      );
      if (!entry.name.endsWith("/")) found.push(entry);
      at = rest + name + extra + comment;
    }
    return found;
  });
}

/** Hands the content of a file to `take`, a megabyte at a time where it is stored; throws {@link ZipProblem}. */
export function readZipped(path: string, entry: ZippedFile, take: (piece: Uint8Array) => void): void {
  if (entry.encrypted) throw new ZipProblem("is locked with a password");
  if (entry.method !== STORED && entry.method !== DEFLATED)
    throw new ZipProblem("is packed in a way that is not known here: unpack the zip");
  withFile(path, (file) => {
    const header = read(file, entry.at, LOCAL_BYTES);
    if (header.readUInt32LE(0) !== LOCAL) throw new ZipProblem("is not where the zip's list of files says");
    const start = entry.at + LOCAL_BYTES + header.readUInt16LE(26) + header.readUInt16LE(28);
    if (entry.method === DEFLATED) take(inflated(read(file, start, entry.packed), entry.bytes));
    else for (let at = 0; at < entry.bytes; at += PIECE) take(read(file, start + at, Math.min(PIECE, entry.bytes - at)));
  });
}

function inflated(packed: Buffer, bytes: number): Buffer {
  try {
    // never more than the list of files says: a few bytes may stand for gigabytes
    return inflateRawSync(packed, { maxOutputLength: bytes + 1 });
  } catch {
    throw new ZipProblem("cannot be unpacked: the zip is damaged there");
  }
}

/** Where the list of files is, from the record at the end; a comment may follow that record. */
function directory(file: number, size: number): { readonly count: number; readonly start: number; readonly length: number } {
  const from = Math.max(0, size - END_BYTES - MOST_COMMENT - LOCATOR_BYTES);
  const tail = read(file, from, size - from);
  let at = tail.length - END_BYTES;
  while (at >= 0 && !(tail.readUInt32LE(at) === END && at + END_BYTES + tail.readUInt16LE(at + 20) === tail.length)) at--;
  if (at < 0) throw new ZipProblem("has no end: it is not a whole zip");
  const end = { count: tail.readUInt16LE(at + 10), length: tail.readUInt32LE(at + 12), start: tail.readUInt32LE(at + 16) };
  const isLarge = end.count === FULL_16 || end.length === FULL_32 || end.start === FULL_32;
  const locator = at - LOCATOR_BYTES;
  if (!isLarge || locator < 0 || tail.readUInt32LE(locator) !== LOCATOR_64) return end;
  const record = read(file, Number(tail.readBigUInt64LE(locator + 8)), 56);
  if (record.readUInt32LE(0) !== END_64) throw new ZipProblem("has a damaged list of files");
  const [count, length, start] = [32, 40, 48].map((field) => Number(record.readBigUInt64LE(field))) as [number, number, number];
  return { count, length, start };
}

function entryOf(header: Buffer, name: Buffer, extra: Buffer): ZippedFile {
  const flags = header.readUInt16LE(8);
  const small = { bytes: header.readUInt32LE(24), packed: header.readUInt32LE(20), at: header.readUInt32LE(42) };
  return {
    name: name.toString("utf8"),
    method: header.readUInt16LE(10),
    encrypted: (flags & 1) === 1,
    ...small,
    ...largeNumbers(small, extra),
  };
}

/** Of the numbers that say "see the extra field" those that stand there, in the order of the standard. */
function largeNumbers<Numbers extends Readonly<Record<string, number>>>(small: Numbers, extra: Buffer): Partial<Numbers> {
  const full = Object.keys(small).filter((name) => small[name] === FULL_32);
  for (let at = 0; at + 4 <= extra.length && full.length > 0; at += 4 + extra.readUInt16LE(at + 2)) {
    if (extra.readUInt16LE(at) !== 1) continue;
    if (at + 4 + 8 * full.length > extra.length) throw new ZipProblem("has a damaged list of files");
    return Object.fromEntries(full.map((name, i) => [name, Number(extra.readBigUInt64LE(at + 4 + 8 * i))])) as Partial<Numbers>;
  }
  return {};
}

function read(file: number, at: number, length: number): Buffer {
  const bytes = Buffer.alloc(length);
  if (readSync(file, bytes, 0, length, at) !== length) throw new ZipProblem("ends too early: it is not a whole zip");
  return bytes;
}

function withFile<Result>(path: string, work: (file: number, size: number) => Result): Result {
  const file = openSync(path, "r");
  try {
    return work(file, fstatSync(file).size);
  } finally {
    closeSync(file);
  }
}
