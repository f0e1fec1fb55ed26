import { describe, expect, it } from "vitest";
import type { CanonicalDistortion } from "../../src/optics/distortion/canonical.ts";
import { fieldExtreme } from "../../src/optics/distortion/field.ts";
import { idealFromRecorded } from "../../src/optics/distortion/map.ts";
import { overscanOf } from "../../src/optics/distortion/overscan.ts";
import { distortionPercentAt, distortionPercentByPlace } from "../../src/optics/distortion/percent.ts";
import { canonical } from "./lens-quantities.ts";

const SUPER_35 = { widthMm: 24.89, heightMm: 18.66 };

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

  it("has the check value of OpenLensIO's equations: k1 = 1e-4 on 36 x 24 mm takes (18, 12) to (18.8424, 12.5616), 4.68 %", () => {
    // r^2 = 18^2 + 12^2 = 468, factor 1 + 0.0468 on both sides: max(W / w, H / h) = 1.0468
    const d = canonical({ direction: "undistort" }, { k1: 1e-4 });
    expect(100 * (overscanOf(d, { widthMm: 36, heightMm: 24 }, "ideal")! - 1)).toBeCloseTo(4.68, 10);
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
