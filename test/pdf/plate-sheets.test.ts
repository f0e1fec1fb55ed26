/** Plate sheets: a page a set-up with plates, with every value of the summary. */

import { PNG } from "pngjs";
import { describe, expect, it } from "vitest";
import { cameraReport } from "../../src/pdf/camera-report.ts";
import { printPicture } from "../../src/pdf/still-picture.ts";
import { kitChanges, plateSlates } from "../../src/pdf/totals.ts";
import { exampleDaySummary } from "../fixtures/day-summary.ts";
import { SMALL_KIT, summarise } from "../helpers/memory-show.ts";
import { itWith, look } from "./tools.ts";

const OPTIONS = { tool: { name: "Lens Daybook", version: "0.1.0" }, buildId: "7c41e09a" } as const;

/** Red, and a corner that is clear. */
function still(): Uint8Array {
  const png = new PNG({ width: 16, height: 9 });
  for (let i = 0; i < png.data.length; i += 4) png.data.set([200, 30, 20, i === 0 ? 0 : 255], i);
  return PNG.sync.write(png);
}

function sheets(report: Uint8Array): readonly string[] {
  return look("pdftotext", report, ["-layout", "file", "-"])
    .split("\f")
    .filter((page) => page.includes("Plate sheet") && page.includes("Sketch of the set"))
    .map((page) => page.replace(/[\s\u00a0\u202f]+/g, " "));
}

describe("plate sheets", () => {
  itWith("pdftotext", "are one page for each slate with plates, and hold all values with their sources", async () => {
    const day = exampleDaySummary();
    const pages = sheets(await cameraReport(day, OPTIONS));
    expect(plateSlates(day).map(({ slate }) => slate)).toEqual(["12", "12B"]);
    expect(pages).toHaveLength(2);
    const [hero = ""] = pages;
    for (const words of [
      "Plate sheet 12 Scene 12; 1 clip.",
      "12B take 1 A against 12 take 2 A: same lens, mode, focal length, stop and height, as far as recorded.",
      "hero; circled, good",
      "A009C002, roll A009",
      "14:22:07:11, 14:22:38:21",
      "754 frames, 17 not logged",
      "serial 0417 (logged)",
      "35 to 50 mm (logged)",
      "T4 to T5.6 (logged)",
      "1.80 m to ∞ (logged)",
      "1.78 m (noted)",
      "Sea Fret 1/4; ND 2 stops",
      "4608 × 2592",
      "Sketch of the set",
    ])
      expect(hero).toContain(words);
  });

  itWith("pdftotext", "say how clean plate and hero stand on the sheets of these two, and not on that of a grid", async () => {
    const notes = [
      "slate,take,camera,tc_in,tc_out,lens,stop,focus,plate,plate_of",
      "1,1,A,10:00:00:00,10:00:02:00,P50,4,2 m,hero,",
      "1A,1,A,10:10:00:00,10:10:02:00,P50,4,2 m,clean,1",
      "1B,1,A,10:20:00:00,10:20:02:00,P50,4,2 m,grid,1",
    ];
    const files = { ...SMALL_KIT, "days/2030-02-03/notes.csv": `${notes.join("\n")}\n` };
    const pages = sheets(await cameraReport(summarise(files, "2030-02-03").summary, OPTIONS));
    expect(pages.map((page) => page.includes("1A take 1 A against 1 take 1 A: "))).toEqual([true, true, false]);
  });

  itWith("pdfinfo", "show the still as a figure that says which picture of which take it is", async () => {
    const [plate] = exampleDaySummary().takes.filter((t) => t.take.plate !== null);
    const address = plate?.take.address ?? "";
    const stills = new Map([[address, { name: "gate.png", bytes: still() }]]);
    const report = await cameraReport(exampleDaySummary(), { ...OPTIONS, stills });
    const text = Buffer.from(report).toString("latin1");
    expect(text).toMatch(/\/Alt \(Still gate\.png of 12 take 2 A, a picture of the set\./);
    expect(text).toContain("/Subtype /Image");
    expect(text).not.toContain("/SMask");
    expect(Buffer.compare(report, await cameraReport(exampleDaySummary(), { ...OPTIONS, stills }))).toBe(0);
  });

  itWith("pdftotext", "say where a still is that cannot be printed, and which can", async () => {
    const stills = new Map([["a-12-2", { name: "gate.tif", bytes: Buffer.from("II*\0nothing") }]]);
    const text = look("pdftotext", await cameraReport(exampleDaySummary(), { ...OPTIONS, stills }), ["-layout", "file", "-"]);
    expect(text).toContain("Still gate.tif of 12 take 2 A: in the pages of the day.");
    expect(text.replace(/\s+/g, " ")).toContain("Printed here are PNG, and JPEG in RGB");
  });
});

describe("a still for print", () => {
  it("is opaque: what is clear shows the paper", () => {
    const printed = printPicture(still());
    const { data, width, height } = PNG.sync.read(Buffer.from(printed?.bytes ?? []));
    expect([width, height]).toEqual([16, 9]);
    expect([...data.subarray(0, 8)]).toEqual([255, 255, 255, 255, 200, 30, 20, 255]);
  });

  /** SOI, a frame header of `channels` and 8 bits, EOI. */
  const jpeg = (channels: number, end = [0xff, 0xd9]) =>
    Uint8Array.from([
      ...[0xff, 0xd8, 0xff, 0xc0, 0, 8 + 3 * channels, 8, 0, 9, 0, 16, channels],
      ...Array.from({ length: 3 * channels }, () => 1),
      ...end,
    ]);

  it("may be a JPEG in grey or three channels, not in four inks and not cut off", () => {
    expect(printPicture(jpeg(3))).toMatchObject({ widthPx: 16, heightPx: 9 });
    expect(printPicture(jpeg(1))).not.toBeNull();
    expect(printPicture(jpeg(4))).toBeNull();
    expect(printPicture(jpeg(3, []))).toBeNull();
    expect(printPicture(Uint8Array.from([1, 2, 3]))).toBeNull();
  });
});

describe("kit changes", () => {
  it("are said from one take of a camera to its next, in shooting order", () => {
    // The fixture's camera A goes 35, zoom, 50, zoom; camera B goes 75 and then to an anamorphic lens in another mode.
    const changes = kitChanges(exampleDaySummary()).map(({ take, what, from, to }) => [take.take.camera, what, from, to]);
    expect(changes).toEqual([
      ["A", "lens", "Skerry 35", "Skerry 28–80"],
      ["A", "lens", "Skerry 28–80", "Skerry 50"],
      ["A", "lens", "Skerry 50", "Skerry 28–80"],
      ["B", "lens", "Skerry 75", "Skerry X 50"],
      ["B", "sensor mode", "4.6K 16:9", "3.1K 6:5"],
    ]);
  });
});
