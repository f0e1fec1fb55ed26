import { describe, expect, it } from "vitest";
import { focusRibbon } from "../../src/chart/ribbon/focus-ribbon.ts";
import { exampleTake } from "../fixtures/day-summary.ts";
import { placeAt } from "../fixtures/day-summary-kit.ts";
import { clipped, overlapping, pathsOf, wordsOf } from "./reading.ts";

const place = placeAt("days/2031-05-06/notes.csv", 3, 1);

function ribbon(remark: string, address = "a-12-2", focus: readonly [number, number] | null = null) {
  const t = exampleTake(address);
  if (t.take.note === null) throw new Error("no note");
  const cell = focus === null ? null : { value: { fromDioptres: focus[0], toDioptres: focus[1] }, text: "", place };
  const note = { ...t.take.note, remarks: { value: remark, text: remark, place }, focus: cell } as typeof t.take.note;
  return focusRibbon({ ...t, take: { ...t.take, note } }, { width: 1180, distances: "metric" });
}
const lines = (drawing: ReturnType<typeof ribbon>, k: string) =>
  drawing.items.flatMap((item) => (item.type === "line" && item.k === k ? [item] : []));

describe("marks from the notes on the ribbon", () => {
  it("are a clapstick sign on a line through plot and strips at the slate's frame", () => {
    const drawing = ribbon("Slate 14:22:10:02");
    const [clap, ...more] = lines(drawing, "k-clap");
    expect(more).toEqual([]);
    // frame 63 of 754
    const { left, right, frames } = drawing.plot;
    expect(clap?.x1).toBeCloseTo(left + ((right - left) * 63) / frames, 6);
    expect(clap?.y2).toBe(drawing.height);
    expect(wordsOf(drawing)).toEqual(expect.arrayContaining(["slate, noted", "14:22:10:02"]));
  });
  it("are not there when the notes give no time", () => {
    expect(lines(ribbon("Slate at the end"), "k-clap")).toEqual([]);
    expect(wordsOf(ribbon("Slate at the end"))).not.toContain("slate, noted");
  });
  it("have room above a take without pulls", () => {
    const drawing = ribbon("Clap 15:03:13:00", "a-12b-1");
    expect(lines(drawing, "k-clap")).toHaveLength(1);
    expect(clipped(drawing)).toEqual([]);
  });
  it("are dotted lines with their words for other timecodes", () => {
    const drawing = ribbon("Boat enters at 14:22:20:00");
    expect(wordsOf(drawing)).toContain("Boat enters");
    expect(lines(drawing, "k-lead")).toHaveLength(1);
  });
  it("are the noted distances at the first and last frame of a logged take", () => {
    // noted 5 m to 2 m; the log begins at 2.4 m
    const drawing = ribbon("", "a-12-2", [0.2, 0.5]);
    expect(wordsOf(drawing)).toEqual(expect.arrayContaining(["noted 5.0 m", "noted 2.0 m"]));
    const [start, end] = pathsOf(drawing, "k-noted");
    expect(start?.points[0]?.[1]).toBeCloseTo(drawing.plot.infinityY + 0.2 * drawing.plot.pixelsPerDioptre, 0);
    expect(end?.points[0]?.[1]).toBeCloseTo(drawing.plot.infinityY + 0.5 * drawing.plot.pixelsPerDioptre, 0);
  });
  it("never lie on another label, however many", () => {
    const drawing = ribbon(
      "Slate 14:22:10:02, board 14:22:10:10, late at 14:22:12:00, boat at 14:22:12:10, gull at 14:22:13:00, sticks 14:22:38:10",
      "a-12-2",
      [0.2, 0.5],
    );
    expect(overlapping(drawing)).toEqual([]);
    expect(clipped(drawing)).toEqual([]);
  });
});
