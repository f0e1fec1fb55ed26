/**
 * A zip file, the same bytes for the same files: given order, one date, no owner.
 *
 * @source PKWARE application note (APPNOTE.TXT) 4.3: local headers, central directory, end record; 4.3.14, 4.3.15 and 4.5.3 for
 * the 64-bit form, which is used where a number does not fit the old one and nowhere else. UTF-8 names (bit 11).
 */
import { crc32, deflateRawSync } from "node:zlib";

export interface ZipEntry {
  /** With `/`, relative. */
  readonly name: string;
  read(): Uint8Array;
}

/** A file of any size: stored as it is, and read twice, since its checksum stands before it. */
export interface LargeZipEntry {
  readonly name: string;
  pieces(): Iterable<Uint8Array>;
}

/** Year to day of a date such as 2026-10-06; the time of every entry is noon. */
export interface ZipDate {
  readonly year: number;
  readonly month: number;
  readonly day: number;
}

/** Largest numbers of the fields of 16 and 32 bits; the number itself says "see the 64-bit form". */
const FULL_16 = 0xffff;
const FULL_32 = 0xffff_ffff;
/** What does not get smaller is stored. */
const PACKED_ALREADY = /\.(pdf|png|jpe?g|exr|woff2?|zip|gz)$/i;
const UTF8_NAMES = 1 << 11;
const VERSION = 20;
const VERSION_64 = 45;
const MADE_ON_UNIX = (3 << 8) | VERSION;
const PLAIN_FILE = 0o100644 * 0x10000;

/** A file is not what it was a moment ago. */
export class ZipChanged extends Error {}

/** Hands the bytes of a zip to `write`, entry by entry, and gives back its size. Any number of files and bytes. */
export function writeZip(
  entries: readonly (ZipEntry | LargeZipEntry)[],
  date: ZipDate,
  write: (bytes: Uint8Array) => void,
): number {
  const central: Buffer[] = [];
  let offset = 0;
  const put = (bytes: Uint8Array) => {
    write(bytes);
    offset += bytes.length;
  };
  for (const entry of entries) {
    const { facts, data } = "pieces" in entry ? largeEntry(entry, date) : smallEntry(entry, date);
    central.push(centralHeader(facts, offset));
    put(localHeader(facts));
    for (const piece of data) put(piece);
  }
  const start = offset;
  for (const header of central) put(header);
  put(endRecords(entries.length, start, offset - start));
  return offset;
}

interface EntryFacts {
  readonly method: number;
  readonly date: ZipDate;
  readonly crc: number;
  readonly packed: number;
  readonly size: number;
  readonly name: Buffer;
}

interface Entry {
  readonly facts: EntryFacts;
  readonly data: Iterable<Uint8Array>;
}

function smallEntry(entry: ZipEntry, date: ZipDate): Entry {
  const content = entry.read();
  const packed = PACKED_ALREADY.test(entry.name) ? content : deflateRawSync(content, { level: 9 });
  const stored = packed.length >= content.length;
  const data = stored ? content : packed;
  const sizes = { packed: data.length, size: content.length };
  return {
    facts: { method: stored ? 0 : 8, date, crc: crc32(content), ...sizes, name: Buffer.from(entry.name) },
    data: [data],
  };
}

function largeEntry(entry: LargeZipEntry, date: ZipDate): Entry {
  const sum = { crc: 0, size: 0 };
  for (const _ of summed(entry, sum));
  return {
    facts: { method: 0, date, crc: sum.crc, packed: sum.size, size: sum.size, name: Buffer.from(entry.name) },
    data: sameAgain(entry, sum),
  };
}

interface Sum {
  crc: number;
  size: number;
}

/** The pieces of a file, added up as they pass. */
function* summed(entry: LargeZipEntry, sum: Sum): Iterable<Uint8Array> {
  for (const piece of entry.pieces()) {
    sum.crc = crc32(piece, sum.crc);
    sum.size += piece.length;
    yield piece;
  }
}

