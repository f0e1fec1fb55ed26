/**
 * Reads files in a zip without unpacking it: whoever packed it, stored or deflated, in the old form or the 64-bit one.
 *
 * @source PKWARE application note (APPNOTE.TXT) 4.3.12 central directory, 4.3.14 to 4.3.16 end records, 4.5.3 extra field
 */
import { closeSync, fstatSync, openSync, readSync } from "node:fs";
import { inflateRawSync } from "node:zlib";

export interface ZippedFile {
  /** Where it is unpacked to: with `/`, without `.` and empty parts. */
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
/** Systems that may write `\` between folders: MS-DOS and Windows (4.4.2.2). */
const WITH_BACKSLASHES = [0, 10];
const PIECE = 1 << 20;
/** What is in memory as a whole: the list of files, and a deflated file. */
const MOST_AT_ONCE = 1 << 30;

/** Files of a zip in its own order, folders left out, no two with one name; throws {@link ZipProblem}. */
export function zippedFiles(path: string): readonly ZippedFile[] {
  return withFile(path, (zip) => {
    const { start, length } = directory(zip);
    if (length > MOST_AT_ONCE) throw new ZipProblem("has a damaged list of files");
    const bytes = read(zip, start, length);
    const found = new Map<string, ZippedFile>();
    // to its end: the count beside it is too small where a program wrote more files than its 16 bits hold
    for (let at = 0; at < bytes.length; ) {
      if (at + CENTRAL_BYTES > bytes.length || bytes.readUInt32LE(at) !== CENTRAL)
        throw new ZipProblem("has a damaged list of files");
      const [name, extra, comment] = [28, 30, 32].map((field) => bytes.readUInt16LE(at + field)) as [number, number, number];
      const rest = at + CENTRAL_BYTES;
      const entry = entryOf(
        bytes.subarray(at, rest),
        bytes.subarray(rest, rest + name),
        bytes.subarray(rest + name, rest + name + extra),
      );
      at = rest + name + extra + comment;
      if (at > bytes.length) throw new ZipProblem("has a damaged list of files");
      if (entry === null) continue;
      // of two the one program unpacks the first, the other the last
      if (found.has(entry.name)) throw new ZipProblem(`holds two files of one name, ${JSON.stringify(entry.name)}`);
      found.set(entry.name, entry);
    }
    return [...found.values()];
  });
}

/** Hands the content of a file to `take`, a megabyte at a time where it is stored; throws {@link ZipProblem}. */
export function readZipped(path: string, entry: ZippedFile, take: (piece: Uint8Array) => void): void {
  if (entry.encrypted) throw new ZipProblem("is locked with a password");
  if (entry.method !== STORED && entry.method !== DEFLATED)
    throw new ZipProblem("is packed in a way that is not known here: unpack the zip");
  if (entry.method === DEFLATED && Math.max(entry.bytes, entry.packed) > MOST_AT_ONCE)
    throw new ZipProblem("is packed and too large to be compared here: unpack the zip");
  withFile(path, (zip) => {
    const header = read(zip, entry.at, LOCAL_BYTES);
    if (header.readUInt32LE(0) !== LOCAL) throw new ZipProblem("is not where the zip's list of files says");
    const start = entry.at + LOCAL_BYTES + header.readUInt16LE(26) + header.readUInt16LE(28);
    if (entry.method === DEFLATED) take(inflated(read(zip, start, entry.packed), entry.bytes));
    else for (let at = 0; at < entry.bytes; at += PIECE) take(read(zip, start + at, Math.min(PIECE, entry.bytes - at)));
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
function directory(zip: OpenZip): { readonly start: number; readonly length: number } {
  const from = Math.max(0, zip.size - END_BYTES - MOST_COMMENT - LOCATOR_BYTES);
  const tail = read(zip, from, zip.size - from);
  let at = tail.length - END_BYTES;
  while (at >= 0 && !(tail.readUInt32LE(at) === END && at + END_BYTES + tail.readUInt16LE(at + 20) === tail.length)) at--;
  if (at < 0) throw new ZipProblem("has no end: it is not a whole zip");
  if (![0, FULL_16].includes(tail.readUInt16LE(at + 4))) throw new ZipProblem("is the last of several parts of a zip: unpack it");
  const end = { length: tail.readUInt32LE(at + 12), start: tail.readUInt32LE(at + 16) };
  const isLarge = end.length === FULL_32 || end.start === FULL_32;
  const locator = at - LOCATOR_BYTES;
  if (!isLarge || locator < 0 || tail.readUInt32LE(locator) !== LOCATOR_64) return end;
  const record = read(zip, Number(tail.readBigUInt64LE(locator + 8)), 56);
  if (record.readUInt32LE(0) !== END_64) throw new ZipProblem("has a damaged list of files");
  return { length: Number(record.readBigUInt64LE(40)), start: Number(record.readBigUInt64LE(48)) };
}

/** `null` for a folder. */
function entryOf(header: Buffer, name: Buffer, extra: Buffer): ZippedFile | null {
  const written = name.toString("utf8");
  const text = WITH_BACKSLASHES.includes(header.readUInt8(5)) ? written.replaceAll("\\", "/") : written;
  if (text.endsWith("/")) return null;
  const flags = header.readUInt16LE(8);
  const small = { bytes: header.readUInt32LE(24), packed: header.readUInt32LE(20), at: header.readUInt32LE(42) };
  return {
    name: unpackedName(text),
    method: header.readUInt16LE(10),
    encrypted: (flags & 1) === 1,
    ...small,
    ...largeNumbers(small, extra),
  };
}

/** Refuses a name that leads out of its folder: what such a file is unpacked over was compared as another one. */
function unpackedName(text: string): string {
  const parts = text.split("/").filter((part) => part !== "" && part !== ".");
  if (parts.includes("..")) throw new ZipProblem(`holds a file with ".." in its path, ${JSON.stringify(text)}: do not unpack it`);
  return parts.join("/");
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

interface OpenZip {
  readonly file: number;
  readonly size: number;
}

function read({ file, size }: OpenZip, at: number, length: number): Buffer {
  const tooEarly = () => new ZipProblem("ends too early: it is not a whole zip");
  // what a damaged zip says of itself may be more than memory holds
  if (at + length > size) throw tooEarly();
  const bytes = Buffer.alloc(length);
  if (readSync(file, bytes, 0, length, at) !== length) throw tooEarly();
  return bytes;
}

function withFile<Result>(path: string, work: (zip: OpenZip) => Result): Result {
  const file = openSync(path, "r");
  try {
    return work({ file, size: fstatSync(file).size });
  } finally {
    closeSync(file);
  }
}
