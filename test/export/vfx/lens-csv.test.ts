import { describe, expect, it } from "vitest";
import { lensCsv } from "../../../src/export/vfx/lens-csv.ts";
import { dayOf, FOUR_FRAMES, firstTake } from "./fixture.ts";

const table = (text: string): string[][] =>
  text
    .trimEnd()
    .split("\n")
    .map((line) => line.split(","));
const row = (text: string, frame: number): Record<string, string> => {
  const [header, ...rows] = table(text);
  return Object.fromEntries(header!.map((name, i) => [name, rows[frame]![i]!]));
};

describe("lens.csv", () => {
  it("has the agreed columns in their order, then those that nobody knows", () => {
    const day = dayOf({ rows: ["2,4,x", "2,4,=1+1"], header: "focus_m,t,Rail [V]" });
    const lines = lensCsv(firstTake(day)).split("\n");
    expect(lines[0]).toBe(
      "frame,timecode,focus_m,t,f,focal_mm,near_m,far_m,hyperfocal_m,aov_h_deg,aov_v_deg,k1,k2,k3,p1,p2,cx_mm,cy_mm,distortion_corner_percent,a1,a2,a3,shading_corner_stops,entrance_pupil_mm,calibration,Rail [V]",
    );
    expect(lines[1]).toMatch(/,x$/);
    expect(lines[2]).toMatch(/,'=1\+1$/);
  });

  it("has a row for every frame, and one that was not logged has only frame and timecode", () => {
    const text = lensCsv(firstTake(dayOf({ rows: FOUR_FRAMES })));
    const lines = text.trimEnd().split("\n");
    expect(lines).toHaveLength(5);
    expect(lines[3]).toBe(`2,10:00:00:02${",".repeat(23)}`);
    expect(row(text, 0)).toMatchObject({ frame: "0", timecode: "10:00:00:00", focus_m: "2", t: "4", focal_mm: "50" });
  });

  it("gives coefficients in mm, half way in 1/distance between the table's points, and the calibration's word", () => {
    const text = lensCsv(firstTake(dayOf({ rows: FOUR_FRAMES })));
    // 2 m is 0.5 of 0 to 2 dioptres, a quarter of the way from infinity: 1e-4 + 1e-4 / 4
    expect(row(text, 0)).toMatchObject({ k1: "0.000125", k2: "0", k3: "0", p1: "0", p2: "0", cx_mm: "0.1", cy_mm: "-0.2" });
    expect(row(text, 0)).toMatchObject({ a1: "0.001", a2: "0", a3: "0", entrance_pupil_mm: "80.5", calibration: "inside" });
    // at (-11.9, 9.2) from the centre r^2 = 226.25 is the largest corner: ideal = r (1 + 1.25e-4 r^2) at the corner
    expect(Number(row(text, 0).distortion_corner_percent)).toBeCloseTo(100 * (1 / (1 + 1.25e-4 * (12.1 ** 2 + 9.2 ** 2)) - 1), 9);
  });

  it("writes infinity as inf and leaves f empty where only T was logged", () => {
    const text = lensCsv(firstTake(dayOf({ rows: FOUR_FRAMES })));
    expect(row(text, 3)).toMatchObject({ focus_m: "inf", far_m: "inf", f: "", k1: "0.0001" });
  });

  it("has the f-number where it was logged as such", () => {
    const text = lensCsv(firstTake(dayOf({ rows: ["2,3.6,4"], header: "focus_m,f,t" })));
    expect(row(text, 0)).toMatchObject({ f: "3.6", t: "4" });
  });

  it("brings coefficients of another radius and a gain to mm and loss", () => {
    const keys = [
      "lens: P50",
      "model: brown-conrady",
      "direction: distort",
      "radius: half-width",
      "area_mm: 24x18",
      "shading_radius: half-width",
      "shading_values: gain",
    ];
    const text = lensCsv(firstTake(dayOf({ rows: ["2,4,0.144,0.12,-0.288"], header: "focus_m,t,k1,p1,a1", keys })));
    // half the width is 12 mm: 0.144 / 12^2, 0.12 / 12, and a gain of -0.288 / 12^2 is a loss
    expect(row(text, 0)).toMatchObject({ k1: "0.001", p1: "0.01", a1: "0.002", calibration: "logged" });
  });

  it.each([
    ["a denominator", "k1,k4", "0.001,0.0001", "brown-conrady"],
    ["the division model", "lambda", "-0.0001", "division"],
  ])(
    "leaves the coefficients empty for %s, which the columns cannot hold, and keeps what was calculated",
    (_what, names, cells, model) => {
      const keys = ["lens: P50", `model: ${model}`, "direction: undistort", "radius: mm"];
      const text = lensCsv(firstTake(dayOf({ rows: [`2,4,${cells}`], header: `focus_m,t,${names}`, keys })));
      expect(row(text, 0)).toMatchObject({ k1: "", k2: "", p1: "", calibration: "logged" });
      expect(row(text, 0).distortion_corner_percent).not.toBe("");
    },
  );

  it("says none where there are no coefficients", () => {
    const text = lensCsv(firstTake(dayOf({ rows: ["2,4,50"], header: "focus_m,t,focal_mm", keys: ["lens: Z2880"] })));
    expect(row(text, 0)).toMatchObject({ k1: "", a1: "", shading_corner_stops: "", entrance_pupil_mm: "", calibration: "none" });
  });

  it("never gives an unknown column the name of another", () => {
    const text = lensCsv(firstTake(dayOf({ rows: ["2,4,7,8"], header: "focus_m,t,calibration,near_m" })));
    expect(text.split("\n")[0]).toMatch(/,calibration,calibration_log,near_m_log$/);
  });
});
