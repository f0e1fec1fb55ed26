/** Depth of field with a pupil magnification other than one. */
import { describe, expect, it } from "vitest";
import { depthOfField, imageDistanceMm, magnification, objectDistanceMm } from "../../src/optics/depth-of-field.ts";

const LENS = { focalMm: 50, fNumber: 2.8, cocMm: 0.025 };

describe("depth of field with pupil magnification", () => {
  it("of one is the plain form (CV12: 2778.58 to 3260.55 mm)", () => {
    const depth = depthOfField({ ...LENS, imagePlaneMm: 3000, pupilMagnification: 1 });
    expect(depth?.nearMm).toBeCloseTo(2778.58, 2);
    expect(depth?.farMm).toBeCloseTo(3260.55, 2);
  });

  it("approaches the plain form as P approaches one", () => {
    const plain = depthOfField({ ...LENS, imagePlaneMm: 600 });
    const near = depthOfField({ ...LENS, imagePlaneMm: 600, pupilMagnification: 1 + 1e-9 });
    expect(near?.nearMm).toBeCloseTo(plain?.nearMm ?? 0, 5);
    expect(near?.farMm).toBeCloseTo(plain?.farMm ?? 0, 5);
  });

  it('has the total of J. Conrad\'s form 2 N c (1 + m/P) / m^2 / (1 - (N c / (f m))^2) ("Depth of Field in Depth", from memory)', () => {
    for (const p of [0.5, 2]) {
      const imagePlaneMm = 400;
      const s = objectDistanceMm(imagePlaneMm, LENS.focalMm) as number;
      const m = magnification(s, LENS.focalMm);
      const blur = LENS.fNumber * LENS.cocMm;
      const total = (2 * blur * (1 + m / p)) / (m * m) / (1 - (blur / (LENS.focalMm * m)) ** 2);
      expect(depthOfField({ ...LENS, imagePlaneMm, pupilMagnification: p })?.totalMm).toBeCloseTo(total, 6);
    }
  });

  it("is shallower in front of a lens with a larger exit pupil, and reaches infinity at the same magnification", () => {
    const depth = (p: number) => depthOfField({ ...LENS, imagePlaneMm: 300, pupilMagnification: p })?.totalMm ?? 0;
    expect(depth(2)).toBeLessThan(depth(1));
    expect(depth(1)).toBeLessThan(depth(0.5));
    expect(imageDistanceMm(Number.POSITIVE_INFINITY, 50)).toBe(50);
    expect(depthOfField({ ...LENS, imagePlaneMm: Number.POSITIVE_INFINITY, pupilMagnification: 2 })?.farMm).toBe(
      Number.POSITIVE_INFINITY,
    );
  });
});
