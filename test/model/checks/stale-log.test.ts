import { describe, expect, it } from "vitest";
import { clipLog, found, logFile, pull } from "../../helpers/one-day.ts";

function two(first: (i: number) => string, second: (i: number) => string, lens: string) {
  const log = (clip: string, cells: (i: number) => string, start: string) =>
    clipLog(clip, "focus_m,t", 48, (i) => `${cells(i)},2.83`, start).replace("# lens: P50\n", "");
  return {
    notes: ["1,1,A,C1,10:00:00:00,10:00:02:00,P50,2.8,", `1A,1,A,C2,10:10:00:00,10:10:02:00,${lens},2.8,`],
    logs: { "a.csv": log("C1", first, "10:00:00:00"), "b.csv": log("C2", second, "10:10:00:00") },
  };
}

describe("the same readings in two takes", () => {
  it("over a change of lens are a check at the later log's first row", () => {
    const [finding, ...more] = found(
      two(
        () => "3.000",
        () => "3.000",
        "P35",
      ),
    );
    expect(finding).toMatchObject({
      code: "CHECK724",
      severity: "check",
      file: logFile("b.csv"),
      line: 3,
      field: "focus_m",
      take: "a-1a-1",
    });
    expect(finding?.message).toContain("from P50 to P35");
    expect(more).toEqual([]);
  });
  it("of one lens that stood are fine", () => {
    expect(
      found(
        two(
          () => "3.000",
          () => "3.000",
          "P50",
        ),
      ),
    ).toEqual([]);
    expect(
      found(
        two(
          () => "3.000",
          () => "2.000",
          "P35",
        ),
      ),
    ).toEqual([]);
  });
  it("in which focus moved alike frame by frame are one recording", () => {
    const move = pull(3, 1.5, 10, 40);
    expect(found(two(move, move, "P50")).map((f) => [f.code, f.file, f.line])).toEqual([["CHECK724", logFile("b.csv"), 3]]);
    expect(found(two(move, pull(3, 1.5, 11, 40), "P50"))).toEqual([]);
  });
});
