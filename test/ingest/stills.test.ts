import { describe, expect, it } from "vitest";
import { collectFindings } from "../../src/core/findings/collect.ts";
import { opener } from "../../src/ingest/open-file.ts";
import { stillDataOfExif } from "../../src/ingest/pictures/exif.ts";
import { pictureHeader } from "../../src/ingest/pictures/picture-header.ts";
import { readStillName, readStills } from "../../src/ingest/pictures/stills.ts";
import { memoryFolder, SMALL_KIT, summarise } from "../helpers/memory-show.ts";
import { floats, ints, joined, smallExr, string } from "../helpers/small-exr.ts";

const DATE = "2031-05-06";
const DAY = `days/${DATE}`;

/** A TIFF block, little-endian: FocalLength 50/1 mm, FNumber 28/10, SubjectDistance 5/2 m, date; CIPA DC-008 table 4 and 5. */
function exifBlock(): Uint8Array {
  const entry = (tag: number, type: number, count: number, value: number): Uint8Array =>
    joined(Uint8Array.of(tag & 255, tag >> 8, type, 0), ints(count, value));
  const date = string("2031:05:06 10:03:00\0");
  const photo = 8 + 2 + 12 + 4;
  const data = photo + 2 + 4 * 12 + 4;
  return joined(
    string("II"),
    Uint8Array.of(42, 0),
    ints(8),
    Uint8Array.of(1, 0),
    entry(0x8769, 4, 1, photo),
    ints(0),
    Uint8Array.of(4, 0),
    entry(0x829d, 5, 1, data),
    entry(0x9003, 2, date.length, data + 24),
    entry(0x9206, 5, 1, data + 8),
    entry(0x920a, 5, 1, data + 16),
    ints(0),
    ints(28, 10, 5, 2, 50, 1),
    date,
  );
}

/** Markers of a JPEG up to its start of frame, 1920 x 1080. */
function jpeg(exif: Uint8Array | null): Uint8Array {
  const size = (exif?.length ?? 0) + 8;
  const app = exif === null ? [] : [Uint8Array.of(0xff, 0xe1, size >> 8, size & 255), string("Exif\0\0"), exif];
  return joined(
    Uint8Array.of(0xff, 0xd8),
    ...app,
    Uint8Array.of(0xff, 0xc0, 0, 11, 8, 1080 >> 8, 1080 & 255, 1920 >> 8, 1920 & 255, 1, 1),
  );
}

function png(exif: Uint8Array | null): Uint8Array {
  const big = (n: number): Uint8Array => ints(n).reverse();
  const chunk = (type: string, data: Uint8Array): Uint8Array => joined(big(data.length), string(type), data, big(0));
  const head = chunk("IHDR", joined(big(1920), big(1080), Uint8Array.of(8, 0, 0, 0, 0)));
  return joined(
    Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a),
    head,
    exif === null ? new Uint8Array(0) : chunk("eXIf", exif),
  );
}

describe("the header of a picture", () => {
  it.each([
    ["png", png(null), false],
    ["png", png(exifBlock()), true],
    ["jpeg", jpeg(null), false],
    ["jpeg", jpeg(exifBlock()), true],
  ])("%s has its size and its EXIF block where it has one", (kind, bytes, hasExif) => {
    const header = pictureHeader(bytes);
    expect(header).toMatchObject({ kind, widthPx: 1920, heightPx: 1080 });
    expect(header?.exif === null ? null : [...(header?.exif ?? [])]).toEqual(hasExif ? [...exifBlock()] : null);
  });

  it("of a file that ends early or is another kind is none", () => {
    for (const bytes of [png(null).slice(0, 20), jpeg(null).slice(0, 6), string("GIF89a"), new Uint8Array(0)]) {
      expect(pictureHeader(bytes)).toBeNull();
    }
  });
});

describe("an EXIF block", () => {
  it("gives focal length, stop, distance and the date as written, whatever the time zone", () => {
    // 5/2 m is 0.4 dioptres.
    expect(stillDataOfExif(exifBlock())).toMatchObject({
      focalMm: 50,
      fNumber: 2.8,
      focusDioptres: 0.4,
      taken: "2031:05:06 10:03:00",
    });
  });

  it("that is damaged gives nothing or what is left, never an exception", () => {
    const whole = exifBlock();
    for (let i = 0; i < whole.length; i++) {
      stillDataOfExif(whole.slice(0, i));
      for (const byte of [0, 0x7f, 0xff]) stillDataOfExif(Uint8Array.from(whole, (b, j) => (j === i ? byte : b)));
    }
    expect(stillDataOfExif(string("nothing of the kind")).focalMm).toBeNull();
  });
});

