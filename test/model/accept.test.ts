import { describe, expect, it } from "vitest";
import { dayObject } from "../../src/export/day-json.ts";
import { FINDINGS_COLUMNS, findingsCsv } from "../../src/export/findings-csv.ts";
import { clipLog, DAY, oneDay } from "../helpers/one-day.ts";

const day = (accepted: string) =>
  oneDay({
    notes: ["1,1,A,C1,10:00:00:00,10:00:02:00,P50,4,3 m", "1,2,A,C2,10:05:00:00,10:05:02:00,P50,4,3 m"],
    logs: {
      "a.csv": clipLog("C1", "focus_m,t", 48, () => "3.000,2.83"),
      "b.csv": clipLog("C2", "focus_m,t", 48, () => "3.000,2.84", "10:05:00:00"),
    },
    day: accepted,
  });
const stops = (summary: ReturnType<typeof day>["summary"]) =>
  summary.findings.filter((f) => f.code === "CHECK702").map((f) => [f.take, f.accepted]);

describe("a finding accepted in day.yaml", () => {
  it("stays in the list with its reason, and counts no more", () => {
    expect(day("").summary.findingCounts).toEqual({ error: 0, check: 2, remark: 0 });
    const { summary } = day("accepted: [{code: CHECK702, take: a-1-2, reason: Iris ring slipped}]\n");
    expect(stops(summary)).toEqual([
      ["a-1-1", null],
      ["a-1-2", "Iris ring slipped"],
    ]);
    expect(summary.findingCounts).toEqual({ error: 0, check: 1, remark: 0 });
    expect(summary.takes[1]?.findings.map((f) => f.accepted)).toEqual(["Iris ring slipped"]);
  });
  it("covers all of its code on the day without a take", () => {
    const { summary } = day("accepted:\n  - {code: check702, reason: Iris ring slipped all day}\n");
    expect(summary.findingCounts).toEqual({ error: 0, check: 0, remark: 0 });
    expect(stops(summary).map(([, reason]) => reason)).toEqual(["Iris ring slipped all day", "Iris ring slipped all day"]);
  });
  it("that is not there is a remark at its entry", () => {
    const { summary } = day(
      "accepted:\n  - {code: CHECK702, take: a-1-1, reason: known}\n  - {code: CHECK703, take: a-1-2, reason: known}\n",
    );
    expect(summary.findings.find((f) => f.code === "CHECK748")).toMatchObject({
      severity: "remark",
      file: DAY,
      line: 5,
      field: "accepted",
    });
  });
  it("needs a code and a reason, and a take that is no address covers nothing", () => {
    const { findings } = day(
      "accepted:\n  - {code: stop, reason: known}\n  - {code: CHECK702, take: 1/2, reason: seen}\n  - {code: CHECK702}\n",
    );
    expect(findings.filter((f) => f.code === "SHOW604").map((f) => f.line)).toEqual([4, 6]);
    expect(findings.filter((f) => f.code === "CHECK748").map((f) => f.line)).toEqual([5]);
    expect(findings.filter((f) => f.accepted !== null)).toEqual([]);
  });
  it("travels in day.json, and findings.csv keeps its columns", () => {
    const { summary } = day("accepted: [{code: CHECK702, take: a-1-2, reason: Iris ring slipped}]\n");
    const findings = dayObject(summary, { name: "x", version: "0" }).findings as {
      code: string;
      take: string;
      accepted: string | null;
    }[];
    expect(findings.filter((f) => f.accepted !== null).map((f) => f.take)).toEqual(["a-1-2"]);
    expect(FINDINGS_COLUMNS).toEqual(["code", "severity", "file", "line", "column", "field", "message", "hint", "take"]);
    expect(findingsCsv(summary.findings)).not.toContain("slipped");
  });
});
