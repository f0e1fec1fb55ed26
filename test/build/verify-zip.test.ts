/** A pack is compared in the zip that it came in, whoever packed it: this program, another library, Python. */
import { spawnSync } from "node:child_process";
import { readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { type Zippable, zipSync } from "fflate";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { outFiles } from "../../src/build/out-files.ts";
import { writePackHistory } from "../../src/build/pack-history.ts";
import { type Verification, verifyPack } from "../../src/build/verify.ts";
import { writeZip } from "../../src/build/zip/zip.ts";
import { readFiles, temporaryFolder, writeFiles } from "./fakes.ts";

const DATE = "2031-05-06";
const PACK = `packs/${DATE}`;
const FILES = {
  "day.json": `${JSON.stringify({ takes: "x".repeat(5000) })}\n`,
  "editorial/a é 🎬.edl": "TITLE: A\n",
  "vfx/a-1-1/undistort-0001.exr": "not a picture ".repeat(90_000),
};
let root: string;
const zip = () => join(root, "day.zip");
beforeEach(() => {
  root = temporaryFolder();
  writeFiles(join(root, "report", PACK), FILES);
  writePackHistory(outFiles(join(root, "report")), ".", DATE, {
    created: "2031-05-06T17:30:00Z",
    host: "SMALL",
    tool: { name: "Lens Daybook", version: "1.0.0" },
    folder: DATE,
  });
  writeFiles(join(root, "report"), { "index.html": "<p>page</p>" });
});
afterEach(() => rmSync(root, { recursive: true, force: true }));

const report = (): Record<string, Buffer> =>
  Object.fromEntries(Object.entries(readFiles(join(root, "report"))).map(([name, bytes]) => [name, Buffer.from(bytes)]));
const packed = (files: Record<string, Uint8Array>, level: 0 | 6 = 6) => writeFileSync(zip(), zipSync(files as Zippable, { level }));
const verified = (path = zip()): Verification => {
  const result = verifyPack(path);
  if ("problem" in result) throw new Error(result.problem);
  return result;
};
const states = () => Object.fromEntries(verified().files.flatMap((f) => (f.state === "same" ? [] : [[f.path, f.state]])));
const problem = () => (verifyPack(zip()) as { problem: string }).problem;

describe("verifyPack of a zip", () => {
  it("is what it says of the unpacked folder, file by file; pages beside the pack are in no list", () => {
    const folder = verified(join(root, "report", PACK));
    const pieces: Uint8Array[] = [];
    const entries = Object.entries(report()).map(([name, bytes]) => ({ name, read: () => bytes }));
    writeZip(entries, { year: 2031, month: 5, day: 6 }, (piece) => pieces.push(piece));
    writeFileSync(zip(), Buffer.concat(pieces));
    expect(verified()).toEqual({ ...folder, inZip: PACK });
    expect(folder).toMatchObject({ intact: true, inZip: null, counts: { same: 3 } });
  });

  it.each([0, 6] as const)("tells changed, missing and extra apart in a zip of another library, deflated at level %d", (level) => {
    const files = report();
    packed(files, level);
    expect(verified()).toMatchObject({ intact: true, counts: { same: 3, extra: 0 } });
    (files[`${PACK}/vfx/a-1-1/undistort-0001.exr`] as Buffer)[1_100_000]! ^= 1;
    delete files[`${PACK}/day.json`];
    packed({ ...files, [`${PACK}/mine.txt`]: Buffer.from("mine"), [`${PACK}/vfx/.DS_Store`]: Buffer.from("left") }, level);
    expect(states()).toEqual({ "day.json": "missing", "mine.txt": "extra", "vfx/a-1-1/undistort-0001.exr": "changed" });
    expect(verified().intact).toBe(false);
  });

  it("takes a pack at the root of a zip, as people make one of the folder's content", () => {
    packed(
      Object.fromEntries(
        Object.entries(report()).flatMap(([name, b]) => (name.startsWith(PACK) ? [[name.slice(PACK.length + 1), b]] : [])),
      ),
    );
    expect(verified()).toMatchObject({ intact: true, inZip: "", counts: { same: 3 } });
  });

  it("finds a byte that changed in the zip itself, and says so of a file that cannot be unpacked any more", () => {
    packed(report());
    const bytes = readFileSync(zip());
    const local = bytes.indexOf(`${PACK}/day.json`);
    bytes.fill(0xff, local + `${PACK}/day.json`.length + 4, local + `${PACK}/day.json`.length + 8);
    writeFileSync(zip(), bytes);
    expect(states()).toEqual({ "day.json": "changed" });
    expect(verified().files.find((f) => f.path === "day.json")?.detail).toBe("cannot be unpacked: the zip is damaged there");
  });

  it("says what is wrong with a zip that is cut short, has no pack, or has several", () => {
    packed(report());
    const whole = readFileSync(zip());
    writeFileSync(zip(), whole.subarray(0, whole.length - 30));
    expect(problem()).toBe(`"${zip()}" has no end: it is not a whole zip.`);
    writeFileSync(zip(), whole.subarray(1000));
    expect(problem()).toMatch(/has a damaged list of files|ends too early/);
    packed({ "index.html": Buffer.from("page") });
    expect(problem()).toBe(`there is no hash list in "${zip()}" (no folder ascmhl): no pack is in it.`);
    const files = report();
    packed({ ...files, ...Object.fromEntries(Object.entries(files).map(([name, b]) => [`old/${name}`, b])) });
    expect(problem()).toContain(`2 packs are in "${zip()}". Unpack it, and name one of them, such as old/${PACK}.`);
  });

  const python = spawnSync("python3", ["--version"]).error === undefined;
  it.skipIf(!python)("reads what Python writes: 64-bit sizes, sizes after the data, a comment at the end", () => {
    const script = `
import os, sys, zipfile
root, out = sys.argv[1:]
class Pipe:
    def __init__(self, file): self.file = file
    def write(self, data): return self.file.write(data)
    def flush(self): self.file.flush()
with open(out, "wb") as file, zipfile.ZipFile(Pipe(file), "w", zipfile.ZIP_DEFLATED) as z:
    z.comment = b"PK" + bytes([5, 6]) + b" a comment " * 40
    for folder, _, names in os.walk(root):
        for name in names:
            path = os.path.join(folder, name)
            with z.open(os.path.relpath(path, root), "w", force_zip64=True) as to: to.write(open(path, "rb").read())
`;
    expect(spawnSync("python3", ["-c", script, join(root, "report"), zip()], { encoding: "utf8" }).stderr).toBe("");
    expect(verified()).toMatchObject({ intact: true, inZip: PACK, counts: { same: 3 } });
  });
});
