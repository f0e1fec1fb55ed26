import { describe, expect, it } from "vitest";
import { lensTake } from "./lens-show.ts";

const TABLE = { header: "focal_mm,focus_m,k1", rows: ["50,inf,0.05"] };
const keys = (area: string, more: readonly string[] = []) => [
  "model: brown-conrady",
  "direction: undistort",
  "radius: half-diagonal",
  `area_mm: ${area}`,
  ...more,
];

function take(mode: string, area: string, more: readonly string[] = []) {
  return lensTake({ keys: keys(area, more), table: TABLE, mode, frames: 24, cells: () => "3.000,2.8" });
}

describe("a table made on another sensor area", () => {
  it("is used by physical millimetres, and that is said", () => {
    const found = take("CROP", "24.89x18.66");
    expect(found.calibrationArea).toEqual({
      source: "kit",
      widthMm: 24.89,
      heightMm: 18.66,
      modeWidthMm: 20,
      modeHeightMm: 15,
    });
    // the crop's corner at 12.5 mm is 0.803652 of the table's half diagonal 15.554: 1 + 0.05 x 0.645857 = 1.0322929
    expect(found.distortionPercent?.corner).toBeCloseTo(100 * (1 / 1.0322929 - 1), 4);
  });

  it("is not remarked on within 1 %, where its area is not said, or where it did not serve", () => {
    expect(take("OPEN", "24.89x18.66").calibrationArea).toBeNull();
    expect(take("OPEN", "24.70x18.60").calibrationArea).toBeNull();
    expect(take("OPEN", "24.50x18.66").calibrationArea).not.toBeNull();
    const inMm = ["model: brown-conrady", "direction: undistort", "radius: mm"];
    const rows = { header: "focal_mm,focus_m,k1", rows: ["50,inf,0.0001"] };
    expect(lensTake({ keys: inMm, table: rows, mode: "CROP", frames: 24, cells: () => "3.000,2.8" }).calibrationArea).toBeNull();
    const unread = keys("24.89x18.66").filter((key) => !key.startsWith("direction"));
    const found = lensTake({ keys: unread, table: TABLE, mode: "CROP", frames: 24, cells: () => "3.000,2.8" });
    expect(found.calibration.kind).toBe("none");
    expect(found.calibrationArea).toBeNull();
  });
});