describe("the stills of a day", () => {
  it("are listed with what their headers say; one that cannot be read is a check and stays", () => {
    const found = collectFindings();
    const folder = memoryFolder({
      [`${DAY}/stills/a.png`]: png(null),
      [`${DAY}/stills/b.jpg`]: jpeg(exifBlock()),
      [`${DAY}/stills/c.exr`]: smallExr([["tStop", "float", floats(4)]]),
      [`${DAY}/stills/d.exr`]: smallExr([]).slice(0, 100),
      [`${DAY}/stills/e.png`]: "not a picture",
      [`${DAY}/stills/f.txt`]: "left alone",
    });
    const stills = readStills(opener(folder, found), DAY, found);
    expect(stills.map((still) => still.name)).toEqual(["a.png", "b.jpg", "c.exr", "d.exr", "e.png"]);
    expect(stills[1]?.data).toMatchObject({ focalMm: 50, widthPx: 1920 });
    expect(stills[2]?.data?.tStop).toBe(4);
    expect(found.list().map((f) => `${f.severity} ${f.code} ${f.file}`)).toEqual([
      `check NOTE314 ${DAY}/stills/d.exr`,
      `check NOTE314 ${DAY}/stills/e.png`,
    ]);
    expect(found.list()[0]?.message).toContain("100 bytes");
  });

  it("that a note names are told apart: not there, and there in a format that is not shown", () => {
    const { findings } = summarise(
      {
        ...SMALL_KIT,
        [`${DAY}/notes.csv`]: "slate,take,camera,still\n1,1,A,gone.png\n1,2,A,frame.tif\n",
        [`${DAY}/stills/frame.tif`]: "II*",
      },
      DATE,
    );
    expect(findings.filter((f) => f.code === "NOTE313").map((f) => `${f.line} ${f.message} ${f.hint}`)).toEqual([
      "2 There is no still gone.png in the day's stills/ folder. Copy the picture there (.png, .jpg or .exr), or mend the name.",
      "3 The still frame.tif is there, in a format that the report cannot show. Save the picture beside it as .png, .jpg or .exr, and name that file here.",
    ]);
  });

  it.each(["../a.png", "stills/a.png", "..\\a.png", "/etc/a.png", "..", "C:\\a.png"])(
    "are named without a path: %s is refused",
    (name) => {
      expect(readStillName(name).ok).toBe(false);
    },
  );

  it("named with a path are an error at the cell, with the name that is meant, and no file is opened", () => {
    const asked: string[] = [];
    const folder = memoryFolder({});
    const watched = {
      ...folder,
      read: (file: string) => {
        asked.push(file);
        return folder.read(file);
      },
    };
    expect(readStillName("../../secret.png")).toMatchObject({ hint: expect.stringContaining("secret.png") });
    readStills(opener(watched, collectFindings()), DAY, collectFindings());
    expect(asked).toEqual([]);
    const { findings } = summarise({ ...SMALL_KIT, [`${DAY}/notes.csv`]: "slate,take,camera,still\n1,1,A,../b.png\n" }, DATE);
    expect(findings.filter((f) => f.code === "NOTE315").map((f) => `${f.severity} ${f.line}:${f.column}`)).toEqual(["error 2:7"]);
  });
});

describe("the lens data of a take's still", () => {
  const files = (still: Uint8Array, cells: string): Record<string, string | Uint8Array> => ({
    ...SMALL_KIT,
    [`${DAY}/notes.csv`]: `slate,take,camera,tc_in,tc_out,lens,stop,focus,still\n1,1,A,10:00:00:00,10:00:01:00,${cells},x.exr\n`,
    [`${DAY}/stills/x.exr`]: still,
  });
  const differ = (still: Uint8Array, cells: string) =>
    summarise(files(still, cells), DATE).findings.filter((f) => f.code === "NOTE316");

  it("that are those of the notes and the kit say nothing", () => {
    const still = smallExr([
      ["focus", "float", floats(2.5)],
      ["tStop", "float", floats(2.8)],
      ["nominalFocalLength", "float", floats(50)],
      ["lensSerialNumber", "string", string("501")],
    ]);
    expect(differ(still, "P50,2.8,2.4-2.6 m")).toEqual([]);
  });

  it("that are others are one remark at the note's cell, with all differences and where the other value is from", () => {
    const still = smallExr([
      ["focus", "float", floats(5)],
      ["tStop", "float", floats(4)],
      ["nominalFocalLength", "float", floats(35)],
      ["lensSerialNumber", "string", string("351")],
    ]);
    const [finding, ...more] = differ(still, "P50,2.8,2.5 m");
    expect(more).toEqual([]);
    expect(finding).toMatchObject({
      severity: "remark",
      file: `${DAY}/notes.csv`,
      line: 2,
      column: 45,
      field: "still",
      take: "a-1-1",
    });
    expect(finding?.message).toContain("35 mm (the kit has 50 mm)");
    expect(finding?.message).toContain("T4 (the notes have T2.83)");
    expect(finding?.message).toContain("focus 5 m (the notes have 2.5 m)");
    expect(finding?.message).toContain("lens serial 351 (P50 in the kit 501)");
  });
});
