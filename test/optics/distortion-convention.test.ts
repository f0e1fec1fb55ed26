import { describe, expect, it } from "vitest";
import { canonicalDistortion } from "../../src/optics/distortion/canonical.ts";
import { coefficientsIn } from "../../src/optics/distortion/convert.ts";
import { idealFromRecorded, recordedFromIdeal } from "../../src/optics/distortion/map.ts";
import { isRefused } from "../../src/optics/refused.ts";
import { accepted, CONVENTION, canonical } from "./lens-quantities.ts";

const AREA = { width: 24.89, height: 18.66 };

describe("coefficients are refused in words", () => {
  const refusal = (change: Parameters<typeof canonical>[0], coefficients = { k1: 0.1 }, focalMm = 50) => {
    const d = canonicalDistortion({ ...CONVENTION, ...change }, coefficients, focalMm);
    return isRefused(d) ? d.refused : "accepted";
  };

  it("when model, direction or radius is not said, naming every one that is not", () => {
    expect(refusal({ direction: null })).toBe("the coefficients do not say their direction");
    expect(refusal({ model: null, direction: null, radius: null })).toBe(
      "the coefficients do not say their model, direction and radius",
    );
  });

  it("when a half radius has no area, and when a focal radius has no focal length", () => {
    expect(refusal({ radius: "half-width" })).toMatch(/half-width and area_mm is not given/);
    expect(refusal({ radius: "focal" }, { k1: 0.1 }, Number.NaN)).toMatch(/focal length is not known/);
  });

  it("when none of them belongs to the model", () => {
    expect(refusal({ model: "division" })).toMatch(/no coefficient of the division model/);
  });

  it("when they are for the desqueezed picture and the squeeze is not known", () => {
    expect(refusal({ squeezeState: "desqueezed" })).toMatch(/desqueezed/);
    expect(accepted(canonicalDistortion({ ...CONVENTION, squeezeState: "desqueezed" }, { k1: 1e-5 }, 50, 1.8)).squeeze).toBe(1.8);
  });
});

describe("radius and direction", () => {
  it("one lens written in four radius units is one canonical form", () => {
    const inMm = { k1: -1.2e-4, k2: 3e-8, k3: -2e-12, p1: 4e-6, p2: -7e-6 };
    const d = canonical({}, inMm);
    for (const radius of ["focal", "half-width", "half-height", "half-diagonal"] as const) {
      const written = accepted(coefficientsIn(d, { radius, focalMm: 35, areaMm: AREA }));
      const back = accepted(canonicalDistortion({ ...CONVENTION, radius, areaMm: AREA }, written, 35));
      for (const name of ["k1", "k2", "k3", "p1", "p2"] as const) {
        expect(Math.abs((back as unknown as Record<string, number>)[name]! / inMm[name] - 1)).toBeLessThan(1e-12);
      }
    }
  });

  it("radial terms go with R^2, R^4, R^6 and tangential terms with R", () => {
    const d = canonical({ radius: "half-width", areaMm: { width: 20, height: 10 } }, { k1: 1, k2: 1, k3: 1, p1: 1, p2: 2 });
    // Half width 10 mm.
    expect(d).toMatchObject({ k1: 1e-2, k2: 1e-4, k3: 1e-6, p1: 0.1, p2: 0.2 });
  });

  it("the same numbers in the opposite direction are another lens, not the inverse with a changed sign", () => {
    const distort = canonical({ direction: "distort" }, { k1: -2e-4 });
    const undistort = canonical({ direction: "undistort" }, { k1: 2e-4 });
    const a = recordedFromIdeal(distort, 12, 9)!;
    const b = recordedFromIdeal(undistort, 12, 9)!;
    expect(Math.abs(a.xMm - b.xMm)).toBeGreaterThan(0.01);
  });

  it("undistort takes the recorded point by the equation, distort the ideal one", () => {
    // r = 10: 1 + 1e-4 x 100 = 1.01.
    expect(idealFromRecorded(canonical({ direction: "undistort" }, { k1: 1e-4 }), 10, 0)!.xMm).toBeCloseTo(10.1, 12);
    expect(recordedFromIdeal(canonical({ direction: "distort" }, { k1: 1e-4 }), 0, 10)!.yMm).toBeCloseTo(10.1, 12);
  });

  it("tangential terms: p1 acts down, p2 to the right", () => {
    const d = canonical({}, { p1: 1e-4, p2: 2e-4 });
    // At (0, 10): x' = p2 r^2 = 0.02, y' = 10 + p1 (r^2 + 2 y^2) = 10.03. At (10, 0): x' = 10 + 0.06, y' = 0.01.
    expect(recordedFromIdeal(d, 0, 10)).toEqual({ xMm: expect.closeTo(0.02, 12), yMm: expect.closeTo(10.03, 12) });
    expect(recordedFromIdeal(d, 10, 0)).toEqual({ xMm: expect.closeTo(10.06, 12), yMm: expect.closeTo(0.01, 12) });
  });

  it("a shifted centre is the point that stays where it is, and x counts from it", () => {
    const d = canonical({}, { k1: 1e-4, cx_mm: 2, cy_mm: -1 });
    expect(recordedFromIdeal(d, 2, -1)).toEqual({ xMm: 2, yMm: -1 });
    expect(recordedFromIdeal(d, 12, -1)!.xMm).toBeCloseTo(12.1, 12);
  });

  it("coefficients of the desqueezed picture see the sensor's x times the squeeze", () => {
    const d = accepted(canonicalDistortion({ ...CONVENTION, squeezeState: "desqueezed" }, { k1: 1e-4 }, 50, 2));
    // 5 mm on the sensor are 10 mm desqueezed: 10.1 mm there, 5.05 mm on the sensor.
    expect(recordedFromIdeal(d, 5, 0)!.xMm).toBeCloseTo(5.05, 12);
    expect(recordedFromIdeal(d, 0, 5)!.yMm).toBeCloseTo(5 * (1 + 1e-4 * 25), 12);
  });
});

describe("the even anamorphic form", () => {
  const d = canonical(
    { model: "anamorphic-even" },
    { ax2: 1e-4, ax4: 1e-7, ay2: -2e-4, ay4: 3e-7, bx2: 4e-4, bx4: -1e-7, by2: -1e-4, by4: 2e-7 },
  );

  it("is evaluated term by term", () => {
    // x 3, y 2: x^2 9, x^4 81, y^2 4, y^4 16.
    const p = recordedFromIdeal(d, 3, 2)!;
    expect(p.xMm).toBeCloseTo(3 * (1 + 9e-4 + 81e-7 - 8e-4 + 48e-7), 13);
    expect(p.yMm).toBeCloseTo(2 * (1 + 36e-4 - 81e-7 - 4e-4 + 32e-7), 13);
  });

  it("keeps the axes straight and mirrors in both", () => {
    expect(recordedFromIdeal(d, 4, 0)!.yMm).toBe(0);
    const a = recordedFromIdeal(d, 4, 3)!;
    const b = recordedFromIdeal(d, -4, -3)!;
    expect([b.xMm, b.yMm]).toEqual([-a.xMm, -a.yMm]);
  });
});
