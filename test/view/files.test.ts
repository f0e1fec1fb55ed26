import { describe, expect, it } from "vitest";
import { fileLinks } from "../../src/view/files.ts";
import { exampleDaySummary } from "../fixtures/day-summary.ts";
import { exampleContext } from "../fixtures/site-context.ts";

const plain = (text: string) => text.replaceAll(/[\u00a0\u2009\u202f]/g, " ");
const links = (names: readonly string[]) =>
  fileLinks(
    exampleContext(exampleDaySummary(), { packFiles: names.map((name) => ({ name: `vfx/a-1-1/${name}`, bytes: 1000 })) }),
    "2031-05-06",
    "days/2031-05-06/takes/a-1-1.html",
    () => true,
    "vfx/a-1-1/",
  ).map((link) => [plain(link.label), link.href, plain(link.size)]);
const href = (name: string) => `../../../packs/2031-05-06/vfx/a-1-1/${name}`;

describe("files of a take", () => {
  it("put a long series of numbered files into one line that leads to its first", () => {
    const maps = ["0001", "0002", "0003", "0004"].map((n) => `undistort-${n}.exr`);
    expect(links(["lens.csv", ...maps, "redistort-0001.exr"])).toEqual([
      ["lens.csv, a row a frame", href("lens.csv"), "1 KB"],
      ["undistort-0001 to 0004, 4 files, map, recorded to ideal", href("undistort-0001.exr"), "4 KB"],
      ["redistort-0001.exr, map, ideal to recorded", href("redistort-0001.exr"), "1 KB"],
    ]);
  });

  it("list a short series, and never join series of two names", () => {
    const names = ["a-0001.exr", "a-0002.exr", "b-0001.exr", "b-0002.exr", "b-0003.csv"];
    expect(links(names).map(([, target]) => target)).toEqual(names.map(href));
  });
});
