import { describe, expect, it } from "vitest";
import { SMALL_KIT, summarise } from "../helpers/memory-show.ts";
import { type Attribute, floats, ints, smallExr, string } from "../helpers/small-exr.ts";

const DATE = "2031-05-06";
const DAY = `days/${DATE}`;

/** 10:00:00:ff in the standard's packing. */
const label = (frame: number): Attribute => [
  "timeCode",
  "timecode",
  ints(0x10000000 + Math.floor(frame / 10) * 16 + (frame % 10), 0),
];
const lens = (metres: number): readonly Attribute[] => [
  ["focus", "float", floats(metres)],
  ["tStop", "float", floats(2.75)],
  ["lensSerialNumber", "string", string("501")],
];

function day(stills: Readonly<Record<string, Uint8Array>>, notes: string) {
  const pictures = Object.fromEntries(Object.entries(stills).map(([name, bytes]) => [`${DAY}/stills/${name}`, bytes]));
  return summarise(
    { ...SMALL_KIT, [`${DAY}/notes.csv`]: `slate,take,camera,clip,tc_in,tc_out,still\n${notes}\n`, ...pictures },
    DATE,
  );
}

describe("a numbered sequence of OpenEXR pictures", () => {
  it("is the log of the clip it is named by, each picture at its time code", () => {
    const stills = { "A1.1002.exr": smallExr([...lens(2), label(12)]), "A1.1001.exr": smallExr([...lens(4), label(10)]) };
    const { day: built } = day(stills, "1,1,A,A1,10:00:00:10,10:00:00:13,");
    const [take] = built.takes;
    // 4 m is 0.25 dioptres, 2 m is 0.5; frame 11 has no picture.
    expect([...(take?.track?.columns.focus ?? [])]).toEqual([0.25, Number.NaN, 0.5]);
    expect(take?.track?.columns.t?.[2]).toBe(2.75);
    expect(take?.lensId).toBe("P50");
    expect(built.rows).toEqual({ read: 2, used: 2, unmatched: 0, rejected: 0 });
  });

  it("is the log of the take whose note names one of its pictures, by the file numbers where there is no time code", () => {
    const stills = Object.fromEntries([1, 2, 3].map((n) => [`x-000${n}.exr`, smallExr(lens(n))]));
    const { day: built } = day(stills, "1,1,A,A1,10:00:00:10,10:00:00:13,x-0002.exr");
    expect([...(built.takes[0]?.track?.columns.focus ?? [])]).toEqual([1, 0.5, Math.fround(1) / 3]);
  });

  it("is all that a take needs: its extent, focus and stop are those of the pictures, where the note says the clip only", () => {
    const stills = Object.fromEntries([1, 2, 3].map((n) => [`A1.000${n}.exr`, smallExr([...lens(n), label(n)])]));
    const { day: built, summary } = day(stills, "1,1,A,A1,,,");
    expect(built.takes[0]).toMatchObject({ durationFrames: 3, lensId: "P50" });
    expect(summary.takes[0]?.focus).toMatchObject({ nearestM: 1, farthestM: expect.closeTo(3, 6), source: "logged" });
    expect(summary.takes[0]?.tStop).toMatchObject({ widest: 2.75, deepest: 2.75, source: "logged" });
    expect(built.rows).toEqual({ read: 3, used: 3, unmatched: 0, rejected: 0 });
  });

  it("has a rejected row for a picture whose header cannot be read, with the finding at its file", () => {
    const stills = {
      "A1.0001.exr": smallExr([...lens(2), label(10)]),
      "A1.0002.exr": smallExr(lens(2)).slice(0, 100),
      "A1.0003.exr": smallExr([...lens(2), label(12)]),
    };
    const { day: built, findings } = day(stills, "1,1,A,A1,10:00:00:10,10:00:00:13,");
    expect(built.rows).toEqual({ read: 3, used: 2, unmatched: 0, rejected: 1 });
    expect(findings.filter((f) => f.code === "NOTE314").map((f) => f.file)).toEqual([`${DAY}/stills/A1.0002.exr`]);
  });

  it("is no log when it is one picture, or says nothing of the lens", () => {
    const none = {
      "A1.0001.exr": smallExr([]),
      "A1.0002.exr": smallExr([]),
      "b.0001.exr": smallExr(lens(2)),
      "c.exr": smallExr(lens(2)),
    };
    expect(day(none, "1,1,A,A1,10:00:00:10,10:00:00:13,").day.rows.read).toBe(0);
  });
});
