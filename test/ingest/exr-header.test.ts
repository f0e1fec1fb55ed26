import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type ExrPart, readExrHeader } from "../../src/ingest/pictures/exr-header.ts";
import { stillDataOfExr, timecodeOfWords } from "../../src/ingest/pictures/still-lens.ts";
import { type Attribute, floats, ints, multiPartHeader, smallExr, string } from "../helpers/small-exr.ts";

const LONG = "aNameOfAnAttributeThatIsLongerThanThirtyOneBytes";
const LENS: readonly Attribute[] = [
  ["focus", "float", floats(2.5)],
  ["tStop", "float", floats(2.75)],
  ["aperture", "float", floats(2.5)],
  ["nominalFocalLength", "float", floats(50)],
  ["pinholeFocalLength", "float", floats(51.5)],
  ["entrancePupilOffset", "float", floats(-12.5)],
  ["lensSerialNumber", "string", string("501")],
  ["cameraLabel", "string", string("A")],
  ["captureRate", "rational", ints(24000, 1001)],
  // The check value of the standard's packing: 10:03:00:05 drop-frame.
  ["timeCode", "timecode", ints(0x10030045, 0)],
  ["vendor.thing", "vendorType", ints(1, 2, 3)],
];

function partsOf(bytes: Uint8Array): readonly ExrPart[] {
  const reading = readExrHeader(bytes);
  if (!reading.ok) throw new Error(reading.problem);
  return reading.parts;
}

describe("an OpenEXR header", () => {
  it("gives every attribute with its type, and no value for a type that nobody knows", () => {
    const [part] = partsOf(smallExr(LENS));
    expect(part?.get("focus")).toEqual({ name: "focus", type: "float", value: 2.5 });
    expect(part?.get("captureRate")?.value).toEqual([24000, 1001]);
    expect(part?.get("displayWindow")?.value).toEqual([0, 0, 1919, 1079]);
    expect(part?.get("lensSerialNumber")?.value).toBe("501");
    expect(part?.get("vendor.thing")).toEqual({ name: "vendor.thing", type: "vendorType", value: null });
    expect(part?.size).toBe(8 + LENS.length);
  });

  it("may have long names and several parts", () => {
    expect(partsOf(smallExr([[LONG, "string", string("yes")]], 0x400))[0]?.get(LONG)?.value).toBe("yes");
    const parts = partsOf(multiPartHeader([[["name", "string", string("left")]], [["name", "string", string("right")], ...LENS]]));
    expect(parts.map((part) => part.get("name")?.value)).toEqual(["left", "right"]);
    // What the first part does not say, the second does.
    expect(stillDataOfExr(parts).tStop).toBe(2.75);
  });

  it("gives lens data in this project's units, the marked focal length first", () => {
    expect(stillDataOfExr(partsOf(smallExr(LENS)))).toMatchObject({
      widthPx: 1920,
      heightPx: 1080,
      focalMm: 50,
      // 1 / 2.5 m
      focusDioptres: 0.4,
      tStop: 2.75,
      fNumber: 2.5,
      entrancePupilMm: -12.5,
      lensSerial: "501",
      camera: "A",
      timecode: "10:03:00;05",
      iso: null,
    });
  });

  it("has a focus at infinity, and none where the value is no distance", () => {
    const focus = (value: number) => stillDataOfExr(partsOf(smallExr([["focus", "float", floats(value)]]))).focusDioptres;
    expect([focus(Number.POSITIVE_INFINITY), focus(0), focus(-1), focus(Number.NaN)]).toEqual([0, null, null, null]);
  });

  it.each([
    [new Uint8Array(0), "0 bytes"],
    [string("<!doctype html>"), "does not begin"],
    [ints(20_000_630, 1), "version 1"],
    [smallExr(LENS).slice(0, 200), "ends after 200 bytes"],
  ])("that cannot be read says why: %#", (bytes, problem) => {
    const reading = readExrHeader(bytes);
    expect(reading.ok ? "" : reading.problem).toContain(problem);
  });

  it("cut at any byte is read in full or refused, never an exception", () => {
    const whole = smallExr(LENS);
    for (let length = 0; length < whole.length; length++) {
      const reading = readExrHeader(whole.slice(0, length));
      // 8 bytes of offset and 12 of the pixel follow the header.
      expect(reading.ok).toBe(length >= whole.length - 20);
    }
    fc.assert(
      fc.property(fc.nat(whole.length - 1), fc.nat(255), (at, byte) => {
        const damaged = Uint8Array.from(whole);
        damaged[at] = byte;
        const reading = readExrHeader(damaged);
        if (reading.ok) stillDataOfExr(reading.parts);
      }),
      { numRuns: 500 },
    );
  });
});

