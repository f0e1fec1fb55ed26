import { describe, expect, it } from "vitest";
import { type CalibrationRequest, coefficientsAt } from "../../src/optics/calibration.ts";
import type { CalibrationPointValues, Coefficients } from "../../src/optics/convention.ts";
import { isRefused } from "../../src/optics/refused.ts";
import { accepted, CONVENTION } from "./lens-quantities.ts";

function point(focalMm: number, focusM: number, tStop: number | null, coefficients: Coefficients): CalibrationPointValues {
  return { focalMm, focusDioptres: 1 / focusM, tStop, coefficients };
}

function at(points: readonly CalibrationPointValues[], request: Partial<CalibrationRequest> = {}, convention = CONVENTION) {
  return accepted(coefficientsAt({ convention, points }, { focalMm: 50, focusDioptres: 0.5, tStop: 4, ...request }));
}

describe("between calibration points", () => {
  const grid = [0.5, 1, Number.POSITIVE_INFINITY].flatMap((m) =>
    [2, 4, 8].map((t) => point(50, m, t, { k1: 1 / m, a1: Math.log2(t), entrance_pupil_mm: 80 })),
  );

  it("is linear in 1/distance: half way in dioptres between 1 m and infinity is 2 m", () => {
    expect(at(grid, { focusDioptres: 0.5 }).coefficients.k1).toBeCloseTo(0.5, 12);
    expect(at(grid, { focusDioptres: 1.3 }).coefficients.k1).toBeCloseTo(1.3, 12);
  });

  it("is linear in log2 T, not in T: T 5.657 is half way between 4 and 8", () => {
    expect(at(grid, { tStop: 4 * Math.SQRT2 }).coefficients.a1).toBeCloseTo(2.5, 12);
  });

  it("leaves what is equal everywhere as it is, and is inside the table", () => {
    const result = at(grid, { focusDioptres: 0.77, tStop: 3 });
    expect(result.coefficients.entrance_pupil_mm).toBe(80);
    expect(result.state).toEqual({ kind: "inside" });
    expect(result.missingCells).toEqual([]);
  });

  it("at a point of the table is exactly that row", () => {
    const result = at(grid, { focusDioptres: 1, tStop: 8 });
    expect(result.coefficients).toEqual({ k1: 1, a1: 3, entrance_pupil_mm: 80 });
  });

  it("does not depend on the order of the rows", () => {
    const request = { focusDioptres: 1.3, tStop: 3 };
    expect(at([...grid].reverse(), request)).toEqual(at(grid, request));
  });

  it("over focal length blends k and p times f, and shading, pupil and centre plain", () => {
    const zoom = [
      point(30, 1, null, { k1: -0.04, p1: 0.001, a1: 0.1, entrance_pupil_mm: 90, cx_mm: 0.2 }),
      point(60, 1, null, { k1: 0.01, p1: 0.002, a1: 0.3, entrance_pupil_mm: 110, cx_mm: 0.6 }),
    ];
    const { coefficients } = at(zoom, { focalMm: 40, focusDioptres: 1 });
    // A third of the way: k1 f = -1.2 + (0.6 + 1.2) / 3 = -0.6, over 40; p1 f = 0.03 + 0.09 / 3 = 0.06, over 40.
    expect(coefficients.k1).toBeCloseTo(-0.6 / 40, 12);
    expect(coefficients.p1).toBeCloseTo(0.06 / 40, 12);
    expect(coefficients.a1).toBeCloseTo(0.1 + 0.2 / 3, 12);
    expect(coefficients.entrance_pupil_mm).toBeCloseTo(90 + 20 / 3, 12);
    expect(coefficients.cx_mm).toBeCloseTo(0.2 + 0.4 / 3, 12);
  });

  it("takes each focal length's own distances and stops", () => {
    const zoom = [
      point(30, 0.5, null, { k1: 2 }),
      point(30, Number.POSITIVE_INFINITY, null, { k1: 0 }),
      point(60, 1, null, { k1: 1 }),
      point(60, Number.POSITIVE_INFINITY, null, { k1: 0 }),
    ];
    // 0.5 dpt: at 30 mm 0.5, at 60 mm 0.5; k f = 15 and 30, half way 22.5, over 45.
    const result = at(zoom, { focalMm: 45, focusDioptres: 0.5 });
    expect(result.coefficients.k1).toBeCloseTo(0.5, 12);
    expect(result.state).toEqual({ kind: "inside" });
  });
});

