import { spawnSync } from "node:child_process";
import { closeSync, mkdtempSync, openSync, rmSync, writeFileSync, writeSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { crc32, inflateRawSync } from "node:zlib";
import { unzipSync } from "fflate";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { readZipped, zippedFiles } from "../../src/build/zip/read-zip.ts";
import { writeZip, ZipChanged } from "../../src/build/zip/zip.ts";
import { neededFiles, withoutDeadLinks } from "../../src/build/zip/zip-pages.ts";

const DATE = { year: 2031, month: 5, day: 6 };
const FILES: Record<string, string> = {
  "index.html": "<p>hello</p>".repeat(100),
  "packs/é/🎬.txt": "straße",
  "packs/a.pdf": "not really a PDF ".repeat(50),
  empty: "",
};

function zipOf(files: Record<string, string>): Buffer {
  const pieces: Uint8Array[] = [];
  const entries = Object.entries(files).map(([name, text]) => ({ name, read: () => Buffer.from(text) }));
  writeZip(entries, DATE, (piece) => pieces.push(piece));
  return Buffer.concat(pieces);
}

describe("writeZip", () => {
  it("is read by another library with every name and byte", () => {
    const read = Object.entries(unzipSync(zipOf(FILES))).map(([name, bytes]) => [name, Buffer.from(bytes).toString()]);
    expect(Object.fromEntries(read)).toEqual(FILES);
  });

  it("has the published values at their places", () => {
    const zip = zipOf({ a: "abc" });
    expect(zip.readUInt32LE(0)).toBe(0x04034b50);
    // 6 May 2031 is (2031 - 1980) << 9 | 5 << 5 | 6 = 26112 + 160 + 6; noon is 12 << 11 (APPNOTE.TXT 4.4.6)
    expect([zip.readUInt16LE(12), zip.readUInt16LE(10)]).toEqual([26_278, 24_576]);
    // CRC-32 of "abc" is 352441c2, as in many published lists
    expect(zip.readUInt32LE(14).toString(16)).toBe("352441c2");
    expect(crc32("abc").toString(16)).toBe("352441c2");
    expect(zip.subarray(-22).readUInt32LE(0)).toBe(0x06054b50);
  });

  it("packs text, and stores what is packed already or does not get smaller", () => {
    const zip = zipOf(FILES);
    expect(zip.readUInt16LE(8)).toBe(8);
    expect(inflateRawSync(zip.subarray(30 + "index.html".length)).toString()).toBe(FILES["index.html"]);
    expect(zip.includes(FILES["packs/a.pdf"] as string)).toBe(true);
  });

  it("gives equal bytes for equal files", () => {
    expect(zipOf(FILES).equals(zipOf(FILES))).toBe(true);
  });

  it("has no 64-bit records where the old form will do, up to 65,534 files", () => {
    const zip = emptyFiles(65_534);
    expect(zip.readUInt16LE(zip.length - 12)).toBe(65_534);
    expect(zip.includes(Buffer.of(0x50, 0x4b, 6, 6))).toBe(false);
  });

  it("copies a large file in pieces, as it is, and stops when it is another one the second time", () => {
    const pieces: Uint8Array[] = [];
    const parts = ["large ", "file"].map((text) => Buffer.from(text));
    writeZip(
      [
        { name: "a.mov", pieces: () => parts },
        { name: "b", read: () => Buffer.from("b") },
      ],
      DATE,
      (p) => pieces.push(p),
    );
    const read = unzipSync(Buffer.concat(pieces));
    expect(Object.entries(read).map(([name, bytes]) => [name, Buffer.from(bytes).toString()])).toEqual([
      ["a.mov", "large file"],
      ["b", "b"],
    ]);
    let times = 0;
    const growing = { name: "a.mov", pieces: () => parts.slice(0, ++times) };
    expect(() => writeZip([growing], DATE, () => {})).toThrow(ZipChanged);
    const rewritten = { name: "a.mov", pieces: () => [Buffer.from(`take ${++times}`)] };
    expect(() => writeZip([rewritten], DATE, () => {})).toThrow(ZipChanged);
  });
});

function emptyFiles(count: number): Buffer {
  const pieces: Uint8Array[] = [];
  const none = Buffer.alloc(0);
  // of a kind that is stored: to pack nothing 65,535 times takes seconds
  const entries = Array.from({ length: count }, (_, i) => ({ name: `f/${i}.gz`, read: () => none }));
  writeZip(entries, DATE, (piece) => pieces.push(piece));
  return Buffer.concat(pieces);
}

let many: Buffer | null = null;
function manyFiles(): Buffer {
  many ??= emptyFiles(65_535);
  return many;
}

const works = (command: string, ...args: string[]) => spawnSync(command, args).error === undefined;
const READERS = [
  {
    name: "python zipfile",
    there: works("python3", "--version"),
    run: (file: string) =>
      spawnSync("python3", ["-c", "import sys, zipfile; z = zipfile.ZipFile(sys.argv[1]); assert z.testzip() is None", file]),
  },
  { name: "unzip -t", there: works("unzip", "-v"), run: (file: string) => spawnSync("unzip", ["-tqq", file]) },
  {
    name: "bsdtar",
    there: works("bsdtar", "--version"),
    run: (file: string) => spawnSync("bsdtar", ["-tf", file], { maxBuffer: 1 << 26 }),
  },
];

describe.each(READERS)("$name", ({ name, there, run }) => {
  const skip = there ? "" : ` (skipped: no ${name})`;
  let work: string;
  beforeEach(() => {
    work = mkdtempSync(join(tmpdir(), "daybook-zip-"));
  });
  afterEach(() => rmSync(work, { recursive: true, force: true }));

  const passes = (zip: Buffer): boolean => {
    writeFileSync(join(work, "a.zip"), zip);
    return run(join(work, "a.zip")).status === 0;
  };

  it.skipIf(!there)(`passes a zip with names in every script, and not one that was cut short${skip}`, () => {
    expect(passes(zipOf(FILES))).toBe(true);
    expect(passes(zipOf(FILES).subarray(0, 60))).toBe(false);
  });

  it.skipIf(!there)(`passes a zip of 65,535 files, for which the old form has no number${skip}`, { timeout: 120_000 }, () => {
    expect(passes(manyFiles())).toBe(true);
  });
});

describe("a zip of more than four gigabytes", () => {
  const python = works("python3", "--version");
  it.skipIf(!python)(
    "is read by Python and by ourselves to its last file, and by unzip where it is there",
    () => {
      const work = mkdtempSync(join(tmpdir(), "daybook-zip-"));
      try {
        const file = join(work, "large.zip");
        const target = openSync(file, "w");
        // zeros are holes of the file: it takes no room on the disk
        const zeros = Buffer.alloc(1 << 28);
        let at = 0;
        const entries = Array.from({ length: 2 }, (_, i) => ({ name: `vfx/${i}.exr`, read: () => zeros }));
        const huge = { name: "huge.mov", pieces: () => Array.from({ length: 17 }, () => zeros) };
        const last = { name: "takes.csv", read: () => Buffer.from("address\na-1-1\n") };
        const size = writeZip([huge, ...entries, last], DATE, (piece) => {
          if (piece !== zeros) writeSync(target, piece, 0, piece.length, at);
          at += piece.length;
        });
        closeSync(target);
        expect(size).toBe(at);
        expect(size).toBeGreaterThan(2 ** 32);
        const script = `import sys, zipfile; z = zipfile.ZipFile(sys.argv[1]); print(len(z.namelist()), z.getinfo("huge.mov").file_size, z.open("huge.mov").read(9), z.getinfo("takes.csv").header_offset > 2**32, z.read("takes.csv"))`;
        expect(spawnSync("python3", ["-c", script, file], { encoding: "utf8" }).stdout).toBe(
          `4 ${17 * 2 ** 28} ${String.raw`b'\x00\x00\x00\x00\x00\x00\x00\x00\x00' True b'address\na-1-1\n'`}\n`,
        );
        expect(zippedFiles(file)[0]).toMatchObject({ name: "huge.mov", bytes: 17 * 2 ** 28, packed: 17 * 2 ** 28, at: 0 });
        const found = zippedFiles(file).at(-1)!;
        expect(found).toMatchObject({ name: "takes.csv", bytes: 14 });
        expect(found.at).toBeGreaterThan(2 ** 32);
        readZipped(file, found, (piece) => expect(Buffer.from(piece).toString()).toBe("address\na-1-1\n"));
        if (works("unzip", "-v"))
          expect(spawnSync("unzip", ["-p", file, "takes.csv"], { encoding: "utf8" }).stdout).toBe("address\na-1-1\n");
      } finally {
        rmSync(work, { recursive: true, force: true });
      }
    },
    120_000,
  );
});

describe("withoutDeadLinks", () => {
  const page = "days/2031-05-06/index.html";
  const there = (file: string) => ["index.html", "assets/base.css", "days/2031-05-06/takes/a 1.html"].includes(file);

  it.each([
    ['<a href="../../index.html#top">x</a>', '<a href="../../index.html#top">x</a>'],
    ['<a class="t" href="takes/a%201.html">x</a>', '<a class="t" href="takes/a%201.html">x</a>'],
    ['<a class="btn" rel="prev" href="../2031-05-05/index.html">x</a>', '<a class="btn">x</a>'],
    ['<link rel="stylesheet" href="../../assets/base.css">', '<link rel="stylesheet" href="../../assets/base.css">'],
    ['<link rel="stylesheet" href="../../assets/gone.css">', ""],
    ['<a href="#main">x</a>', '<a href="#main">x</a>'],
    ['<a href="https://example.org/">x</a>', '<a href="https://example.org/">x</a>'],
    ['<a href="mailto:a@example.org">x</a>', '<a href="mailto:a@example.org">x</a>'],
  ])("makes %s into %s", (html, expected) => {
    expect(withoutDeadLinks(page, html, there)).toBe(expected);
  });

  it("knows what a page needs beside its links", () => {
    const html = '<script src="../../assets/page.js" defer></script><img alt="" src="stills/a.png"><a href="../x.html">x</a>';
    expect(neededFiles(page, html)).toEqual(["assets/page.js", "days/2031-05-06/stills/a.png"]);
  });
});
