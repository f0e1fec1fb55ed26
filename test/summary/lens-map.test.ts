import { describe, expect, it } from "vitest";
import type { CalibrationTable } from "../../src/ingest/records.ts";
import { bandEdges, FOCUS_BANDS_M, lensMap } from "../../src/summary/lens-map.ts";
import type { LensStates, StateHistogram } from "../../src/summary/state-histogram.ts";
import { CALIBRATION_ZOOM, LENS_50 } from "../fixtures/day-summary-kit.ts";

function states(all: StateHistogram, allUnknown = 0): LensStates {
  return { lens: "P50", modes: [], plates: {}, grids: {}, all, platesUnknown: 0, allUnknown };
}

const point = (focusDioptres: number, tStop: number | null) => ({
  ...CALIBRATION_ZOOM.points[0]!,
  focalMm: 50,
  focusDioptres,
  tStop,
});
const table = (points: CalibrationTable["points"]): CalibrationTable => ({ ...CALIBRATION_ZOOM, lens: "P50", points });

describe("the bands of focus", () => {
  it("lie one behind the other from infinity to the lens", () => {
    expect(bandEdges(0)).toEqual({ far: 0, near: 1 / 20 });
    for (const band of FOCUS_BANDS_M.keys()) expect(bandEdges(band + 1).far).toBe(bandEdges(band).near);
    expect(bandEdges(FOCUS_BANDS_M.length).near).toBe(Number.POSITIVE_INFINITY);
  });
});

describe("where a lens was used", () => {
  // keys: half millimetres, 0.02 dioptres, thirds of a stop from T1: 0.42 (1/m) is 2.38 m, T2.8 is 9 thirds
  it("is frames by focus band and third of a stop, days and focal lengths together", () => {
    const map = lensMap(LENS_50, null, [
      states({ "100 21 9": 40, "99 22 9": 2, "100 0 9": 5 }),
      states({ "100 21 9": 8, "100 21 12": 1 }),
    ]);
    expect(map.cells.map((c) => ({ ...bandEdges(c.band), thirds: c.thirds, frames: c.frames }))).toEqual([
      { far: 0, near: 1 / 20, thirds: 9, frames: 5 },
      { far: 1 / 2.5, near: 1 / 2, thirds: 9, frames: 50 },
      { far: 1 / 2.5, near: 1 / 2, thirds: 12, frames: 1 },
    ]);
    expect(map.frames).toBe(56);
  });

  it("puts a focus on a bound into the nearer band", () => {
    // 0.5 (1/m) is 2 m
    expect(lensMap(LENS_50, null, [states({ "100 25 9": 1 })]).cells[0]?.band).toBe(FOCUS_BANDS_M.indexOf(2) + 1);
  });

  it("counts frames without a stop apart, with those without focus or focal length", () => {
    const map = lensMap(LENS_50, null, [states({ "100 21 -": 7, "100 21 9": 3 }, 5)]);
    expect([map.frames, map.framesUnknown]).toEqual([3, 12]);
  });

  it("knows what lies outside the table, by stop or by focus", () => {
    const map = lensMap(LENS_50, table([point(0, 2.828), point(1, 2.828), point(0, 5.657), point(1, 5.657)]), [
      states({ "100 21 9": 1, "100 21 6": 1, "100 75 9": 1 }),
    ]);
    // inside: 2.4 m at T2.8; T2 is a stop wider than the table; 1.5 (1/m) is nearer than 1 m
    expect(map.cells.map((c) => [c.thirds, c.outside])).toEqual([
      [6, true],
      [9, false],
      [9, true],
    ]);
  });

  it("has no stop that is outside a table that serves every stop", () => {
    const map = lensMap(LENS_50, table([point(0, null), point(1, null)]), [states({ "100 21 3": 1 })]);
    expect(map.calibrated?.stops).toBeNull();
    expect(map.cells[0]?.outside).toBe(false);
  });
});
