import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { completeCanonical } from "../../src/optics/distortion/canonical.ts";
import { equationRoom, evaluateEquation } from "../../src/optics/distortion/equation.ts";
import { idealFromRecorded, mapPoints, recordedFromIdeal } from "../../src/optics/distortion/map.ts";
import { canonical } from "./lens-quantities.ts";

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

  it("of the division model ends at its largest radius, 1 / (2 sqrt(lambda))", () => {
    const d = canonical({ model: "division", direction: "undistort" }, { lambda: 0.01 });
    expect(recordedFromIdeal(d, 4.999, 0)!.xMm).toBeLessThan(10);
    expect(recordedFromIdeal(d, 5.001, 0)).toBeNull();
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

describe("the Jacobian behind Newton's method", () => {
  it.each([
    ["brown-conrady", { k1: -2e-4, k2: 3e-7, k3: -1e-10, k4: 1e-4, k5: 2e-7, k6: 1e-10, p1: 3e-5, p2: -5e-5 }],
    ["division", { lambda: 3e-4 }],
    ["anamorphic-even", { ax2: 1e-4, ax4: 2e-7, ay2: -2e-4, ay4: 3e-7, bx2: 4e-4, bx4: -1e-7, by2: -1e-4, by4: 2e-7 }],
  ] as const)("of %s is the slope of the equation", (model, terms) => {
    const d = completeCanonical(model, terms, { direction: "distort" });
    const [x, y, h] = [7, -5, 1e-4];
    const room = equationRoom();
    const at = (px: number, py: number) => {
      evaluateEquation(d, px, py, room);
      return [...room];
    };
    const slopes = at(x, y).slice(2);
    const differences = [0, 1].flatMap((row) => [
      (at(x + h, y)[row]! - at(x - h, y)[row]!) / (2 * h),
      (at(x, y + h)[row]! - at(x, y - h)[row]!) / (2 * h),
    ]);
    slopes.forEach((slope, i) => {
      expect(Math.abs(slope - differences[i]!)).toBeLessThan(1e-9);
    });
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