function* sameAgain(entry: LargeZipEntry, before: Sum): Iterable<Uint8Array> {
  const now = { crc: 0, size: 0 };
  yield* summed(entry, now);
  if (now.crc !== before.crc || now.size !== before.size) throw new ZipChanged(`${entry.name} changed while it was copied`);
}

/** The end of the central directory; where a number does not fit, the record of the 64-bit form and its locator stand before it. */
function endRecords(count: number, start: number, length: number): Buffer {
  const end = fields([
    [4, 0x06054b50],
    [2, 0],
    [2, 0],
    [2, Math.min(count, FULL_16)],
    [2, Math.min(count, FULL_16)],
    [4, Math.min(length, FULL_32)],
    [4, Math.min(start, FULL_32)],
    [2, 0],
  ]);
  if (count < FULL_16 && length < FULL_32 && start < FULL_32) return end;
  const record = fields([
    [4, 0x06064b50],
    // what follows this field: 44 bytes
    [8, 44],
    [2, (3 << 8) | VERSION_64],
    [2, VERSION_64],
    [4, 0],
    [4, 0],
    [8, count],
    [8, count],
    [8, length],
    [8, start],
  ]);
  const locator = fields([
    [4, 0x07064b50],
    [4, 0],
    [8, start + length],
    [4, 1],
  ]);
  return Buffer.concat([record, locator, end]);
}

/** What local header and central directory say alike: flags to length of the name. */
function aboutEntry({ method, date, crc, packed, size, name }: EntryFacts): Buffer {
  const day = ((date.year - 1980) << 9) | (date.month << 5) | date.day;
  return fields([
    [2, UTF8_NAMES],
    [2, method],
    [2, 12 << 11],
    [2, day],
    [4, crc],
    [4, Math.min(packed, FULL_32)],
    [4, Math.min(size, FULL_32)],
    [2, name.length],
  ]);
}

function localHeader(facts: EntryFacts): Buffer {
  // here the standard wants both sizes where one does not fit
  const extra = largeNumbers(facts.size < FULL_32 ? [] : [facts.size, facts.packed]);
  return Buffer.concat([
    fields([
      [4, 0x04034b50],
      [2, extra.length > 0 ? VERSION_64 : VERSION],
    ]),
    aboutEntry(facts),
    fields([[2, extra.length]]),
    facts.name,
    extra,
  ]);
}

/** An entry that is larger than four gigabytes or begins beyond them says so in an extra field. */
function centralHeader(facts: EntryFacts, offset: number): Buffer {
  const extra = largeNumbers([facts.size, facts.packed, offset].filter((number) => number >= FULL_32));
  const large = extra.length > 0;
  const head = fields([
    [4, 0x02014b50],
    [2, large ? (3 << 8) | VERSION_64 : MADE_ON_UNIX],
    [2, large ? VERSION_64 : VERSION],
  ]);
  const tail = fields([
    [2, extra.length],
    [2, 0],
    [2, 0],
    [2, 0],
    [4, PLAIN_FILE],
    [4, Math.min(offset, FULL_32)],
  ]);
  return Buffer.concat([head, aboutEntry(facts), tail, facts.name, extra]);
}

/** The extra field of the 64-bit form; nothing where all numbers fit. */
function largeNumbers(numbers: readonly number[]): Buffer {
  if (numbers.length === 0) return Buffer.alloc(0);
  return fields([[2, 1], [2, 8 * numbers.length], ...numbers.map((number) => [8, number] as const)]);
}

/** Little-endian whole numbers of two, four or eight bytes. */
function fields(values: readonly (readonly [2 | 4 | 8, number])[]): Buffer {
  const bytes = Buffer.alloc(values.reduce((sum, [width]) => sum + width, 0));
  let at = 0;
  for (const [width, value] of values) {
    if (width === 8) at = bytes.writeBigUInt64LE(BigInt(value), at);
    else at = bytes.writeUIntLE(value, at, width);
  }
  return bytes;
}
