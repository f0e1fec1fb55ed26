import { describe, expect, it } from "vitest";
import { logText } from "../../helpers/memory-show.ts";
import { found, logFile } from "../../helpers/one-day.ts";

const CONVENTION = ["model: brown-conrady", "direction: undistort", "radius: half-diagonal", "area_mm: 24.89x18.66"];
const TABLE = `${CONVENTION.map((key) => `# ${key}\n`).join("")}focal_mm,focus_m,k1\n50,1,0.04\n50,inf,0.03\n`;

/** One take of a 50; six key lines and the header come before the first row, line 8. */
const day = (header: string, cells: (i: number) => string, keys: readonly string[] = CONVENTION, files = {}) => ({
  notes: ["1,1,A,C1,10:00:00:00,10:00:02:00,P50,2.8,"],
  logs: { "a.csv": logText(["clip: C1", "lens: P50", ...keys], header, "10:00:00:00", 48, cells) },
  files,
});
const moving = (i: number) => (3 - i / 48).toFixed(3); // 3 m to 2 m: 0.16 1/m
const far = (i: number) => (3 - i / 24).toFixed(3); // 3 m to 1 m: 0.65 1/m

describe("coefficients in a log", () => {
  it("that stand while focus moves are a check at the first row", () => {
    const [finding] = found(
      day("focus_m,k1", (i) => `${far(i)},0.04`),
      "CHECK737",
    );
    expect(finding).toMatchObject({ severity: "check", file: logFile("a.csv"), line: 8, field: "k1", take: "a-1-1" });
    expect(
      found(
        day("focus_m,k1", (i) => `${moving(i)},0.04`),
        "CHECK737",
      ),
    ).toEqual([]);
    expect(
      found(
        day("focus_m,k1", (i) => `${far(i)},${(0.04 + i / 10000).toFixed(4)}`),
        "CHECK737",
      ),
    ).toEqual([]);
    expect(
      found(
        day("focus_m,k1", (i) => `${far(i)},0`),
        "CHECK737",
      ),
    ).toEqual([]);
  });
  it("that bend the other way than the lens's table are a check", () => {
    const files = { "kit/calibration/P50.csv": TABLE };
    const other = [CONVENTION[0] as string, "direction: distort", ...CONVENTION.slice(2)];
    expect(
      found(
        day("focus_m,k1", () => "2.000,0.04", other, files),
        "CHECK736",
      )[0],
    ).toMatchObject({
      severity: "check",
      file: logFile("a.csv"),
      line: 8,
    });
    expect(
      found(
        day("focus_m,k1", () => "2.000,0.04", CONVENTION, files),
        "CHECK736",
      ),
    ).toEqual([]);
  });
  it("of shading that is brighter outwards are a check", () => {
    const keys = [...CONVENTION, "shading_radius: half-diagonal", "shading_values: gain"];
    expect(
      found(
        day("focus_m,a1", () => "2.000,0.4", keys),
        "CHECK738",
      )[0],
    ).toMatchObject({ line: 10, field: "a1" });
    expect(
      found(
        day("focus_m,a1", () => "2.000,-0.4", keys),
        "CHECK738",
      ),
    ).toEqual([]);
  });
});
