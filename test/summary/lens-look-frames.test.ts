import { describe, expect, it } from "vitest";
import { lensLookFrames } from "../../src/summary/lens-look-frames.ts";
import { exampleTake } from "../fixtures/day-summary.ts";
import { lensTake } from "./lens-show.ts";

const SHADED = {
  keys: ["model: brown-conrady", "direction: undistort", "radius: mm", "shading_radius: mm"],
  table: {
    header: "focal_mm,focus_m,k1,a1,entrance_pupil_mm",
    rows: ["50,inf,0.0001,0.001,100", "50,1,0.0002,0.001,110"],
  },
};

describe("the lens look on every frame", () => {
  it("is read between the table's rows, linear in 1/distance, on each frame", () => {
    const take = lensTake({ ...SHADED, frames: 48, cells: (i) => `${i < 24 ? "inf" : "2.000"},2.8` });
    const found = lensLookFrames(take);
    // infinity: corner 1 + 1e-4 x 241.927; 2 m is half way: k1 1.5e-4
    expect(found?.distortionPercent.corner[0]).toBeCloseTo(100 * (1 / 1.0241927 - 1), 4);
    expect(found?.distortionPercent.corner[40]).toBeCloseTo(100 * (1 / 1.036289 - 1), 4);
    // side r^2 154.878, top 87.049
    expect(found?.distortionPercent.midSide[0]).toBeCloseTo(100 * (1 / 1.0154878 - 1), 4);
    expect(found?.distortionPercent.midTop[0]).toBeCloseTo(100 * (1 / 1.0087049 - 1), 4);
    // brightness 1 - 0.001 r^2
    expect(found?.shadingStops.corner[0]).toBeCloseTo(Math.log2(1 - 0.241927), 5);
    expect(found?.shadingStops.midTop[47]).toBeCloseTo(Math.log2(1 - 0.087049), 5);
    expect([found?.entrancePupilMm[0], found?.entrancePupilMm[40]]).toEqual([100, 105]);
    expect(found?.calibration[0]).toBe("inside");
    expect(found?.distinctStates).toBe(2);
  });

  it("says nearest beyond the table, and nothing on frames that were not logged", () => {
    const take = lensTake({ ...SHADED, frames: 48, logged: 40, cells: (i) => `${i < 20 ? "2.000" : "0.500"},2.8` });
    const found = lensLookFrames(take);
    expect([found?.calibration[0], found?.calibration[30], found?.calibration[47]]).toEqual(["inside", "nearest", null]);
    expect(found?.look(30)?.state).toMatchObject({ kind: "nearest", axes: [{ axis: "focus", asked: 2, used: 1 }] });
    expect(found?.look(47)).toBeNull();
    const arrays = [found?.distortionPercent.corner, found?.shadingStops.midSide, found?.entrancePupilMm];
    expect(arrays.map((values) => values?.[47])).toEqual([Number.NaN, Number.NaN, Number.NaN]);
  });

  it("has the take's own figures on its middle logged frame", () => {
    const take = lensTake({ ...SHADED, frames: 47, cells: (i) => `${(1 + i / 10).toFixed(3)},2.8` });
    const found = lensLookFrames(take);
    const middle = take.middleFrame ?? -1;
    expect(middle).toBe(23);
    expect(found?.distortionPercent.corner[middle]).toBe(take.distortionPercent?.corner);
    expect(found?.shadingStops.midSide[middle]).toBe(take.shadingStops?.midSide);
    expect(Math.max(...(found?.entrancePupilMm ?? []))).toBe(take.entrancePupilMm?.max);
  });

  it("prefers coefficients that the log has, frame by frame, and says logged", () => {
    const take = lensTake({
      ...SHADED,
      frames: 24,
      logKeys: ["model: brown-conrady", "direction: undistort", "radius: mm"],
      logHeader: "focus_m,t,k1,entrance_pupil_mm",
      cells: (i) => `2.000,2.8,${i < 12 ? "0.0003,120" : ","}`,
    });
    const found = lensLookFrames(take);
    expect([found?.calibration[0], found?.calibration[20]]).toEqual(["logged", "inside"]);
    // 1 + 3e-4 x 241.927
    expect(found?.distortionPercent.corner[0]).toBeCloseTo(100 * (1 / 1.0725781 - 1), 4);
    expect(found?.distortionPercent.corner[20]).toBeCloseTo(100 * (1 / 1.036289 - 1), 4);
    // a logged pupil is not filled from the table where the log lacks it
    expect([found?.entrancePupilMm[0], found?.entrancePupilMm[20]]).toEqual([120, Number.NaN]);
  });

  it("evaluates a lens that is held once, and keeps what it worked out", () => {
    const take = lensTake({ ...SHADED, frames: 1440, cells: () => "2.000,2.8" });
    const found = lensLookFrames(take);
    expect(found?.distinctStates).toBe(1);
    expect(found?.look(0)).toBe(found?.look(1439));
    expect(lensLookFrames(take)).toBe(found);
  });

  it("is absent without a log", () => {
    expect(lensLookFrames(exampleTake("b-12-2"))).toBeNull();
  });
});
