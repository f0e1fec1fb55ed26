import { describe, expect, it } from "vitest";
import type { CalibrationPoint, CalibrationTable, Lens } from "../../src/ingest/records.ts";
import { lensCurves, radialCurves } from "../../src/summary/lens-curves.ts";
import { LENS_50, LENS_ANAMORPHIC, LENS_ZOOM, MODE_A, placeAt } from "../fixtures/day-summary-kit.ts";

type Point = readonly [focalMm: number, focusDioptres: number, tStop: number | null, k1: number, a1: number];

function tableOf(points: readonly Point[], convention: Partial<CalibrationTable["convention"]> = {}): CalibrationTable {
  const place = placeAt("kit/calibration/T.csv", 1, 1);
  return {
    ...{ lens: "T", file: "kit/calibration/T.csv", sha256: "0".repeat(64), madeOn: null, madeBy: null, source: null },
    convention: {
      ...{ model: "brown-conrady", direction: "undistort", radius: "half-diagonal", areaMm: { width: 28.8, height: 16.2 } },
      ...{ squeezeState: null, shadingRadius: "half-diagonal", shadingValues: "loss" },
      ...convention,
    },
    points: points.map(
      ([focalMm, focusDioptres, tStop, k1, a1]): CalibrationPoint => ({
        focalMm,
        focusDioptres,
        tStop,
        coefficients: { k1, a1 },
        place,
      }),
    ),
  };
}

const PRIME: Lens = { ...LENS_50, closeFocusM: 0.5 };
const PRIME_TABLE = tableOf([
  [50, 0, 2, 0.1, 0.5],
  [50, 0, 4, 0.1, 0.25],
  [50, 2, 2, 0.2, 0.5],
  [50, 2, 4, 0.2, 0.25],
]);
const at = (
  curve: { readonly points: readonly { readonly focusDioptres: number; readonly value: number }[] } | undefined,
  d: number,
) => curve?.points.find((p) => Math.abs(p.focusDioptres - d) < 1e-9)?.value ?? Number.NaN;

