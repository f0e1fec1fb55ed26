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

export class ZipTooLarge extends Error {}

/**
 * Hands the bytes of a zip to `write`, entry by entry, and gives back its size. Any number of files and bytes, but a single file
 * of four gigabytes or more throws ZipTooLarge: no file of a report is that large.
 */
export function writeZip(entries: readonly ZipEntry[], date: ZipDate, write: (bytes: Uint8Array) => void): number {
  const central: Buffer[] = [];
  let offset = 0;
  const put = (bytes: Uint8Array) => {
    write(bytes);
    offset += bytes.length;
  };
  for (const entry of entries) {
    const content = entry.read();
    if (content.length >= FULL_32) throw new ZipTooLarge(`${entry.name} is larger than four gigabytes`);
    const packed = PACKED_ALREADY.test(entry.name) ? content : deflateRawSync(content, { level: 9 });
    const stored = packed.length >= content.length;
    const data = stored ? content : packed;
    const name = Buffer.from(entry.name);
    const about = aboutEntry({
      method: stored ? 0 : 8,
      date,
      crc: crc32(content),
      packed: data.length,
      size: content.length,
      name,
    });
    central.push(centralHeader(about, offset, name));
    put(
      Buffer.concat([
        fields([
          [4, 0x04034b50],
          [2, VERSION],
        ]),
        about,
        fields([[2, 0]]),
        name,
      ]),
    );
    put(data);
  }
  const start = offset;
  for (const header of central) put(header);
  put(endRecords(entries.length, start, offset - start));
  return offset;
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

interface EntryFacts {
  readonly method: number;
  readonly date: ZipDate;
  readonly crc: number;
  readonly packed: number;
  readonly size: number;
  readonly name: Buffer;
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
    [4, packed],
    [4, size],
    [2, name.length],
  ]);
}

/** An entry that begins beyond four gigabytes says where in an extra field. */
function centralHeader(about: Buffer, offset: number, name: Buffer): Buffer {
  const far = offset >= FULL_32;
  const extra = far
    ? fields([
        [2, 1],
        [2, 8],
        [8, offset],
      ])
    : Buffer.alloc(0);
  const head = fields([
    [4, 0x02014b50],
    [2, far ? (3 << 8) | VERSION_64 : MADE_ON_UNIX],
    [2, far ? VERSION_64 : VERSION],
  ]);
  const tail = fields([
    [2, extra.length],
    [2, 0],
    [2, 0],
    [2, 0],
    [4, PLAIN_FILE],
    [4, Math.min(offset, FULL_32)],
  ]);
  return Buffer.concat([head, about, tail, name, extra]);
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
