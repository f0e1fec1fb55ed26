import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { crc32, inflateRawSync } from "node:zlib";
import { unzipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { writeZip, ZipTooLarge } from "../../src/build/zip/zip.ts";
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

  it("refuses more files than a zip can count", () => {
    const many = Array.from({ length: 65_536 }, (_, i) => ({ name: String(i), read: () => Buffer.alloc(0) }));
    expect(() => writeZip(many, DATE, () => {})).toThrow(ZipTooLarge);
  });

  const python = spawnSync("python3", ["--version"]).status === 0;
  it.runIf(python)("passes Python's own test of a zip", () => {
    const work = mkdtempSync(join(tmpdir(), "daybook-zip-"));
    writeFileSync(join(work, "a.zip"), zipOf(FILES));
    const script = "import sys, zipfile; z = zipfile.ZipFile(sys.argv[1]); print(z.testzip(), len(z.namelist()))";
    expect(spawnSync("python3", ["-c", script, join(work, "a.zip")], { encoding: "utf8" }).stdout).toBe("None 4\n");
    rmSync(work, { recursive: true, force: true });
  });
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