describe("a time code's words", () => {
  it.each([
    [[0x10030045, 0], "10:03:00;05"],
    [[0x10030005, 0], "10:03:00:05"],
    [[0x23595929, 0], "23:59:59:29"],
    // 1A is no binary coded decimal, 3B no number of minutes.
    [[0x1003000a, 0], null],
    [[0x24000000, 0], null],
    [[0x10600000, 0], null],
    [7, null],
  ])("%j are %s", (words, label) => {
    expect(timecodeOfWords(words)).toBe(label);
  });
});

const present = (program: string): boolean => spawnSync(program, ["--help"]).error === undefined;

describe.skipIf(!present("oiiotool") || !present("exrheader"))("files written by oiiotool", () => {
  const folder = mkdtempSync(join(tmpdir(), "daybook-exr-"));
  const write = (name: string, ...args: readonly string[]): Uint8Array => {
    const path = join(folder, name);
    const made = spawnSync("oiiotool", ["--create", "16x9", "3", ...args, "-d", "half", "-o", path], { encoding: "utf8" });
    if (made.status !== 0) throw new Error(made.stderr);
    return readFileSync(path);
  };
  const number = (name: string, value: string): readonly string[] => ["--attrib:type=float", name, value];
  const words = (name: string, value: string): readonly string[] => ["--attrib:type=string", name, value];
  const attributes = [
    ...number("focus", "2.5"),
    ...number("tStop", "2.75"),
    ...number("nominalFocalLength", "50"),
    ...words("lensModel", "P 50"),
    ...words("lensSerialNumber", "501"),
    ...words("reelName", "A001"),
    ...words(LONG, "yes"),
    "--attrib:type=timecode",
    "smpte:TimeCode",
    "10:03:00:05",
  ];

  it("are read with the values that were given", () => {
    const data = stillDataOfExr(partsOf(write("single.exr", ...attributes)));
    expect(data).toMatchObject({
      widthPx: 16,
      heightPx: 9,
      focusDioptres: 0.4,
      tStop: 2.75,
      focalMm: 50,
      lensModel: "P 50",
      lensSerial: "501",
      reel: "A001",
      timecode: "10:03:00:05",
    });
  });

  it("have the attributes that exrheader prints, in one part and in two, in tiles and in lines", () => {
    const kinds: readonly (readonly string[])[] = [[], ["--tile", "8", "8"], ["--dup", "--siappend"]];
    kinds.forEach((kind, i) => {
      const bytes = write(`kind-${i}.exr`, ...attributes, ...kind);
      const printed = spawnSync("exrheader", [join(folder, `kind-${i}.exr`)], { encoding: "utf8" }).stdout;
      const all = [...printed.matchAll(/^(\S.*) \(type (\w+)\)/gm)].map((match) => `${match[1]} ${match[2]}`);
      // The library adds the type of the part when it opens a file of one part.
      const names = ((bytes[5] ?? 0) & 0x10) !== 0 ? all : all.filter((name) => name !== "type string");
      const own = partsOf(bytes).flatMap((part) => [...part.values()].map((a) => `${a.name} ${a.type}`));
      expect(own.sort()).toEqual(names.sort());
      expect(names.length).toBeGreaterThan(10);
    });
  });

  it("are like those made by hand: exrheader reads the latter without a complaint", () => {
    const path = join(folder, "own.exr");
    writeFileSync(path, smallExr(LENS.filter(([, type]) => type !== "vendorType")));
    const read = spawnSync("exrheader", [path], { encoding: "utf8" });
    expect(read.stderr).toBe("");
    expect(read.stdout).toContain("focus (type float): 2.5");
    expect(read.stdout).toMatch(/time 10:03:00:05\s+drop frame 1/);
  });
});
