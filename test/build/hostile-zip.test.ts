/** What a damaged or hostile zip says of itself is refused in words: no crash, no memory filled, nothing called intact that is unpacked as another. */
import { rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { zipSync } from "fflate";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { readZipped, zippedFiles } from "../../src/build/zip/read-zip.ts";
import { temporaryFolder } from "./fakes.ts";

const END = 0x06054b50;
const CENTRAL = 0x02014b50;
let root: string;
beforeEach(() => {
  root = temporaryFolder();
});
afterEach(() => rmSync(root, { recursive: true, force: true }));

/** Places of fields are those of APPNOTE 4.3.12 and 4.3.16. */
const fieldsAt = (bytes: Buffer, signature: number): readonly number[] => {
  const mark = Buffer.from(Uint32Array.of(signature).buffer);
  const found: number[] = [];
  for (let at = bytes.indexOf(mark); at >= 0; at = bytes.indexOf(mark, at + 4)) found.push(at);
  return found;
};
const zipped = (names: readonly string[]) =>
  Buffer.from(zipSync(Object.fromEntries(names.map((name) => [name, Buffer.from(`of ${name} `.repeat(50))]))));
const written = (bytes: Uint8Array): string => {
  const path = join(root, "a.zip");
  writeFileSync(path, bytes);
  return path;
};
const readAll = (path: string) => {
  for (const entry of zippedFiles(path)) readZipped(path, entry, () => {});
};

describe("zippedFiles", () => {
  it.each([
    ["a list of files of four gigabytes", (z: Buffer, end: number) => z.writeUInt32LE(0xffff_fff0, end + 12)],
    ["a list of files far behind the end", (z: Buffer, end: number) => z.writeUInt32LE(0xffff_fff0, end + 16)],
  ])("refuses %s in a zip of a few hundred bytes", (_, damage) => {
    const zip = zipped(["a.txt"]);
    damage(zip, fieldsAt(zip, END)[0] as number);
    expect(() => zippedFiles(written(zip))).toThrow(/^(has a damaged list of files|ends too early: it is not a whole zip)$/);
  });

  it("refuses 64-bit numbers beyond any disk", () => {
    const zip = zipped(["a.txt"]);
    const end = fieldsAt(zip, END)[0] as number;
    zip.writeUInt32LE(0xffff_ffff, end + 12);
    const record = Buffer.alloc(56);
    record.writeUInt32LE(0x06064b50);
    record.writeBigUInt64LE(2n ** 64n - 1n, 40);
    record.writeBigUInt64LE(2n ** 63n, 48);
    const locator = Buffer.alloc(20);
    locator.writeUInt32LE(0x07064b50);
    const withPlace = (place: bigint) => {
      locator.writeBigUInt64LE(place, 8);
      return written(Buffer.concat([zip.subarray(0, end), record, locator, zip.subarray(end)]));
    };
    expect(() => zippedFiles(withPlace(2n ** 63n))).toThrow("ends too early: it is not a whole zip");
    expect(() => zippedFiles(withPlace(BigInt(end)))).toThrow("has a damaged list of files");
  });

  it("goes by the list to its end, whatever the count says, as programs do that unpack", () => {
    const zip = zipped(["a.txt", "b.txt"]);
    const end = fieldsAt(zip, END)[0] as number;
    zip.writeUInt16LE(1, end + 8);
    zip.writeUInt16LE(1, end + 10);
    expect(zippedFiles(written(zip)).map(({ name }) => name)).toEqual(["a.txt", "b.txt"]);
  });

  it("refuses two files of one name, however it is written: the one would be compared and the other unpacked", () => {
    const zip = zipped(["pack/a.txt", "pack/b.txt"]);
    zip.write("pack/a.txt", (fieldsAt(zip, CENTRAL)[1] as number) + 46);
    expect(() => zippedFiles(written(zip))).toThrow('holds two files of one name, "pack/a.txt"');
    expect(() => zippedFiles(written(zipped(["pack/a.txt", "./pack//a.txt"])))).toThrow('two files of one name, "pack/a.txt"');
    expect(() => zippedFiles(written(zipped(["pack/a.txt", "/pack/a.txt"])))).toThrow('two files of one name, "pack/a.txt"');
  });

  it("refuses a path that leads out of its folder, and quotes it without what a terminal obeys", () => {
    expect(() => zippedFiles(written(zipped(["x/../pack/a\u001b[2J.txt"])))).toThrow(
      'holds a file with ".." in its path, "x/../pack/a\\u001b[2J.txt": do not unpack it',
    );
    expect(zippedFiles(written(zipped(["..a/b..txt"])))).toMatchObject([{ name: "..a/b..txt" }]);
  });

  it("takes `\\` between folders from systems that write it there, and as a part of the name from others", () => {
    const zip = zipped(["pack\\vfx\\a.txt", "pack\\vfx\\"]);
    expect(zippedFiles(written(zip)).map(({ name }) => name)).toEqual(["pack/vfx/a.txt"]);
    for (const at of fieldsAt(zip, CENTRAL)) zip.writeUInt8(3, at + 5);
    expect(zippedFiles(written(zip)).map(({ name }) => name)).toEqual(["pack\\vfx\\a.txt", "pack\\vfx\\"]);
  });

  it("says of the last part of a zip in parts what it is", () => {
    const zip = zipped(["a.txt"]);
    const end = fieldsAt(zip, END)[0] as number;
    zip.writeUInt16LE(1, end + 4);
    zip.writeUInt16LE(1, end + 6);
    expect(() => zippedFiles(written(zip))).toThrow("is the last of several parts of a zip: unpack it");
  });
});

describe("readZipped", () => {
  it("refuses sizes that would fill the memory before it takes any", () => {
    const zip = zipped(["a.txt"]);
    const [at = 0] = fieldsAt(zip, CENTRAL);
    zip.writeUInt32LE(0xffff_fff0, at + 24);
    expect(() => readAll(written(zip))).toThrow("is packed and too large to be compared here: unpack the zip");
    zip.writeUInt32LE(1000, at + 24);
    zip.writeUInt32LE(0x3000_0000, at + 20);
    expect(() => readAll(written(zip))).toThrow("ends too early: it is not a whole zip");
  });

  it("has words for every byte of a zip that is damaged, and for every place where it is cut", () => {
    const zip = zipped(["pack/a.txt", "pack/b.txt"]);
    const words = new Set<string>();
    const attempt = (bytes: Uint8Array) => {
      try {
        readAll(written(bytes));
      } catch (error) {
        words.add(`${(error as Error).constructor.name} ${(error as Error).message}`);
      }
    };
    for (let at = 0; at < zip.length; at++) {
      attempt(zip.subarray(0, at));
      for (const value of [0xff, (zip[at] as number) ^ 1]) {
        const damaged = Buffer.from(zip);
        damaged[at] = value;
        attempt(damaged);
      }
    }
    expect([...words].filter((said) => !said.startsWith("ZipProblem "))).toEqual([]);
    expect(words.size).toBeGreaterThan(5);
  });
});
