import { describe, expect, it } from "vitest";
import { logText } from "../../helpers/memory-show.ts";
import { found, logFile } from "../../helpers/one-day.ts";

const day = (lens: string, header: string, cells: (i: number) => string) => ({
  notes: [`1,1,A,C1,10:00:00:00,10:00:02:00,${lens},4,3 m`],
  logs: { "a.csv": logText(["clip: C1", `lens: ${lens}`], header, "10:00:00:00", 48, cells) },
});

describe("logged focal lengths", () => {
  it("of a prime that move are a check at the first that does", () => {
    const [finding, ...more] = found(day("P50", "focus_m,t,focal_mm", (i) => `3.000,4,${i < 10 ? 50 : 57}`));
    expect(finding).toMatchObject({ code: "CHECK719", severity: "check", file: logFile("a.csv"), line: 14, field: "focal_mm" });
    expect(finding?.message).toContain("prime of 50 mm");
    expect(more).toEqual([]);
  });
  it("of a prime that breathes are fine", () => {
    expect(found(day("P50", "focus_m,t,focal_mm", (i) => `3.000,4,${(50 + i * 0.04).toFixed(2)}`))).toEqual([]);
  });
  it("outside the range of the lens are a check at the first row", () => {
    const [finding] = found(day("P50", "focus_m,t,focal_mm", () => "3.000,4,35"));
    expect(finding).toMatchObject({ code: "CHECK720", severity: "check", file: logFile("a.csv"), line: 4, field: "focal_mm" });
    // 28 to 80 mm
    expect(found(day("Z2880", "focus_m,t,focal_mm", () => "3.000,4,95"))[0]).toMatchObject({ code: "CHECK720", line: 4 });
    expect(found(day("Z2880", "focus_m,t,focal_mm", (i) => `3.000,4,${28 + i}`))).toEqual([]);
  });
});

describe("logged values that the lens cannot have", () => {
  it("are told once for a column, at the first of them", () => {
    const findings = found(day("P50", "focus_m,t,f", (i) => `${i < 5 ? "3.000" : "0.400"},4,${i < 7 ? "3.6" : "4.4"}`));
    expect(findings.map((f) => [f.code, f.line])).toEqual([
      ["CHECK710", 9],
      ["CHECK716", 11],
    ]);
    expect(findings[0]?.message).toContain("and 42 more rows");
  });
});
