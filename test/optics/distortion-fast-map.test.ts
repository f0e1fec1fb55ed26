import { describe, expect, it } from "vitest";
import { type CanonicalDistortion, completeCanonical } from "../../src/optics/distortion/canonical.ts";
import { fastMap } from "../../src/optics/distortion/fast-map.ts";
import { mapPoints, type Side } from "../../src/optics/distortion/map.ts";
import { exactMap, pixelGrid } from "../../src/optics/distortion/map-grid.ts";

const AREA = { widthMm: 28.16, heightMm: 15.84 };
const SIZE = { widthPx: 640, heightPx: 360 };
const LENSES: Readonly<Record<string, CanonicalDistortion>> = {
  barrel: completeCanonical(
    "brown-conrady",
    { k1: -2e-4, k2: 6e-8, p1: 2e-6, p2: -3e-6 },
    { direction: "undistort", centreXMm: 0.4 },
  ),
  pincushion: completeCanonical("brown-conrady", { k1: 3e-4, k2: -2e-7 }, { direction: "distort", centreYMm: -0.3 }),
  rational: completeCanonical("brown-conrady", { k1: 4e-4, k4: 6e-4, k5: 1e-7 }, { direction: "distort" }),
  division: completeCanonical("division", { lambda: -4e-4 }, { direction: "undistort" }),
  anamorphic: completeCanonical(
    "anamorphic-even",
    { ax2: -6e-5, ay2: 3e-5, bx2: 6e-5, by4: -3e-8 },
    { direction: "undistort", squeeze: 1.8 },
  ),
};
const SIDES: readonly Side[] = ["ideal", "recorded"];

function maps(d: CanonicalDistortion, side: Side, tolerance: number, size = SIZE) {
  const { grid, units } = pixelGrid(AREA, size);
  const room = () => new Float64Array(size.widthPx * size.heightPx);
  const [exactX, exactY, x, y] = [room(), room(), room(), room()];
  const exact = exactMap(d, side, grid, units, exactX, exactY);
  const fast = fastMap(d, side, grid, units, x, y, tolerance);
  let largest = 0;
  let differentlyDefined = 0;
  for (let i = 0; i < x.length; i++) {
    if (Number.isNaN(x[i]!) !== Number.isNaN(exactX[i]!) || Number.isNaN(y[i]!) !== Number.isNaN(exactY[i]!)) differentlyDefined++;
    else if (!Number.isNaN(x[i]!)) largest = Math.max(largest, Math.abs(x[i]! - exactX[i]!), Math.abs(y[i]! - exactY[i]!));
  }
  return { exact, fast, largest, differentlyDefined, exactX, exactY, x, y };
}

describe("a map of a whole picture", () => {
  it.each(Object.keys(LENSES))("%s: the fast map is the exact one to its tolerance, both ways", (name) => {
    for (const side of SIDES) {
      for (const tolerance of [0.01, 1e-6]) {
        const { fast, largest, differentlyDefined } = maps(LENSES[name]!, side, tolerance);
        expect(largest).toBeLessThan(tolerance);
        expect(fast.largestMiss).toBeLessThanOrEqual(tolerance / 4);
        expect(differentlyDefined).toBe(0);
      }
    }
  });

  it("is mostly interpolated where a hundredth of a pixel is enough", () => {
    for (const d of Object.values(LENSES)) {
      const { fast } = maps(d, "recorded", 0.01);
      expect(fast.cells).toBe(20 * 12);
      expect(fast.exactCells).toBeLessThan(fast.cells / 10);
    }
  });

  it("whose picture ends inside the frame is worked out sample by sample there, and says how much is not defined", () => {
    // 1 - 0.0042 r^2 = 0 at r = 15.43 mm, recorded at 10.29 mm; the frame's corner is at 16.2 mm.
    const d = completeCanonical("brown-conrady", { k1: -1.4e-3 }, { direction: "distort" });
    for (const side of SIDES) {
      const { exact, fast, largest, differentlyDefined } = maps(d, side, 0.01);
      expect(exact.undefinedPoints).toBeGreaterThan(500);
      expect(fast.undefinedPoints).toBe(exact.undefinedPoints);
      expect(differentlyDefined).toBe(0);
      expect(largest).toBeLessThan(0.01);
      expect(fast.exactCells).toBeLessThan(fast.cells);
    }
  });

  it("of a few samples is the exact map as well", () => {
    for (const [widthPx, heightPx] of [
      [1, 1],
      [2, 40],
      [33, 3],
      [97, 65],
    ] as const) {
      const { fast, largest, differentlyDefined } = maps(LENSES.barrel!, "recorded", 0.01, { widthPx, heightPx });
      expect(fast.undefinedPoints).toBe(0);
      expect(differentlyDefined).toBe(0);
      expect(largest).toBeLessThan(0.01);
    }
  });

  it("counts pixels by their middles: the points of mapPoints, in pixels from the first pixel's middle", () => {
    const d = LENSES.barrel!;
    const { exactX, exactY } = maps(d, "ideal", 0.01);
    // Pixel 500 of row 20: 500.5 and 20.5 pixels from the left and top edge of 28.16 x 15.84 mm.
    const x = Float64Array.of((500.5 / 640 - 0.5) * 28.16);
    const y = Float64Array.of((20.5 / 360 - 0.5) * 15.84);
    mapPoints(d, "ideal", x, y, x, y);
    expect(exactX[20 * 640 + 500]).toBeCloseTo((x[0]! / 28.16 + 0.5) * 640 - 0.5, 9);
    expect(exactY[20 * 640 + 500]).toBeCloseTo((y[0]! / 15.84 + 0.5) * 360 - 0.5, 9);
  });
});
