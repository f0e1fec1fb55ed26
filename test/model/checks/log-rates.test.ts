import { describe, expect, it } from "vitest";
import { SMALL_KIT } from "../../helpers/memory-show.ts";
import { clipLog, found, logFile, type OneDay } from "../../helpers/one-day.ts";

const log = (clip: string, rate: string) => `# rate: ${rate}\n${clipLog(clip, "t", 24, () => "2.83")}`;
const day = (show: string, rates: readonly [string, string], column = ""): OneDay => ({
  header: "slate,take,camera,clip,tc_in,tc_out,rate",
  notes: [`1,1,A,C1,10:00:00:00,10:00:01:00,${column}`, `1,2,A,C2,10:00:00:00,10:00:01:00,${column}`],
  logs: { "a.csv": log("C1", rates[0]), "b.csv": log("C2", rates[1]) },
  files: { "show.yaml": SMALL_KIT["show.yaml"].replace("rate: 24", `rate: ${show}`) },
});
const at = (input: OneDay) => found(input, "MATCH423").map((f) => [f.severity, f.file, f.line, f.column, f.field]);

describe("the rate of the logs", () => {
  it("that is one in all of them, and another than the show's, is a check at the first log's key", () => {
    // "# rate: " are 8 characters
    expect(at(day("25", ["24", "24"]))).toEqual([["check", logFile("a.csv"), 1, 9, "rate"]]);
    expect(found(day("25", ["24", "24"]), "MATCH423")[0]?.message).toContain("All 2 logs");
  });
  it("that is the show's, counts the same labels, is said by the notes, or differs between the logs, is none", () => {
    expect(at(day("24", ["24", "24"]))).toEqual([]);
    expect(at(day("24000/1001", ["24", "24"]))).toEqual([]);
    expect(at(day("25", ["24", "24"], "24"))).toEqual([]);
    expect(at(day("25", ["24", "25"]))).toEqual([]);
  });
});