describe("figures of a lens over focus", () => {
  const curves = lensCurves(PRIME, PRIME_TABLE, MODE_A);

  it("are distortion at the corner of the table's area, linear in dioptres between its points", () => {
    // r = 1 at the corner: ideal = 1 + k1, percent = 100 (1 - (1 + k1)) / (1 + k1); k1 = 0.1, 0.15 half way, 0.2
    expect(curves?.distortion).toHaveLength(1);
    expect(at(curves?.distortion[0], 0)).toBeCloseTo(-10 / 1.1, 6);
    expect(at(curves?.distortion[0], 1)).toBeCloseTo(-15 / 1.15, 6);
    expect(at(curves?.distortion[0], 2)).toBeCloseTo(-20 / 1.2, 6);
  });

  it("are shading at the corner, a prime's at every stop of the table", () => {
    // brightness 1 - a1 at r = 1: log2 0.5 and log2 0.75
    expect(curves?.shading.map((c) => c.tStop)).toEqual([2, 4]);
    expect(at(curves?.shading[0], 0)).toBeCloseTo(-1, 6);
    expect(at(curves?.shading[1], 2)).toBeCloseTo(Math.log2(0.75), 6);
  });

  it("are breathing as if the whole lens moved, against infinity", () => {
    // 50 mm at 1 m: s = (1000 + sqrt(1000^2 - 4 x 50 x 1000)) / 2 = 947.2, m = 50 / 897.2 = 0.0557; angles 2 atan(28.8 / 105.57) and
    // 2 atan(28.8 / 100): 0.26632 / 0.28041 = 0.9497
    expect(at(curves?.breathing[0], 0)).toBe(0);
    expect(at(curves?.breathing[0], 1)).toBeCloseTo(-5.03, 2);
  });

  it("reach to the nearer of close focus and the table's end, and no further for the table's own", () => {
    const near = lensCurves({ ...PRIME, closeFocusM: 0.4 }, PRIME_TABLE, MODE_A);
    expect(near?.breathing[0]?.points.at(-1)?.focusDioptres).toBe(2.5);
    expect(near?.distortion[0]?.points.at(-1)?.focusDioptres).toBe(2);
  });

  it("are those of a zoom at each focal length of the table, shading at its widest stop", () => {
    const zoom = lensCurves(
      LENS_ZOOM,
      tableOf(
        [28, 50, 80].flatMap((f): Point[] => [
          [f, 0, 2.8, 0.1, 0.5],
          [f, 1, 2.8, 0.1, 0.5],
          [f, 1, 8, 0.1, 0.1],
        ]),
      ),
      null,
    );
    expect(zoom?.distortion.map((c) => c.focalMm)).toEqual([28, 50, 80]);
    expect(zoom?.shading.map((c) => [c.focalMm, c.tStop])).toEqual([
      [28, 2.8],
      [50, 2.8],
      [80, 2.8],
    ]);
  });

  it("have no line of a table that does not say its direction, and none at all without an area", () => {
    const unsaid = tableOf(
      [
        [50, 0, 2, 0.1, 0.5],
        [50, 1, 2, 0.1, 0.5],
      ],
      { direction: null },
    );
    expect(lensCurves(PRIME, unsaid, MODE_A)?.distortion).toEqual([]);
    expect(lensCurves(PRIME, null, MODE_A)?.distortion).toEqual([]);
    expect(lensCurves(PRIME, null, MODE_A)?.breathing).toHaveLength(1);
    expect(lensCurves(PRIME, null, null)).toBeNull();
  });

  it("squeeze the area of a desqueezed table back to the sensor's", () => {
    const table = tableOf(
      [
        [40, 0, null, 0, 0],
        [40, 1, null, 0, 0],
      ],
      { areaMm: { width: 44.8, height: 18.67 }, squeezeState: "desqueezed" },
    );
    expect(lensCurves({ ...LENS_ANAMORPHIC, squeeze: 2 }, table, null)?.area).toEqual({ widthMm: 22.4, heightMm: 18.67 });
  });
});

describe("distortion from the middle to the corner", () => {
  it("is a prime's at infinity and near", () => {
    const found = radialCurves(PRIME, PRIME_TABLE, MODE_A);
    expect(found?.curves.map((c) => c.focusDioptres)).toEqual([0, 2]);
    // half way out r = 0.5: ideal = 0.5 (1 + 0.1 x 0.25)
    expect(found?.curves[0]?.points.find((p) => p.share === 0.5)?.percent).toBeCloseTo(-2.5 / 1.025, 6);
    expect(found?.curves[0]?.points[0]).toEqual({ share: 0, percent: 0 });
  });
  it("is a zoom's at its shortest, middle and longest focal length", () => {
    const table = tableOf(
      [28, 40, 50, 65, 80].flatMap((f): Point[] => [
        [f, 0, null, 0.1, 0.5],
        [f, 1, null, 0.1, 0.5],
      ]),
    );
    expect(radialCurves(LENS_ZOOM, table, null)?.curves.map((c) => c.focalMm)).toEqual([28, 50, 80]);
  });
  it("is over the picture as it is seen: a squeezed sensor 22.4 wide is 44.8", () => {
    const lens = { ...LENS_ANAMORPHIC, squeeze: 2 };
    const table = tableOf(
      [
        [40, 0, null, 0.1, 0],
        [40, 1, null, 0.1, 0],
      ],
      { areaMm: { width: 22.4, height: 18.67 } },
    );
    expect(radialCurves(lens, table, null)?.area).toEqual({ widthMm: 44.8, heightMm: 18.67 });
  });
  it("is not there without a table that can be read", () => {
    expect(radialCurves(PRIME, null, MODE_A)).toBeNull();
    expect(radialCurves(PRIME, tableOf([[50, 0, 2, 0.1, 0.5]], { radius: null }), MODE_A)).toBeNull();
  });
});
