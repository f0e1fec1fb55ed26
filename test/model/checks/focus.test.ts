import { describe, expect, it } from "vitest";
import { clipLog, found, logFile, NOTES, pull } from "../../helpers/one-day.ts";

const ONE_SECOND = "1,1,A,C1,10:00:00:00,10:00:02:00,P50,2.8";
const day = (focus: string, cells: (i: number) => string, header = "focus_m,t") => ({
  notes: [`${ONE_SECOND},${focus}`],
  logs: { "a.csv": clipLog("C1", header, 48, (i) => `${cells(i)},2.83`) },
});

describe("focus that stands through a noted pull", () => {
  it("is a check at the noted distances, and names the log's first row", () => {
    const [finding, ...more] = found(day("3-1.5 m", () => "3.000"));
    expect(finding).toMatchObject({
      code: "CHECK721",
      severity: "check",
      file: NOTES,
      line: 2,
      column: 42,
      field: "focus",
      take: "a-1-1",
    });
    expect(finding?.hint).toContain(`${logFile("a.csv")}, line 4`);
    expect(more).toEqual([]);
  });
  it("is nothing when the log moved, or the note says one distance", () => {
    expect(found(day("3-1.5 m", pull(3, 1.5, 10, 40)))).toEqual([]);
    expect(found(day("3 m", () => "3.000"))).toEqual([]);
  });
});

// 3 m is 9.84 ft, 1.5 m is 4.92 ft; 8.2 ft is 2.5 m or 98.4 in
describe("distances that differ by a change of unit", () => {
  it.each([
    ["feet written in a column of metres", "3-1.5 m", pull(9.84, 4.92, 10, 40), "focus_m", "3.28"],
    ["metres written in a column of feet", "3-1.5 m", pull(3, 1.5, 10, 40), "focus_ft", "3.28"],
    ["inches written in a column of feet", "8.2 ft", () => "98.4", "focus_ft", "12"],
    ["inches written in a column of metres", "8.2 ft", () => "98.4", "focus_m", "39.37"],
    ["millimetres written in a column of metres", "3-1.5 m", pull(3000, 1500, 10, 40), "focus_m", "1000"],
  ] as const)("%s", (_, focus, cells, column, ratio) => {
    const findings = found(day(focus, cells, `${column},t`), "CHECK722");
    expect(findings).toHaveLength(1);
    expect(findings[0]).toMatchObject({ file: NOTES, line: 2, field: "focus" });
    expect(findings[0]?.message).toContain(`${ratio} times`);
    expect(findings[0]?.hint).toContain(logFile("a.csv"));
  });
  it("says that the log is wrong when it is nearer than the lens focuses", () => {
    // 1 m in a column of feet is 0.30 m; P50 focuses to 0.5 m
    const [finding] = found(
      day("1 m", () => "1.000", "focus_ft,t"),
      "CHECK722",
    );
    expect(finding?.hint).toContain("nearer than lens P50 focuses");
  });
  it("is a plain difference when only one end fits", () => {
    expect(found(day("9.84-1.5 m", pull(3, 1.5, 10, 40))).map((f) => f.code)).toEqual(["CHECK703"]);
  });
});
