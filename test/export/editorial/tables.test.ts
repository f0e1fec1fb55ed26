import Papa from "papaparse";
import { describe, expect, it } from "vitest";
import { asciiLine } from "../../../src/export/editorial/ascii.ts";
import { EDITORIAL_LOSSES, editorialFiles } from "../../../src/export/editorial/editorial-files.ts";
import { compareScenes } from "../../../src/export/editorial/tables.ts";
import { lossesMarkdown } from "../../../src/export/losses.ts";
import { dayOf, oddDay, pullDay, TOOL } from "./days.ts";

const table = (day: ReturnType<typeof dayOf>, name: string) => {
  const file = editorialFiles(day, TOOL).files.find((f) => f.name === `editorial/${name}`);
  return Papa.parse<Record<string, string>>(file?.text ?? "", { header: true, skipEmptyLines: true }).data;
};

describe("markers.csv", () => {
  it("has the marks of all cameras with timecode, length and figures", () => {
    const rows = table(pullDay(), "markers.csv");
    expect(rows.map((row) => `${row.address} ${row.kind}`)).toEqual([
      "a-24b-3 plate",
      "a-24b-3 focus-pull",
      "a-24b-3 log-gap",
      "b-24b-3 plate",
    ]);
    expect(rows[2]).toMatchObject({
      timecode_from: "01:00:08:08",
      timecode_to: "01:00:08:13",
      frame: "200",
      frames: "5",
      rate: "24",
    });
    expect(Number(rows[1]?.from_m)).toBeCloseTo(4, 2);
    expect(Number(rows[1]?.to_m)).toBeCloseTo(2, 2);
  });

  it("and the timeline have plain spaces, so that a search for what a person types finds it", () => {
    const { files } = editorialFiles(pullDay(), TOOL);
    expect(table(pullDay(), "markers.csv")[1]?.text).toMatch(/^focus pull 4\.\d\d m to 2\.\d\d m, peak /);
    for (const { name, text } of files) expect(/[\u00a0\u202f]/.test(text), name).toBe(false);
  });
});

describe("bins.csv", () => {
  it("lists takes by scene as people count, those without a scene last", () => {
    const rows = ["10", "2A", "", "2", "B2"].map(
      (scene, i) => `${i + 1},1,A,${scene},A1,C${i},0${i}:00:00:00,0${i}:00:01:00,,,,,,,,,,`,
    );
    expect(table(dayOf(rows), "bins.csv").map((row) => row.bin)).toEqual(["2", "2A", "10", "B2", "no scene"]);
  });

  it("keeps every cell whole, and no cell is run by a spreadsheet", () => {
    const rows = table(oddDay(), "bins.csv");
    expect(rows).toHaveLength(9);
    expect(rows.find((row) => row.slate?.startsWith("1 &"))?.remarks).toBe(`'= 1 + 1, he said "no"`);
    expect(rows.map((row) => row.scene)).toEqual(expect.arrayContaining(["مشهد", 'S & "T"']));
  });

  it("has rows of equal length and columns that the data package names in order", () => {
    const { files } = editorialFiles(oddDay(), TOOL);
    const about = JSON.parse(files.find((f) => f.name.endsWith("datapackage.json"))?.text ?? "") as {
      resources: { path: string; schema: { fields: { name: string }[] } }[];
    };
    for (const { path, schema } of about.resources) {
      const text = files.find((f) => f.name === `editorial/${path}`)?.text ?? "";
      const { data, errors } = Papa.parse<string[]>(text, { skipEmptyLines: true });
      expect(errors).toEqual([]);
      expect(data[0]).toEqual(schema.fields.map((field) => field.name));
      expect(new Set(data.map((row) => row.length)).size).toBe(1);
    }
  });
});

describe("compareScenes", () => {
  it("orders digits as numbers and letters as letters", () => {
    expect(["10", "9A", "9", "A9", "9AB", "09"].sort(compareScenes)).toEqual(["09", "9", "9A", "9AB", "10", "A9"]);
  });
});

describe("asciiLine", () => {
  it.each([
    ["Übung – 2", "Ubung - 2"],
    ["a\tb\r\nc", "a b c"],
    ["straße ø 🎬🎬 x", "strasse o ? x"],
    ["∞ to 2.40\u00a0m", "INF to 2.40 m"],
  ])("writes %j as %j", (text, line) => {
    expect(asciiLine(text)).toBe(line);
  });
});

describe("LOSSES.md", () => {
  it("says what each format cannot hold and which takes are left out", () => {
    const { leftOut } = editorialFiles(oddDay(), TOOL);
    const text = lossesMarkdown({ title: "A *show*", formats: EDITORIAL_LOSSES, leftOut });
    expect(text).toContain("# What the files of this pack do not hold: A \\*show\\*\n");
    for (const { files, losses } of EDITORIAL_LOSSES) {
      expect(text).toContain(`\`${files}\``);
      for (const loss of losses) expect(text).toContain(`- ${loss}\n`);
    }
    expect(text).toContain("- `a-10-1` is not in `editorial/*.otio, *.edl`: it has no timecode.");
  });
});
