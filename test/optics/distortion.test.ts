import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type CanonicalDistortion, canonicalDistortion, completeCanonical } from "../../src/optics/distortion/canonical.ts";
import { coefficientsIn } from "../../src/optics/distortion/convert.ts";
import { fieldExtreme } from "../../src/optics/distortion/field.ts";
import { idealFromRecorded, mapPoints, recordedFromIdeal } from "../../src/optics/distortion/map.ts";
import { overscanOf } from "../../src/optics/distortion/overscan.ts";
import { distortionPercentAt, distortionPercentByPlace } from "../../src/optics/distortion/percent.ts";
import { isRefused } from "../../src/optics/refused.ts";
import { accepted, CONVENTION, canonical } from "./lens-quantities.ts";

const SUPER_35 = { widthMm: 24.89, heightMm: 18.66 };
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

describe("the range in which an equation may be used", () => {
  it("ends at the smallest root of 1 + 3 k1 r^2 + 5 k2 r^4 + 7 k3 r^6", () => {
    // 1 - 3e-3 r^2 = 0 at r = sqrt(1000/3) = 18.257.
    expect(canonical({}, { k1: -1e-3 }).limitMm).toBeCloseTo(Math.sqrt(1000 / 3), 9);
    // In u = r^2: 1 - 3a u + 5b u^2 with roots 100 and 400: 5b = 1/40000, 3a = 500/40000.
    expect(canonical({}, { k1: -500 / 120000, k2: 1 / 200000 }).limitMm).toBeCloseTo(10, 9);
    expect(canonical({}, { k1: 1e-4 }).limitMm).toBe(Number.POSITIVE_INFINITY);
  });

  it("ends where a denominator is 0 and where the division model runs away", () => {
    expect(canonical({}, { k4: -0.01 }).limitMm).toBeCloseTo(10, 9);
    expect(canonical({ model: "division" }, { lambda: -0.01 }).limitMm).toBe(10);
    expect(canonical({ model: "division" }, { lambda: 0.01 }).limitMm).toBe(10);
  });

  it("gives nothing beyond it in either direction, and never a wrapped value", () => {
    // r (1 - r^2 / 1000) has its top 12.172 at r = 18.257.
    const d = canonical({}, { k1: -1e-3 });
    expect(recordedFromIdeal(d, 18, 0)).not.toBeNull();
    expect(recordedFromIdeal(d, 18.3, 0)).toBeNull();
    expect(idealFromRecorded(d, 12.17, 0)!.xMm).toBeLessThan(18.258);
    expect(idealFromRecorded(d, 12.18, 0)).toBeNull();
    expect(idealFromRecorded(d, Number.NaN, 0)).toBeNull();
  });

  it("does not take the far branch of an equation that turns back twice", () => {
    const d = canonical({}, { k1: -500 / 120000, k2: 1 / 200000 });
    for (let r = 0.1; r < 60; r += 0.1) {
      const p = idealFromRecorded(d, r, 0);
      if (p !== null) expect(p.xMm).toBeLessThan(d.limitMm);
    }
    // At r = 10 the equation gives 10 (1 - 0.41667 + 0.05) = 6.3333, its largest value before it turns.
    expect(idealFromRecorded(d, 6.33, 0)).not.toBeNull();
    expect(idealFromRecorded(d, 6.34, 0)).toBeNull();
  });

  it("tangential terms pull it in: with them alone it ends at 1 / (6 |p|)", () => {
    expect(canonical({}, { p1: 0.003, p2: 0.004 }).limitMm).toBeCloseTo(1 / 0.03, 9);
  });

  it("is a circle in which the Jacobian stays positive definite, for even terms too", () => {
    const d = canonical({ model: "anamorphic-even" }, { ax2: -1e-3, by2: -5e-4 });
    // Along x the slope is 1 - 3e-3 x^2.
    expect(d.limitMm).toBeCloseTo(Math.sqrt(1000 / 3), 6);
    expect(idealFromRecorded(d, 12.18, 0)).toBeNull();
  });
});

