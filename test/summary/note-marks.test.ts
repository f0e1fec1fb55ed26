import { describe, expect, it } from "vitest";
import { notedEnds, noteMarks } from "../../src/summary/note-marks.ts";
import { exampleTake } from "../fixtures/day-summary.ts";
import { placeAt } from "../fixtures/day-summary-kit.ts";

const place = placeAt("days/2031-05-06/notes.csv", 3, 1);
/** 14:22:07:11 at 24, 754 frames: the last one is 14:22:38:20. */
const base = exampleTake("a-12-2").take;

function noted(remark: string | null, focus: readonly [number, number] | null = null) {
  if (base.note === null) throw new Error("no note");
  const remarks = remark === null ? null : { value: remark, text: remark, place };
  const focusCell = focus === null ? null : { value: { fromDioptres: focus[0], toDioptres: focus[1] }, text: "", place };
  return { ...base, note: { ...base.note, remarks, focus: focusCell } } as typeof base;
}

describe("places in time that the remarks give", () => {
  it("are timecodes inside the take, with the words of their clause, in order of time", () => {
    // 14:22:20:00 less 14:22:07:11 is 13 s less 11 frames: 301; 14:22:10:02 is 3 s less 9 frames: 63
    expect(noteMarks(noted("Boat enters at 14:22:20:00, slate 14:22:10:02"))).toEqual([
      { kind: "slate", frame: 63, timecode: "14:22:10:02", words: "slate" },
      { kind: "mark", frame: 301, timecode: "14:22:20:00", words: "Boat enters" },
    ]);
  });
  it("are a slate by the trade's words for it", () => {
    for (const word of ["Clap", "Sticks", "Tail slate", "end board", "slated"]) {
      expect(noteMarks(noted(`${word} 14:22:10:02`))[0]?.kind, word).toBe("slate");
    }
  });
  it("are the first and the last frame of the take, and nothing outside", () => {
    expect(noteMarks(noted("14:22:07:11, 14:22:38:20")).map((m) => m.frame)).toEqual([0, 753]);
    expect(noteMarks(noted("14:22:07:10, 14:22:38:21. 15:00:00:00"))).toEqual([]);
  });
  it("are none without a timecode: a slate without a time is not put anywhere", () => {
    expect(noteMarks(noted("Slate in the last second. Soft on the turn at 14:22"))).toEqual([]);
    expect(noteMarks(noted(null))).toEqual([]);
    expect(noteMarks({ ...noted("slate 14:22:10:02"), inFrame: null })).toEqual([]);
    // frame 24 does not exist at 24
    expect(noteMarks(noted("slate 14:22:10:24"))).toEqual([]);
  });
});

describe("a noted focus range", () => {
  it("gives its ends in the order written", () => {
    expect(notedEnds(noted(null, [0.5, 0]))).toEqual({ start: 2, end: "inf" });
  });
  it("has no place in time when it is one distance", () => {
    expect(notedEnds(noted(null, [0.5, 0.5]))).toBeNull();
    expect(notedEnds(noted(null))).toBeNull();
  });
});
