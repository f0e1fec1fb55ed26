import { describe, expect, it } from "vitest";
import { readDay } from "../../src/ingest/read-day.ts";
import { readShow } from "../../src/ingest/read-show.ts";
import { memoryFolder, SMALL_KIT } from "../helpers/memory-show.ts";

const NOTES = "slate,take,camera,still\n1,1,A,one.png\n";
const DAY = "days/2031-05-06";

describe("readShow", () => {
  it("says where show.yaml should be, and gives nothing without it", () => {
    expect(readShow(memoryFolder({ "x.txt": "" }))).toMatchObject({
      input: null,
      findings: [{ code: "SHOW601", severity: "error", file: "show.yaml" }],
    });
  });

  it("finds the days by the names of their folders, in order", () => {
    const files = { ...SMALL_KIT, "days/2031-05-07/x": "", "days/2031-05-06/x": "", "days/monday/x": "", "days/2031-02-30/x": "" };
    const { input, findings } = readShow(memoryFolder(files));
    expect(input?.dates).toEqual(["2031-05-06", "2031-05-07"]);
    expect(findings.map((f) => [f.code, f.file])).toEqual([
      ["SHOW606", "days/2031-02-30"],
      ["SHOW606", "days/monday"],
    ]);
  });

  it("is a check without any day, and a remark without a kit", () => {
    const { findings } = readShow(memoryFolder({ "show.yaml": SMALL_KIT["show.yaml"] }));
    expect(findings.map((f) => [f.code, f.severity])).toEqual([
      ["KIT501", "remark"],
      ["KIT501", "remark"],
      ["SHOW608", "check"],
    ]);
  });

  it("lists every file that it read with its hash", () => {
    const { input } = readShow(memoryFolder({ ...SMALL_KIT, "kit/columns.yaml": "", [`${DAY}/notes.csv`]: NOTES }));
    expect(input?.files.map((f) => f.file)).toEqual(["kit/cameras.csv", "kit/columns.yaml", "kit/lenses.csv", "show.yaml"]);
    // SHA-256 of no bytes, FIPS 180-4.
    expect(input?.files[1]).toMatchObject({ bytes: 0, sha256: "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855" });
  });
});

describe("readDay", () => {
  const files = {
    ...SMALL_KIT,
    [`${DAY}/day.yaml`]: "day: 1\ndate: 2031-05-06\nwrap: 18:00\n",
    [`${DAY}/notes.csv`]: NOTES,
    [`${DAY}/logs/b.csv`]: "timecode,t\n10:00:00:00,4\n",
    [`${DAY}/logs/A.CSV`]: "timecode,t\n10:00:00:00,4\n",
    [`${DAY}/logs/notes.txt`]: "",
    [`${DAY}/stills/two.png`]: "",
  };

  function day(own: Readonly<Record<string, string>>): ReturnType<typeof readDay> {
    const folder = memoryFolder(own);
    const { input } = readShow(folder);
    if (input === null) throw new Error("the show cannot be read");
    return readDay(folder, input, "2031-05-06");
  }

  it("reads notes, logs and stills, and lists every input with its hash", () => {
    const { input, findings } = day(files);
    expect(input.notes.map((note) => note.slate.value)).toEqual(["1"]);
    expect(input.logs.map((log) => log.file)).toEqual([`${DAY}/logs/A.CSV`, `${DAY}/logs/b.csv`]);
    expect(input.files.map((f) => f.file)).toEqual(
      ["day.yaml", "logs/A.CSV", "logs/b.csv", "notes.csv", "stills/two.png"].map((name) => `${DAY}/${name}`),
    );
    expect(input.keyPlace("wrap")).toMatchObject({ line: 3, column: 7 });
    expect(input.keyPlace("call")).toEqual({ file: `${DAY}/day.yaml`, line: null, column: null });
    expect(findings.map((f) => [f.code, f.file?.slice(DAY.length + 1)])).toEqual([
      ["LOG219", "logs/notes.txt"],
      ["NOTE314", "stills/two.png"],
      ["NOTE313", "notes.csv"],
    ]);
  });

  it("needs no notes where there is a log", () => {
    const { input, findings } = day({ ...SMALL_KIT, [`${DAY}/logs/a.csv`]: "timecode,t\n10:00:00:00,4\n" });
    expect(input.notesFile).toBeNull();
    expect(findings.map((f) => f.code)).toEqual(["SHOW612"]);
  });
});
