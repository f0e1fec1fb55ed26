/**
 * A zip file, the same bytes for the same files: given order, one date, no owner.
 *
 * @source PKWARE application note (APPNOTE.TXT) 4.3: local headers, central directory, end record. UTF-8 names (bit 11).
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

/** Without the 64-bit form a zip has at most this many files and bytes. */
const MOST_FILES = 65_534;
const MOST_BYTES = 0xffff_fffe;
/** What does not get smaller is stored. */
const PACKED_ALREADY = /\.(pdf|png|jpe?g|exr|woff2?|zip|gz)$/i;
const UTF8_NAMES = 1 << 11;
const VERSION = 20;
const MADE_ON_UNIX = (3 << 8) | VERSION;
const PLAIN_FILE = 0o100644 * 0x10000;

export class ZipTooLarge extends Error {}

/** Hands the bytes of a zip to `write`, entry by entry; throws ZipTooLarge before anything is wrong in it. Gives back its size. */
export function writeZip(entries: readonly ZipEntry[], date: ZipDate, write: (bytes: Uint8Array) => void): number {
  if (entries.length > MOST_FILES) throw new ZipTooLarge(`${entries.length} files are more than a zip takes (${MOST_FILES})`);
  const central: Buffer[] = [];
  let offset = 0;
  const put = (bytes: Uint8Array) => {
    write(bytes);
    offset += bytes.length;
    if (offset > MOST_BYTES) throw new ZipTooLarge("the files are more than the four gigabytes that a zip takes");
  };
  for (const entry of entries) {
    const content = entry.read();
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
  const count = entries.length;
  put(
    fields([
      [4, 0x06054b50],
      [2, 0],
      [2, 0],
      [2, count],
      [2, count],
      [4, offset - start],
      [4, start],
      [2, 0],
    ]),
  );
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

function centralHeader(about: Buffer, offset: number, name: Buffer): Buffer {
  const head = fields([
    [4, 0x02014b50],
    [2, MADE_ON_UNIX],
    [2, VERSION],
  ]);
  const tail = fields([
    [2, 0],
    [2, 0],
    [2, 0],
    [2, 0],
    [4, PLAIN_FILE],
    [4, offset],
  ]);
  return Buffer.concat([head, about, tail, name]);
}

/** Little-endian whole numbers of two or four bytes. */
function fields(values: readonly (readonly [2 | 4, number])[]): Buffer {
  const bytes = Buffer.alloc(values.reduce((sum, [width]) => sum + width, 0));
  let at = 0;
  for (const [width, value] of values) at = bytes.writeUIntLE(value, at, width);
  return bytes;
}
