import { describe, expect, it } from "vitest";
import { clipLog, found, NOTES } from "../../helpers/one-day.ts";

// 60 seconds are 1440 frames; 2 % of them are 28.8 frames
const day = (first: number, frames: number, files = {}) => ({
  notes: ["1,1,A,C1,10:00:00:00,10:01:00:00,P50,2.8,3 m"],
  logs: {
    "a.csv": clipLog(
      "C1",
      "focus_m,t",
      frames,
      () => "3.000,2.83",
      `10:00:${String(Math.floor(first / 24)).padStart(2, "0")}:${String(first % 24).padStart(2, "0")}`,
    ),
  },
  files,
});

describe("a log that covers the take, but for its edges", () => {
  it("is a check at tc_in when it begins more than a second late", () => {
    const [finding, ...more] = found(day(26, 1414));
    expect(finding).toMatchObject({ code: "MATCH414", severity: "check", file: NOTES, line: 2, column: 10, field: "tc_in" });
    expect(finding?.message).toContain("26 frames");
    expect(more).toEqual([]);
  });
  it("is a check at tc_out when it ends early", () => {
    expect(found(day(0, 1413))[0]).toMatchObject({ code: "MATCH414", file: NOTES, line: 2, column: 22, field: "tc_out" });
  });
  it("is fine within the second, or within what show.yaml allows", () => {
    expect(found(day(24, 1416))).toEqual([]);
    const loose = "title: Small\ncode: SMALL\nrate: 24\ncheck: {log_edge_seconds: 2}\n";
    expect(found(day(26, 1414, { "show.yaml": loose }))).toEqual([]);
  });
  it("has one finding when too much is missing, which says where", () => {
    const [finding, ...more] = found(day(48, 1392));
    expect(finding).toMatchObject({ code: "MATCH413", line: 2 });
    expect(finding?.message).toContain("the first 48");
    expect(more).toEqual([]);
  });
});