describe("beyond the table", () => {
  const grid = [0.5, 4].flatMap((m) => [2, 8].map((t) => point(50, m, t, { k1: 1 / m, a1: t })));

  it("uses the nearest point of each axis and says which, what was asked and what was used", () => {
    const result = at(grid, { focalMm: 52, focusDioptres: 3, tStop: 16 });
    expect(result.coefficients).toEqual({ k1: 2, a1: 8 });
    expect(result.focalMm).toBe(50);
    expect(result.state).toEqual({
      kind: "nearest",
      axes: [
        { axis: "focal", asked: 52, used: 50 },
        { axis: "focus", asked: 3, used: 2 },
        { axis: "stop", asked: 16, used: 8 },
      ],
    });
  });

  it("clamps infinity when the table ends before it", () => {
    const result = at(grid, { focusDioptres: 0, tStop: 2 });
    expect(result.coefficients.k1).toBe(0.25);
    expect(result.state).toEqual({ kind: "nearest", axes: [{ axis: "focus", asked: 0, used: 0.25 }] });
  });

  it("is not reached by rounding", () => {
    expect(at(grid, { focusDioptres: 2 + 1e-12, tStop: 8 * (1 + 1e-12), focalMm: 50.00000001 }).state).toEqual({ kind: "inside" });
  });
});

describe("a blank stop", () => {
  it("serves every stop, alone and beside rows with stops", () => {
    const any = [point(50, 1, null, { k1: 1 }), point(50, Number.POSITIVE_INFINITY, null, { k1: 0 })];
    expect(at(any, { tStop: 22 }).state).toEqual({ kind: "inside" });
    const mixed = [
      point(50, 1, null, { k1: 1 }),
      point(50, Number.POSITIVE_INFINITY, 2, { k1: 0 }),
      point(50, Number.POSITIVE_INFINITY, 8, { k1: 0.2 }),
    ];
    const result = at(mixed, { focusDioptres: 0.5, tStop: 4 });
    expect(result.coefficients.k1).toBeCloseTo(0.5 + 0.5 * 0.1, 12);
    expect(result.missingCells).toEqual([]);
  });
});

describe("a grid with missing cells", () => {
  const whole = [0.5, 1, Number.POSITIVE_INFINITY].flatMap((m) => [2, 4, 8].map((t) => point(50, m, t, { k1: 1 / m, a1: t })));
  const lacking = whole.filter((p) => !(p.focusDioptres === 1 && p.tStop === 4));

  it("uses the nearest row in the missing cell's place, and says so", () => {
    const result = at(lacking, { focusDioptres: 1, tStop: 4 });
    // Axes of 2 dpt and 2 stops: 1 m at T2 or T8 is half an axis away, 0.5 m or infinity at T4 as well; the first row in the file.
    expect(result.state).toEqual({ kind: "nearest", axes: [] });
    expect(result.missingCells).toEqual([{ focalMm: 50, focusDioptres: 1, tStop: 4 }]);
    expect(whole.map((p) => p.coefficients.k1)).toContain(result.coefficients.k1);
  });

  it("is a plain table away from the missing cell", () => {
    expect(at(lacking, { focusDioptres: 0, tStop: 4 })).toEqual(at(whole, { focusDioptres: 0, tStop: 4 }));
  });

  it("treats one blank coefficient like a missing row for that coefficient alone", () => {
    const blank = whole.map((p) => (p.focusDioptres === 1 && p.tStop === 4 ? { ...p, coefficients: { k1: 1 } } : p));
    const result = at(blank, { focusDioptres: 1, tStop: 4 });
    expect(result.coefficients.k1).toBe(1);
    expect(result.coefficients.a1).toBeDefined();
    expect(result.missingCells).toHaveLength(1);
  });
});

describe("a table is refused in words", () => {
  const points = [point(50, 1, 2, { k1: 1, a1: 0.1 }), point(50, 1, 8, { k1: 1, a1: 0.3 })];
  const refusal = (
    convention: object,
    request: Partial<CalibrationRequest> = {},
    rows: readonly CalibrationPointValues[] = points,
  ) => {
    const result = coefficientsAt(
      { convention: { ...CONVENTION, ...convention }, points: rows },
      { focalMm: 50, focusDioptres: 1, tStop: 4, ...request },
    );
    return isRefused(result) ? result.refused : "accepted";
  };

  it("without its direction and radius, and without the area that its radius needs", () => {
    expect(refusal({ direction: null, radius: null })).toBe("the coefficients do not say their direction and radius");
    expect(refusal({ model: null })).toBe("the coefficients do not say their model");
    expect(refusal({ radius: "half-diagonal" })).toMatch(/area_mm is not given/);
  });

  it("without rows, without a focus, without a focal length", () => {
    expect(refusal({}, {}, [])).toMatch(/no rows/);
    expect(refusal({}, { focusDioptres: Number.NaN })).toMatch(/focus distance is not known/);
    expect(refusal({}, { focalMm: Number.NaN })).toMatch(/focal length is not known/);
  });

  it("without a stop gives what does not depend on it, and refuses when all does", () => {
    expect(
      accepted(coefficientsAt({ convention: CONVENTION, points }, { focalMm: 50, focusDioptres: 1, tStop: null })).coefficients,
    ).toEqual({ k1: 1 });
    const onlyShading = points.map((p) => ({ ...p, coefficients: { a1: p.coefficients.a1! } }));
    expect(refusal({}, { tStop: null }, onlyShading)).toMatch(/depend on the stop/);
  });
});
