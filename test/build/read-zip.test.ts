/** The 64-bit form, by hand after the application note; zips of other programs are in verify-zip.test.ts, large ones in zip.test.ts. */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, it } from "vitest";
import { readZipped, zippedFiles } from "../../src/build/zip/read-zip.ts";

const u16 = (n: number) => Buffer.of(n & 0xff, n >> 8);
const u32 = (n: number) => Buffer.from(Uint32Array.of(n).buffer);
const u64 = (n: bigint) => Buffer.from(BigUint64Array.of(n).buffer);
const FULL = u32(0xffff_ffff);

it("takes sizes and place from the extra field where the header says that they stand there, and only those (APPNOTE 4.5.3)", () => {
  const name = Buffer.from("a.txt");
  const data = Buffer.from("abc");
  const local = Buffer.concat([u32(0x04034b50), Buffer.alloc(22), u16(5), u16(0), name, data]);
  // another program's extra field first; then size, packed size and offset, each of eight bytes
  const extra = Buffer.concat([u16(0x5455), u16(1), Buffer.of(7), u16(1), u16(24), u64(3n), u64(3n), u64(0n)]);
  const central = Buffer.concat([
    u32(0x02014b50),
    Buffer.alloc(16),
    FULL,
    FULL,
    u16(5),
    u16(extra.length),
    Buffer.alloc(10),
    FULL,
    name,
    extra,
  ]);
  const end = (count: number, length: Buffer, start: Buffer) =>
    Buffer.concat([u32(0x06054b50), Buffer.alloc(4), u16(count), u16(count), length, start, u16(0)]);
  const record = Buffer.concat([
    u32(0x06064b50),
    u64(44n),
    Buffer.alloc(12),
    u64(1n),
    u64(1n),
    u64(BigInt(central.length)),
    u64(BigInt(local.length)),
  ]);
  const locator = Buffer.concat([u32(0x07064b50), u32(0), u64(BigInt(local.length + central.length)), u32(1)]);
  const folder = mkdtempSync(join(tmpdir(), "daybook-read-zip-"));
  try {
    const file = join(folder, "a.zip");
    for (const tail of [
      Buffer.concat([record, locator, end(0xffff, FULL, FULL)]),
      end(1, u32(central.length), u32(local.length)),
    ]) {
      writeFileSync(file, Buffer.concat([local, central, tail]));
      const [entry] = zippedFiles(file);
      expect(entry).toMatchObject({ name: "a.txt", bytes: 3, packed: 3, at: 0 });
      const pieces: Uint8Array[] = [];
      readZipped(file, entry!, (piece) => pieces.push(piece));
      expect(Buffer.concat(pieces).toString()).toBe("abc");
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});
