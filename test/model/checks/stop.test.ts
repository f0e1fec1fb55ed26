import { describe, expect, it } from "vitest";
import { clipLog, found, logFile, NOTES } from "../../helpers/one-day.ts";

const day = (stop: string, t: (i: number) => string | number, lens = "P50") => ({
  notes: [`1,1,A,C1,10:00:00:00,10:00:02:00,${lens},${stop},3 m`],
  logs: { "a.csv": clipLog("C1", "focus_m,t", 48, (i) => `3.000,${t(i)}`) },
});

describe("a fraction of a stop added to the number", () => {
  it("is told from the log's stop: 5.6 and a half is T6.73, 4 and two thirds T5.04", () => {
    const [finding, ...more] = found(day("6.1", () => 6.73));
    expect(finding).toMatchObject({ code: "CHECK723", severity: "check", file: NOTES, line: 2, column: 38, field: "stop" });
    expect(finding?.hint).toContain('"5.6 1/2"');
    expect(more).toEqual([]);
    expect(found(day("4.7", () => 5.04)).map((f) => f.code)).toEqual(["CHECK723"]);
  });
  it("is told without a log where no scale has the number", () => {
    const notes = (stop: string) => ({ notes: [`1,1,A,C1,10:00:00:00,10:00:02:00,P50,${stop},3 m`] });
    expect(found(notes("8.5"), "CHECK723")).toHaveLength(1);
    for (const stop of ["4.5", "6.3", "2.1", "1.5", "5.6 1/2", "5.6"]) expect(found(notes(stop), "CHECK723"), stop).toEqual([]);
  });
  it("is a plain difference when the log has another stop", () => {
    expect(found(day("6.1", () => 4)).map((f) => f.code)).toEqual(["CHECK702"]);
    expect(found(day("6.1", () => 6.1))).toEqual([]);
  });
});

describe("a stop that jumps", () => {
  it("is a check at the row where it does", () => {
    const [finding] = found(
      day("4", (i) => (i === 20 ? 8 : 4)),
      "CHECK741",
    );
    // two stops from 4 to 8; frame 20 is the 21st row, the first row is line 4
    expect(finding).toMatchObject({ severity: "check", file: logFile("a.csv"), line: 24, field: "t" });
    expect(finding?.message).toContain("2 stop");
  });
  it("is nothing in a pull of the iris, and said once where the lens cannot open so wide", () => {
    expect(
      found(
        day("4-8", (i) => (4 * 2 ** (i / 47)).toFixed(2)),
        "CHECK741",
      ),
    ).toEqual([]);
    expect(found(day("4", (i) => (i === 20 ? 1.4 : 4))).map((f) => f.code)).toEqual(["CHECK705"]);
  });
});
