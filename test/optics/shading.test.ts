import { describe, expect, it } from "vitest";
import { isRefused } from "../../src/optics/refused.ts";
import { canonicalShading, shadingAt, shadingFactor, shadingStopsAt } from "../../src/optics/shading.ts";
import { accepted, CONVENTION } from "./lens-quantities.ts";

const AREA = { width: 8, height: 6 };
const FRAME = { widthMm: 8, heightMm: 6 };
const HALF = { ...CONVENTION, shadingRadius: "half-diagonal", areaMm: AREA } as const;

function stopsOf(convention: Parameters<typeof canonicalShading>[0], a: Parameters<typeof canonicalShading>[1]) {
  return shadingStopsAt(accepted(canonicalShading(convention, a, 50)), FRAME);
}

describe("shading", () => {
  it("as loss is 1 - (a1 r^2 + a2 r^4 + a3 r^6), in stops at corner, side and top", () => {
    // Half diagonal 5 mm: side r = .8 (r^2 .64, r^4 .4096, r^6 .262144), top r = .6 (.36, .1296, .046656).
    const stops = stopsOf(HALF, { a1: 0.3, a2: 0.15, a3: 0.05 })!;
    expect(stops.corner).toBeCloseTo(-1, 12);
    expect(stops.midSide).toBeCloseTo(Math.log2(1 - 0.192 - 0.06144 - 0.0131072), 12);
    expect(stops.midTop).toBeCloseTo(Math.log2(1 - 0.108 - 0.01944 - 0.0023328), 12);
  });

  it("as gain is 1 + a1 r^2 + ...: the same lens with the signs turned", () => {
    const loss = stopsOf(HALF, { a1: 0.3, a2: 0.1 });
    const gain = stopsOf({ ...HALF, shadingValues: "gain" }, { a1: -0.3, a2: -0.1 });
    expect(gain).toEqual(loss);
  });

  it("has its own radius unit, beside that of the distortion", () => {
    // r = 1 at the half height 3 mm: the top is 1 - a1.
    expect(stopsOf({ ...HALF, shadingRadius: "half-height" }, { a1: 0.25 })!.midTop).toBe(Math.log2(0.75));
    expect(stopsOf({ ...HALF, shadingRadius: "mm" }, { a1: 0.25 / 9 })!.midTop).toBeCloseTo(Math.log2(0.75), 12);
    expect(accepted(canonicalShading({ ...HALF, shadingRadius: "focal" }, { a1: 2500 }, 50)).b1).toBeCloseTo(-1, 12);
  });

  it("counts from the shifted centre, at the darkest of the four corners", () => {
    const stops = stopsOf(HALF, { a1: 0.5, cx_mm: 1 })!;
    // Furthest corner (-4, 3) from (1, 0): r^2 = (25 + 9) / 25.
    expect(stops.corner).toBeCloseTo(Math.log2(1 - 0.5 * (34 / 25)), 12);
    expect(stops.midSide).toBeCloseTo(Math.log2(1 - 0.5), 12);
  });

  it("that is black or below has no stops and says so", () => {
    const s = accepted(canonicalShading(HALF, { a1: 1.2 }, 50));
    expect(shadingAt(s, FRAME).corner).toEqual({ factor: expect.closeTo(-0.2, 12), stops: null, problem: "not above zero" });
    expect(shadingAt(s, FRAME).midTop.problem).toBeNull();
    expect(shadingStopsAt(s, FRAME)).toBeNull();
  });

  it("that is brighter than the centre says so", () => {
    const s = accepted(canonicalShading({ ...HALF, shadingValues: "gain" }, { a1: 0.3 }, 50));
    expect(shadingAt(s, FRAME).corner).toEqual({ factor: 1.3, stops: Math.log2(1.3), problem: "brighter than the centre" });
  });

  it("is 1 at its centre", () => {
    expect(shadingFactor(accepted(canonicalShading(HALF, { a1: 0.3, cx_mm: 1, cy_mm: 2 }, 50)), 1, 2)).toBe(1);
  });

  it("is refused without values, without a radius, and without the area its radius needs", () => {
    const refusal = (c: Parameters<typeof canonicalShading>[0], a = { a1: 0.1 } as object) => {
      const s = canonicalShading(c, a, 50);
      return isRefused(s) ? s.refused : "accepted";
    };
    expect(refusal(HALF, { k1: 1 })).toMatch(/no shading values/);
    expect(refusal({ ...HALF, shadingRadius: null })).toMatch(/do not say their radius/);
    expect(refusal({ ...HALF, areaMm: null })).toMatch(/area_mm is not given/);
  });
});