describe("there and back is the same point for any lens", () => {
  const small = (limit: number) => fc.double({ min: -limit, max: limit, noNaN: true });
  const brown = fc
    .record({
      k1: small(6e-4),
      k2: small(2e-6),
      k3: small(3e-9),
      k4: small(3e-4),
      k5: small(1e-6),
      k6: small(1e-9),
      p1: small(2e-4),
      p2: small(2e-4),
    })
    .map((terms) => ["brown-conrady", terms] as const);
  const division = fc.record({ lambda: small(1e-3) }).map((terms) => ["division", terms] as const);
  const even = fc
    .record({
      ax2: small(5e-4),
      ax4: small(1e-6),
      ay2: small(5e-4),
      ay4: small(1e-6),
      bx2: small(5e-4),
      bx4: small(1e-6),
      by2: small(5e-4),
      by4: small(1e-6),
    })
    .map((terms) => ["anamorphic-even", terms] as const);

  it("inside the limit, in both directions, with a shifted centre and a squeeze", () => {
    fc.assert(
      fc.property(
        fc.oneof(brown, division, even),
        fc.constantFrom("distort" as const, "undistort" as const),
        fc.double({ min: 0, max: 0.97, noNaN: true }),
        fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }),
        fc.constantFrom(1, 1.8),
        ([model, terms], direction, share, angle, squeeze) => {
          const d = completeCanonical(model, terms, { direction, centreXMm: 0.7, centreYMm: -0.4, squeeze });
          const radius = share * Math.min(d.limitMm, 30);
          const x = 0.7 + (radius * Math.cos(angle)) / squeeze;
          const y = -0.4 + radius * Math.sin(angle);
          const [there, back] =
            direction === "distort" ? [recordedFromIdeal, idealFromRecorded] : [idealFromRecorded, recordedFromIdeal];
          const p = there(d, x, y)!;
          const q = back(d, p.xMm, p.yMm);
          expect(q).not.toBeNull();
          expect(Math.hypot(q!.xMm - x, q!.yMm - y)).toBeLessThan(1e-8);
        },
      ),
      { numRuns: 1500, seed: 7 },
    );
  });

  it("and what is found lies inside the limit and maps onto the target, or nothing is found", () => {
    fc.assert(
      fc.property(fc.oneof(brown, even), small(40), small(40), ([model, terms], x, y) => {
        const d = completeCanonical(model, terms, { direction: "distort" });
        const p = idealFromRecorded(d, x, y);
        if (p === null) return;
        expect(Math.hypot(p.xMm, p.yMm)).toBeLessThan(d.limitMm);
        const q = recordedFromIdeal(d, p.xMm, p.yMm)!;
        expect(Math.hypot(q.xMm - x, q.yMm - y)).toBeLessThan(1e-9);
      }),
      { numRuns: 1500, seed: 11 },
    );
  });

  it("a point that has a counterpart inside the limit always finds it", () => {
    // Radial lenses: the largest recorded radius is the equation at the limit.
    fc.assert(
      fc.property(small(9e-4), small(3e-6), fc.double({ min: 0, max: 0.98, noNaN: true }), (k1, k2, share) => {
        const d = completeCanonical("brown-conrady", { k1, k2 }, { direction: "distort" });
        const r = Math.min(d.limitMm, 60);
        const top = r * (1 + k1 * r ** 2 + k2 * r ** 4);
        expect(idealFromRecorded(d, share * top * 0.6, share * top * 0.8)).not.toBeNull();
      }),
      { numRuns: 1000, seed: 13 },
    );
  });
});

describe("many points at once", () => {
  it("are those of one at a time, NaN where there is none, and may be written over the input", () => {
    const d = canonical({}, { k1: -1e-3, p1: 1e-5 });
    const x = Float64Array.from({ length: 50 }, (_, i) => i * 0.3);
    const y = Float64Array.from({ length: 50 }, (_, i) => i * 0.1);
    const one = Array.from(x, (v, i) => idealFromRecorded(d, v, y[i]!));
    const missing = mapPoints(d, "ideal", x, y, x, y);
    expect(missing).toBe(one.filter((p) => p === null).length);
    expect(missing).toBeGreaterThan(0);
    expect([...x]).toEqual(one.map((p) => p?.xMm ?? Number.NaN));
    expect([...y]).toEqual(one.map((p) => p?.yMm ?? Number.NaN));
  });
});

describe("percent", () => {
  it("is of the ideal radius, with the recorded point at the frame's corner, side and top; barrel is negative", () => {
    const d = canonical({ direction: "undistort" }, { k1: 1e-4 });
    // Corner r = 5: ideal 5 (1 + 25e-4), percent = 100 (1 / 1.0025 - 1).
    const percent = distortionPercentAt(d, { widthMm: 8, heightMm: 6 })!;
    expect(percent.corner).toBeCloseTo(100 * (1 / 1.0025 - 1), 12);
    expect(percent.midSide).toBeCloseTo(100 * (1 / 1.0016 - 1), 12);
    expect(percent.midTop).toBeCloseTo(100 * (1 / 1.0009 - 1), 12);
  });

  it("in the distort direction is found at the recorded corner too, not at the ideal one", () => {
    const d = canonical({ direction: "distort" }, { k1: -1e-3 });
    const percent = distortionPercentAt(d, { widthMm: 16, heightMm: 12 })!.corner;
    // r (1 - r^2/1000) = 10 has its root at r = 11.533; 100 (10 / 11.533 - 1) = -13.3.
    const ideal = idealFromRecorded(d, 8, 6)!;
    const r = Math.hypot(ideal.xMm, ideal.yMm);
    expect(r * (1 - r * r * 1e-3)).toBeCloseTo(10, 10);
    expect(percent).toBeCloseTo((100 * (10 - r)) / r, 10);
    expect(percent).toBeLessThan(-12);
  });

  it("with a shifted centre is that of the corner, side or top furthest off, radii from the centre", () => {
    // Logged example: half-width 13.05 mm, k1 .0230, k2 -.0014, centre (-.41, .27): the corner (13.05, -8.7) is at
    // r^2 = (13.46^2 + 8.97^2) / 13.05^2 = 1.53629; 100 (1 / (1 + .0230 x 1.53629 - .0014 x 2.36019) - 1) = -3.1036.
    const d = canonical(
      { direction: "undistort", radius: "half-width", areaMm: { width: 26.1, height: 17.4 } },
      { k1: 0.023, k2: -0.0014, cx_mm: -0.41, cy_mm: 0.27 },
    );
    expect(distortionPercentAt(d, { widthMm: 26.1, heightMm: 17.4 })!.corner).toBeCloseTo(-3.1036, 4);
  });

  it("counts tangential terms", () => {
    const plain = distortionPercentAt(canonical({}, { k1: 1e-5 }), SUPER_35)!;
    const tangential = distortionPercentAt(canonical({}, { k1: 1e-5, p1: 1e-4 }), SUPER_35)!;
    expect(tangential.midTop).toBeGreaterThan(plain.midTop + 0.1);
  });

  it("is null where the lens does not define the corner, and side and top are still to be had", () => {
    // Top of the equation 12.172 mm: the corner at 12.5 mm is beyond it, the side at 10 mm is not.
    const d = canonical({}, { k1: -1e-3 });
    expect(distortionPercentAt(d, { widthMm: 20, heightMm: 15 })).toBeNull();
    expect(distortionPercentByPlace(d, { widthMm: 20, heightMm: 15 })).toEqual({
      corner: null,
      midSide: expect.any(Number),
      midTop: expect.any(Number),
    });
  });

  it("of a wave lens is larger inside the field than at the corner", () => {
    const d: CanonicalDistortion = canonical({ radius: "half-diagonal", areaMm: { width: 8, height: 6 } }, { k1: -0.06, k2: 0.05 });
    const extreme = fieldExtreme(d, { widthMm: 8, heightMm: 6 })!;
    // Least at ideal r = sqrt(.6) = .7746, recorded at .7746 x .982 = .7607.
    expect(extreme.share).toBeCloseTo(0.7607, 1);
    expect(extreme.percent).toBeCloseTo(-1.8, 3);
  });
});

describe("overscan", () => {
  it("of the ideal picture holds the whole recorded frame; barrel needs more than 1", () => {
    const d = canonical({ direction: "undistort" }, { k1: 1e-4 });
    // The corner (4, 3) goes to 1.0025 times itself, and nothing of the edge goes further out.
    expect(overscanOf(d, { widthMm: 8, heightMm: 6 }, "ideal")).toBeCloseTo(1.0025, 12);
    expect(overscanOf(d, { widthMm: 8, heightMm: 6 }, "recorded")).toBeLessThan(1);
  });

  it("looks along the edges: pincushion needs most in the middle of a side", () => {
    const d = canonical({ direction: "undistort" }, { k1: -1e-3 });
    // Side (4, 0): 1 - 0.016; top (0, 3): 1 - 0.009 of the height is the largest; corner 1 - 0.025.
    expect(overscanOf(d, { widthMm: 8, heightMm: 6 }, "ideal")).toBeCloseTo(0.991, 12);
  });

  it("counts a shifted centre on both sides, and is null when an edge is not defined", () => {
    const left = overscanOf(canonical({ direction: "undistort" }, { k1: 1e-4, cx_mm: -1 }), { widthMm: 8, heightMm: 6 }, "ideal");
    const right = overscanOf(canonical({ direction: "undistort" }, { k1: 1e-4, cx_mm: 1 }), { widthMm: 8, heightMm: 6 }, "ideal");
    expect(left).toBeCloseTo(right!, 12);
    expect(overscanOf(canonical({}, { k1: -1e-3 }), { widthMm: 20, heightMm: 15 }, "ideal")).toBeNull();
  });
});
